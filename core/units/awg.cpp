// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>

#include "units/text.h"

namespace units {

namespace {
constexpr double gauge36 = 0.127e-3;  // m: 0.005 in
constexpr double gauges = 39;         // steps from gauge 36 to 4/0, over which the diameter grows 92 times
}  // namespace

double awgDiameter(double gauge) noexcept {
    return gauge36 * std::pow(92.0, (36 - gauge) / gauges);
}

double awgOfDiameter(double diameter) noexcept {
    return 36 - gauges * std::log(diameter / gauge36) / std::log(92.0);
}

}  // namespace units
