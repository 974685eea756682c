// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/winding_strokes.h"

#include <algorithm>
#include <cmath>

namespace exchange {

namespace {

constexpr double secondsAMinute = 60;

/// The fastest that a layer may be wound, turns a minute.
int layerSpeed(const PlannedLayer& layer, const Winder& winder) {
    const auto& s = winder.spindle;
    double rpm = layer.still ? s.slowRpm : s.highestRpm;
    if (layer.turnLength > 0) rpm = std::min(rpm, s.wireSpeed / layer.turnLength * secondsAMinute);
    if (winder.traverse && !layer.still && layer.pitch > 0)
        rpm = std::min(rpm, winder.traverse->speed / layer.pitch * secondsAMinute);
    return static_cast<int>(std::max(std::ceil(s.lowestRpm), std::floor(rpm)));
}

/// Where a layer is cut, in turns of the step, its own two ends among them.
std::vector<double> cuts(const PlannedStep& step, const PlannedLayer& layer, const Winder& winder) {
    const double end = layer.first + layer.turns;
    std::vector<double> at{layer.first, end};
    const double slow = std::floor(std::min(winder.spindle.slowTurns, layer.turns / 3));
    if (!winder.spindle.letter.empty() && !layer.still && slow >= 1) at.push_back(layer.first + slow);
    if (winder.traverse && !layer.still && layer.turns > 1) at.push_back(end - 1);
    for (const auto& stop : step.stops)
        if (stop.after > layer.first && stop.after < end) at.push_back(stop.after);
    for (double& one : at) one = counted(one, winder);
    std::sort(at.begin(), at.end());
    at.erase(std::unique(at.begin(), at.end()), at.end());
    return at;
}

bool stopsAt(const PlannedStep& step, double turns, const Winder& winder) {
    return std::any_of(step.stops.begin(), step.stops.end(),
                       [&](const PlannedStop& stop) { return !stop.opening && counted(stop.after, winder) == turns; });
}

/// Slows what comes before a stand or a slower stroke, from the last stroke to the first.
void slowDown(std::vector<Stroke>& all, const Winder& winder) {
    const auto allowed = [&](double out, double turns) {
        const double a = winder.spindle.acceleration;
        return std::floor(std::sqrt(out * out + 2 * a * turns) * secondsAMinute);
    };
    double entry = 0;  // turns/s with which the stroke behind may be entered
    for (std::size_t k = all.size(); k-- > 0;) {
        Stroke& stroke = all[k];
        const bool stands = k + 1 == all.size() || all[k + 1].rests;
        const double out = stands ? 0 : std::min({entry, stroke.rpm / secondsAMinute, all[k + 1].rpm / secondsAMinute});
        entry = allowed(out, stroke.turns) / secondsAMinute;
        // It is entered with the slower of its own speed and that of the one before.
        if (k > 0 && !stroke.rests && std::min(stroke.rpm, all[k - 1].rpm) / secondsAMinute > entry)
            stroke.rpm = std::max(static_cast<int>(std::ceil(winder.spindle.lowestRpm)),
                                  static_cast<int>(std::floor(entry * secondsAMinute)));
    }
}

}  // namespace

double counted(double turns, const Winder& winder) {
    const double scale = std::pow(10.0, winder.counter.decimals);
    return std::round(turns * scale) / scale;
}

std::vector<Stroke> strokes(const PlannedStep& step, const Winder& winder) {
    std::vector<Stroke> all;
    double stands = -1;  // the guide's place; -1: not yet anywhere
    const double sameplace = 1e-9;
    for (std::size_t n = 0; n < step.layers.size(); ++n) {
        const auto& layer = step.layers[n];
        const std::vector<double> at = cuts(step, layer, winder);
        const int fast = layerSpeed(layer, winder);
        const int slow = std::min(fast, static_cast<int>(winder.spindle.slowRpm));
        for (std::size_t k = 0; k + 1 < at.size(); ++k) {
            Stroke one;
            one.first = at[k];
            one.turns = at[k + 1] - at[k];
            one.from = layer.guide(at[k] - layer.first);
            one.to = layer.guide(at[k + 1] - layer.first);
            one.depth = layer.outside + winder.standoff;
            one.pitch = std::abs(one.to - one.from) / one.turns;
            if (one.pitch < sameplace) one.pitch = 0;
            one.layer = static_cast<int>(n) + 1;
            one.rpm = k == 0 || k + 2 == at.size() ? slow : fast;
            one.rests = all.empty() || stopsAt(step, one.first, winder) ||
                        (winder.traverse && std::abs(one.from - stands) > sameplace);
            stands = one.to;
            all.push_back(one);
        }
    }
    slowDown(all, winder);
    return all;
}

}  // namespace exchange
