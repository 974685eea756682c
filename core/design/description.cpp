// SPDX-License-Identifier: GPL-3.0-or-later
#include "design/description.h"

#include <algorithm>
#include <map>

namespace design {

namespace {

units::Kind kindOf(const std::string& key, const std::string& unit) {
    if (key == "turns") return units::Kind::Turns;
    return unit == "degree Celsius" ? units::Kind::Temperature : units::kindOfUnit(unit);
}

const std::string* find(const Description& d, const std::string& words) {
    const auto it = std::find_if(d.begin(), d.end(), [&](const auto& line) { return line.first == words; });
    return it == d.end() ? nullptr : &it->second;
}

}  // namespace

void compare(const std::string& what, const Description& a, const Description& b, std::vector<std::string>& lines) {
    const auto add = [&](const std::string& words, const std::string& from, const std::string& to) {
        const std::string lead = what.empty() || words.empty() ? what + words : what + " " + words;
        lines.push_back(lead + ": " + from + " → " + to);
    };
    for (const auto& [words, before] : a) {
        const std::string* after = find(b, words);
        const std::string now = after ? *after : "none";
        if (now != before) add(words, before, now);
    }
    for (const auto& [words, after] : b)
        if (!find(a, words) && after != "none") add(words, "none", after);
}

std::string valueWords(double number, const std::string& key, const std::string& unit) {
    return units::writeExact(kindOf(key, unit), number);
}

std::string valueWords(const units::Quantity& q, const std::string& key, const std::string& unit) {
    std::string text = valueWords(q.value, key, unit);
    if (q.tolerance) {
        const units::Tolerance& t = *q.tolerance;
        text += " ±" + (t.relative ? units::shortest(t.plusMinus * 100) + " %" : valueWords(t.plusMinus, key, unit));
        if (!t.distribution.empty()) text += " " + t.distribution;
    }
    if (!q.note.empty()) text += " (" + q.note + ")";
    return text;
}

std::string valueWords(const json::Value& value) {
    if (value.is_null()) return "none";
    if (value.is_string()) return value.get<std::string>().empty() ? "none" : value.get<std::string>();
    return value.dump();
}

std::string pointerWords(const std::string& pointer) {
    // Keys that read better with a word more.
    static const std::map<std::string, std::string> better = {
        {"height", "stack height"}, {"operating_level_dBu", "operating level"}, {"hook_up", "hook-up"}};
    std::string words;
    std::size_t from = 1;
    while (from < pointer.size()) {
        const std::size_t to = std::min(pointer.find('/', from), pointer.size());
        std::string key = pointer.substr(from, to - from);
        const bool number =
            !key.empty() && std::all_of(key.begin(), key.end(), [](char c) { return c >= '0' && c <= '9'; });
        if (const auto it = better.find(key); it != better.end() && pointer.find("/size/") == std::string::npos)
            key = it->second;
        else if (number)
            key = std::to_string(std::stoul(key) + 1);
        std::replace(key.begin(), key.end(), '_', ' ');
        words += (words.empty() ? "" : " ") + key;
        from = to + 1;
    }
    return words;
}

std::string lastKey(const std::string& pointer) {
    return pointer.substr(pointer.rfind('/') + 1);
}

}  // namespace design
