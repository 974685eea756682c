// SPDX-License-Identifier: GPL-3.0-or-later
#include "design/fixture.h"

#include <cmath>

namespace design {

double Doubt::at(double reading) const noexcept {
    return std::hypot(share * reading, least);
}

bool PlugIns::haveResistor(double ohm) const noexcept {
    return highestResistance > 0 && ohm >= lowestResistance && ohm <= highestResistance;
}

bool PlugIns::haveCapacitor(double farad) const noexcept {
    return highestCapacitance > 0 && farad >= lowestCapacitance && farad <= highestCapacitance;
}

}  // namespace design
