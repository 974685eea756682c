// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/test_window.h"

#include <algorithm>
#include <cmath>

#include "units/joined.h"
#include "units/text.h"

namespace shop {

using units::joined;

namespace {

constexpr double leastRatio = 2;  // of an expected half width to the instrument's

void add(std::string& words, const std::string& more) {
    words += (words.empty() ? "" : "; ") + more;
}

std::string text(units::Kind kind, double value) {
    return units::write(kind, value, 4);
}

/// What is expected, with its half width to either side.
struct Span {
    double low = 0, high = 0;
};
Span spanOf(const Expected& e) {
    const double width = std::hypot(e.model, e.tolerance);
    if (!e.relative) return {e.value - width, e.value + width};
    return {e.value / (1 + width), e.value * (1 + width)};
}

std::string expectedWords(const Expected& e, double instrument, units::Kind kind) {
    return joined({"predicted ", text(kind, e.value), ": model ", widthWords(e.model, e.relative, kind),
                   ", 99 % of units ", widthWords(e.tolerance, e.relative, kind), ", guard band ",
                   widthWords(instrument, false, kind)});
}

/// What is left where the promise's own limits, drawn in, are `least` and `most`.
void reconcile(Window& w, const std::optional<double>& least, const std::optional<double>& most, double instrument,
               bool room) {
    if (!w.low || !w.high) return;
    if (*w.low > *w.high) {
        // What is predicted lies beyond what is promised: the promise rules.
        w.low = least;
        w.high = most;
        add(w.doubt, "the design is predicted to break this promise: the limits are the promise alone");
    } else if (room && *w.high - *w.low < 2 * instrument) {
        // What is predicted lies within a guard band of the promise: it alone is told, no narrower than can be told.
        if (w.low == least && w.high != most) w.high = std::min(*w.low + 2 * instrument, most.value_or(1e300));
        if (w.high == most && w.low != least) w.low = std::max(*w.high - 2 * instrument, least.value_or(-1e300));
        add(w.doubt, "predicted within a guard band of the promise");
    }
}

void takePromise(Window& w, const Promised& promised, double instrument, units::Kind kind) {
    if (!promised.atLeast && !promised.atMost) return;
    add(w.origin, promised.words);
    std::optional<double> least = promised.atLeast, most = promised.atMost;
    const bool room = !least || !most || *most - *least > 2 * instrument;
    if (room) {
        if (least) *least += instrument;
        if (most) *most -= instrument;
    } else {
        w.needed = (*most - *least) / (2 * leastRatio);
        add(w.doubt, joined({"the promise is narrower than twice the guard band: this instrument cannot judge it, one "
                             "with ",
                             widthWords(*w.needed, false, kind), " could"}));
    }
    const std::optional<double> low = w.low, high = w.high;
    if (least && (!low || *least > *low)) w.low = least;
    if (most && (!high || *most < *high)) w.high = most;
    reconcile(w, least, most, instrument, room);
}

}  // namespace

std::string widthWords(double width, bool relative, units::Kind kind) {
    if (relative) return joined({"±", units::significant(100 * width, 2), " %"});
    const bool level = kind == units::Kind::Decibel || kind == units::Kind::LevelDbu;
    return joined({"±", level ? units::significant(width, 2) + " dB" : units::write(kind, width, 2)});
}

Window window(const Expected& expected, double instrument, const Promised& promised, Sides sides, units::Kind kind) {
    if (!std::isfinite(expected.value) || !std::isfinite(expected.model) || !std::isfinite(expected.tolerance))
        return promisedWindow(promised, instrument, kind);
    Window w;
    w.origin = expectedWords(expected, instrument, kind);
    Span span = spanOf(expected);
    const double half = std::min(expected.value - span.low, span.high - expected.value);
    if (half < leastRatio * instrument) {
        w.needed = half / leastRatio;
        span.low = std::min(span.low, expected.value - leastRatio * instrument);
        span.high = std::max(span.high, expected.value + leastRatio * instrument);
        w.doubt =
            joined({"the instrument cannot judge by tolerance here: units differ by less than it can tell, so "
                    "the limits are its own least width; ",
                    widthWords(*w.needed, false, kind), " would be needed"});
    }
    if (sides != Sides::AtMost) w.low = span.low + instrument;
    if (sides != Sides::AtLeast) w.high = span.high - instrument;
    takePromise(w, promised, instrument, kind);
    return w;
}

Window promisedWindow(const Promised& promised, double instrument, units::Kind kind) {
    Window w;
    takePromise(w, promised, instrument, kind);
    if (!w.low && !w.high) w.doubt = "nothing is predicted here";
    return w;
}

}  // namespace shop
