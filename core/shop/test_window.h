// SPDX-License-Identifier: GPL-3.0-or-later
// From what is expected and what is promised to the limits of a reading.
#pragma once

#include <optional>
#include <string>

#include "units/kind.h"

namespace shop {

/// What is expected of a reading in the fixture.
struct Expected {
    double value = 0;
    double model = 0;      ///< half width that method and materials allow
    double tolerance = 0;  ///< half width that holds 99 % of units
    bool relative = true;  ///< both widths are shares of the value; else they are in its unit
    bool operator==(const Expected&) const = default;
};

/// What the customer was promised, in the fixture's terms.
struct Promised {
    std::optional<double> atLeast, atMost;
    std::string words;  ///< what was promised, and how it came to be in these terms
    bool operator==(const Promised&) const = default;
};

/// On which sides a reading can be wrong.
enum class Sides { Both, AtLeast, AtMost };

/// Limits of a reading.
struct Window {
    std::optional<double> low, high;
    std::string origin;            ///< where they come from
    std::string doubt;             ///< what they cannot tell; "": nothing
    std::optional<double> needed;  ///< the instrument's half width that could tell, if this one's cannot
    bool operator==(const Window&) const = default;
};

/// The expected window lies about the value at v / (1 + w) and v (1 + w), w the root of the squares of model and
/// tolerance (where these are not shares: v - w and v + w). Its limits are drawn in by the guard band, `instrument`,
/// the instrument's half width of 95 % in the reading's unit: acceptance limit = tolerance limit less the guard
/// (ILAC-G8: 09/2019, 4.2). A window whose half width is below twice the guard is widened to that: then the instrument
/// cannot tell good units from bad ones by tolerance, and `needed` is what could (a ratio of two: rule of our own). A
/// promise is drawn in likewise and never widened: where both its sides leave no room for the guards they stand as
/// promised.
[[nodiscard]] Window window(const Expected& expected, double instrument, const Promised& promised, Sides sides,
                            units::Kind kind);

/// The limits of a promise alone, where nothing is predicted.
[[nodiscard]] Window promisedWindow(const Promised& promised, double instrument, units::Kind kind);

/// "±4.2 %", or "±0.1 dB" of a half width that is no share.
[[nodiscard]] std::string widthWords(double width, bool relative, units::Kind kind);

}  // namespace shop
