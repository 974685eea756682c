// SPDX-License-Identifier: GPL-3.0-or-later
// A core's loop in a network in time against the same circuit stepped with single plays, and a circuit solver's
// transient without plays.
#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <numbers>

#include "analysis/answer.h"
#include "analysis/core_in_time.h"
#include "reference_core.h"

namespace core_in_time_reference_test {

using Complex = std::complex<double>;

const nlohmann::json& reference() {
    static const nlohmann::json read = reference_core::numbersOf("core_in_time");
    return read;
}

double number(const char* key) {
    return reference().at(key).get<double>();
}

magnetics::CoreModel core(bool withLoop) {
    return reference_core::coreOf(reference(), withLoop);
}

/// The circuit around the core, by series and parallel impedances.
analysis::CoreNetwork network() {
    const std::vector<double> frequencies = analysis::logarithmicGrid(1, 300e3, 160);
    std::vector<analysis::AroundCore> around;
    for (const double f : frequencies) {
        const Complex s(0, 2 * std::numbers::pi * f);
        const Complex series = number("source_resistance") + s * number("leakage");
        const Complex across = 1 / number("load") + s * number("capacitance");
        const Complex share = 1.0 / (1.0 + series * across), drop = series * share;  // V per V, V per A of the winding
        const double turns = number("turns");
        around.push_back({share / turns, drop / (turns * turns), share, drop / turns, (1.0 - share) / series,
                          drop / series / turns});
    }
    return {frequencies, around, number("area"), number("path")};
}

constexpr double interval = 1.0 / 20 / 256;

struct Drive {
    double every;
    std::function<double(int)> before, after;  // EMF at instant n
};

Drive driveOf(const std::string& name) {
    const double peak = number("peak_V"), step = number("step_V");
    const auto sine = [=](int n) { return peak * std::sin(2 * std::numbers::pi * n / 256); };
    if (name == "step") return {interval / 8, [=](int) { return step; }, [=](int) { return step; }};
    if (name == "square") {
        const auto side = [=](int n) { return n / 128 % 2 == 0 ? step : -step; };
        return {interval, [=](int n) { return side(n - 1); }, side};
    }
    const bool burst = name == "burst";
    const auto value = [=](int n) { return sine(n) * (burst ? (n < 4 * 256 ? 1 : 0) : (n < 2 * 256 ? 0.1 : 1)); };
    return {interval, value, value};
}

double greatest(const nlohmann::json& values) {
    double most = 0;
    for (const double value : values) most = std::max(most, std::abs(value));
    return most;
}

/// Output, magnetising and source current within a share of their greatest at every time of the reference.
void expectStories(const char* rows, bool withLoop, double share) {
    const magnetics::CoreLoop loop(core(withLoop));
    ASSERT_EQ(loop.hysteretic(), withLoop);
    const analysis::CoreNetwork around = network();
    EXPECT_LT(around.fit().error, 1e-3);
    for (const auto& row : reference().at(rows)) {
        const std::string name = row.at("signal");
        const Drive drive = driveOf(name);
        analysis::CoreRun<analysis::LoopInTime> run(around, {loop, loop.atRest()}, 0, number("peak_V"));
        const double output = greatest(row.at("output")), current = greatest(row.at("source"));
        double offOutput = 0, offMagnetising = 0, offSource = 0;
        int n = 0;
        for (std::size_t k = 0; k < row.at("time").size(); ++k) {
            const double time = row.at("time")[k];
            for (; (n + 1) * drive.every <= time; ++n) run.go(drive.every, drive.after(n), drive.before(n + 1));
            const double left = time - n * drive.every, way = left / drive.every;
            auto there = run;
            if (left > 0) there.go(left, drive.after(n), drive.after(n) + way * (drive.before(n + 1) - drive.after(n)));
            offOutput = std::max(offOutput, std::abs(there.output() - row.at("output")[k].get<double>()));
            offSource = std::max(offSource, std::abs(there.source() - row.at("source")[k].get<double>()));
            offMagnetising = std::max(
                offMagnetising, std::abs(there.current() / number("turns") - row.at("magnetising")[k].get<double>()));
        }
        EXPECT_LT(offOutput / output, share) << name;
        EXPECT_LT(offMagnetising / current, share) << name;
        EXPECT_LT(offSource / current, share) << name;
        testing::Test::RecordProperty(name + "_output_percent", std::to_string(100 * offOutput / output));
        testing::Test::RecordProperty(name + "_source_percent", std::to_string(100 * offSource / current));
    }
}

TEST(CoreInTimeReference, WithHysteresisAgreesWithSinglePlays) {
    expectStories("stepped", true, 0.01);
}

TEST(CoreInTimeReference, WithoutHysteresisAgreesWithACircuitSolver) {
    expectStories("ngspice", false, 0.01);
}

}  // namespace core_in_time_reference_test
