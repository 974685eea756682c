// SPDX-License-Identifier: GPL-3.0-or-later
// Plans a section, or the sections that are wound in one hand.
#pragma once

#include <string>
#include <vector>

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
    /// One wire, or several strands, of a hand.
    struct Strand {
        const design::Section* section = nullptr;
        const design::Winding* winding = nullptr;
        std::vector<const coil::Layer*> pieces;  // in winding sequence
        [[nodiscard]] bool foil() const { return winding != nullptr && winding->foil.has_value(); }
    };
    [[nodiscard]] Strand strandOf(std::size_t p, std::size_t i) const;
    [[nodiscard]] std::string wireName(const Strand& s) const;
    [[nodiscard]] static PlannedLayer layerOf(const Strand& strand, int number);
    static void layers(const std::vector<Strand>& strands, PlannedStep& step);
    void opening(const std::vector<Strand>& strands, PlannedStep& step);
    void anchor(const Strand& s, bool start, double after, PlannedStep& step) const;
    [[nodiscard]] std::optional<PinPlace> pinPlace(int number) const;
    void inside(const std::vector<Strand>& strands, PlannedStep& step) const;

    const design::Design& design_;
    const coil::CoilBuild& build_;
    const catalog::Catalog& shop_;
    const Winder& winder_;
    const catalog::Bobbin* bobbin_ = nullptr;
    std::vector<std::string> loaded_;
};

}  // namespace exchange
