// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "json/text.h"
#include "units/text.h"

namespace json {

namespace {

constexpr std::size_t columns = 100;

std::string quoted(const std::string& text) {
    return Value(text).dump(-1, ' ', false, Value::error_handler_t::replace);
}

std::string numberText(double value) {
    if (!std::isfinite(value)) throw std::logic_error("a number that is not finite was to be written as JSON");
    if (value == 0 && std::signbit(value)) return "-0.0";
    return units::shortest(value);
}

std::string scalar(const Value& value) {
    if (value.is_number_float()) return numberText(value.get<double>());
    return value.is_string() ? quoted(value.get_ref<const std::string&>()) : value.dump();
}

std::size_t characters(std::string_view text) {
    return static_cast<std::size_t>(
        std::count_if(text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

/// Writes into one text, and knows at which column it stands.
class Canonical {
public:
    std::string text;

    void put(const Value& value, std::size_t indent) {
        if (value.is_object())
            putObject(value, indent);
        else if (value.is_array())
            putArray(value, indent);
        else
            text += scalar(value);
    }

private:
    void putObject(const Value& value, std::size_t indent) {
        if (value.empty()) {
            text += "{}";
            return;
        }
        text += "{";
        const char* separator = "";
        for (const auto& [key, item] : value.items()) {
            text += separator;
            newLine(indent + 2);
            text.append(quoted(key)).append(": ");
            put(item, indent + 2);
            separator = ",";
        }
        newLine(indent);
        text += "}";
    }

    void putArray(const Value& value, std::size_t indent) {
        if (putOnOneLine(value)) return;
        text += "[";
        const char* separator = "";
        for (const Value& item : value) {
            text += separator;
            newLine(indent + 2);
            put(item, indent + 2);
            separator = ",";
        }
        newLine(indent);
        text += "]";
    }

    bool putOnOneLine(const Value& value) {
        if (!std::all_of(value.begin(), value.end(), [](const Value& item) { return item.is_number(); })) return false;
        const std::size_t lineStart = text.rfind('\n') == std::string::npos ? 0 : text.rfind('\n') + 1;
        const std::size_t column = characters(std::string_view(text).substr(lineStart));
        std::string line = "[";
        for (const Value& item : value) {
            if (line.size() > 1) line += ", ";
            line += scalar(item);
            if (column + line.size() + 2 > columns) return false;  // bracket and comma follow
        }
        text.append(line).append("]");
        return true;
    }

    void newLine(std::size_t indent) { text.append("\n").append(indent, ' '); }
};

}  // namespace

std::string write(const Value& value) {
    Canonical canonical;
    canonical.put(value, 0);
    return canonical.text + "\n";
}

}  // namespace json
