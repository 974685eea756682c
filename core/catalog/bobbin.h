// SPDX-License-Identifier: GPL-3.0-or-later
// A bobbin: tube, flanges, chambers and pins.
#pragma once

#include <string>
#include <vector>

#include "catalog/parts.h"

namespace catalog {

/// The part of the tube between two flanges, measured along the tongue from the window's lower wall, m.
struct Chamber {
    units::Datum low;
    units::Datum high;
    bool operator==(const Chamber&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Chamber& c) {
    visit.need("low", c.low, json::within(0, 0.5).in("m"));
    visit.need("high", c.high, json::within(0, 0.5).in("m"));
}

/// A pin, seen from below (from the side that is soldered), origin at the bobbin's middle, m.
struct Pin {
    int number = 1;
    double x = 0;
    double y = 0;
    std::string row;  ///< "low" or "high": at which flange
    bool operator==(const Pin&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Pin& p) {
    visit.need("number", p.number, json::within(1, 999));
    visit.need("x", p.x, json::within(-0.5, 0.5).in("m"));
    visit.need("y", p.y, json::within(-0.5, 0.5).in("m"));
    visit.may("row", p.row);
}

/// A bobbin that slides over the tongue.
struct Bobbin {
    std::string title;
    units::Datum wall;          ///< tube wall between tongue and coil, m
    units::Datum flange;        ///< end flange, m: documentation of the chambers' ends
    units::Datum clearance;     ///< between tongue and the tube's inside, m
    units::Datum cornerRadius;  ///< outer corner radius of the tube, m
    units::Datum permittivity{3.3};
    units::Datum lossFactor{0.0};
    std::vector<Chamber> chambers;
    std::vector<Pin> pins;  ///< pin 1 is marked on the part
    std::string pinSource;
    units::Datum pinPitch;     ///< m; 0: no pins
    std::string fits;          ///< key of the sheet it is made for; "" any
    units::Datum stackHeight;  ///< of the opening, m; 0: any
    Standing standing = Standing::Current;
    std::string note;
    json::Value extra;
    bool operator==(const Bobbin&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Bobbin& b) {
    visit.may("title", b.title);
    visit.need("wall", b.wall, json::within(0, 0.05).in("m"));
    visit.may("flange", b.flange, json::within(0, 0.05).in("m"));
    visit.may("clearance", b.clearance, json::within(0, 0.01).in("m"));
    visit.may("corner_radius", b.cornerRadius, json::within(0, 0.05).in("m"));
    visit.may("permittivity", b.permittivity, json::within(1, 20));
    visit.may("loss_factor", b.lossFactor, json::within(0, 1));
    visit.need("chambers", b.chambers);
    visit.may("pins", b.pins);
    visit.may("pin_source", b.pinSource);
    visit.may("pin_pitch", b.pinPitch, json::within(0, 0.1).in("m"));
    visit.may("fits", b.fits);
    visit.may("stack_height", b.stackHeight, json::within(0, 0.5).in("m"));
    visit.may("standing", b.standing);
    visit.may("note", b.note);
}

}  // namespace catalog
