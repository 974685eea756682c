// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/eddy_balance.h"

#include <cmath>
#include <numbers>

#include "analysis/eddy_search.h"

namespace analysis {

namespace {

/// Half thickness over skin depth.
double depthOf(const magnetics::CoreLoop::Block& block, double angular) {
    return std::sqrt(angular * block.eddy * block.loop.steepest() / 2);
}

}  // namespace

EddyBalance::EddyBalance(const magnetics::CoreLoop& core, double frequency, int samples, int places)
    : core_(core), angular_(2 * std::numbers::pi * frequency), samples_(samples) {
    Eigen::Index first = 0;
    for (const auto& block : core.blocks()) {
        const int count = block.eddy <= 0 ? 1 : places > 0 ? places : magnetics::placesFor(depthOf(block, angular_));
        sheets_.push_back({&block, magnetics::SheetGrid(count), first});
        first += count;
    }
}

EddyBalance::EddyBalance(const magnetics::CoreLoop& core, double frequency, int samples)
    : EddyBalance(core, frequency, samples, 0) {}

EddyBalance::~EddyBalance() = default;
EddyBalance::EddyBalance(EddyBalance&&) noexcept = default;

Cycle EddyBalance::steadyCycle(const magnetics::CoreLoop::Memory& before, const Surroundings& around,
                               const Cycle* start) const {
    constexpr int mostSteps = 3;
    return reached(before, around, start, mostSteps);
}

/// By way of a drive between the start's and this one, where that does not settle at once.
Cycle EddyBalance::reached(const magnetics::CoreLoop::Memory& before, const Surroundings& around, const Cycle* start,
                           int steps) const {
    const EddySearch search(core_, sheets_, angular_, samples_, before, around);
    Cycle cycle = search.run(start);
    if (cycle.settled || steps == 0) return cycle;
    constexpr double fromRest = 0.1;
    Surroundings between = around;
    between.drive *= start != nullptr ? std::sqrt(start->drive / driveOf(around)) : fromRest;
    const Cycle below = reached(before, between, start, steps - 1);
    return below.settled ? search.run(&below) : cycle;
}

}  // namespace analysis
