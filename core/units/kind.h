// SPDX-License-Identifier: GPL-3.0-or-later
// Which kinds of quantity exist, with their unit and the digits and steps that people use.
#pragma once

#include <string_view>

namespace units {

/// What a number measures. A field, a figure and a plot axis all say their kind.
enum class Kind {
    Count,         ///< whole number, no unit
    Turns,         ///< turns; halves allowed
    Number,        ///< pure number
    Share,         ///< pure number from 0 to 1, shown in per cent
    Length,        ///< m; mm, um, in, mil, "38 AWG" (bare diameter)
    Area,          ///< m2
    Mass,          ///< kg
    Resistance,    ///< ohm
    Inductance,    ///< H
    Capacitance,   ///< F
    Frequency,     ///< Hz
    Time,          ///< s
    Voltage,       ///< V rms
    Current,       ///< A
    Flux,          ///< T
    Field,         ///< A/m
    Temperature,   ///< degree Celsius
    LevelDbu,      ///< dBu; also V, mV, dBV are read
    Decibel,       ///< dB
    Angle,         ///< degree
    VoltageNoise,  ///< V/sqrt(Hz)
    CurrentNoise   ///< A/sqrt(Hz)
};

/// The unit a figure of this kind is written in, in ASCII SI ("ohm", "H", "m", "dBu", "" for pure numbers).
[[nodiscard]] std::string_view unit(Kind kind) noexcept;

/// The kind that belongs to an ASCII SI unit; `Number` if none does.
[[nodiscard]] Kind kindOfUnit(std::string_view unit) noexcept;

/// Whether two of the kind differ by decibels and not by a share: dB and dBu.
[[nodiscard]] constexpr bool inDecibels(Kind kind) noexcept {
    return kind == Kind::Decibel || kind == Kind::LevelDbu;
}
[[nodiscard]] inline bool inDecibels(std::string_view unit) noexcept {
    return inDecibels(kindOfUnit(unit));
}

}  // namespace units
