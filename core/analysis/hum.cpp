// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/hum.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "analysis/figure_making.h"
#include "units/text.h"

namespace analysis {

double shellScreening(const std::vector<Shell>& shells) {
    double a = 1, b = 0;  // A and B of the region reached
    const auto pass = [&](double radius, double inside, double outside) {
        const double cube = radius * radius * radius, here = b / cube;
        const double next = (a + here - inside / outside * (a - 2 * here)) / 3;
        a += here - next;
        b = next * cube;
    };
    for (const auto& shell : shells) {
        pass(shell.innerRadius, 1, shell.permeability);
        pass(shell.outerRadius, shell.permeability, 1);
    }
    return a;
}

std::vector<Shell> shellsOf(const design::Core& core) {
    std::vector<Shell> shells;
    shells.reserve(core.cans.size());
    for (const auto& can : core.cans)
        shells.push_back({can.diameter / 2 - can.thickness, can.diameter / 2, can.permeability});
    return shells;
}

double demagnetisingFactor(double along, double second, double third) {
    // s = a^2 t^-2 (1 - t^2): t from 0 to 1, the integrand smooth; Simpson's rule.
    const double b = second / along, c = third / along;
    const auto integrand = [&](double t) {
        const double t2 = t * t;
        return t2 / std::sqrt((1 - t2 + b * b * t2) * (1 - t2 + c * c * t2));
    };
    // Near t = 1 a flat body's integrand is steep: t = sin(u) spreads it.
    constexpr int steps = 2000;
    const double step = std::numbers::pi / 2 / steps;
    double sum = 0;
    for (int k = 0; k <= steps; ++k) {
        const double u = k * step, weight = k == 0 || k == steps ? 1 : k % 2 == 1 ? 4 : 2;
        sum += weight * integrand(std::sin(u)) * std::cos(u);
    }
    return b * c * sum * step / 3;
}

double drawnFlux(double along, double second, double third, double permeability) {
    const double factor = demagnetisingFactor(along, second, third);
    return permeability / (1 + factor * (permeability - 1)) * std::numbers::pi * second * third;
}

LegFlux legFlux(const coil::CoilBuild& build, const magnetics::CoreModel& core, double frequency) {
    const bool shell = build.legs == 1;
    const double width = build.tongue + (shell ? 2 : 1) * (build.windowWidth + build.outerLeg);
    const double height = build.windowHeight + 2 * build.yoke;
    const double permeability =
        std::abs(magnetics::turnInductance(core, frequency)) * core.pathLength / (4e-7 * std::numbers::pi * core.area);
    const double all = drawnFlux(height / 2, width / 2, build.stack / 2, std::max(1.0, permeability));
    const double iron = build.tongue + (shell ? 2 : 1) * build.outerLeg;
    return {all * build.tongue / iron, shell ? 0 : all * build.outerLeg / iron};
}

namespace {

/// Voltage at the observed terminals per volt a turn, from turns of either leg: by reciprocity the currents that flow
/// under a unit current out of those terminals.
struct LegTransfer {
    network::Complex first = 0, second = 0;
};

LegTransfer legTransfer(const HookUpContext& context, double frequency) {
    const auto& network = context.solved.network;
    const auto& c = network.circuit();
    const int observed = context.solved.observed();
    const network::Snapshot at = network.snapshot(frequency);
    const network::ComplexVector current = network.basis() * at.state.col(observed);
    const auto& port = c.ports[static_cast<std::size_t>(observed)];
    // A unit EMF in the load drives 1/Z as much as a unit current.
    const network::Complex scale = port.through.empty() ? 1 : network::throughImpedance(c, observed, frequency);
    LegTransfer transfer;
    Eigen::Index branch = 0;
    for (std::size_t k = 0; k < context.stages.build->layers.size(); ++k)
        for (int piece = 0; piece < context.stages.cut.pieces[k]; ++piece, ++branch)
            (context.stages.build->layers[k].leg == 1 ? transfer.first : transfer.second) +=
                scale * c.turns(branch) * current(branch);
    return transfer;
}

}  // namespace

void addHumFigures(const HookUpContext& context, std::vector<units::Figure>& figures) {
    constexpr double mains = 50, tesla = 1e-6;
    // No two legs and no field are so equal that more than this cancels (common practice, no source).
    constexpr double leastLeft = 0.01;
    const int observed = context.solved.observed();
    if (observed < 0) return;
    const auto& port = context.solved.network.circuit().ports[static_cast<std::size_t>(observed)];
    if (!port.through.empty() &&
        std::abs(network::throughImpedance(context.solved.network.circuit(), observed, mains)) == 0)
        return;
    const LegFlux flux = legFlux(*context.stages.build, *context.stages.core, mains);
    const LegTransfer transfer = legTransfer(context, mains);
    const double first = std::abs(transfer.first) * flux.first, second = std::abs(transfer.second) * flux.second;
    const double left = std::hypot(std::abs(transfer.first * flux.first - transfer.second * flux.second),
                                   leastLeft * std::min(first, second));
    const double screening = std::abs(shellScreening(shellsOf(context.design.core)));
    const double volts = 2 * std::numbers::pi * mains * tesla * left / screening;
    const std::vector<std::string> ports{port.name};
    const char* source =
        "uniform field of 1 uT at 50 Hz along the legs, the worst axis; core drawn as an ellipsoid of its overall size";
    figures.push_back(hookUpFigure(context, "hum_1uT_50Hz", units::dbuOfVolts(volts), "dBu", 6, source, ports));
    if (context.stages.build->legs == 2 && left > 0)
        figures.push_back(hookUpFigure(context, "hum_cancelled", 20 * std::log10((first + second) / left), "dB", 3,
                                       "pickup of both legs added over what is left of it in a uniform field", ports));
    if (context.design.core.cans.empty()) return;
    auto can = hookUpFigure(context, "screening_50Hz", 20 * std::log10(screening), "dB", 6,
                            "closed spherical shells in a uniform field", ports);
    if (can.valid) can.why = "an upper bound: the lid's gap and strained sheet let in more";
    figures.push_back(std::move(can));
}

}  // namespace analysis
