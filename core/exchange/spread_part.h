// SPDX-License-Identifier: GPL-3.0-or-later
// A part of a spread in a file, and parts put together again.
#pragma once

#include <string>
#include <vector>

#include "spread/summary.h"

namespace exchange {

/// Part `number` (from 1) of `parts` of a run.
struct SpreadPart {
    spread::Head head;
    std::uint64_t number = 1, parts = 1;
    spread::Batch batch;
};

/// The part as JSON on one line, with a digest of itself. Numbers are written so that they read back the same.
/// Throws units::BadInput where it would be larger than what is read again (10 MB): more parts are needed.
[[nodiscard]] std::string writeSpreadPart(const SpreadPart& part);

/// Throws units::BadInput with every fault; `file` names it in messages.
[[nodiscard]] SpreadPart readSpreadPart(std::string_view text, const std::string& file);

/// The batches of all parts of one run in order. Throws units::BadInput, naming the file: another design, seed or
/// number of units, another division into parts, a part twice, parts that are missing.
[[nodiscard]] std::vector<spread::Batch> gatheredParts(std::vector<SpreadPart> parts,
                                                       const std::vector<std::string>& files);

}  // namespace exchange
