// SPDX-License-Identifier: GPL-3.0-or-later
// A double as decimal digits, so that prefixes move the decimal sign and never the value.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace units {

/// ± d.ddd × 10^exponent; `digits` has no decimal sign and no sign.
struct Decimal {
    bool negative = false;
    std::string digits;
    int exponent = 0;
};

/// The fewest digits that read back to `value`, which must be finite.
[[nodiscard]] Decimal shortestDecimal(double value);

/// `value` rounded to `digits` (1 to 17) significant digits; must be finite.
[[nodiscard]] Decimal roundedDecimal(double value, int digits);

/// `number` divided by 10^shift, written out without an exponent: "0.100", "120", "-4.7".
[[nodiscard]] std::string placed(const Decimal& number, int shift = 0);

/// `value` with `decimals` digits behind the decimal sign; never "-0.0".
[[nodiscard]] std::string fixedDecimals(double value, int decimals);

/// The nearest number to the decimal text `digits` ("47", "4.7", "1e-3") times 10^shift; nothing if it does not fit
/// into `Float` or is so small that it would vanish.
template <class Float>
[[nodiscard]] std::optional<Float> nearest(std::string_view digits, int shift);

extern template std::optional<double> nearest(std::string_view, int);
extern template std::optional<long double> nearest(std::string_view, int);

}  // namespace units
