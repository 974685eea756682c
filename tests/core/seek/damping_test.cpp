// SPDX-License-Identifier: GPL-3.0-or-later
// The best series RC: closed form against the curves themselves, search against the closed form.
#include "seek/damping.h"

#include <gtest/gtest.h>

#include <cmath>
#include <complex>

#include "demos.h"

namespace damping_test {

/// Output of L, C with R + C_d across C; w in rad/s.
double level(double inductance, double capacitance, const seek::SeriesRC& d, double w) {
    const std::complex<double> s(0, w);
    const auto y = s * capacitance + 1.0 / (d.resistance + 1.0 / (s * d.capacitance));
    return std::abs(1.0 / (1.0 + s * inductance * y));
}
double peak(double inductance, double capacitance, const seek::SeriesRC& d) {
    const double w0 = 1 / std::sqrt(inductance * capacitance);
    double greatest = 0;
    for (double x = 0.05; x < 3; x *= 1.0005) greatest = std::max(greatest, level(inductance, capacitance, d, x * w0));
    return greatest;
}

// J. P. Den Hartog, Mechanical Vibrations (from memory): the absorber without a spring leaves a peak of 1 + 2 / mu. The
// same equation of motion: mass ratio mu for C_d / C. Any other resistance leaves more.
TEST(SeekDamping, ClosedFormLeavesTheAbsorbersPeak) {
    for (const double n : {0.5, 1.0, 2.0, 5.0}) {
        const double l = 3e-3, c = 400e-12;
        const auto best = seek::closedFormDamping(l, c, n);
        EXPECT_DOUBLE_EQ(best.capacitance, n * c);
        EXPECT_NEAR(peak(l, c, best), 1 + 2 / n, 1e-4 * (1 + 2 / n));
        for (const double off : {0.9, 1.1})
            EXPECT_GT(peak(l, c, {best.resistance * off, best.capacitance}), (1 + 2 / n) * 1.0005);
        // Its damping in the form the book gives: c / (2 m w0) = 1 / sqrt(2 (1 + mu) (2 + mu)), m the absorber's mass.
        const double w0 = 1 / std::sqrt(l * c);
        EXPECT_NEAR(1 / (2 * best.resistance * best.capacitance * w0), 1 / std::sqrt(2 * (1 + n) * (2 + n)), 1e-12);
    }
}

TEST(SeekDamping, SearchFindsTheClosedFormFromAfar) {
    const double l = 3e-3, c = 400e-12;
    for (const double n : {0.7, 2.0}) {
        const auto best = seek::closedFormDamping(l, c, n);
        const auto found = seek::leastDeviation([&](const seek::SeriesRC& d) { return peak(l, c, d); },
                                                {best.resistance * 5, best.capacitance}, true);
        EXPECT_NEAR(found.resistance / best.resistance, 1, 0.02);
        EXPECT_DOUBLE_EQ(found.capacitance, best.capacitance);
    }
}

TEST(SeekDamping, TamesTheLineUnitAndTheFullAnswerSaysSo) {
    design::Design d = *demos::design("line-unit");
    d.hookUps.resize(1);
    for (auto& use : d.hookUps.front().ports)  // as if nothing were fitted yet
        if (use.role == design::Role::Observe) use.across.erase(use.across.begin());
    const auto found = seek::damping(d, demos::shop(), "", seek::DampingAim::Flat);
    ASSERT_TRUE(found.resonant);
    EXPECT_LT(found.deviationAfter, 0.5 * found.deviationBefore);
    const auto damped = seek::withDamping(d, found.hookUp, found.branch);
    const auto answer = analysis::answer(*damped, demos::shop());
    const auto* figure = answer->figure("peak_level");
    ASSERT_NE(figure, nullptr);
    if (std::isfinite(figure->value)) {
        EXPECT_NEAR(figure->value, found.peakAfter, 0.1);
    }
    const auto* high = answer->figure("high_3dB_first");
    ASSERT_NE(high, nullptr);
    EXPECT_NEAR(high->value / found.highAfter, 1, 0.02);
    // Neither more nor less of either is flatter.
    for (const double more : {0.7, 1.4}) {
        seek::SeriesRC other = found.branch;
        other.resistance *= more;
        const auto once = analysis::answer(*seek::withDamping(d, found.hookUp, other), demos::shop());
        const auto* trace = once->trace("response");
        ASSERT_NE(trace, nullptr);
        double at1k = 0, worst = 0;
        for (std::size_t k = 0; k < trace->frequency.size(); ++k)
            if (trace->frequency[k] <= 1000) at1k = trace->curves.front().y[k];
        for (std::size_t k = 0; k < trace->frequency.size(); ++k)
            if (trace->frequency[k] > 1000 && trace->frequency[k] <= found.resonance)
                worst = std::max(worst, std::abs(trace->curves.front().y[k] - at1k));
        EXPECT_GT(worst, found.deviationAfter - 0.02);
    }
}

}  // namespace damping_test
