// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/reproduction.h"

#include <cmath>
#include <limits>

#include "units/joined.h"
#include "units/text.h"

namespace analysis {

namespace {

const units::Figure* same(const std::vector<units::Figure>& all, const units::Figure& like) {
    for (const units::Figure& figure : all)
        if (figure.name == like.name && figure.hookUp == like.hookUp) return &figure;
    return nullptr;
}

constexpr double unknown = std::numeric_limits<double>::quiet_NaN();

bool differ(double before, double now, double tolerance) {
    if (!std::isfinite(before) || !std::isfinite(now))
        return !(std::isnan(before) && std::isnan(now)) && std::isfinite(before) != std::isfinite(now);
    return std::abs(now - before) > tolerance * std::abs(before);
}

}  // namespace

double Moved::share() const {
    return before == 0 ? now : (now - before) / std::abs(before);
}

std::vector<Moved> moved(const std::vector<units::Figure>& stored, const std::vector<units::Figure>& now,
                         double tolerance) {
    std::vector<Moved> all;
    for (const units::Figure& before : stored) {
        const units::Figure* after = same(now, before);
        const double value = after ? after->value : unknown;
        if (!after || differ(before.value, value, tolerance))
            all.push_back({before.name, before.hookUp, before.unit, before.value, value});
    }
    for (const units::Figure& after : now)
        if (!same(stored, after)) all.push_back({after.name, after.hookUp, after.unit, unknown, after.value});
    return all;
}

std::string sentence(const Moved& m) {
    const units::Kind kind = units::kindOfUnit(m.unit);
    const auto text = [kind](double value) {
        return std::isfinite(value) ? units::write(kind, value, 4) : std::string("none");
    };
    std::string words = units::joined({m.name, m.hookUp.empty() ? "" : " (", m.hookUp, m.hookUp.empty() ? "" : ")",
                                       ": ", text(m.before), " → ", text(m.now)});
    if (std::isfinite(m.before) && std::isfinite(m.now) && m.before != 0 && kind != units::Kind::Decibel &&
        kind != units::Kind::LevelDbu)
        words += units::joined(
            {" (", m.share() < 0 ? "−" : "+", units::write(units::Kind::Share, std::abs(m.share()), 2), ")"});
    return words;
}

}  // namespace analysis
