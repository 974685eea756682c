// SPDX-License-Identifier: GPL-3.0-or-later
// What a field of a design is called on screen, and why one would change it.
#pragma once

#include <QString>
#include <string>

namespace editors {

/// Label of a field by its key in files ("margin_low" → "margin, low end").
[[nodiscard]] QString labelOf(const std::string& key);
/// One sentence on what it is and what it does.
[[nodiscard]] QString tipOf(const std::string& key);

}  // namespace editors
