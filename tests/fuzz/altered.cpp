// SPDX-License-Identifier: GPL-3.0-or-later
#include "altered.h"

#include <fstream>
#include <iterator>
#include <map>
#include <vector>

#include "json/text.h"

namespace fuzz {

namespace {

/// A value in its object or list.
struct Place {
    json::Value* parent;
    std::size_t index;
    [[nodiscard]] json::Value& value() const {
        if (parent->is_array()) return (*parent)[index];
        return (members().begin() + static_cast<std::ptrdiff_t>(index))->second;
    }
    void takeAway() const {
        if (parent->is_array())
            parent->erase(index);
        else
            members().erase(members().begin() + static_cast<std::ptrdiff_t>(index));
    }
    [[nodiscard]] json::Value::object_t& members() const { return parent->get_ref<json::Value::object_t&>(); }
};

void list(json::Value& parent, std::vector<Place>& places) {
    for (std::size_t k = 0; k < parent.size(); ++k) {
        places.push_back({&parent, k});
        json::Value& value = places.back().value();
        if (value.is_structured()) list(value, places);
    }
}

const std::vector<json::Value>& replacements() {
    static const std::vector<json::Value> all = json::read(
        R"([null, true, false, 0, 1, -1, 2, 0.5, 1e-5, 1e-300, 1e300, -1e300, 1e9, 20000, 64, 2147483648, -2147483649,
            18446744073709551615, 1e19, "", "x", "0", "\n", "../../x", "\u0000", "µ", "=1+1", [], {}, [[]], [1, 2],
            [0, -1, 1e308], {"": 1}, {"value": 1}, {"value": 1, "tolerance": {"plus_minus": 0.1}}, 0.001, 0.0001, 10,
            100, 1000, 3, 4, 5, 6, 7, 8])",
        "replacements");
    return all;
}

void alter(json::Value& root, std::size_t where, unsigned act, std::size_t with) {
    std::vector<Place> places;
    list(root, places);
    if (places.empty()) return;
    const Place place = places[where % places.size()];
    const Place other = places[with * 37 % places.size()];
    switch (act % 8) {
        case 0:
            return place.takeAway();
        case 1:
        case 2:
        case 3:
            place.value() = replacements()[with % replacements().size()];
            return;
        case 4:
            if (place.value().is_number()) place.value() = place.value().get<double>() * static_cast<double>(with) / 16;
            return;
        case 5:
            if (place.parent->is_array()) {
                const json::Value again = place.value();
                for (std::size_t k = 0; k < with % 64; ++k) place.parent->push_back(again);
            }
            return;
        case 6: {
            const json::Value copy = other.value();
            place.value() = copy;
            return;
        }
        default:
            if (place.value().is_number()) place.value() = static_cast<int>(with) - 4;
    }
}

const json::Value& sound(const std::string& path) {
    static std::map<std::string, json::Value> known;
    const auto at = known.find(path);
    if (at != known.end()) return at->second;
    std::ifstream file(std::string(COILWRIGHT_SOURCE_DIR "/") + path, std::ios::binary);
    const std::string text{std::istreambuf_iterator<char>(file), {}};
    json::Value root = json::read(text, path);
    constexpr std::size_t enough = 4;  // of a catalog's entries: one input costs what its file is long
    if (const auto entries = root.find("entries"); entries != root.end())
        while (entries->size() > enough) entries->erase(std::prev(entries->end()));
    return known.emplace(path, std::move(root)).first->second;
}

}  // namespace

std::string givenText(std::string_view bytes, const std::string& path) {
    constexpr std::size_t each = 4, most = 16;
    if (bytes.empty() || bytes.front() != '\xFF') return std::string(bytes);
    bytes.remove_prefix(1);
    json::Value root = sound(path);
    for (std::size_t k = 0; k < most && bytes.size() >= each; ++k, bytes.remove_prefix(each)) {
        const auto byte = [&](std::size_t i) { return static_cast<std::size_t>(static_cast<unsigned char>(bytes[i])); };
        alter(root, byte(0) * 256 + byte(1), static_cast<unsigned>(byte(2)), byte(3));
    }
    return root.dump(-1, ' ', false, json::Value::error_handler_t::replace);
}

}  // namespace fuzz
