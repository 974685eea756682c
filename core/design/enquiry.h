// SPDX-License-Identifier: GPL-3.0-or-later
// What is usual of a kind of unit before a customer has said more: what a new design begins with.
#pragma once

#include <string>
#include <vector>

#include "design/brief.h"
#include "design/choices.h"
#include "json/record.h"

namespace design {

/// What hangs on one side of the unit.
struct Termination {
    std::string port;        ///< name of the port: "microphone"
    double resistance = 0;   ///< ohm
    double capacitance = 0;  ///< F across the terminals; 0: none
    Earthing earthing = Earthing::Balanced;
    json::Value extra = nullptr;
    bool operator==(const Termination&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Termination& t) {
    visit.need("port", t.port);
    visit.need("resistance", t.resistance, json::aboveUpTo(0, 1e9).in("ohm"));
    visit.may("capacitance", t.capacitance, json::within(0, 1e-3).in("F"));
    visit.may("earthing", t.earthing);
}

/// A kind of unit. Every output has a winding of its own, all alike, and a foil shield of its own towards the source.
struct Enquiry {
    std::string title;  ///< "Microphone input"
    std::string use;    ///< goes into the brief
    Termination source;
    std::vector<Termination> outputs;
    double ratio = 1;  ///< turns of an output over those of the source's winding
    double level = 0;  ///< operating level of the source's EMF, dBu
    std::vector<Promise> promises;
    std::string note;  ///< where the numbers come from
    json::Value extra = nullptr;
    bool operator==(const Enquiry&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Enquiry& e) {
    visit.need("title", e.title);
    visit.need("use", e.use);
    visit.need("source", e.source);
    visit.need("outputs", e.outputs);
    visit.need("ratio", e.ratio, json::within(1e-3, 1e3));
    visit.need("operating_level_dBu", e.level, json::within(-200, 100).in("dBu"));
    visit.need("promises", e.promises);
    visit.need("note", e.note);
}

}  // namespace design
