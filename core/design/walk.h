// SPDX-License-Identifier: GPL-3.0-or-later
// Goes through everything a record says, with the place where it stands in a file.
#pragma once

#include <string>
#include <utility>
#include <variant>

#include "design/coil.h"
#include "json/record.h"

namespace design {

/// Visits the fields of a record and of all records inside it by their own tables. `leaf` is called as
/// leaf(pointer, value, allowed) for every value that is not itself a record, a list or an option, and as
/// leaf.record(pointer, record) before each record's fields. Pointers are JSON pointers: "/windings/1/start".
template <class Leaf>
class Walk {
public:
    Walk(std::string pointer, Leaf& leaf) : pointer_(std::move(pointer)), leaf_(leaf) {}

    template <class T>
    void need(const char* key, T& value, const json::Allowed& allowed = {}) {
        step(pointer_ + "/" + key, value, allowed);
    }
    template <class T>
    void may(const char* key, T& value, const json::Allowed& allowed = {}) {
        step(pointer_ + "/" + key, value, allowed);
    }

    template <class T>
    void step(const std::string& at, T& value, const json::Allowed& allowed) {
        using namespace json::detail;
        if constexpr (IsVector<T>::value) {
            for (std::size_t i = 0; i < value.size(); ++i) step(at + "/" + std::to_string(i), value[i], allowed);
        } else if constexpr (IsOptional<T>::value) {
            if (value) step(at, *value, allowed);
        } else if constexpr (std::is_same_v<T, Item>) {
            if (Section* s = value.section()) step(at + "/section", *s, allowed);
            if (Barrier* b = value.barrier()) step(at + "/barrier", *b, allowed);
            if (Shield* s = value.shield()) step(at + "/shield", *s, allowed);
        } else if constexpr (Record<T>) {
            leaf_.record(at, value);
            Walk inner(at, leaf_);
            fields(inner, value);
        } else {
            leaf_(at, value, allowed);
        }
    }

private:
    std::string pointer_;
    Leaf& leaf_;
};

/// Walks a whole record; `record` is taken by value because field tables hand out references.
template <class T, class Leaf>
void walk(T record, Leaf& leaf, const std::string& pointer = "") {
    Walk<Leaf> all(pointer, leaf);
    all.step(pointer, record, {});
}

}  // namespace design
