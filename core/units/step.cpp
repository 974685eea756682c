// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>
#include <span>

#include "units/decimal.h"
#include "units/text.h"

namespace units {

namespace {

/// Two digits of the E24 series (IEC 60063).
constexpr std::array e24{10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30,
                         33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91};
constexpr std::array oneTwoFive{10, 20, 50};

enum class Stepping { Series, Whole, Linear, Relative };

/// count × 10^exponent without the noise that pow leaves.
double decimalValue(double count, int exponent) {
    const double power = std::pow(10.0, std::abs(exponent));
    return exponent < 0 ? count / power : count * power;
}

Stepping stepping(Kind kind) {
    switch (kind) {
        case Kind::Count:
        case Kind::Turns:
            return Stepping::Whole;
        case Kind::Share:
        case Kind::Temperature:
        case Kind::LevelDbu:
        case Kind::Decibel:
        case Kind::Angle:
            return Stepping::Linear;
        case Kind::Number:
        case Kind::Length:
        case Kind::Area:
        case Kind::Mass:
            return Stepping::Relative;
        default:
            return Stepping::Series;
    }
}

/// Next multiple of count × 10^exponent, `steps` of them away.
double onGrid(double value, double count, int exponent, int steps) {
    const double place = value / decimalValue(count, exponent);
    const double near = std::round(place);
    const bool on = std::abs(place - near) < 1e-6 * std::max(1.0, std::abs(place));
    const double from = on ? near : (steps > 0 ? std::floor(place) : std::ceil(place));
    const double result = decimalValue((from + steps) * count, exponent);
    return result == 0 ? 0 : result;
}

double inSeries(std::span<const int> series, double value, int steps) {
    const auto size = static_cast<int>(series.size());
    int decade = shortestDecimal(value).exponent;
    const double mantissa = value / decimalValue(1, decade - 1);
    int index = 0;
    while (index < size && series[static_cast<std::size_t>(index)] < mantissa * (1 - 1e-9)) ++index;
    const bool on = index < size && std::abs(series[static_cast<std::size_t>(index)] - mantissa) < 1e-9 * mantissa;
    const int place = index + steps - (steps > 0 && !on ? 1 : 0);
    const int turns = static_cast<int>(std::floor(static_cast<double>(place) / size));
    decade = std::clamp(decade + turns, -300, 300);
    return decimalValue(series[static_cast<std::size_t>(place - turns * size)], decade - 1);
}

/// The first value above zero, from where series start.
double firstAboveZero(Kind kind) {
    switch (kind) {
        case Kind::VoltageNoise:
            return 1e-10;
        case Kind::CurrentNoise:
            return 1e-13;
        case Kind::Capacitance:
            return 1e-12;
        case Kind::Inductance:
        case Kind::Time:
        case Kind::Area:
            return 1e-6;
        case Kind::Length:
            return 1e-5;
        case Kind::Mass:
        case Kind::Current:
        case Kind::Voltage:
        case Kind::Flux:
        case Kind::Number:
            return 1e-3;
        default:
            return 1;
    }
}

double relative(double value, int steps, double factor) {
    const double tenth = std::abs(value) * (1 + 1e-12) / 10 * factor;  // the step is the largest 1-2-5 not above this
    const int decade = shortestDecimal(tenth).exponent;
    const double mantissa = tenth / decimalValue(1, decade);
    double count = 1;
    if (mantissa >= 5)
        count = 5;
    else if (mantissa >= 2)
        count = 2;
    return onGrid(value, count, decade, steps);
}

double whole(Kind kind, double value, int steps, double factor) {
    const double step = factor < 1 ? (kind == Kind::Turns ? 0.5 : 1) : std::max(1.0, std::round(factor));
    if (step >= 10) return std::max(0.0, value + steps * step);  // by tens from where it stands
    return std::max(0.0, onGrid(value, step, 0, steps));
}

}  // namespace

double stepped(Kind kind, double value, int steps, double factor) noexcept {
    constexpr int farthest = 1000;
    if (steps == 0 || !std::isfinite(value)) return value;
    if (!(factor > 0) || !std::isfinite(factor)) factor = 1;
    steps = std::clamp(steps, -farthest, farthest);
    const int decades = static_cast<int>(std::round(std::log10(factor)));
    if (stepping(kind) == Stepping::Whole) return whole(kind, value, steps, factor);
    if (stepping(kind) == Stepping::Linear) {
        const double result = onGrid(value, 1, (kind == Kind::Share ? -2 : 0) + decades, steps);
        return kind == Kind::Share ? std::clamp(result, 0.0, 1.0) : result;
    }
    if (value == 0) return steps > 0 ? firstAboveZero(kind) : 0;
    if (stepping(kind) == Stepping::Relative) return relative(value, steps, factor);
    if (value < 0) return -stepped(kind, -value, -steps, factor);
    if (factor < 1) return onGrid(value, 1, shortestDecimal(value).exponent - 2, steps);
    const int many = std::clamp(steps * static_cast<int>(std::clamp(factor, 1.0, 100.0)), -farthest, farthest);
    const bool parts = kind == Kind::Resistance || kind == Kind::Inductance || kind == Kind::Capacitance;
    return parts ? inSeries(e24, value, many) : inSeries(oneTwoFive, value, many);
}

}  // namespace units
