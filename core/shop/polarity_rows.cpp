// SPDX-License-Identifier: GPL-3.0-or-later
// Polarity and ratio, and from how many turns on a miscount shows.
#include <algorithm>
#include <cmath>

#include "shop/plan_rows.h"
#include "shop/sheet_words.h"
#include "units/joined.h"
#include "units/text.h"

namespace shop {

using units::joined;

namespace {

/// Of one winding: the least whole number of turns whose loss or gain the reading shows, and what that is as a share.
struct Miscount {
    double turns = 1, share = 0;
};
Miscount miscountOf(double turns, double doubt) {
    // A reading off by half of the miscount is told from none if its doubt is no more than that half.
    const double least = std::max(1.0, std::ceil(2 * doubt * turns - 1e-9));
    return {least, least / turns};
}

/// In which of the windings a single turn does not show, in words.
std::string hiddenWords(const std::string& first, bool inFirst, const std::string& other, bool inOther) {
    if (inFirst && inOther) return joined({first, " nor in ", other});
    return inFirst ? first : other;
}

void limitRatio(const PlanContext& context, const RatioReading& reading, const design::Winding& first,
                const design::Winding& other, PlanRow& row) {
    const double a = design::conductorTurns(context.design, first), b = design::conductorTurns(context.design, other);
    const double instrument = context.fixture.doubts.ratio.at(reading.value) / reading.value;
    const Miscount one = miscountOf(a, instrument + reading.doubt), two = miscountOf(b, instrument + reading.doubt);
    const double share = std::min(one.share, two.share);
    // Half a miscount to either side, less the guard band.
    const double half = share / 2 - instrument;
    Window w;
    w.low = reading.value * (1 - half);
    w.high = reading.value * (1 + half);
    w.origin =
        joined({"turns ratio ", units::write(units::Kind::Number, reading.turns, 5), ", read as ",
                units::write(units::Kind::Number, reading.value, 5), " for what coupling and capacitance take (±",
                units::significant(100 * reading.doubt, 2), " %); half of the least miscount that shows ±",
                units::significant(50 * share, 2), " %, guard band ±", units::significant(100 * instrument, 2), " %"});
    row.method += joined({" A miscount shows in ", context.winding(first.name), " from ", counted(one.turns, "turn"),
                          ", in ", context.winding(other.name), " from ", counted(two.turns, "turn"), "."});
    if (one.turns > 1 || two.turns > 1) {
        const double needed = 0.5 / std::max(a, b) - reading.doubt;
        w.doubt = "cannot tell a miscount of one turn in " +
                  hiddenWords(context.winding(first.name), one.turns > 1, context.winding(other.name), two.turns > 1);
        if (needed > 0) {
            w.needed = needed * reading.value;
            w.doubt += joined({"; a ratio meter of ±", units::significant(100 * needed, 2), " % could"});
        } else {
            w.doubt += ", and no ratio meter can: what coupling takes is not known that well";
        }
    }
    RowList::limit(row, w, units::Kind::Number, reading.value);
}

void addTaps(const PlanContext& context, RowList& list, bool laminated) {
    for (const auto& winding : context.design.windings)
        for (const Piece& piece : piecesOf(context.design, winding))
            for (const SchematicTap& tap : piece.taps) {
                auto& row =
                    list.add(TestOrder::Polarity, joined({"Tap ", tap.terminal, " of ", context.winding(winding.name)}),
                             joined({"tap.", winding.name, ".", tap.terminal}));
                row.hookUp = joined({"Drive ", piece.start, " to ", piece.finish, "; read ", piece.start, " to ",
                                     tap.terminal, "; everything else open."});
                row.settings = "1 kHz, 1 V";
                row.method = "Share of the whole voltage. On the coil alone it only tells that the tap is there.";
                row.kind = units::Kind::Number;
                row.expected = tap.share;
                if (!laminated) continue;
                const double turns = design::conductorTurns(context.design, winding);
                const double instrument = context.fixture.doubts.ratio.at(tap.share);
                const double half = std::max(0.5 / turns, 2 * instrument) - instrument;
                row.low = tap.share - half;
                row.high = tap.share + half;
                row.origin = "turns; half a turn to either side, less the guard band";
                if (0.5 / turns < 2 * instrument) row.doubt = "cannot tell a miscount of one turn";
            }
}

}  // namespace

void addPolarityRows(const PlanContext& context, const BenchState* state, RowList& list) {
    const auto& windings = context.design.windings;
    const auto& first = windings.front();
    for (std::size_t k = 1; k < windings.size(); ++k) {
        const auto& other = windings[k];
        const bool same =
            (design::seriesTurns(context.design, first) < 0) == (design::seriesTurns(context.design, other) < 0);
        auto& row = list.add(TestOrder::Polarity,
                             joined({state != nullptr ? "Polarity and ratio, " : "Polarity, ",
                                     context.winding(first.name), " to ", context.winding(other.name)}),
                             joined({"ratio.", first.name, ".", other.name}));
        row.hookUp = joined({"Drive ", context.terminals(first), " (", context.ends(first), "); read ",
                             context.terminals(other), "; everything else open."});
        const RatioReading* reading = nullptr;
        if (state != nullptr)
            if (const auto at = state->ratios.find(other.name); at != state->ratios.end()) reading = &at->second;
        row.settings = reading != nullptr ? units::writeExact(units::Kind::Frequency, reading->frequency) + ", 1 V"
                                          : "10 kHz, 1 V";
        row.method = joined({"Voltages of the two starts against their finishes are ",
                             same ? "in phase" : "in opposite phase", ", or the section is wound the wrong way."});
        if (reading != nullptr) {
            limitRatio(context, *reading, first, other, row);
        } else if (state != nullptr) {
            row.doubt = "the ratio is not predicted: only the sign counts";
        } else {
            row.method += " Without its core the coil couples weakly: only the sign counts.";
            row.doubt = "turns cannot be told before the core is in";
        }
    }
    addTaps(context, list, state != nullptr);
}

}  // namespace shop
