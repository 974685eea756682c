// SPDX-License-Identifier: GPL-3.0-or-later
// Bands of traces against closed forms, against units computed in full, and in the limit of nothing that varies.
#include "spread/bands.h"

#include <gtest/gtest.h>

#include <atomic>
#include <cmath>

#include "analysis/between.h"
#include "promising.h"
#include "spread/intervals.h"

namespace bands_test {

analysis::AnswerPtr nominalOf(const spread::Study& study) {
    return analysis::answer(*study.variation().base, shop());
}
const spread::TraceBand& named(const std::vector<spread::TraceBand>& all, const std::string& name) {
    for (const auto& band : all)
        if (band.trace == name) return band;
    throw std::runtime_error("no band of " + name);
}
double at(const spread::TraceBand& band, const std::vector<double>& y, double f) {
    return analysis::between(band.at, y, f).value_or(std::nan(""));
}

TEST(Bands, WhereNothingVariesTheyAreTheCurve) {
    const spread::Study study(promising(), shop(), {}, planOf(8, {}));
    const auto nominal = nominalOf(study);
    const auto bands = spread::bands(study, shop(), *nominal, {"response", "impedance", "step"}, 8);
    ASSERT_EQ(bands.size(), 3U);
    for (const auto& band : bands) {
        EXPECT_EQ(band.hookUp, "normal");
        for (const auto& curve : band.curves)
            for (std::size_t k = 0; k < band.at.size(); ++k)
                if (std::isfinite(curve.low[k])) {
                    EXPECT_EQ(curve.low[k], curve.high[k]) << band.trace << " " << curve.curve;
                }
    }
    const auto& response = named(bands, "response");
    const auto* curve = nominal->trace("response")->curve("magnitude_dB");
    for (const double f : {30.0, 1000.0, 50e3})
        EXPECT_NEAR(at(response, response.curves.front().middle, f),
                    analysis::between(nominal->trace("response")->frequency, curve->y, f).value_or(0), 0.02);
}

/// The load R varies uniformly by +-1 % alone. By Thevenin's theorem the output is V0 R / (R + Z), and in the middle of
/// the band Z is a resistance: two answers, with R and with ten times R, give V0 and Z. The level falls with falling R,
/// so its 5 % quantile is the level at R (1 - 0.9 %).
TEST(Bands, OfOneUniformResistorAreItsQuantiles) {
    const auto d = promising();
    const catalog::Tolerances load{{"load_impedance", usual().at("load_impedance")}};
    const spread::Study study(d, shop(), load, planOf(256, {}));
    ASSERT_EQ(study.variation().all.size(), 1U);
    const auto nominal = nominalOf(study);
    const auto bands = spread::bands(study, shop(), *nominal, {"response"}, 256);
    const auto& band = named(bands, "response");
    const auto& curve = band.curves.front();
    constexpr double f = 1000, r = 10000;
    const auto voltageWith = [&](double resistance) {
        auto other = d;
        for (auto& use : other.hookUps.front().ports)
            if (use.role == design::Role::Observe) use.through->resistance = resistance;
        const auto answer = analysis::answer(other, shop());
        const auto* trace = answer->trace("response");
        return std::pow(10, analysis::between(trace->frequency, trace->curve("magnitude_dB")->y, f).value_or(0) / 20);
    };
    const double loaded = voltageWith(r), open = voltageWith(10 * r);
    const double z = r * (1 - loaded / open) / (loaded / open - 0.1);
    const auto moved = [&](double by) {
        const double other = r * (1 + by);
        return 20 * std::log10(loaded * (other / (other + z)) * (r + z) / r);
    };
    constexpr double uneven = 0.02;  // of the 256 even points, as a share of the width
    const double width = moved(0.009) - moved(-0.009);
    ASSERT_GT(width, 1e-3);
    EXPECT_NEAR(at(band, curve.low, f), moved(-0.009), uneven * width);
    EXPECT_NEAR(at(band, curve.high, f), moved(0.009), uneven * width);
}

TEST(Bands, AreOfTheRunsOwnUnits) {
    constexpr std::uint64_t units = 12;
    const spread::Study study(promising(), shop(), usual(), planOf(units, {}));
    const auto nominal = nominalOf(study);
    std::atomic<std::uint64_t> told = 0;
    const auto bands = spread::bands(study, shop(), *nominal, {"response", "no such trace"}, 1000, {},
                                     [&](std::uint64_t done) { told = std::max(told.load(), done); });
    EXPECT_EQ(told, units);  // no more than the run has
    ASSERT_EQ(bands.size(), 1U);
    const auto& band = bands.front();
    const std::size_t place = band.at.size() / 2;
    spread::UnitDesign unit(study.variation());
    std::vector<double> levels;
    for (std::uint64_t k = 0; k < units; ++k) {
        analysis::Question question;
        question.frequencies = {band.at[place]};
        const auto whole = analysis::answer(unit.with(study.valuesOf(k)), shop(), {}, {}, question);
        levels.push_back(whole->trace("response")->curve("magnitude_dB")->y.front());
    }
    std::sort(levels.begin(), levels.end());
    EXPECT_NEAR(band.curves.front().low[place], spread::quantile(levels, 0.05), 0.01);
    EXPECT_NEAR(band.curves.front().high[place], spread::quantile(levels, 0.95), 0.01);
}

TEST(Bands, AreTheSameOnAnyNumberOfThreads) {
    const spread::Study study(promising(), shop(), usual(), planOf(6, {}));
    const auto nominal = nominalOf(study);
    EXPECT_EQ(spread::bands(study, shop(), *nominal, {"response"}, 6, {}, {}, 1).front().curves.front().high,
              spread::bands(study, shop(), *nominal, {"response"}, 6, {}, {}, 3).front().curves.front().high);
}

TEST(Bands, StoppedThereAreNone) {
    const spread::Study study(promising(), shop(), usual(), planOf(6, {}));
    std::stop_source stop;
    stop.request_stop();
    EXPECT_TRUE(spread::bands(study, shop(), *nominalOf(study), {"response"}, 6, stop.get_token()).empty());
}

}  // namespace bands_test
