// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/lengths.h"

#include <cmath>

#include "shop/sheet_words.h"
#include "units/inch.h"
#include "units/text.h"

namespace shop {

namespace {

constexpr double inchLength = units::millimetresPerInch * 1e-3, milLength = inchLength * 1e-3;  // m

/// Decimals of an inch as fine as those of a millimetre: 0.1 mm is 0.004 in.
int inchDecimals(int decimals) {
    return decimals < 1 ? 2 : decimals < 2 ? 3 : 4;
}

}  // namespace

std::string Lengths::size(double metres, int decimals) const {
    return inch ? fixed(metres / inchLength, inchDecimals(decimals)) + " in" : fixed(metres * 1e3, decimals) + " mm";
}

std::string Lengths::both(double metres, int decimals) const {
    return inch ? size(metres, decimals) + " (" + Lengths{}.size(metres, decimals) + ")" : size(metres, decimals);
}

std::string Lengths::thin(double metres) const {
    if (inch) return fixed(metres / milLength, 2) + " mil";
    std::string text = fixed(metres * 1e6, 1);
    if (text.ends_with(".0")) text.erase(text.size() - 2);
    return text + " µm";
}

std::string Lengths::cut(double metres) const {
    constexpr double step = 20;  // an inch
    if (inch) return fixed(std::ceil(metres / inchLength * step - 1e-6) / step, 2) + " in";
    return fixed(std::ceil(metres * 1e3 - 1e-6), 0) + " mm";
}

std::string Lengths::exact(double metres) const {
    if (!inch) return units::writeExact(units::Kind::Length, metres);
    constexpr double fine = 1e4;
    return units::shortest(std::round(metres / inchLength * fine) / fine) + " in";
}

std::string Lengths::stress(double field) const {
    constexpr double kilovoltsAMillimetre = 1e6;  // V/m
    const std::string metric = units::significant(field / kilovoltsAMillimetre, 2) + " kV/mm";
    return inch ? fixed(field * milLength, 0) + " V/mil (" + metric + ")" : metric;
}

std::string Lengths::figure(double metres) const {
    return inch ? fixed(metres / inchLength, 3) : fixed(metres * 1e3, 1);
}

}  // namespace shop
