// SPDX-License-Identifier: GPL-3.0-or-later
#include "coil/chamber_winder.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "coil/mean_turn.h"
#include "coil/wire_resistance.h"
#include "units/text.h"

namespace coil {

using design::Section;

namespace {

/// Wire circles' share of the space in a wild winding: general coil-winding literature, number from memory.
constexpr double randomFill = 0.73;
constexpr double nestedStep = 0.86602540378443864676;

double square(double a) {
    return a * a;
}

Conductor conductorOf(const catalog::Wire& wire, int strands) {
    Conductor c;
    c.bare = wire.bareDiameter;
    c.overall = wire.overallDiameter;
    c.strands = strands;
    c.enamelPermittivity = wire.enamelPermittivity;
    c.enamelLoss = wire.enamelLossFactor;
    return c;
}

template <class Hand>
double left(const Hand& hand) {
    double most = 0;
    for (const auto& s : hand) most = std::max(most, s.section->turns - s.done);
    return most > 1e-9 ? most : 0;
}

}  // namespace

ChamberWinder::ChamberWinder(const design::Design& design, const catalog::Catalog& shop, CoilBuild& build,
                             int placeIndex)
    : design_(design), shop_(shop), build_(build), place_(design.coil[static_cast<std::size_t>(placeIndex)]) {
    index_.place = placeIndex;
    fill_.leg = place_.leg;
    fill_.chamber = place_.chamber;
}

void ChamberWinder::wind(const Box& room) {
    fill_.room = room;
    cursor_ = shielded_ = room.x0;
    for (std::size_t i = 0; i < place_.order.size(); ++i) {
        index_.item = static_cast<int>(i);
        const auto& item = place_.order[i];
        if (const auto* barrier = item.barrier()) lay(barrier->ply, "insulation");
        if (const auto* shield = item.shield()) lay(*shield);
        if (item.section()) i = layHand(i);
    }
    close();
}

AxialRoom ChamberWinder::roomBetween(double marginLow, double marginHigh) const {
    return {fill_.room.y0 + marginLow, fill_.room.y1 - marginHigh};
}

double ChamberWinder::turnAt(double x) const {
    return turnLength(build_.tongue, build_.stack, build_.bobbinWall + build_.clearance, build_.cornerRadius, x);
}

void ChamberWinder::lay(const design::Ply& ply, const char* what) {
    if (ply.thickness <= 0) return;
    Dielectric sheet;
    sheet.box = {cursor_, cursor_ + ply.thickness, fill_.room.y0, fill_.room.y1};
    if (const auto* material = design::part(design_, ply.insulation, shop_)) {
        sheet.permittivity = material->permittivity;
        sheet.loss = material->lossFactor;
        sheet.name = material->title.empty() ? ply.insulation.key : material->title;
    }
    if (sheet.name.empty()) sheet.name = what;
    sheet.leg = place_.leg;
    sheet.chamber = place_.chamber;
    build_.dielectrics.push_back(sheet);
    cursor_ += ply.thickness;
    area_ += sheet.box.width() * sheet.box.height();
}

void ChamberWinder::lay(const design::Shield& shield) {
    Foil foil;
    foil.item = index_;
    foil.name = shield.name;
    foil.leg = place_.leg;
    foil.chamber = place_.chamber;
    foil.winding = shield.form == design::ShieldForm::Winding;
    double thickness = shield.thickness;
    foil.conductor.foil = !foil.winding;
    foil.conductor.bare = foil.conductor.overall = thickness;
    if (foil.winding)
        if (const auto* wire = design::part(design_, shield.wire, shop_)) {
            foil.conductor = conductorOf(*wire, 1);
            thickness = wire->overallDiameter;
        }
    const auto room = roomBetween(shield.marginLow, shield.marginHigh);
    if (room.width() <= 0) problem("shield " + shield.name + " has no width left between its margins");
    foil.box = {cursor_, cursor_ + thickness, room.low, std::max(room.low, room.high)};
    foil.turnLength = turnAt(foil.box.middle());
    if (shield.overEnds && !foil.winding) {
        foil.foldedTo = shielded_;
        area_ += 2 * thickness * (cursor_ - shielded_);
    }
    build_.foils.push_back(foil);
    cursor_ += thickness;
    shielded_ = cursor_;
    area_ += thickness * foil.box.height();
}

ChamberWinder::Strand ChamberWinder::strandOf(std::size_t i) const {
    Strand s{place_.order[i].section(), nullptr, {}, 0, 0, {}, {index_.place, static_cast<int>(i)}};
    s.winding = design::winding(design_, s.section->winding);
    if (s.winding == nullptr) return s;
    if (s.winding->foil) {
        s.conductor.foil = true;
        s.conductor.bare = s.conductor.overall = s.winding->foil->thickness;
        s.overallMaximum = s.conductor.overall;
    } else if (const auto* wire = design::part(design_, s.winding->wire, shop_)) {
        s.conductor = conductorOf(*wire, s.winding->strands);
        s.overallMaximum = wire->overallMaximum > 0 ? wire->overallMaximum.value : wire->overallDiameter.value;
    }
    s.taps = tapsInside(design_, *s.winding, *s.section);
    return s;
}

/// Lays the sections of one hand that begin at item i; returns the last item taken.
std::size_t ChamberWinder::layHand(std::size_t i) {
    std::vector<Strand> hand{strandOf(i)};
    const auto& first = *hand.front().section;
    while (!first.hand.empty() && i + 1 < place_.order.size()) {
        const auto* next = place_.order[i + 1].section();
        if (next == nullptr || next->hand != first.hand) break;
        hand.push_back(strandOf(++i));
    }
    std::erase_if(hand, [](const Strand& s) { return s.winding == nullptr || s.conductor.overall <= 0; });
    if (hand.empty()) return i;
    auto room = roomBetween(first.marginLow, first.marginHigh);
    if (room.width() <= 0) {
        problem(first.label() + " has no width left between its margins");
        room.high = room.low + 1e-6;
    }
    if (first.lay == design::Lay::Random)
        layLayers(hand, randomPlan(hand, room));
    else
        layLayers(hand, planOf(hand, room));
    return i;
}

ChamberWinder::LayerPlan ChamberWinder::planOf(const std::vector<Strand>& hand, const AxialRoom& room) {
    const Section& first = *hand.front().section;
    LayerPlan plan;
    plan.room = room;
    double unit = 0;
    for (const auto& s : hand) {
        unit += s.conductor.overall * s.conductor.strands;
        plan.step = std::max(plan.step, s.conductor.overall * first.layerFactor);
        plan.stepMaximum = std::max(plan.stepMaximum, s.overallMaximum * first.layerFactor);
    }
    plan.nested = first.lay == design::Lay::Nested && !first.interlayer;
    if (hand.front().conductor.foil) return plan;
    const int fits = turnsThatFit(room.width(), unit * first.pitchFactor);
    plan.perLayer = first.turnsPerLayer > 0 ? first.turnsPerLayer : fits;
    if (unit > room.width()) problem(first.label() + " has no room for one turn");
    if (plan.perLayer > fits)
        problem(first.label() + " has " + std::to_string(plan.perLayer) + " turns a layer where " +
                std::to_string(fits) + " fit");
    return plan;
}

void ChamberWinder::layLayers(std::vector<Strand>& hand, const LayerPlan& plan) {
    const Section& first = *hand.front().section;
    auto begins = first.starts;
    for (int number = 1; left(hand) > 0; ++number) {
        if (number > 1) {
            if (first.interlayer && first.lay != design::Lay::Random) lay(*first.interlayer, "interlayer");
            if (first.traverse == design::Traverse::BackAndForth)
                begins = begins == design::End::Low ? design::End::High : design::End::Low;
        }
        const double sink = plan.nested && number > 1 ? nestedStep : 1;
        // A nested layer sinks into the grooves of the one beneath: its box keeps the wire's full height.
        const double slack = first.lay == design::Lay::Random ? 0 : plan.step - hand.front().conductor.overall;
        const double x0 = cursor_ + slack / 2 - plan.step * (1 - sink);
        for (auto& s : hand) layPieces(s, plan, begins, number, x0);
        cursor_ += plan.step * sink;
        extraMaximum_ += sink * (plan.stepMaximum - plan.step);
    }
}

void ChamberWinder::layPieces(Strand& s, const LayerPlan& plan, design::End begins, int number, double x0) {
    const double inLayer = std::min<double>(plan.perLayer, s.section->turns - s.done);
    if (inLayer <= 1e-9) return;
    const bool random = s.section->lay == design::Lay::Random;
    const bool spread = inLayer < plan.perLayer && (random || s.section->lastLayer == design::LastLayer::Spread);
    const double pitch = plan.room.width() / (spread ? inLayer : plan.perLayer);
    double placed = 0;
    while (inLayer - placed > 1e-9) {
        double turns = inLayer - placed;
        std::string tap;
        for (const auto& t : s.taps)
            if (t.turns > s.done + 1e-9) {
                if (t.turns <= s.done + turns + 1e-9) {
                    turns = t.turns - s.done;
                    tap = t.terminal;
                }
                break;
            }
        Layer layer = layerOf(s, number);
        layer.turns = turns;
        layer.begins = begins;
        layer.pitch = pitch;
        layer.random = random;
        layer.nested = s.section->lay == design::Lay::Nested && number > 1;
        layer.tapAfter = tap;
        auto y = stretch(plan.room, begins, pitch, placed, turns);
        if (s.conductor.foil && s.winding->foil->width > 0) {
            const double middle = (plan.room.low + plan.room.high) / 2, half = s.winding->foil->width / 2;
            y = {middle - half, middle + half};
        }
        layer.box = {x0, x0 + (random ? plan.step : s.conductor.overall), y.low, y.high};
        finish(layer, *s.winding);
        s.done += turns;
        placed += turns;
    }
}

/// A wild section is built up by strokes of the guide to and fro: as many layers as strokes, spread over the room at
/// the mean pitch of the wires, each as high as its share of the body.
ChamberWinder::LayerPlan ChamberWinder::randomPlan(const std::vector<Strand>& hand, const AxialRoom& room) const {
    const Section& first = *hand.front().section;
    double area = 0, areaMaximum = 0, pitch = 0, turns = 0, thickest = 0;
    for (const auto& s : hand) {
        const double wires = std::numbers::pi / 4 / randomFill * s.conductor.strands;
        area += s.section->turns * wires * square(s.conductor.overall);
        areaMaximum += s.section->turns * wires * square(std::max(s.overallMaximum, s.conductor.overall));
        pitch += s.conductor.overall * std::sqrt(std::numbers::pi / 4 / randomFill) * s.conductor.strands;
        turns = std::max(turns, s.section->turns.value);
        thickest = std::max(thickest, s.conductor.overall);
    }
    LayerPlan plan;
    plan.room = room;
    const double strokes = std::max(1.0, std::round(turns * pitch / room.width()));
    plan.perLayer = std::max(1, static_cast<int>(std::ceil(turns / strokes - 1e-9)));
    const double layers = std::ceil(turns / plan.perLayer - 1e-9);
    plan.step = std::max(area / room.width() * first.layerFactor, layers > 1 ? 0 : thickest) / layers;
    plan.stepMaximum = plan.step * areaMaximum / area;
    return plan;
}

Layer ChamberWinder::layerOf(const Strand& s, int number) const {
    Layer layer;
    layer.item = s.item;
    layer.winding = s.section->winding;
    layer.section = s.section->name;
    layer.number = number;
    layer.leg = place_.leg;
    layer.chamber = place_.chamber;
    layer.sense = s.section->reversed ? -1 : 1;
    layer.conductor = s.conductor;
    return layer;
}

void ChamberWinder::finish(Layer& layer, const design::Winding& winding) {
    layer.turnLength = turnAt(layer.box.middle());
    const auto& c = layer.conductor;
    const double area = c.foil ? c.bare * layer.box.height() : std::numbers::pi / 4 * c.bare * c.bare * c.strands;
    layer.resistance20 = conductorResistance(layer.turns * layer.turnLength, area, 20) * winding.resistanceFactor;
    area_ += layer.turns * (c.foil ? c.overall * layer.box.height() : c.overall * c.overall * c.strands);
    build_.layers.push_back(layer);
}

void ChamberWinder::close() {
    fill_.build = cursor_ - fill_.room.x0;
    fill_.buildMaximum = fill_.build + extraMaximum_;
    const double roomHeight = fill_.room.width();
    fill_.heightShare = roomHeight > 0 ? fill_.build / roomHeight : 0;
    fill_.areaShare = roomHeight > 0 ? area_ / (roomHeight * fill_.room.height()) : 0;
    fill_.over = fill_.build - roomHeight;
    if (fill_.over > 1e-12)
        problem("the coil is " + units::write(units::Kind::Length, fill_.over) + " higher than its room");
    build_.fill.push_back(fill_);
}

}  // namespace coil
