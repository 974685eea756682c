// SPDX-License-Identifier: GPL-3.0-or-later
// The network solved at one frequency, in branch currents.
#pragma once

#include "network/circuit.h"

namespace network {

using ComplexVector = Eigen::VectorXcd;

/// Where each output stands in a sample of values. Excitation j: a unit EMF in port j (V), or, at a port without
/// `through`, a unit current into it (A).
struct OutputLayout {
    int ports = 0;
    [[nodiscard]] int voltage(int excited, int at) const noexcept { return excited * (ports + 3) + at; }
    /// Core voltage per turn, V.
    [[nodiscard]] int coreVoltage(int excited) const noexcept { return excited * (ports + 3) + ports; }
    /// Impedance into the unit at a port, all else connected, ohm.
    [[nodiscard]] int impedance(int port) const noexcept { return port * (ports + 3) + ports + 1; }
    /// Impedance between a port's terminals with its own network in place, ohm: what makes the noise there.
    [[nodiscard]] int totalImpedance(int port) const noexcept { return port * (ports + 3) + ports + 2; }
    [[nodiscard]] int size() const noexcept { return ports * (ports + 3); }
};

/// All outputs at one frequency, with their exact slopes d value / d ln f.
struct Point {
    double frequency = 0;
    ComplexVector value;
    ComplexVector slope;
};

/// What does not change with frequency, made once per circuit:
/// Z(w) i + A^T C^-1 A i / (jw) = e + A^T C^-1 J / (jw), A the node-branch incidence, C the node capacitances.
/// Every node needs capacitance, so floating parts are as good as any other. Currents are taken in an orthogonal basis
/// of loops (A i = 0, where the capacitive term is exactly nothing) and their complement: at 0.1 Hz that term would
/// otherwise drown the resistances in rounding.
class Prepared {
public:
    explicit Prepared(Circuit circuit);
    [[nodiscard]] const Circuit& circuit() const noexcept { return circuit_; }
    [[nodiscard]] OutputLayout layout() const noexcept { return {static_cast<int>(circuit_.ports.size())}; }
    /// All outputs at f > 0 Hz, in the order of `layout()`.
    [[nodiscard]] ComplexVector solve(double frequency) const;
    /// The same with slopes, from one factorisation: S x' = d' - S' x for the system S x = d.
    [[nodiscard]] Point point(double frequency) const;
    /// Impedance of all winding branches at f > 0 Hz without capacitances: R + jwM + jw n n^T Lambda, ohm, b x b.
    [[nodiscard]] ComplexMatrix windingImpedance(double frequency) const;

private:
    /// All wire of one bare diameter: its resistance and eddy forms share their functions of frequency.
    struct LossGroup {
        double bareDiameter = 0;
        Matrix direct;  ///< ohm
        Matrix eddy;    ///< (A/m)^2 m per A^2
    };
    void takeLosses();
    void takeCapacitances();
    [[nodiscard]] ComplexMatrix systemAt(double frequency) const;
    [[nodiscard]] ComplexMatrix driveAt(double frequency) const;
    [[nodiscard]] ComplexVector outputs(const ComplexMatrix& loops, double frequency) const;
    [[nodiscard]] Complex portVoltage(int port, int excited, const ComplexVector& lumped, const ComplexVector& loops,
                                      double frequency) const;
    [[nodiscard]] Complex portImpedance(int port, const ComplexVector& lumped, Complex voltage, double frequency) const;
    Circuit circuit_;
    Matrix basis_;  ///< N x N orthogonal: loops first
    Eigen::Index loops_ = 0;
    Matrix leakage_;  ///< the rest in that basis
    Vector turns_;
    std::vector<LossGroup> losses_;
    ComplexMatrix elastance_;  ///< A^T C^-1 A
    ComplexMatrix readOut_;    ///< port rows of C^-1 A, P x N
    ComplexMatrix injected_;   ///< port rows of C^-1 J for a unit current into each port, P x P
};

/// Impedance of several paths with mutual impedance joined in parallel, 1 / (1^T Z^-1 1), ohm.
[[nodiscard]] Complex parallelImpedance(const ComplexMatrix& paths);

}  // namespace network
