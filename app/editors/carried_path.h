// SPDX-License-Identifier: GPL-3.0-or-later
// Where a value of one design stands in another one that was made from it.
#pragma once

#include <optional>
#include <string>

#include "design/design.h"

namespace editors {

/// `path` is a JSON pointer into `from`; the result points at the same thing in `to`. Items of lists are known again by
/// what they hold: one that moved is followed; in a list that grew or shrank, what stands before and after the change
/// is counted from its end of the list. Nothing if the thing is not in `to`.
[[nodiscard]] std::optional<std::string> carriedPath(const design::Design& from, const design::Design& to,
                                                     const std::string& path);

}  // namespace editors
