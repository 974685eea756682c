// SPDX-License-Identifier: GPL-3.0-or-later
// Random drives of random stacks: nothing diverges, no cycle gains energy, minor loops close. A sample here; with
// COILWRIGHT_FULL in the environment (target `full`) the whole count.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numbers>
#include <random>

#include "magnetics/core_loop.h"
#include "magnetics/saturation.h"
#include "shipped_alloys.h"

namespace random_drives_test {

using magnetics::CoreLoop;

/// A stack of one to three shipped alloys with joints as they come.
magnetics::CoreModel randomStack(std::mt19937_64& dice) {
    static const std::vector<std::string> keys = [] {
        std::vector<std::string> all;
        for (const auto& entry : sample::shipped().alloys) all.push_back(entry.first);
        return all;
    }();
    std::uniform_real_distribution<double> share(0.05, 1), gap(-7, -3.5);
    design::Design design = sample::core({});
    double sum = 0;
    for (std::size_t n = 1 + dice() % 3; n > 0; --n) {
        design::StackPart part;
        part.alloy = keys[dice() % keys.size()].c_str();
        part.share = share(dice);
        sum += part.share;
        design.core.stack.push_back(part);
    }
    for (auto& part : design.core.stack) part.share = part.share / sum;
    design.core.gap = dice() % 4 == 0 ? 0.0 : std::pow(10.0, gap(dice));
    design.core.joint = dice() % 2 == 0 ? design::Joint::Butt : design::Joint::Interleaved;
    return magnetics::coreModel(design, sample::shipped());
}

struct Wave {
    double direct = 0;
    std::array<double, 4> size{}, phase{};
    [[nodiscard]] double at(double turn) const {
        double sum = direct;
        for (std::size_t k = 0; k < size.size(); ++k) sum += size[k] * std::sin(double(k + 1) * turn + phase[k]);
        return sum;
    }
};

Wave randomWave(std::mt19937_64& dice) {
    std::uniform_real_distribution<double> decade(-3, 5), share(-1, 1), phase(0, 2 * std::numbers::pi);
    Wave wave;
    const double peak = std::pow(10.0, decade(dice));
    if (dice() % 2 == 0) wave.direct = peak * share(dice);
    for (std::size_t k = 0; k < wave.size.size(); ++k) {
        wave.size[k] = peak * share(dice);
        wave.phase[k] = phase(dice);
    }
    return wave;
}

/// Fields on the way from one to another, close where sheets bend: even in asinh(H / (0.1 A/m)).
void goThrough(double from, double to, std::vector<double>& fields) {
    constexpr double scale = 0.1, finest = 0.1;
    const double start = std::asinh(from / scale), end = std::asinh(to / scale);
    const int count = 1 + static_cast<int>(std::abs(end - start) / finest);
    for (int i = 1; i < count; ++i) fields.push_back(scale * std::sinh(start + (end - start) * i / count));
    fields.push_back(to);
}

std::vector<double> cycleOf(const Wave& wave) {
    constexpr int steps = 64;
    std::vector<double> fields;
    double before = wave.at(0);
    for (int i = 1; i <= steps; ++i) {
        const double now = wave.at(2 * std::numbers::pi * i / steps);
        goThrough(before, now, fields);
        before = now;
    }
    return fields;
}

std::vector<double> followed(const CoreLoop& loop, CoreLoop::Memory& memory, const std::vector<double>& fields) {
    std::vector<double> fluxes;
    fluxes.reserve(fields.size());
    for (const double field : fields) fluxes.push_back(loop.follow(memory, field).value);
    return fluxes;
}

/// The path round with a place halfway along each step, the way from its end to its beginning first.
std::vector<double> halved(const std::vector<double>& fields) {
    std::vector<double> all;
    all.reserve(2 * fields.size());
    double before = fields.back();
    for (const double field : fields) {
        all.push_back((before + field) / 2);
        all.push_back(field);
        before = field;
    }
    return all;
}

/// Area of a closed path; one that seems to be less than `least` is looked at again with steps halved, as straight
/// lines between places miss a part. Where a gap spreads the knee over a large field, steps even in asinh are wide.
double closedArea(const CoreLoop& loop, CoreLoop::Memory& memory, std::vector<double> field, std::vector<double> flux,
                  double least) {
    constexpr int mostHalvings = 8;
    for (int k = 0; k < mostHalvings && magnetics::loopArea(field, flux) < least; ++k) {
        field = halved(field);
        flux = followed(loop, memory, field);
    }
    return magnetics::loopArea(field, flux);
}

/// One stack driven with one wave for three cycles from a random past.
void drive(const CoreLoop& loop, const Wave& wave, std::mt19937_64& dice) {
    CoreLoop::Memory memory = loop.atRest();
    std::uniform_real_distribution<double> decade(-3, 5);
    for (std::size_t n = dice() % 4; n > 0; --n) loop.follow(memory, (n % 2 ? 1 : -1) * std::pow(10.0, decade(dice)));
    const std::vector<double> field = cycleOf(wave);
    followed(loop, memory, field);
    const std::vector<double> flux = followed(loop, memory, field), again = followed(loop, memory, field);
    const auto [low, high] = std::minmax_element(flux.begin(), flux.end());
    const double slack = 1e-9 * std::max(std::abs(*low), std::abs(*high));
    double chords = 0;  // of all steps, as they are at first
    for (std::size_t i = 0; i < flux.size(); ++i) {
        ASSERT_TRUE(std::isfinite(flux[i]));
        ASSERT_NEAR(again[i], flux[i], slack) << "the loop does not close";
        if (i > 0) chords += std::abs((field[i] - field[i - 1]) * (flux[i] - flux[i - 1]));
    }
    const auto [left, right] = std::minmax_element(field.begin(), field.end());
    const double least = -1e-4 * chords - slack * (*right - *left);
    EXPECT_GE(closedArea(loop, memory, field, again, least), least);
}

TEST(RandomDrives, StayFiniteLoseEnergyAndClose) {
    const bool full = std::getenv("COILWRIGHT_FULL") != nullptr;
    const int stacks = full ? 1000 : 8, drivesPerStack = full ? 100 : 10;
    for (int s = 0; s < stacks; ++s) {
        std::mt19937_64 dice(static_cast<std::uint64_t>(1000 + s));
        const CoreLoop loop(randomStack(dice));
        for (int d = 0; d < drivesPerStack; ++d) {
            drive(loop, randomWave(dice), dice);
            if (testing::Test::HasFailure()) FAIL() << "stack " << s << ", drive " << d;
        }
    }
}

}  // namespace random_drives_test
