// SPDX-License-Identifier: GPL-3.0-or-later
#include "magnetics/plays.h"

#include <cmath>
#include <numbers>

namespace magnetics {
namespace {

/// The branch that leads to a place: how many reversals stay remembered; the one it starts from is the last of these,
/// or the place now when the way turns here; none: the curve from rest.
struct Way {
    std::size_t kept = 0;
    bool turnsHere = false;
};

Way wayTo(const PlayMemory& memory, double v) noexcept {
    const std::vector<PlayMemory::Reversal>& known = memory.reversals;
    const bool wentUp = known.empty() ? memory.v > 0 : memory.v > known.back().v;
    const bool up = v == memory.v ? wentUp : v > memory.v;
    const bool atRest = known.empty() && memory.v == 0;
    std::size_t count = known.size();
    const bool turns = !atRest && up != wentUp;
    if (turns) ++count;
    const auto place = [&](std::size_t i) { return i < known.size() ? known[i].v : memory.v; };
    while (count > 0) {
        const double closes = count == 1 ? -place(0) : place(count - 2);
        if (up ? v <= closes : v >= closes) break;
        count -= count == 1 ? 1 : 2;
    }
    const bool here = turns && count == known.size() + 1;
    return {here ? known.size() : count, here};
}

CurvePlace along(const Plays& plays, const PlayMemory& memory, Way way, double v) noexcept {
    if (way.kept == 0 && !way.turnsHere) {
        const CurvePlace place = plays.fromRest(std::abs(v));
        return {std::copysign(place.value, v), place.slope};
    }
    const PlayMemory::Reversal from =
        way.turnsHere ? PlayMemory::Reversal{memory.v, memory.u} : memory.reversals[way.kept - 1];
    const CurvePlace place = plays.fromRest(std::abs(v - from.v) / 2);
    return {from.u + std::copysign(2 * place.value, v - from.v), place.slope};
}

}  // namespace

Plays::Plays(double slack, double ratio) noexcept {
    const double q = std::numbers::pi * slack * ratio;
    const double s = 2 / (std::sqrt(q + 4) + std::sqrt(q));
    direct_ = s * s;
    density_ = 2 * direct_ * ratio;
    range_ = std::sqrt(2 * slack / density_);
}

CurvePlace Plays::fromRest(double v) const noexcept {
    if (density_ == 0) return {v, 1};
    const double x = v / range_;
    const double root = std::sqrt(std::numbers::pi) / 2;
    const double sum = density_ * range_ * root * std::erf(x);
    return {direct_ * v + v * sum + density_ * range_ * range_ / 2 * std::expm1(-x * x), direct_ + sum};
}

CurvePlace lookAhead(const Plays& plays, const PlayMemory& memory, double v) noexcept {
    return along(plays, memory, wayTo(memory, v), v);
}

void follow(const Plays& plays, PlayMemory& memory, double v) {
    if (v == memory.v) return;
    const Way way = wayTo(memory, v);
    const double u = along(plays, memory, way, v).value;
    memory.reversals.resize(way.kept);
    if (way.turnsHere) memory.reversals.push_back({memory.v, memory.u, memory.mark});
    memory.v = v;
    memory.u = u;
    memory.mark = -1;
}

}  // namespace magnetics
