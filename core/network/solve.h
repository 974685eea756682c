// SPDX-License-Identifier: GPL-3.0-or-later
// The network solved at one frequency, in branch currents.
#pragma once

#include "network/reading.h"
#include "network/terms.h"

namespace network {

/// All outputs at one frequency, with their exact slopes d value / d ln f.
struct Point {
    double frequency = 0;
    ComplexVector value;
    ComplexVector slope;
};

/// The whole state at one frequency under each excitation, n x P, with its slope d state / d ln f.
struct Snapshot {
    double frequency = 0;
    ComplexMatrix state;
    ComplexMatrix slope;
};

/// What the ports read of a state.
[[nodiscard]] Point pointOf(const Circuit& circuit, const Reading& reading, const Snapshot& at);

/// Impedance of all winding branches at f > 0 Hz without capacitances: R + jwM + jw n n^T Lambda, ohm, b x b.
[[nodiscard]] ComplexMatrix windingImpedance(const Circuit& circuit, double frequency);

/// What does not change with frequency, made once per circuit:
/// Z(w) i + A^T C^-1 A i / (jw) = e + A^T C^-1 J / (jw), A the node-branch incidence, C the node capacitances.
/// Every node needs capacitance, so floating parts are as good as any other. Currents are taken around loops (A i = 0,
/// where the capacitive term is exactly nothing) and in the branches of a tree (`loopsAndTree`): at 0.1 Hz that term
/// would otherwise drown the resistances in rounding.
class Prepared {
public:
    /// `Currents::Branches` saves the change of basis: for few frequencies above 1 kHz.
    enum class Currents { LoopsAndTree, Branches };
    explicit Prepared(Circuit circuit, Currents currents = Currents::LoopsAndTree);
    /// Of terms and a reading that are known, in whatever space: `circuit` gives core, ports, lumped branches and
    /// resistivity, and its matrices are not read. There is no basis then.
    Prepared(Circuit circuit, Terms terms, Reading reading)
        : circuit_(std::move(circuit)), terms_(std::move(terms)), reading_(std::move(reading)) {}
    [[nodiscard]] const Circuit& circuit() const noexcept { return circuit_; }
    [[nodiscard]] OutputLayout layout() const noexcept { return {static_cast<int>(circuit_.ports.size())}; }
    /// All outputs at f > 0 Hz, in the order of `layout()`.
    [[nodiscard]] ComplexVector solve(double frequency) const;
    /// The same with slopes.
    [[nodiscard]] Point point(double frequency) const { return pointOf(circuit_, reading_, snapshot(frequency)); }
    /// States with slopes, from one factorisation: S x' = d' - S' x for the system S x = d.
    [[nodiscard]] Snapshot snapshot(double frequency) const;

    [[nodiscard]] const Terms& terms() const noexcept { return terms_; }
    /// Branch currents are basis times state; branches x n.
    [[nodiscard]] const Matrix& basis() const noexcept { return basis_; }
    /// How many of the state's numbers, the first, are currents around loops.
    [[nodiscard]] Eigen::Index loops() const noexcept { return loops_; }
    [[nodiscard]] const Reading& reading() const noexcept { return reading_; }

private:
    ComplexMatrix takeCapacitances(const Eigen::SparseMatrix<double>& columns);
    Circuit circuit_;
    Matrix basis_;
    Eigen::Index loops_ = 0;
    Terms terms_;
    Reading reading_;
};

/// Relative step in frequency over which slopes of coefficients are taken, symmetrical: exact to 1e-7.
inline constexpr double slopeStep = 2e-4;

}  // namespace network
