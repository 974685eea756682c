// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <memory>

#include "shop/bench_prediction.h"
#include "shop/curve_value.h"

namespace shop {

namespace {

constexpr double distortionModel = 6;  // dB, as `analysis::distortionTable` says

/// A figure's model doubt. Of a resistance it is the turn lengths' alone: the wire's own tolerance is in the spread.
double modelOf(const analysis::Answer& answer, const units::Figure& figure) {
    if (!figure.name.starts_with("dcr.")) return figure.uncertainty;
    const auto* length = answer.figure("wire_length" + figure.name.substr(3));
    return length != nullptr ? length->uncertainty : figure.uncertainty;
}

Expected expectedOf(const analysis::Answer& answer, const units::Figure& figure, const BenchSpread& spread) {
    Expected e;
    e.value = figure.value;
    e.model = modelOf(answer, figure);
    e.relative = !units::inDecibels(figure.unit);
    const auto width = spread.figures.find(figure.name);
    e.tolerance = width == spread.figures.end() ? 0 : width->second;
    if (e.relative && e.value != 0) e.tolerance /= std::abs(e.value);
    return e;
}

/// Relative doubt of the band edge nearer to f.
double edgeDoubt(const analysis::Answer& answer, double f) {
    const auto* figure = answer.figure(f < 1000 ? "low_3dB" : "high_3dB_first");
    return figure != nullptr ? figure->uncertainty : 0;
}

std::vector<AtFrequency> responseOf(const analysis::Answer& answer, const BenchSpread& spread,
                                    const std::vector<double>& frequencies) {
    std::vector<AtFrequency> all;
    const auto* trace = answer.trace("response");
    if (trace == nullptr || trace->curves.empty()) return all;
    const auto level = [&](double f) { return valueAt(*trace, trace->curves.front(), f); };
    all.reserve(frequencies.size());
    for (std::size_t k = 0; k < frequencies.size(); ++k) {
        const double f = frequencies[k], here = level(f), doubt = edgeDoubt(answer, f);
        double model = 0;
        for (const double moved : {f * (1 + doubt), f / (1 + doubt)})
            if (const double there = level(moved); std::isfinite(there))
                model = std::max(model, std::abs(there - here));
        all.push_back({f, {here - level(1000), model, spread.response[k], false}});
    }
    return all;
}

/// Frequency at which the impedance turns from inductive to capacitive, above 100 Hz; not a number if it does not.
double resonanceOf(const analysis::Trace& trace) {
    const auto* angle = trace.curve("source_side_deg");
    if (angle == nullptr) return std::nan("");
    for (std::size_t k = 1; k < trace.frequency.size(); ++k) {
        const double before = angle->y[k - 1], after = angle->y[k];
        if (trace.frequency[k] < 100 || !(before > 0) || !(after <= 0)) continue;
        const double share = before / (before - after);
        return trace.frequency[k - 1] * std::pow(trace.frequency[k] / trace.frequency[k - 1], share);
    }
    return std::nan("");
}

/// The widths of the root of an inductance times a capacitance: half of theirs.
std::optional<Expected> resonanceExpected(const BenchState& state, double value) {
    const auto find = [&](const std::string& stem) -> const Expected* {
        for (const auto& [name, expected] : state.figures)
            if (name.starts_with(stem) && name.find('@') == std::string::npos) return &expected;
        return nullptr;
    };
    const Expected* inductance = find("inductance_1kHz.");
    const Expected* capacitance = find("input_capacitance." + state.bench.driven);
    if (!std::isfinite(value) || inductance == nullptr || capacitance == nullptr) return {};
    return Expected{value, std::hypot(inductance->model, capacitance->model) / 2,
                    std::hypot(inductance->tolerance, capacitance->tolerance) / 2, true};
}

}  // namespace

HookUpAnswer hookUpAnswer(const design::Design& design, const design::HookUp& hookUp, const catalog::Catalog& shop,
                          const analysis::AnswerPtr& previous, const std::vector<double>& frequencies) {
    HookUpAnswer one{design, {}};
    one.design.hookUps = {design.hookUps.front()};
    if (hookUp.name != design.hookUps.front().name) one.design.hookUps.push_back(hookUp);
    // Slow traces are left to a previous answer that shows a hook-up of this name.
    auto shown = std::make_shared<analysis::Answer>(*previous);
    shown->hookUp = hookUp.name;
    analysis::Question question;
    question.hookUp = hookUp.name;
    question.frequencies = frequencies;
    question.everyHookUp = false;
    question.quick = true;
    one.answer = analysis::answer(one.design, shop, shown, {}, question);
    return one;
}

std::string figureSuffix(const design::Design& bench, std::size_t hookUp) {
    return hookUp == 0 ? "" : "@" + bench.hookUps[hookUp].name;
}

BenchState benchState(Bench bench, const catalog::Catalog& shop, const BenchSpread& spread,
                      const BenchQuestion& question, const analysis::AnswerPtr& previous) {
    BenchState state;
    state.bench = std::move(bench);
    const design::Design& design = state.bench.design;
    const HookUpAnswer first = hookUpAnswer(design, design.hookUps.front(), shop, previous);
    auto merged = std::make_shared<analysis::Answer>(*first.answer);
    for (std::size_t k = 1; k < design.hookUps.size(); ++k) {
        const auto other = hookUpAnswer(design, design.hookUps[k], shop, first.answer, {1000}).answer;
        for (units::Figure figure : other->figures)
            if (figure.hookUp == other->hookUp) {
                figure.name += figureSuffix(design, k);
                merged->figures.push_back(std::move(figure));
            }
    }
    state.answer = merged;
    for (const auto& figure : merged->figures)
        if (std::isfinite(figure.value)) state.figures[figure.name] = expectedOf(*merged, figure, spread);
    state.response = responseOf(*merged, spread, question.response);
    const auto rows = analysis::distortionTable(first.design, *first.answer, question.distortion, {question.level});
    for (std::size_t k = 0; k < rows.size(); ++k)
        state.distortion.push_back(
            {rows[k].frequency, {20 * std::log10(rows[k].thd), distortionModel, spread.distortion[k], false}});
    state.ratios = ratioReadings(state, shop);
    if (state.bench.open.ports.empty()) return state;
    const auto measured = hookUpAnswer(design, state.bench.open, shop, first.answer);
    if (const auto* trace = measured.answer->trace("impedance"))
        state.resonance = resonanceExpected(state, resonanceOf(*trace));
    return state;
}

}  // namespace shop
