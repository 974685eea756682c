// SPDX-License-Identifier: GPL-3.0-or-later
// From the order of items to boxes: one cursor a chamber walks outward from the bobbin wall.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "coil/coil_build.h"
#include "coil/mean_turn.h"
#include "coil/winding_steps.h"
#include "coil/wire_resistance.h"
#include "units/text.h"

namespace coil {

namespace {

using design::Section;

/// Wire circles' share of the space in a wild winding: general coil-winding literature, number from memory.
constexpr double randomFill = 0.73;
constexpr double nestedStep = 0.86602540378443864676;

class ChamberWinder {
public:
    ChamberWinder(const design::Design& design, const catalog::Catalog& shop, CoilBuild& build, int placeIndex)
        : design_(design), shop_(shop), build_(build), place_(design.coil[static_cast<std::size_t>(placeIndex)]) {
        index_.place = placeIndex;
        fill_.leg = place_.leg;
        fill_.chamber = place_.chamber;
    }

    void wind(const Box& room) {
        fill_.room = room;
        cursor_ = room.x0;
        for (std::size_t i = 0; i < place_.order.size(); ++i) {
            index_.item = static_cast<int>(i);
            const auto& item = place_.order[i];
            if (const auto* barrier = item.barrier()) lay(barrier->ply, "insulation");
            if (const auto* shield = item.shield()) lay(*shield);
            if (item.section()) i = layHand(i);
        }
        close();
    }

private:
    struct Strand {
        const Section* section;
        const design::Winding* winding;
        Conductor conductor;
        double overallMaximum;
        double done = 0;
        std::vector<TapPoint> taps;
        design::ItemIndex item;
    };

    AxialRoom roomBetween(double marginLow, double marginHigh) const {
        return {fill_.room.y0 + marginLow, fill_.room.y1 - marginHigh};
    }
    double turnAt(double x) const {
        return turnLength(build_.tongue, build_.stack, build_.bobbinWall + build_.clearance, build_.cornerRadius, x);
    }
    void problem(std::string text) { fill_.problems.push_back(std::move(text)); }

    void lay(const design::Ply& ply, const char* what) {
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

    void lay(const design::Shield& shield) {
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
        build_.foils.push_back(foil);
        cursor_ += thickness;
        area_ += thickness * foil.box.height();
    }

    static Conductor conductorOf(const catalog::Wire& wire, int strands) {
        Conductor c;
        c.bare = wire.bareDiameter;
        c.overall = wire.overallDiameter;
        c.strands = strands;
        c.enamelPermittivity = wire.enamelPermittivity;
        c.enamelLoss = wire.enamelLossFactor;
        return c;
    }

    Strand strandOf(std::size_t i) const {
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
    std::size_t layHand(std::size_t i) {
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
        if (first.lay == design::Lay::Random) layRandom(hand, room);
        else layLayers(hand, room);
        return i;
    }

    void layLayers(std::vector<Strand>& hand, const AxialRoom& room) {
        const Section& first = *hand.front().section;
        double unit = 0, step = 0, stepMaximum = 0;
        for (const auto& s : hand) {
            unit += s.conductor.overall * s.conductor.strands;
            step = std::max(step, s.conductor.overall * first.layerFactor);
            stepMaximum = std::max(stepMaximum, s.overallMaximum * first.layerFactor);
        }
        const bool foil = hand.front().conductor.foil;
        const int fits = foil ? 1 : turnsThatFit(room.width(), unit * first.pitchFactor);
        const int perLayer = foil ? 1 : first.turnsPerLayer > 0 ? first.turnsPerLayer : fits;
        if (!foil && unit > room.width()) problem(first.label() + " has no room for one turn");
        if (perLayer > fits)
            problem(first.label() + " has " + std::to_string(perLayer) + " turns a layer where " + std::to_string(fits) + " fit");
        const bool nested = first.lay == design::Lay::Nested && !first.interlayer;
        auto begins = first.starts;
        for (int number = 1; left(hand) > 0; ++number) {
            if (number > 1) {
                if (first.interlayer) lay(*first.interlayer, "interlayer");
                if (first.traverse == design::Traverse::BackAndForth)
                    begins = begins == design::End::Low ? design::End::High : design::End::Low;
            }
            const double used = nested && number > 1 ? step * nestedStep : step;
            // A nested layer sinks into the grooves of the one beneath: its box keeps the wire's full height.
            const double x0 = cursor_ + (step - hand.front().conductor.overall) / 2 - (step - used);
            for (auto& s : hand) layPieces(s, room, begins, perLayer, number, x0);
            cursor_ += used;
            extraMaximum_ += (nested && number > 1 ? nestedStep : 1) * (stepMaximum - step);
        }
    }

    static double left(const std::vector<Strand>& hand) {
        double most = 0;
        for (const auto& s : hand) most = std::max(most, s.section->turns - s.done);
        return most > 1e-9 ? most : 0;
    }

    void layPieces(Strand& s, const AxialRoom& room, design::End begins, int perLayer, int number, double x0) {
        const double inLayer = std::min<double>(perLayer, s.section->turns - s.done);
        if (inLayer <= 1e-9) return;
        const bool spread = inLayer < perLayer && s.section->lastLayer == design::LastLayer::Spread;
        const double pitch = room.width() / (spread ? inLayer : perLayer);
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
            layer.nested = s.section->lay == design::Lay::Nested && number > 1;
            layer.tapAfter = tap;
            auto y = stretch(room, begins, pitch, placed, turns);
            if (s.conductor.foil && s.winding->foil->width > 0) {
                const double middle = (room.low + room.high) / 2, half = s.winding->foil->width / 2;
                y = {middle - half, middle + half};
            }
            layer.box = {x0, x0 + s.conductor.overall, y.low, y.high};
            finish(layer, *s.winding);
            s.done += turns;
            placed += turns;
        }
    }

    void layRandom(std::vector<Strand>& hand, const AxialRoom& room) {
        const double base = cursor_;
        for (auto& s : hand) {
            const double circle = std::numbers::pi / 4 * s.conductor.overall * s.conductor.overall * s.conductor.strands;
            const double height = s.section->turns * circle / randomFill / room.width() * s.section->layerFactor;
            Layer layer = layerOf(s, 1);
            layer.random = true;
            layer.turns = s.section->turns;
            layer.begins = s.section->starts;
            layer.box = {cursor_, cursor_ + std::max(height, s.conductor.overall), room.low, room.high};
            layer.pitch = s.conductor.overall * std::sqrt(std::numbers::pi / 4 / randomFill);
            finish(layer, *s.winding);
            cursor_ = layer.box.x1;
        }
        extraMaximum_ += (cursor_ - base) * (square(hand.front().overallMaximum / hand.front().conductor.overall) - 1);
    }
    static double square(double a) { return a * a; }

    Layer layerOf(const Strand& s, int number) const {
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

    void finish(Layer& layer, const design::Winding& winding) {
        layer.turnLength = turnAt(layer.box.middle());
        const auto& c = layer.conductor;
        const double area = c.foil ? c.bare * layer.box.height() : std::numbers::pi / 4 * c.bare * c.bare * c.strands;
        layer.resistance20 = conductorResistance(layer.turns * layer.turnLength, area, 20) * winding.resistanceFactor;
        area_ += layer.turns * (c.foil ? c.overall * layer.box.height() : c.overall * c.overall * c.strands);
        build_.layers.push_back(layer);
    }

    void close() {
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

    const design::Design& design_;
    const catalog::Catalog& shop_;
    CoilBuild& build_;
    const design::Place& place_;
    design::ItemIndex index_;
    ChamberFill fill_;
    double cursor_ = 0;
    double extraMaximum_ = 0;  // what the wire's greatest overall diameter would add
    double area_ = 0;
};

void addBobbin(const catalog::Bobbin& bobbin, CoilBuild& build) {
    const double outside = bobbin.wall + bobbin.clearance;
    build.bobbinWall = bobbin.wall;
    build.clearance = bobbin.clearance;
    build.cornerRadius = bobbin.cornerRadius;
    build.bobbinPermittivity = bobbin.permittivity;
    build.bobbinLoss = bobbin.lossFactor;
    const double depth = build.legs == 2 ? build.windowWidth / 2 : build.windowWidth;
    for (int leg = 1; leg <= build.legs; ++leg) {
        const auto add = [&](Box box, const char* name) {
            if (box.width() > 0 && box.height() > 0)
                build.dielectrics.push_back({box, bobbin.permittivity, bobbin.lossFactor, leg, 0, true, name});
        };
        add({bobbin.clearance, outside, 0, build.windowHeight}, "bobbin wall");
        double below = 0;
        for (const auto& chamber : bobbin.chambers) {
            add({outside, depth, below, chamber.low}, "flange");
            below = chamber.high;
        }
        add({outside, depth, below, build.windowHeight}, "flange");
    }
}

}  // namespace

CoilBuild layOut(const design::Design& design, const catalog::Catalog& shop) {
    CoilBuild build;
    const auto* sheet = design::part(design, design.core.sheet, shop);
    const auto* bobbin = design::part(design, design.bobbin, shop);
    if (sheet == nullptr || bobbin == nullptr) return build;  // `check` has said so
    build.tongue = sheet->tongue;
    build.stack = design.core.height;
    build.windowWidth = sheet->windowWidth;
    build.windowHeight = sheet->windowHeight;
    build.legs = design.core.kind == design::CoreKind::TwoLeg ? 2 : 1;
    addBobbin(*bobbin, build);
    if (design.conditions.filled && design.filling)
        if (const auto* compound = design::part(design, design.filling->compound, shop)) {
            build.fillPermittivity = compound->permittivity;
            build.fillLoss = compound->lossFactor;
        }
    for (std::size_t p = 0; p < design.coil.size(); ++p) {
        const auto& place = design.coil[p];
        const auto chamber = static_cast<std::size_t>(place.chamber - 1);
        if (chamber >= bobbin->chambers.size()) continue;
        const double depth = build.legs == 2 ? build.windowWidth / 2 : build.windowWidth;
        ChamberWinder(design, shop, build, static_cast<int>(p))
            .wind({build.bobbinWall + build.clearance, depth, bobbin->chambers[chamber].low, bobbin->chambers[chamber].high});
    }
    return build;
}

}  // namespace coil
