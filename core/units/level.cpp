// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>

#include "units/text.h"

namespace units {

namespace {
const double zeroDbu = std::sqrt(0.6);  // V: 1 mW in 600 ohm
}

double voltsOfDbu(double dbu) noexcept {
    return zeroDbu * std::pow(10.0, dbu / 20.0);
}

double dbuOfVolts(double volts) noexcept {
    return 20.0 * std::log10(std::abs(volts) / zeroDbu);
}

}  // namespace units
