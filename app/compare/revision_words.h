// SPDX-License-Identifier: GPL-3.0-or-later
// What is said of a kept revision, on the screen and on the command line. Each computes answers: some tenths of a
// second.
#pragma once

#include <stop_token>
#include <string>

#include "exchange/revision_store.h"

namespace compare {

/// The figures of every hook-up, as they are stored with a revision.
[[nodiscard]] std::vector<units::Figure> everyFigure(const design::Design& design, const catalog::Catalog& shop,
                                                     const std::stop_token& stop = {});
/// Whether the figures come out as they were stored, with the materials stored in the revision and, where it differs,
/// with today's catalog; which moved, and by how much. Lines.
[[nodiscard]] std::string reproductionWords(const exchange::KeptRevision& kept, const catalog::Catalog& shop,
                                            const std::stop_token& stop = {});
/// The check before a repeat order: each material, and what stands in for those that are not current. Lines.
[[nodiscard]] std::string repeatOrderWords(const design::Design& design, const catalog::Catalog& shop,
                                           const std::stop_token& stop = {});

}  // namespace compare
