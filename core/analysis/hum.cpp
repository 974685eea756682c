// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/hum.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "network/reading.h"

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

double fieldPermeability(const magnetics::CoreModel& core, double frequency) {
    const double along = core.pathLength / (4e-7 * std::numbers::pi * core.area);
    return std::max(1.0, std::abs(magnetics::turnInductance(core, frequency)) * along);
}

LegFlux legFlux(const coil::CoilBuild& build, double permeability) {
    const bool shell = build.legs == 1;
    const double width = build.tongue + (shell ? 2 : 1) * (build.windowWidth + build.outerLeg);
    const double height = build.windowHeight + 2 * build.yoke;
    const double half = std::cbrt(6 / std::numbers::pi) / 2;  // an ellipsoid inside a box has pi/6 of its volume
    const double all = drawnFlux(half * height, half * width, half * build.stack, permeability);
    const double iron = build.tongue + (shell ? 2 : 1) * build.outerLeg;
    return {all * build.tongue / iron, shell ? 0 : all * build.outerLeg / iron};
}

double HumPickup::apart() const {
    return std::abs(first) + std::abs(second);
}

double HumPickup::left() const {
    return std::abs(first - second);
}

std::optional<HumPickup> humPickup(const Solved& solved, const Answer::Stages& stages, double frequency) {
    const auto& network = solved.network;
    const auto& c = network.circuit();
    const int observed = solved.observed();
    if (observed < 0) return {};
    const auto& port = c.ports[static_cast<std::size_t>(observed)];
    // A unit EMF in the load drives 1/Z as much as a unit current.
    const network::Complex scale = port.through.empty() ? 1 : network::throughImpedance(c, observed, frequency);
    if (std::abs(scale) == 0) return {};
    const network::Snapshot at = network.snapshot(frequency);
    const network::ComplexVector current = network.basis() * at.state.col(observed);
    HumPickup turns;  // turns of each leg as the observed terminals see them, by reciprocity
    Eigen::Index branch = 0;
    for (std::size_t k = 0; k < stages.build->layers.size(); ++k)
        for (int piece = 0; piece < stages.cut.pieces[k]; ++piece, ++branch)
            (stages.build->layers[k].leg == 1 ? turns.first : turns.second) +=
                scale * c.turns(branch) * current(branch);
    const LegFlux flux = legFlux(*stages.build, fieldPermeability(*stages.core, frequency));
    const double angular = 2 * std::numbers::pi * frequency;
    return HumPickup{angular * flux.first * turns.first, angular * flux.second * turns.second};
}

}  // namespace analysis
