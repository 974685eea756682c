// SPDX-License-Identifier: GPL-3.0-or-later
// What must hold of every solved network: reciprocity, power, limits at rest, and curves that agree with the equations
// they are carried between.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "demo_designs.h"
#include "lumped_circuit.h"
#include "network/sweep.h"

namespace network_test {

using network::Circuit;
using network::Complex;
using network::earth;
using network::Prepared;

constexpr double pi = std::numbers::pi;

/// A unit by hand: 1:10 on a core with loss, leakage, strays, two loaded ports and an open one.
Circuit unit() {
    auto c = lumped::circuit(4, 2e-6);
    c.core.blocks[0].thickness = 0.35e-3;
    c.core.blocks[0].resistivity = 5.5e-7;
    lumped::addWinding(c, 0, earth, 100, 12, 0.4e-3);
    lumped::addWinding(c, 1, earth, 1000, 900, 60e-3);
    lumped::addWinding(c, 2, 3, 300, 110, 5e-3);
    c.leakage(0, 1) = c.leakage(1, 0) = 2e-3;
    c.leakage(1, 2) = c.leakage(2, 1) = -9e-3;
    c.capacitance(0, 0) += Complex(80e-12, -1e-12);
    c.capacitance(1, 1) += Complex(150e-12, -2e-12);
    c.capacitance(2, 2) += 60e-12;
    c.capacitance(3, 3) += 90e-12;
    for (const auto& [i, k, value] : {std::tuple{0, 1, 30e-12}, std::tuple{1, 2, 45e-12}, std::tuple{2, 3, 12e-12}}) {
        c.capacitance(i, i) += value;
        c.capacitance(k, k) += value;
        c.capacitance(i, k) -= value;
        c.capacitance(k, i) -= value;
    }
    lumped::addPort(c, "in", 0, design::Role::Drive, 150);
    lumped::addPort(c, "out", 1, design::Role::Observe, 22e3);
    network::CircuitPort open;
    open.name = "third";
    open.plus = 2;
    open.minus = 3;
    c.ports.push_back(open);
    return c;
}

TEST(Network, ReciprocalBetweenLoadedAndOpenPorts) {
    const Prepared net(unit());
    const auto at = net.layout();
    for (const double f : {1.0, 50.0, 1e3, 20e3, 150e3, 900e3}) {
        const auto values = net.solve(f);
        // EMF here, current there.
        const Complex there = values(at.voltage(0, 1)) / 22e3, back = values(at.voltage(1, 0)) / 150.0;
        EXPECT_LT(std::abs(there - back), 1e-9 * std::abs(there)) << f;
        // An open port takes an ampere: the voltage that an EMF makes there is the current that it sends there back.
        const Complex open = values(at.voltage(0, 2)), sent = -values(at.voltage(2, 0)) / 150.0;
        EXPECT_LT(std::abs(open + sent), 1e-9 * std::abs(open)) << f;
    }
}

TEST(Network, TakesPowerAtEveryPort) {
    const Prepared net(unit());
    const auto at = net.layout();
    for (const double f : analysis::logarithmicGrid(0.1, 1e6, 200)) {
        const auto values = net.solve(f);
        for (int p = 0; p < at.ports; ++p) {
            EXPECT_GT(values(at.impedance(p)).real(), 0) << p << " " << f;
            EXPECT_GT(values(at.totalImpedance(p)).real(), 0) << p << " " << f;
        }
    }
}

TEST(Network, AtRestIsTheCopper) {
    const Prepared net(unit());
    const auto values = net.solve(1e-3);
    EXPECT_NEAR(values(net.layout().impedance(0)).real(), 12, 1e-4);
    EXPECT_NEAR(values(net.layout().impedance(1)).real(), 900, 1e-2);
    EXPECT_NEAR(values(net.layout().impedance(2)).real(), 110, 1e-3);
    const auto z = network::windingImpedance(net.circuit(), 1e-3);
    EXPECT_NEAR(z(0, 0).real(), 12, 1e-6);
    EXPECT_NEAR(z(1, 1).real(), 900, 1e-4);
}

TEST(Network, ShortedSecondaryLeavesCopperAndLeakage) {
    // Far above the main inductance's corner a shorted winding leaves Rp + Rs/n^2 and L11 + L22/n^2 - 2 L12/n.
    auto c = lumped::circuit(1, 1);
    lumped::addWinding(c, 0, earth, 100, 12, 0.4e-3);
    lumped::addWinding(c, earth, earth, 1000, 900, 60e-3);
    c.leakage(0, 1) = c.leakage(1, 0) = 2e-3;
    lumped::addPort(c, "in", 0, design::Role::Drive, 150);
    const Prepared net(c);
    const auto z = net.solve(1e3)(net.layout().impedance(0));
    EXPECT_NEAR(z.real(), 12 + 9, 1e-4);
    EXPECT_NEAR(z.imag() / (2 * pi * 1e3), 0.4e-3 + 0.6e-3 - 2 * 2e-3 / 10, 1e-8);
}

TEST(Network, BalancedPortSplitsItsEmfAndCommonModeCancels) {
    // A winding symmetrical to earth: driven in balance it gives the same as one side earthed without strays; driven in
    // common mode it gives nothing.
    const auto value = [](bool common) {
        auto c = lumped::circuit(3, 1e-3);
        lumped::addWinding(c, 0, 1, 100, 20);
        lumped::addWinding(c, 2, earth, 200, 80);
        c.capacitance(0, 0) += 100e-12;
        c.capacitance(1, 1) += 100e-12;
        network::CircuitPort in;
        in.name = "in";
        in.plus = 0;
        in.minus = 1;
        in.role = design::Role::Drive;
        in.common = common;
        in.emfShare = common ? std::vector<double>{1, 1} : std::vector<double>{0.5, -0.5};
        for (const int node : {0, 1}) {
            network::LumpedBranch half;
            half.ends = {earth, node};
            half.element.resistance = 200;
            half.share = 0.5;
            in.through.push_back(static_cast<int>(c.lumped.size()));
            c.lumped.push_back(half);
        }
        c.ports.push_back(in);
        lumped::addPort(c, "out", 2, design::Role::Observe, 10e3);
        return lumped::transfer(Prepared(c), 1e3);
    };
    EXPECT_NEAR(std::abs(value(false)), 2 * 10e3 / (10e3 + 80 + 4 * (20 + 200)), 1e-4);
    EXPECT_LT(std::abs(value(true)), 1e-9);
}

TEST(Lumped, SeriesBranchAndTable) {
    network::LumpedBranch b;
    b.element.resistance = 100;
    b.element.inductance = 10e-3;
    b.element.capacitance = 1e-6;
    const double f0 = 1 / (2 * pi * std::sqrt(10e-3 * 1e-6));
    EXPECT_LT(std::abs(network::impedance(b, f0) - 100.0), 1e-9);
    EXPECT_NEAR(network::impedance(b, 2 * f0).imag(), 1.5 * std::sqrt(10e-3 / 1e-6), 1e-9);
    b.share = 0.5;
    EXPECT_NEAR(network::impedance(b, f0).real(), 50, 1e-9);
    b.share = 1;
    b.table.resize(2);
    b.table[0].frequency = 100;
    b.table[0].real = 200;
    b.table[1].frequency = 10000;
    b.table[1].real = 400;
    b.table[1].imaginary = 60;
    EXPECT_LT(std::abs(network::impedance(b, 1000) - Complex(300, 30)), 1e-9);  // half-way over log f
    EXPECT_EQ(network::impedance(b, 1), Complex(200, 0));
    EXPECT_EQ(network::impedance(b, 1e6), Complex(400, 60));
}

TEST(Point, SlopeIsThatOfTheValues) {
    const Prepared net(unit());
    for (const double f : {30.0, 5e3, 80e3}) {
        const auto point = net.point(f);
        const auto value = net.solve(f);
        EXPECT_LT((point.value - value).cwiseAbs().maxCoeff(), 1e-12 * value.cwiseAbs().maxCoeff());
        // Fourth-order difference over ln f.
        const double h = 1e-3;
        const auto at = [&](double k) { return net.solve(f * std::exp(k * h)); };
        const network::ComplexVector slope = (8.0 * (at(1) - at(-1)) - (at(2) - at(-2))) / (12 * h);
        for (Eigen::Index k = 0; k < slope.size(); ++k)
            EXPECT_LT(std::abs(point.slope(k) - slope(k)), 1e-6 * std::abs(value(k)) + 1e-9) << f << " " << k;
    }
}

TEST(Sweep, StopsWhenAskedAndSaysWhenItDidNotConverge) {
    const Prepared net(unit());
    const auto few = network::Sweep::over(net, 0.1, 1e6, 1e-12, 25, {});
    EXPECT_FALSE(few.converged());
    ASSERT_TRUE(few.carries());
    EXPECT_GT(few.error(), 1e-12);
    for (double f = 0.13; f < 0.99e6; f *= 1.0917) {
        const auto exact = net.solve(f);
        const auto carried = few.value(f);
        for (Eigen::Index k = 0; k < exact.size(); ++k)
            EXPECT_LT(std::abs(carried(k) - exact(k)),
                      2 * few.error() * std::max(network::Sweep::floor, std::abs(exact(k))))
                << f << ", output " << k;
    }
    const auto enough = network::Sweep::over(net, 0.1, 1e6, 1e-5, 400, {});
    EXPECT_TRUE(enough.converged());
    EXPECT_LT(enough.error(), 1e-5);
    EXPECT_LT(enough.solves(), 400);
    std::stop_source source;
    source.request_stop();
    const auto stopped = network::Sweep::over(net, 0.1, 1e6, 1e-5, 400, source.get_token());
    EXPECT_FALSE(stopped.converged());
    EXPECT_FALSE(stopped.carries());
}

/// The demo designs as the program carries their curves.
class Carried : public testing::TestWithParam<const char*> {};

TEST_P(Carried, CurvesAgreeWithTheEquationsBetweenSolvedFrequencies) {
    for (const auto& [name, solved] : demos::answerOf(GetParam())->stages->solved) {
        EXPECT_TRUE(solved->outputs.converged()) << name;
        double worst = 0, at = 0;
        // An irrational number of points a decade, so that none is a solved one.
        for (double f = 0.13; f < 0.99e6; f *= 1.0917) {
            const auto exact = solved->network.solve(f);
            const auto carried = solved->at(f);
            const double off =
                ((carried - exact).array().abs() / exact.array().abs().max(network::Sweep::floor)).maxCoeff();
            if (off > worst) {
                worst = off;
                at = f;
            }
        }
        EXPECT_LT(worst, 5e-4) << name << " at " << at << " Hz";
    }
}

TEST_P(Carried, SlopesAgreeWithTheEquations) {
    const auto& [name, solved] = *demos::answerOf(GetParam())->stages->solved.begin();
    const auto layout = solved->network.layout();
    const int output = layout.voltage(solved->driven(), solved->observed());
    for (double f = 5; f < 300e3; f *= 1.77) {
        const double h = 1e-4 * f;
        const Complex exact = (solved->network.solve(f + h)(output) - solved->network.solve(f - h)(output)) / (2 * h);
        const Complex value = solved->network.solve(f)(output);
        // Of d ln H / d ln f: what group delay is read from.
        EXPECT_LT(std::abs(solved->slopeAt(f)(output) - exact) * f / std::abs(value), 1e-3) << name << " " << f;
    }
}

INSTANTIATE_TEST_SUITE_P(Projects, Carried, testing::ValuesIn(demos::all), [](const auto& tried) {
    std::string name = tried.param;
    std::replace(name.begin(), name.end(), '-', '_');
    return name;
});

}  // namespace network_test
