// SPDX-License-Identifier: GPL-3.0-or-later
// The linear-voltage energy form, turns ladders and what counts as a unit's own capacitance. The values of the form are
// among the published checks.
#include "network/energy.h"

#include <gtest/gtest.h>

#include "lumped_circuit.h"
#include "network/input_capacitance.h"
#include "network/ladders.h"

namespace energy_test {

using network::Circuit;
using network::earth;
using network::VoltageLine;

constexpr double pF = 1e-12;

void port(Circuit& c, int plus, int minus) {
    network::CircuitPort p;
    p.name = "in";
    p.plus = plus;
    p.minus = minus;
    c.ports.push_back(p);
}

/// One layer of two nodes from y = 0 to 1.
VoltageLine layer(int low, int high) {
    return {{0, 1}, {low, high}};
}

TEST(Facing, PartsOfAStretchAddUpAndAPlaceIsACapacitor) {
    const auto zero = [] { return network::ComplexMatrix(network::ComplexMatrix::Zero(4, 4)); };
    auto whole = zero(), parts = zero(), place = zero(), plain = zero();
    const VoltageLine a{{0, 0.4, 1}, {0, 1, 2}}, b{{0, 1}, {3, earth}};
    network::addFacing(whole, a, b, 0, 1, {100, -2});
    network::addFacing(parts, a, b, 0, 0.3, {30, -0.6});
    network::addFacing(parts, a, b, 0.3, 1, {70, -1.4});
    EXPECT_LT((whole - parts).cwiseAbs().maxCoeff(), 1e-12 * whole.cwiseAbs().maxCoeff());
    EXPECT_LT((whole - whole.transpose()).cwiseAbs().maxCoeff(), 1e-12);
    network::addFacing(place, a, b, 0, 0, 5);
    network::addCapacitor(plain, 0, 3, 5);
    EXPECT_LT((place - plain).cwiseAbs().maxCoeff(), 1e-12);
    // Equal voltages on both sides hold no energy.
    auto same = zero();
    network::addFacing(same, a, {{0, 0.4, 1}, {0, 1, 2}}, 0, 1, 7);
    EXPECT_EQ(same.cwiseAbs().maxCoeff(), 0);
}

TEST(Ladders, CountTurnsAlongStrapsAndTellIslandsApart) {
    auto c = lumped::bare(4);
    lumped::addWinding(c, 0, earth, 30, 1);
    lumped::addWinding(c, 1, 0, -12, 1);
    lumped::addWinding(c, 2, 3, 50, 1);
    port(c, 1, earth);
    port(c, 2, 3);
    port(c, 2, earth);
    const auto set = network::ladders(c);
    EXPECT_EQ(set.count, 2);
    EXPECT_EQ(set.island, (std::vector<int>{0, 0, 1, 1}));
    EXPECT_EQ(network::portTurns(c, set, 0), 18);
    EXPECT_EQ(network::portTurns(c, set, 1), 50);
    EXPECT_EQ(network::portTurns(c, set, 2), 0);  // no winding joins them
    EXPECT_EQ(network::inputCapacitance(c, 2), 0);
}

TEST(InputCapacitance, WhatHangsOnThePortIsNotCounted) {
    auto c = lumped::bare(1);
    lumped::addWinding(c, 0, earth, 100, 1);
    network::addFacing(c.capacitance, layer(earth, 0), {{0}, {earth}}, 0, 1, 200 * pF);
    port(c, 0, earth);
    const double alone = network::inputCapacitance(c, 0);
    c.ports[0].acrossCapacitance = 470 * pF;
    network::addCapacitor(c.capacitance, 0, earth, 470 * pF);
    EXPECT_NEAR(network::inputCapacitance(c, 0) / alone, 1, 1e-9);
}

TEST(InputCapacitance, IsWhatTheSolvedNetworkShowsAtLowFrequency) {
    // The same coil solved: a very large core in parallel, capacitance from the imaginary part of 1/Z.
    auto c = lumped::circuit(1, 1e6);
    lumped::addWinding(c, 0, earth, 100, 1e-3);
    network::addFacing(c.capacitance, layer(earth, 0), {{0}, {earth}}, 0, 1, 200 * pF);
    lumped::addPort(c, "in", 0, design::Role::Drive, 600);
    const network::Prepared network(c);
    const double f = 1e4, w = 2 * std::numbers::pi * f;
    const auto admittance = 1.0 / network.solve(f)(network.layout().impedance(0));
    EXPECT_NEAR((admittance.imag() + 1 / (w * 1e6 * 100 * 100)) / w / pF, 66.6667, 1e-2);
}

}  // namespace energy_test
