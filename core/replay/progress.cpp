// SPDX-License-Identifier: GPL-3.0-or-later
#include "replay/progress.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace replay {

namespace {

double between(double a, double b, double share) {
    // An axis that is not known at one end is known at neither.
    return a + (b - a) * share;
}

/// In which step each item of the order is wound.
std::map<design::ItemIndex, int> stepsOf(const Expected& expected) {
    std::map<design::ItemIndex, int> steps;
    for (int k = 0; k < static_cast<int>(expected.steps.size()); ++k)
        for (const auto& item : expected.steps[static_cast<std::size_t>(k)].items) steps[item] = k;
    return steps;
}

/// A layer of which `turns` are wound, from the end at which it begins.
coil::Layer cutAt(const coil::Layer& layer, double turns) {
    coil::Layer part = layer;
    const double share = turns / layer.turns;
    part.turns = turns;
    part.resistance20 *= share;
    if (layer.begins == design::End::Low)
        part.box.y1 = layer.box.y0 + layer.box.height() * share;
    else
        part.box.y0 = layer.box.y1 - layer.box.height() * share;
    return part;
}

/// How far out a chamber is wound: what lies inside is covered.
struct Fronts {
    std::map<int, double> outside;  ///< by chamber
    void reach(int chamber, double x) {
        const auto [at, fresh] = outside.try_emplace(chamber, x);
        if (!fresh) at->second = std::max(at->second, x);
    }
};

/// Layers wound so far; `next` learns where the first that is not wound begins, by chamber.
class Winding {
public:
    Winding(const coil::CoilBuild& build, const Expected& expected, const Progress& progress, int leg)
        : build_(build), steps_(stepsOf(expected)), progress_(progress), leg_(leg) {}

    void layers(std::vector<coil::Layer>& wound) {
        std::map<design::ItemIndex, double> before;  // turns of the section in the layers before
        for (const auto& layer : build_.layers) {
            if (layer.leg != leg_) continue;
            const double first = before[layer.item];
            before[layer.item] += layer.turns;
            const double turns = std::clamp(turnsOf(layer.item) - first, 0.0, layer.turns);
            if (turns <= 0) {
                waits(layer.chamber, layer.box.x0);
                continue;
            }
            wound.push_back(cutAt(layer, turns));
            fronts_.reach(layer.chamber, layer.box.x1);
        }
    }

    void foils(std::vector<coil::Foil>& laid) {
        for (const auto& foil : build_.foils) {
            if (foil.leg != leg_) continue;
            if (stepOf(foil.item) > progress_.step) {
                waits(foil.chamber, foil.box.x0);
                continue;
            }
            laid.push_back(foil);
            fronts_.reach(foil.chamber, foil.box.x1);
        }
    }

    /// A step without turns yet has its insulation beneath it.
    void bareStep(const Expected& expected) {
        if (progress_.step < 0 || progress_.step >= static_cast<int>(expected.steps.size())) return;
        const DueStep& step = expected.steps[static_cast<std::size_t>(progress_.step)];
        if (step.turns > 0 && progress_.turns > 0) return;
        const auto next = next_.find(step.chamber);
        fronts_.reach(step.chamber, next == next_.end() ? HUGE_VAL : next->second);  // paper on the outside
    }

    void sheets(std::vector<coil::Dielectric>& laid) const {
        for (const auto& sheet : build_.dielectrics) {
            if (sheet.bobbin) {
                laid.push_back(sheet);
                continue;
            }
            const auto front = fronts_.outside.find(sheet.chamber);
            if (sheet.leg == leg_ && front != fronts_.outside.end() && sheet.box.middle() < front->second)
                laid.push_back(sheet);
        }
    }

private:
    [[nodiscard]] int stepOf(const design::ItemIndex& item) const {
        const auto at = steps_.find(item);
        return at == steps_.end() ? static_cast<int>(steps_.size()) : at->second;
    }
    [[nodiscard]] double turnsOf(const design::ItemIndex& item) const {
        const int step = stepOf(item);
        if (step == progress_.step) return progress_.turns;
        return step < progress_.step ? HUGE_VAL : 0;
    }
    void waits(int chamber, double x) {
        const auto [at, fresh] = next_.try_emplace(chamber, x);
        if (!fresh) at->second = std::min(at->second, x);
    }

    const coil::CoilBuild& build_;
    std::map<design::ItemIndex, int> steps_;
    const Progress& progress_;
    int leg_;
    Fronts fronts_;
    std::map<int, double> next_;
};

}  // namespace

Progress progressBehind(const Run& run, std::size_t index) {
    const std::size_t at = std::min(index, run.events.size() - 1);
    const Event& event = run.events[at];
    return {event.step, event.turns, event.seconds, event.guide, at};
}

Progress progressAt(const Run& run, double seconds) {
    const auto behind = std::lower_bound(run.events.begin(), run.events.end(), seconds,
                                         [](const Event& event, double at) { return event.seconds < at; });
    if (behind == run.events.end()) return progressBehind(run, run.events.size());
    const auto index = static_cast<std::size_t>(behind - run.events.begin());
    Progress now = progressBehind(run, index);
    if (index == 0 || behind->seconds <= seconds) return now;
    const Event& before = run.events[index - 1];
    const double share = (seconds - before.seconds) / (behind->seconds - before.seconds);
    now.seconds = seconds;
    now.turns = between(before.step == behind->step ? before.turns : 0, behind->turns, share);
    now.guide = {between(before.guide.traverse, behind->guide.traverse, share),
                 between(before.guide.depth, behind->guide.depth, share),
                 between(before.guide.cross, behind->guide.cross, share)};
    return now;
}

coil::CoilBuild woundSoFar(const coil::CoilBuild& build, const Expected& expected, const Progress& progress, int leg) {
    coil::CoilBuild part = build;
    part.layers.clear();
    part.foils.clear();
    part.dielectrics.clear();
    Winding winding(build, expected, progress, leg);
    winding.layers(part.layers);
    winding.foils(part.foils);
    winding.bareStep(expected);
    winding.sheets(part.dielectrics);
    return part;
}

}  // namespace replay
