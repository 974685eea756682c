// SPDX-License-Identifier: GPL-3.0-or-later
// The equations of one design in one hook-up, as plain matrices.
#pragma once

#include <Eigen/Core>
#include <complex>
#include <string>
#include <vector>

#include "design/design.h"
#include "magnetics/stack.h"

namespace network {

using Complex = std::complex<double>;
using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;
using ComplexMatrix = Eigen::MatrixXcd;
using ComplexVector = Eigen::VectorXcd;

inline constexpr int earth = -1;

/// A branch from node to node; its current counts from `from` to `to`.
struct BranchEnds {
    int from = earth;
    int to = earth;
    bool operator==(const BranchEnds&) const = default;
};

/// Eddy currents in all wire of one bare diameter: impedance g(f) i^T form i is added, g the transverse-field factor
/// per metre.
struct EddyGroup {
    double bareDiameter = 0;
    Matrix form;  ///< (A/m)^2 m per A^2, b x b over winding branches
};

/// A lumped series branch of a port's network, R + jwL + 1/(jwC); C = 0: no capacitor. Or a table of impedance.
struct LumpedBranch {
    BranchEnds ends;
    design::Branch element;
    std::vector<design::ImpedancePoint> table;
    double share = 1;  ///< of the element's impedance (1/2 in each leg of a balanced port)
};

/// One port of the hook-up.
struct CircuitPort {
    std::string name;
    int plus = earth, minus = earth;
    std::vector<int> through;      ///< indices of lumped branches that carry the EMF (two in a balanced port)
    std::vector<double> emfShare;  ///< of each: +1, or +1/2 and -1/2, or +1 and +1 (common mode)
    std::vector<int> across;       ///< lumped branches from terminal to terminal
    double acrossCapacitance = 0;  ///< F, already in `capacitance`
    design::Role role = design::Role::Load;
    bool common = false;  ///< the EMF stands on both terminals alike
};

/// Winding branches first (b of them, one a piece of a layer), then lumped branches.
struct Circuit {
    std::vector<std::string> nodes;
    std::vector<BranchEnds> windingBranches;
    Vector turns;         ///< with sign, b
    Vector resistance;    ///< DC at temperature, ohm, b
    Vector bareDiameter;  ///< of round wire, m, b; 0: foil, or no alternating-current resistance wanted
    Matrix leakage;       ///< H, b x b
    std::vector<EddyGroup> eddies;
    double resistivity = 0;  ///< of the wire at temperature, ohm m
    magnetics::CoreModel core;
    ComplexMatrix capacitance;  ///< F, n x n, earth left out
    std::vector<LumpedBranch> lumped;
    std::vector<CircuitPort> ports;      ///< in the hook-up's order
    std::vector<int> windingOf;          ///< per winding branch: index into design.windings
    std::vector<std::string> sectionOf;  ///< per winding branch: "P.a"

    [[nodiscard]] int branchCount() const { return static_cast<int>(windingBranches.size() + lumped.size()); }
    [[nodiscard]] int portOfRole(design::Role role) const;  ///< first of that role, or -1
};

/// Impedance of a lumped branch at f > 0 Hz. A table is interpolated linearly over log f with its ends held.
[[nodiscard]] Complex impedance(const LumpedBranch& branch, double frequency);
/// Impedance of a port's own `through` network, both legs of a balanced one in series, ohm; 0 where nothing is
/// connected.
[[nodiscard]] Complex throughImpedance(const Circuit& circuit, int port, double frequency);

}  // namespace network
