// SPDX-License-Identifier: GPL-3.0-or-later
#include "units/decimal.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "units/text.h"

namespace units {

namespace {

Decimal taken(std::string_view scientific) {
    Decimal number;
    if (scientific.front() == '-') {
        number.negative = true;
        scientific.remove_prefix(1);
    }
    const std::size_t e = scientific.find('e');
    for (const char c : scientific.substr(0, e))
        if (c != '.') number.digits += c;
    std::string_view exponent = scientific.substr(e + 1);
    if (exponent.front() == '+') exponent.remove_prefix(1);
    std::from_chars(exponent.data(), exponent.data() + exponent.size(), number.exponent);
    return number;
}

std::string withExponent(const Decimal& number) {
    std::string text(number.negative ? 1 : 0, '-');
    text += number.digits;
    if (number.digits.size() > 1) text.insert(number.negative ? 2 : 1, 1, '.');
    return text.append("e").append(std::to_string(number.exponent));
}

std::string notFinite(double value) {
    if (std::isnan(value)) return "nan";
    return value < 0 ? "-inf" : "inf";
}

}  // namespace

Decimal shortestDecimal(double value) {
    std::array<char, 64> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::scientific).ptr;
    return taken({text.data(), static_cast<std::size_t>(end - text.data())});
}

Decimal roundedDecimal(double value, int digits) {
    std::array<char, 64> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::scientific,
                                   std::clamp(digits, 1, 17) - 1)
                         .ptr;
    return taken({text.data(), static_cast<std::size_t>(end - text.data())});
}

std::string placed(const Decimal& number, int shift) {
    const int point = number.exponent - shift + 1;  // digits in front of the decimal sign
    const int count = static_cast<int>(number.digits.size());
    std::string text(number.negative ? 1 : 0, '-');
    if (point <= 0) {
        text.append("0.").append(static_cast<std::size_t>(-point), '0').append(number.digits);
    } else if (point >= count) {
        text.append(number.digits).append(static_cast<std::size_t>(point - count), '0');
    } else {
        const auto cut = static_cast<std::size_t>(point);
        text.append(number.digits, 0, cut).append(".").append(number.digits, cut);
    }
    return text;
}

std::string fixedDecimals(double value, int decimals) {
    std::array<char, 400> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed,
                                   std::clamp(decimals, 0, 17))
                         .ptr;
    std::string result(text.data(), end);
    if (result.front() == '-' && result.find_first_of("123456789") == std::string::npos) result.erase(0, 1);
    return result;
}

template <class Float>
std::optional<Float> nearest(std::string_view digits, int shift) {
    const std::size_t e = digits.find_first_of("eE");
    int exponent = 0;
    if (e != std::string_view::npos) {
        std::string_view written = digits.substr(e + 1);
        if (written.front() == '+') written.remove_prefix(1);
        const auto end = written.data() + written.size();
        if (std::from_chars(written.data(), end, exponent).ec != std::errc{} || std::abs(exponent) > 9999)
            exponent = written.front() == '-' ? -9999 : 9999;
    }
    const std::string mantissa(digits.substr(0, e));
    const bool zero = mantissa.find_first_of("123456789") == std::string::npos;
    if (zero) return Float{0};
    const std::string text = mantissa + "e" + std::to_string(exponent + shift);
    Float value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size() || value == 0 || !std::isfinite(value)) return {};
    return value;
}

template std::optional<double> nearest(std::string_view, int);
template std::optional<long double> nearest(std::string_view, int);

std::string shortest(double value) {
    if (!std::isfinite(value)) return notFinite(value);
    const Decimal number = shortestDecimal(value);
    return number.exponent >= -4 && number.exponent < 15 ? placed(number) : withExponent(number);
}

std::string significant(double value, int digits) {
    if (!std::isfinite(value)) return notFinite(value);
    const Decimal number = roundedDecimal(value, digits);
    const bool plain = number.exponent >= -4 && number.exponent < std::max(digits, 6);
    return plain ? placed(number) : withExponent(number);
}

}  // namespace units
