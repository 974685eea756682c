// SPDX-License-Identifier: GPL-3.0-or-later
// The two records of a design that are not written as an object of their fields.
#include <cmath>

#include "design/brief.h"
#include "design/coil.h"

namespace design {

void Item::readSelf(const json::Value& from, const std::string& place, json::Reader& reader) {
    constexpr const char* allowed = R"(an object with one key: "section", "barrier" or "shield")";
    if (!from.is_object() || from.size() != 1) return reader.fault(place, &from, allowed);
    const std::string& key = from.begin().key();
    const json::Value& inside = from.begin().value();
    const std::string at = place + "/" + key;
    if (key == "section") {
        reader.value(inside, at, what.emplace<Section>(), {});
    } else if (key == "barrier") {
        reader.value(inside, at, what.emplace<Barrier>(), {});
    } else if (key == "shield") {
        reader.value(inside, at, what.emplace<Shield>(), {});
    } else {
        const json::Value found = key;
        reader.fault(place, &found, allowed);
    }
}

json::Value Item::writeSelf() const {
    json::Value object = json::Value::object();
    if (section()) object["section"] = json::writeRecord(*section());
    if (barrier()) object["barrier"] = json::writeRecord(*barrier());
    if (shield()) object["shield"] = json::writeRecord(*shield());
    return object;
}

void MaskPoint::readSelf(const json::Value& from, const std::string& place, json::Reader& reader) {
    const auto limit = [](const json::Value& v) { return v.is_null() || v.is_number(); };
    if (!from.is_array() || from.size() != 3 || !from[0].is_number() || !(from[0].get<double>() > 0) ||
        !limit(from[1]) || !limit(from[2]))
        return reader.fault(place, &from, "[frequency above 0 Hz, low, high], where low and high may be null");
    const auto bound = [](const json::Value& v) {
        return v.is_null() ? std::optional<double>() : std::optional<double>(v.get<double>());
    };
    frequency = from[0].get<double>();
    low = bound(from[1]);
    high = bound(from[2]);
}

json::Value MaskPoint::writeSelf() const {
    json::Value list = json::Value::array();
    double known = frequency;
    list.push_back(json::Writer::asValue(known));
    for (const auto& bound : {low, high}) {
        std::optional<double> copy = bound;
        list.push_back(json::Writer::asValue(copy));
    }
    return list;
}

}  // namespace design
