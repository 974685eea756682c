// SPDX-License-Identifier: GPL-3.0-or-later
// A record as lines of words and values, for comparing two of them. For the room's own sources.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "design/walk.h"
#include "units/text.h"

namespace design {

/// What a record says: words for each field ("stacking factor") and its value as people write it ("0.92", "10 mm").
using Description = std::vector<std::pair<std::string, std::string>>;

/// Adds "WHAT WORDS: OLD → NEW" for every field that differs; "none" where one of them has no such line.
void compare(const std::string& what, const Description& a, const Description& b, std::vector<std::string>& lines);

[[nodiscard]] std::string valueWords(const units::Quantity& q, const std::string& key, const std::string& unit);
[[nodiscard]] std::string valueWords(double number, const std::string& key, const std::string& unit);
[[nodiscard]] std::string valueWords(const json::Value& value);
/// "/stack/0/permeability_factor" → "stack 1 permeability factor".
[[nodiscard]] std::string pointerWords(const std::string& pointer);
/// Last key of a pointer.
[[nodiscard]] std::string lastKey(const std::string& pointer);

/// A leaf of `Walk` that writes every value down.
struct Describe {
    Description out = {};

    template <class T>
    void record(const std::string& at, T& record) {
        if constexpr (json::detail::KeepsExtra<T>)
            if (record.extra.is_object())
                for (const auto& [key, value] : record.extra.items())
                    out.emplace_back(pointerWords(at + "/" + key), valueWords(value));
    }
    template <class T>
    void operator()(const std::string& at, T& value, const json::Allowed& allowed) {
        out.emplace_back(pointerWords(at), words(at, value, allowed));
    }
    /// A part that stands in the design itself is written down field by field.
    template <class Part>
    void operator()(const std::string& at, catalog::PartRef<Part>& ref, const json::Allowed&) {
        out.emplace_back(pointerWords(at), ref.own ? "own part" : ref.key.empty() ? "none" : ref.key);
        if (!ref.own) return;
        Part copy = *ref.own;
        Walk<Describe> inner(at, *this);
        record(at, copy);
        fields(inner, copy);
    }

private:
    template <class T>
    static std::string words(const std::string& at, T& value, const json::Allowed& allowed) {
        if constexpr (std::is_same_v<T, units::Quantity> || std::is_same_v<T, double>) {
            return valueWords(value, lastKey(at), allowed.unit);
        } else if constexpr (std::is_same_v<T, units::Datum>) {
            return valueWords(value.value, lastKey(at), allowed.unit) +
                   (value.source.empty() ? "" : " by " + value.source) + (value.guaranteed ? ", guaranteed" : "");
        } else if constexpr (std::is_same_v<T, std::string>) {
            return value.empty() ? "none" : value;
        } else if constexpr (std::is_same_v<T, bool>) {
            return value ? "yes" : "no";
        } else {
            return valueWords(json::Writer::asValue(value));
        }
    }
};

/// The lines of a record, each list in it item by item.
template <class T>
[[nodiscard]] Description description(const T& record) {
    Describe all;
    walk(record, all);
    return std::move(all.out);
}

}  // namespace design
