// SPDX-License-Identifier: GPL-3.0-or-later
// Ratio, resistance, length, fill: what follows from geometry.
#include <cmath>

#include "analysis/copper.h"
#include "analysis/figure_making.h"
#include "coil/wire_resistance.h"
#include "design/unit_size.h"
#include "units/text.h"

namespace analysis {

namespace {

/// Conductor tolerance of fine wire: +-3 um below 0.25 mm, +-1 % above (IEC 60317-0-1), twice that in resistance.
double resistanceUncertainty(const DesignContext& context, const design::Winding& winding) {
    for (const auto& layer : context.stages().build->layers)
        if (layer.winding == winding.name && layer.conductor.bare > 0)
            return 2 * std::max(0.01, std::min(3e-6, 0.03 * layer.conductor.bare) / layer.conductor.bare);
    return 0.06;
}

}  // namespace

Copper copperOf(const design::Design& design, const coil::CoilBuild& build, const design::Winding& winding) {
    Copper sum;
    double conductance = 0;
    const double warm = coil::resistanceFactor(design.conditions.temperature);
    for (const auto* section : design::sectionsOf(design, winding)) {
        double resistance = 0;
        for (const auto& layer : build.layers) {
            if (layer.winding != winding.name || layer.section != section->name) continue;
            resistance += layer.resistance20 * warm;
            sum.length += layer.turns * layer.turnLength;
            const double strands = layer.conductor.strands;
            sum.mass +=
                layer.conductor.foil
                    ? coil::copperDensity * layer.turns * layer.turnLength * layer.conductor.bare * layer.box.height()
                    : strands * coil::wireMass(layer.turns * layer.turnLength, layer.conductor.bare);
        }
        sum.resistance += resistance;
        if (resistance > 0) conductance += 1 / resistance;
    }
    if (winding.connection == design::Connection::Parallel && conductance > 0) sum.resistance = 1 / conductance;
    return sum;
}

namespace {

/// Sides of the whole unit; one that the brief has no room for says so.
void addSize(const DesignContext& context, std::vector<units::Figure>& figures) {
    constexpr double ofMoulding = 0.01;  // bobbins and bent parts, common practice, no source
    const auto is = design::footprint(design::unitSize(context.design, context.shop));
    const auto may = design::footprint(context.design.brief.size);
    const auto side = [&](const char* name, double value, double allowed) {
        const bool fits = value <= allowed * (1 + 1e-9);
        figures.push_back({name,
                           value,
                           "m",
                           ofMoulding,
                           "sheets, coil and fittings as they lie; geometry",
                           fits,
                           fits ? "" : "the brief allows " + units::write(units::Kind::Length, allowed, 3),
                           "",
                           {}});
    };
    side("outer_length", is.length, may.length);
    side("outer_width", is.width, may.width);
    side("outer_height", is.height, may.height);
}

}  // namespace

void addCoilFigures(const DesignContext& context, std::vector<units::Figure>& figures) {
    const auto& windings = context.design.windings;
    const char* geometry = "turn length of a rectangular tongue with round corners; IEC 60028 copper";
    for (std::size_t w = 1; w < windings.size(); ++w) {
        const double first = design::seriesTurns(context.design, windings[0]);
        figures.push_back({"ratio." + windings[0].name + "." + windings[w].name,
                           first != 0 ? design::seriesTurns(context.design, windings[w]) / first : 0,
                           "",
                           0,
                           "turns of the second over turns of the first",
                           true,
                           "",
                           "",
                           {}});
    }
    for (const auto& winding : windings) {
        const Copper copper = copperOf(context.design, *context.stages().build, winding);
        figures.push_back({"dcr." + winding.name,
                           copper.resistance,
                           "ohm",
                           resistanceUncertainty(context, winding),
                           geometry,
                           true,
                           "",
                           "",
                           {}});
        figures.push_back({"wire_length." + winding.name, copper.length, "m", 0.03, geometry, true, "", "", {}});
        figures.push_back({"copper_mass." + winding.name, copper.mass, "kg", 0.06, geometry, true, "", "", {}});
    }
    double fill = 0, build = 0;
    std::string problems;
    for (const auto& chamber : context.stages().build->fill) {
        fill = std::max(fill, chamber.heightShare);
        build = std::max(build, chamber.build);
        for (const auto& problem : chamber.problems) problems += (problems.empty() ? "" : "; ") + problem;
    }
    figures.push_back({"fill",
                       fill,
                       "",
                       0.05,
                       "build over window height of the fullest chamber",
                       problems.empty(),
                       problems,
                       "",
                       {}});
    figures.push_back({"build",
                       build,
                       "m",
                       0.05,
                       "overall diameters and sheets in the fullest chamber",
                       problems.empty(),
                       problems,
                       "",
                       {}});
    addSize(context, figures);
}

}  // namespace analysis
