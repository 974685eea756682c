// SPDX-License-Identifier: GPL-3.0-or-later
// Gain at 1 kHz, response at stated points, its peak; distortion at low frequencies.
#include <cmath>

#include "shop/plan_rows.h"
#include "units/joined.h"
#include "units/text.h"

namespace shop {

using units::joined;

namespace {

std::string hertz(double f) {
    return units::writeExact(units::Kind::Frequency, f);
}

/// A level that neither distorts nor is near noise: 20 dB below the greatest of the core or of the generator.
std::string easyLevel(const PlanContext& context, const BenchState& state) {
    constexpr double below = 20;
    const auto most = state.figures.find("maximum_level_20Hz");
    double level = context.fixture.generator.level;
    if (most != state.figures.end()) level = std::min(level, most->second.value);
    return units::writeExact(units::Kind::LevelDbu, std::round(level - below) + 0.0) + " EMF";
}

bool hasFigure(const design::Design& design, const std::string& figure, const std::string& hookUp) {
    for (const auto& promise : design.brief.promises)
        if (promise.figure == figure && promise.hookUp == hookUp) return true;
    return false;
}

/// A promised loss is a promised gain: gain + loss is the ideal transformer's level, in the customer's hook-up.
void takeLoss(const PlanContext& context, const BenchState& state, RowList& list, Promised& gain) {
    const auto *gainThere = context.answer.figure("gain_1kHz"), *lossThere = context.answer.figure("insertion_loss");
    const auto* gainHere = state.answer->figure("gain_1kHz");
    if (gainThere == nullptr || lossThere == nullptr || gainHere == nullptr) return;
    const auto& promises = context.design.brief.promises;
    for (std::size_t k = 0; k < promises.size(); ++k) {
        const auto& promise = promises[k];
        const bool shown = promise.hookUp.empty() || promise.hookUp == context.design.hookUps.front().name;
        if (promise.figure != "insertion_loss" || !shown || !promise.port.empty() || !promise.atMost || promise.atLeast)
            continue;
        const double change = gainHere->value - gainThere->value;
        const double least = gainThere->value + lossThere->value - *promise.atMost + change +
                             std::min(gainHere->uncertainty, std::abs(change));
        if (!gain.atLeast || least > *gain.atLeast) gain.atLeast = least;
        gain.words = joined({"promised loss of at most ", units::write(units::Kind::Decibel, *promise.atMost),
                             " at the customer's, as a gain moved by what is predicted to differ (",
                             units::write(units::Kind::Decibel, change, 3), ")"});
        list.measured.insert(k);
    }
}

void addGain(const PlanContext& context, const BenchState& state, const BenchHookUp& hookUp, bool first,
             RowList& list) {
    const std::string name = first ? "gain_1kHz" : "gain_1kHz@" + hookUp.name;
    const auto at = state.figures.find(name);
    if (at == state.figures.end() || (!first && !hasFigure(context.design, "gain_1kHz", hookUp.name))) return;
    Promised promised = transferred(context, state, "gain_1kHz", first ? "" : hookUp.name, list.measured);
    if (first) takeLoss(context, state, list, promised);
    auto& row = list.add(TestOrder::Signal, first ? "Gain at 1 kHz" : joined({"Gain at 1 kHz, ", hookUp.name}), name);
    row.hookUp = hookUp.words;
    row.settings = "1 kHz, " + easyLevel(context, state);
    row.method = "Level at the analyser less level of the generator's EMF.";
    RowList::limit(row, window(at->second, context.fixture.doubts.level, promised, Sides::Both, units::Kind::Decibel),
                   units::Kind::Decibel, at->second.value);
}

void addPeak(const PlanContext& context, const BenchState& state, RowList& list) {
    if (!hasFigure(context.design, "peak_level", "")) return;
    const auto at = state.figures.find("peak_level");
    auto& row = list.add(TestOrder::Signal, "Peak of the response, re 1 kHz", "peak_level");
    row.hookUp = state.bench.hookUps.front().words;
    row.settings =
        joined({"sweep 3 kHz to ", hertz(context.fixture.generator.highest), ", ", easyLevel(context, state)});
    row.method = "Greatest level of the first maximum over the level at 1 kHz.";
    row.kind = units::Kind::Decibel;
    if (at == state.figures.end()) {
        row.doubt = "no peak is predicted on this bench: a promise on it cannot be moved here, any peak is a finding";
        return;
    }
    const Promised promised = transferred(context, state, "peak_level", "", list.measured);
    RowList::limit(row, window(at->second, context.fixture.doubts.level, promised, Sides::AtMost, units::Kind::Decibel),
                   units::Kind::Decibel, at->second.value);
    const auto frequency = state.figures.find("peak_frequency");
    if (frequency != state.figures.end() && frequency->second.value > context.fixture.generator.highest)
        row.doubt += joined({row.doubt.empty() ? "" : "; ", "predicted at ", hertz(std::round(frequency->second.value)),
                             ", above the fixture's frequencies"});
}

/// 20 log of a share and back.
double share(double decibels) {
    return std::pow(10, decibels / 20);
}

/// What the brief calls too much, dB, at the level that it promises; only at 20 Hz.
Promised distortionPromise(const PlanContext& context, double frequency, std::set<std::size_t>& measured) {
    Promised promised;
    const auto& asked = context.design.brief.maximumLevel.distortion;
    const auto& promises = context.design.brief.promises;
    for (std::size_t k = 0; k < promises.size(); ++k) {
        const bool level = promises[k].figure == "maximum_level_20Hz" || promises[k].figure == "headroom_20Hz";
        if (!level || !promises[k].atLeast || frequency != 20 || !promises[k].hookUp.empty()) continue;
        measured.insert(k);
        if (!asked) continue;
        promised.atMost = 20 * std::log10(*asked / 100);
        promised.words = joined({"the brief's ", units::shortest(*asked), " % at its promised level"});
    }
    return promised;
}

}  // namespace

void addResponseRows(const PlanContext& context, const BenchState& state, RowList& list) {
    for (std::size_t k = 0; k < state.bench.hookUps.size(); ++k)
        addGain(context, state, state.bench.hookUps[k], k == 0, list);
    noteProvedEdges(context, list.measured);
    for (const AtFrequency& point : state.response) {
        auto& row = list.add(TestOrder::Signal, joined({"Response at ", hertz(point.frequency), ", re 1 kHz"}),
                             "response." + units::shortest(point.frequency));
        row.hookUp = state.bench.hookUps.front().words;
        row.settings = joined({hertz(point.frequency), ", ", easyLevel(context, state)});
        row.method = "Difference of two levels; the generator's own response is taken out at the pins, unit away.";
        RowList::limit(row,
                       window(point.expected, context.fixture.doubts.level, maskAt(context, point), Sides::Both,
                              units::Kind::Decibel),
                       units::Kind::Decibel, point.expected.value);
    }
    addPeak(context, state, list);
}

void addDistortionRows(const PlanContext& context, const BenchState& state, RowList& list) {
    const auto& fixture = context.fixture;
    for (const AtFrequency& one : state.distortion) {
        auto& row = list.add(TestOrder::Signal, "Distortion at " + hertz(one.frequency),
                             "thd." + units::shortest(one.frequency));
        row.hookUp = state.bench.hookUps.front().words;
        row.settings =
            joined({hertz(one.frequency), ", ", units::write(units::Kind::LevelDbu, context.prediction.question.level),
                    " EMF; harmonics 2 to 7 over the fundamental"});
        row.method = joined({"After demagnetising. ", context.prediction.levelWords});
        const Promised promised = distortionPromise(context, one.frequency, list.measured);
        Window w = window(one.expected, fixture.doubts.distortion, promised, Sides::AtMost, units::Kind::Decibel);
        // The generator's own harmonics add to the unit's, at worst in phase.
        const double floor = fixture.generator.distortion;
        const std::optional<double> limit = w.high ? std::optional(share(*w.high)) : std::nullopt;
        const double value = share(one.expected.value);
        w.low.reset();
        if (limit) w.high = promised.atMost ? std::min(share(*promised.atMost), *limit + floor) : *limit + floor;
        RowList::limit(row, w, units::Kind::Share, std::isfinite(value) ? std::optional(value) : std::nullopt);
        constexpr double clear = 3;
        if (std::isfinite(value) && value < clear * floor)
            row.doubt += joined({row.doubt.empty() ? "" : "; ",
                                 "predicted near what generator and analyser make by "
                                 "themselves (",
                                 limitText(units::Kind::Share, floor), "): only a faulty unit shows"});
    }
}

}  // namespace shop
