// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/terminal_pins.h"

#include <algorithm>
#include <cctype>

#include "units/characters.h"
#include "units/joined.h"

namespace exchange {

namespace {

bool known(const std::vector<Pin>& pins, const std::string& outside) {
    return std::any_of(pins.begin(), pins.end(), [&](const Pin& p) { return p.outside == outside; });
}

/// "t_" and the name's letters and digits, + and - as p and n; different names stay different.
std::string plainName(const std::string& name, const std::vector<Pin>& taken) {
    std::string plain = "t_";
    for (const char c : name) {
        const auto letter = static_cast<unsigned char>(c);
        plain += c == '+'                    ? 'p'
                 : c == '-'                  ? 'n'
                 : std::isalnum(letter) != 0 ? static_cast<char>(std::tolower(letter))
                                             : '_';
    }
    while (known(taken, plain)) plain += "_";
    return plain;
}

/// Shields that have no terminal but that a hook-up earths or straps.
std::vector<std::string> bareShields(const design::Design& design) {
    std::vector<std::string> all;
    for (const auto& place : design.coil)
        for (const auto& item : place.order) {
            const auto* shield = item.shield();
            if (shield == nullptr || !shield->terminal.empty()) continue;
            const auto names = [&](const std::string& n) { return n == shield->name; };
            const bool used = std::any_of(design.hookUps.begin(), design.hookUps.end(), [&](const design::HookUp& h) {
                return std::any_of(h.earths.begin(), h.earths.end(), names) ||
                       std::any_of(h.straps.begin(), h.straps.end(),
                                   [&](const auto& strap) { return std::any_of(strap.begin(), strap.end(), names); });
            });
            if (used) all.push_back(shield->name);
        }
    return all;
}

}  // namespace

std::string outsideTitle(const design::Design& design, const std::string& comment) {
    const std::string part = design.partNumber.empty() ? "audio transformer" : "part " + design.partNumber;
    return comment + units::oneLine(part + ", revision " + design.revision) + "\n";
}

std::vector<Pin> terminalPins(const design::Design& design) {
    std::vector<Pin> pins;
    for (const auto& t : design.terminals) {
        const std::string what = t.pin > 0 ? "pin " + std::to_string(t.pin) : "lead";
        const std::string colour = t.leadColour.empty() ? "" : ", " + t.leadColour;
        pins.push_back(
            {t.name, plainName(t.name, pins), units::oneLine(units::joined({what, ", terminal ", t.name, colour}))});
    }
    int count = 0;
    for (const auto& shield : bareShields(design)) {
        const std::string number = std::to_string(++count);
        pins.push_back({shield, "screen_" + number, "screen " + number});
    }
    pins.push_back({"core", "core", "core"});
    return pins;
}

}  // namespace exchange
