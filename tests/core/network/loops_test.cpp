// SPDX-License-Identifier: GPL-3.0-or-later
// Currents around loops and in a tree: what they charge, that nothing is lost, and that outputs do not depend on them.
#include "network/loops.h"

#include <gtest/gtest.h>

#include <Eigen/LU>
#include <cmath>

#include "demo_designs.h"
#include "lumped_circuit.h"
#include "network/sweep.h"

namespace loops_test {

using network::Circuit;
using network::earth;
using network::LoopsAndTree;

Eigen::MatrixXd charges(const Circuit& c, const LoopsAndTree& split) {
    Eigen::MatrixXd incidence = Eigen::MatrixXd::Zero(c.capacitance.rows(), c.branchCount());
    Eigen::Index k = 0;
    const auto take = [&](const network::BranchEnds& ends) {
        if (ends.from != earth) incidence(ends.from, k) += 1;
        if (ends.to != earth) incidence(ends.to, k) -= 1;
        ++k;
    };
    for (const auto& ends : c.windingBranches) take(ends);
    for (const auto& lumped : c.lumped) take(lumped.ends);
    return incidence * Eigen::MatrixXd(split.columns);
}

void expectWhole(const Circuit& c) {
    const LoopsAndTree split = network::loopsAndTree(c);
    const Eigen::MatrixXd charging = charges(c, split);
    EXPECT_TRUE(charging.leftCols(split.loops).isZero(0)) << "a loop charges a node";
    EXPECT_EQ(Eigen::FullPivLU<Eigen::MatrixXd>(charging).rank(), c.branchCount() - split.loops);
    EXPECT_NEAR(std::abs(Eigen::MatrixXd(split.columns).determinant()), 1, 1e-9);
}

TEST(Loops, ChargeNothingAndTheTreeHasTheRest) {
    auto c = lumped::circuit(5, 1e-3);
    lumped::addWinding(c, 0, earth, 100, 1);
    lumped::addWinding(c, 0, earth, 100, 1);     // in parallel
    lumped::addWinding(c, earth, earth, 50, 1);  // shorted
    lumped::addWinding(c, 1, 2, 100, 1);         // an island
    lumped::addWinding(c, 2, 3, 100, 1);
    lumped::addWinding(c, 3, 1, 100, 1);
    lumped::addPort(c, "in", 0, design::Role::Drive, 150);
    lumped::addPort(c, "out", 4, design::Role::Observe, 1000);
    EXPECT_EQ(network::loopsAndTree(c).loops, 4);
    expectWhole(c);
}

class LoopsOf : public testing::TestWithParam<const char*> {};

TEST_P(LoopsOf, DemosAreWhole) {
    for (const auto& [name, solved] : demos::answerOf(GetParam())->stages->solved) {
        SCOPED_TRACE(name);
        expectWhole(solved->network.circuit());
    }
}

TEST_P(LoopsOf, OutputsAreThoseOfPlainBranchCurrents) {
    using network::Prepared;
    for (const auto& [name, solved] : demos::answerOf(GetParam())->stages->solved) {
        const Prepared plain(solved->network.circuit(), Prepared::Currents::Branches);
        for (const double f : {1.3e3, 2.1e4, 1.7e5, 9e5}) {
            const auto one = solved->network.solve(f), other = plain.solve(f);
            const auto size = one.array().abs().max(network::Sweep::floor);
            EXPECT_LT(((one - other).array().abs() / size).maxCoeff(), 1e-6) << name << " at " << f;
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Demos, LoopsOf, testing::ValuesIn(demos::all));

}  // namespace loops_test
