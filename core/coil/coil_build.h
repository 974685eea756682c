// SPDX-License-Identifier: GPL-3.0-or-later
// The design laid out: where every layer, sheet of paper and shield lies.
// Coordinates in m: x radially outward from the tongue's surface, y along the tongue from the window's lower wall.
#pragma once

#include <string>
#include <vector>

#include "design/design.h"

namespace coil {

/// A rectangle in the window's cross-section.
struct Box {
    double x0 = 0, x1 = 0, y0 = 0, y1 = 0;
    bool operator==(const Box&) const = default;
    [[nodiscard]] double width() const noexcept { return x1 - x0; }
    [[nodiscard]] double height() const noexcept { return y1 - y0; }
    [[nodiscard]] double middle() const noexcept { return (x0 + x1) / 2; }
};

/// The conductor that a layer is made of.
struct Conductor {
    bool foil = false;
    double bare = 0;     ///< bare diameter (foil: thickness), m
    double overall = 0;  ///< overall diameter (foil: thickness), m
    int strands = 1;
    double enamelPermittivity = 3.5;
    double enamelLoss = 0;
    bool operator==(const Conductor&) const = default;
};

/// One layer of a section; of a random-wound one, one stroke of the guide.
struct Layer {
    design::ItemIndex item;  ///< its section in the design
    std::string winding, section;
    int number = 1;  ///< within its section, in winding sequence
    int leg = 1, chamber = 1;
    double turns = 0;     ///< > 0
    int sense = 1;        ///< +1, or -1 where the section is wound in the opposite sense
    double oneSided = 0;  ///< of half turns on a shell core: +1/2 in the first window alone, -1/2 in the second
    bool random = false;
    bool nested = false;
    Box box;                                ///< of the conductors with their enamel: overall diameter high in x
    design::End begins = design::End::Low;  ///< at which end its first turn lies
    double pitch = 0;                       ///< axial distance of neighbouring turns, m
    double turnLength = 0;                  ///< mean turn, m
    double resistance20 = 0;                ///< DC at 20 degrees Celsius, ohm
    Conductor conductor;
    std::string tapAfter;  ///< terminal reached at its last turn; the next piece of the section goes on from there
    bool operator==(const Layer&) const = default;
};

/// A Faraday shield in place: a foil, or an open winding treated as a sheet of wire.
struct Foil {
    design::ItemIndex item;
    std::string name;
    int leg = 1, chamber = 1;
    Box box;
    double turnLength = 0;
    double foldedTo = 0;  ///< where its ends, folded inward, stop, x; 0: they are not folded
    bool winding = false;
    Conductor conductor;
    bool operator==(const Foil&) const = default;
    [[nodiscard]] bool isFolded() const noexcept { return foldedTo > 0 && foldedTo < box.x0; }
};

/// A sheet of insulation in place: barrier, interlayer paper, bobbin wall or flange.
struct Dielectric {
    Box box;
    double permittivity = 1;
    double loss = 0;  ///< tan delta
    int leg = 1, chamber = 1;
    bool bobbin = false;
    std::string name;  ///< for people
    bool operator==(const Dielectric&) const = default;
};

/// Room used in one chamber, and what does not fit.
struct ChamberFill {
    int leg = 1, chamber = 1;
    Box room;          ///< from the bobbin wall to the window's far wall (two legs: half of it), between the flanges
    double build = 0;  ///< radial height wound, with paper, m
    double buildMaximum = 0;            ///< the same with the wire's greatest overall diameter
    double heightShare = 0;             ///< build / room.width()
    double areaShare = 0;               ///< area of wire and insulation / area of the room
    double over = 0;                    ///< how much it is over, m; <= 0: it fits
    std::vector<std::string> problems;  ///< sentences: "S.a has no room for one turn", …
    bool operator==(const ChamberFill&) const = default;
};

/// The wire from a coil to a terminal.
struct LeadOut {
    std::string winding, terminal;
    double length = 0;    ///< m, > 0
    double diameter = 0;  ///< of round wire of the same section, m
    double resistance20 = 0;
    bool atPin = false;
    double pinX = 0, pinY = 0;  ///< where the pin stands, seen from below, m
    bool operator==(const LeadOut&) const = default;
};

/// Everything in place.
struct CoilBuild {
    double tongue = 0, stack = 0;  ///< core section that the coil goes round, m (stack: closed height)
    double windowWidth = 0, windowHeight = 0;
    double outerLeg = 0, yoke = 0;  ///< width of the outer leg (two legs: of the second leg) and of the yokes, m
    int legs = 1;                   ///< coils: 1 on a shell, 2 on two legs
    double bobbinWall = 0, clearance = 0, cornerRadius = 0;
    double bobbinPermittivity = 1, bobbinLoss = 0;
    double fillPermittivity = 1, fillLoss = 0;  ///< between the wires: air when dry, the filling when filled
    std::vector<Layer> layers;                  ///< place by place, from the core outward, in winding sequence
    std::vector<Foil> foils;
    std::vector<Dielectric> dielectrics;
    std::vector<ChamberFill> fill;
    std::vector<LeadOut> leads;
    bool operator==(const CoilBuild&) const = default;
};

/// Lays the design out. Pure; never fails on a checked design: what does not fit is laid out as it is and reported in
/// `fill`. Layers: pitch = usable width / turns per layer, turns per layer as given, else floor(width / (d_o strands
/// pitchFactor)); radial step d_o layerFactor (nested: x sqrt(3)/2 after the first) plus interlayer paper. Random: a
/// body whose wire circles fill 0.73 of the space (coil-winding literature; from memory), times layerFactor, in strokes
/// at the mean pitch. Sections of one hand share their layers. A layer that a tap falls into is cut in two pieces side
/// by side.
[[nodiscard]] CoilBuild layOut(const design::Design& design, const catalog::Catalog& shop);

}  // namespace coil
