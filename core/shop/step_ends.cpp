// SPDX-License-Identifier: GPL-3.0-or-later
// The ends of a section, and what is measured between them.
#include <algorithm>

#include "shop/practice.h"
#include "shop/sheet_words.h"
#include "shop/step_writer.h"
#include "units/joined.h"

namespace shop {

using units::joined;

bool StepWriter::acrossFrom(int number, bool atLow) const {
    if (bobbin_ == nullptr) return false;
    for (const auto& pin : bobbin_->pins)
        if (pin.number == number) return (pin.row == "low" && !atLow) || (pin.row == "high" && atLow);
    return false;
}

std::string StepWriter::terminalWords(const design::Terminal& terminal, const coil::HandWire& wire, bool atLow) const {
    const bool thin = !wire.foil() && !wire.pieces.empty() && wire.pieces.front()->conductor.bare < thinWire;
    std::string words;
    if (wire.foil())
        words = joined({"fold the foil's end square, ", in_.size(foilEnd, 0), " of it out, insulated on both sides; "});
    else if (thin)
        words = joined({"twist a skein of ", std::to_string(skeinStrands), " strands, ", in_.size(skeinLength, 0),
                        " long, from the wire itself; "});
    if (terminal.pin > 0) {
        words += joined({wire.foil() ? "solder it"
                         : thin      ? "the skein goes 3 times"
                                     : "3 turns",
                         " round ", pinWords(terminal), ", a strain loop of 3 mm before it"});
        if (acrossFrom(terminal.pin, atLow)) words += ", across the coil in sleeving to the pin's flange";
    } else {
        words += joined({"solder ", leadWords(terminal.name),
                         "; sleeving over the joint, a strain loop, the joint flat on an outside face"});
    }
    return words;
}

std::string StepWriter::innerEndWords(const coil::HandWire& wire, bool start) const {
    const auto all = design::sectionsOf(design_, *wire.winding);
    const auto here = std::find(all.begin(), all.end(), wire.section);
    const design::Section* other = nullptr;
    if (start && here != all.begin()) other = *std::prev(here);
    if (!start && here != all.end() && std::next(here) != all.end()) other = *std::next(here);
    if (other == nullptr) return "keep the end, taped to the flange";
    const bool before = sequence_.at(other->label()) < sequence_.at(wire.section->label());
    if (before)
        return joined({"join it to the end that was kept of ", other->label(),
                       ": twist, solder, sleeving over the joint, flat on an outside face (or go on from the same "
                       "spool without a joint)"});
    return joined({"keep 150 mm for ", other->label(), ", which comes later: in sleeving, taped out of the way"});
}

/// How an end of a section is brought out, and where its first or last turn lies.
std::string StepWriter::endWords(const coil::HandWire& wire, bool start) const {
    const auto ends = design::sectionEnds(design_, *wire.section);
    const std::string& name = start ? ends.start : ends.finish;
    bool low = true;
    if (!wire.pieces.empty())
        low = (start ? wire.pieces.front()->begins : wire.pieces.back()->begins) ==
              (start ? design::End::Low : design::End::High);
    const auto* terminal = terminalOf(design_, name);
    std::string words =
        joined({start ? "Start" : "Finish", " of ", wire.section->label(), ": ",
                terminal != nullptr ? terminalWords(*terminal, wire, low) : innerEndWords(wire, start)});
    words += joined({". Anchor it with tape at the ", flange(low), start ? ", where the first turn lies." : "."});
    if (!start && !wire.foil()) words += " Sleeving wherever it crosses turns.";
    return words;
}

void StepWriter::addChecks(const coil::HandWire& wire, WindingStep& step) {
    if (wire.pieces.empty()) return;
    const auto place = [&](const std::string& node) {
        const auto* terminal = terminalOf(design_, node);
        return terminal == nullptr ? std::string("the inner end") : terminalPlace(*terminal);
    };
    const auto limits = resistanceLimits(wire.pieces.front()->conductor.bare, wire.foil());
    const auto check = [&](const std::string& between, double ohm) {
        step.checks.push_back({between, ohm, ohm * limits.low, ohm * limits.high});
    };
    double section = 0;
    for (const auto* piece : wire.pieces) section += piece->resistance20;
    const auto ends = design::sectionEnds(design_, *wire.section);
    check(joined({wire.section->label(), ", ", place(ends.start), " to ", place(ends.finish)}), section);
    const auto all = design::sectionsOf(design_, *wire.winding);
    if (++wound_[wire.winding->name] < static_cast<int>(all.size()) || all.size() < 2) return;
    double sum = 0;
    const bool parallel = wire.winding->connection == design::Connection::Parallel;
    for (const auto* one : all) {
        double ohm = 0;
        for (const auto& layer : build_.layers)
            if (layer.winding == one->winding && layer.section == one->name) ohm += layer.resistance20;
        sum += parallel ? 1 / ohm : ohm;
    }
    const auto *from = terminalOf(design_, wire.winding->start), *to = terminalOf(design_, wire.winding->finish);
    if (from == nullptr || to == nullptr) return;
    check(joined({"all of ", wire.winding->name, ", ", terminalPlace(*from), " to ", terminalPlace(*to)}),
          parallel ? 1 / sum : sum);
}

}  // namespace shop
