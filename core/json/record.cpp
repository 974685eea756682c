// SPDX-License-Identifier: GPL-3.0-or-later
#include "json/record.h"

#include <algorithm>
#include <cmath>

#include "units/text.h"

namespace json {

bool Allowed::holds(double value) const noexcept {
    if (!std::isfinite(value) || value > high || value < low || (openLow && value == low)) return false;
    return !wholeNumber || value == std::floor(value);
}

std::string Allowed::words() const {
    constexpr double any = std::numeric_limits<double>::max();
    std::string text = wholeNumber ? "a whole number" : "a number";
    if (low > -any && high < any && !openLow)
        text += " from " + units::shortest(low) + " to " + units::shortest(high);
    else if (low > -any && high < any)
        text += " above " + units::shortest(low) + " and up to " + units::shortest(high);
    else if (low > -any)
        text += (openLow ? " above " : " of at least ") + units::shortest(low);
    else if (high < any)
        text += " of at most " + units::shortest(high);
    return unit.empty() ? text : text + " " + unit;
}

std::string foundWords(const Value& value) {
    if (value.is_null()) return "nothing";
    if (value.is_object()) return "an object";
    if (value.is_array()) return "a list";
    if (value.is_number()) return value.is_number_float() ? units::shortest(value.get<double>()) : value.dump();
    std::string text = value.dump(-1, ' ', false, Value::error_handler_t::replace);
    constexpr std::size_t most = 60;
    if (text.size() > most) {
        std::size_t cut = most;
        while (cut > 0 && (static_cast<unsigned char>(text[cut]) & 0xC0) == 0x80) --cut;  // not inside a character
        text = text.substr(0, cut) + "…";
    }
    return text;
}

void Reader::number(const Value& from, const std::string& key, double& to, const Allowed& allowed) {
    if (!from.is_number() || !allowed.holds(from.get<double>())) {
        fault(key, &from, allowed.words());
        return;
    }
    to = from.get<double>();
}

Value Reader::unknownKeys() const {
    if (!object_.is_object()) return Value();
    Value unknown = Value::object();
    auto& list = unknown.get_ref<Value::object_t&>();  // keys are not doubled: no search for each of very many
    for (const auto& [key, what] : object_.items())
        if (std::find(asked_.begin(), asked_.end(), key) == asked_.end()) list.push_back({key, what});
    return unknown;
}

}  // namespace json
