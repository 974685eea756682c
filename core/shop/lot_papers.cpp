// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/lot_papers.h"

#include <cmath>

#include "analysis/promise.h"
#include "shop/datasheet_parts.h"
#include "shop/practice.h"
#include "shop/sheet_words.h"
#include "shop/traveller.h"
#include "shop/winding_sheet.h"
#include "units/joined.h"
#include "units/text.h"

namespace shop {

using units::joined;

namespace {

const std::vector<FormColumn> measuredColumns{
    {"what", 0, false}, {"should be", 58, false}, {"measured", 30, false}, {"good", 14, false}};

FormPart measured(std::string heading) {
    return {std::move(heading), {}, {}, measuredColumns, {}};
}
void add(FormPart& part, std::string what, std::string should) {
    part.rows.push_back({{std::move(what), std::move(should), "", ""}});
}

std::string ohmText(double value) {
    return units::write(units::Kind::Resistance, value);
}

std::string toleranced(double dimension, int decimals, const Lengths& in) {
    return joined({in.size(dimension, decimals), " ± ", in.size(generalTolerance(dimension), 1)});
}

FormPart signatures(const char* heading, const std::vector<std::string>& who) {
    FormPart part{heading, {}, {}, {{"who", 0, false}, {"name", 60, false}, {"date", 36, false}}, {}};
    for (const std::string& one : who) part.rows.push_back({{one, "", ""}});
    return part;
}

FormPart materialsPart(const WindingSheet& sheet) {
    FormPart part{"Materials as used",
                  {},
                  {},
                  {{"material", 0, false}, {"amount", 40, true}, {"lot, and as ordered", 52, false}},
                  {}};
    for (const FetchRow& row : fetchRows(sheet.materials, sheet.head.manner.in))
        part.rows.push_back({{row.what, row.amount, ""}});
    return part;
}

FormPart coilPart(const WindingSheet& sheet) {
    FormPart part = measured("Coil, while it is wound");
    part.words = {
        "Every value that the winding sheet asks for, of this one unit. Resistances at 20 °C, coil wire alone."};
    for (const WindingStep& step : sheet.steps) {
        if (step.kind == StepKind::Wire)
            add(part, joined({"Step ", step.number, ", turns by the counter"}), turnsText(step.turns));
        for (const ResistanceCheck& check : step.checks)
            add(part, joined({"Step ", step.number, ", ", check.between}),
                joined({ohmText(check.expected), " (", ohmText(check.low), " to ", ohmText(check.high), ")"}));
    }
    for (const Fact& fact : sheet.setUp)
        if (fact.what.starts_with("Build")) add(part, fact.what, fact.words);
    return part;
}

FormPart stackPart(const WindingSheet& sheet) {
    const Lengths& in = sheet.head.manner.in;
    FormPart part = measured("Stack");
    for (const StackBlock& block : sheet.finishing.stack)
        add(part, joined({block.alloy, ", ", in.both(block.thickness, 2)}),
            joined({counted(block.count, "sheet"),
                    block.mass > 0 ? joined({", ", fixed(block.mass * 1e3, 1), " g"}) : std::string()}));
    add(part, "Closed height", in.size(sheet.finishing.closedHeight));
    return part;
}

/// With the tolerances that the datasheet names.
FormPart outlinePart(const design::Design& design, const catalog::Catalog& shop, const Lengths& in) {
    const Outline outline = outlineOf(design, shop);
    FormPart part = measured("Outline, against the datasheet");
    if (outline.width > 0) {
        add(part, "Width over all", toleranced(outline.width, 1, in));
        add(part, "Length over all", toleranced(outline.length, 1, in));
        add(part, "Height over all", joined({"at most ", in.size(outline.height)}));
    }
    if (outline.pitch > 0) add(part, "Pitch of the pins", toleranced(outline.pitch, 2, in));
    if (outline.rowDistance > 0) add(part, "Distance of the rows of pins", toleranced(outline.rowDistance, 2, in));
    for (const design::Terminal& terminal : design.terminals)
        if (terminal.pin == 0)
            add(part, joined({"Lead ", terminal.name, ", free length"}), in.cut(terminal.leadLength));
    return part;
}

FormPart testsPart(const char* heading, const std::vector<TestRow>& tests) {
    FormPart part = measured(heading);
    for (const TestRow& test : tests) add(part, test.what, test.limit);
    return part;
}

/// A value of a promise, or that it is not known.
std::string valueNow(const analysis::PromiseState& state) {
    if (state.standing == analysis::Standing::Unknown || !std::isfinite(state.now)) return "not computed";
    return units::write(state.mask && state.figure == "response" ? units::Kind::Decibel : state.kind, state.now);
}

}  // namespace

Form firstArticle(const design::Design& design, const catalog::Catalog& shop, const Issue& issue) {
    const WindingSheet sheet = windingSheet(design, shop, issue);
    Form form{paperHead("First-article report", design, issue), false, {}};
    form.parts.push_back({"The unit",
                          {},
                          {{"lot, serial number", ""},
                           {"wound by, on which winder", ""},
                           {"date", ""},
                           {"instruments, calibrated until", ""},
                           {"room, °C", ""}},
                          {},
                          {}});
    form.parts.push_back(materialsPart(sheet));
    form.parts.push_back(coilPart(sheet));
    form.parts.push_back(stackPart(sheet));
    form.parts.push_back(outlinePart(design, shop, issue.manner.in));
    form.parts.push_back(testsPart("Finished unit", traveller(design, shop, issue).tests));
    form.parts.push_back({"Found", {}, {{"not as the papers say", ""}, {"to be changed before the lot", ""}}, {}, {}});
    form.parts.push_back(signatures("Decision: the lot may be wound / only with a deviation permit / not",
                                    {"winding", "test", "design"}));
    return form;
}

Form deviationPermit(const design::Design& design, const analysis::Answer& answer, const Issue& issue) {
    Form form{paperHead("Deviation permit", design, issue), false, {}};
    form.parts.push_back({"What is asked",
                          {"For this lot alone; the design and its papers stay as they are. A change for good is a new "
                           "revision and a change notice."},
                          {{"permit number", ""},
                           {"lot, serial numbers", ""},
                           {"quantity", ""},
                           {"what is not as the papers say", ""},
                           {"which paper, which step", ""},
                           {"why, and how it was found", ""},
                           {"valid until", ""}},
                          {},
                          {}});
    FormPart room{
        "What was promised, and the room there is",
        {"Predicted for a unit as designed. Thin: less than a tenth of the limit, or 0.5 dB, is left."},
        {},
        {{"promised", 0, false}, {"as designed", 26, true}, {"standing", 22, false}, {"with the deviation", 34, false}},
        {}};
    for (const analysis::PromiseState& state : analysis::statesInOrder(design, answer))
        room.rows.push_back({{state.text, valueNow(state), std::string(analysis::word(state.standing)), ""}});
    if (room.rows.empty()) {
        room.words = {"The brief promises nothing in numbers: write down what the customer was told."};
        room.columns.clear();
        room.facts = {{"told to the customer", ""}};
    }
    form.parts.push_back(std::move(room));
    form.parts.push_back({"What it does to safety and life",
                          {"Insulation, creepage, hipot and materials that the safety sheets name are no matter of a "
                           "deviation permit."},
                          {{"looked at by", ""}, {"what is tested besides, on which units", ""}},
                          {},
                          {}});
    form.parts.push_back(
        {"The customer", {}, {{"asked on, answer, name", ""}, {"marked on units and papers as", ""}}, {}, {}});
    form.parts.push_back(
        signatures("Decision: granted / refused", {"winding", "test", "design", "customer, where a promise moves"}));
    return form;
}

Form returnReport(const design::Design& design, const catalog::Catalog& shop, const Issue& issue) {
    Form form{paperHead("Return report", design, issue), false, {}};
    form.parts.push_back({"What came back",
                          {},
                          {{"customer", design.brief.customer},
                           {"their reference", ""},
                           {"serial number, date code", ""},
                           {"lot, revision on the label", ""},
                           {"complaint, in their words", ""},
                           {"where it was used, how it was connected", ""},
                           {"received on, by", ""}},
                          {},
                          {}});
    FormPart looked{"Looked at before anything is measured", {}, {}, {{"what", 0, false}, {"found", 96, false}}, {}};
    for (const char* what :
         {"Packing; traces of a fall or of pressure on the core", "Label, date code, revision",
          "Pins and leads: bent, pulled, overheated, joints", "Varnish or compound: cracks, soft, discoloured",
          "Corrosion, moisture, smell of burning", "Changed by others"})
        looked.rows.push_back({{what, ""}});
    form.parts.push_back(std::move(looked));
    FormPart tests = testsPart("Measured, with the limits of a good unit", traveller(design, shop, issue).tests);
    tests.words = {
        "As it came, first; then after it was demagnetised: a magnetised core alone raises distortion and "
        "lowers inductance. Measure resistance last before demagnetising."};
    add(tests, "Every winding against every other, shield and core, ohmmeter at 100 V or less", "open");
    form.parts.push_back(std::move(tests));
    form.parts.push_back({"Cause and what is done",
                          {},
                          {{"confirmed, not confirmed, other fault", ""},
                           {"cause", ""},
                           {"other units of the lot, of the same wire or sheets", ""},
                           {"done at once", ""},
                           {"done so that it does not come again", ""},
                           {"repaired, replaced, sent back, scrapped", ""},
                           {"told to the customer, on", ""}},
                          {},
                          {}});
    form.parts.push_back({"Cautions", testCautions(), {}, {}, {}});
    form.parts.push_back(signatures("Closed by", {"test", "design"}));
    return form;
}

}  // namespace shop
