// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/winding_plan.h"

#include <algorithm>
#include <cmath>

#include "exchange/hand_plan.h"
#include "units/joined.h"
#include "units/text.h"

namespace exchange {

namespace {

using units::joined;

/// Throws where the guide would have to go further than the machine can.
void checkTravel(const WindingPlan& plan, const Winder& winder) {
    const auto within = [&](const std::optional<Axis>& axis, const char* name, double at) {
        if (!axis || (at >= axis->low - 1e-9 && at <= axis->high + 1e-9)) return;
        units::refuse(joined({winder.title, ": ", name}),
                      "a guide position of " + units::write(units::Kind::Length, at),
                      joined({units::write(units::Kind::Length, axis->low), " to ",
                              units::write(units::Kind::Length, axis->high), ", the machine's travel"}));
    };
    within(winder.depth, "depth", plan.travelDepth);
    for (const auto& step : plan.steps) {
        for (const auto& layer : step.layers) {
            within(winder.traverse, "traverse", layer.low);
            within(winder.traverse, "traverse", layer.high);
        }
        for (const auto& stop : step.stops)
            if (stop.wrap) {
                within(winder.cross, "cross", stop.wrap->cross);
                within(winder.traverse, "traverse", stop.wrap->traverse);
            }
    }
}

std::string shieldWords(const design::Design& design, const catalog::Catalog& shop, const design::Shield& shield) {
    std::string words = shield.name;
    if (shield.form == design::ShieldForm::Foil)
        words += joined({", foil ", units::write(units::Kind::Length, shield.thickness),
                         shield.overEnds ? ", overlap insulated, folded over both ends" : ", overlap insulated"});
    else if (const auto* wire = design::part(design, shield.wire, shop))
        words += joined({", open winding of ", wire->title.empty() ? shield.wire.key : wire->title});
    if (!shield.terminal.empty()) words += ", lead to terminal " + shield.terminal;
    return words;
}

}  // namespace

double PlannedLayer::guide(double done) const {
    if (still) return (low + high) / 2;
    const double edge = std::min(pitch, high - low) / 2, moved = std::min(done, std::max(0.0, turns - 1)) * pitch;
    return fromLow ? low + edge + moved : high - edge - moved;
}

WindingPlan windingPlan(const design::Design& design, const coil::CoilBuild& build, const catalog::Catalog& shop,
                        const Winder& winder, int leg) {
    WindingPlan plan{design.name, design.partNumber, design.revision, leg, build.legs, 0, {}};
    HandPlanner hands(design, build, shop, winder);
    for (std::size_t p = 0; p < design.coil.size(); ++p) {
        const auto& place = design.coil[p];
        for (std::size_t i = 0; place.leg == leg && i < place.order.size(); ++i) {
            PlannedStep step;
            step.item = {static_cast<int>(p), static_cast<int>(i)};
            const auto& item = place.order[i];
            if (const auto* barrier = item.barrier()) {
                if (barrier->ply.thickness <= 0) continue;
                step.title = "insulation";
                step.stops.push_back({StopKind::Paper, 0, true, hands.paper(barrier->ply), {}});
            } else if (const auto* shield = item.shield()) {
                step.title = "shield " + shield->name;
                step.stops.push_back({StopKind::Shield, 0, true, shieldWords(design, shop, *shield), {}});
            } else {
                i = hands.plan(p, i, step);
            }
            plan.steps.push_back(std::move(step));
        }
    }
    if (std::none_of(plan.steps.begin(), plan.steps.end(), [](const auto& s) { return !s.layers.empty(); }))
        units::refuse(design.name, "no section on leg " + std::to_string(leg), "a leg that is wound");
    double highest = build.legs == 2 ? build.windowWidth / 2 : build.windowWidth;
    for (const auto& step : plan.steps)
        for (const auto& layer : step.layers) highest = std::max(highest, layer.outside + winder.standoff);
    plan.travelDepth = highest + winder.clearance;
    checkTravel(plan, winder);
    return plan;
}

}  // namespace exchange
