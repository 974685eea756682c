// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/sheet_words.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "units/joined.h"
#include "units/text.h"

namespace shop {

using units::joined;

std::string fixed(double value, int decimals) {
    std::array<char, 400> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed, decimals);
    std::string all(text.data(), end.ptr);
    // "-0.0" says no more than "0.0".
    if (all.starts_with('-') && all.find_first_not_of("-0.") == std::string::npos) all.erase(0, 1);
    return all;
}

std::string grams(double newtons) {
    constexpr double standardGravity = 9.80665;
    const double g = newtons / standardGravity * 1e3;
    return fixed(g, g < 20 ? 1 : 0) + " g";
}

const char* flange(bool low) noexcept {
    return low ? "low flange" : "high flange";
}

std::string turnsText(double turns) {
    std::string text = fixed(turns, 2);
    while (text.ends_with('0')) text.pop_back();
    if (text.ends_with('.')) text.pop_back();
    return text;
}

std::string counted(double count, const std::string& one) {
    return joined({turnsText(count), " ", one, count == 1 ? "" : "s"});
}

std::string listedWords(const std::vector<std::string>& names) {
    std::string all;
    for (std::size_t k = 0; k < names.size(); ++k)
        all.append(k == 0 ? "" : k + 1 == names.size() ? " and " : ", ").append(names[k]);
    return all;
}

const design::Terminal* terminalOf(const design::Design& design, const std::string& name) {
    const auto at =
        std::find_if(design.terminals.begin(), design.terminals.end(), [&](const auto& t) { return t.name == name; });
    return at == design.terminals.end() ? nullptr : &*at;
}

std::string pinWords(const design::Terminal& terminal) {
    const std::string number = std::to_string(terminal.pin);
    return joined({"pin ", number, terminal.name == number ? "" : " (" + terminal.name + ")"});
}

std::string terminalPlace(const design::Terminal& terminal) {
    if (terminal.pin > 0) return "pin " + std::to_string(terminal.pin);
    if (!terminal.leadColour.empty()) return terminal.leadColour + " lead";
    return "lead " + terminal.name;
}

}  // namespace shop
