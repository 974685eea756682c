// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/distortion.h"

#include <cmath>
#include <limits>
#include <numbers>

#include "analysis/direct_current.h"
#include "magnetics/permeability.h"
#include "network/in_parallel.h"
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

LargeSignal::LargeSignal(const design::Design& design, const Solved& solved, const Answer::Stages& stages,
                         bool sweeping, const std::stop_token& stop, LoopKind loop)
    : solved_(solved),
      stages_(stages),
      levelAt_(design.brief.levelAt),
      view_(sweeping ? CoreView(solved.network.circuit(), viewFrom, viewTo, stop) : CoreView(solved.network.circuit())),
      driven_(solved.driven()),
      observed_(solved.observed() >= 0 ? solved.observed() : solved.driven()),
      direct_(directFieldOf(design, solved, stages)),
      past_(pastOf(design, solved, stages)),
      corner_(std::numeric_limits<double>::infinity()),
      stop_(stop),
      loop_(loop) {
    for (const auto& b : stages.core->blocks)
        if (b.resistivity > 0)
            corner_ = std::min(corner_, magnetics::eddyCorner(b.initialPermeability, b.resistivity, b.thickness));
}

std::string LargeSignal::why() const {
    std::string why = stages_.loop->why();
    if (!stages_.loop->hysteretic())
        why += std::string(why.empty() ? "" : "; ") + "no loop is known of the alloy: its curve alone distorts";
    return why;
}

LargeSignal::Linear LargeSignal::linear(double frequency) const {
    const auto& core = *stages_.core;
    const auto layout = solved_.network.layout();
    Linear linear;
    linear.frequency = frequency;
    if (loop_ == LoopKind::BehindEddies && frequency > eddiesFrom * corner_)
        linear.eddies = std::make_shared<EddyBalance>(*stages_.loop, frequency);
    linear.around.load.resize(harmonicsSolved + 1);
    if (linear.eddies) linear.eddyLoad.resize(linear.around.load.size());
    for (int k = 1; k <= harmonicsSolved; ++k) {
        linear.seen.push_back(view_.at(k * frequency));
        const auto load = [&](bool eddies) {
            const Complex own = 1.0 / inductance(k * frequency, eddies);
            return (angular(k * frequency) / linear.seen.back().impedance - own) * core.area / core.pathLength;
        };
        linear.around.load[static_cast<std::size_t>(k)] = load(false);
        if (linear.eddies) linear.eddyLoad[static_cast<std::size_t>(k)] = load(true);
    }
    const network::ComplexVector outputs = solved_.at(frequency);
    // Half the peak of a sine of 1 V rms.
    linear.around.drive =
        outputs(layout.coreVoltage(driven_)) / std::numbers::sqrt2 / linear.seen.front().impedance / core.pathLength;
    linear.around.direct = direct_;
    linear.toDriven = outputs(layout.voltage(driven_, driven_));
    linear.toObserved = outputs(layout.voltage(driven_, observed_));
    if (levelAt_ == design::LevelAt::Input) linear.toLevel = std::abs(linear.toDriven);
    if (levelAt_ == design::LevelAt::Output) linear.toLevel = std::abs(linear.toObserved);
    return linear;
}

double LargeSignal::emfForLevel(const Linear& linear, double dbu) {
    return units::voltsOfDbu(dbu) / linear.toLevel;
}

/// The core's inductance of a turn that what its loop does is told against, H.
Complex LargeSignal::inductance(double frequency, bool behindEddies) const {
    return magnetics::turnInductance(*stages_.core, behindEddies ? frequency : 0);
}

bool LargeSignal::settleBehindEddies(const Linear& linear, double emf, const Cycle* start, Cycle& cycle) const {
    if (!linear.eddies) return false;
    Surroundings around = linear.around;
    around.load = linear.eddyLoad;
    around.drive *= emf;
    cycle = linear.eddies->steadyCycle(past_, around, start);
    return cycle.settled || linear.frequency > corner_;
}

Driven LargeSignal::at(const Linear& linear, double emf, const Cycle* start) const {
    const auto& core = *stages_.core;
    Driven result;
    result.emf = emf;
    result.harmonics.fill(-std::numeric_limits<double>::infinity());
    result.cycle.fluxes = result.cycle.fields = {0};
    if (stop_.stop_requested()) return result;
    const bool eddies = settleBehindEddies(linear, emf, start, result.cycle);
    if (!eddies) {
        Surroundings around = linear.around;
        around.drive *= emf;
        const bool near = start != nullptr && start->wave.size() == around.load.size();
        result.cycle = steadyCycle(*stages_.loop, past_, around, near ? start->wave : std::vector<Complex>{});
    }
    const auto& cycle = result.cycle;
    const auto voltage = [&](int port, int k) {  // V rms
        const auto i = static_cast<std::size_t>(k);
        const Complex excess = core.pathLength * cycle.field[i] -
                               core.area * cycle.flux[i] / inductance(double(k) * linear.frequency, eddies);
        const Complex drop = linear.seen[i - 1].atPorts[static_cast<std::size_t>(port)] * excess * std::numbers::sqrt2;
        if (k > 1) return std::abs(drop);
        return std::abs((port == driven_ ? linear.toDriven : linear.toObserved) * emf - drop);
    };
    const double fundamental = voltage(observed_, 1);
    double sum = 0;
    for (int k = firstHarmonic; k <= harmonicsSolved; ++k) {
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

void LargeSignal::demagnetise() {
    direct_ = 0;
    past_ = stages_.loop->atRest();
}

double levelOfDistortion(const LargeSignal& large, const LargeSignal::Linear& linear, double share, double from,
                         double to) {
    constexpr double step = 6;
    constexpr int refinements = 9;
    const auto state = [&](double level, const Driven* near) {
        return large.at(linear, LargeSignal::emfForLevel(linear, level), near ? &near->cycle : nullptr);
    };
    const auto crossing = [&](const Driven& a, const Driven& b) {
        return a.level + (b.level - a.level) * std::log(share / a.thd) / std::log(b.thd / a.thd);
    };
    Driven low = state(from, nullptr);
    if (low.thd >= share) return low.level;
    for (double level = from + step; level < to + step; level += step) {
        Driven high = state(std::min(level, to), &low);
        if (high.cycle.settled && high.thd >= share) {
            double lowLevel = level - step, highLevel = std::min(level, to);
            for (int k = 0; k < refinements; ++k) {
                const double middle = (lowLevel + highLevel) / 2;
                Driven between = state(middle, &low);
                if (between.thd >= share) {
                    high = std::move(between);
                    highLevel = middle;
                } else {
                    low = std::move(between);
                    lowLevel = middle;
                }
            }
            return crossing(low, high);
        }
        if (high.cycle.settled) low = std::move(high);
    }
    return std::numeric_limits<double>::infinity();
}

std::vector<DistortionRow> distortionTable(const design::Design& design, const Answer& answer,
                                           const std::vector<double>& frequencies, const std::vector<double>& levels,
                                           const std::stop_token& stop, LoopKind loop) {
    if (!answer.stages) return {};
    const auto found = answer.stages->solved.find(answer.hookUp);
    if (found == answer.stages->solved.end() || !drivesCore(*found->second)) return {};
    const LargeSignal large(design, *found->second, *answer.stages, true, stop, loop);
    std::vector<DistortionRow> rows(frequencies.size() * levels.size());
    network::inParallel(frequencies.size(), [&](std::size_t i) {
        const auto linear = large.linear(frequencies[i]);
        Driven before;
        for (std::size_t k = 0; k < levels.size(); ++k) {
            if (stop.stop_requested()) return;
            Driven now = large.at(linear, LargeSignal::emfForLevel(linear, levels[k]), k > 0 ? &before.cycle : nullptr);
            const double thd = now.cycle.settled ? now.thd : std::numeric_limits<double>::quiet_NaN();
            rows[i * levels.size() + k] = {frequencies[i], now.level, thd, now.harmonics};
            before = std::move(now);
        }
    });
    return rows;
}

}  // namespace analysis
