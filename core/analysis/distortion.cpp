// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/distortion.h"

#include <cmath>
#include <limits>
#include <numbers>

#include "magnetics/permeability.h"
#include "units/text.h"

namespace analysis {

namespace {

using network::Complex;
constexpr int harmonicsSolved = 15;
constexpr double viewFrom = 1, viewTo = 300e3;  // Hz

Complex angular(double frequency) {
    return {0, 2 * std::numbers::pi * frequency};
}

}  // namespace

bool drivesCore(const Solved& solved) {
    const int driven = solved.driven();
    return driven >= 0 && !solved.network.circuit().ports[static_cast<std::size_t>(driven)].common;
}

double directFieldOf(const design::Design& design, const magnetics::CoreModel& core) {
    double ampereTurns = 0;
    for (const auto& direct : design.conditions.directCurrents)
        if (const auto* winding = design::winding(design, direct.winding))
            ampereTurns += direct.current * design::seriesTurns(design, *winding);
    return ampereTurns / core.pathLength;
}

LargeSignal::LargeSignal(const design::Design& design, const Solved& solved, const Answer::Stages& stages,
                         std::stop_token stop)
    : solved_(solved),
      stages_(stages),
      levelAt_(design.brief.levelAt),
      view_(solved.network.circuit(), viewFrom, viewTo, stop),
      driven_(solved.driven()),
      observed_(solved.observed() >= 0 ? solved.observed() : solved.driven()),
      direct_(directFieldOf(design, *stages.core)),
      corner_(std::numeric_limits<double>::infinity()) {
    for (const auto& block : stages.core->blocks)
        corner_ =
            std::min(corner_, magnetics::eddyCorner(block.initialPermeability, block.resistivity, block.thickness));
}

std::string LargeSignal::why() const {
    std::string why = stages_.loop->why();
    if (!stages_.loop->hysteretic())
        why += std::string(why.empty() ? "" : "; ") + "no loop is known of the alloy: its curve alone distorts";
    return why;
}

Complex LargeSignal::transfer(double frequency) const {
    const auto layout = solved_.network.layout();
    if (levelAt_ == design::LevelAt::Input) return solved_.at(frequency, layout.voltage(driven_, driven_));
    if (levelAt_ == design::LevelAt::Output) return solved_.at(frequency, layout.voltage(driven_, observed_));
    return 1;
}

double LargeSignal::emfForLevel(double frequency, double dbu) const {
    return units::voltsOfDbu(dbu) / std::abs(transfer(frequency));
}

Driven LargeSignal::at(double frequency, double emf, const Cycle* start) const {
    const auto& core = *stages_.core;
    const auto layout = solved_.network.layout();
    const double lambda = magnetics::turnInductance(core, 0).real();
    const double half = emf / std::numbers::sqrt2;  // coefficient of the fundamental
    Surroundings around;
    around.load.resize(harmonicsSolved + 1);
    for (int k = 1; k <= harmonicsSolved; ++k) {
        const Complex seen = view_.impedance(k * frequency);
        around.load[static_cast<std::size_t>(k)] =
            (angular(k * frequency) / seen - 1 / lambda) * core.area / core.pathLength;
    }
    const Complex coreVoltage = solved_.at(frequency, layout.coreVoltage(driven_));
    around.drive = coreVoltage * half / view_.impedance(frequency) / core.pathLength;
    around.direct = direct_;

    Driven result;
    result.emf = emf;
    result.cycle =
        steadyCycle(*stages_.loop, stages_.loop->atRest(), around, start ? start->wave : std::vector<Complex>{});
    const auto& cycle = result.cycle;
    const auto excess = [&](int k) {
        const auto i = static_cast<std::size_t>(k);
        return core.pathLength * cycle.field[i] - core.area * cycle.flux[i] / lambda;
    };
    const auto voltage = [&](int port, int k) {
        Complex v = -view_.atPort(k * frequency, port) * excess(k);
        if (k == 1) v += solved_.at(frequency, layout.voltage(driven_, port)) * half;
        return std::numbers::sqrt2 * std::abs(v);
    };
    const double fundamental = voltage(observed_, 1);
    double sum = 0;
    for (int k = 2; k <= harmonicsSolved; ++k) {
        const bool any = cycle.flux[static_cast<std::size_t>(k)] != 0.0;
        const double ratio = any ? voltage(observed_, k) / fundamental : 0;
        sum += ratio * ratio;
        if (k <= lastHarmonic) result.harmonics[static_cast<std::size_t>(k - firstHarmonic)] = 20 * std::log10(ratio);
    }
    result.thd = std::sqrt(sum);
    const bool atEmf = levelAt_ == design::LevelAt::Emf;
    result.level =
        units::dbuOfVolts(atEmf ? emf : voltage(levelAt_ == design::LevelAt::Input ? driven_ : observed_, 1));
    result.inductance = (core.area * cycle.flux[1] / (core.pathLength * cycle.field[1])).real();
    return result;
}

}  // namespace analysis
