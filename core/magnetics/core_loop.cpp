// SPDX-License-Identifier: GPL-3.0-or-later
#include "magnetics/core_loop.h"

#include <algorithm>
#include <cmath>

#include "magnetics/permeability.h"
#include "magnetics/rising_root.h"
#include "magnetics/saturation.h"

namespace magnetics {
JointDrop::JointDrop(const CoreModel& core, const StackBlock& block) {
    double linear = core.gap;
    if (core.lapBreak > 0 && core.lapLength > 0 && core.gap > 0) {
        const double breakLength = std::max(core.lapBreak, core.gap);
        // No longer a way through the neighbours than what the small-signal gap leaves room for.
        const double length = std::min(core.lapLength, block.initialPermeability / (2 / core.gap - 1 / breakLength));
        std::vector<OddCurve::Knot> knots;
        const auto add = [&](double field) {
            const CurvePlace neighbour = curveAtField(block, field);
            const double flux = (neighbour.value + mu0 * length * field / breakLength) / 2;
            const double slope = (neighbour.slope + mu0 * length / breakLength) / 2;
            if (knots.empty() || flux > knots.back().x)
                knots.push_back({flux, length * field / core.pathLength, length / (core.pathLength * slope)});
        };
        const double end = block.curve.size() >= 2 ? block.curve.back().field : 1e5;
        add(0);
        for (double field = end * 1e-6; field < 1e3 * end; field *= 1.3) add(field);
        bridge_ = OddCurve(std::move(knots));
        linear -= mu0 * core.pathLength * bridge_.at(0).slope;
    }
    linear_ = std::max(0.0, linear) / (mu0 * core.pathLength);
}

CurvePlace JointDrop::at(double flux) const noexcept {
    CurvePlace drop{linear_ * flux, linear_};
    if (!bridge_.empty()) {
        const CurvePlace bridge = bridge_.at(flux);
        drop.value += bridge.value;
        drop.slope += bridge.slope;
    }
    return drop;
}

/// A block at a field: its flux density and what its path takes of N I / l, with slopes against the field.
struct CoreLoop::Trial {
    CurvePlace flux;
    CurvePlace applied;
};

CoreLoop::Trial CoreLoop::trial(const Block& block, const PlayMemory& memory, double field) const {
    const CurvePlace flux = block.loop.at(memory, field);
    const CurvePlace drop = block.joint.at(flux.value);
    return {flux, {field + drop.value, 1 + drop.slope * flux.slope}};
}

CoreLoop CoreLoop::made(const CoreModel& core, bool withLoops) {
    CoreLoop made;
    for (StackBlock block : core.blocks) {
        if (!withLoops) block.coercivity = 0;
        const double half = block.thickness / 2;
        const double eddy = block.resistivity > 0 ? half * half / block.resistivity : 0;
        made.blocks_.push_back({block.share, eddy, SheetLoop(block), JointDrop(core, block)});
        const std::string& why = made.blocks_.back().loop.why();
        if (!why.empty()) made.why_ += (made.why_.empty() ? "" : "; ") + block.alloy + ": " + why;
    }
    return made;
}

CoreLoop::CoreLoop(const CoreModel& core) : CoreLoop(made(core, true)) {}

CoreLoop CoreLoop::anhysteretic(const CoreModel& core) {
    return made(core, false);
}

CoreLoop::Memory CoreLoop::atRest() const {
    Memory memory;
    memory.blocks.resize(blocks_.size());
    memory.fields.resize(blocks_.size(), 0);
    return memory;
}

/// Field in one block at an applied field.
double CoreLoop::fieldIn(std::size_t block, const Memory& memory, double applied) const {
    const PlayMemory& from = memory.blocks[block];
    return risingRoot(memory.fields[block], 1e-13 * std::abs(applied), [&](double field) {
        const CurvePlace place = trial(blocks_[block], from, field).applied;
        return CurvePlace{place.value - applied, place.slope};
    });
}

CurvePlace CoreLoop::follow(Memory& memory, double applied) const {
    CurvePlace mean;
    for (std::size_t k = 0; k < blocks_.size(); ++k) {
        const double field = fieldIn(k, memory, applied);
        const Trial there = trial(blocks_[k], memory.blocks[k], field);
        mean.value += blocks_[k].share * there.flux.value;
        mean.slope += blocks_[k].share * there.flux.slope / there.applied.slope;
        blocks_[k].loop.follow(memory.blocks[k], field);
        memory.fields[k] = field;
    }
    memory.applied = applied;
    return mean;
}

/// With one block: its field where B + weight N I / l = wave.
double CoreLoop::fieldAlone(const Memory& memory, double wave, double weight) const {
    const Block& block = blocks_.front();
    const double guess = memory.fields.front() + (memory.steepness > 0 ? (wave - memory.wave) / memory.steepness : 0);
    return risingRoot(guess, 1e-12 * std::abs(wave), [&](double field) {
        const Trial there = trial(block, memory.blocks.front(), field);
        return CurvePlace{there.flux.value + weight * there.applied.value - wave,
                          there.flux.slope + weight * there.applied.slope};
    });
}

CurvePlace CoreLoop::followWave(Memory& memory, double wave, double weight) const {
    if (blocks_.empty()) {
        memory.applied = wave / weight;
        return {};
    }
    if (blocks_.size() == 1) {
        const double field = fieldAlone(memory, wave, weight);
        const Trial there = trial(blocks_.front(), memory.blocks.front(), field);
        blocks_.front().loop.follow(memory.blocks.front(), field);
        memory.fields.front() = field;
        memory.applied = there.applied.value;
        memory.wave = wave;
        memory.steepness = there.flux.slope + weight * there.applied.slope;
        return {blocks_.front().share * there.flux.value,
                blocks_.front().share * there.flux.slope / there.applied.slope};
    }
    const double applied = appliedTogether(memory, wave, weight);
    const CurvePlace mean = follow(memory, applied);
    memory.wave = wave;
    memory.steepness = weight + mean.slope;
    return mean;
}

/// Applied field where B + weight N I / l = wave: Newton's method for all blocks' fields at once, which memory's fields
/// are left at; where that does not settle, one block inside the other with brackets.
double CoreLoop::appliedTogether(Memory& memory, double wave, double weight) const {
    constexpr double tolerance = 1e-12;
    const std::vector<double> before = memory.fields;
    double applied = memory.applied + (memory.steepness > 0 ? (wave - memory.wave) / memory.steepness : 0);
    for (int round = 0; round < 12; ++round) {
        double rest = wave - weight * applied, slope = weight, off = 0;
        std::vector<Trial> trials;
        for (std::size_t k = 0; k < blocks_.size(); ++k) {
            trials.push_back(trial(blocks_[k], memory.blocks[k], memory.fields[k]));
            const Trial& now = trials.back();
            const double through = blocks_[k].share * now.flux.slope / now.applied.slope;
            const double lacks = applied - now.applied.value;
            rest -= blocks_[k].share * now.flux.value + through * lacks;
            slope += through;
            off = std::max(off, std::abs(through * lacks));
        }
        if (off + std::abs(rest) <= tolerance * std::abs(wave)) return applied;
        const double step = rest / slope;
        for (std::size_t k = 0; k < blocks_.size(); ++k)
            memory.fields[k] += (applied + step - trials[k].applied.value) / trials[k].applied.slope;
        applied += step;
    }
    memory.fields = before;
    return risingRoot(memory.applied, tolerance * std::abs(wave), [&](double tried) {
        CurvePlace sum{weight * tried - wave, weight};
        for (std::size_t k = 0; k < blocks_.size(); ++k) {
            const Trial there = trial(blocks_[k], memory.blocks[k], fieldIn(k, memory, tried));
            sum.value += blocks_[k].share * there.flux.value;
            sum.slope += blocks_[k].share * there.flux.slope / there.applied.slope;
        }
        return sum;
    });
}

double CoreLoop::initialSlope() const noexcept {
    double slope = 0;
    for (const Block& block : blocks_) {
        const Trial rest = trial(block, {}, 0);
        slope += block.share * rest.flux.slope / rest.applied.slope;
    }
    return slope;
}

bool CoreLoop::hysteretic() const noexcept {
    return std::any_of(blocks_.begin(), blocks_.end(), [](const Block& b) { return b.loop.hysteretic(); });
}

double loopArea(const std::vector<double>& field, const std::vector<double>& flux) noexcept {
    double area = 0;
    for (std::size_t i = 0; i < field.size(); ++i) {
        const std::size_t next = i + 1 == field.size() ? 0 : i + 1;
        area += (field[i] + field[next]) / 2 * (flux[next] - flux[i]);
    }
    return area;
}

}  // namespace magnetics
