// SPDX-License-Identifier: GPL-3.0-or-later
// An invented small transformer in round numbers: room for the coil 22 mm by 8 mm, wire of 0.117 mm over its enamel.
#pragma once

#include <memory>
#include <string>
#include <utility>

#include "design/design.h"

namespace small {

inline constexpr double overall = 0.117e-3, bare = 0.1e-3, roomWidth = 22e-3, roomHeight = 8e-3;

inline catalog::Catalog shop() {
    catalog::Catalog c;
    auto& sheet = c.sheets["sheet"];
    sheet.tongue = 16e-3;
    sheet.windowWidth = 9e-3;
    sheet.windowHeight = 24e-3;
    sheet.outerLeg = sheet.yoke = 8e-3;
    auto& alloy = c.alloys["alloy"];
    alloy.initialPermeability = 20000;
    alloy.resistivity = 5.5e-7;
    alloy.saturation = 0.8;
    alloy.curve = {{0, 0}, {1, 0.03}, {3, 0.4}, {10, 0.7}, {100, 0.8}};
    c.alloys["better alloy"] = alloy;
    c.alloys["better alloy"].initialPermeability = 40000;
    c.wires["wire"].bareDiameter = bare;
    c.wires["wire"].overallDiameter = overall;
    c.wires["thick"].bareDiameter = 1e-3;
    c.wires["thick"].overallDiameter = 1.1e-3;
    auto& bobbin = c.bobbins["bobbin"];
    bobbin.wall = 1e-3;
    bobbin.chambers = {{1e-3, 23e-3}};
    c.insulation["film"].permittivity = 3.2;
    c.insulation["paper"].permittivity = 2.5;
    return c;
}

inline design::Section sectionOf(const std::string& winding, const std::string& name, double turns) {
    design::Section s;
    s.winding = winding;
    s.name = name;
    s.turns = turns;
    return s;
}

inline design::Barrier barrier(double thickness, const char* insulation = "film") {
    design::Barrier b;
    b.ply.insulation = insulation;
    b.ply.thickness = thickness;
    return b;
}

inline design::Winding windingOf(const std::string& name, const std::string& start, const std::string& finish) {
    design::Winding w;
    w.name = name;
    w.wire = "wire";
    w.start = start;
    w.finish = finish;
    return w;
}

inline design::HookUp normal() {
    design::HookUp h;
    h.name = "normal";
    h.earths = {"2", "4", "core"};
    h.ports.resize(2);
    h.ports[0].port = "input";
    h.ports[0].role = design::Role::Drive;
    h.ports[0].through.emplace().resistance = 600;
    h.ports[1].port = "output";
    h.ports[1].role = design::Role::Observe;
    h.ports[1].through.emplace().resistance = 10000;
    return h;
}

/// P.a of 188 turns (one full layer), film, S.a of 376 turns (two full layers).
inline design::Design transformer() {
    design::Design d;
    d.name = "small";
    d.core.sheet = "sheet";
    d.core.height = 16e-3;
    d.core.stack.resize(1);
    d.core.stack[0].alloy = "alloy";
    d.bobbin = "bobbin";
    for (const char* name : {"1", "2", "3", "4"}) {
        d.terminals.emplace_back();
        d.terminals.back().name = name;
    }
    d.windings = {windingOf("P", "1", "2"), windingOf("S", "3", "4")};
    d.coil.resize(1);
    d.coil[0].order = {{sectionOf("P", "a", 188)}, {barrier(1e-4)}, {sectionOf("S", "a", 376)}};
    d.ports = {{"input", "1", "2", {}}, {"output", "3", "4", {}}};
    d.hookUps = {normal()};
    return d;
}

/// The same frame with nothing but this section of winding P.
inline design::Design alone(design::Section section) {
    auto d = transformer();
    d.windings.resize(1);
    d.coil[0].order = {{std::move(section)}};
    return d;
}

}  // namespace small
