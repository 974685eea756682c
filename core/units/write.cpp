// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>

#include "units/decimal.h"
#include "units/text.h"

namespace units {

namespace {

struct Scale {
    int exponent;
    const char* unit;
};

constexpr std::array<const char*, 9> written{"f", "p", "n", "µ", "m", "", "k", "M", "G"};
constexpr int smallestPrefix = -15, largestPrefix = 9;
constexpr int farthest = 3;  // digits that may stand beyond the smallest and largest prefix before an exponent is used

const char* symbol(Kind kind) {
    switch (kind) {
        case Kind::Resistance:
            return "Ω";
        case Kind::Inductance:
            return "H";
        case Kind::Capacitance:
            return "F";
        case Kind::Frequency:
            return "Hz";
        case Kind::Time:
            return "s";
        case Kind::Voltage:
            return "V";
        case Kind::Current:
            return "A";
        case Kind::Flux:
            return "T";
        case Kind::Field:
            return "A/m";
        case Kind::VoltageNoise:
            return "V/√Hz";
        case Kind::CurrentNoise:
            return "A/√Hz";
        default:
            return nullptr;
    }
}

/// What stands behind a number of a kind that takes no prefix.
const char* tail(Kind kind) {
    switch (kind) {
        case Kind::Temperature:
            return " °C";
        case Kind::LevelDbu:
            return " dBu";
        case Kind::Decibel:
            return " dB";
        case Kind::Angle:
            return "°";
        default:
            return "";
    }
}

bool isDecimalKind(Kind kind) {
    return kind == Kind::Temperature || kind == Kind::LevelDbu || kind == Kind::Decibel || kind == Kind::Angle;
}

Scale shopScale(Kind kind, int exponent) {
    switch (kind) {
        case Kind::Length:
            if (exponent < -5) return {-6, "µm"};
            return exponent < 0 ? Scale{-3, "mm"} : Scale{0, "m"};
        case Kind::Area:
            return exponent < 0 ? Scale{-6, "mm²"} : Scale{0, "m²"};
        case Kind::Mass:
            if (exponent < -3) return {-6, "mg"};
            return exponent < 0 ? Scale{-3, "g"} : Scale{0, "kg"};
        default:
            return {-2, "%"};
    }
}

const char* shopUnit(Kind kind) {
    if (kind == Kind::Length) return "m";
    if (kind == Kind::Area) return "m²";
    return kind == Kind::Mass ? "kg" : "";
}

bool isZero(const Decimal& number) {
    return number.digits.find_first_not_of('0') == std::string::npos;
}

std::string withPrefix(Kind kind, const Decimal& number) {
    if (number.exponent < smallestPrefix - farthest || number.exponent > largestPrefix + 2 + farthest) return "";
    const int thousands = static_cast<int>(std::floor(number.exponent / 3.0)) * 3;
    const int shift = isZero(number) ? 0 : std::clamp(thousands, smallestPrefix, largestPrefix);
    return placed(number, shift) + " " + written.at(static_cast<std::size_t>((shift - smallestPrefix) / 3)) +
           symbol(kind);
}

std::string withShopUnit(Kind kind, const Decimal& number) {
    if (isZero(number)) return placed(number) + " " + shopScale(kind, -1).unit;
    const Scale scale = shopScale(kind, number.exponent);
    const int shown = number.exponent - scale.exponent;
    if (shown < -6 || shown > 14) return "";
    return placed(number, scale.exponent) + " " + scale.unit;
}

std::string signForNotFinite(double value) {
    if (std::isnan(value)) return "–";
    return value < 0 ? "-∞" : "∞";
}

/// Text of one kind from its digits; `plain` is the number without prefix, for where none fits.
std::string composed(Kind kind, const Decimal& number, const std::string& plain) {
    if (symbol(kind) != nullptr) {
        std::string text = withPrefix(kind, number);
        return text.empty() ? plain + " " + symbol(kind) : text;
    }
    if (kind == Kind::Length || kind == Kind::Area || kind == Kind::Mass || kind == Kind::Share) {
        std::string text = withShopUnit(kind, number);
        if (!text.empty()) return text;
        return *shopUnit(kind) == '\0' ? plain : plain + " " + shopUnit(kind);
    }
    return plain + tail(kind);
}

std::string withDecimals(Kind kind, double value, int decimals) {
    std::string text = fixedDecimals(value, decimals);
    const bool nothing = text.find_first_of("123456789") == std::string::npos;
    if (kind == Kind::LevelDbu && value > 0 && !nothing) text.insert(0, 1, '+');
    return text + tail(kind);
}

int leadingExponent(double value) {
    return value == 0 ? 0 : roundedDecimal(value, 17).exponent;
}

}  // namespace

std::string write(Kind kind, double value, int digits) {
    if (!std::isfinite(value)) return signForNotFinite(value);
    if (kind == Kind::Count || kind == Kind::Turns) return shortest(value);
    if (value == 0) value = 0;  // no "-0"
    digits = std::clamp(digits, 1, 17);
    if (isDecimalKind(kind)) {
        const int whole = std::max(0, roundedDecimal(value, digits).exponent);
        return withDecimals(kind, value, std::max(0, digits - 1 - whole));
    }
    return composed(kind, roundedDecimal(value, digits), significant(value, digits));
}

std::string writeExact(Kind kind, double value) {
    if (!std::isfinite(value)) return signForNotFinite(value);
    if (kind == Kind::Count || kind == Kind::Turns || kind == Kind::Number) return shortest(value);
    return composed(kind, shortestDecimal(value), shortest(value));
}

std::string writeWithUncertainty(Kind kind, double value, double uncertainty) {
    constexpr int unknown = 4, most = 9;  // digits where nothing is said about the uncertainty, and at all
    if (!std::isfinite(value)) return signForNotFinite(value);
    const bool said = std::isfinite(uncertainty) && uncertainty > 0;
    if (kind == Kind::Decibel || kind == Kind::LevelDbu) {
        const int decimals = said ? std::clamp(-leadingExponent(uncertainty), 0, 4) : 2;
        return withDecimals(kind, value, std::max(decimals, std::abs(value) < 10 ? 1 : 0));
    }
    if (!said || value == 0) return write(kind, value, said ? 2 : unknown);
    const int digits = leadingExponent(value) - leadingExponent(uncertainty * std::abs(value)) + 1;
    return write(kind, value, std::clamp(digits, 2, most));
}

}  // namespace units
