// SPDX-License-Identifier: GPL-3.0-or-later
// A whole file as text.
#pragma once

#include <string>

namespace exchange {

/// The bytes of the file at `path`. Throws units::BadInput whose place is `path`: nothing there, a folder or a device,
/// not readable, or larger than json::maximumBytes.
[[nodiscard]] std::string readFile(const std::string& path);

}  // namespace exchange
