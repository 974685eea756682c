// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/winding_sheet.h"

#include <algorithm>
#include <array>

#include "coil/winding_tension.h"
#include "coil/wire_resistance.h"
#include "shop/practice.h"
#include "shop/sheet_words.h"
#include "shop/step_writer.h"
#include "units/joined.h"

namespace shop {

using units::joined;

namespace {

using Facts = std::vector<Fact>;

std::string pinsAt(const catalog::Bobbin& bobbin, const std::string& row) {
    std::vector<std::string> numbers;
    for (const auto& pin : bobbin.pins)
        if (pin.row == row) numbers.push_back(std::to_string(pin.number));
    if (numbers.empty()) return {};
    return (numbers.size() > 1 ? "pins " : "pin ") + listedWords(numbers);
}

Facts setUpOf(const design::Design& design, const coil::CoilBuild& build, const catalog::Catalog& shop) {
    Facts facts;
    const auto* bobbin = design::part(design, design.bobbin, shop);
    const auto flangeWords = [&](const char* row, const char* word) {
        const std::string pins = bobbin == nullptr ? "" : pinsAt(*bobbin, row);
        return pins.empty() ? joined({"mark it ", word, " with a pencil"}) : "the one with " + pins;
    };
    if (bobbin != nullptr) {
        std::string words = joined({titleOf(design, design.bobbin, shop), "; opening ",
                                    millimetres(build.tongue + 2 * bobbin->clearance), " x ",
                                    millimetres(build.stack + 2 * bobbin->clearance), ", wall ",
                                    millimetres(bobbin->wall), ", between the flanges "});
        for (std::size_t k = 0; k < bobbin->chambers.size(); ++k)
            words += joined({k == 0 ? "" : " + ", millimetres(bobbin->chambers[k].high - bobbin->chambers[k].low)});
        facts.emplace_back("Bobbin", words);
    }
    facts.emplace_back("Low flange", flangeWords("low", "LOW") + "; it goes against the spindle");
    facts.emplace_back("High flange", flangeWords("high", "HIGH") + "; it faces you");
    if (bobbin != nullptr && !bobbin->pins.empty()) {
        const auto first = std::min_element(bobbin->pins.begin(), bobbin->pins.end(),
                                            [](const auto& a, const auto& b) { return a.number < b.number; });
        facts.emplace_back("Pin 1",
                           joined({"marked on the bobbin, at the ", first->row == "high" ? "high" : "low",
                                   " flange; the drawing shows the pins from below, where they are soldered"}));
    }
    facts.emplace_back("Spindle",
                       "counterclockwise as you see it: the top of the bobbin moves to your left (clockwise seen from "
                       "the spindle). Every step turns this way unless it says OTHER.");
    facts.emplace_back("Counter", "to 0 at the beginning of every step with wire; readings are counted from there");
    facts.emplace_back("Steps", "carry the numbers that the winding program and the step table of this design show");
    for (const auto& fill : build.fill)
        facts.emplace_back(
            build.fill.size() > 1
                ? joined({"Build, coil ", std::to_string(fill.leg), ", chamber ", std::to_string(fill.chamber)})
                : "Build",
            joined({millimetres(fill.build, 2), " when done, at most ", millimetres(fill.room.width(), 2), " (",
                    millimetres(fill.buildMaximum, 2), " with the thickest wire the standard allows)"}));
    return facts;
}

std::string factorWords() {
    constexpr std::array<double, 6> temperatures{15, 18, 22, 25, 28, 32};
    std::string words;
    for (const double t : temperatures)
        words += joined({words.empty() ? "" : ", ", fixed(t, 0), " °C ", fixed(coil::resistanceFactor(t), 3)});
    return words;
}

Facts rulesOf(const Materials& materials) {
    Facts rules;
    rules.emplace_back("Safety",
                       "read the cautions at the end first. At the spindle no gloves, rings, loose hair or sleeves; "
                       "guards closed; eye protection, fine wire whips when it breaks.");
    const bool thin = std::any_of(materials.wires.begin(), materials.wires.end(),
                                  [](const WireUse& wire) { return wire.bare < thinWire; });
    rules.emplace_back("Tension",
                       joined({"as each step says: ", fixed(100 * coil::windingShare, 0), " % (50 to 80 %) of ",
                               fixed(coil::copperYield / 1e6, 0),
                               " N/mm², what annealed copper yields at. Set it with a spring balance, wire running."}));
    if (thin)
        rules.emplace_back(
            "Fine wire", "wire below 0.06 mm: make its ends skeins as the steps say; pull no fine wire over an edge.");
    rules.emplace_back("Ends",
                       "a strain loop before every pin and joint, so that nothing pulls on the first turn; anchoring "
                       "tape over it; sleeving where an end crosses turns. Solder nothing to a pin until the coil is "
                       "wound, unless the bobbin or the enamel demands it.");
    rules.emplace_back(
        "Count lost",
        "stop. Unwind to the last layer end that is ticked, set the counter to its reading, and wind on "
        "from there. Never guess. If it cannot be unwound, set the coil aside, say so on the traveller.");
    rules.emplace_back(
        "Resistance",
        "after every winding, before the next goes on. Values and limits are for 20 °C, coil wire alone; "
        "below 1 Ω measure with four wires. At another temperature multiply them: " +
            factorWords() + ".");
    rules.emplace_back("Out of limits",
                       "wind nothing over it. Unwind, or set the coil aside and say so on the traveller.");
    rules.emplace_back("Ticks", "tick each line when it is done; initial each step when all of it is.");
    return rules;
}

/// What every step lays, as rectangles in the cut.
class Shapes {
public:
    Shapes(const design::Design& design, const coil::CoilBuild& build) : design_(design), build_(build) {}

    void bobbin() {
        for (const auto& wall : build_.dielectrics)
            if (wall.bobbin) add(-1, CutPart::Bobbin, wall.leg, wall.box);
    }
    void step(int number, const design::ItemIndex& first, const design::ItemIndex& last) {
        const auto within = [&](const design::ItemIndex& item) { return item >= first && item <= last; };
        const auto items = coil::itemsOfDielectrics(design_, build_);
        for (std::size_t k = 0; k < items.size(); ++k)
            if (within(items[k])) add(number, CutPart::Paper, build_.dielectrics[k].leg, build_.dielectrics[k].box);
        for (const auto& foil : build_.foils)
            if (within(foil.item)) add(number, CutPart::Shield, foil.leg, foil.box);
        for (std::size_t k = 0; k < build_.layers.size(); ++k) {
            const auto& layer = build_.layers[k];
            if (!within(layer.item)) continue;
            CutShape& shape = add(number, CutPart::Wire, layer.leg, layer.box);
            shape.winding = indexOf(layer.winding);
            const bool low = layer.begins == design::End::Low;
            if (edge(k, true)) shape.startAtLow = low;
            if (edge(k, false)) shape.finishAtLow = !low;
        }
    }
    std::vector<CutShape> all;

private:
    CutShape& add(int step, CutPart part, int leg, const coil::Box& box) {
        all.push_back({step, part, leg, 0, box.x0, box.x1, box.y0, box.y1, {}, {}});
        return all.back();
    }
    [[nodiscard]] int indexOf(const std::string& winding) const {
        for (std::size_t k = 0; k < design_.windings.size(); ++k)
            if (design_.windings[k].name == winding) return static_cast<int>(k);
        return 0;
    }
    /// Whether layer `k` is the first (or last) of its section.
    [[nodiscard]] bool edge(std::size_t k, bool first) const {
        for (std::size_t i = 0; i < build_.layers.size(); ++i)
            if (build_.layers[i].item == build_.layers[k].item && (first ? i < k : i > k)) return false;
        return true;
    }

    const design::Design& design_;
    const coil::CoilBuild& build_;
};

void addSteps(const design::Design& design, const coil::CoilBuild& build, const catalog::Catalog& shop,
              WindingSheet& sheet) {
    StepWriter writer(design, build, shop);
    Shapes shapes(design, build);
    shapes.bobbin();
    for (int leg = 1; leg <= build.legs; ++leg)
        for (std::size_t p = 0; p < design.coil.size(); ++p) {
            const auto& order = design.coil[p].order;
            for (std::size_t i = 0; design.coil[p].leg == leg && i < order.size(); ++i) {
                const design::ItemIndex at{static_cast<int>(p), static_cast<int>(i)};
                if (const auto* barrier = order[i].barrier()) {
                    if (barrier->ply.thickness <= 0) continue;
                    sheet.steps.push_back(writer.barrier(at, *barrier));
                } else if (const auto* shield = order[i].shield()) {
                    sheet.steps.push_back(writer.shield(at, *shield));
                } else {
                    const coil::Hand hand = coil::handAt(design, build, p, i);
                    sheet.steps.push_back(writer.hand(at, hand));
                    i = hand.last;
                }
                shapes.step(static_cast<int>(sheet.steps.size()) - 1, at, {static_cast<int>(p), static_cast<int>(i)});
            }
        }
    sheet.shapes = std::move(shapes.all);
}

}  // namespace

Limits resistanceLimits(double bareDiameter, bool foil) {
    struct Row {
        double upTo, tolerance;  // mm
    };
    constexpr std::array<Row, 13> table{{{0.224, 0.003},
                                         {0.355, 0.004},
                                         {0.5, 0.005},
                                         {0.63, 0.006},
                                         {0.71, 0.007},
                                         {0.8, 0.008},
                                         {0.9, 0.009},
                                         {1.0, 0.010},
                                         {1.12, 0.011},
                                         {1.25, 0.013},
                                         {1.4, 0.014},
                                         {1.6, 0.016},
                                         {5.0, 0.020}}};
    constexpr double shorter = 0.97, longer = 1.05, finest = 0.071, fine = 0.10, foilThickness = 0.08;
    if (foil) return {shorter * (1 - foilThickness), longer * (1 + foilThickness)};
    const double mm = bareDiameter * 1e3;
    if (mm < finest) return {shorter * (1 - fine), longer * (1 + fine)};
    double tolerance = table.back().tolerance;
    for (const Row& row : table)
        if (mm <= row.upTo + 1e-9) {
            tolerance = row.tolerance;
            break;
        }
    const double thick = mm / (mm + tolerance), thin = mm / (mm - tolerance);
    return {shorter * thick * thick, longer * thin * thin};
}

WindingSheet windingSheet(const design::Design& design, const catalog::Catalog& shop, const Issue& issue) {
    const coil::CoilBuild build = coil::layOut(design, shop);
    WindingSheet sheet;
    sheet.head = paperHead("Winding sheet", design, issue);
    sheet.setUp = setUpOf(design, build, shop);
    sheet.materials = materialsOf(design, build, shop);
    sheet.rules = rulesOf(sheet.materials);
    sheet.windowWidth = build.legs == 2 ? build.windowWidth / 2 : build.windowWidth;
    sheet.windowHeight = build.windowHeight;
    sheet.legs = build.legs;
    if (const auto* bobbin = design::part(design, design.bobbin, shop))
        for (const auto& pin : bobbin->pins) {
            const bool used = std::any_of(design.terminals.begin(), design.terminals.end(),
                                          [&](const auto& t) { return t.pin == pin.number; });
            sheet.pins.push_back({pin.number, pin.x, pin.y, used});
        }
    sheet.bobbinWidth = build.tongue + 2 * sheet.windowWidth;
    sheet.bobbinLength = build.windowHeight;
    addSteps(design, build, shop, sheet);
    sheet.finishing = finishing(design, sheet.materials, shop);
    return sheet;
}

}  // namespace shop
