// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/step_writer.h"

#include <algorithm>
#include <cmath>

#include "coil/winding_tension.h"
#include "shop/practice.h"
#include "shop/sheet_words.h"
#include "units/joined.h"

namespace shop {

using units::joined;

StepWriter::StepWriter(const design::Design& design, const coil::CoilBuild& build, const catalog::Catalog& shop,
                       const Lengths& in)
    : design_(design), build_(build), shop_(shop), in_(in), bobbin_(design::part(design, design.bobbin, shop)) {
    int next = 0;
    for (int leg = 1; leg <= build.legs; ++leg)
        for (const auto& place : design.coil)
            for (const auto& item : place.order)
                if (const auto* section = item.section(); section != nullptr && place.leg == leg)
                    sequence_[section->label()] = next++;
}

WindingStep StepWriter::begun(const design::ItemIndex& at, StepKind kind, const std::string& title) const {
    const auto& place = design_.coil[static_cast<std::size_t>(at.place)];
    WindingStep step;
    step.number = coil::stepNumber(at);
    step.kind = kind;
    step.title = title;
    step.leg = place.leg;
    step.chamber = place.chamber;
    if (build_.legs > 1) step.title += ", coil " + std::to_string(place.leg);
    if (bobbin_ != nullptr && bobbin_->chambers.size() > 1)
        step.title += ", chamber " + std::to_string(place.chamber) + " from the low flange";
    return step;
}

double StepWriter::chamberWidth(const design::ItemIndex& at) const {
    const auto chamber = static_cast<std::size_t>(design_.coil[static_cast<std::size_t>(at.place)].chamber) - 1;
    if (bobbin_ == nullptr || chamber >= bobbin_->chambers.size()) return build_.windowHeight;
    return bobbin_->chambers[chamber].high - bobbin_->chambers[chamber].low;
}

std::string StepWriter::roomWords(const design::ItemIndex& at, double low, double high) const {
    const double width = chamberWidth(at);
    if (low <= 0 && high <= 0) return in_.size(width) + ", from flange to flange";
    return joined({in_.size(width - low - high), " of ", in_.size(width), "; keep free ", in_.size(low),
                   " at the low and ", in_.size(high), " at the high flange, with strips of tape"});
}

/// Turns of stock, their width and the length to cut; the first and the last of several wraps lie at `from` and `to`.
std::string StepWriter::plyWords(const design::Ply& ply, double width, double from, double to) const {
    std::vector<std::string> turns;
    double sum = 0, most = 0, least = 0;
    for (const StockTurns& stock : stockTurns(design_, ply, shop_)) {
        turns.push_back(joined({counted(stock.turns, "turn"), " of ", in_.thin(stock.thickness)}));
        sum += stock.turns * stock.thickness;
        most = std::max(most, stock.turns * wrapLength(build_, to) + paperOverlap);
        least = std::max(least, stock.turns * wrapLength(build_, from) + paperOverlap);
    }
    std::string words =
        joined({listedWords(turns), " ", titleOf(design_, ply.insulation, shop_), ", ", in_.size(width), " wide, cut ",
                in_.cut(least), in_.cut(most) == in_.cut(least) ? "" : " to " + in_.cut(most), " long"});
    if (std::abs(sum - ply.thickness) > 0.01 * ply.thickness)
        words += joined({" (", in_.thin(sum), " in all; the design asks ", in_.thin(ply.thickness), ")"});
    return words;
}

WindingStep StepWriter::barrier(const design::ItemIndex& at, const design::Barrier& barrier) const {
    WindingStep step = begun(at, StepKind::Paper, "Insulation");
    double x = 0;
    const auto items = coil::itemsOfDielectrics(design_, build_);
    for (std::size_t k = 0; k < items.size(); ++k)
        if (items[k] == at) x = build_.dielectrics[k].box.middle();
    step.facts = {{"Width", roomWords(at, 0, 0)}};
    step.actions.push_back({{}, plyWords(barrier.ply, chamberWidth(at), x, x) + ".", false});
    step.actions.push_back({{},
                            "Edges up against both flanges, no gap. Begin and end on a face that stands outside the "
                            "window; overlap " +
                                in_.size(paperOverlap, 0) + ".",
                            false});
    return step;
}

std::string StepWriter::leadWords(const std::string& name) const {
    const auto* terminal = terminalOf(design_, name);
    if (terminal == nullptr) return "a lead (" + name + ")";
    if (terminal->pin > 0) return "a thin lead to " + pinWords(*terminal);
    return joined({"the ", terminalPlace(*terminal), " (", name, "), cut ", in_.cut(terminal->leadLength + leadJoint),
                   ", ", in_.cut(terminal->leadLength), " of it free"});
}

WindingStep StepWriter::shield(const design::ItemIndex& at, const design::Shield& shield) const {
    WindingStep step = begun(at, StepKind::Shield, "Shield, " + shield.name);
    const auto foil =
        std::find_if(build_.foils.begin(), build_.foils.end(), [&](const auto& f) { return f.item == at; });
    const std::string lead = leadWords(shield.terminal.empty() ? shield.name : shield.terminal);
    const auto add = [&](std::string words) { step.actions.push_back({{}, std::move(words), false}); };
    step.facts = {{"Room", roomWords(at, shield.marginLow, shield.marginHigh)}};
    if (foil == build_.foils.end()) return step;
    if (foil->winding) {
        const double turns = std::max(1.0, std::floor(foil->box.height() / foil->conductor.overall + 1e-9));
        step.facts.emplace_back(
            "Wire", joined({titleOf(design_, shield.wire, shop_), ", ", in_.both(foil->conductor.bare, 3), " bare, ",
                            in_.both(foil->conductor.overall, 3), " overall"}));
        step.facts.emplace_back("Spool lot", "");
        step.turns = turns;
        add("Solder the start to " + lead + "; cover the joint, anchor it with tape.");
        add(joined({"One layer of ", counted(turns, "turn"), ", side by side, low to high."}));
        add("Cut the finish off, cover it with tape and leave it open: it is connected to nothing. Both ends must not "
            "touch.");
        return step;
    }
    const double turn = foil->turnLength;
    step.facts.emplace_back("Foil", joined({"copper, ", in_.thin(foil->conductor.bare), " thick"}));
    step.facts.emplace_back("Foil lot", "");
    add(joined({"Cut the foil ", in_.size(foil->box.height()), " wide and ", in_.cut(turn + shieldOverlap),
                " long: one turn of ", in_.cut(turn), " and ", in_.size(shieldOverlap, 0),
                " overlap. Round its corners, press the burr flat."}));
    add(joined({"Solder ", lead,
                ", to the middle of its length: that side of the coil is away from the gap. Keep the "
                "joint flat, cover it with tape."}));
    add("Lay it on with the joint on one outside face; the ends then meet on the opposite one.");
    add(joined({"Put a strip of film, at least ", in_.thin(shieldGapStrip),
                " thick, wider than the foil and 15 mm long, over the first end and lay the other end over it. Both "
                "edges must not touch: a closed foil is a shorted turn."}));
    add("Look along both edges. Meter: foil to every winding so far: open.");
    return step;
}

std::string StepWriter::wireWords(const coil::HandWire& wire) const {
    const design::Winding& winding = *wire.winding;
    if (wire.foil())
        return joined({"copper foil, ", in_.thin(winding.foil->thickness), " thick, ",
                       in_.size(wire.pieces.empty() ? winding.foil->width.value : wire.pieces.front()->box.height()),
                       " wide"});
    std::string words = titleOf(design_, winding.wire, shop_);
    if (const auto* part = design::part(design_, winding.wire, shop_)) {
        words +=
            joined({": ", in_.both(part->bareDiameter, 3), " bare, ", in_.both(part->overallDiameter, 3), " overall"});
        if (part->overallMaximum > 0) words += joined({" (at most ", in_.both(part->overallMaximum, 3), ")"});
    }
    if (winding.strands > 1) words += joined({"; ", std::to_string(winding.strands), " wires in hand, side by side"});
    return words;
}

std::string StepWriter::layWords(const coil::Hand& hand) const {
    const design::Section& first = *hand.wires.front().section;
    const double layers = static_cast<double>(hand.layers.size());
    if (hand.wires.front().foil()) return "one turn a layer";
    if (first.lay == design::Lay::Random)
        return joined({"wound wild: to and fro in about ", counted(layers, "stroke"),
                       ", evenly over the width, no heap and no hollow"});
    std::string words = joined({counted(layers, "layer"), ", turns side by side"});
    double together = 0;  // of all wires that lie side by side in one turn of the hand
    for (const auto& wire : hand.wires)
        together += wire.pieces.front()->conductor.overall * wire.pieces.front()->conductor.strands;
    if (hand.layers.front().pitch > 1.5 * together && hand.layers.front().turns > 1)
        words = joined(
            {counted(layers, "layer"), ", spaced ", in_.size(hand.layers.front().pitch, 3), " from turn to turn"});
    if (first.lay == design::Lay::Nested) words += ", each layer into the grooves of the one beneath";
    if (layers > 1)
        words += first.traverse == design::Traverse::BackAndForth
                     ? ", to and fro"
                     : joined({", every layer begins at the ", flange(first.starts == design::End::Low),
                               ": lead the wire straight back over the layer, on an outside face"});
    if (layers > 1)
        words += first.lastLayer == design::LastLayer::Spread ? "; the last layer spread over the width"
                                                              : "; the last layer close, from where it begins";
    return words;
}

WindingStep StepWriter::hand(const design::ItemIndex& at, const coil::Hand& hand) {
    std::string title;
    for (const auto& wire : hand.wires)
        title +=
            joined({title.empty() ? "" : " and ", wire.section->label(), ", ", counted(wire.section->turns, "turn")});
    if (hand.wires.size() > 1) title += ", in one hand";
    WindingStep step = begun(at, StepKind::Wire, title);
    const design::Section& first = *hand.wires.front().section;
    step.turns = hand.turns();
    double newtons = 0;
    for (const auto& wire : hand.wires) {
        step.facts.emplace_back(hand.wires.size() > 1 ? "Wire of " + wire.winding->name : "Wire", wireWords(wire));
        step.facts.emplace_back("Spool lot", "");
        if (!wire.pieces.empty() && !wire.foil()) {
            const auto& c = wire.pieces.front()->conductor;
            newtons += coil::windingTension(c.bare, c.strands);
        }
    }
    const bool several = hand.wires.size() > 1 || hand.wires.front().winding->strands > 1;
    if (newtons > 0)
        step.facts.emplace_back("Tension", joined({grams(newtons), several ? " for all wires, " : ", ",
                                                   grams(newtons * 0.5 / coil::windingShare), " to ",
                                                   grams(newtons * 0.8 / coil::windingShare)}));
    step.facts.emplace_back("Direction", first.reversed ? "the OTHER way: clockwise as you see it"
                                                        : "as set up: counterclockwise as you see it");
    step.facts.emplace_back("Room", roomWords(at, first.marginLow, first.marginHigh));
    step.facts.emplace_back("Lay", layWords(hand));
    addLayers(hand, step);
    addActions(hand, step);
    for (const auto& wire : hand.wires) addChecks(wire, step);
    return step;
}

void StepWriter::addLayers(const coil::Hand& hand, WindingStep& step) const {
    if (hand.wires.front().foil() || hand.wires.front().section->lay == design::Lay::Random) return;
    int number = 0;
    step.layers.reserve(hand.layers.size());
    for (const auto& layer : hand.layers)
        step.layers.push_back({++number, layer.turns, layer.first + layer.turns, layer.fromLow});
}

std::string StepWriter::tapWords(const design::Section& section, const std::string& name) const {
    const auto* terminal = terminalOf(design_, name);
    constexpr double loop = 40e-3;
    return joined({"Tap of ", section.label(), ": draw out a loop of ", in_.size(loop, 0),
                   ", do not cut it; twist it, pull sleeving over it, lay it flat to ",
                   terminal == nullptr ? name
                   : terminal->pin > 0 ? pinWords(*terminal)
                                       : leadWords(name),
                   ", anchor it with tape."});
}

void StepWriter::addActions(const coil::Hand& hand, WindingStep& step) const {
    const auto add = [&](std::optional<double> counter, std::string words, bool layers = false) {
        step.actions.push_back({counter, std::move(words), layers});
    };
    for (const auto& wire : hand.wires) add(0, endWords(wire, true));
    const design::Section& first = *hand.wires.front().section;
    const bool table = step.layers.size() > 0;
    add({},
        joined({"Wind ", counted(hand.turns(), "turn"),
                table ? ". Tick each layer when the counter stands at its end." : "."}),
        table);
    std::vector<const coil::HandMoment*> papers;
    for (const auto& moment : hand.moments)
        if (moment.kind == coil::MomentKind::Paper) papers.push_back(&moment);
    if (!papers.empty()) {
        const double from = hand.layers.front().outside, to = hand.layers[hand.layers.size() - 2].outside;
        add({}, joined({"After each layer but the last: ",
                        plyWords(*first.interlayer, chamberWidth(hand.wires.front().item), from, to), "."}));
    }
    for (const auto& moment : hand.moments) {
        const auto& wire = hand.wires[moment.wire];
        if (moment.kind == coil::MomentKind::Tap) {
            add(moment.after, tapWords(*wire.section, moment.terminal));
        } else if (moment.kind == coil::MomentKind::Finish) {
            add(moment.after, endWords(wire, false));
        }
    }
}

}  // namespace shop
