// SPDX-License-Identifier: GPL-3.0-or-later
// Things with names. For the room's own sources.
#pragma once

#include <algorithm>
#include <string>

namespace design {

/// Whether one of the things is called `name`.
template <class Things>
[[nodiscard]] bool has(const Things& things, const std::string& name) {
    return std::any_of(things.begin(), things.end(), [&](const auto& t) { return t.name == name; });
}

}  // namespace design
