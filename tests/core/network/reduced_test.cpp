// SPDX-License-Identifier: GPL-3.0-or-later
// A network in the space of a few solved states against the whole one, every demo and hook-up.
#include "network/reduced.h"

#include <gtest/gtest.h>

#include <cmath>

#include "demo_designs.h"
#include "network/sweep.h"

namespace reduced_test {

using network::Reduced;

std::vector<network::Snapshot> snapshots(const network::Prepared& network, double from, double to, int count) {
    std::vector<network::Snapshot> all;
    for (int k = 0; k < count; ++k) all.push_back(network.snapshot(from * std::pow(to / from, k / (count - 1.0))));
    return all;
}

class ReducedNetworks : public testing::TestWithParam<const char*> {};

TEST_P(ReducedNetworks, SayWhatTheWholeOnesSay) {
    for (const auto& [name, solved] : demos::answerOf(GetParam())->stages->solved) {
        SCOPED_TRACE(name);
        const auto& whole = solved->network;
        const Reduced reduced(whole, snapshots(whole, 0.1, 1e6, 15));
        EXPECT_LT(reduced.size(), whole.basis().cols());
        int answered = 0;
        for (double f = 0.13; f < 1e6; f *= 1.31) {
            const auto near = reduced.point(f);
            if (!near) continue;
            ++answered;
            const auto exact = whole.point(f);
            const auto size = exact.value.array().abs().max(network::Sweep::floor);
            EXPECT_LT(((near->value - exact.value).array().abs() / size).maxCoeff(), 2e-5) << f;
            const auto slope = exact.slope.array().abs().max(size);
            EXPECT_LT(((near->slope - exact.slope).array().abs() / slope).maxCoeff(), 2e-3) << f;
        }
        EXPECT_GT(answered, 45) << "of 59";
    }
}

/// States below a kilohertz know nothing of the resonances.
TEST_P(ReducedNetworks, AreSilentWhereTheirStatesDoNotReach) {
    for (const auto& [name, solved] : demos::answerOf(GetParam())->stages->solved) {
        const Reduced reduced(solved->network, snapshots(solved->network, 0.1, 1e3, 6));
        EXPECT_TRUE(reduced.point(30).has_value()) << name;
        for (const double f : {1.5e5, 4e5, 9e5}) EXPECT_FALSE(reduced.point(f).has_value()) << name << " at " << f;
    }
}

INSTANTIATE_TEST_SUITE_P(Demos, ReducedNetworks, testing::ValuesIn(demos::all));

}  // namespace reduced_test
