// SPDX-License-Identifier: GPL-3.0-or-later
// Plans a section, or the sections that are wound in one hand.
#pragma once

#include <string>
#include <vector>

#include "coil/hand.h"
#include "exchange/winding_plan.h"

namespace exchange {

/// Plans hands in winding order; remembers which wire is on the machine.
class HandPlanner {
public:
    HandPlanner(const design::Design& design, const coil::CoilBuild& build, const catalog::Catalog& shop,
                const Winder& winder);
    /// Plans what is wound from item `i` of place `p` on into `step`; returns the last item taken.
    std::size_t plan(std::size_t p, std::size_t i, PlannedStep& step);
    /// "50 µm of Polyester film".
    [[nodiscard]] std::string paper(const design::Ply& ply) const;

private:
    [[nodiscard]] std::string wireName(const coil::HandWire& wire) const;
    void opening(const coil::Hand& hand, PlannedStep& step);
    void anchor(const coil::HandWire& wire, bool start, double after, PlannedStep& step) const;
    [[nodiscard]] std::optional<PinPlace> pinPlace(int number) const;
    void inside(const coil::Hand& hand, PlannedStep& step) const;

    const design::Design& design_;
    const coil::CoilBuild& build_;
    const catalog::Catalog& shop_;
    const Winder& winder_;
    const catalog::Bobbin* bobbin_ = nullptr;
    std::vector<std::string> loaded_;
};

}  // namespace exchange
