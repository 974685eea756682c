// SPDX-License-Identifier: GPL-3.0-or-later
// Windings on both legs: in series and parallel, aiding and against each other.
#include <gtest/gtest.h>

#include <cmath>

#include "analysis/answer.h"
#include "small_figure.h"

namespace two_leg_coils_test {

using small::validFigure;

/// Each leg carries `first` inside and, over film, `second` if it is given.
design::Design legs(const std::vector<design::Section>& first, const std::vector<design::Section>& second) {
    auto d = small::transformer();
    d.core.kind = design::CoreKind::TwoLeg;
    d.coil = {design::Place{}, design::Place{}};
    d.coil[1].leg = 2;
    for (const std::size_t leg : {0U, 1U}) {
        d.coil[leg].order = {{first[leg]}};
        if (second.empty()) continue;
        d.coil[leg].order.push_back({small::barrier(1e-4)});
        d.coil[leg].order.push_back({second[leg]});
    }
    return d;
}

design::Section half(const char* winding, const char* name, bool reversed = false) {
    auto s = small::sectionOf(winding, name, 188);
    s.reversed = reversed;
    return s;
}

TEST(TwoLegCoils, HalvesOnBothLegsLeakFarLessThanAWindingOnEach) {
    const auto shared = legs({half("P", "a"), half("P", "b")}, {half("S", "a"), half("S", "b")});
    const auto apart = legs({small::sectionOf("P", "a", 376), small::sectionOf("S", "a", 376)}, {});
    EXPECT_GT(validFigure(apart, "leakage_10kHz.P.S"), 20 * validFigure(shared, "leakage_10kHz.P.S"));
    // The same turns on the same core: the main inductance does not mind where they stand.
    const double l = validFigure(shared, "inductance_10Hz.P");
    EXPECT_NEAR(validFigure(apart, "inductance_10Hz.P"), l, 0.01 * l);
}

TEST(TwoLegCoils, AReversedHalfCancelsTheMainFlux) {
    const auto aiding = legs({half("P", "a"), half("P", "b")}, {half("S", "a"), half("S", "b")});
    const auto against = legs({half("P", "a"), half("P", "b", true)}, {half("S", "a"), half("S", "b")});
    const double whole = validFigure(aiding, "inductance_10Hz.P"), left = validFigure(against, "inductance_10Hz.P");
    EXPECT_LT(left, 0.02 * whole);  // leg against leg through the air
    EXPECT_GT(left, 1e-5 * whole);
}

TEST(TwoLegCoils, HalvesInParallelAreAQuarterOfThoseInSeries) {
    auto series = legs({half("P", "a"), half("P", "b")}, {half("S", "a"), half("S", "b")});
    auto parallel = series;
    parallel.windings[0].connection = design::Connection::Parallel;
    const double l = validFigure(series, "inductance_10Hz.P");
    EXPECT_NEAR(validFigure(parallel, "inductance_10Hz.P"), l / 4, 1e-3 * l);
    const double leakage = validFigure(series, "leakage_10kHz.P.S");
    EXPECT_NEAR(validFigure(parallel, "leakage_10kHz.P.S"), leakage / 4, 0.02 * leakage);
}

}  // namespace two_leg_coils_test
