// SPDX-License-Identifier: GPL-3.0-or-later
// What must hold of any passive unit, on the demo designs: reciprocity, passivity, direct-current limit, and a leakage
// energy that is never negative.
#include <gtest/gtest.h>

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "demo_designs.h"

namespace conservation_test {

using network::Complex;

class Passive : public testing::TestWithParam<const char*> {
protected:
    [[nodiscard]] const analysis::Answer::Stages& stages() const { return *demos::answerOf(GetParam())->stages; }
};

/// A port's own series network, ohm.
Complex ownImpedance(const network::Circuit& c, const network::CircuitPort& port, double f) {
    Complex sum = 0;
    for (const int t : port.through) sum += network::impedance(c.lumped[static_cast<std::size_t>(t)], f);
    return sum;
}

TEST_P(Passive, EmfHereAndCurrentThereChangePlaces) {
    // Reciprocity (Rayleigh): the current through q's resistor from an EMF in p equals that through p's from one in q.
    for (const auto& [name, solved] : stages().solved) {
        const auto& net = solved->network;
        const auto& ports = net.circuit().ports;
        const auto layout = net.layout();
        for (const double f : {0.5, 20.0, 1e3, 20e3, 70e3, 300e3}) {
            const auto values = net.solve(f);
            for (int p = 0; p < layout.ports; ++p)
                for (int q = 0; q < p; ++q) {
                    const auto &a = ports[static_cast<std::size_t>(p)], &b = ports[static_cast<std::size_t>(q)];
                    if (a.through.empty() || b.through.empty() || a.common || b.common) continue;
                    const Complex there = values(layout.voltage(p, q)) / ownImpedance(net.circuit(), b, f);
                    const Complex back = values(layout.voltage(q, p)) / ownImpedance(net.circuit(), a, f);
                    EXPECT_LT(std::abs(there - back), 1e-7 * std::abs(there)) << name << " " << f;
                }
        }
    }
}

TEST_P(Passive, NoPortGivesPower) {
    for (const auto& [name, solved] : stages().solved) {
        const auto layout = solved->network.layout();
        for (const double f : analysis::logarithmicGrid(0.1, 1e6, 60)) {
            const auto values = solved->network.solve(f);
            for (int p = 0; p < layout.ports; ++p) {
                const auto& port = solved->network.circuit().ports[static_cast<std::size_t>(p)];
                if (port.common) continue;
                const Complex into = values(layout.impedance(p)), total = values(layout.totalImpedance(p));
                EXPECT_GT(into.real(), -1e-9 * std::abs(into)) << name << " " << port.name << " " << f;
                EXPECT_GT(total.real(), -1e-9 * std::abs(total)) << name << " " << port.name << " " << f;
            }
        }
    }
}

TEST_P(Passive, WindingImpedanceIsSymmetricAndLossy) {
    const auto& network = stages().solved.begin()->second->network;
    for (const double f : {1.0, 1e3, 1e5}) {
        const auto z = network::windingImpedance(network.circuit(), f);
        EXPECT_LT((z - z.transpose()).cwiseAbs().maxCoeff(), 1e-12 * z.cwiseAbs().maxCoeff());
        const Eigen::MatrixXd loss = z.real();
        const Eigen::VectorXd eigen = Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd>(loss).eigenvalues();
        EXPECT_GT(eigen.minCoeff(), -1e-12 * eigen.maxCoeff()) << f;
    }
}

TEST_P(Passive, ResistanceAtRestIsThatOfTheCopper) {
    // Far below the sheets' eddy corner the real part of each winding's impedance is its DCR.
    const auto opened = demos::open(GetParam());
    const auto answer = demos::answerOf(GetParam());
    const auto& net = stages().solved.begin()->second->network;
    const auto z = network::windingImpedance(net.circuit(), 1e-3);
    for (std::size_t w = 0; w < opened.design->windings.size(); ++w) {
        double sum = 0;
        for (Eigen::Index i = 0; i < z.rows(); ++i)
            for (Eigen::Index k = 0; k < z.rows(); ++k)
                if (net.circuit().windingOf[static_cast<std::size_t>(i)] == static_cast<int>(w) &&
                    net.circuit().windingOf[static_cast<std::size_t>(k)] == static_cast<int>(w))
                    sum += z(i, k).real();
        const double dcr = demos::valueOf(*answer, "dcr." + opened.design->windings[w].name);
        EXPECT_NEAR(sum, dcr, 1e-6 * dcr) << opened.design->windings[w].name;
    }
}

TEST_P(Passive, DrivenPortAtRestIsTheCopperOfItsWindings) {
    const auto opened = demos::open(GetParam());
    const auto& solved = *stages().solved.at(opened.design->hookUps.front().name);
    const auto answer = demos::answerOf(GetParam());
    const auto values = solved.network.solve(1e-3);
    const auto z = values(solved.network.layout().impedance(solved.driven()));
    // The line unit's input is two halves in series.
    const double copper = GetParam() == std::string("line-unit")
                              ? demos::valueOf(*answer, "dcr.A") + demos::valueOf(*answer, "dcr.B")
                              : demos::valueOf(*answer, "dcr.P");
    EXPECT_NEAR(z.real(), copper, 1e-3 * copper);
}

TEST_P(Passive, LeakageEnergyIsNeverNegative) {
    const auto opened = demos::open(GetParam());
    const auto& build = *stages().build;
    for (const auto ends : {design::Ends::Beyond, design::Ends::Walled}) {
        const auto leakage = field::leakageMatrix(build, ends);
        EXPECT_TRUE(leakage.valid) << leakage.why;
        const auto& m = leakage.matrix;
        EXPECT_LT((m - m.transpose()).cwiseAbs().maxCoeff(), 1e-12 * m.cwiseAbs().maxCoeff());
        // On currents without net ampere-turns: the complement of the turns.
        Eigen::VectorXd turns(m.rows());
        for (Eigen::Index k = 0; k < m.rows(); ++k) {
            const auto& layer = build.layers[static_cast<std::size_t>(k)];
            turns(k) = layer.turns * layer.sense;
        }
        const Eigen::MatrixXd q = Eigen::HouseholderQR<Eigen::MatrixXd>(turns).householderQ();
        const Eigen::MatrixXd balanced = q.rightCols(m.rows() - 1);
        ASSERT_LT((balanced.transpose() * turns).norm(), 1e-9 * turns.norm());
        const Eigen::VectorXd energy =
            Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd>(balanced.transpose() * m * balanced).eigenvalues();
        EXPECT_GT(energy.minCoeff(), 0);
    }
}

INSTANTIATE_TEST_SUITE_P(Projects, Passive, testing::ValuesIn(demos::all), [](const auto& tried) {
    std::string name = tried.param;
    std::replace(name.begin(), name.end(), '-', '_');
    return name;
});

}  // namespace conservation_test
