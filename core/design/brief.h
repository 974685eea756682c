// SPDX-License-Identifier: GPL-3.0-or-later
// What the customer needs.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "design/choices.h"
#include "json/record.h"
#include "units/quantity.h"

namespace design {

/// A limit on one figure: at least one of the two bounds.
struct Promise {
    std::string figure;             ///< figure name without hook-up: "high_3dB_first", "dcr.P"
    std::string hookUp;             ///< "" the first
    std::string port;               ///< "" where the figure needs none
    std::optional<double> atLeast;  ///< SI
    std::optional<double> atMost;
    std::string note;
    json::Value extra = nullptr;
    bool operator==(const Promise&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Promise& p) {
    visit.need("figure", p.figure);
    visit.may("hook_up", p.hookUp);
    visit.may("port", p.port);
    visit.may("at_least", p.atLeast);
    visit.may("at_most", p.atMost);
    visit.may("note", p.note);
}

/// A corner of a mask, in files [frequency, low, high] with null for no limit.
struct MaskPoint {
    double frequency = 0;
    std::optional<double> low;
    std::optional<double> high;
    bool operator==(const MaskPoint&) const = default;
    void readSelf(const json::Value& from, const std::string& place, json::Reader& reader);
    [[nodiscard]] json::Value writeSelf() const;
};

/// Limits on a trace: straight lines between the points on a logarithmic frequency axis. For "response": dB re 1 kHz.
struct Mask {
    std::string trace;
    std::string hookUp;
    std::vector<MaskPoint> points;
    std::string note;
    json::Value extra = nullptr;
    bool operator==(const Mask&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Mask& m) {
    visit.need("trace", m.trace);
    visit.may("hook_up", m.hookUp);
    visit.need("points", m.points);
    visit.may("note", m.note);
}

/// Outer size that the unit may have, m; 0: free.
struct Size {
    units::Quantity length = 0;
    units::Quantity width = 0;
    units::Quantity height = 0;
    json::Value extra = nullptr;
    bool operator==(const Size&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Size& s) {
    visit.may("length", s.length, json::within(0, 1).in("m"));
    visit.may("width", s.width, json::within(0, 1).in("m"));
    visit.may("height", s.height, json::within(0, 1).in("m"));
}

/// What ends the level that a unit takes: the lowest of those that are asked for.
struct LevelCriterion {
    std::optional<double> distortion;   ///< total harmonic distortion, per cent
    bool knee = true;                   ///< the core's saturation knee
    std::optional<double> sourceLevel;  ///< greatest EMF that the source can make, dBu
    std::optional<double> rise;         ///< of the unit's temperature by loss in its wire and core, K
    json::Value extra = nullptr;
    bool operator==(const LevelCriterion&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, LevelCriterion& c) {
    visit.may("distortion_percent", c.distortion, json::within(0.05, 30));
    visit.may("saturation_knee", c.knee);
    visit.may("source_level_dBu", c.sourceLevel, json::within(-200, 200).in("dBu"));
    visit.may("temperature_rise", c.rise, json::aboveUpTo(0, 200));
}

/// What the customer said on a point that the rest of the design does not show: "climate", "indoors". What he left
/// open is told by `unsaid`.
struct Said {
    std::string subject;
    std::string words;
    json::Value extra = nullptr;
    bool operator==(const Said&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Said& s) {
    visit.need("subject", s.subject);
    visit.need("words", s.words);
}

struct Brief {
    std::string customer;
    std::string use;                     ///< "microphone input", in words
    units::Quantity operatingLevel = 0;  ///< dBu
    LevelAt levelAt = LevelAt::Emf;
    LevelCriterion maximumLevel;
    std::string isolation;  ///< what the customer asks of the insulation, in words
    Size size;
    std::vector<Promise> promises;
    std::vector<Mask> masks;
    std::vector<Said> said;
    std::string note;
    json::Value extra;
    bool operator==(const Brief&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Brief& b) {
    visit.may("customer", b.customer);
    visit.may("use", b.use);
    visit.may("operating_level_dBu", b.operatingLevel, json::within(-200, 100).in("dBu"));
    visit.may("level_at", b.levelAt);
    visit.may("maximum_level", b.maximumLevel);
    visit.may("isolation", b.isolation);
    visit.may("size", b.size);
    visit.may("promises", b.promises);
    visit.may("masks", b.masks);
    visit.may("said", b.said);
    visit.may("note", b.note);
}

}  // namespace design
