// SPDX-License-Identifier: GPL-3.0-or-later
// What every catalog entry has besides its numbers, and how a design points at one.
#pragma once

#include <memory>
#include <string>

#include "json/record.h"
#include "units/datum.h"

namespace catalog {

/// Whether an entry may be chosen for a new design. Entries are retired, never deleted.
enum class Standing { Current, Retired };
constexpr std::array<std::pair<const char*, Standing>, 2> names(Standing) {
    return {{{"current", Standing::Current}, {"retired", Standing::Retired}}};
}

/// A pointer at a catalog entry by key, or the entry itself standing in its place.
template <class Part>
struct PartRef {
    std::string key;                  ///< catalog key; empty when `own` is set
    std::shared_ptr<const Part> own;  ///< inline entry of the same schema

    PartRef() = default;
    PartRef(std::string name) : key(std::move(name)) {}  // NOLINT: a key is the usual case
    PartRef(const char* name) : key(name) {}             // NOLINT
    [[nodiscard]] bool empty() const noexcept { return key.empty() && !own; }
    bool operator==(const PartRef& other) const {
        return key == other.key && (own == other.own || (own && other.own && *own == *other.own));
    }
    void readSelf(const json::Value& from, const std::string& place, json::Reader& reader) {
        if (from.is_string() && !from.get<std::string>().empty())
            key = from.get<std::string>();
        else if (from.is_object())
            reader.value(from, place, own, {});
        else
            reader.fault(place, &from, "a catalog key in quotes, or an entry in curly brackets");
    }
    [[nodiscard]] json::Value writeSelf() const { return own ? json::writeRecord(*own) : json::Value(key); }
};

}  // namespace catalog
