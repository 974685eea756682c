// SPDX-License-Identifier: GPL-3.0-or-later
// What every part of `check` looks at, and where its faults go. For the room's own sources.
#pragma once

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "design/check.h"
#include "units/text.h"

namespace design {

struct Inspection {
    const Design& design;
    const catalog::Catalog& shop;
    const std::string& file;
    std::vector<units::Fault>& faults;

    void fault(const std::string& pointer, std::string found, std::string allowed) const {
        faults.push_back({file + ": " + pointer, std::move(found), std::move(allowed)});
    }
    /// The catalog entry, or null for an unknown key (a fault of its own).
    template <class Part>
    [[nodiscard]] const Part* part(const catalog::PartRef<Part>& ref) const {
        return design::part(design, ref, shop);
    }
    /// Faults a terminal that is not in the list; an empty name is left alone.
    void terminal(const std::string& pointer, const std::string& name) const;
    /// Faults a node of a hook-up that does not exist.
    void node(const std::string& pointer, const std::string& name) const;
    /// Faults empty and doubled names of a list that stands at `pointer`.
    template <class Thing>
    void names(const std::string& pointer, const std::vector<Thing>& things, const std::string& what) const {
        for (std::size_t i = 0; i < things.size(); ++i) {
            const auto same = [&](const Thing& t) { return t.name == things[i].name; };
            const std::string at = pointer + "/" + std::to_string(i) + "/name";
            const auto here = things.begin() + static_cast<std::ptrdiff_t>(i);
            if (things[i].name.empty())
                fault(at, "\"\"", "a name of at least one character");
            else if (std::any_of(things.begin(), here, same))
                fault(at, quoted(things[i].name) + " a second time", "a name that no other " + what + " has");
        }
    }
    static std::string quoted(const std::string& text) { return "\"" + text + "\""; }
    static std::string at(const std::string& list, std::size_t i, const std::string& key = "") {
        return "/" + list + "/" + std::to_string(i) + (key.empty() ? "" : "/" + key);
    }
    /// A length to the picometre: what is left of a subtraction is not shown.
    static std::string length(double metres) {
        return units::writeExact(units::Kind::Length, std::round(metres * 1e12) / 1e12);
    }
};

/// Whether more stands in the design than any unit has; nothing else is then looked at.
[[nodiscard]] bool isTooMuch(const Inspection& in);
void checkParts(const Inspection& in);
void checkCore(const Inspection& in);
void checkFittings(const Inspection& in);
void checkTerminals(const Inspection& in);
void checkWindings(const Inspection& in);
void checkCoil(const Inspection& in);
void checkPorts(const Inspection& in);
void checkHookUps(const Inspection& in);
void checkBrief(const Inspection& in);
void checkConditions(const Inspection& in);

}  // namespace design
