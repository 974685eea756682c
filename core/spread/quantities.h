// SPDX-License-Identifier: GPL-3.0-or-later
// Every quantity of a design by its JSON pointer.
#pragma once

#include <map>
#include <string>

#include "design/design.h"
#include "design/walk.h"

namespace spread {

struct QuantityAt {
    units::Quantity* quantity = nullptr;
    json::Allowed allowed;
};

/// Every quantity of a design by its pointer.
struct Quantities {
    std::map<std::string, QuantityAt> found = {};
    template <class T>
    void record(const std::string&, T&) {}
    template <class T>
    void operator()(const std::string& at, T& value, const json::Allowed& allowed) {
        if constexpr (std::is_same_v<T, units::Quantity>) found[at] = {&value, allowed};
    }
};

[[nodiscard]] inline Quantities quantitiesOf(design::Design& design) {
    Quantities all;
    design::Walk<Quantities>("", all).step("", design, {});
    return all;
}

}  // namespace spread
