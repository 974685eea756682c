// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/change.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "units/text.h"

namespace analysis {

namespace {

struct Wording {
    const char* quantity;  ///< a dot at the end: one figure a pair or port
    const char* words;
};
constexpr std::array<Wording, 6> wordings{{{"leakage_10kHz.", "leakage"},
                                           {"input_capacitance.", "input capacitance"},
                                           {"low_3dB", "−3 dB low"},
                                           {"high_3dB_first", "−3 dB high"},
                                           {"peak_level", "peak"},
                                           {"peak_frequency", "peak at"}}};

/// With the minus sign that is printed, not the hyphen.
std::string printed(std::string text) {
    if (text.starts_with('-')) text.replace(0, 1, "−");
    return text;
}

std::string signedText(std::string text, double value) {
    if (value > 0 && !text.starts_with('+')) text.insert(0, 1, '+');
    return printed(std::move(text));
}

std::string textOf(const units::Figure& f) {
    if (!std::isfinite(f.value)) return "none";
    return printed(units::writeWithUncertainty(units::kindOfUnit(f.unit), f.value, f.uncertainty));
}

std::string whatOf(const Wording& wording, const std::string& name) {
    const std::string quantity = wording.quantity;
    if (!quantity.ends_with('.')) return wording.words;
    std::string owner = name.substr(quantity.size());
    if (quantity.starts_with("leakage"))
        if (const auto dot = owner.find('.'); dot != std::string::npos) owner.replace(dot, 1, "–");
    return std::string(wording.words) + " " + owner;
}

bool belongs(const Wording& wording, const units::Figure& figure) {
    const std::string quantity = wording.quantity;
    const bool plain = figure.name.find('@') == std::string::npos;
    return plain && (quantity.ends_with('.') ? figure.name.starts_with(quantity) : figure.name == quantity);
}

/// How far a figure went, for ranking those of one wording.
double size(const units::Figure& before, const units::Figure& now) {
    if (!std::isfinite(before.value) || !std::isfinite(now.value)) return HUGE_VAL;
    if (units::inDecibels(now.unit)) return std::abs(now.value - before.value);
    return before.value != 0 ? std::abs(now.value / before.value - 1) : HUGE_VAL;
}

}  // namespace

std::string difference(units::Kind kind, double before, double after, double uncertainty) {
    if (!std::isfinite(before) || !std::isfinite(after)) return {};
    const double apart = after - before;
    if (units::inDecibels(kind))
        return signedText(units::writeWithUncertainty(units::Kind::Decibel, apart, uncertainty), apart);
    if (before == 0) return {};
    const double share = apart / std::abs(before);
    return signedText(units::write(units::Kind::Share, share, std::abs(share) < 0.1 ? 1 : 2), share);
}

std::vector<Move> moves(const Answer& before, const Answer& now) {
    std::vector<Move> all;
    for (const Wording& wording : wordings) {
        std::vector<std::pair<double, Move>> ranked;
        for (const units::Figure& after : now.figures) {
            if (!belongs(wording, after)) continue;
            const units::Figure* earlier = before.figure(after.name);
            if (earlier == nullptr || earlier->hookUp != after.hookUp || earlier->unit != after.unit) continue;
            const std::string was = textOf(*earlier), is = textOf(after);
            if (was == is) continue;
            const auto kind = units::kindOfUnit(after.unit);
            ranked.push_back({size(*earlier, after),
                              {after.name, whatOf(wording, after.name), was, is,
                               difference(kind, earlier->value, after.value, after.uncertainty)}});
        }
        std::stable_sort(ranked.begin(), ranked.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
        for (auto& [far, move] : ranked) all.push_back(std::move(move));
    }
    return all;
}

std::string sentence(const std::vector<Move>& moves) {
    if (moves.empty()) return "no figure moved";
    std::string words;
    for (const Move& m : moves) {
        if (!words.empty()) words += ", ";
        const auto a = m.before.rfind(' '), b = m.now.rfind(' ');
        const bool sameUnit = a != std::string::npos && b != std::string::npos && m.before.substr(a) == m.now.substr(b);
        words += m.what + " " + (sameUnit ? m.before.substr(0, a) : m.before) + " → " + m.now;
        if (!m.by.empty()) words += " (" + m.by + ")";
    }
    return words;
}

}  // namespace analysis
