// SPDX-License-Identifier: GPL-3.0-or-later
#include "units/kind.h"

#include <array>
#include <utility>

namespace units {

namespace {

constexpr std::array<std::pair<Kind, std::string_view>, 18> unitNames{{{Kind::Length, "m"},
                                                                       {Kind::Area, "m2"},
                                                                       {Kind::Mass, "kg"},
                                                                       {Kind::Resistance, "ohm"},
                                                                       {Kind::Inductance, "H"},
                                                                       {Kind::Capacitance, "F"},
                                                                       {Kind::Frequency, "Hz"},
                                                                       {Kind::Time, "s"},
                                                                       {Kind::Voltage, "V"},
                                                                       {Kind::Current, "A"},
                                                                       {Kind::Flux, "T"},
                                                                       {Kind::Field, "A/m"},
                                                                       {Kind::Temperature, "degC"},
                                                                       {Kind::LevelDbu, "dBu"},
                                                                       {Kind::Decibel, "dB"},
                                                                       {Kind::Angle, "deg"},
                                                                       {Kind::VoltageNoise, "V/rtHz"},
                                                                       {Kind::CurrentNoise, "A/rtHz"}}};

}  // namespace

std::string_view unit(Kind kind) noexcept {
    for (const auto& [named, text] : unitNames)
        if (named == kind) return text;
    return "";
}

Kind kindOfUnit(std::string_view unit) noexcept {
    for (const auto& [named, text] : unitNames)
        if (text == unit) return named;
    return Kind::Number;
}

}  // namespace units
