// SPDX-License-Identifier: GPL-3.0-or-later
#include "measured/port_law.h"

#include <stdexcept>

namespace measured {

namespace {

ComplexMatrix matrixOf(const NetworkData& data, std::size_t frequency) {
    ComplexMatrix m(data.ports, data.ports);
    for (int i = 0; i < data.ports; ++i)
        for (int k = 0; k < data.ports; ++k) m(i, k) = data.at(frequency, i, k);
    return m;
}

PortLaw ofScattering(const NetworkData& data, const ComplexMatrix& s) {
    Eigen::VectorXd root(data.ports);
    for (int k = 0; k < data.ports; ++k) root(k) = std::sqrt(data.reference.at(static_cast<std::size_t>(k)));
    const ComplexMatrix one = ComplexMatrix::Identity(data.ports, data.ports);
    const Eigen::VectorXcd over = root.cwiseInverse().cast<Complex>(), times = root.cast<Complex>();
    return {(one - s) * over.asDiagonal(), -(one + s) * times.asDiagonal()};
}

/// v1 = h11 i1 + h12 v2, i2 = h21 i1 + h22 v2; of G with voltage and current exchanged.
PortLaw ofHybrid(const ComplexMatrix& h, bool inverse) {
    PortLaw law{ComplexMatrix::Zero(2, 2), ComplexMatrix::Zero(2, 2)};
    law.ofVoltage << 1, -h(0, 1), 0, -h(1, 1);
    law.ofCurrent << -h(0, 0), 0, -h(1, 0), 1;
    if (inverse) law.ofVoltage.swap(law.ofCurrent);
    return law;
}

}  // namespace

PortLaw portLaw(const NetworkData& data, std::size_t frequency) {
    const ComplexMatrix m = matrixOf(data, frequency);
    const ComplexMatrix one = ComplexMatrix::Identity(data.ports, data.ports);
    switch (data.parameter) {
        case Parameter::S:
            return ofScattering(data, m);
        case Parameter::Y:
            return {m, -one};
        case Parameter::Z:
            return {one, -m};
        case Parameter::H:
            return ofHybrid(m, false);
        case Parameter::G:
            return ofHybrid(m, true);
    }
    throw std::logic_error("a kind of network parameters without a law");
}

std::vector<Complex> impedanceParameters(const NetworkData& data, std::size_t frequency) {
    const PortLaw law = portLaw(data, frequency);
    const Eigen::FullPivLU<ComplexMatrix> solver(law.ofVoltage);
    if (!solver.isInvertible()) throw std::domain_error("The unit has no impedance parameters.");
    const ComplexMatrix z = -solver.solve(law.ofCurrent);
    std::vector<Complex> rows;
    for (Eigen::Index i = 0; i < z.rows(); ++i)
        for (Eigen::Index k = 0; k < z.cols(); ++k) rows.push_back(z(i, k));
    return rows;
}

}  // namespace measured
