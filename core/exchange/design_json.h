// SPDX-License-Identifier: GPL-3.0-or-later
// Design files: text to a design and back.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "catalog/catalog.h"
#include "design/design.h"

namespace exchange {

/// A design as it was opened, and what a person should know about its file.
struct Opened {
    design::DesignPtr design;
    std::vector<std::string>
        notes;  ///< keys that were kept without being known, each with its place; changes of format
};

/// Reads the text of a design file; `file` names it in messages. Steps: guarded JSON, format number, migration, fields,
/// digests of the stored parts, `design::check`. The copies under "parts" rule over `shop`.
/// Throws units::BadInput with every fault found.
[[nodiscard]] Opened readDesign(std::string_view text, const std::string& file, const catalog::Catalog& shop);

/// The canonical text: format number, the design's fields in the order of their tables with unknown keys after them,
/// and "parts": a copy of every catalog entry that the design names, with its digest.
[[nodiscard]] std::string writeDesign(const design::Design& design, const catalog::Catalog& shop);

/// Digest of the canonical text: tells whether two designs say the same.
[[nodiscard]] std::string digestOf(const design::Design& design, const catalog::Catalog& shop);

}  // namespace exchange
