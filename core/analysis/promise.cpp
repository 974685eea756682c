// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/promise.h"

#include <algorithm>
#include <cmath>

#include "analysis/between.h"
#include "analysis/most_rejection.h"
#include "units/text.h"

namespace analysis {

std::string_view word(Standing standing) noexcept {
    switch (standing) {
        case Standing::Kept:
            return "kept";
        case Standing::Thin:
            return "thin";
        case Standing::Broken:
            return "broken";
        case Standing::Unknown:
            break;
    }
    return "not computed";
}

namespace {}  // namespace

double marginShare(units::Kind kind, double margin, double limit) noexcept {
    return units::inDecibels(kind) || limit == 0 ? margin : margin / std::abs(limit);
}

double thinBelow(units::Kind kind) noexcept {
    return units::inDecibels(kind) ? 0.5 : 0.1;
}

namespace {

void judge(PromiseState& state) {
    state.marginShare = marginShare(state.kind, state.margin, state.limit);
    state.standing = state.margin < 0                            ? Standing::Broken
                     : state.marginShare < thinBelow(state.kind) ? Standing::Thin
                                                                 : Standing::Kept;
}

std::string figureName(const design::Promise& promise, const design::Design& design, const Answer& answer) {
    std::string name = promise.figure;
    if (!promise.port.empty()) name += "." + promise.port;
    const std::string hookUp = promise.hookUp.empty() ? design.hookUps.front().name : promise.hookUp;
    return hookUp == answer.hookUp ? name : name + "@" + hookUp;
}

std::string textOf(const design::Promise& promise, units::Kind kind) {
    std::string text = promise.figure + (promise.port.empty() ? "" : " at " + promise.port) +
                       (promise.hookUp.empty() ? "" : " (" + promise.hookUp + ")") + ":";
    if (promise.atLeast) text += " at least " + units::write(kind, *promise.atLeast);
    if (promise.atLeast && promise.atMost) text += " and";
    if (promise.atMost) text += " at most " + units::write(kind, *promise.atMost);
    return text;
}

/// A band edge that lies beyond the computed band keeps a limit inside it; a response without a peak has none too high.
bool keptWithoutValue(const design::Promise& promise) {
    if (promise.figure == "low_3dB" || promise.figure == "peak_level") return promise.atMost.has_value();
    return promise.figure.starts_with("high_3dB") && promise.atLeast.has_value();
}

const char* const judgedAtMost = "judged at 80 dB";

void addWhy(PromiseState& state, const std::string& words) {
    if (!state.why.ends_with(words)) state.why += (state.why.empty() ? "" : "; ") + words;
}

PromiseState stateOf(const design::Promise& promise, int index, const design::Design& design, const Answer& answer) {
    PromiseState state;
    state.index = index;
    state.figure = figureName(promise, design, answer);
    const auto* figure = answer.figure(state.figure);
    if (figure == nullptr) figure = answer.figure(promise.figure);
    state.kind = figure != nullptr ? units::kindOfUnit(figure->unit) : units::Kind::Number;
    state.text = textOf(promise, state.kind);
    if (figure == nullptr) {
        state.why = "no such figure";
        return state;
    }
    state.why = figure->why;
    if (!std::isfinite(figure->value)) {
        state.standing = keptWithoutValue(promise) ? Standing::Kept : Standing::Unknown;
        return state;
    }
    state.now = figure->value;
    state.margin = 1e300;
    if (promise.atLeast) {
        // No promise rests on more rejection than can be known.
        const bool beyond80 = isRejection(promise.figure) && *promise.atLeast > mostRejection;
        state.limit = beyond80 ? mostRejection : *promise.atLeast;
        state.margin = state.now - state.limit;
        if (beyond80) addWhy(state, judgedAtMost);
    }
    if (promise.atMost && *promise.atMost - state.now < state.margin) {
        state.limit = *promise.atMost;
        state.margin = *promise.atMost - state.now;
    }
    judge(state);
    return state;
}

/// Takes over value, limit and place of the mask at f if that is tighter than what `state` has.
void tighten(PromiseState& state, const design::Mask& mask, double f, double now) {
    for (const bool low : {true, false}) {
        auto limit = maskLimit(mask, f, low);
        if (!limit) continue;
        if (low && mask.trace == "balance" && *limit > mostRejection) {
            limit = mostRejection;
            addWhy(state, judgedAtMost);
        }
        const double margin = low ? now - *limit : *limit - now;
        if (margin >= state.margin) continue;
        state.margin = margin;
        state.now = now;
        state.limit = *limit;
        state.frequency = f;
    }
}

PromiseState stateOf(const design::Mask& mask, int index, const Answer& answer) {
    PromiseState state;
    state.index = index;
    state.mask = true;
    state.figure = mask.trace;
    state.text = "mask on " + mask.trace + (mask.hookUp.empty() ? "" : " (" + mask.hookUp + ")");
    const auto* trace = answer.trace(mask.trace);
    if (trace == nullptr || (!mask.hookUp.empty() && mask.hookUp != trace->hookUp)) {
        state.why = "choose its hook-up to see it";
        return state;
    }
    const auto& curve = trace->curves.front();
    state.kind = curve.kind;
    state.why = trace->why;
    const auto reference =
        mask.trace == "response" ? between(trace->frequency, curve.y, 1000) : std::optional<double>(0);
    if (!reference) return state;
    state.margin = 1e300;
    for (std::size_t k = 0; k < trace->frequency.size(); ++k)
        tighten(state, mask, trace->frequency[k], curve.y[k] - *reference);
    if (state.margin < 1e300) judge(state);
    return state;
}

int urgency(Standing standing) {
    switch (standing) {
        case Standing::Broken:
            return 0;
        case Standing::Thin:
            return 1;
        case Standing::Unknown:
            return 2;
        case Standing::Kept:
            break;
    }
    return 3;
}

}  // namespace

std::optional<double> maskLimit(const design::Mask& mask, double f, bool low) {
    for (std::size_t k = 1; k < mask.points.size(); ++k) {
        const auto &a = mask.points[k - 1], &b = mask.points[k];
        if (f < a.frequency || f > b.frequency) continue;
        const auto &from = low ? a.low : a.high, &to = low ? b.low : b.high;
        if (!from || !to) return {};
        return *from + (*to - *from) * std::log(f / a.frequency) / std::log(b.frequency / a.frequency);
    }
    return {};
}

std::vector<PromiseState> statesInOrder(const design::Design& design, const Answer& answer) {
    std::vector<PromiseState> states;
    states.reserve(design.brief.promises.size() + design.brief.masks.size());
    for (std::size_t k = 0; k < design.brief.promises.size(); ++k)
        states.push_back(stateOf(design.brief.promises[k], static_cast<int>(k), design, answer));
    for (std::size_t k = 0; k < design.brief.masks.size(); ++k)
        states.push_back(stateOf(design.brief.masks[k], static_cast<int>(k), answer));
    return states;
}

std::vector<PromiseState> promiseStates(const design::Design& design, const Answer& answer) {
    auto states = statesInOrder(design, answer);
    std::stable_sort(states.begin(), states.end(),
                     [](const auto& a, const auto& b) { return urgency(a.standing) < urgency(b.standing); });
    return states;
}

}  // namespace analysis
