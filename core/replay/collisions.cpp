// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "replay/comparison.h"
#include "units/joined.h"
#include "units/text.h"

namespace replay {

namespace {

using units::joined;

constexpr double rounding = 2e-6;  // of a place in the program, m
constexpr double pinRadius =
    0.5e-3;  // of a pin with the guide's tip, m; bobbins give no thickness: common practice, no source

/// The chamber that a place along the coil lies in; -1: over a flange or beyond.
int roomAt(const Surroundings& around, double traverse) {
    for (std::size_t k = 0; k < around.rooms.size(); ++k)
        if (traverse >= around.rooms[k].first - rounding && traverse <= around.rooms[k].second + rounding)
            return static_cast<int>(k);
    return -1;
}

const PinStand* pinNear(const Surroundings& around, double from, double to) {
    for (const PinStand& pin : around.pins)
        if (pin.traverse + pinRadius >= std::min(from, to) && pin.traverse - pinRadius <= std::max(from, to))
            return &pin;
    return nullptr;
}

std::string at(int line) {
    return joined({"line ", std::to_string(line), ": "});
}

/// What a stretch of winding runs into; "" if nothing.
std::string windingHit(const Stretch& s, const Surroundings& around) {
    if (std::isnan(s.from.traverse)) return {};
    const int from = roomAt(around, s.from.traverse), to = roomAt(around, s.to.traverse);
    if (from == to && from >= 0) return {};
    const double bad = from < 0 ? s.from.traverse : s.to.traverse;
    const PinStand* pin = pinNear(around, bad, bad);
    return joined({at(s.line), "the guide winds at ", units::write(units::Kind::Length, bad, 4),
                   pin != nullptr ? ", over the flange and into the sweep of pin " + std::to_string(pin->number)
                                  : ", over the flange"});
}

/// What a move with the spindle standing runs into; "" if nothing.
std::string moveHit(const Move& m, const Surroundings& around, double clearance) {
    if (std::isnan(m.from.traverse) || std::isnan(m.to.traverse)) return {};
    const int from = roomAt(around, m.from.traverse), to = roomAt(around, m.to.traverse);
    if (from == to && from >= 0) return {};
    const double depth = std::isnan(m.from.depth) ? m.to.depth : std::min(m.from.depth, m.to.depth);
    if (!(depth >= around.flangeTop - rounding))
        return joined({at(m.line), "the guide runs into the flange, at a depth of ",
                       units::write(units::Kind::Length, depth, 4), " where the flange reaches ",
                       units::write(units::Kind::Length, around.flangeTop, 4)});
    const PinStand* pin = pinNear(around, m.from.traverse, m.to.traverse);
    if (pin == nullptr || depth >= around.flangeTop + clearance - rounding) return {};
    return joined({at(m.line), "the guide passes pin ", std::to_string(pin->number), " at a depth of ",
                   units::write(units::Kind::Length, depth, 4), ", nearer than the clearance"});
}

}  // namespace

std::vector<std::string> collisions(const Run& run, const Surroundings& around, const Machine& machine) {
    std::vector<std::string> all;
    const auto add = [&](std::string words) {
        if (!words.empty()) all.push_back(std::move(words));
    };
    if (!machine.traverse) return all;
    for (const Stretch& s : run.stretches) add(windingHit(s, around));
    if (!machine.depth) return all;  // the guide then stands outside the flanges for good
    for (const Move& m : run.moves) add(moveHit(m, around, machine.clearance));
    return all;
}

}  // namespace replay
