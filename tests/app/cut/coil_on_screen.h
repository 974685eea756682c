// SPDX-License-Identifier: GPL-3.0-or-later
// A small shielded step-up with all parts inline, in a document, for the tests of the cut.
#pragma once

#include <memory>
#include <string>
#include <utility>

#include "analysis/answer.h"
#include "coil/coil_build.h"
#include "document/document.h"
#include "document/selection.h"

namespace cut_test {

inline design::Section section(const std::string& winding, const std::string& name, double turns) {
    design::Section s;
    s.winding = winding;
    s.name = name;
    s.turns = turns;
    return s;
}

inline design::Barrier barrier(double thickness) {
    catalog::Insulation paper;
    paper.title = "paper";
    paper.permittivity = 3;
    design::Barrier b;
    b.ply.insulation.own = std::make_shared<catalog::Insulation>(paper);
    b.ply.thickness = thickness;
    return b;
}

inline design::Winding winding(const std::string& name, double bare, double overall) {
    catalog::Wire wire;
    wire.title = "wire";
    wire.bareDiameter = bare;
    wire.overallDiameter = overall;
    design::Winding w;
    w.name = name;
    w.wire.own = std::make_shared<catalog::Wire>(wire);
    w.start = name + "+";
    w.finish = name + "-";
    return w;
}

inline design::Core coreOf(bool twoLegs) {
    catalog::Sheet sheet;
    sheet.title = "sheet";
    sheet.cut = twoLegs ? catalog::SheetCut::UI : catalog::SheetCut::EI;
    sheet.tongue = 0.012;
    sheet.windowWidth = twoLegs ? 0.012 : 0.006;
    sheet.windowHeight = 0.018;
    sheet.outerLeg = twoLegs ? 0.012 : 0.006;
    sheet.yoke = sheet.outerLeg;
    catalog::Alloy alloy;
    alloy.title = "alloy";
    alloy.initialPermeability = 20000;
    alloy.resistivity = 5.7e-7;
    design::Core core;
    core.kind = twoLegs ? design::CoreKind::TwoLeg : design::CoreKind::Shell;
    core.sheet.own = std::make_shared<catalog::Sheet>(sheet);
    design::StackPart part;
    part.alloy.own = std::make_shared<catalog::Alloy>(alloy);
    core.stack = {part};
    return core;
}

/// Items: 0 P.a, 1 insulation, 2 shield SH, 3 insulation, 4 S.a, 5 insulation, 6 P.b; with `chambers` 2 an upper, empty
/// chamber.
inline design::Design stepUp(int chambers = 1) {
    catalog::Bobbin bobbin;
    bobbin.title = "bobbin";
    bobbin.wall = 0.001;
    bobbin.flange = 0.001;
    bobbin.chambers = {{0.001, chambers == 1 ? 0.017 : 0.0085}};
    if (chambers == 2) bobbin.chambers.push_back({0.0095, 0.017});
    design::Shield shield;
    shield.name = "SH";
    design::Design d;
    d.name = "step-up for tests";
    d.core = coreOf(false);
    d.bobbin.own = std::make_shared<catalog::Bobbin>(bobbin);
    for (const char* name : {"P+", "P-", "S+", "S-"}) {
        design::Terminal terminal;
        terminal.name = name;
        d.terminals.push_back(terminal);
    }
    d.windings = {winding("P", 0.2e-3, 0.23e-3), winding("S", 0.08e-3, 0.095e-3)};
    design::Place place;
    place.order = {{section("P", "a", 120)}, {barrier(1e-4)},           {shield},
                   {barrier(1e-4)},          {section("S", "a", 1200)}, {barrier(1e-4)},
                   {section("P", "b", 120)}};
    d.coil = {place};
    if (chambers == 2) {
        design::Place upper;
        upper.chamber = 2;
        d.coil.push_back(upper);
    }
    design::Port input, output;
    input.name = "input";
    input.plus = "P+";
    input.minus = "P-";
    output.name = "output";
    output.plus = "S+";
    output.minus = "S-";
    d.ports = {input, output};
    design::HookUp normal;
    normal.name = "normal";
    normal.earths = {"S-", "core"};
    design::PortUse drive, observe;
    drive.port = "input";
    drive.role = design::Role::Drive;
    drive.through = design::Branch{};
    drive.through->resistance = 200;
    observe.port = "output";
    observe.role = design::Role::Observe;
    normal.ports = {drive, observe};
    d.hookUps = {normal};
    return d;
}

/// A document with an empty shop, a selection, and answers that hold the coil build alone.
struct Desk {
    explicit Desk(design::Design design = stepUp())
        : document(std::make_shared<catalog::Catalog>(), std::make_shared<const design::Design>(std::move(design))) {}

    [[nodiscard]] analysis::AnswerPtr answer() const {
        auto result = std::make_shared<analysis::Answer>();
        result->build = std::make_shared<coil::CoilBuild>(coil::layOut(*document.shown(), *document.shop()));
        return result;
    }
    [[nodiscard]] const design::Item& item(int index, int place = 0) const {
        return document.design()->coil.at(static_cast<std::size_t>(place)).order.at(static_cast<std::size_t>(index));
    }
    [[nodiscard]] std::string order(int place = 0) const {
        std::string all;
        for (const auto& i : document.design()->coil.at(static_cast<std::size_t>(place)).order)
            all += i.section() != nullptr  ? i.section()->label() + " "
                   : i.shield() != nullptr ? i.shield()->name + " "
                                           : "| ";
        return all;
    }

    document::Document document;
    document::Selection selection;
};

}  // namespace cut_test
