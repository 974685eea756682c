// SPDX-License-Identifier: GPL-3.0-or-later
// Losses as fixed elements against the functions of frequency they stand for, and the reduction's passivity.
#include "exchange/unit_losses.h"

#include <Eigen/Dense>
#include <numbers>

#include "exchange/hook_up_response.h"
#include "exchange/terminal_model.h"
#include "field/winding_loss.h"
#include "network/solve.h"
#include "ngspice.h"

namespace unit_losses_test {

using network::Complex;
using network::ComplexMatrix;

/// A unit with its losses fitted.
struct Fitted {
    design::Design design;
    analysis::AnswerPtr answer;
    network::Circuit unit;
    exchange::UnitLosses losses;
    exchange::ReachedPins pins;
    exchange::FittedUnit fit;
    Fitted(const std::string& file, bool dielectricLoss, bool exact)
        : design(ngspice::opened(file)),
          answer((design.assumptions.dielectricLoss = dielectricLoss, analysis::answer(design, ngspice::shop()))),
          unit(analysis::unitCircuit(design, *answer->stages)),
          losses(exchange::unitLosses(unit, exact)),
          pins(exchange::reachedPins(design, unit)),
          fit(unit, losses, pins.nodes) {}
};

/// Admittance at the pins from the network's own winding impedance.
ComplexMatrix ownAdmittance(const Fitted& f, const network::Prepared& own, double frequency) {
    const auto& unit = f.unit;
    const ComplexMatrix z = network::windingImpedance(own.circuit(), frequency);
    const auto nodes = static_cast<Eigen::Index>(unit.nodes.size());
    ComplexMatrix incidence = ComplexMatrix::Zero(nodes, unit.turns.size());
    for (Eigen::Index b = 0; b < unit.turns.size(); ++b) {
        const auto ends = unit.windingBranches[static_cast<std::size_t>(b)];
        if (ends.from >= 0) incidence(ends.from, b) += 1;
        if (ends.to >= 0) incidence(ends.to, b) -= 1;
    }
    const ComplexMatrix y = incidence * z.inverse() * incidence.transpose() +
                            Complex(0, 2 * std::numbers::pi * frequency) * unit.capacitance;
    std::vector<int> inner;
    for (int n = 0; n < nodes; ++n)
        if (std::find(f.pins.nodes.begin(), f.pins.nodes.end(), n) == f.pins.nodes.end()) inner.push_back(n);
    const ComplexMatrix rest = y(inner, inner), down = y(inner, f.pins.nodes);
    return y(f.pins.nodes, f.pins.nodes) - y(f.pins.nodes, inner) * rest.partialPivLu().solve(down);
}

class UnitLossesOf : public testing::TestWithParam<std::string> {};

/// The expansions in poles are exact, so the fit meets the functions they come from in every hook-up.
TEST_P(UnitLossesOf, AreThoseOfCoreAndWireFrom10HzTo1MHz) {
    const Fitted f(GetParam(), false, true);
    EXPECT_LT(f.losses.core.residual, 5e-4);
    EXPECT_LT(f.losses.windingResidual, 1e-3);
    const network::Prepared own(f.unit);
    for (const auto& hookUp : f.design.hookUps) {
        const auto& solved = *f.answer->stages->solved.at(hookUp.name);
        const exchange::HookUpResponse response(f.design, hookUp, solved.network.circuit(), f.pins.names);
        exchange::Deviation off;
        for (const double at : analysis::logarithmicGrid(10, 1e6, 61))
            off.take(response.at(at, f.fit.admittance(at)), response.at(at, ownAdmittance(f, own, at)));
        EXPECT_LT(off.level, 0.02) << hookUp.name;
        EXPECT_LT(off.angle, 0.1) << hookUp.name;
    }
}

INSTANTIATE_TEST_SUITE_P(Designs, UnitLossesOf, testing::ValuesIn(ngspice::designs()),
                         [](const auto& tried) { return ngspice::testName(tried.param); });

TEST(TerminalModel, IsPassiveFarBeyondTheBandHoweverCoarse) {
    const Fitted f("demo-projects/line-unit/line-unit.coilwright", true, false);
    const exchange::Reduction reduction(f.fit);
    for (const double share : {0.1, 1e-2, 1e-4}) {
        const auto model = reduction.model(share, {});
        const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> charges(model.capacitance);
        EXPECT_GT(charges.eigenvalues()(0), -1e-9 * charges.eigenvalues().maxCoeff());
        EXPECT_GE(model.conductance.minCoeff(), 0);
        EXPECT_GE(model.resistance.minCoeff(), 0);
        EXPECT_GT(model.inductance.minCoeff(), 0);
        for (const double at : analysis::logarithmicGrid(0.1, 1e9, 41)) {
            const ComplexMatrix y = model.admittance(at);
            EXPECT_LT((y - y.transpose()).norm(), 1e-9 * y.norm()) << at;
            const Eigen::SelfAdjointEigenSolver<ComplexMatrix> power(y + y.adjoint());
            EXPECT_GT(power.eigenvalues()(0), -1e-9 * y.norm()) << at;
        }
    }
}

TEST(TerminalModel, TellingSizesAreNotUsed) {
    const Fitted f("tests/references/open_2_interleaved_line.coilwright", false, false);
    const exchange::Reduction reduction(f.fit);
    const auto free = reduction.model(1e-3, {});
    const Eigen::Index branches = free.inductance.size(), nodes = free.capacitance.rows() - free.pins;
    const auto other = reduction.model(1e-3, {branches, nodes});
    EXPECT_NE(other.inductance.size(), branches);
    EXPECT_NE(other.capacitance.rows() - other.pins, nodes);
}

/// Two relaxations and a constant come back from their own sum.
TEST(RelaxationSum, FindsWhatIsThere) {
    exchange::RelaxationTask task;
    task.from = 10;
    task.to = 1e6;
    task.perDecade = 1;
    const double first = 10 / (2 * std::numbers::pi * 10);
    task.function = [&](double f) {
        const Complex jw(0, 2 * std::numbers::pi * f);
        return 2.0 / (1.0 + jw * first / 100.0) + 1.0 / (1.0 + jw * first / 1e4) + 0.25;
    };
    task.freeConstant = true;
    const auto sum = exchange::relaxationSum(task);
    EXPECT_LT(sum.residual, 1e-6);
    EXPECT_NEAR(sum.constant, 0.25, 1e-3);
    double weights = 0;
    for (const auto& term : sum.terms) weights += term.weight;
    EXPECT_NEAR(weights, 3, 1e-3);
}

}  // namespace unit_losses_test
