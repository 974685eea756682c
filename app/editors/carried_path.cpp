// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/carried_path.h"

#include <algorithm>
#include <charconv>
#include <cstdlib>

#include "json/record.h"

namespace editors {

namespace {

/// Where item `k` of `a` stands in `b`.
std::optional<std::size_t> carriedIndex(const json::Value& a, const json::Value& b, std::size_t k) {
    if (k < b.size() && b[k] == a[k]) return k;
    std::optional<std::size_t> nearest;
    for (std::size_t i = 0; i < b.size(); ++i)
        if (b[i] == a[k] &&
            (!nearest || std::max(i, k) - std::min(i, k) < std::max(*nearest, k) - std::min(*nearest, k)))
            nearest = i;
    if (nearest) return nearest;
    if (a.size() == b.size()) return k;  // it was changed itself
    const std::size_t common = std::min(a.size(), b.size());
    std::size_t front = 0, back = 0;
    while (front < common && a[front] == b[front]) ++front;
    while (back < common - front && a[a.size() - 1 - back] == b[b.size() - 1 - back]) ++back;
    if (k < front) return k;
    if (k >= a.size() - back) return b.size() - (a.size() - k);
    return {};
}

std::optional<std::size_t> number(const std::string& text) {
    std::size_t value = 0;
    const char* end = text.data() + text.size();
    const auto read = std::from_chars(text.data(), end, value);
    if (read.ec != std::errc() || read.ptr != end) return {};
    return value;
}

}  // namespace

std::optional<std::string> carriedPath(const design::Design& from, const design::Design& to, const std::string& path) {
    const json::Value before = json::writeRecord(from), after = json::writeRecord(to);
    const json::Value *a = &before, *b = &after;
    std::string carried;
    for (std::size_t at = 0; at < path.size();) {
        const std::size_t next = std::min(path.find('/', at + 1), path.size());
        const std::string step = path.substr(at + 1, next - at - 1);
        at = next;
        if (a->is_array() && number(step)) {
            const std::size_t k = *number(step);
            if (k >= a->size() || !b->is_array()) return {};
            const auto there = carriedIndex(*a, *b, k);
            if (!there) return {};
            carried += "/" + std::to_string(*there);
            a = &(*a)[k];
            b = &(*b)[*there];
            continue;
        }
        carried += "/" + step;
        // A value that has its default is not written: from here on the path cannot change any more, unless the other
        // design lacks a list's item.
        const bool has = a->is_object() && a->contains(step), had = b->is_object() && b->contains(step);
        if (!has || !had) {
            const std::string rest = path.substr(at);
            const bool item = has && (*a)[step].is_array() && !rest.empty();
            if (item) return {};
            return carried + rest;
        }
        a = &(*a)[step];
        b = &(*b)[step];
    }
    return carried;
}

}  // namespace editors
