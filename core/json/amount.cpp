// SPDX-License-Identifier: GPL-3.0-or-later
#include "json/amount.h"

#include "units/fault.h"

namespace json {

namespace {

std::size_t valuesIn(const Value& value) {
    std::size_t count = 1;
    if (value.is_structured())
        for (const Value& inner : value) count += valuesIn(inner);
    return count;
}

}  // namespace

void limitAmount(const Value& root, const std::string& file) {
    if (const std::size_t count = valuesIn(root); count > mostValues)
        units::refuse(file, std::to_string(count) + " values", "at most " + std::to_string(mostValues));
}

}  // namespace json
