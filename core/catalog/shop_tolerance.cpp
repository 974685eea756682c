// SPDX-License-Identifier: GPL-3.0-or-later
#include "catalog/shop_tolerance.h"

namespace catalog {

namespace {

/// A pair of numbers; false and a fault where it is none.
bool readPair(const json::Value& from, const std::string& key, json::Reader& reader, const char* allowed, double& first,
              double& second) {
    std::vector<double> pair;
    if (from.is_array() && from.size() == 2) reader.value(from, key, pair, json::within(-1e6, 1e6));
    if (pair.size() != 2) {
        reader.fault(key, &from, allowed);
        return false;
    }
    first = pair[0];
    second = pair[1];
    return true;
}

}  // namespace

void WidthUpTo::readSelf(const json::Value& from, const std::string& key, json::Reader& reader) {
    constexpr const char* allowed = "[up to this size above 0, plus or minus this, at least 0]";
    if (readPair(from, key, reader, allowed, upTo, plusMinus) && (upTo <= 0 || plusMinus < 0))
        reader.fault(key, &from, allowed);
}

void StepChance::readSelf(const json::Value& from, const std::string& key, json::Reader& reader) {
    constexpr const char* allowed = "[step, share of the units from 0 to 1]";
    if (readPair(from, key, reader, allowed, step, share) && (share < 0 || share > 1))
        reader.fault(key, &from, allowed);
}

}  // namespace catalog
