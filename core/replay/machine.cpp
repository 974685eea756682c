// SPDX-License-Identifier: GPL-3.0-or-later
#include "replay/machine.h"

#include "json/record.h"
#include "json/text.h"
#include "units/joined.h"

namespace replay {

namespace {

/// Looks values up in one object of the description.
class Lookup {
public:
    Lookup(const json::Value& object, std::string place) : object_(object), place_(std::move(place)) {
        if (!object.is_object()) refuse("", object, "an object in curly brackets");
    }
    [[nodiscard]] bool has(const char* key) const {
        const auto at = object_.find(key);
        return at != object_.end() && !at->is_null();
    }
    [[nodiscard]] Lookup inside(const char* key) const {
        return {has(key) ? object_[key] : nothing(), units::joined({place_, "/", key})};
    }
    [[nodiscard]] double number(const char* key) const {
        const json::Value& found = has(key) ? object_[key] : nothing();
        if (!found.is_number()) refuse(key, found, "a number");
        return found.get<double>();
    }
    [[nodiscard]] double number(const char* key, double usual) const { return has(key) ? number(key) : usual; }
    [[nodiscard]] int whole(const char* key) const {
        const double found = number(key);
        if (!(found >= -1e9 && found <= 1e9)) refuse(key, object_[key], "a whole number");
        return static_cast<int>(found);
    }
    [[nodiscard]] int whole(const char* key, int usual) const { return has(key) ? whole(key) : usual; }
    [[nodiscard]] bool yes(const char* key, bool usual) const {
        if (!has(key)) return usual;
        if (!object_[key].is_boolean()) refuse(key, object_[key], "true or false");
        return object_[key].get<bool>();
    }
    [[nodiscard]] std::string text(const char* key, const std::string& usual) const {
        if (!has(key)) return usual;
        if (!object_[key].is_string()) refuse(key, object_[key], "text in quotes");
        return object_[key].get<std::string>();
    }
    [[nodiscard]] char letter(const char* key) const {
        const std::string found = text(key, "");
        return found.empty() ? '\0' : found.front();
    }

private:
    static const json::Value& nothing() {
        static const json::Value none;
        return none;
    }
    [[noreturn]] void refuse(const char* key, const json::Value& found, const char* allowed) const {
        units::refuse(units::joined({place_, "/", key}), json::foundWords(found), allowed);
    }
    const json::Value& object_;
    std::string place_;
};

std::optional<Travel> travel(const Lookup& all, const char* key) {
    if (!all.has(key)) return std::nullopt;
    const Lookup axis = all.inside(key);
    return Travel{axis.letter("letter"), axis.whole("decimals", 3), axis.number("low"), axis.number("high"),
                  axis.number("speed")};
}

void readCodes(const Lookup& codes, Machine& m) {
    m.rapid = codes.whole("rapid", m.rapid);
    m.wind = codes.whole("wind", m.wind);
    m.inch = codes.whole("inch", m.inch);
    m.metric = codes.whole("metric", m.metric);
    m.absolute = codes.whole("absolute", m.absolute);
    m.stop = codes.whole("stop", m.stop);
    m.clockwise = codes.whole("clockwise", m.clockwise);
    m.counterclockwise = codes.whole("counterclockwise", m.counterclockwise);
    m.spindleStop = codes.whole("spindle_stop", m.spindleStop);
    m.end = codes.whole("end", m.end);
}

void readStops(const Lookup& all, Machine& m) {
    m.reasonLetter = all.letter("reason_letter");
    m.messageWord = all.text("message_word", "MSG");
    const Lookup stops = all.inside("stops");
    for (const char* name : {"paper", "shield", "tap", "pin", "wire", "lead", "splice", "foil"}) {
        const Lookup one = stops.inside(name);
        m.reasons.push_back({name, one.whole("number", 0), one.text("word", ""), one.number("seconds")});
    }
    if (!all.has("pin_wrap")) return;
    const Lookup wrap = all.inside("pin_wrap");
    m.wrapCode = wrap.whole("code", 21);
    m.wraps = wrap.whole("wraps", 3);
    m.wrapLetter = wrap.letter("count_letter");
    m.wrapSeconds = wrap.number("seconds");
}

}  // namespace

Machine readMachine(const std::string& text, const std::string& file) {
    const json::Value value = json::read(text, file);
    const Lookup all(value, file + ": ");
    Machine m;
    m.title = all.text("title", "");
    m.spindles = all.whole("spindles", 1);
    m.mostBlocks = all.whole("maximum_blocks");
    m.inches = all.text("unit", "mm") == "in";
    m.point = all.yes("decimal_point", true);
    const Lookup counter = all.inside("counter"), spindle = all.inside("spindle");
    m.turnsLetter = counter.letter("letter");
    m.turnsDecimals = counter.whole("decimals", 1);
    m.turnsRun = counter.yes("running", false);
    m.speedLetter = spindle.letter("letter");
    m.lowestRpm = spindle.number("lowest_rpm");
    m.highestRpm = spindle.number("highest_rpm");
    m.acceleration = spindle.number("acceleration");
    m.wireSpeed = spindle.number("wire_speed");
    m.traverse = travel(all, "traverse");
    m.depth = travel(all, "depth");
    m.cross = travel(all, "cross");
    m.pitchLetter = all.letter("pitch_letter");
    m.pitchDecimals = all.whole("pitch_decimals", 4);
    if (all.has("tension")) {
        const Lookup tension = all.inside("tension");
        m.tensionLetter = tension.letter("letter");
        m.tensionLow = tension.number("lowest");
        m.tensionHigh = tension.number("highest");
    }
    readStops(all, m);
    if (all.has("codes")) readCodes(all.inside("codes"), m);
    m.clearance = all.number("clearance", m.clearance);
    m.thinWire = all.number("thin_wire", m.thinWire);
    m.loadSeconds = all.number("load_seconds", m.loadSeconds);
    m.shiftHours = all.number("shift_hours", m.shiftHours);
    return m;
}

}  // namespace replay
