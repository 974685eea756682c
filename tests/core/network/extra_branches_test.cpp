// SPDX-License-Identifier: GPL-3.0-or-later
// Branches without turns: a circuit closed in itself, half turns on a shell core, lead-outs.
#include "network/extra_branches.h"

#include <gtest/gtest.h>

#include <Eigen/Dense>
#include <cmath>

#include "analysis/answer.h"
#include "coil/lead_outs.h"
#include "lumped_circuit.h"
#include "magnetics/permeability.h"
#include "network/unequal_legs.h"
#include "small_figure.h"

namespace extra_branches_test {

using small::validFigure;

using network::Complex;
using network::Matrix;
using network::Vector;
constexpr double pi = std::numbers::pi;

TEST(ClosedBranch, IsAShortedSecondary) {
    // w^2 M^2 / (R + jwL) on top of the primary's own.
    auto c = lumped::circuit(1, 1e-12);
    lumped::addWinding(c, 0, network::earth, 1, 2, 5e-3);
    network::ExtraBranches loop;
    loop.ends = {{}};
    loop.resistance = Vector::Constant(1, 3.0);
    loop.bareDiameter = Vector::Zero(1);
    loop.inductance = Matrix::Constant(1, 1, 4e-3);
    loop.mutual = Matrix::Constant(1, 1, 2e-3);
    network::addBranches(c, loop);
    lumped::addPort(c, "in", 0, design::Role::Drive, 50);
    const network::Prepared net(c);
    for (const double f : {10.0, 100.0, 5e3}) {
        const double w = 2 * pi * f;
        const Complex expected = 2.0 + Complex(0, w * 5e-3) + w * w * 4e-6 / (3.0 + Complex(0, w * 4e-3));
        const Complex found = net.solve(f)(net.layout().impedance(0));
        EXPECT_LT(std::abs(found - expected), 1e-6 * std::abs(expected)) << f;
        const auto reduced = network::withoutClosed(c, network::windingImpedance(net.circuit(), f));
        EXPECT_LT(std::abs(reduced(0, 0) - expected), 1e-6 * std::abs(expected)) << f;
    }
}

magnetics::CoreModel shell(double gap) {
    magnetics::CoreModel core;
    core.area = 2e-4;
    core.pathLength = 0.1;
    core.outerArea = 1.8e-4;
    core.outerPath = 0.065;
    core.gap = gap;
    magnetics::StackBlock block;
    block.share = 0.6;
    block.initialPermeability = 40000;
    block.thickness = 0.35e-3;
    block.resistivity = 5.5e-7;
    core.blocks = {block, block};
    core.blocks[1].share = 0.4;
    core.blocks[1].initialPermeability = 2000;
    core.blocks[1].thickness = 0.5e-3;
    return core;
}

class SecondFluxOverGap : public testing::TestWithParam<double> {};

TEST_P(SecondFluxOverGap, FollowsTheSheetsEddyCurrents) {
    const auto loop = magnetics::outerLoop(shell(GetParam()));
    const auto second = network::secondFlux(loop, Vector::Constant(1, 0.5));
    for (double f = 1; f <= 1e6; f *= 3.7) {
        const Complex jw(0, 2 * pi * f);
        network::ComplexMatrix loops = jw * second.loops.inductance.cast<Complex>();
        loops.diagonal() += second.loops.resistance.cast<Complex>();
        const network::ComplexMatrix mutual = jw * second.loops.mutual.cast<Complex>();
        const Complex found =
            jw * second.inductance(0, 0) - (mutual * loops.partialPivLu().solve(mutual.transpose()))(0, 0);
        const Complex expected = jw * magnetics::turnInductance(loop, f) / 4.0;
        EXPECT_LT(std::abs(found - expected), 5e-3 * std::abs(expected)) << f;
    }
}

INSTANTIATE_TEST_SUITE_P(Gaps, SecondFluxOverGap, testing::Values(0.0, 20e-6, 1e-3));

TEST(OuterLoop, IsTheThreeLeggedCoreSolvedByItsReluctances) {
    // Tongue and two outer legs as reluctances between two nodes, n whole turns and one half turn round the first outer
    // leg: Rt Phi + Ro Phia = (n + 1) I, Rt Phi + Ro Phib = n I, Phi = Phia + Phib; linked: n Phi + Phia.
    const auto core = shell(30e-6);
    // A joint in the tongue, one in each outer leg; one outer leg has half of both legs' section. Sections alike, so
    // that the whole path of the model is tongue and legs in series.
    auto even = core;
    even.outerArea = core.area;
    const double share = (core.pathLength - core.outerPath) / core.pathLength;
    even.blocks.resize(1);
    even.blocks[0].share = 1;
    const auto one = [&](double length, double area, double gap) {
        const double mu = even.blocks[0].initialPermeability;
        return (length / mu + gap) / (magnetics::mu0 * area);
    };
    const double tongue = one(share * core.pathLength, even.area, even.gap / 2);
    const double leg = one(even.outerPath, even.outerArea / 2, even.gap / 2);
    constexpr double n = 7;
    Eigen::Matrix2d system;
    system << tongue + leg, tongue, tongue, tongue + leg;
    const Eigen::Vector2d flux = system.partialPivLu().solve(Eigen::Vector2d(n + 1, n));
    const double linked = n * flux.sum() + flux(0);
    const double found = (n + 0.5) * (n + 0.5) * magnetics::turnInductance(even, 0).real() +
                         0.25 * magnetics::turnInductance(magnetics::outerLoop(even), 0).real();
    EXPECT_NEAR(found, linked, 1e-9 * linked);
}

design::Design withSecondary(double turns) {
    auto d = small::transformer();
    d.coil[0].order[0] = {small::sectionOf("P", "a", 188)};
    d.coil[0].order[2] = {small::sectionOf("S", "a", turns)};
    return d;
}

TEST(HalfTurn, LeaksTheUnbalancedFlux) {
    const auto d = withSecondary(12.5);
    const auto loop = magnetics::outerLoop(magnetics::coreModel(d, small::shop()));
    const double whole =
        (validFigure(withSecondary(12), "leakage_10kHz.P.S") + validFigure(withSecondary(13), "leakage_10kHz.P.S")) / 2;
    const double more = validFigure(d, "leakage_10kHz.P.S") - whole;
    // Referred to the primary; above the sheets' corner, so with its loss: within what the reduction leaves.
    const double expected = std::pow(188 / 12.5, 2) / 4 * magnetics::turnInductance(loop, 10e3).real();
    EXPECT_NEAR(more, expected, 0.05 * expected);
}

TEST(HalfTurn, TwoInOppositeWindowsAreAWhole) {
    auto two = withSecondary(12.5);
    two.coil[0].order.push_back({small::sectionOf("S", "b", 12.5)});
    auto none = withSecondary(12);
    none.coil[0].order.push_back({small::sectionOf("S", "b", 13)});
    const double l = validFigure(none, "leakage_10kHz.P.S");
    EXPECT_NEAR(validFigure(two, "leakage_10kHz.P.S"), l, 0.02 * l);
}

TEST(LeadOut, StandsInSeriesWithItsTerminal) {
    auto d = small::transformer();
    d.coil[0].order[0] = {small::sectionOf("P", "a", 2)};
    d.coil[0].order[2] = {small::sectionOf("S", "a", 2)};
    d.terminals[0].leadLength = d.terminals[1].leadLength = 0.3;
    const double without = validFigure(d, "leakage_10kHz.P.S");
    d.assumptions.leadOuts = true;
    const double pair = 2 * (coil::straightWireInductance(0.3, std::sqrt(coil::flexibleLeadArea / pi)) -
                             coil::parallelWiresInductance(0.3, coil::leadSpacing));
    // The measured winding's own leads are in series with all the rest.
    EXPECT_NEAR(validFigure(d, "leakage_10kHz.P.S") - without, pair, 1e-3 * pair);
    d.terminals[2].leadLength = d.terminals[3].leadLength = 0.3;
    EXPECT_GT(validFigure(d, "leakage_10kHz.P.S") - without, 1.9 * pair);  // the shorted winding's through the strap
}

}  // namespace extra_branches_test
