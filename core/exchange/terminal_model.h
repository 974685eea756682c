// SPDX-License-Identifier: GPL-3.0-or-later
// A unit reduced to what it does at its pins.
#pragma once

#include <vector>

#include "exchange/unit_losses.h"

namespace exchange {

/// The unit with its losses as fixed elements, seen from its pins, and its inner state.
class FittedUnit {
public:
    /// `pins`: indices of nodes of `unit`. Both must live as long as this.
    FittedUnit(const network::Circuit& unit, const UnitLosses& losses, std::vector<int> pins);
    /// Admittance at the pins against earth, S, p x p.
    [[nodiscard]] network::ComplexMatrix admittance(double frequency) const;

private:
    friend class Reduction;
    using Matrix = network::Matrix;
    using ComplexMatrix = network::ComplexMatrix;
    void addLoops();
    void addDielectric();
    /// Of all nodes, pins first.
    [[nodiscard]] ComplexMatrix nodal(double frequency) const;
    [[nodiscard]] ComplexMatrix windingAdmittance(double frequency) const;
    [[nodiscard]] ComplexMatrix innerVoltages(const ComplexMatrix& nodal) const;
    [[nodiscard]] ComplexMatrix branchCurrents(const ComplexMatrix& voltages, double frequency) const;
    [[nodiscard]] ComplexMatrix nodeVoltages(const ComplexMatrix& voltages, double frequency) const;

    const network::Circuit& unit_;
    const UnitLosses& losses_;
    std::vector<int> pins_;
    Matrix incidence_, lossless_, loss_;  ///< nodes x branches; C' and C'', pins first
    Matrix inductance_, resistance_;      ///< with the loops' and the core's inner currents, m x m
    Matrix capacitance_;                  ///< with the dielectrics' inner nodes, N x N
    network::Vector conductance_;         ///< of each of these to earth, N
    struct Inner {                        ///< one inner current or node and what drives it
        network::Vector shape;
        double tau = 0;
        bool core = false;
    };
    std::vector<Inner> loopOf_, relaxationOf_;
};

/// Nodes: pins, then inner ones, each with its own capacitance and conductance and coupled to pins alone; branches: a
/// series R and L each, current a^T v, that draw a i from the nodes. All matrices are congruent to the unit's own
/// positive semidefinite ones, so the model is passive, reciprocal and stable whatever was left out.
struct TerminalModel {
    Eigen::Index pins = 0;
    network::Matrix capacitance;  ///< F, (p + q) x (p + q)
    network::Vector conductance;  ///< S, to earth, p + q; 0 at pins
    network::Matrix coupling;     ///< (p + q) x m
    network::Vector inductance;   ///< H, m
    network::Vector resistance;   ///< ohm, m
    [[nodiscard]] network::ComplexMatrix admittance(double frequency) const;
};

/// Projection on the states that voltages and currents at the pins raise between 10 Hz and 1 MHz, and at standstill,
/// weights below `share` of the greatest left out (structure-preserving projection after R. Freund, ICCAD 2004, from
/// memory, on sampled states), brought to its own modes. Sizes in `avoid` are not used: they would tell the number of
/// layers.
class Reduction {
public:
    explicit Reduction(const FittedUnit& unit);
    [[nodiscard]] TerminalModel model(double share, const std::vector<Eigen::Index>& avoid) const;
    [[nodiscard]] Eigen::Index branches() const { return currentWeights_.size(); }

private:
    void sample(double frequency);
    const FittedUnit& unit_;
    network::Matrix standing_;                         ///< N x p: nodes with each pin alone at 1 V, at standstill
    network::Matrix currentSquares_, voltageSquares_;  ///< sums of samples' squares in the metric of L and C
    network::Matrix currentFactor_, voltageFactor_;    ///< Cholesky factors of L, and of C of the inner nodes
    network::Matrix currentShapes_, voltageShapes_;
    network::Vector currentWeights_, voltageWeights_;  ///< rising
};

}  // namespace exchange
