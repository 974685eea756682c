// SPDX-License-Identifier: GPL-3.0-or-later
// What the papers of the shop take for granted where a design says nothing: common practice, no source, unless another
// is named beside a number.
#pragma once

namespace shop {

inline constexpr double paperOverlap = 5e-3;     ///< of a wrap of paper or film over its beginning, m
inline constexpr double shieldOverlap = 5e-3;    ///< of a foil shield over its insulated beginning, m
inline constexpr double shieldGapStrip = 50e-6;  ///< insulation between the ends of a foil shield, m
inline constexpr double wireStart = 0.5;         ///< lost with every section at its two ends, m
inline constexpr double wireWaste = 0.02;        ///< lost of every wire, share
inline constexpr double filmWaste = 0.10;        ///< lost in cutting, share
inline constexpr double sheetWaste = 0.02;       ///< bent or burred sheets, share
inline constexpr double leadJoint = 15e-3;       ///< of a lead, under the coil's tape and in the joint, m
inline constexpr double foilEnd = 30e-3;         ///< of a foil conductor, brought out at each end, m
inline constexpr double anchorTape = 20e-3;      ///< of tape over an end of a section, m
inline constexpr int outerTapeTurns = 2;         ///< of tape over a finished coil
inline constexpr double sleevingEnd = 30e-3;     ///< of sleeving on each end that is brought out, m
inline constexpr double solderJoint = 0.2e-3;    ///< of solder in one joint, kg
inline constexpr double solderShare = 1.0;       ///< as much again stays on the tip and in the pot, share
inline constexpr double thinWire = 60e-6;        ///< bare diameter below which an end is made a skein, m
inline constexpr int skeinStrands = 4;           ///< the wire folded so many times
inline constexpr double skeinLength = 60e-3;     ///< m
inline constexpr double enamelDensity = 1350;    ///< kg/m3, of dry enamel (from memory)
inline constexpr double foilDensity = 8890;      ///< kg/m3, copper (IEC 60028)

/// General tolerance of a linear dimension, m, either way: ISO 2768-1, class m (its table as copied on two public
/// pages, which agree). 0 below 0.5 mm and beyond 2 m, where it has none.
[[nodiscard]] constexpr double generalTolerance(double dimension) {
    struct Row {
        double upTo, tolerance;
    };
    constexpr Row table[] = {{0.5e-3, 0},      {6e-3, 0.1e-3}, {30e-3, 0.2e-3}, {120e-3, 0.3e-3},
                             {400e-3, 0.5e-3}, {1.0, 0.8e-3},  {2.0, 1.2e-3}};
    for (const Row& row : table)
        if (dimension <= row.upTo) return row.tolerance;
    return 0;
}

}  // namespace shop
