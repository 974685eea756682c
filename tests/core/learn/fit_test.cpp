// SPDX-License-Identifier: GPL-3.0-or-later
// Unknowns found again: units with known factors, tolerances of all else and instruments' errors drawn. A hundredth
// here, a thousand with COILWRIGHT_FULL in the environment (target `full`).
#include "learn/fit.h"

#include <gtest/gtest.h>

#include <cmath>
#include <iostream>

#include "analysis/in_threads.h"
#include "drawn.h"
#include "learn/terminal_reader.h"
#include "learn/unknowns.h"
#include "units/fault.h"

namespace fit_test {

using drawn::Normals;

struct Bench {
    design::Design design;
    spread::Variation variation;
    std::vector<learn::Unknown> unknowns;
    std::vector<learn::Probe> probes;

    explicit Bench(const std::string& name) {
        const auto& made = plans::demo(name);
        design = made.design;
        variation = spread::variationOf(design, demos::shopCatalog(), shop::benchTolerances(plans::tolerances()));
        unknowns = learn::unknownsOf(variation, {});
        for (const auto& probe : learn::planProbes(design, made.prediction, made.plan, demos::shopCatalog(),
                                                   plans::tolerances(), made.fixture))
            if (probe.kind != learn::ProbeKind::Polarity) probes.push_back(probe);
    }
    /// A unit whose unknowns have these factors' logarithms, all else as `normals` draws it.
    [[nodiscard]] design::DesignPtr unit(const std::vector<double>& logs,
                                         const std::function<double()>& normals) const {
        std::vector<double> values;
        const auto deviates = drawn::deviatesOf(variation, normals);
        for (std::size_t k = 0; k < deviates.size(); ++k)
            values.push_back(variation.all[k].law.value(variation.all[k].nominal, deviates[k]));
        for (std::size_t u = 0; u < unknowns.size(); ++u)
            for (const auto k : unknowns[u].members) values[k] = variation.all[k].nominal * std::exp(logs[u]);
        spread::UnitDesign made(variation);
        return std::make_shared<design::Design>(made.with(values));
    }
    [[nodiscard]] std::vector<learn::Point> measured(const design::DesignPtr& unit,
                                                     const std::function<double()>& normals) const {
        const auto all = learn::readings({unit, {}, {}, 0, {}}, probes, demos::shopCatalog());
        std::vector<learn::Point> points;
        for (std::size_t k = 0; k < probes.size(); ++k)
            points.push_back(
                {probes[k], unscaled(probes[k], scaled(probes[k], all[k]) + probes[k].instrument * normals())});
        return points;
    }
    [[nodiscard]] learn::Fitted fit(const std::vector<learn::Point>& points,
                                    const std::vector<std::string>& keys = {}) const {
        return learn::fitted(design, points, keys, demos::shopCatalog(), plans::tolerances(), false);
    }
};

const Bench& bench(const std::string& name) {
    static std::map<std::string, Bench> all;
    return all.try_emplace(name, name).first->second;
}

constexpr auto exact = [] { return 0.0; };

TEST(Fit, AThousandUnitsHaveEachUnknownWithinItsUncertainty) {
    const Bench& one = bench("direct-box");
    const auto count = static_cast<std::size_t>(drawn::thousand());
    const std::size_t unknowns = one.unknowns.size();
    ASSERT_EQ(unknowns, 6U + (one.design.core.stack.size() - 1));
    std::vector<std::vector<bool>> within(count, std::vector<bool>(unknowns));
    std::vector<std::vector<bool>> told = within;
    std::vector<double> ratio(count);
    analysis::inThreads(count, 0, {}, [&] {
        return [&](std::size_t k) {
            Normals normals(31 + 7919 * k);
            std::vector<double> logs;
            for (const auto& unknown : one.unknowns) logs.push_back(unknown.spread * normals());
            const auto draw = [&] { return normals(); };
            const auto found = one.fit(one.measured(one.unit(logs, draw), draw));
            for (std::size_t u = 0; u < unknowns; ++u) {
                within[k][u] = std::abs(std::log(found.learned[u].factor) - logs[u]) <= found.learned[u].halfWidth;
                told[k][u] = found.learned[u].told;
            }
            ratio[k] = found.after / found.before;
        };
    });
    std::size_t all = 0;
    for (std::size_t u = 0; u < unknowns; ++u) {
        std::size_t hits = 0, tells = 0;
        for (std::size_t k = 0; k < count; ++k) {
            hits += within[k][u] ? 1 : 0;
            tells += told[k][u] ? 1 : 0;
        }
        all += hits;
        std::cout << one.unknowns[u].words << ": " << hits << " of " << count << " within, told in " << tells << "\n";
        if (count >= 1000) {
            EXPECT_GE(static_cast<double>(hits), 0.95 * static_cast<double>(count)) << one.unknowns[u].words;
        }
    }
    EXPECT_GE(static_cast<double>(all), 0.93 * static_cast<double>(count * unknowns));
    for (const double r : ratio) EXPECT_LT(r, 1);
}

TEST(Fit, AnExactUnitIsFoundExactly) {
    const Bench& one = bench("direct-box");
    std::vector<double> logs(one.unknowns.size(), 0);
    logs[0] = 0.3;
    const auto found = one.fit(one.measured(one.unit(logs, exact), exact), {"permeability"});
    ASSERT_EQ(found.learned.size(), 1U);
    EXPECT_NEAR(found.learned[0].factor, std::exp(0.3), 0.02);
    EXPECT_TRUE(found.learned[0].told);
    EXPECT_TRUE(found.settled);
    EXPECT_LT(found.after, 0.1 * found.before);
    // Written where it belongs, into a copy.
    EXPECT_NEAR(found.design->core.stack[0].permeabilityFactor,
                one.design.core.stack[0].permeabilityFactor * found.learned[0].factor, 1e-12);
    EXPECT_EQ(found.design->core.gap, one.design.core.gap);
    EXPECT_EQ(found.design->coil, one.design.coil);
}

TEST(Fit, WhatTheReadingsDoNotTellIsSaidSoAndStays) {
    const Bench& one = bench("direct-box");
    std::vector<learn::Point> resistances;
    for (const auto& point : one.measured(one.unit(std::vector<double>(one.unknowns.size(), 0), exact), exact))
        if (point.probe.kind == learn::ProbeKind::Resistance) resistances.push_back(point);
    ASSERT_EQ(resistances.size(), 2U);
    const auto found = one.fit(resistances, {"permeability", "joint_gap"});
    for (const auto& learned : found.learned) {
        EXPECT_FALSE(learned.told) << learned.words;
        EXPECT_NEAR(learned.factor, 1, 1e-6);
        EXPECT_GT(learned.halfWidth, learned.before);
    }
    EXPECT_NE(learn::fittedWords(found).find("the data do not tell it"), std::string::npos);
}

/// A curve of impedance from 5 Hz to 20 kHz of a unit with more permeability and a thicker paper.
TEST(Fit, ACurveTeachesPermeability) {
    const Bench& one = bench("direct-box");
    const auto unit = one.unit({0.25, 0, 0, 0, 0, 0}, exact);
    const auto& hookUp = one.design.hookUps.front();
    measured::MeasuredCurve curve;
    curve.kind = measured::CurveKind::Impedance;
    curve.name = "impedance";
    for (int k = 0; k < 40; ++k) curve.frequency.push_back(5 * std::pow(4000, k / 39.0));
    curve.value.assign(40, 1);
    auto points = learn::pointsOf(curve, one.design, hookUp, "", 0.005);
    ASSERT_EQ(points.size(), 40U);
    std::vector<learn::Probe> probes;
    for (auto& point : points) probes.push_back(point.probe);
    const auto pieces = learn::finePieces(*one.variation.base, demos::shopCatalog());
    curve.value = learn::readings({unit, {}, {}, 0, {}}, probes, demos::shopCatalog(), pieces);
    points = learn::pointsOf(curve, one.design, hookUp, "", 0.005);
    const auto found =
        learn::fitted(one.design, points, {"permeability"}, demos::shopCatalog(), plans::tolerances(), true);
    EXPECT_NEAR(std::log(found.learned[0].factor), 0.25, found.learned[0].halfWidth);
    EXPECT_NEAR(std::log(found.learned[0].factor), 0.25, 0.03);
    EXPECT_TRUE(found.learned[0].told);
}

TEST(Fit, PermittivityIsWrittenIntoTheStoredPartsWithItsSource) {
    const Bench& one = bench("direct-box");
    std::vector<double> logs(one.unknowns.size(), 0);
    for (std::size_t u = 0; u < logs.size(); ++u)
        if (one.unknowns[u].key == "permittivity") logs[u] = 0.1;
    const auto found = one.fit(one.measured(one.unit(logs, exact), exact), {"permittivity"});
    EXPECT_NEAR(found.learned[0].factor, std::exp(0.1), 0.02);
    EXPECT_TRUE(found.left.empty());
    bool said = false;
    for (const auto& [key, material] : found.design->parts.insulation)
        said = said || material.permittivity.source.starts_with("fitted to measured readings; before: ");
    EXPECT_TRUE(said);
}

TEST(Fit, TooFewPointsAreRefused) {
    const Bench& one = bench("direct-box");
    try {
        (void)one.fit({one.measured(one.variation.base, exact).front()});
        FAIL();
    } catch (const units::BadInput& bad) {
        EXPECT_STREQ(bad.what(),
                     "fit: found 1 measured numbers; allowed is at least as many as there are unknowns, 6.");
    }
}

}  // namespace fit_test
