// SPDX-License-Identifier: GPL-3.0-or-later
// What any kind of network parameters says of the voltages and currents at ports.
#pragma once

#include <Eigen/Dense>

#include "measured/network_data.h"

namespace measured {

using ComplexMatrix = Eigen::MatrixXcd;

/// ofVoltage v + ofCurrent i = 0, v the ports' voltages and i the currents into them; both ports x ports.
struct PortLaw {
    ComplexMatrix ofVoltage, ofCurrent;
};
/// Holds for every unit, whether or not it has impedance or admittance parameters. Of scattering parameters, with waves
/// (v +- R i) / (2 R^1/2): (1 - S) R^-1/2 v - (1 + S) R^1/2 i = 0.
[[nodiscard]] PortLaw portLaw(const NetworkData& data, std::size_t frequency);

}  // namespace measured
