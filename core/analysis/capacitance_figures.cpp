// SPDX-License-Identifier: GPL-3.0-or-later
// Static capacitance between windings, shields and core.
#include <cmath>

#include "analysis/figure_making.h"

namespace analysis {

namespace {

std::string ownerOf(const field::Body& body, const coil::CoilBuild& build) {
    switch (body.kind) {
        case field::Body::Kind::Layer:
            return build.layers[static_cast<std::size_t>(body.index)].winding;
        case field::Body::Kind::Foil:
            return build.foils[static_cast<std::size_t>(body.index)].name;
        case field::Body::Kind::Core:
            break;
    }
    return "core";
}

}  // namespace

void addCapacitanceFigures(const DesignContext& context, std::vector<units::Figure>& figures) {
    const auto& stages = context.stages();
    std::vector<std::string> owners;
    for (const auto& winding : context.design.windings) owners.push_back(winding.name);
    for (const auto& foil : stages.build->foils) owners.push_back(foil.name);
    owners.emplace_back("core");
    const double uncertainty = std::hypot(stages.capacitance->valid ? 0.25 : 0.5, stages.capacitance->spread);
    for (std::size_t a = 0; a < owners.size(); ++a)
        for (std::size_t b = a + 1; b < owners.size(); ++b) {
            double sum = 0;
            for (const auto& facing : stages.capacitance->facings) {
                const auto one = ownerOf(facing.a, *stages.build), other = ownerOf(facing.b, *stages.build);
                if ((one == owners[a] && other == owners[b]) || (one == owners[b] && other == owners[a]))
                    sum += facing.total.real();
            }
            if (sum <= 0) continue;
            figures.push_back({"capacitance." + owners[a] + "." + owners[b],
                               sum,
                               "F",
                               uncertainty,
                               "periodic cell of enamelled wires, sheet and fill; facing area by stretches of the axis",
                               stages.capacitance->valid,
                               stages.capacitance->why,
                               "",
                               {}});
        }
}

}  // namespace analysis
