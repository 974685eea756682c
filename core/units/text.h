// SPDX-License-Identifier: GPL-3.0-or-later
// The only place where text becomes SI and SI becomes text.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "units/kind.h"

namespace units {

/// Reads what a person typed as a quantity of `kind`, in SI: "4k7", "4.7 kΩ", "0.004in", "1/2 in", "38 AWG",
/// "-10 dBu", "1200/2", "(3+4)*0.1 mm", "0,1 mm" (decimal comma), "20 %". A bare number is in the kind's shop unit:
/// mm for Length, degC for Temperature, dBu for LevelDbu, SI otherwise. µ and u, Ω and ohm are alike.
/// A unit behind a product of bare numbers belongs to the whole product: 1/2 in is half an inch.
/// Grammar: sum of products of (number [prefix][unit] | RKM code | "(" sum ")" ); both "." and "," are decimal
/// signs, a number with both is an error, there is no grouping sign.
/// Throws BadInput with one fault: place "" (the caller knows the field), found the offending text, allowed what
/// the kind accepts with an example.
[[nodiscard]] double read(Kind kind, std::string_view text);

/// Writes `value` (SI) for people with engineering prefix and `digits` significant digits: "4.70 kΩ", "0.100 mm",
/// "+4.00 dBu", "119 µH". Trailing zeros are kept for Length only when `digits` asks for them.
[[nodiscard]] std::string write(Kind kind, double value, int digits = 3);

/// As `write`, for editing: the shortest text that reads back to the same value ("0.1 mm", "4.7 kΩ", "1200").
[[nodiscard]] std::string writeExact(Kind kind, double value);

/// A figure as text with as many digits as its relative uncertainty deserves, at least two: "119 µH".
[[nodiscard]] std::string writeWithUncertainty(Kind kind, double value, double uncertainty);

/// The shortest decimal text that reads back to the same double; independent of locale. Throws nothing.
[[nodiscard]] std::string shortest(double value);

/// Fixed significant digits in plain or exponent form, independent of locale: for CSV files.
[[nodiscard]] std::string significant(double value, int digits);

/// Volts rms of a level in dBu and back. 0 dBu = sqrt(0.6) V (IEC 60268-17; check row N-DBU).
[[nodiscard]] double voltsOfDbu(double dbu) noexcept;
[[nodiscard]] double dbuOfVolts(double volts) noexcept;

/// Bare diameter of AWG `gauge`, m: d = 0.127 mm 92^((36 - n)/39) (ASTM B258). Gauge -3 is 4/0.
[[nodiscard]] double awgDiameter(double gauge) noexcept;
/// The gauge, not rounded, of a bare diameter in m; inverse of `awgDiameter`.
[[nodiscard]] double awgOfDiameter(double diameter) noexcept;

/// The next value up (`steps` > 0) or down in the steps that suit the kind: E24 values for R, L, C; whole turns; 1
/// degC, 1 dB, 1 degree, 1 %; for lengths, areas, masses and numbers a step of 1, 2 or 5 x 10^n near a tenth of the
/// value; values 1-2-5 elsewhere. AWG sizes are the catalog's matter. `factor` 10 or 0.1 for Shift or Ctrl.
[[nodiscard]] double stepped(Kind kind, double value, int steps, double factor = 1.0) noexcept;

}  // namespace units
