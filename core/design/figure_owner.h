// SPDX-License-Identifier: GPL-3.0-or-later
// Whose a figure is, by its name. For the room's own sources.
#pragma once

#include <algorithm>
#include <iterator>
#include <string>

namespace design {

/// Whether a figure of this quantity is one of a port; all others are of windings, shields and the core.
[[nodiscard]] inline bool isOfPort(const std::string& figure) {
    constexpr const char* stems[] = {"impedance_", "input_capacitance", "gain_", "insertion_loss"};
    return std::any_of(std::begin(stems), std::end(stems), [&](const char* s) { return figure.starts_with(s); });
}

/// Whether `name` is among the owners behind a figure's quantity: "capacitance.P.foil 1" names P and "foil 1". Names of
/// ports and shields may hold a dot themselves, so the whole rest and both its ends are looked at.
[[nodiscard]] inline bool namesOwner(const std::string& figure, const std::string& name) {
    const auto dot = figure.find('.');
    if (dot == std::string::npos) return false;
    const std::string rest = figure.substr(dot + 1);
    return rest == name || rest.starts_with(name + ".") || rest.ends_with("." + name);
}

}  // namespace design
