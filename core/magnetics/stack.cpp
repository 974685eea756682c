// SPDX-License-Identifier: GPL-3.0-or-later
#include "magnetics/stack.h"

#include <algorithm>
#include <cmath>

#include "magnetics/permeability.h"

namespace magnetics {
namespace {

constexpr int jointsInPath = 2;
constexpr double smallestFringingJoint = 50e-6;  // m
constexpr double breakOfJoint = 10e-6;           // m
constexpr double lapOfJoint = 1e-3;              // m

void note(CoreModel& core, const std::string& sentence) {
    core.why += (core.why.empty() ? "" : "; ") + sentence;
}

void outside(CoreModel& core, const std::string& sentence) {
    core.valid = false;
    note(core, sentence);
}

/// The curve of an alloy whose permeability is `factor` times the catalog's: the same flux at a field 1/factor as
/// large. Starts at (0, 0); points that do not rise are left out.
std::vector<catalog::BhPoint> scaledCurve(const catalog::Alloy& alloy, double factor) {
    std::vector<catalog::BhPoint> curve{{0, 0}};
    for (const catalog::BhPoint& point : alloy.curve)
        if (const double field = point.field / factor; field > curve.back().field && point.flux > curve.back().flux)
            curve.push_back({field, point.flux});
    if (curve.size() < 2) curve.clear();
    return curve;
}

StackBlock blockOf(const design::StackPart& part, const catalog::Alloy& alloy) {
    StackBlock block;
    block.alloy = alloy.title.empty() ? part.alloy.key : alloy.title;
    block.share = part.share;
    block.thickness = part.thickness;
    block.initialPermeability = std::max(1.0, alloy.initialPermeability * part.permeabilityFactor);
    block.resistivity = alloy.resistivity;
    block.saturation = alloy.saturation;
    block.rayleigh = alloy.rayleigh * part.permeabilityFactor * part.permeabilityFactor;
    block.coercivity = alloy.coercivity / part.permeabilityFactor;
    block.remanence = alloy.remanence;
    block.curve = scaledCurve(alloy, part.permeabilityFactor);
    return block;
}

void resolveStack(CoreModel& core, const design::Design& design, const catalog::Catalog& shop) {
    const catalog::Alloy* first = nullptr;
    bool mixed = false;
    for (const design::StackPart& part : design.core.stack) {
        if (part.share <= 0) continue;
        const catalog::Alloy* alloy = design::part(design, part.alloy, shop);
        if (!alloy) {
            outside(core, "the alloy " + part.alloy.key + " is not in the catalog");
            continue;
        }
        mixed = mixed || (first && !(*first == *alloy));
        first = first ? first : alloy;
        core.blocks.push_back(blockOf(part, *alloy));
    }
    if (mixed && design.core.pattern == design::StackPattern::Alternating)
        outside(core,
                "alternating sheets are computed as parallel paths, without the flux that neighbours exchange at the "
                "joints");
}

}  // namespace

CoreModel coreModel(const design::Design& design, const catalog::Catalog& shop) {
    CoreModel core;
    const design::Core& from = design.core;
    resolveStack(core, design, shop);
    const catalog::Sheet* sheet = design::part(design, from.sheet, shop);
    if (!sheet) {
        outside(core, "the sheet " + from.sheet.key + " is not in the catalog");
        return core;
    }
    core.area = sheet->tongue * from.height * from.stackingFactor;
    core.pathLength = catalog::pathLength(*sheet);
    if (sheet->cut != catalog::SheetCut::UI) {
        core.outerArea = 2 * sheet->outerLeg * from.height * from.stackingFactor;
        core.outerPath = std::max(0.0, core.pathLength - sheet->windowHeight - sheet->yoke);
    }
    // An interleaved joint's gap is an effective figure already: only air that was put there on purpose fringes.
    if (from.joint == design::Joint::Butt) core.fringing = fringingFactor(from.gap, core.area, sheet->windowHeight);
    core.gap = from.gap / core.fringing;
    if (from.joint == design::Joint::Interleaved && from.gap > 0) {
        core.lapBreak = jointsInPath * breakOfJoint;
        core.lapLength = jointsInPath * lapOfJoint;
    }
    const double back = (sheet->cut == catalog::SheetCut::UI ? 1 : 2) * std::min(sheet->outerLeg, sheet->yoke);
    if (back < 0.98 * sheet->tongue)
        note(core,
             "flux is taken as uniform, but outer legs or yokes are narrower than the coil's leg and saturate first");
    return core;
}

CoreModel outerLoop(const CoreModel& core) {
    CoreModel loop = core;
    loop.area = core.outerArea;
    loop.pathLength = core.outerPath;
    loop.gap = core.gap / jointsInPath;
    return loop;
}

std::complex<double> gappedPermeability(std::complex<double> permeability, double gap, double path) noexcept {
    return permeability / (1.0 + permeability * (gap / path));
}

double fringingFactor(double gap, double area, double windowHeight) noexcept {
    if (gap < jointsInPath * smallestFringingJoint) return 1;
    return std::max(1.0, 1 + gap / std::sqrt(area) * std::log(2 * windowHeight / gap));
}

std::complex<double> turnInductance(const CoreModel& core, double frequency) noexcept {
    std::complex<double> sum;
    for (const StackBlock& block : core.blocks) {
        const std::complex<double> sheet =
            sheetPermeability(frequency, block.initialPermeability, block.resistivity, block.thickness);
        sum += block.share * gappedPermeability(sheet, core.gap, core.pathLength);
    }
    return mu0 * core.area / core.pathLength * sum;
}

}  // namespace magnetics
