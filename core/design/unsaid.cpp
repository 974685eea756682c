// SPDX-License-Identifier: GPL-3.0-or-later
#include "design/unsaid.h"

#include <algorithm>
#include <array>

#include "json/enum_word.h"
#include "units/text.h"

namespace design {

namespace {

using units::Kind;

const PortUse* ofRole(const Design& d, Role role) {
    if (d.hookUps.empty()) return nullptr;
    for (const auto& use : d.hookUps.front().ports)
        if (use.role == role) return &use;
    return nullptr;
}

std::string impedance(const Design& d, Role role) {
    const auto* use = ofRole(d, role);
    if (use == nullptr) return {};
    std::string words;
    if (use->through) words = units::write(Kind::Resistance, use->through->resistance, 3);
    if (!use->table.empty()) words = "measured from " + units::write(Kind::Frequency, use->table.front().frequency, 3);
    double across = 0;
    for (const auto& branch : use->across) across += branch.capacitance;
    if (across > 0 && !words.empty()) words += " beside " + units::write(Kind::Capacitance, across, 2);
    return words;
}

std::string earthing(const Design& d, Role role) {
    const auto* use = ofRole(d, role);
    // Floating is what stands there before anybody chose.
    if (use == nullptr || use->earthing == Earthing::Floating) return {};
    return json::wordOf(use->earthing);
}

/// The first promise on a figure that begins so, in words.
std::string promised(const Design& d, const std::vector<std::string>& figures) {
    for (const auto& p : d.brief.promises)
        for (const auto& figure : figures)
            if (p.figure.starts_with(figure)) return "promised: " + p.figure;
    return {};
}

std::string masked(const Design& d, const std::string& trace) {
    for (const auto& m : d.brief.masks)
        if (m.trace == trace) return "a mask on the " + trace;
    return {};
}

std::string first(const std::string& one, const std::string& other) {
    return one.empty() ? other : one;
}

std::string use(const Design& d) {
    return d.brief.use;
}
std::string source(const Design& d) {
    return impedance(d, Role::Drive);
}
std::string sourceEarthing(const Design& d) {
    return earthing(d, Role::Drive);
}
std::string load(const Design& d) {
    return impedance(d, Role::Observe);
}
std::string loadEarthing(const Design& d) {
    return earthing(d, Role::Observe);
}
std::string level(const Design& d) {
    return d.brief.operatingLevel.value == 0 ? "" : units::write(Kind::LevelDbu, d.brief.operatingLevel, 3);
}
std::string greatestLevel(const Design& d) {
    const auto& most = d.brief.maximumLevel;
    if (most.distortion || most.sourceLevel || most.rise) return "the brief says what ends the level";
    return promised(d, {"maximum_level", "headroom"});
}
std::string lowEnd(const Design& d) {
    return first(promised(d, {"low_3dB"}), masked(d, "response"));
}
std::string highEnd(const Design& d) {
    return first(promised(d, {"high_3dB"}), masked(d, "response"));
}
std::string rejection(const Design& d) {
    return first(promised(d, {"rejection", "output_balance"}), masked(d, "balance"));
}
std::string noise(const Design& d) {
    return first(promised(d, {"noise"}), masked(d, "noise"));
}
std::string direct(const Design& d) {
    if (d.conditions.phantom) return "phantom supply on " + d.conditions.phantom->port;
    return d.conditions.directCurrents.empty()
               ? ""
               : "direct current through " + d.conditions.directCurrents.front().winding;
}
std::string hum(const Design& d) {
    return promised(d, {"hum"});
}
std::string isolation(const Design& d) {
    return d.brief.isolation;
}
std::string size(const Design& d) {
    const auto& s = d.brief.size;
    if (s.length.value == 0 && s.width.value == 0 && s.height.value == 0) return {};
    std::string words;
    for (const double side : {s.length.value, s.width.value, s.height.value})
        words += (words.empty() ? "" : " × ") + (side > 0 ? units::write(Kind::Length, side, 3) : std::string("free"));
    return words;
}
std::string notShown(const Design&) {
    return {};
}

struct Row {
    const char *subject, *question, *why;
    std::string (*shown)(const Design&);
};
constexpr std::array<Row, 19> rows{{
    {"use", "What is it for?", "which ends of it matter, and which standards", use},
    {"source", "What drives it, with which impedance?", "turns, low end, noise", source},
    {"source earthing", "Is the source balanced, floating or earthed on one side?",
     "which end lies inside, where shields are earthed", sourceEarthing},
    {"load", "What does it work into, and how long is the cable?", "damping, high end, loss", load},
    {"load earthing", "Is the load balanced, floating or earthed on one side?",
     "which end lies inside, where shields are earthed", loadEarthing},
    {"operating level", "At which level does it work?", "headroom is counted from it", level},
    {"greatest level", "Which level must it take at which frequency, with how much distortion?",
     "core area, alloy, turns", greatestLevel},
    {"low end", "How low must it go, and how flat?", "inductance, alloy, turns", lowEnd},
    {"high end", "How high must it go, how flat, with how much peak?", "interleaving, shields, damping", highEnd},
    {"rejection", "How much common-mode rejection is needed?", "shields, balance of the halves", rejection},
    {"noise", "Which amplifier follows, and how much noise is allowed?", "ratio, copper", noise},
    {"direct current", "Is there phantom supply or any other direct current?", "gap, alloy, magnetised cores", direct},
    {"surroundings", "What stands near it: supplies, motors, monitors?", "can, arrangement of the coils", hum},
    {"isolation", "Which voltage must it hold for how long, by which standard?",
     "insulation, creepage, the test; never assumed", isolation},
    {"size", "How large may it be?", "sheets and stack", size},
    {"climate", "Between which temperatures and in which damp will it work?", "wire, varnish, potting", notShown},
    {"connection", "Pins or leads, which colours, how is it fixed?", "bobbin, frame, outline", notShown},
    {"quantity", "How many now, and how often again?", "winder, tools, price", notShown},
    {"materials", "Which rules on materials and flammability apply?", "insulation, solder, compound", notShown},
}};

}  // namespace

std::vector<Point> points(const Design& design) {
    std::vector<Point> all;
    for (const auto& row : rows) {
        const auto words = std::find_if(design.brief.said.begin(), design.brief.said.end(),
                                        [&](const Said& s) { return s.subject == row.subject && !s.words.empty(); });
        all.push_back(
            {row.subject, row.question, row.why, words != design.brief.said.end() ? words->words : row.shown(design)});
    }
    return all;
}

std::vector<Point> unsaid(const Design& design) {
    auto all = points(design);
    std::erase_if(all, [](const Point& p) { return !p.said.empty(); });
    return all;
}

}  // namespace design
