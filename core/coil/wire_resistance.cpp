// SPDX-License-Identifier: GPL-3.0-or-later
#include "coil/wire_resistance.h"

#include <numbers>

namespace coil {

namespace {
double circle(double diameter) noexcept {
    return std::numbers::pi * diameter * diameter / 4;
}
}  // namespace

double resistanceFactor(double temperature) noexcept {
    return 1 + copperTemperatureCoefficient * (temperature - 20);
}

double conductorResistance(double length, double area, double temperature) noexcept {
    return copperResistivity20 * resistanceFactor(temperature) * length / area;
}

double wireResistance(double length, double bareDiameter, double temperature) noexcept {
    return conductorResistance(length, circle(bareDiameter), temperature);
}

double wireMass(double length, double bareDiameter) noexcept {
    return copperDensity * circle(bareDiameter) * length;
}

}  // namespace coil
