// SPDX-License-Identifier: GPL-3.0-or-later
// Direct current of a phantom supply through a winding, P48 of IEC 61938: 48 V behind 6.81 kohm a leg (seen).
#include <gtest/gtest.h>

#include <cmath>

#include "network/direct_current.h"

namespace phantom_test {

constexpr double turns = 500, ohm = 10;

/// A winding from node 0 by its middle, node 1, to node 2.
network::Circuit winding(double firstHalf = ohm / 2, double secondHalf = ohm / 2) {
    network::Circuit c;
    c.nodes = {"2", "3", "1"};
    c.windingBranches = {{0, 1}, {1, 2}};
    c.turns = network::Vector::Constant(2, turns / 2);
    c.resistance = network::Vector(2);
    c.resistance << firstHalf, secondHalf;
    return c;
}

/// Formula digest: a mismatch of the resistors times the current of a leg flows through half the winding, which is half
/// of it through the whole; 0.4 % (memory) of 5 mA: 10 uA (derived; resistors read).
TEST(PublishedPhantom, MismatchOfTheFeeds) {
    network::DirectSupply supply;
    supply.feeds = {{0, 48, 6810 * 1.002}, {2, 48, 6810 * 0.998}};
    supply.drains = {{0, 5e-3}, {2, 5e-3}};
    EXPECT_NEAR(std::abs(network::directAmpereTurns(winding(), supply)) / turns, 10e-6, 0.01e-6);
}

TEST(PublishedPhantom, EqualFeedsLeaveNone) {
    network::DirectSupply supply;
    supply.feeds = {{0, 48, 6810}, {2, 48, 6810}};
    supply.drains = {{0, 5e-3}, {2, 5e-3}};
    EXPECT_NEAR(network::directAmpereTurns(winding(), supply) / turns, 0, 1e-12);
}

/// One leg to earth: 48 V over 6.81 kohm and the winding in series (Ohm): 7.04 mA.
TEST(PublishedPhantom, ShortedLegTakesAllOfTheFeed) {
    network::DirectSupply supply;
    supply.feeds = {{0, 48, 6810}, {2, 48, 6810}};
    supply.earthed = {2};
    EXPECT_NEAR(network::directAmpereTurns(winding(), supply) / turns, 48 / (6810 + ohm), 1e-8);
}

/// Fed at its middle, with both legs drawing into the same resistance r: the halves' currents are as their legs'
/// resistances, i1 / i2 = (r + R2) / (r + R1) (Ohm, derived).
TEST(PublishedPhantom, UnequalHalvesOnAFedCentreTap) {
    const double leg = 1000, first = 4, second = 6;
    network::Circuit c = winding(first, second);
    for (const int node : {0, 2}) {
        network::LumpedBranch branch;
        branch.ends = {node, network::earth};
        branch.element.resistance = leg;
        c.lumped.push_back(branch);
    }
    network::DirectSupply supply;
    supply.feeds = {{1, 48, 3405}};
    const double parallel = (leg + first) * (leg + second) / (2 * leg + first + second);
    const double whole = 48 / (3405 + parallel);
    const double difference = whole * (second - first) / (2 * leg + first + second);
    // The first half carries its current from the middle outward, against its sense.
    EXPECT_NEAR(network::directAmpereTurns(c, supply), -difference * turns / 2, 1e-6 * difference * turns);
}

TEST(PublishedPhantom, CapacitorsBlock) {
    network::Circuit c = winding();
    network::LumpedBranch branch;
    branch.ends = {0, network::earth};
    branch.element = {100, 0, 1e-6, nullptr};
    c.lumped.push_back(branch);
    network::DirectSupply supply;
    supply.feeds = {{2, 48, 6810}};
    EXPECT_NEAR(network::directAmpereTurns(c, supply), 0, 1e-3);
}

}  // namespace phantom_test
