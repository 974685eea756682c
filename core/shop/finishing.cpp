// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/finishing.h"

#include <algorithm>
#include <cmath>

#include "catalog/sheet.h"
#include "shop/datasheet_parts.h"
#include "shop/fitting_step.h"
#include "shop/practice.h"
#include "shop/sheet_words.h"
#include "units/joined.h"

namespace shop {

using units::joined;

namespace {

/// Of a sheet; in inches with the millimetres behind.
std::string outlineWords(const design::Design& design, const catalog::Catalog& shop, const Lengths& in) {
    const auto* sheet = design::part(design, design.core.sheet, shop);
    if (sheet == nullptr) return {};
    const std::string words =
        joined({in.inch ? "" : titleOf(design, design.core.sheet, shop) + ": ", in.size(catalog::overallWidth(*sheet)),
                " x ", in.size(catalog::overallHeight(*sheet)), " over all, ",
                sheet->cut == catalog::SheetCut::UI ? "leg " : "tongue ", in.size(sheet->tongue), ", window ",
                in.size(sheet->windowWidth), " x ", in.size(sheet->windowHeight), ", outer leg ",
                in.size(sheet->outerLeg), ", yoke ", in.size(sheet->yoke)});
    return in.inch ? joined({outlineWords(design, shop, {}), "; or ", words}) : words;
}

/// Terminals that carry the same sign when any winding is driven.
std::vector<std::string> dots(const design::Design& design) {
    std::vector<std::string> names;
    for (const auto& winding : design.windings)
        for (const Piece& piece : piecesOf(design, winding))
            names.push_back(piece.inPhase ? piece.start : piece.finish);
    return names;
}

FinishingStep soldering(const design::Design& design, const Materials& materials, const Lengths& in) {
    FinishingStep step{"", "Pins and leads", {}};
    step.words.emplace_back("Read the enamel's grade off the spool's label: ____________");
    step.words.emplace_back(
        "Polyurethane (solders through): 375 to 390 °C, 1 to 3 s. Solderable polyester-imide: 450 to 470 °C, 2 to 4 s. "
        "Polyester, polyester-imide or polyamide-imide that is not called solderable: strip it by blade, brush or "
        "stripper first, then 350 °C. (Temperatures near the grade's solderability test; from memory: the wire's own "
        "sheet rules.)");
    double thickest = 0;
    for (const auto& wire : materials.wires) thickest = std::max(thickest, wire.bare);
    if (thickest > 0)
        step.words.push_back(
            joined({"The thickest wire here is ", in.both(thickest, 3), ": from 0.3 mm on take the longer time."}));
    step.words.emplace_back(
        "By hand, one pin after the other, wherever the bobbin softens: pins stand in plastic. Let each cool before "
        "the next; straighten none while it is hot.");
    step.words.push_back(joined({counted(materials.joints, "joint"), " in all, ", fixed(materials.solder * 1e3, 1),
                                 " g of solder with what is lost."}));
    std::vector<std::string> leads;
    for (const auto& lead : materials.leads)
        leads.push_back(joined({lead.colour.empty() ? "" : lead.colour + " ", "(", lead.terminal, ") cut ",
                                in.cut(lead.cut), ", ", in.cut(lead.length), " free"}));
    const auto of = [](const ReelUse& use) { return use.title.empty() ? std::string() : " of " + use.title; };
    if (!leads.empty())
        step.words.push_back(joined({"Leads", of(materials.lead), ", in this order: ", listedWords(leads), "."}));
    if (!materials.sleeving.title.empty())
        step.words.push_back(
            joined({"Sleeving", of(materials.sleeving), ", ", in.cut(materials.sleeving.length), " in all."}));
    if (design.terminals.size() > leads.size())
        step.words.emplace_back("Wipe the flux off the pins; look at every joint through a glass.");
    if (materials.tape.length > 0)
        step.words.push_back(joined({"Outer wrap: ", counted(outerTapeTurns, "turn"), of(materials.tape),
                                     "; with what anchors the ends ", in.cut(materials.tape.length), " in all."}));
    step.words.emplace_back("Outer wrap: anchor the last end of tape with a drop of varnish or a turn of tape.");
    return step;
}

FinishingStep testing(const design::Design& design) {
    FinishingStep step{"", "Continuity and polarity, before the core goes in", {}};
    step.words.push_back(
        "Resistance of every winding between its terminals, against the winding sheet; write it down.");
    step.words.push_back(joined({"In phase: ", listedWords(dots(design)),
                                 ". Drive one winding with 1 V at 10 kHz: the voltage of two windings joined finish to "
                                 "start is their sum, not their difference."}));
    step.words.emplace_back(
        "Every winding against every other, against each shield and against the bobbin's opening: open at 100 V or "
        "less "
        "(an ohmmeter will do). High voltage only after finishing, see the cautions.");
    step.words.emplace_back("Short a winding before the meter is taken off: it stores energy.");
    return step;
}

std::string patternWords(const design::Core& core, const Materials& materials) {
    if (materials.sheets.size() < 2) return {};
    std::vector<std::string> parts;
    for (const auto& sheet : materials.sheets)
        parts.push_back(joined({std::to_string(sheet.count), " of ", sheet.title}));
    if (core.pattern == design::StackPattern::Blocks)
        return joined({"Mixed stack, in blocks, from the pins up: ", listedWords(parts), "."});
    return joined({"Mixed stack, alternating through the whole height: ", listedWords(parts),
                   "; spread the fewer evenly among the more."});
}

FinishingStep lamination(const design::Design& design, const Materials& materials, const catalog::Catalog& shop,
                         const Lengths& in) {
    FinishingStep step{"", "Lamination", {}};
    const auto& core = design.core;
    const auto* sheet = design::part(design, core.sheet, shop);
    const bool brittle =
        std::any_of(materials.sheets.begin(), materials.sheets.end(), [](const SheetUse& use) { return use.brittle; });
    for (const auto& use : materials.sheets) {
        const std::string sheets =
            joined({counted(use.count, "sheet"), " of ", use.title, ", ", in.both(use.thickness, 2), " thick"});
        step.words.push_back(use.mass > 0
                                 ? joined({"Count AND weigh: ", sheets, ", ", fixed(use.mass * 1e3, 1),
                                           " g. Weight and count must agree within one sheet. Lot: ____________"})
                                 : joined({"Count: ", sheets,
                                           " (density not known). Weigh the first stack: ________ g; weigh all others. "
                                           "Lot: ____________"}));
    }
    if (const std::string pattern = patternWords(core, materials); !pattern.empty()) step.words.push_back(pattern);
    constexpr const char* closing =
        ". Close all joints: push the stack together by hand, on a flat plate. Effective gap in the path: ";
    if (core.joint == design::Joint::Interleaved)
        step.words.push_back(joined({"Interleave one by one: each sheet from the other side than the one before, ",
                                     sheet != nullptr && sheet->cut == catalog::SheetCut::M
                                         ? "its tongue through the bobbin"
                                         : "its yoke closing the sheet of the other side",
                                     closing, in.thin(core.gap), "."}));
    else
        step.words.push_back(joined({"Butt-stacked: all sheets from one side, the other part on top. Spacer ",
                                     in.thin(core.gap / 2), " thick at each joint, so that the path holds ",
                                     in.thin(core.gap), " in all. Insulated, and it must not shift."}));
    step.words.emplace_back("All burrs to one side. Leave out a sheet that is bent, rusty or burred.");
    step.words.push_back(joined({"Closed height ", in.both(core.height),
                                 ", held between flat jaws with a light hand, not forced: the last sheets go in easily "
                                 "or stay out."}));
    if (brittle)
        step.words.emplace_back(
            "Never hammer or flex nickel or cobalt sheets, never drop them: strain costs permeability, and only a new "
            "anneal in hydrogen brings it back. Gloves keep skin and sheets apart.");
    step.words.emplace_back(
        "Clamp or frame: nothing that conducts may close a loop round a leg; insulate every bolt and bracket that "
        "could.");
    return step;
}

FinishingStep filling(const design::Design& design, const Materials& materials) {
    FinishingStep step{"", "Varnish or potting", {}};
    if (materials.compounds.empty()) {
        step.words.emplace_back(
            "None: the unit stays dry. Fix loose sheets with a drop at the corners, not in the joints.");
        return step;
    }
    const CompoundUse& use = materials.compounds.front();
    step.words.push_back(
        joined({use.varnish                  ? "Varnish: "
                : design.filling->hardPotted ? "Pot hard: "
                                             : "Pot soft: ",
                use.title, ", about ", fixed(use.volume * 1e6, 1), " cm³",
                use.mass > 0 ? joined({" (", fixed(use.mass * 1e3, 1), " g)"}) : "", " in the windows."}));
    step.words.emplace_back(
        "Mix, pot life and cure by the compound's own sheet. Mix ________  pot life ________  cure "
        "________ °C, ________ h. Lot: ____________");
    if (design.filling->hardPotted)
        step.words.emplace_back("Hard compound presses on the core: measure the inductance before and after.");
    step.words.emplace_back(use.varnish ? "Drain it; no drops on pins and mounting faces."
                                        : "Keep pins and mounting faces free; no bubbles beside the coil.");
    return step;
}

FinishingStep label(const design::Design& design) {
    FinishingStep step{"", "Label and packing", {}};
    constexpr const char* code =
        ", serial number, date code of four digits: year and week (ISO 8601), 2611 for the 11th week of 2026.";
    step.words.push_back(joined({"Label: ", design.partNumber.empty() ? design.name : design.partNumber, ", revision ",
                                 design.revision, code}));
    step.words.emplace_back("Demagnetise, then the final test by the traveller.");
    step.words.emplace_back(
        "Pack pins down in foam, each unit in its own cell, nothing heavy on top: shock lowers the inductance.");
    return step;
}

}  // namespace

Finishing finishing(const design::Design& design, const Materials& materials, const catalog::Catalog& shop,
                    const Lengths& in) {
    Finishing all;
    all.outline = outlineWords(design, shop, in);
    for (const auto& use : materials.sheets)
        all.stack.push_back({use.title, use.thickness, use.height, use.count, use.mass});
    all.closedHeight = design.core.height;
    all.steps = {soldering(design, materials, in), testing(design), lamination(design, materials, shop, in)};
    if (!materials.pieces.empty()) all.steps.push_back(fittingStep(materials));
    all.steps.push_back(filling(design, materials));
    all.steps.push_back(label(design));
    int number = 0;
    for (auto& step : all.steps) step.number = "F" + std::to_string(++number);
    all.cautions = cautions();
    return all;
}

namespace {

constexpr const char* othersFirst =
    "These lines do not replace local rules, the safety sheet of each material, the maker's instructions of each "
    "machine, or the trained and, where the law asks for it, licensed person. They come first.";
constexpr const char* kick =
    "Resistance of a large inductance: short the winding before the meter is taken off; the kick can be felt and can "
    "break the meter.";
constexpr const char* highVoltage =
    "High-voltage test (hipot): only by trained persons, with a guarded place, a current limit and one hand free of "
    "it. Switch off and discharge before touching anything.";
constexpr const char* notForMains =
    "The unit is not for mains isolation or protective separation unless it was designed and approved for it.";

}  // namespace

std::vector<std::string> cautions() {
    std::vector<std::string> all{othersFirst};
    const auto add = [&](const char* words) { all.emplace_back(words); };
    add("Spindles: no gloves, loose sleeves, rings, ribbons or open hair near a turning spindle. Guards closed. Eye "
        "protection: fine wire that breaks whips. A machine that runs by itself is not left alone.");
    add("Soldering: use flux and solder only with the fumes drawn off at the joint. Polyurethane enamel in the "
        "solder pot gives off isocyanates, which can make a person allergic for life: never without extraction. Hot "
        "solder spits: eye protection. Wash hands before eating.");
    add("Varnish, epoxy, hardeners: ventilation, the gloves that the safety sheet names, no skin contact "
        "(sensitising). Mixed resin heats itself: small batches, never left in the cup. Ovens that drive off "
        "solvent must be vented and made for it.");
    add("Sheets: edges cut. Nickel and cobalt on skin can cause allergy: gloves at the bench, not at the spindle.");
    for (const char* words : {kick, highVoltage, notForMains}) add(words);
    return all;
}

std::vector<std::string> testCautions() {
    return {othersFirst, kick, highVoltage, notForMains};
}

}  // namespace shop
