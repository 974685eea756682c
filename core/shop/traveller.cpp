// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/traveller.h"

#include <cmath>

#include "shop/datasheet_parts.h"
#include "shop/fitting_step.h"
#include "shop/sheet_words.h"
#include "shop/winding_sheet.h"
#include "units/joined.h"
#include "units/text.h"

namespace shop {

using units::joined;

namespace {

std::vector<Operation> operationsOf(const design::Design& design, const WindingSheet& sheet) {
    std::vector<Operation> all;
    constexpr int step = 10;
    const auto add = [&](std::string words, std::string paper) {
        all.push_back({static_cast<int>(all.size() + 1) * step, std::move(words), std::move(paper)});
    };
    const auto finishing = [&](const char* title) {
        for (const auto& one : sheet.finishing.steps)
            if (one.title == title) return joined({"winding sheet, ", one.number});
        return std::string("winding sheet");
    };
    add("Issue materials, write their lots below", "bill of materials");
    for (int leg = 1; leg <= sheet.legs; ++leg) {
        std::string first, last;
        for (const auto& one : sheet.steps)
            if (one.leg == leg) {
                if (first.empty()) first = one.number;
                last = one.number;
            }
        if (first.empty()) continue;
        add(sheet.legs > 1 ? "Wind coil " + std::to_string(leg) : std::string("Wind the coil"),
            joined({"winding sheet, steps ", first, " to ", last}));
    }
    add("Pins and leads", finishing("Pins and leads"));
    add("Continuity, resistance, polarity", finishing("Continuity and polarity, before the core goes in"));
    add("Laminate; count and weigh the sheets", finishing("Lamination"));
    if (!design.fittings.empty()) add("Put frame, clamps, bolts or can on", finishing(fittingTitle));
    if (design.filling) add("Measure before it is filled", "tests overleaf");
    if (design.filling) add("Varnish or pot, cure", finishing("Varnish or potting"));
    add("Final test; hipot by trained persons only", "tests overleaf; cautions");
    add("Label, date code, pack", finishing("Label and packing"));
    return all;
}

std::vector<TestRow> testsOf(const design::Design& design, const coil::CoilBuild& build, const Lengths& in) {
    std::vector<TestRow> tests;
    for (const auto& winding : design.windings) {
        double sum = 0, bare = 0;
        bool foil = false;
        const bool parallel = winding.connection == design::Connection::Parallel;
        for (const auto* section : design::sectionsOf(design, winding)) {
            double ohm = 0;
            for (const auto& layer : build.layers)
                if (layer.winding == section->winding && layer.section == section->name) {
                    ohm += layer.resistance20;
                    bare = layer.conductor.bare;
                    foil = layer.conductor.foil;
                }
            sum += parallel ? 1 / ohm : ohm;
        }
        if (!(sum > 0)) continue;
        const double ohm = parallel ? 1 / sum : sum;
        const Limits limits = resistanceLimits(bare, foil);
        const auto text = [](double value) { return units::write(units::Kind::Resistance, value); };
        tests.push_back({joined({"Resistance of ", winding.name, ", 20 °C"}),
                         joined({text(ohm * limits.low), " to ", text(ohm * limits.high)})});
    }
    if (const auto* hookUp = design::hookUp(design, ""))
        for (const ValueRow& row : agreedLimits(design, windingRoles(design, *hookUp), {in, {}}))
            tests.push_back({joined({row.what, row.condition.empty() ? "" : ", " + row.condition}), row.value});
    tests.push_back({"Polarity: in phase as the winding sheet says", "yes"});
    return tests;
}

}  // namespace

Traveller traveller(const design::Design& design, const catalog::Catalog& shop, const Issue& issue) {
    const coil::CoilBuild build = coil::layOut(design, shop);
    Traveller paper;
    paper.head = paperHead("Traveller", design, issue);
    paper.customer = design.brief.customer;
    paper.use = design.brief.use;
    paper.operations = operationsOf(design, windingSheet(design, shop, issue));
    paper.materials = fetchRows(materialsOf(design, build, shop), issue.manner.in);
    paper.tests = testsOf(design, build, issue.manner.in);
    return paper;
}

}  // namespace shop
