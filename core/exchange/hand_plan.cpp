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

HandPlanner::Strand HandPlanner::strandOf(std::size_t p, std::size_t i) const {
    Strand strand;
    strand.section = design_.coil[p].order[i].section();
    strand.winding = design::winding(design_, strand.section->winding);
    const design::ItemIndex at{static_cast<int>(p), static_cast<int>(i)};
    for (const auto& layer : build_.layers)
        if (layer.item == at) strand.pieces.push_back(&layer);
    return strand;
}

std::size_t HandPlanner::plan(std::size_t p, std::size_t i, PlannedStep& step) {
    const auto& order = design_.coil[p].order;
    std::vector<Strand> strands{strandOf(p, i)};
    const auto& first = *strands.front().section;
    while (!first.hand.empty() && i + 1 < order.size() && order[i + 1].section() != nullptr &&
           order[i + 1].section()->hand == first.hand)
        strands.push_back(strandOf(p, ++i));
    step.reversed = first.reversed;
    step.foil = strands.front().foil();
    for (const Strand& s : strands) {
        step.title += joined({step.title.empty() ? "section " : " and ", s.section->label(), ", ",
                              units::shortest(s.section->turns), " turns of ", wireName(s)});
        if (winder_.tension && !s.pieces.empty() && !step.foil) {
            const auto& c = s.pieces.front()->conductor;
            step.tension += winder_.tension->stress * std::numbers::pi / 4 * c.bare * c.bare * c.strands;
        }
    }
    layers(strands, step);
    opening(strands, step);
    inside(strands, step);
    return i;
}

std::string HandPlanner::wireName(const Strand& s) const {
    if (s.foil()) return "foil " + units::write(units::Kind::Length, s.winding->foil->thickness);
    const auto* wire = design::part(design_, s.winding->wire, shop_);
    const std::string name = wire != nullptr && !wire->title.empty() ? wire->title : s.winding->wire.key;
    return s.winding->strands > 1 ? joined({name, ", ", std::to_string(s.winding->strands), " in hand"}) : name;
}

/// The layers of the hand: in each, the wire that has most turns leads the guide.
void HandPlanner::layers(const std::vector<Strand>& strands, PlannedStep& step) {
    for (int number = 1;; ++number) {
        PlannedLayer widest;
        for (const Strand& s : strands) {
            const PlannedLayer one = layerOf(s, number);
            if (one.turns > widest.turns) widest = one;
        }
        if (widest.turns <= 0) return;
        widest.first = step.turns();
        widest.still = step.foil;
        step.layers.push_back(widest);
    }
}

PlannedLayer HandPlanner::layerOf(const Strand& strand, int number) {
    PlannedLayer layer;
    for (const auto* piece : strand.pieces) {
        if (piece->number != number) continue;
        if (layer.turns == 0) {
            layer.low = piece->box.y0;
            layer.high = piece->box.y1;
            layer.fromLow = piece->begins == design::End::Low;
            layer.pitch = piece->pitch;
            layer.outside = piece->box.x1;
            layer.turnLength = piece->turnLength;
        }
        layer.low = std::min(layer.low, piece->box.y0);
        layer.high = std::max(layer.high, piece->box.y1);
        layer.turns += piece->turns;
    }
    return layer;
}

void HandPlanner::opening(const std::vector<Strand>& strands, PlannedStep& step) {
    std::vector<std::string> wires;
    wires.reserve(strands.size());
    for (const Strand& s : strands) wires.push_back(wireName(s));
    if (step.foil) {
        step.stops.push_back({StopKind::Foil, 0, true, wires.front() + ", feed by hand", {}});
        wires.clear();
    } else if (wires != loaded_) {
        std::string words = "load ";
        for (std::size_t k = 0; k < wires.size(); ++k) words.append(k == 0 ? "" : " and ").append(wires[k]);
        step.stops.push_back({StopKind::Wire, 0, true, words, {}});
    }
    loaded_ = wires;
    for (const Strand& s : strands) anchor(s, true, 0, step);
}

/// The end of a section is put on its pin, brought out as a lead, or kept until the winding goes on.
void HandPlanner::anchor(const Strand& s, bool start, double after, PlannedStep& step) const {
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
void HandPlanner::inside(const std::vector<Strand>& strands, PlannedStep& step) const {
    struct Moment {
        double after;
        int rank;  // at the same turn: taps, then ends, then paper
        std::size_t strand;
        std::string terminal;
    };
    std::vector<Moment> moments;
    for (std::size_t k = 0; k < strands.size(); ++k) {
        double done = 0;
        for (const auto* piece : strands[k].pieces) {
            done += piece->turns;
            if (!piece->tapAfter.empty()) moments.push_back({done, 0, k, piece->tapAfter});
        }
        moments.push_back({done, 1, k, {}});
    }
    const auto& first = *strands.front().section;
    if (first.interlayer && first.interlayer->thickness > 0 && first.lay != design::Lay::Random)
        for (std::size_t n = 1; n < step.layers.size(); ++n) moments.push_back({step.layers[n].first, 2, 0, {}});
    std::stable_sort(moments.begin(), moments.end(), [](const Moment& a, const Moment& b) {
        return std::abs(a.after - b.after) > 1e-9 ? a.after < b.after : a.rank < b.rank;
    });
    for (const Moment& m : moments) {
        const Strand& s = strands[m.strand];
        if (m.rank == 0)
            step.stops.push_back(
                {StopKind::Tap, m.after, false, joined({s.section->label(), ", tap to terminal ", m.terminal}), {}});
        else if (m.rank == 1)
            anchor(s, false, m.after, step);
        else
            step.stops.push_back({StopKind::Paper, m.after, false, paper(*first.interlayer), {}});
    }
}

}  // namespace exchange
