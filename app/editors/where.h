// SPDX-License-Identifier: GPL-3.0-or-later
// Where a value lives: how to find it in any design, and its path in a file.
#pragma once

#include <algorithm>
#include <functional>
#include <string>

#include "design/design.h"
#include "json/record.h"

namespace editors {

/// A value in a design; `find` gives null if it is not there (any more), and only reads when given a shared design.
template <class T>
struct Where {
    std::function<T*(design::Design&)> find;
    std::string path;

    /// The value in a design that is not to be changed.
    [[nodiscard]] const T* seen(const design::Design& d) const {
        return find(const_cast<design::Design&>(d));  // NOLINT: finding reads only
    }
};

[[nodiscard]] inline Where<design::Design> wholeDesign() {
    return {[](design::Design& d) { return &d; }, ""};
}

/// Walks a record's fields until the one of this key and type.
template <class T>
struct MemberFinder {
    std::string key;
    T* found = nullptr;
    json::Allowed allowed = {};
    template <class U>
    void need(const char* name, U& member, const json::Allowed& limits = {}) {
        if constexpr (std::is_same_v<T, U>)
            if (key == name) {
                found = &member;
                allowed = limits;
            }
    }
    template <class U>
    void may(const char* name, U& member, const json::Allowed& limits = {}) {
        need(name, member, limits);
    }
};

/// The member of this key in a record.
template <class T, class Record>
[[nodiscard]] Where<T> memberOf(const Where<Record>& record, const std::string& key) {
    return {[find = record.find, key](design::Design& d) -> T* {
                Record* r = find(d);
                if (r == nullptr) return nullptr;
                MemberFinder<T> finder{key};
                fields(finder, *r);
                return finder.found;
            },
            record.path + "/" + key};
}

template <class T>
[[nodiscard]] Where<T> itemOf(const Where<std::vector<T>>& list, std::size_t k) {
    return {[find = list.find, k](design::Design& d) -> T* {
                auto* v = find(d);
                return v != nullptr && k < v->size() ? &(*v)[k] : nullptr;
            },
            list.path + "/" + std::to_string(k)};
}

template <class T>
[[nodiscard]] Where<T> inside(const Where<std::optional<T>>& option) {
    return {[find = option.find](design::Design& d) -> T* {
                auto* v = find(d);
                return v != nullptr && v->has_value() ? &**v : nullptr;
            },
            option.path};
}

/// An item of the coil as a section, barrier or shield.
template <class T>
[[nodiscard]] Where<T> coilItem(const design::ItemIndex& at, const char* kind) {
    return {[at](design::Design& d) -> T* {
                if (at.place < 0 || at.place >= static_cast<int>(d.coil.size())) return nullptr;
                auto& order = d.coil[static_cast<std::size_t>(at.place)].order;
                if (at.item < 0 || at.item >= static_cast<int>(order.size())) return nullptr;
                return std::get_if<T>(&order[static_cast<std::size_t>(at.item)].what);
            },
            "/coil/" + std::to_string(at.place) + "/order/" + std::to_string(at.item) + "/" + kind};
}

}  // namespace editors
