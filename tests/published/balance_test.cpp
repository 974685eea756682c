// SPDX-License-Identifier: GPL-3.0-or-later
// Common-mode rejection of small circuits: limit cases, and the published first-order limits.
//
// Sources: rows T-CM-* (derived, 1/(w dR C)); method IEC 60268-3 with 10 ohm (memory).
#include "analysis/balance.h"

#include <gtest/gtest.h>

#include <numbers>

#include "lumped_circuit.h"

namespace balance_test {

using network::earth;

/// Two legs of 300 ohm into two equal halves of a primary, a secondary earthed at one end with 10 kilohm, capacitances
/// from the ends and the middle of the primary to the secondary's hot end and to earth. Nodes: 0 and 1 the ends, 2 the
/// middle, 3 the secondary.
struct Coupling {
    double plus = 0, middle = 0, minus = 0;
};
network::Circuit halves(const Coupling& toSecondary, const Coupling& toEarth) {
    auto c = lumped::circuit(4, 1e-4);
    lumped::addWinding(c, 0, 2, 100, 20, 1e-6);
    lumped::addWinding(c, 2, 1, 100, 20, 1e-6);
    lumped::addWinding(c, 3, earth, 1000, 900, 1e-4);
    const auto capacitor = [&](int a, int b, double value) {
        c.capacitance(a, a) += value;
        if (b == earth) return;
        c.capacitance(b, b) += value;
        c.capacitance(a, b) -= value;
        c.capacitance(b, a) -= value;
    };
    capacitor(0, 3, toSecondary.plus);
    capacitor(2, 3, toSecondary.middle);
    capacitor(1, 3, toSecondary.minus);
    capacitor(0, earth, toEarth.plus);
    capacitor(2, earth, toEarth.middle);
    capacitor(1, earth, toEarth.minus);
    network::CircuitPort in;
    in.name = "in";
    in.plus = 0;
    in.minus = 1;
    in.role = design::Role::Drive;
    in.through = {0, 1};
    in.emfShare = {0.5, -0.5};
    for (const int node : {0, 1}) {
        network::LumpedBranch leg;
        leg.ends = {earth, node};
        leg.element.resistance = 600;
        leg.share = 0.5;
        c.lumped.push_back(leg);
    }
    c.ports.push_back(in);
    lumped::addPort(c, "out", 3, design::Role::Observe, 10e3);
    return c;
}

network::Legs legsOf(const network::Circuit& circuit, double frequency) {
    const network::Prepared network(network::withLegPorts(circuit, 0, 1));
    return network::legs(network.circuit(), network.solve(frequency), 0, 1, frequency);
}

analysis::Rejection rejection(const network::Circuit& circuit, double frequency) {
    return analysis::rejectionOf(legsOf(circuit, frequency));
}

constexpr double pico = 1e-12;

TEST(PublishedBalance, PerfectSymmetryConvertsNothing) {
    const Coupling equal{100 * pico, 50 * pico, 100 * pico};
    for (const double f : {50.0, 1e3, 20e3, 200e3}) EXPECT_GT(rejection(halves({}, equal), f).balanced, 220) << f;
}

TEST(PublishedBalance, SwappedHalfChangesTheSignOfItsConversion) {
    // Capacitance to earth from one end alone unbalances; the other end gives the same with the other sign, both
    // nothing.
    const double one = 100 * pico, f = 10e3;
    const auto plus = legsOf(halves({}, {one, 0, 0}), f), minus = legsOf(halves({}, {0, 0, one}), f);
    EXPECT_LT(std::abs(plus.common + minus.common), 1e-6 * std::abs(plus.common));
    EXPECT_LT(rejection(halves({}, {one, 0, 0}), f).balanced, 120);
    EXPECT_GT(rejection(halves({}, {one, 0, one}), f).balanced, 220);
}

TEST(PublishedBalance, TurnedHalfIsWorseByWhatItsColdEndSaved) {
    // Each half faces the shield with its inner end. Both inner ends in the middle: nothing is unequal. The first half
    // turned about brings its inner end outward, 2 C to the end instead of the middle.
    const double c = 100 * pico, f = 10e3;
    EXPECT_GT(rejection(halves({}, {0, 2 * c, 0}), f).balanced, 220);
    const double turned = rejection(halves({}, {c, c, 0}), f).balanced;
    // First order: the leg's current w C 300 ohm less of the end's voltage, half of it between the ends.
    const double expected = -20 * std::log10(2 * std::numbers::pi * f * c * 300);
    EXPECT_NEAR(turned, expected, 0.5);
}

TEST(PublishedBalance, SourceImbalanceLimitsRejection) {
    // Rows T-CM-50p-20000 and T-CM-5p-20000 derived: 1/(w dR C) with C on each leg to earth.
    for (const auto& [each, expected] : {std::pair{50 * pico, 84.0364}, std::pair{5 * pico, 104.0364}}) {
        const auto circuit = halves({}, {each, 0, each});
        const auto r = rejection(circuit, 20e3);
        EXPECT_GT(r.balanced, 200);
        EXPECT_NEAR(r.unequal, expected, 0.1);
    }
}

TEST(PublishedBalance, AddedLegResistanceIsThatOfAnotherCircuit) {
    auto circuit = halves({3 * pico, 1 * pico, 9 * pico}, {40 * pico, 70 * pico, 90 * pico});
    for (const double f : {100.0, 5e3, 100e3}) {
        network::ComplexVector added(2);
        added << 10, 0;
        const auto changed = network::withAdded(legsOf(circuit, f), added);
        auto other = circuit;
        other.lumped[0].share = 310.0 / 600;
        const auto solved = legsOf(other, f);
        EXPECT_LT(std::abs(changed.common - solved.common), 1e-7 * std::abs(solved.common)) << f;
        EXPECT_LT(std::abs(changed.differential - solved.differential), 1e-9 * std::abs(solved.differential)) << f;
        EXPECT_LT(std::abs(changed.output - solved.output), 1e-9 * std::abs(solved.output)) << f;
    }
}

TEST(PublishedBalance, NothingInCommonIsThreeHundredDecibels) {
    EXPECT_EQ(analysis::rejectionDecibels(1, 0), 300);
    EXPECT_NEAR(analysis::rejectionDecibels({0, 1}, 1e-3), 60, 1e-12);
}

}  // namespace balance_test
