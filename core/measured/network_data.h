// SPDX-License-Identifier: GPL-3.0-or-later
// Network parameters as an analyser measured them.
#pragma once

#include <complex>
#include <cstddef>
#include <string>
#include <vector>

namespace measured {

using Complex = std::complex<double>;

/// Scattering, admittance, impedance, hybrid and inverse hybrid parameters; the last two of two ports alone.
enum class Parameter { S, Y, Z, H, G };

/// A square matrix at each frequency. Y in siemens, Z in ohm, H and G in SI: nothing is normalised but S.
struct NetworkData {
    Parameter parameter = Parameter::S;
    int ports = 1;
    std::vector<double> frequencies;           ///< Hz, rising
    std::vector<std::vector<Complex>> values;  ///< a frequency each: ports x ports, row by row
    std::vector<double> reference;             ///< ohm, a port each; what S is measured against
    std::vector<std::string> remarks;          ///< what a file held besides and was passed over, a sentence each
    [[nodiscard]] Complex at(std::size_t frequency, int row, int column) const {
        return values.at(frequency).at(static_cast<std::size_t>(row * ports + column));
    }
};

/// Impedance parameters in ohm at one of the frequencies, row by row.
///
///     Z = R^1/2 (1 - S)^-1 (1 + S) R^1/2        R: reference resistances, real
///     Z = Y^-1
///     Z = [h11 h22 - h12 h21, h12; -h21, 1] / h22        Z = [1, -g12; g21, g11 g22 - g12 g21] / g11
///
/// (K. Kurokawa, IEEE Trans. MTT 13 (1965) 194 for S; the definitions of H and G solved: all from memory.) Throws
/// std::domain_error where the unit has no impedance parameters, as a part in series alone.
[[nodiscard]] std::vector<Complex> impedanceParameters(const NetworkData& data, std::size_t frequency);

}  // namespace measured
