// SPDX-License-Identifier: GPL-3.0-or-later
// Two ways to one network: nodes kept, and nodes eliminated.
#include "network/inside.h"

#include <gtest/gtest.h>

#include "demo_designs.h"

namespace inside_test {

TEST(Inside, AgreesWithTheSolutionInBranchCurrents) {
    for (const char* name : demos::all) {
        const auto answer = demos::answerOf(name);
        for (const auto& [hookUp, solved] : answer->stages->solved) {
            const auto layout = solved->network.layout();
            const int driven = solved->driven();
            for (const double f : {20.0, 1e3, 100e3}) {
                const auto outputs = solved->network.solve(f);
                const auto in = network::inside(solved->network, f, driven);
                for (int p = 0; p < layout.ports; ++p) {
                    const auto& port = solved->network.circuit().ports[static_cast<std::size_t>(p)];
                    const auto other = outputs(layout.voltage(driven, p));
                    const auto own = in.potentialOf(port.plus) - in.potentialOf(port.minus);
                    EXPECT_LT(std::abs(own - other), 1e-7 * std::abs(other) + 1e-12)
                        << name << ", " << hookUp << ", port " << p << ", " << f << " Hz";
                }
            }
        }
    }
}

TEST(Inside, AShortedPortHasNoVoltageAndCurrentsLeaveNodesOnlyIntoCapacitances) {
    const auto answer = demos::answerOf("microphone-input");
    const auto& solved = *answer->stages->solved.at("normal");
    const auto& c = solved.network.circuit();
    constexpr double f = 10e3;
    const auto in = network::inside(solved.network, f, solved.driven(), solved.observed());
    const auto& port = c.ports[static_cast<std::size_t>(solved.observed())];
    EXPECT_LT(std::abs(in.potentialOf(port.plus) - in.potentialOf(port.minus)), 1e-12);
    // Charge: what branches bring to a node is what its capacitances take.
    network::ComplexVector left = network::Complex(0, 2 * std::numbers::pi * f) * (c.capacitance * in.potential);
    const auto give = [&](const network::BranchEnds& ends, network::Complex current) {
        if (ends.from != network::earth) left(ends.from) += current;
        if (ends.to != network::earth) left(ends.to) -= current;
    };
    Eigen::Index k = 0;
    for (const auto& ends : c.windingBranches) give(ends, in.current(k++));
    for (const auto& lumped : c.lumped) give(lumped.ends, in.current(k++));
    give({port.plus, port.minus}, in.current(k));
    EXPECT_LT(left.cwiseAbs().maxCoeff(), 1e-12 * in.current.cwiseAbs().maxCoeff());
}

}  // namespace inside_test
