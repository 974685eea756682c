// SPDX-License-Identifier: GPL-3.0-or-later
// Distortion of the demo designs: limit cases that hold in any of them.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "analysis/distortion.h"
#include "demo_designs.h"
#include "design/edit.h"
#include "magnetics/permeability.h"

namespace distortion_demo_test {

struct Bench {
    design::Design design;
    analysis::Pipeline pipeline;
    std::shared_ptr<const analysis::Solved> solved;
    explicit Bench(design::Design d) : design(std::move(d)), pipeline(design, demos::shop(), nullptr, {}) {
        pipeline.layOut();
        pipeline.computeFields();
        solved = pipeline.solve(design.hookUps.front());
    }
    [[nodiscard]] analysis::LargeSignal large() const { return {design, *solved, pipeline.stages(), false}; }
};

design::Design named(const char* name) {
    return *demos::open(name).design;
}

/// Reciprocity: a volt of EMF makes in the core turn what an ampere in it makes at the source, across its impedance.
TEST(CoreView, IsReciprocalWithTheDrivenPort) {
    const Bench bench(named("line-unit"));
    const auto large = bench.large();
    const auto& circuit = bench.solved->network.circuit();
    const int driven = bench.solved->driven();
    for (const double f : {5.0, 20.0, 1000.0, 30e3}) {
        const auto seen = large.linear(f).seen.front();
        const auto own = network::throughImpedance(circuit, driven, f);
        const auto byEmf = bench.solved->at(f, bench.solved->network.layout().coreVoltage(driven));
        EXPECT_LT(std::abs(seen.atPorts[static_cast<std::size_t>(driven)] / own / byEmf - 1.0), 1e-3) << f;
    }
}

TEST(LargeSignal, AtLowLevelIsTheLinearNetwork) {
    const Bench bench(named("microphone-input"));
    const auto large = bench.large();
    const auto layout = bench.solved->network.layout();
    for (const double f : {20.0, 300.0}) {
        const auto linear = large.linear(f);
        const auto state = large.at(linear, 1e-6);
        ASSERT_TRUE(state.cycle.settled);
        const auto voltage = bench.solved->at(f, layout.coreVoltage(bench.solved->driven())) * 1e-6;
        const double area = bench.pipeline.stages().core->area;
        const double flux = std::abs(voltage) / (2 * std::numbers::pi * f * area) / std::numbers::sqrt2;
        EXPECT_NEAR(std::abs(state.cycle.flux[1]) / flux, 1, 1e-3) << f;
        EXPECT_LT(state.thd, 1e-5);
    }
}

/// In Rayleigh's region the third harmonic rises by a decibel a decibel.
TEST(LargeSignal, ThirdHarmonicRisesWithTheLevel) {
    const Bench bench(named("microphone-input"));
    const auto large = bench.large();
    const auto linear = large.linear(20);
    const double low = large.at(linear, 1e-5).harmonics[1], high = large.at(linear, 1e-4).harmonics[1];
    EXPECT_NEAR(high - low, 20, 1);
}

/// Without a direct current the loop is odd; with one it makes even harmonics, and inductance falls.
TEST(LargeSignal, DirectCurrentMakesEvenHarmonics) {
    design::Design design = named("microphone-input");
    const Bench without(design);
    const auto plain = without.large().at(without.large().linear(20), 0.1);
    EXPECT_TRUE(std::isinf(plain.harmonics[0]));
    design.conditions.directCurrents = {{design.windings.front().name, 2e-3, {}}};
    const Bench with(design);
    const auto biased = with.large().at(with.large().linear(20), 0.1);
    ASSERT_TRUE(biased.cycle.settled);
    EXPECT_GT(biased.harmonics[0], plain.harmonics[1] - 30);
    EXPECT_LT(biased.inductance, plain.inductance);
}

/// A stiff source across a winding of no resistance leaves no drop for the harmonics: source resistance makes them.
TEST(LargeSignal, SourceResistanceMakesTheDistortion) {
    design::Design design = named("line-unit");
    const auto third = [&](double factor) {
        design::Design changed = design;
        for (auto& use : changed.hookUps.front().ports)
            if (use.role == design::Role::Drive && use.through)
                use.through->resistance = use.through->resistance * factor;
        const Bench bench(changed);
        const auto linear = bench.large().linear(20);
        return bench.large().at(linear, analysis::LargeSignal::emfForLevel(linear, 0)).harmonics[1];
    };
    EXPECT_GT(third(3), third(1) + 1);
}

/// Meanwhile the static loop is shown, marked above the eddy corner; far below it both are the same.
TEST(LargeSignal, IsShownStaticFirstAndBehindTheEddyFieldThen) {
    const auto before = named("microphone-input");
    const auto edited = design::changed(before, [](design::Design& d) { d.brief.operatingLevel.value += 1; });
    analysis::Question meanwhile;
    meanwhile.quick = true;
    meanwhile.loop = analysis::LoopKind::Static;
    const auto early = analysis::answer(*edited, demos::shop(), analysis::answer(before, demos::shop()), {}, meanwhile);
    const auto full = analysis::answer(*edited, demos::shop(), early);
    ASSERT_TRUE(early->carried);
    ASSERT_FALSE(full->carried);
    const auto *soon = early->trace("distortion"), *then = full->trace("distortion");
    ASSERT_TRUE(soon != nullptr && then != nullptr);
    EXPECT_LT(soon->validTo, 20e3);
    EXPECT_GT(then->validTo, 20e3);
    EXPECT_NE(soon->source, then->source);
    EXPECT_NEAR(std::log10(soon->curves[0].y.front() / then->curves[0].y.front()), 0, 0.05);
    const auto fresh = analysis::answer(*edited, demos::shop());
    EXPECT_EQ(then->curves[0].y, fresh->trace("distortion")->curves[0].y);
}

TEST(LargeSignal, EveryDemoSettlesAtEveryLevel) {
    for (const char* name : demos::all) {
        const Bench bench(named(name));
        if (!analysis::drivesCore(*bench.solved)) continue;
        const auto large = bench.large();
        const auto linear = large.linear(20);
        const double operating = bench.design.brief.operatingLevel;
        for (double level = operating - 40; level <= operating + 60; level += 10) {
            const auto state = large.at(linear, analysis::LargeSignal::emfForLevel(linear, level));
            EXPECT_TRUE(state.cycle.settled) << name << ' ' << level;
            EXPECT_GE(magnetics::loopArea(state.cycle.fields, state.cycle.fluxes), 0) << name << ' ' << level;
        }
    }
}

}  // namespace distortion_demo_test
