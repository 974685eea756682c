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
           a.terminals == b.terminals && a.conditions.filled == b.conditions.filled && a.parts == b.parts;
}
/// What a solved hook-up reads of a design besides fields and core.
bool sameConnections(const design::Design& a, const design::Design& b) {
    return a.windings == b.windings && a.ports == b.ports && a.coil == b.coil &&
           a.conditions.temperature == b.conditions.temperature && a.assumptions.leadOuts == b.assumptions.leadOuts &&
           a.assumptions.foilEddies == b.assumptions.foilEddies;
}

}  // namespace

void Solved::sweep(const std::stop_token& stop, double low, double high) {
    // Halving an interval that was off by this leaves some 1e-4 (degree seven): 0.001 dB.
    constexpr double tolerance = 5e-3;
    constexpr int mostSolves = 600;
    from = low;
    to = high;
    outputs = network::Sweep::over(network, from, to, tolerance, mostSolves, stop);
}

network::ComplexVector Solved::at(double frequency) const {
    if (outputs.carries() && frequency >= from && frequency <= to) return outputs.value(frequency);
    return network.solve(frequency);
}

network::Complex Solved::at(double frequency, int output) const {
    if (outputs.carries() && frequency >= from && frequency <= to) return outputs.value(frequency, output);
    return network.solve(frequency)(output);
}

network::ComplexVector Solved::slopeAt(double frequency) const {
    if (outputs.carries() && frequency >= from && frequency <= to) return outputs.slope(frequency);
    return network.point(frequency).slope / frequency;
}

network::Circuit circuitOf(const design::Design& design, const design::HookUp& hookUp, const Answer::Stages& stages,
                           const Cut& cut) {
    return network::circuit(design, hookUp,
                            {*stages.build, cut.pieces, *cut.leakage, *stages.capacitance, stages.proximity.get(),
                             *stages.core, cut.foilEddies.get()});
}

network::Circuit unitCircuit(const design::Design& design, const Answer::Stages& stages) {
    design::HookUp alone;
    alone.name = "unit";
    return circuitOf(design, alone, stages, stages.cut);
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

void Pipeline::noteOnce(Stage stage) {
    if (std::find(ran_.begin(), ran_.end(), stage) == ran_.end()) note(stage);
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
}

void Pipeline::computeFields() {
    // The second takes about as long as the other two.
    network::inParallel(3, [this](std::size_t part) {
        if (part == 0)
            now_->coarse =
                cutInto(network::coarsePieces(*now_->build), previous_ != nullptr ? &previous_->coarse : nullptr);
        else if (part == 1)
            computeProximity();
        else
            computeElectric();
    });
    const auto* old = previous_;
    if (old == nullptr || now_->capacitance != old->capacitance) note(Stage::Capacitance);
    if (now_->proximity && (old == nullptr || now_->proximity != old->proximity)) noteOnce(Stage::Proximity);
    if (old == nullptr || now_->core != old->core) note(Stage::Core);
    if (stopped()) return;
    cutLayers();
}

void Pipeline::computeFields(const network::Pieces& pieces) {
    if (pieces.size() != now_->build->layers.size()) return computeFields();
    computeElectric();
    computeProximity();
    if (!stopped()) now_->cut = cutInto(pieces, previous_ != nullptr ? &previous_->cut : nullptr);
}

void Pipeline::takeFields() {
    now_->coarse = previous_->coarse;
    now_->cut = previous_->cut;
    now_->capacitance = previous_->capacitance;
    now_->proximity = previous_->proximity;
    now_->core = std::make_shared<const magnetics::CoreModel>(magnetics::coreModel(design_, shop_));
    now_->loop = previous_->loop;
}

void Pipeline::prepareMeasurements() {
    if (!now_->coarse.leakage)
        now_->coarse =
            cutInto(network::coarsePieces(*now_->build), previous_ != nullptr ? &previous_->coarse : nullptr);
}

/// Capacitances, and the core.
void Pipeline::computeElectric() {
    const auto& build = *now_->build;
    const auto* old = previous_;
    const bool lossy = design_.assumptions.dielectricLoss;
    if (old != nullptr && old->build == now_->build && old->design->assumptions.dielectricLoss == lossy)
        now_->capacitance = old->capacitance;
    else
        now_->capacitance = std::make_shared<const field::CapacitanceResult>(field::capacitances(build, lossy));
    auto core = std::make_shared<const magnetics::CoreModel>(magnetics::coreModel(design_, shop_));
    const bool sameCore = old != nullptr && *old->core == *core;
    now_->core = sameCore ? old->core : core;
    now_->loop = sameCore ? old->loop : std::make_shared<const magnetics::CoreLoop>(*core);
}

/// Proximity losses of the wires.
void Pipeline::computeProximity() {
    if (!design_.assumptions.proximity) return;
    const auto& build = *now_->build;
    const auto* old = previous_;
    const bool same = old != nullptr && old->design->assumptions.ends == design_.assumptions.ends &&
                      sameGeometry(*old->build, build) && old->proximity && sameWires(*old->build, build);
    now_->proximity =
        same ? old->proximity
             : std::make_shared<const field::ProximityForm>(field::proximityForm(build, design_.assumptions.ends));
}

/// A cut with its fields, or what is known of the same.
Cut Pipeline::cutInto(network::Pieces pieces, const Cut* known) {
    const auto* old = previous_;
    const bool same = known != nullptr && known->pieces == pieces && sameGeometry(*old->build, *now_->build) &&
                      old->design->assumptions.ends == design_.assumptions.ends;
    Cut cut{std::move(pieces), nullptr, nullptr};
    const auto layers = [&] { return network::refined(*now_->build, cut.pieces); };
    if (same) {
        cut.leakage = known->leakage;
    } else {
        noteOnce(Stage::Leakage);
        cut.leakage =
            std::make_shared<const field::LeakageResult>(field::leakageMatrix(layers(), design_.assumptions.ends));
    }
    if (!design_.assumptions.foilEddies) return cut;
    if (same && known->foilEddies && old->build == now_->build) {
        cut.foilEddies = known->foilEddies;
    } else {
        noteOnce(Stage::Proximity);
        cut.foilEddies = std::make_shared<const field::FoilEddies>(
            field::foilEddies(layers(), design_.assumptions.ends, highestFrequency));
    }
    return cut;
}

/// Chooses how many branches each layer gets, by what all hook-ups need.
void Pipeline::cutLayers() {
    const auto* old = previous_;
    if (old != nullptr && old->coarse == now_->coarse && old->capacitance == now_->capacitance &&
        old->proximity == now_->proximity && old->core == now_->core && sameConnections(*old->design, design_) &&
        old->design->hookUps == design_.hookUps) {
        now_->cut = old->cut;
        return;
    }
    note(Stage::Pieces);
    // Layers in one piece each are not cut further: there is nothing to estimate.
    const auto& coarsest = now_->coarse.pieces;
    const bool whole = std::all_of(coarsest.begin(), coarsest.end(), [](int n) { return n == 1; });
    std::vector<network::Vector> shares(whole ? 0 : design_.hookUps.size());
    network::inParallel(shares.size(), [&](std::size_t k) {
        const network::Prepared coarse(circuitOf(design_, design_.hookUps[k], *now_, now_->coarse),
                                       network::Prepared::Currents::Branches);
        shares[k] = network::neglected(coarse, now_->coarse.pieces);
    });
    network::Vector greatest = network::Vector::Zero(static_cast<Eigen::Index>(now_->coarse.pieces.size()));
    for (const auto& share : shares) greatest = greatest.cwiseMax(share);
    auto pieces = network::piecesFor(*now_->build, greatest);
    now_->cut =
        pieces == now_->coarse.pieces ? now_->coarse : cutInto(std::move(pieces), old != nullptr ? &old->cut : nullptr);
}

bool Pipeline::sameFields() const noexcept {
    return previous_ != nullptr && previous_->cut == now_->cut && previous_->capacitance == now_->capacitance &&
           previous_->proximity == now_->proximity && previous_->core == now_->core &&
           previous_->build == now_->build && sameConnections(*previous_->design, design_);
}

network::Circuit Pipeline::measured(const design::HookUp& hookUp) const {
    return circuitOf(design_, hookUp, *now_, now_->coarse);
}

network::Prepared Pipeline::measurement(const design::HookUp& hookUp, const design::Winding& across) const {
    design::Design bench = design_;
    design::Port port;
    port.name = across.name;
    port.plus = across.start;
    port.minus = across.finish;
    bench.ports = {port};
    return network::Prepared(circuitOf(bench, hookUp, *now_, now_->coarse), network::Prepared::Currents::Branches);
}

bool Pipeline::known(const design::HookUp& hookUp) const {
    if (!sameFields()) return false;
    const auto it = previous_->solved.find(hookUp.name);
    return it != previous_->solved.end() && it->second->hookUp == hookUp;
}

std::shared_ptr<const Solved> Pipeline::solve(const design::HookUp& hookUp) {
    if (const auto given = now_->solved.find(hookUp.name); given != now_->solved.end()) return given->second;
    if (known(hookUp)) return now_->solved[hookUp.name] = previous_->solved.at(hookUp.name);
    note(Stage::Solve);
    auto solved = std::make_shared<Solved>(hookUp, circuitOf(design_, hookUp, *now_, now_->cut));
    solved->sweep(stop_, low_, high_);
    now_->solved[hookUp.name] = solved;
    return solved;
}

}  // namespace analysis
