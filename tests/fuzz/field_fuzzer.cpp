// SPDX-License-Identifier: GPL-3.0-or-later
// What a person types into a field: the first byte says of which kind. What is read is written and read again.
#include <cmath>

#include "reader.h"
#include "units/text.h"

namespace {

void read(std::string_view bytes) {
    constexpr int kinds = static_cast<int>(units::Kind::CurrentNoise) + 1;
    if (bytes.empty()) return;
    const auto kind = static_cast<units::Kind>(static_cast<unsigned char>(bytes.front()) % kinds);
    const auto value = fuzz::unlessRefused("", [&] { return units::read(kind, bytes.substr(1)); });
    if (!value) return;
    fuzz::require(std::isfinite(*value), "a number that is none");
    const std::string exact = units::writeExact(kind, *value);
    fuzz::require(units::read(kind, exact) == *value, "a value that its own text does not give");
    static_cast<void>(units::write(kind, *value));
    for (const int steps : {1, -1})
        fuzz::require(std::isfinite(units::stepped(kind, *value, steps)), "a step to nowhere");
}

const fuzz::Registered fields("field", read);

}  // namespace
