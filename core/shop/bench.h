// SPDX-License-Identifier: GPL-3.0-or-later
// A design as it hangs in the shop's fixture.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "design/design.h"
#include "design/fixture.h"

namespace shop {

/// How one of the customer's hook-ups is made on the bench.
struct BenchHookUp {
    std::string name;                          ///< as the customer's
    std::string words;                         ///< what is connected where
    std::map<std::string, std::string> ports;  ///< what is on each: "generator, 40.0 Ω"
    std::vector<std::string> differences;      ///< what differs from the customer's, a sentence each
    bool operator==(const BenchHookUp&) const = default;
};

/// The design with the customer's sources and loads replaced by what the fixture has, and nothing promised. Levels
/// count at the generator's EMF.
struct Bench {
    design::Design design;
    std::vector<BenchHookUp> hookUps;  ///< of `design.hookUps`
    /// The first hook-up's driven port at an impedance meter, everything else open.
    design::HookUp open;
    std::string driven, observed;  ///< ports of the first hook-up; "": none
    [[nodiscard]] const BenchHookUp& hookUp(const std::string& name) const;
};

/// The hook-ups that tests are made in: the first, and those in which something is promised. A customer's source is the
/// generator with a resistor plugged in where one is to be had, else the generator alone; his load is the analyser and
/// its cable with parts plugged in beside it likewise. Ports that are only loaded stay open where the fixture has no
/// such load. `filled`: with the filling.
[[nodiscard]] Bench benchOf(const design::Design& design, const design::Fixture& fixture, bool filled);

}  // namespace shop
