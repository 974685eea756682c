// SPDX-License-Identifier: GPL-3.0-or-later
// Capacitance of windings whose voltage runs in straight lines between their ends, on circuits by hand.
//
// Sources, by row:
//   C-S1..S4  C0/3, C0/12 and C0 (E1^2 + E1 E2 + E2^2)/(3 E^2), integral of a straight line squared (derived)
//   C-L1..L4  (4 C_L / 3 N)(1 - 1/N): the form of R. Lee, Electronic Transformers and Circuits (memory); energy
//   (derived)
#include "network/energy.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "lumped_circuit.h"
#include "network/input_capacitance.h"

namespace winding_capacitance_test {

using network::Circuit;
using network::earth;
using network::VoltageLine;

constexpr double pF = 1e-12;

void port(Circuit& c, int plus, int minus, bool balanced = false) {
    network::CircuitPort p;
    p.name = "in";
    p.plus = plus;
    p.minus = minus;
    if (balanced)
        for (const int node : {plus, minus}) {
            network::LumpedBranch half;
            half.ends = {earth, node};
            half.element.resistance = 300;
            half.share = 0.5;
            p.through.push_back(static_cast<int>(c.lumped.size()));
            c.lumped.push_back(half);
        }
    if (balanced) p.emfShare = {0.5, -0.5};
    c.ports.push_back(p);
}

/// One layer of two nodes from y = 0 to 1.
VoltageLine layer(int low, int high) {
    return {{0, 1}, {low, high}};
}

TEST(PublishedShieldCapacitance, OneEndEarthedIsAThird) {  // C-S1
    auto c = lumped::bare(1);
    lumped::addWinding(c, 0, earth, 100, 1);
    network::addFacing(c.capacitance, layer(earth, 0), {{0}, {earth}}, 0, 1, 200 * pF);
    port(c, 0, earth);
    EXPECT_NEAR(network::inputCapacitance(c, 0) / pF, 66.6667, 5e-5);
}

TEST(PublishedShieldCapacitance, BalancedIsATwelfth) {  // C-S2
    auto c = lumped::bare(2);
    lumped::addWinding(c, 0, 1, 100, 1);
    network::addFacing(c.capacitance, layer(1, 0), {{0}, {earth}}, 0, 1, 200 * pF);
    port(c, 0, 1, true);
    EXPECT_NEAR(network::inputCapacitance(c, 0) / pF, 16.6667, 5e-5);
}

TEST(PublishedShieldCapacitance, FloatingSettlesAtTheLeastEnergy) {
    // Nothing holds the winding: it floats with its middle at the shield, as balanced. An ungrounded shield carries no
    // charge, so it follows the middle whatever is earthed.
    auto c = lumped::bare(2);
    lumped::addWinding(c, 0, 1, 100, 1);
    network::addFacing(c.capacitance, layer(1, 0), {{0}, {earth}}, 0, 1, 200 * pF);
    port(c, 0, 1);
    EXPECT_NEAR(network::inputCapacitance(c, 0) / pF, 16.6667, 5e-5);
    c = lumped::bare(2);
    lumped::addWinding(c, 0, earth, 100, 1);
    network::addFacing(c.capacitance, layer(earth, 0), {{0}, {1}}, 0, 1, 200 * pF);
    port(c, 0, earth);
    EXPECT_NEAR(network::inputCapacitance(c, 0) / pF, 16.6667, 5e-5);
}

TEST(PublishedShieldCapacitance, TheUpperHalfOfAWinding) {  // C-S3: from V/2 to V
    auto c = lumped::bare(2);
    lumped::addWinding(c, 1, earth, 50, 1);
    lumped::addWinding(c, 0, 1, 50, 1);
    network::addFacing(c.capacitance, layer(1, 0), {{0}, {earth}}, 0, 1, 200 * pF);
    port(c, 0, earth);
    EXPECT_NEAR(network::inputCapacitance(c, 0) / pF, 116.6667, 5e-5);
}

TEST(PublishedShieldCapacitance, FacingVoltagesFromAFifthToOne) {  // C-S4: 0.2 V to 1.0 V of 1 V
    auto c = lumped::bare(2);
    lumped::addWinding(c, 1, earth, 20, 1);
    lumped::addWinding(c, 0, 1, 80, 1);
    network::addFacing(c.capacitance, layer(1, 0), {{0}, {earth}}, 0, 1, 200 * pF);
    port(c, 0, earth);
    EXPECT_NEAR(network::inputCapacitance(c, 0) / pF, 82.6667, 5e-5);
}

/// N layers to and fro, C_L between neighbours; pieces cut each layer without a change.
double layered(int layers, double between, int pieces) {
    const int nodes = layers * pieces;  // node k is k + 1 pieces above earth
    auto c = lumped::bare(nodes);
    std::vector<VoltageLine> lines;
    for (int n = 0, at = earth; n < layers; ++n) {
        VoltageLine line{{0}, {at}};
        for (int k = 1; k <= pieces; ++k) {
            const int next = at + 1;
            lumped::addWinding(c, next, at, 100.0 / pieces, 1);
            line.y.push_back(static_cast<double>(k) / pieces);
            line.node.push_back(next);
            at = next;
        }
        if (n % 2 == 1) {
            std::reverse(line.node.begin(), line.node.end());
            for (double& y : line.y) y = 1 - y;
            std::reverse(line.y.begin(), line.y.end());
        }
        if (n > 0) network::addFacing(c.capacitance, lines.back(), line, 0, 1, between);
        lines.push_back(line);
    }
    port(c, nodes - 1, earth);
    return network::inputCapacitance(c, 0);
}

TEST(PublishedLayerCapacitance, FourThirdsRule) {  // C-L1..L4
    struct Row {
        double between;
        int layers;
        double expected;
    };
    for (const auto& row : {Row{300, 2, 100}, Row{300, 3, 88.888889}, Row{300, 10, 36}, Row{150, 5, 32}})
        for (const int pieces : {1, 3})
            EXPECT_NEAR(layered(row.layers, row.between * pF, pieces) / pF, row.expected, 5e-7)
                << row.layers << " layers in " << pieces;
}

TEST(PublishedLayerCapacitance, BegunAtOneSideAlways) {
    // Every facing pair stands at one layer's voltage all along: (N - 1) C_L / N^2. Derived from energy.
    auto c = lumped::bare(2);
    lumped::addWinding(c, 0, earth, 100, 1);
    lumped::addWinding(c, 1, 0, 100, 1);
    network::addFacing(c.capacitance, layer(earth, 0), layer(0, 1), 0, 1, 300 * pF);
    port(c, 1, earth);
    EXPECT_NEAR(network::inputCapacitance(c, 0) / pF, 75, 1e-9);
}

}  // namespace winding_capacitance_test
