// SPDX-License-Identifier: GPL-3.0-or-later
// An invented design for the tests of this folder: P.a | film | foil SH | film | S.a | P.b, and S.b in chamber 2.
#pragma once

#include "design/design.h"

inline design::Item sectionItem(const std::string& winding, const std::string& name, double turns) {
    design::Section s;
    s.winding = winding;
    s.name = name;
    s.turns = turns;
    return {s};
}

inline design::Item barrierItem(double thickness) {
    design::Barrier b;
    b.ply.insulation = "film";
    b.ply.thickness = thickness;
    return {b};
}

inline design::Item shieldItem(const std::string& name) {
    design::Shield s;
    s.name = name;
    return {s};
}

inline design::Winding windingOf(const std::string& name, const std::string& start, const std::string& finish) {
    design::Winding w;
    w.name = name;
    w.wire = "wire";
    w.start = start;
    w.finish = finish;
    return w;
}

/// The catalog that the sample names.
inline catalog::Catalog sampleShop() {
    catalog::Catalog shop;
    auto& sheet = shop.sheets["sheet"];
    sheet.tongue = 0.01;
    sheet.windowWidth = 0.005;
    sheet.windowHeight = 0.015;
    sheet.outerLeg = sheet.yoke = 0.005;
    shop.alloys["alloy"].initialPermeability = 1000;
    shop.alloys["alloy"].resistivity = 5e-7;
    shop.wires["wire"].bareDiameter = 1e-4;
    shop.wires["wire"].overallDiameter = 1.2e-4;
    shop.bobbins["bobbin"].chambers = {{0.0005, 0.007}, {0.008, 0.0145}};
    shop.insulation["film"].permittivity = 3.2;
    return shop;
}

inline design::Design sampleDesign() {
    design::Design d;
    d.name = "sample";
    d.core.sheet = "sheet";
    d.core.stack.resize(1);
    d.core.stack[0].alloy = "alloy";
    d.bobbin = "bobbin";
    for (const char* name : {"1", "2", "3", "4"}) {
        d.terminals.emplace_back();
        d.terminals.back().name = name;
    }
    d.windings = {windingOf("P", "1", "2"), windingOf("S", "3", "4")};
    d.coil.resize(2);
    d.coil[0].order = {sectionItem("P", "a", 60), barrierItem(5e-5),          shieldItem("SH"),
                       barrierItem(8e-5),         sectionItem("S", "a", 200), sectionItem("P", "b", 40)};
    d.coil[1].chamber = 2;
    d.coil[1].order = {sectionItem("S", "b", 100)};
    d.ports.resize(2);
    d.ports[0] = {"input", "1", "2", {}};
    d.ports[1] = {"output", "3", "4", {}};
    d.hookUps.resize(1);
    design::HookUp& h = d.hookUps[0];
    h.name = "normal";
    h.straps = {{"SH", "4"}};
    h.earths = {"core", "4"};
    h.ports.resize(2);
    h.ports[0].port = "input";
    h.ports[0].role = design::Role::Drive;
    h.ports[0].through.emplace().resistance = 150;
    h.ports[1].port = "output";
    h.ports[1].role = design::Role::Observe;
    return d;
}
