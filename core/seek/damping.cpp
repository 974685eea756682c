// SPDX-License-Identifier: GPL-3.0-or-later
#include "seek/damping.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "analysis/alike.h"
#include "design/edit.h"
#include "seek/least.h"

namespace seek {

namespace {

constexpr double from = 1000, to = 1e6;  // Hz
constexpr int points = 241;              // eighty a decade

/// The hook-up alone and first, and nothing promised: all else would only cost time.
design::Design bare(const design::Design& design, const std::string& hookUp) {
    design::Design d = design;
    const auto* wanted = design::hookUp(design, hookUp);
    d.hookUps = {wanted != nullptr ? *wanted : design.hookUps.front()};
    d.brief.promises.clear();
    d.brief.masks.clear();
    return d;
}

design::PortUse* observedPort(design::HookUp& hookUp) {
    for (auto& use : hookUp.ports)
        if (use.role == design::Role::Observe) return &use;
    return nullptr;
}

void addBranch(design::HookUp& hookUp, const SeriesRC& branch) {
    if (auto* use = observedPort(hookUp)) {
        design::Branch b;
        b.resistance = branch.resistance;
        b.capacitance = branch.capacitance;
        use->across.push_back(std::move(b));
    }
}

/// One hook-up's response with any branch across its observed port.
class Unit {
public:
    Unit(const design::Design& design, const catalog::Catalog& shop, const std::stop_token& stop)
        : design_(design),
          frequencies_(analysis::logarithmicGrid(from, to, points)),
          alike_(design, shop, {{}, frequencies_}),
          stop_(stop) {}

    [[nodiscard]] std::vector<double> levels(const SeriesRC* branch) const {
        design::Design d = design_;
        if (branch != nullptr) addBranch(d.hookUps.front(), *branch);
        auto levels = alike_.found(d, stop_).response;
        levels.resize(frequencies_.size(), 0);
        return levels;
    }
    [[nodiscard]] const std::vector<double>& frequencies() const { return frequencies_; }

private:
    const design::Design& design_;
    std::vector<double> frequencies_;
    analysis::Alike alike_;
    const std::stop_token& stop_;
};

std::size_t placeOfPeak(const std::vector<double>& levels) {
    return static_cast<std::size_t>(std::max_element(levels.begin(), levels.end()) - levels.begin());
}

double greatestDeviation(const std::vector<double>& levels, std::size_t upTo) {
    double greatest = 0;
    for (std::size_t k = 0; k <= upTo; ++k) greatest = std::max(greatest, std::abs(levels[k]));
    return greatest;
}

double upperEnd(const std::vector<double>& frequencies, const std::vector<double>& levels) {
    constexpr double halfPower = -3.0103;
    for (std::size_t k = 1; k < levels.size(); ++k)
        if (levels[k] <= halfPower) {
            const double share = (levels[k - 1] - halfPower) / (levels[k - 1] - levels[k]);
            return frequencies[k - 1] * std::pow(frequencies[k] / frequencies[k - 1], share);
        }
    return 0;
}

/// Area between a step and 1 up to `end`, the step taken against its value there.
double stepArea(const design::Design& design, const catalog::Catalog& shop, double end, const std::stop_token& stop) {
    analysis::Question question;
    question.everyHookUp = false;
    const auto answer = analysis::answer(design, shop, {}, stop, question);
    const auto* trace = answer->trace("step");
    if (trace == nullptr || trace->curves.empty()) return 0;
    const auto& time = trace->frequency;
    const auto& y = trace->curves.front().y;
    const auto last = static_cast<std::size_t>(std::lower_bound(time.begin(), time.end(), end) - time.begin());
    double area = 0;
    const double settled = y[std::min(last, y.size() - 1)];
    for (std::size_t k = 1; k <= last && k < y.size(); ++k) {
        const double a = std::abs(y[k - 1] / settled - 1), b = std::abs(y[k] / settled - 1);
        area += (a + b) / 2 * (time[k] - time[k - 1]);
    }
    return area;
}

}  // namespace

SeriesRC closedFormDamping(double inductance, double capacitance, double n) {
    return {std::sqrt(inductance / capacitance) * std::sqrt((1 + n) * (2 + n) / 2) / n, n * capacitance};
}

SeriesRC leastDeviation(const Deviation& deviation, const SeriesRC& start, bool capacitanceHeld,
                        const std::stop_token& stop) {
    const double resistances = std::log(30.0), capacitances = std::log(6.0);
    const auto branch = [&](const std::vector<double>& at) {
        return SeriesRC{start.resistance * std::exp(at[0]),
                        start.capacitance * (capacitanceHeld ? 1 : std::exp(at[1]))};
    };
    Problem problem;
    problem.low = {-resistances};
    problem.high = {resistances};
    problem.start = {0};
    if (!capacitanceHeld) {
        problem.low.push_back(-capacitances);
        problem.high.push_back(capacitances);
        problem.start.push_back(0);
    }
    problem.step = 0.1;
    problem.tolerance = 1e-3;
    problem.evaluations = 80;
    problem.value = [&](const std::vector<double>& at, std::vector<double>&) { return deviation(branch(at)); };
    return branch(least(problem, stop).at);
}

Damping damping(const design::Design& design, const catalog::Catalog& shop, const std::string& hookUp, DampingAim aim,
                const std::stop_token& stop) {
    const design::Design alone = bare(design, hookUp);
    Damping found;
    found.hookUp = alone.hookUps.front().name;
    for (const auto& use : alone.hookUps.front().ports)
        if (use.role == design::Role::Observe) found.port = use.port;
    const Unit unit(alone, shop, stop);
    const auto before = unit.levels(nullptr);
    const std::size_t peak = placeOfPeak(before);
    constexpr double worthTaming = 0.05;  // dB
    if (before[peak] < worthTaming || peak == 0 || found.port.empty()) return found;
    found.resonant = true;
    found.resonance = unit.frequencies()[peak];
    // Two known capacitances across the port move the peak; from them follow the port's own and the leakage.
    const double w = 2 * std::numbers::pi * found.resonance;
    const auto movedBy = [&](double capacitance) {
        const SeriesRC probe{0, capacitance};
        return unit.frequencies()[placeOfPeak(unit.levels(&probe))] / found.resonance;
    };
    double probe = 1e-12, moved = 1;
    while (probe < 1e-6 && (moved = movedBy(probe)) > 0.75 && !stop.stop_requested()) probe *= 2;
    // (w / w')^2 = (C + c) / C
    const double own = probe / std::max(0.05, 1 / (moved * moved) - 1);
    const SeriesRC start = closedFormDamping(1 / (w * w * own), own, 2);
    const double end = 10 / found.resonance;
    const auto flat = [&](const SeriesRC& branch) { return greatestDeviation(unit.levels(&branch), peak); };
    const auto clean = [&](const SeriesRC& branch) {
        return stepArea(*withDamping(alone, found.hookUp, branch), shop, end, stop);
    };
    found.branch = leastDeviation(aim == DampingAim::Flat ? Deviation(flat) : Deviation(clean), start, false, stop);
    const auto after = unit.levels(&found.branch);
    found.peakBefore = before[peak];
    found.peakAfter = std::max(0.0, after[placeOfPeak(after)]);
    found.deviationBefore =
        aim == DampingAim::Flat ? greatestDeviation(before, peak) : stepArea(alone, shop, end, stop);
    found.deviationAfter = aim == DampingAim::Flat ? flat(found.branch) : clean(found.branch);
    found.highBefore = upperEnd(unit.frequencies(), before);
    found.highAfter = upperEnd(unit.frequencies(), after);
    return found;
}

design::DesignPtr withDamping(const design::Design& design, const std::string& hookUp, const SeriesRC& branch) {
    return design::changed(design, [&](design::Design& d) {
        for (auto& h : d.hookUps)
            if (h.name == hookUp) addBranch(h, branch);
    });
}

}  // namespace seek
