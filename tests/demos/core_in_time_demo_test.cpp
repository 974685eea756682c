// SPDX-License-Identifier: GPL-3.0-or-later
// The demo designs in time: the linear limit, the steady state against harmonic balance, and what a level jump does.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "analysis/direct_current.h"
#include "analysis/distortion.h"
#include "analysis/step.h"
#include "analysis/trace_making.h"
#include "demo_designs.h"
#include "design/edit.h"
#include "magnetics/permeability.h"

namespace core_in_time_demo_test {

constexpr double pi = std::numbers::pi;

struct Bench {
    design::Design design;
    analysis::Pipeline pipeline;
    std::shared_ptr<const analysis::Solved> solved;
    analysis::LargeSignal large;
    analysis::CoreNetwork network;
    explicit Bench(design::Design d)
        : design(std::move(d)),
          pipeline(design, demos::shop(), nullptr, {}),
          solved(solve()),
          large(design, *solved, pipeline.stages(), true),
          network(large.inTime()) {}
    [[nodiscard]] analysis::TraceContext context() const {
        return {design, *solved, pipeline.stages(), frequencies, &large, &network};
    }
    [[nodiscard]] analysis::CoreRun<analysis::LoopInTime> run(double peak) const {
        return {network, {*pipeline.stages().loop, pipeline.stages().loop->atRest()}, 0, peak};
    }
    std::vector<double> frequencies;

private:
    std::shared_ptr<const analysis::Solved> solve() {
        pipeline.layOut();
        pipeline.computeFields();
        return pipeline.solve(design.hookUps.front());
    }
};

/// A design at another level, without direct current.
design::Design atLevel(const char* name, double change) {
    design::Design design = *demos::open(name).design;
    design.brief.operatingLevel = design.brief.operatingLevel + change;
    design.conditions.directCurrents.clear();
    design.conditions.phantom.reset();
    return design;
}

double greatest(const std::vector<double>& values) {
    double most = 0;
    for (const double value : values) most = std::max(most, std::abs(value));
    return most;
}

class InTime : public testing::TestWithParam<const char*> {};

TEST_P(InTime, TheNetworkIsItsCurves) {
    EXPECT_LT(Bench(atLevel(GetParam(), 0)).network.fit().error, 0.01);
}

/// 80 dB down the loop is the small-signal inductance, and the step with it the linear step.
TEST_P(InTime, FaintStepsAreTheLinearNetworks) {
    const Bench bench(atLevel(GetParam(), -80));
    const auto with = analysis::coreStepTrace(bench.context()), linear = analysis::stepTrace(bench.context());
    const double peak = std::numbers::sqrt2 *
                        analysis::LargeSignal::emfForLevel(bench.large.linear(20), bench.design.brief.operatingLevel);
    const auto &looped = with->curve("output_V")->y, &step = linear->curve("output")->y;
    ASSERT_EQ(looped.size(), step.size());
    for (std::size_t i = 0; i < step.size(); ++i)
        EXPECT_NEAR(looped[i] / peak, step[i], 2e-3 * greatest(step)) << with->frequency[i];
}

/// The linear side of a square wave that starts, by partial fractions, is the sum of steps by inverse transform.
TEST_P(InTime, ALinearSquareIsASumOfSteps) {
    const Bench bench(atLevel(GetParam(), 0));
    const auto square = analysis::coreSquareTrace(bench.context());
    const auto& solved = *bench.solved;
    const int output = solved.network.layout().voltage(bench.large.driven(), bench.large.observed());
    const analysis::StepResponse step([&](double f) { return solved.at(f, output).real(); }, analysis::lowestFrequency,
                                      analysis::highestFrequency);
    const double peak = std::numbers::sqrt2 *
                        analysis::LargeSignal::emfForLevel(bench.large.linear(20), bench.design.brief.operatingLevel);
    const auto& linear = square->curve("linear_V")->y;
    for (std::size_t i = 3; i < linear.size(); i += 7) {
        const double time = square->frequency[i];
        double sum = step.at(time);
        for (int k = 1; k * 0.025 < time - 1e-9; ++k) sum += (k % 2 == 1 ? -2 : 2) * step.at(time - k * 0.025);
        EXPECT_NEAR(linear[i], peak * sum, 5e-3 * greatest(linear)) << time;
    }
}

/// Ten cycles after its start a sine has the harmonics that harmonic balance finds, within 1 dB down to -80 dB.
TEST_P(InTime, SinesSettleToTheHarmonicBalance) {
    constexpr int steps = 512, cycles = 12;
    const Bench bench(atLevel(GetParam(), 0));
    auto linear = bench.large.linear(20);
    linear.eddies = nullptr;  // in time the sheets' eddies stay those of small signal
    const double emf = analysis::LargeSignal::emfForLevel(linear, bench.design.brief.operatingLevel + 12);
    const auto balanced = bench.large.at(linear, emf);
    ASSERT_TRUE(balanced.cycle.settled);
    const double peak = emf * std::numbers::sqrt2;
    auto run = bench.run(peak);
    const auto value = [&](int n) { return peak * std::cos(2 * pi * n / steps); };
    std::vector<double> last;
    for (int n = 0; n < cycles * steps; ++n) {
        run.go(1.0 / 20 / steps, value(n), value(n + 1));
        if (n >= (cycles - 1) * steps) last.push_back(run.output());
    }
    std::array<std::complex<double>, 8> tone{};
    for (int n = 0; n < steps; ++n)
        for (int k = 1; k < 8; ++k)
            tone[static_cast<std::size_t>(k)] +=
                last[static_cast<std::size_t>(n)] * std::polar(1.0, -2 * pi * k * (n + 1) / steps);
    for (const std::size_t k : {3U, 5U, 7U}) {
        const double expected = balanced.harmonics[k - 2];
        if (expected < -80) continue;
        EXPECT_NEAR(20 * std::log10(std::abs(tone[k] / tone[1])), expected, 1) << "harmonic " << k;
    }
}

TEST_P(InTime, InrushIsGreatestAfterTheJumpAndDiesAway) {
    const Bench bench(atLevel(GetParam(), 0));
    const auto trace = analysis::inrushTrace(bench.context());
    const auto& current = trace->curve("magnetising_A")->y;
    const std::vector<double> ahead(current.begin(), current.begin() + 512), end(current.end() - 256, current.end());
    EXPECT_GT(greatest(current), 3 * greatest(ahead));
    EXPECT_GT(greatest(current), 1.05 * greatest(end));
}

INSTANTIATE_TEST_SUITE_P(, InTime, testing::ValuesIn(demos::all), [](const auto& tested) {
    std::string name = tested.param;
    std::erase(name, '-');
    return name;
});

}  // namespace core_in_time_demo_test
