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

constexpr double ratioFrequency = 1000;  // Hz

/// What coupling may take from the ratio of turns, as a share: leakage over inductance of the driven winding.
double couplingShare(const BenchState& state, const std::string& from, const std::string& to) {
    const auto leakage = state.figures.find(joined({"leakage_10kHz.", from, ".", to}));
    const auto inductance = state.figures.find("inductance_1kHz." + from);
    if (leakage == state.figures.end() || inductance == state.figures.end() || !(inductance->second.value > 0))
        return 0;
    return std::abs(leakage->second.value) * (1 + leakage->second.model) /
           (inductance->second.value / (1 + inductance->second.model));
}

/// Of one winding: the least whole number of turns whose loss or gain the reading shows, and what that is as a share.
struct Miscount {
    double turns = 1, share = 0;
};
Miscount miscountOf(double turns, double doubt) {
    // A reading off by half of the miscount is told from none if its doubt is no more than that half.
    const double least = std::max(1.0, std::ceil(2 * doubt * turns - 1e-9));
    return {least, least / turns};
}

void limitRatio(const PlanContext& context, const BenchState& state, const design::Winding& first,
                const design::Winding& other, PlanRow& row) {
    const double a = design::conductorTurns(context.design, first), b = design::conductorTurns(context.design, other);
    const double ratio =
        std::abs(design::seriesTurns(context.design, other) / design::seriesTurns(context.design, first));
    const double coupling = couplingShare(state, first.name, other.name);
    const double instrument = context.fixture.doubts.ratio.at(ratio) / ratio;
    const double doubt = instrument + coupling;
    const Miscount one = miscountOf(a, doubt), two = miscountOf(b, doubt);
    const double share = std::min(one.share, two.share);
    // Half a miscount to either side, less the guard band, and never past what coupling alone does.
    const double half = std::max(share / 2 - instrument, coupling);
    Window w;
    w.low = ratio * (1 - half);
    w.high = ratio * (1 + half);
    w.origin = joined({"turns ratio ", units::write(units::Kind::Number, ratio, 5),
                       "; half of the least miscount that "
                       "shows, ±",
                       units::significant(50 * share, 2), " %, guard band ±", units::significant(100 * instrument, 2),
                       " %; coupling takes at most ", units::significant(100 * coupling, 2), " %"});
    const auto tell = [&](const design::Winding& w1, const Miscount& m) {
        return joined({context.winding(w1.name), ": from ", counted(m.turns, "turn")});
    };
    row.method += joined({" A miscount shows in ", tell(first, one), ", ", tell(other, two), "."});
    if (std::max(one.turns, two.turns) > 1) {
        const double most = std::max(a, b);
        w.needed = std::max(0.0, 0.5 / most - coupling) * ratio;
        w.doubt =
            joined({"cannot tell a miscount of one turn in ", one.turns > 1 ? context.winding(first.name) : "",
                    one.turns > 1 && two.turns > 1 ? " nor in " : "", two.turns > 1 ? context.winding(other.name) : "",
                    "; a ratio meter of ±", units::significant(100 * *w.needed / ratio, 2), " % could"});
        if (!(*w.needed > 0)) {
            w.needed.reset();
            w.doubt += ": none does, coupling alone is wider";
        }
    }
    RowList::limit(row, w, units::Kind::Number, ratio);
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
        row.settings = state != nullptr ? joined({units::writeExact(units::Kind::Frequency, ratioFrequency), ", 1 V"})
                                        : "10 kHz, 1 V";
        row.method = joined({"Voltages of the two starts against their finishes are ",
                             same ? "in phase" : "in opposite phase", ", or the section is wound the wrong way."});
        if (state != nullptr) {
            limitRatio(context, *state, first, other, row);
        } else {
            row.method += " Without its core the coil couples weakly: only the sign counts.";
            row.doubt = "turns cannot be told before the core is in";
        }
    }
    addTaps(context, list, state != nullptr);
}

}  // namespace shop
