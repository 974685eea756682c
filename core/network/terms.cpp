// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/terms.h"

#include <algorithm>
#include <numbers>

#include "field/winding_loss.h"
#include "magnetics/permeability.h"
#include "network/loops.h"

namespace network {

namespace {

using Kind = Term::Kind;

/// Impedance of round wire by skin effect alone, against its direct-current resistance: what of the inner reactance is
/// lost against the static one, which the leakage matrix holds, stands in the imaginary part.
Complex skinFactor(double bareDiameter, double frequency, double resistivity) {
    const double ratio = bareDiameter / magnetics::skinDepth(frequency, 1, resistivity);
    return field::roundWireImpedanceFactor(ratio) - Complex(0, ratio * ratio / 16);
}

class Collector {
public:
    Collector(const Circuit& circuit, const Eigen::SparseMatrix<double>& basis) : circuit_(circuit), basis_(basis) {}

    Terms collect(const ComplexMatrix& elastance) {
        const Eigen::Index b = circuit_.turns.size();
        of(Kind::Inductance) += congruent(basis_, circuit_.leakage);
        of(Kind::Elastance) += elastance.real();
        // j / (jw)
        if (elastance.imag().cwiseAbs().maxCoeff() > 0) of(Kind::ElastanceLoss) += elastance.imag();
        const Vector turns = basis_.topRows(b).transpose() * circuit_.turns;
        of(Kind::Core) += turns * turns.transpose();
        addCopper();
        for (std::size_t k = 0; k < circuit_.lumped.size(); ++k)
            addLumped(static_cast<int>(k), Vector(basis_.row(b + static_cast<Eigen::Index>(k)).transpose()));
        return std::move(terms_);
    }

private:
    Matrix& of(Kind kind, double bareDiameter = 0, int lumped = -1) {
        for (auto& term : terms_)
            if (term.kind == kind && term.bareDiameter == bareDiameter && term.lumped == lumped) return term.matrix;
        terms_.push_back({kind, bareDiameter, lumped, Matrix::Zero(basis_.cols(), basis_.cols())});
        return terms_.back().matrix;
    }
    void addCopper() {
        std::vector<double> diameters(circuit_.bareDiameter.begin(), circuit_.bareDiameter.end());
        std::sort(diameters.begin(), diameters.end());
        diameters.erase(std::unique(diameters.begin(), diameters.end()), diameters.end());
        for (const double bare : diameters) {
            const Vector own = (circuit_.bareDiameter.array() == bare).select(circuit_.resistance, 0);
            of(bare > 0 ? Kind::Skin : Kind::Resistance, bare) += congruent(basis_, Matrix(own.asDiagonal()));
        }
        for (const auto& eddy : circuit_.eddies) of(Kind::Eddy, eddy.bareDiameter) += congruent(basis_, eddy.form);
    }
    void addLumped(int index, const Vector& row) {
        const auto& branch = circuit_.lumped[static_cast<std::size_t>(index)];
        const Matrix square = row * row.transpose();
        if (!branch.table.empty()) {
            of(Kind::ImpedanceTable, 0, index) += square;
            return;
        }
        const auto& e = branch.element;
        of(Kind::Resistance) += branch.share * e.resistance * square;
        of(Kind::Inductance) += branch.share * e.inductance * square;
        if (e.capacitance > 0) of(Kind::Elastance) += branch.share / e.capacitance * square;
    }

    const Circuit& circuit_;
    const Eigen::SparseMatrix<double>& basis_;
    Terms terms_;
};

}  // namespace

Terms termsOf(const Circuit& circuit, const Eigen::SparseMatrix<double>& basis, const ComplexMatrix& elastance) {
    return Collector(circuit, basis).collect(elastance);
}

std::vector<Complex> coefficients(const Terms& terms, const Circuit& circuit, double frequency) {
    constexpr Complex j{0, 1};
    const double w = 2 * std::numbers::pi * frequency;
    std::vector<Complex> values;
    values.reserve(terms.size());
    for (const auto& term : terms) {
        Complex c = 1;
        switch (term.kind) {
            case Kind::Resistance:
                break;
            case Kind::Inductance:
                c = j * w;
                break;
            case Kind::Elastance:
                c = 1.0 / (j * w);
                break;
            case Kind::ElastanceLoss:
                c = 1 / w;
                break;
            case Kind::Core:
                c = j * w * magnetics::turnInductance(circuit.core, frequency);
                break;
            case Kind::Skin:
                c = skinFactor(term.bareDiameter, frequency, circuit.resistivity);
                break;
            case Kind::Eddy:
                c = field::transverseFieldFactor(frequency, term.bareDiameter, circuit.resistivity);
                break;
            case Kind::ImpedanceTable:
                c = impedance(circuit.lumped[static_cast<std::size_t>(term.lumped)], frequency);
                break;
        }
        values.push_back(c);
    }
    return values;
}

}  // namespace network
