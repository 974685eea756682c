// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/hand_plan.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "units/joined.h"
#include "units/text.h"

namespace exchange {

using units::joined;

HandPlanner::HandPlanner(const design::Design& design, const coil::CoilBuild& build, const catalog::Catalog& shop,
                         const Winder& winder)
    : design_(design),
      build_(build),
      shop_(shop),
      winder_(winder),
      bobbin_(design::part(design, design.bobbin, shop)) {}

std::string HandPlanner::paper(const design::Ply& ply) const {
    const auto* material = design::part(design_, ply.insulation, shop_);
    return joined({units::write(units::Kind::Length, ply.thickness), " of ",
                   material != nullptr && !material->title.empty() ? material->title : ply.insulation.key});
}

std::size_t HandPlanner::plan(std::size_t p, std::size_t i, PlannedStep& step) {
    const coil::Hand hand = coil::handAt(design_, build_, p, i);
    step.reversed = hand.wires.front().section->reversed;
    step.foil = hand.wires.front().foil();
    for (const auto& wire : hand.wires) {
        step.title += joined({step.title.empty() ? "section " : " and ", wire.section->label(), ", ",
                              units::shortest(wire.section->turns), " turns of ", wireName(wire)});
        if (winder_.tension && !wire.pieces.empty() && !step.foil) {
            const auto& c = wire.pieces.front()->conductor;
            step.tension += winder_.tension->stress * std::numbers::pi / 4 * c.bare * c.bare * c.strands;
        }
    }
    step.layers.reserve(hand.layers.size());
    for (const auto& layer : hand.layers) step.layers.push_back({layer, step.foil});
    opening(hand, step);
    inside(hand, step);
    return hand.last;
}

std::string HandPlanner::wireName(const coil::HandWire& s) const {
    if (s.foil()) return "foil " + units::write(units::Kind::Length, s.winding->foil->thickness);
    const auto* wire = design::part(design_, s.winding->wire, shop_);
    const std::string name = wire != nullptr && !wire->title.empty() ? wire->title : s.winding->wire.key;
    return s.winding->strands > 1 ? joined({name, ", ", std::to_string(s.winding->strands), " in hand"}) : name;
}

void HandPlanner::opening(const coil::Hand& hand, PlannedStep& step) {
    std::vector<std::string> wires;
    wires.reserve(hand.wires.size());
    for (const auto& s : hand.wires) wires.push_back(wireName(s));
    if (step.foil) {
        step.stops.push_back({StopKind::Foil, 0, true, wires.front() + ", feed by hand", {}});
        wires.clear();
    } else if (wires != loaded_) {
        std::string words = "load ";
        for (std::size_t k = 0; k < wires.size(); ++k) words.append(k == 0 ? "" : " and ").append(wires[k]);
        step.stops.push_back({StopKind::Wire, 0, true, words, {}});
    }
    loaded_ = wires;
    for (const auto& s : hand.wires) anchor(s, true, 0, step);
}

/// The end of a section is put on its pin, brought out as a lead, or kept until the winding goes on.
void HandPlanner::anchor(const coil::HandWire& s, bool start, double after, PlannedStep& step) const {
    const auto ends = design::sectionEnds(design_, *s.section);
    const std::string& name = start ? ends.start : ends.finish;
    const auto terminal =
        std::find_if(design_.terminals.begin(), design_.terminals.end(), [&](const auto& t) { return t.name == name; });
    const std::string what = joined({s.section->label(), start ? " start" : " finish"});
    const auto add = [&](StopKind kind, std::string words, std::optional<PinPlace> wrap = {}) {
        step.stops.push_back({kind, after, start, std::move(words), wrap});
    };
    if (terminal == design_.terminals.end())
        return add(StopKind::Lead, what + (start ? ", go on from the end that was kept" : ", keep the end"));
    if (!s.foil() && !s.pieces.empty() && s.pieces.front()->conductor.bare < winder_.thinWire)
        add(StopKind::Splice, what + ", splice to a skein");
    if (terminal->pin <= 0) return add(StopKind::Lead, joined({what, ", lead to terminal ", name}));
    add(StopKind::Pin, joined({what, " to pin ", std::to_string(terminal->pin)}),
        s.foil() ? std::nullopt : pinPlace(terminal->pin));
}

std::optional<PinPlace> HandPlanner::pinPlace(int number) const {
    if (!winder_.pinWrap || bobbin_ == nullptr) return std::nullopt;
    for (const auto& pin : bobbin_->pins)
        if (pin.number == number) return PinPlace{pin.x, build_.windowHeight / 2 + pin.y};
    return std::nullopt;
}

/// What falls after the first turn: taps, the ends of the wires, paper between layers.
void HandPlanner::inside(const coil::Hand& hand, PlannedStep& step) const {
    for (const auto& moment : hand.moments) {
        const auto& wire = hand.wires[moment.wire];
        if (moment.kind == coil::MomentKind::Tap)
            step.stops.push_back({StopKind::Tap,
                                  moment.after,
                                  false,
                                  joined({wire.section->label(), ", tap to terminal ", moment.terminal}),
                                  {}});
        else if (moment.kind == coil::MomentKind::Finish)
            anchor(wire, false, moment.after, step);
        else
            step.stops.push_back(
                {StopKind::Paper, moment.after, false, paper(*hand.wires.front().section->interlayer), {}});
    }
}

}  // namespace exchange
