// SPDX-License-Identifier: GPL-3.0-or-later
// The shop's test fixture: what it hangs on a unit, what its instruments can tell, and how it is kept true.
#pragma once

#include <string>
#include <vector>

#include "json/record.h"

namespace design {

/// Half width within which 95 % of readings lie about the true value: the root of the squares of a share of the reading
/// and of a part that does not depend on it.
struct Doubt {
    double share = 0;  ///< of the reading
    double least = 0;  ///< in the quantity's own SI unit
    bool operator==(const Doubt&) const = default;
    [[nodiscard]] double at(double reading) const noexcept;
};
template <class Visitor>
void fields(Visitor& visit, Doubt& d) {
    visit.may("share", d.share, json::within(0, 1));
    visit.may("least", d.least, json::within(0, 1e12));
}

/// What the instruments can tell of each kind of quantity. Levels, distortion and rejection are in dB.
struct Doubts {
    Doubt resistance, ratio, inductance, capacitance, frequency, impedance;
    double level = 0.05;       ///< of a difference of two levels, dB
    double distortion = 1;     ///< of a share of harmonics well above the floor, dB
    double rejection = 1;      ///< dB
    double temperature = 0.5;  ///< of the unit's wire, K
    bool operator==(const Doubts&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Doubts& d) {
    const auto decibels = json::aboveUpTo(0, 20).in("dB");
    visit.need("resistance", d.resistance);
    visit.need("ratio", d.ratio);
    visit.need("inductance", d.inductance);
    visit.need("capacitance", d.capacitance);
    visit.need("frequency", d.frequency);
    visit.need("impedance", d.impedance);
    visit.need("level", d.level, decibels);
    visit.need("distortion", d.distortion, decibels);
    visit.need("rejection", d.rejection, decibels);
    visit.need("temperature", d.temperature, json::aboveUpTo(0, 20).in("K"));
}

/// Where a signal comes from.
struct Generator {
    double resistance = 50;               ///< from terminal to terminal, half of it in each leg, ohm
    double level = 20;                    ///< greatest EMF, dBu
    double lowest = 10, highest = 200e3;  ///< Hz
    double distortion = 1e-5;             ///< of generator and analyser on their own, share
    bool operator==(const Generator&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Generator& g) {
    const auto hertz = json::aboveUpTo(0, 1e8).in("Hz");
    visit.need("resistance", g.resistance, json::aboveUpTo(0, 1e6).in("ohm"));
    visit.need("greatest_level", g.level, json::within(-60, 60).in("dBu"));
    visit.need("lowest_frequency", g.lowest, hertz);
    visit.need("highest_frequency", g.highest, hertz);
    visit.need("own_distortion", g.distortion, json::aboveUpTo(0, 0.1));
}

/// Where it goes to, and the cable in between.
struct Analyser {
    double resistance = 200e3;     ///< from terminal to terminal, ohm
    double capacitance = 100e-12;  ///< likewise, F
    double cable = 100e-12;        ///< of the fixture's leads at the observed port, F
    double rejection = 90;         ///< greatest rejection that fixture and instrument show on a resistor pair, dB
    double noise = 0;              ///< of a low-noise amplifier in front, V/sqrt(Hz); 0: there is none
    bool operator==(const Analyser&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Analyser& a) {
    const auto farad = json::within(0, 1e-6).in("F");
    visit.need("resistance", a.resistance, json::aboveUpTo(0, 1e12).in("ohm"));
    visit.need("capacitance", a.capacitance, farad);
    visit.need("cable_capacitance", a.cable, farad);
    visit.need("greatest_rejection", a.rejection, json::within(0, 200).in("dB"));
    visit.may("amplifier_noise", a.noise, json::within(0, 1e-3).in("V/rtHz"));
}

/// Resistors and capacitors that can be plugged in series with the generator and onto a port, to make a customer's
/// source and load.
struct PlugIns {
    double lowestResistance = 0, highestResistance = 0;    ///< ohm; highest 0: there are none
    double lowestCapacitance = 0, highestCapacitance = 0;  ///< F; highest 0: there are none
    bool operator==(const PlugIns&) const = default;
    [[nodiscard]] bool haveResistor(double ohm) const noexcept;
    [[nodiscard]] bool haveCapacitor(double farad) const noexcept;
};
template <class Visitor>
void fields(Visitor& visit, PlugIns& p) {
    const auto ohm = json::within(0, 1e9).in("ohm"), farad = json::within(0, 1e-3).in("F");
    visit.may("lowest_resistance", p.lowestResistance, ohm);
    visit.may("highest_resistance", p.highestResistance, ohm);
    visit.may("lowest_capacitance", p.lowestCapacitance, farad);
    visit.may("highest_capacitance", p.highestCapacitance, farad);
}

/// Meters of direct current, impedance and insulation.
struct Meters {
    double resistanceCurrent = 1e-3;        ///< greatest of the ohmmeter, A
    double leastVoltage = 5e-3;             ///< that the impedance meter can be set to, V
    double insulationVoltage = 100;         ///< V, direct
    double insulationLeast = 100e6;         ///< that the shop asks for, ohm
    double hipotRamp = 5, hipotDwell = 60;  ///< s
    double hipotTrip = 1e-3;                ///< A
    double hipotFrequency = 50;             ///< Hz
    double hipotRepeat = 0.8;               ///< of the voltage, in every later test
    std::string hipotSource;                ///< where these come from
    bool operator==(const Meters&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Meters& m) {
    visit.need("resistance_current", m.resistanceCurrent, json::aboveUpTo(0, 1).in("A"));
    visit.need("impedance_least_voltage", m.leastVoltage, json::aboveUpTo(0, 10).in("V"));
    visit.need("insulation_voltage", m.insulationVoltage, json::aboveUpTo(0, 5000).in("V"));
    visit.need("insulation_least", m.insulationLeast, json::aboveUpTo(0, 1e15).in("ohm"));
    visit.need("hipot_ramp", m.hipotRamp, json::within(0, 600).in("s"));
    visit.need("hipot_dwell", m.hipotDwell, json::within(1, 600).in("s"));
    visit.need("hipot_trip", m.hipotTrip, json::aboveUpTo(0, 1).in("A"));
    visit.need("hipot_frequency", m.hipotFrequency, json::within(0, 400).in("Hz, 0 for direct voltage"));
    visit.need("hipot_repeat", m.hipotRepeat, json::aboveUpTo(0, 1));
    visit.need("hipot_source", m.hipotSource);
}

/// An instrument and the day until which its calibration holds, as 2026-05-31.
struct Calibration {
    std::string instrument;
    std::string until;
    bool operator==(const Calibration&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Calibration& c) {
    visit.need("instrument", c.instrument);
    visit.need("until", c.until);
}

/// How the fixture is kept true.
struct Upkeep {
    double soakHours = 4;                ///< of units in the room before they are measured
    double roomLow = 20, roomHigh = 26;  ///< degree Celsius
    std::string openShort;               ///< how and when the fixture is checked open and shorted
    std::string reference;               ///< the unit that is measured every day
    std::vector<Calibration> calibrations;
    bool operator==(const Upkeep&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Upkeep& u) {
    const auto celsius = json::within(-20, 60).in("degree Celsius");
    visit.need("soak_hours", u.soakHours, json::within(0, 200).in("h"));
    visit.need("room_lowest", u.roomLow, celsius);
    visit.need("room_highest", u.roomHigh, celsius);
    visit.need("open_and_short", u.openShort);
    visit.need("daily_reference", u.reference);
    visit.need("calibrations", u.calibrations);
}

struct Fixture {
    int format = 1;
    std::string title, note;
    Generator generator;
    Analyser analyser;
    PlugIns plugIns;
    Meters meters;
    Doubts doubts;
    Upkeep upkeep;
    bool operator==(const Fixture&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Fixture& f) {
    visit.need("format", f.format, json::within(1, 1));
    visit.need("title", f.title);
    visit.may("note", f.note);
    visit.need("generator", f.generator);
    visit.need("analyser", f.analyser);
    visit.may("plug_in", f.plugIns);
    visit.need("meters", f.meters);
    visit.need("uncertainty", f.doubts);
    visit.need("upkeep", f.upkeep);
}

}  // namespace design
