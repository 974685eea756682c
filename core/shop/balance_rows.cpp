// SPDX-License-Identifier: GPL-3.0-or-later
// Rejection of what drives both legs alike, balance of the output, noise.
#include <algorithm>
#include <array>
#include <cmath>

#include "analysis/most_rejection.h"
#include "shop/plan_rows.h"
#include "units/joined.h"
#include "units/text.h"

namespace shop {

using units::joined;

namespace {

struct Rejection {
    const char* figure;
    const char* what;
    const char* settings;
    const char* method;
    bool always;  ///< also where nothing is promised
};
constexpr const char* alike =
    "Gain with the generator between the legs over gain with it on both legs alike, half of its resistance in each. "
    "The fixture on a matched resistor pair first.";
constexpr const char* unequal = "The same with 10 Ω more in one leg, then in the other; the worse counts.";
constexpr std::array rejections{
    Rejection{"rejection_1kHz", "Common-mode rejection, 1 kHz", "1 kHz, both legs alike", alike, true},
    Rejection{"rejection_20kHz", "Common-mode rejection, 20 kHz", "20 kHz, both legs alike", alike, true},
    Rejection{"rejection_10ohm_1kHz", "Rejection, 10 Ω unequal, 1 kHz", "1 kHz, both legs alike", unequal, false},
    Rejection{"rejection_10ohm_20kHz", "Rejection, 10 Ω unequal, 20 kHz", "20 kHz, both legs alike", unequal, false},
    Rejection{
        "output_balance_1kHz", "Balance of the output, 1 kHz",
        "1 kHz; output between its ends over their mean to earth",
        "Level between the output's ends over the mean of its ends to earth, two equal resistors to find the mean.",
        true}};

/// Why a rejection does not exist in this hook-up.
std::string reason(const PlanContext& context, const BenchState& state, const std::string& figure) {
    const auto& hookUp = state.bench.design.hookUps.front();
    const bool output = figure.starts_with("output_balance");
    const std::string name = output ? state.bench.observed : state.bench.driven;
    const auto* port = design::port(context.design, name);
    if (port == nullptr) return output ? "no output is observed" : "nothing is driven";
    const auto earthed = [&](const std::string& node) {
        return std::find(hookUp.earths.begin(), hookUp.earths.end(), node) != hookUp.earths.end();
    };
    for (const auto& use : hookUp.ports)
        if (use.port == name &&
            (use.earthing == design::Earthing::MinusEarthed || use.earthing == design::Earthing::PlusEarthed ||
             earthed(port->plus) || earthed(port->minus)))
            return joined({"one end of ", name, " is earthed in this hook-up"});
    return "both legs cannot be driven alike in this hook-up";
}

/// One-sided: nobody fails for rejecting too much, and what lies over what can be known is known as a least alone.
Window rejectionWindow(const PlanContext& context, const Expected& expected, const Promised& promised) {
    const double seen = context.fixture.analyser.rejection;
    Expected known = expected;
    known.value = std::min({expected.value, analysis::mostRejection, seen});
    Window w = window(known, context.fixture.doubts.rejection, promised, Sides::AtLeast, units::Kind::Decibel);
    if (expected.value >= analysis::mostRejection)
        w.origin = joined({"predicted over ", units::writeExact(units::Kind::Decibel, analysis::mostRejection),
                           ", beyond which lead-outs and foil edges rule; ", w.origin});
    if (w.low && *w.low > seen)
        w.doubt += joined({w.doubt.empty() ? "" : "; ", "the fixture shows no more than ",
                           units::write(units::Kind::Decibel, seen), ": it cannot prove this"});
    return w;
}

void addNoise(const PlanContext& context, const BenchState& state, RowList& list) {
    const auto& promises = context.design.brief.promises;
    for (std::size_t k = 0; k < promises.size(); ++k) {
        const std::string& figure = promises[k].figure;
        if (!figure.starts_with("noise_figure") && !figure.starts_with("output_noise")) continue;
        const bool ratio = figure.starts_with("noise_figure");
        auto& row = list.add(TestOrder::Signal, ratio ? "Noise figure, 1 kHz" : "Noise at the output", figure);
        row.hookUp = "As for the gain, the source's resistor in place of the generator; screened.";
        row.settings = ratio                        ? "density at 1 kHz"
                       : figure == "output_noise_A" ? "20 Hz to 20 kHz, A-weighted"
                                                    : "20 Hz to 20 kHz, flat";
        row.method = "The amplifier's own noise, measured with its input shorted, is taken off as power.";
        row.kind = ratio ? units::Kind::Decibel : units::Kind::LevelDbu;
        if (!(context.fixture.analyser.noise > 0)) {
            row.doubt =
                "the fixture has no low-noise amplifier: not measured. DC resistances and losses above make "
                "this noise";
            continue;
        }
        const auto at = state.figures.find(figure);
        const Promised promised = transferred(context, state, figure, promises[k].hookUp, list.measured);
        const Window w = at == state.figures.end()
                             ? promisedWindow(promised, context.fixture.doubts.level, row.kind)
                             : window(at->second, context.fixture.doubts.level, promised, Sides::AtMost, row.kind);
        RowList::limit(row, w, row.kind, at == state.figures.end() ? std::nullopt : std::optional(at->second.value));
    }
}

}  // namespace

void addBalanceRows(const PlanContext& context, const BenchState& state, RowList& list) {
    for (const Rejection& one : rejections) {
        const auto& promises = context.design.brief.promises;
        const bool asked = std::any_of(promises.begin(), promises.end(),
                                       [&](const auto& promise) { return promise.figure == one.figure; });
        if (!one.always && !asked) continue;
        auto& row = list.add(TestOrder::Signal, one.what, one.figure);
        row.hookUp = state.bench.hookUps.front().words;
        row.settings = one.settings;
        row.method = one.method;
        row.kind = units::Kind::Decibel;
        const auto at = state.figures.find(one.figure);
        if (at == state.figures.end()) {
            row.doubt = "not measured: " + reason(context, state, one.figure);
            continue;
        }
        const Promised promised = transferred(context, state, one.figure, "", list.measured);
        RowList::limit(row, rejectionWindow(context, at->second, promised), row.kind, at->second.value);
    }
    addNoise(context, state, list);
}

}  // namespace shop
