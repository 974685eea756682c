// SPDX-License-Identifier: GPL-3.0-or-later
// One table of fields drives reading, writing and schema of a record. A record type T has a function found by its
// namespace
//
//     template <class Visitor> void fields(Visitor& visit, T& record) {
//         visit.need("turns", record.turns, within(1, 20000).whole());
//         visit.may("note", record.note);
//     }
//
// and, if it keeps keys it does not know, a member `json::Value extra`. `need` reports a missing key; `may` leaves the
// value that T{} has, and writes nothing while it still has it. An enum has `constexpr auto names(Enum)` returning
// std::array<std::pair<const char*, Enum>, n>.
#pragma once

#include <array>
#include <limits>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <type_traits>
#include <utility>
#include <vector>

#include "json/value.h"
#include "units/datum.h"
#include "units/fault.h"
#include "units/quantity.h"

namespace json {

/// What a number may be. Bounds are included unless `above`/`below` says otherwise.
struct Allowed {
    double low = -std::numeric_limits<double>::max();
    double high = std::numeric_limits<double>::max();
    bool openLow = false;
    bool wholeNumber = false;
    std::string unit;  ///< "m", "ohm": for the sentence only

    [[nodiscard]] Allowed whole() const {
        Allowed a = *this;
        a.wholeNumber = true;
        return a;
    }
    [[nodiscard]] Allowed in(std::string u) const {
        Allowed a = *this;
        a.unit = std::move(u);
        return a;
    }
    [[nodiscard]] bool holds(double value) const noexcept;
    [[nodiscard]] std::string words() const;  ///< "a number above 0 and up to 0.5 (m)"
};
[[nodiscard]] inline Allowed within(double low, double high) {
    return {low, high, false, false, {}};
}
[[nodiscard]] inline Allowed aboveUpTo(double low, double high) {
    return {low, high, true, false, {}};
}

/// What was found, in few words, for a fault: the value's text cut to 60 characters, or "nothing".
[[nodiscard]] std::string foundWords(const Value& value);

/// Reads one object into a record, collecting every fault. After the fields, `finish` keeps unknown keys.
class Reader {
public:
    Reader(const Value& object, std::string file, std::string pointer, std::vector<units::Fault>& faults)
        : object_(object), file_(std::move(file)), pointer_(std::move(pointer)), faults_(faults) {}

    template <class T>
    void need(const char* key, T& to, const Allowed& allowed = {}) {
        take(key, to, allowed, true);
    }
    template <class T>
    void may(const char* key, T& to, const Allowed& allowed = {}) {
        take(key, to, allowed, false);
    }

    /// Reads one value that stands at this reader's own place (an array's item, a map's value).
    template <class T>
    void value(const Value& from, const std::string& key, T& to, const Allowed& allowed);

    [[nodiscard]] const Value& object() const noexcept { return object_; }
    [[nodiscard]] std::string place(const std::string& key) const { return file_ + ": " + pointer_ + "/" + key; }
    void fault(const std::string& key, const Value* found, std::string allowed) {
        faults_.push_back({place(key), found ? foundWords(*found) : "nothing", std::move(allowed)});
    }
    [[nodiscard]] Value unknownKeys() const;  ///< keys of the object that no field asked for, or null

private:
    template <class T>
    void take(const char* key, T& to, const Allowed& allowed, bool needed);
    void number(const Value& from, const std::string& key, double& to, const Allowed& allowed);

    const Value& object_;
    std::string file_, pointer_;
    std::vector<units::Fault>& faults_;
    std::vector<std::string> asked_;
};

/// Writes a record as an object in the order of its fields.
class Writer {
public:
    template <class T>
    void need(const char* key, T& from, const Allowed& = {}) {
        object_[key] = asValue(from);
    }
    template <class T>
    void may(const char* key, T& from, const Allowed& = {});
    Value object_ = Value::object();

    template <class T>
    static Value asValue(T& from);
};

/// Reads record `T` from `object`; faults are added to `faults`, and what can be read is returned.
template <class T>
[[nodiscard]] T readRecord(const Value& object, const std::string& file, const std::string& pointer,
                           std::vector<units::Fault>& faults);
/// Writes a record canonically: known fields in order, then the unknown keys it was read with.
template <class T>
[[nodiscard]] Value writeRecord(const T& record);

template <class Visitor>
void fields(Visitor& visit, units::Tolerance& t) {
    visit.need("plus_minus", t.plusMinus, within(0, 1e12));
    visit.may("relative", t.relative);
    visit.may("distribution", t.distribution);
}

}  // namespace json

#include "json/record_detail.h"
