// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/stages.h"

#include <algorithm>

#include "network/granularity.h"
#include "network/in_parallel.h"

namespace analysis {

namespace {

/// What the leakage matrix reads of a layer.
auto leakageKey(const coil::Layer& l) {
    return std::tuple(l.box.x0, l.box.x1, l.box.y0, l.box.y1, l.turns, l.sense, l.leg, l.turnLength, l.begins);
}
bool sameGeometry(const coil::CoilBuild& a, const coil::CoilBuild& b) {
    const auto frame = [](const coil::CoilBuild& c) {
        return std::tuple(c.tongue, c.stack, c.windowWidth, c.windowHeight, c.outerLeg, c.yoke, c.legs, c.bobbinWall,
                          c.clearance, c.cornerRadius);
    };
    return frame(a) == frame(b) &&
           std::equal(a.layers.begin(), a.layers.end(), b.layers.begin(), b.layers.end(),
                      [](const auto& p, const auto& q) { return leakageKey(p) == leakageKey(q); });
}
bool sameWires(const coil::CoilBuild& a, const coil::CoilBuild& b) {
    return std::equal(a.layers.begin(), a.layers.end(), b.layers.begin(), b.layers.end(),
                      [](const auto& p, const auto& q) { return p.conductor == q.conductor; });
}
/// What the layout reads of a design.
bool sameCoil(const design::Design& a, const design::Design& b) {
    return a.coil == b.coil && a.windings == b.windings && a.core.sheet == b.core.sheet && a.core.kind == b.core.kind &&
           a.core.height == b.core.height && a.bobbin == b.bobbin && a.filling == b.filling &&
           a.conditions.filled == b.conditions.filled && a.parts == b.parts;
}
/// What a solved hook-up reads of a design besides fields and core.
bool sameConnections(const design::Design& a, const design::Design& b) {
    return a.windings == b.windings && a.ports == b.ports && a.coil == b.coil &&
           a.conditions.temperature == b.conditions.temperature;
}

}  // namespace

network::ComplexVector Solved::at(double frequency) const {
    if (outputs.converged() && frequency >= from && frequency <= to) return outputs.value(frequency);
    return network.solve(frequency);
}

network::Complex Solved::at(double frequency, int output) const {
    if (outputs.converged() && frequency >= from && frequency <= to) return outputs.value(frequency, output);
    return network.solve(frequency)(output);
}

network::ComplexVector Solved::slopeAt(double frequency) const {
    if (outputs.converged() && frequency >= from && frequency <= to) return outputs.slope(frequency);
    return network.point(frequency).slope / frequency;
}

network::Circuit unitCircuit(const design::Design& design, const Answer::Stages& stages) {
    design::HookUp alone;
    alone.name = "unit";
    return network::circuit(
        design, alone,
        {*stages.build, stages.pieces, *stages.leakage, *stages.capacitance, stages.proximity.get(), *stages.core});
}

Pipeline::Pipeline(const design::Design& design, const catalog::Catalog& shop, const Answer::Stages* previous,
                   std::stop_token stop)
    : design_(design),
      shop_(shop),
      previous_(previous),
      stop_(std::move(stop)),
      now_(std::make_shared<Answer::Stages>()) {
    now_->design = std::make_shared<const design::Design>(design);
}

void Pipeline::layOut() {
    if (previous_ != nullptr && sameCoil(*previous_->design, design_)) {
        now_->build = previous_->build;
    } else {
        note(Stage::Build);
        auto build = std::make_shared<const coil::CoilBuild>(coil::layOut(design_, shop_));
        const bool same = previous_ != nullptr && *previous_->build == *build;
        now_->build = same ? previous_->build : build;
    }
    now_->coarsePieces = network::coarsePieces(*now_->build);
}

void Pipeline::computeFields() {
    const auto& build = *now_->build;
    const auto* old = previous_;
    const bool sameEnds = old != nullptr && old->design->assumptions.ends == design_.assumptions.ends;
    const bool geometry = old != nullptr && sameGeometry(*old->build, build);
    now_->coarseLeakage = geometry && sameEnds && old->coarsePieces == now_->coarsePieces
                              ? old->coarseLeakage
                              : leakageOf(now_->coarsePieces);
    if (stopped()) return;
    const bool lossy = design_.assumptions.dielectricLoss;
    if (old != nullptr && old->build == now_->build && old->design->assumptions.dielectricLoss == lossy) {
        now_->capacitance = old->capacitance;
    } else {
        note(Stage::Capacitance);
        now_->capacitance = std::make_shared<const field::CapacitanceResult>(field::capacitances(build, lossy));
    }
    if (stopped()) return;
    if (design_.assumptions.proximity) {
        if (geometry && sameEnds && old->proximity && sameWires(*old->build, build)) {
            now_->proximity = old->proximity;
        } else {
            note(Stage::Proximity);
            now_->proximity =
                std::make_shared<const field::ProximityForm>(field::proximityForm(build, design_.assumptions.ends));
        }
    }
    auto core = std::make_shared<const magnetics::CoreModel>(magnetics::coreModel(design_, shop_));
    const bool sameCore = old != nullptr && *old->core == *core;
    if (!sameCore) note(Stage::Core);
    now_->core = sameCore ? old->core : core;
    cutLayers();
}

std::shared_ptr<const field::LeakageResult> Pipeline::leakageOf(const network::Pieces& pieces) {
    if (ran_.empty() || std::find(ran_.begin(), ran_.end(), Stage::Leakage) == ran_.end()) note(Stage::Leakage);
    return std::make_shared<const field::LeakageResult>(
        field::leakageMatrix(network::refined(*now_->build, pieces), design_.assumptions.ends));
}

/// Chooses how many branches each layer gets, by what all hook-ups need.
void Pipeline::cutLayers() {
    const auto* old = previous_;
    const bool sameMatrix = old != nullptr && old->coarseLeakage == now_->coarseLeakage;
    if (sameMatrix && old->capacitance == now_->capacitance && old->proximity == now_->proximity &&
        old->core == now_->core && sameConnections(*old->design, design_) && old->design->hookUps == design_.hookUps) {
        now_->pieces = old->pieces;
        now_->leakage = old->leakage;
        return;
    }
    note(Stage::Pieces);
    std::vector<network::Vector> shares(design_.hookUps.size());
    network::inParallel(shares.size(), [&](std::size_t k) {
        const network::Prepared coarse(coarseCircuit(design_, design_.hookUps[k]),
                                       network::Prepared::Currents::Branches);
        shares[k] = network::neglected(coarse, now_->coarsePieces);
    });
    network::Vector greatest = network::Vector::Zero(static_cast<Eigen::Index>(now_->coarsePieces.size()));
    for (const auto& share : shares) greatest = greatest.cwiseMax(share);
    now_->pieces = network::piecesFor(*now_->build, greatest);
    if (now_->pieces == now_->coarsePieces)
        now_->leakage = now_->coarseLeakage;
    else if (sameMatrix && now_->pieces == old->pieces)
        now_->leakage = old->leakage;
    else
        now_->leakage = leakageOf(now_->pieces);
}

bool Pipeline::sameFields() const noexcept {
    return previous_ != nullptr && previous_->leakage == now_->leakage && previous_->capacitance == now_->capacitance &&
           previous_->proximity == now_->proximity && previous_->core == now_->core &&
           previous_->build == now_->build && sameConnections(*previous_->design, design_);
}

network::Circuit Pipeline::coarseCircuit(const design::Design& design, const design::HookUp& hookUp) const {
    return network::circuit(design, hookUp,
                            {*now_->build, now_->coarsePieces, *now_->coarseLeakage, *now_->capacitance,
                             now_->proximity.get(), *now_->core});
}

network::Prepared Pipeline::measurement(const design::HookUp& hookUp, const design::Winding* across) const {
    constexpr auto plain = network::Prepared::Currents::Branches;
    if (across == nullptr) return network::Prepared(coarseCircuit(design_, hookUp), plain);
    design::Design bench = design_;
    design::Port port;
    port.name = across->name;
    port.plus = across->start;
    port.minus = across->finish;
    bench.ports = {port};
    return network::Prepared(coarseCircuit(bench, hookUp), plain);
}

std::shared_ptr<const Solved> Pipeline::solve(const design::HookUp& hookUp) {
    if (sameFields())
        if (const auto it = previous_->solved.find(hookUp.name);
            it != previous_->solved.end() && it->second->hookUp == hookUp) {
            now_->solved[hookUp.name] = it->second;
            return it->second;
        }
    note(Stage::Solve);
    // Halving an interval that was off by this leaves some 1e-4 (degree seven): 0.001 dB.
    constexpr double tolerance = 5e-3;
    constexpr int mostSolves = 600;
    auto solved =
        std::make_shared<Solved>(hookUp, network::circuit(design_, hookUp,
                                                          {*now_->build, now_->pieces, *now_->leakage,
                                                           *now_->capacitance, now_->proximity.get(), *now_->core}));
    solved->from = lowestFrequency;
    solved->to = highestFrequency;
    solved->outputs = network::Sweep::over(solved->network, solved->from, solved->to, tolerance, mostSolves, stop_);
    now_->solved[hookUp.name] = solved;
    return solved;
}

}  // namespace analysis
