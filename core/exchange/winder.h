// SPDX-License-Identifier: GPL-3.0-or-later
// The description of a winding machine, as a shop writes it: axes and letters, limits, codes, stops.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "coil/winding_tension.h"
#include "json/record.h"

namespace exchange {

/// What an operator is stopped for.
enum class StopKind { Paper, Shield, Tap, Pin, Wire, Lead, Splice, Foil };
inline constexpr std::array<StopKind, 8> allStops{StopKind::Paper, StopKind::Shield, StopKind::Tap,    StopKind::Pin,
                                                  StopKind::Wire,  StopKind::Lead,   StopKind::Splice, StopKind::Foil};

/// The unit of lengths in a program; in the description lengths are in m.
enum class ProgramUnit { Millimetre, Inch };
constexpr std::array<std::pair<const char*, ProgramUnit>, 2> names(ProgramUnit) {
    return {{{"mm", ProgramUnit::Millimetre}, {"in", ProgramUnit::Inch}}};
}

/// An axis that is moved to a position: traverse along the coil, depth outward from the tongue, cross to the side.
struct Axis {
    std::string letter;
    int decimals = 3;            ///< digits behind the decimal sign
    double low = 0, high = 0.1;  ///< travel, m
    double speed = 0.1;          ///< greatest, m/s
    bool operator==(const Axis&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Axis& a) {
    visit.need("letter", a.letter);
    visit.may("decimals", a.decimals, json::within(0, 6));
    visit.need("low", a.low, json::within(-1, 1).in("m"));
    visit.need("high", a.high, json::within(-1, 1).in("m"));
    visit.need("speed", a.speed, json::aboveUpTo(0, 10).in("m/s"));
}

/// The turns of a block.
struct TurnCounter {
    std::string letter;
    int decimals = 1;
    bool running = false;  ///< true: counts on from the main block; false: the turns of this block
    bool operator==(const TurnCounter&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, TurnCounter& c) {
    visit.need("letter", c.letter);
    visit.may("decimals", c.decimals, json::within(1, 4));
    visit.may("running", c.running);
}

/// Speeds in turns a minute, as machines are set.
struct SpindleDrive {
    std::string letter;  ///< "": the operator's foot sets the speed
    double lowestRpm = 10, highestRpm = 1000, slowRpm = 60;
    double slowTurns = 3;     ///< at the beginning of a layer
    double acceleration = 2;  ///< turns/s2
    double wireSpeed = 10;    ///< greatest, m/s
    bool operator==(const SpindleDrive&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, SpindleDrive& s) {
    const auto rpm = json::within(1, 60000).in("turns a minute");
    visit.may("letter", s.letter);
    visit.need("lowest_rpm", s.lowestRpm, rpm);
    visit.need("highest_rpm", s.highestRpm, rpm);
    visit.need("slow_rpm", s.slowRpm, rpm);
    visit.may("slow_turns", s.slowTurns, json::within(0, 100));
    visit.need("acceleration", s.acceleration, json::within(0.1, 10000).in("turns/s2"));
    visit.need("wire_speed", s.wireSpeed, json::aboveUpTo(0, 100).in("m/s"));
}

/// Tension is set in cN, one hundredth of a newton.
struct TensionBrake {
    std::string letter;
    double lowest = 0.02, highest = 20;   ///< N
    double stress = coil::windingStress;  ///< in the copper, Pa; what to wind with
    bool operator==(const TensionBrake&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, TensionBrake& t) {
    visit.need("letter", t.letter);
    visit.need("lowest", t.lowest, json::within(0, 1000).in("N"));
    visit.need("highest", t.highest, json::aboveUpTo(0, 1000).in("N"));
    visit.may("stress", t.stress, json::within(1e6, 2e8).in("Pa"));
}

/// How a stop is said and how long it takes.
struct StopCode {
    int number = 0;       ///< behind the reason's letter
    std::string word;     ///< at the head of the message
    double seconds = 30;  ///< what the operator needs, s
    bool operator==(const StopCode&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, StopCode& s) {
    visit.may("number", s.number, json::within(0, 999));
    visit.need("word", s.word);
    visit.need("seconds", s.seconds, json::within(0, 3600).in("s"));
}
struct StopCodes {
    StopCode paper, shield, tap, pin, wire, lead, splice, foil;
    bool operator==(const StopCodes&) const = default;
    [[nodiscard]] const StopCode& of(StopKind kind) const;
};
template <class Visitor>
void fields(Visitor& visit, StopCodes& s) {
    visit.need("paper", s.paper);
    visit.need("shield", s.shield);
    visit.need("tap", s.tap);
    visit.need("pin", s.pin);
    visit.need("wire", s.wire);
    visit.need("lead", s.lead);
    visit.need("splice", s.splice);
    visit.need("foil", s.foil);
}

/// Wrapping wire round a pin by the machine itself.
struct PinWrap {
    int code = 21;            ///< auxiliary function (M)
    std::string countLetter;  ///< wraps stand behind it
    int wraps = 3;
    double seconds = 3;
    bool operator==(const PinWrap&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, PinWrap& p) {
    visit.need("code", p.code, json::within(0, 999));
    visit.need("count_letter", p.countLetter);
    visit.need("wraps", p.wraps, json::within(1, 20));
    visit.need("seconds", p.seconds, json::within(0, 60).in("s"));
}

/// Preparatory (G) and auxiliary (M) functions; the defaults are those of ISO 6983-1.
struct FunctionCodes {
    int rapid = 0, wind = 33, inch = 70, metric = 71, absolute = 90;
    int stop = 0, clockwise = 3, counterclockwise = 4, spindleStop = 5, end = 30;
    bool operator==(const FunctionCodes&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, FunctionCodes& c) {
    const auto code = json::within(0, 999);
    visit.may("rapid", c.rapid, code);
    visit.may("wind", c.wind, code);
    visit.may("inch", c.inch, code);
    visit.may("metric", c.metric, code);
    visit.may("absolute", c.absolute, code);
    visit.may("stop", c.stop, code);
    visit.may("clockwise", c.clockwise, code);
    visit.may("counterclockwise", c.counterclockwise, code);
    visit.may("spindle_stop", c.spindleStop, code);
    visit.may("end", c.end, code);
}

/// A winding machine. Program zero: traverse at the window's lower wall, depth at the tongue's surface, cross at the
/// bobbin's middle.
struct Winder {
    int format = 1;
    std::string title, note;
    int spindles = 1;
    ProgramUnit unit = ProgramUnit::Millimetre;
    bool decimalPoint = true;  ///< false: the last digit stands at the axis's last decimal place
    int maximumBlocks = 9999;
    int numberStep = 10;
    TurnCounter counter;
    SpindleDrive spindle;
    std::optional<Axis> traverse, depth, cross;
    std::string pitchLetter;
    int pitchDecimals = 4;
    std::optional<TensionBrake> tension;
    std::string reasonLetter;  ///< "": only the message says what a stop is for
    std::string messageWord = "MSG";
    StopCodes stops;
    std::optional<PinWrap> pinWrap;
    FunctionCodes codes;
    double standoff = 1e-3;   ///< of the guide from the layer that it lays, m
    double clearance = 5e-3;  ///< above flanges and pins when the guide travels, m
    double thinWire = 6e-5;   ///< bare; what is finer is spliced to a skein, m
    double loadSeconds = 60;  ///< new bobbins on all spindles
    double shiftHours = 8;
    bool operator==(const Winder&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Winder& w) {
    visit.need("format", w.format, json::within(1, 1));
    visit.need("title", w.title);
    visit.may("note", w.note);
    visit.need("spindles", w.spindles, json::within(1, 100));
    visit.may("unit", w.unit);
    visit.may("decimal_point", w.decimalPoint);
    visit.need("maximum_blocks", w.maximumBlocks, json::within(10, 200000));
    visit.may("number_step", w.numberStep, json::within(1, 100));
    visit.need("counter", w.counter);
    visit.need("spindle", w.spindle);
    visit.may("traverse", w.traverse);
    visit.may("depth", w.depth);
    visit.may("cross", w.cross);
    visit.may("pitch_letter", w.pitchLetter);
    visit.may("pitch_decimals", w.pitchDecimals, json::within(1, 6));
    visit.may("tension", w.tension);
    visit.may("reason_letter", w.reasonLetter);
    visit.may("message_word", w.messageWord);
    visit.need("stops", w.stops);
    visit.may("pin_wrap", w.pinWrap);
    visit.may("codes", w.codes);
    visit.may("standoff", w.standoff, json::within(0, 0.1).in("m"));
    visit.may("clearance", w.clearance, json::within(0, 0.1).in("m"));
    visit.may("thin_wire", w.thinWire, json::within(0, 0.001).in("m"));
    visit.may("load_seconds", w.loadSeconds, json::within(0, 36000).in("s"));
    visit.may("shift_hours", w.shiftHours, json::within(0.5, 24).in("h"));
}

/// Reads and checks a description. Throws units::BadInput with every fault: unknown keys, letters used twice or not
/// free in ISO 6983-1, limits that cross, a pin wrap without the axes it needs, codes and words used twice.
[[nodiscard]] Winder readWinder(const std::string& text, const std::string& file);

/// The file behind `--winder`: a path if it names a file, else NAME.json in `winders` under the folders, the last that
/// has it. Throws units::BadInput that names those there are.
[[nodiscard]] std::string winderFile(const std::string& nameOrPath, const std::vector<std::string>& folders);

/// A description, its file, and its text, which a replay reads by itself.
struct OpenedWinder {
    std::string file, text;
    Winder winder;
};
/// Finds, reads and checks it. Throws as `winderFile`, `readFile` and `readWinder`.
[[nodiscard]] OpenedWinder openWinder(const std::string& nameOrPath, const std::vector<std::string>& folders);
/// The names of the winders in the folders, sorted.
[[nodiscard]] std::vector<std::string> winderNames(const std::vector<std::string>& folders);

/// "paper", "shield", …
[[nodiscard]] const char* stopName(StopKind kind) noexcept;

}  // namespace exchange
