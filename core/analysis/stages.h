// SPDX-License-Identifier: GPL-3.0-or-later
// The pipeline's stage results with what each was made from, so that an unchanged one is taken from the previous
// answer.
#pragma once

#include <map>

#include "analysis/answer.h"
#include "field/capacitance.h"
#include "field/leakage.h"
#include "field/winding_loss.h"
#include "magnetics/core_loop.h"
#include "magnetics/stack.h"
#include "network/build.h"
#include "network/solve.h"
#include "network/sweep.h"

namespace analysis {

/// Lowest and highest frequency that the reduced network covers, Hz.
inline constexpr double lowestFrequency = 0.1, highestFrequency = 1e6;

/// One hook-up solved: the network, and its outputs as functions of frequency.
struct Solved {
    design::HookUp hookUp;
    network::Prepared network;
    network::Sweep outputs;  ///< from `from` to `to`
    double from = 0, to = 0;
    explicit Solved(design::HookUp h, network::Circuit circuit) : hookUp(std::move(h)), network(std::move(circuit)) {}
    Solved(design::HookUp h, network::Prepared prepared) : hookUp(std::move(h)), network(std::move(prepared)) {}
    /// Solves as few frequencies as carry the outputs between these two; beyond, each is solved when it is asked for.
    void sweep(const std::stop_token& stop, double low = lowestFrequency, double high = highestFrequency);
    /// All outputs at a frequency: carried between solved frequencies, or solved where that does not reach.
    [[nodiscard]] network::ComplexVector at(double frequency) const;
    /// One output alone.
    [[nodiscard]] network::Complex at(double frequency, int output) const;
    /// d outputs / d frequency, 1/Hz.
    [[nodiscard]] network::ComplexVector slopeAt(double frequency) const;
    [[nodiscard]] int driven() const { return network.circuit().portOfRole(design::Role::Drive); }
    [[nodiscard]] int observed() const { return network.circuit().portOfRole(design::Role::Observe); }
};

/// Layers cut into pieces, with what is computed for the pieces.
struct Cut {
    network::Pieces pieces;
    std::shared_ptr<const field::LeakageResult> leakage;
    std::shared_ptr<const field::FoilEddies> foilEddies;  ///< null: assumption is off
    bool operator==(const Cut&) const = default;
};

/// Everything computed, shared between answers.
struct Answer::Stages {
    std::shared_ptr<const design::Design> design;
    std::shared_ptr<const coil::CoilBuild> build;
    Cut coarse;  ///< of measurements at one frequency, and of the estimate that `cut` rests on
    Cut cut;     ///< of the networks
    std::shared_ptr<const field::CapacitanceResult> capacitance;
    std::shared_ptr<const field::ProximityForm> proximity;  ///< null: assumption is off
    std::shared_ptr<const magnetics::CoreModel> core;
    std::shared_ptr<const magnetics::CoreLoop> loop;              ///< of `core`, in large fields
    std::map<std::string, std::shared_ptr<const Solved>> solved;  ///< by hook-up name
    std::vector<units::Figure> windingFigures;
};

/// A design in one hook-up, cut as told.
[[nodiscard]] network::Circuit circuitOf(const design::Design& design, const design::HookUp& hookUp,
                                         const Answer::Stages& stages, const Cut& cut);
/// The unit alone: no straps, earths or ports; nodes are terminals, shields, core and inner joints.
[[nodiscard]] network::Circuit unitCircuit(const design::Design& design, const Answer::Stages& stages);

/// Runs or reuses stages for one answer.
class Pipeline {
public:
    Pipeline(const design::Design& design, const catalog::Catalog& shop, const Answer::Stages* previous,
             std::stop_token stop);
    void layOut();
    void computeFields();
    /// The same with layers cut as told, so that nothing is estimated and nothing prepared for measurements; as
    /// `computeFields` where the layers are not as many.
    void computeFields(const network::Pieces& pieces);
    /// What `solve` solves carries between these frequencies; beyond, each is solved when it is asked for.
    void reach(double low, double high) {
        low_ = low;
        high_ = high;
    }
    /// Makes what `measurement` needs, where it is not there.
    void prepareMeasurements();
    /// Takes the previous answer's fields as they are, for hook-ups that are given solved; the core is the design's
    /// own.
    void takeFields();
    /// What `solve` returns for that hook-up from here on.
    void give(const std::shared_ptr<const Solved>& solved) { now_->solved[solved->hookUp.name] = solved; }
    /// Solves a hook-up of the design, or takes it from the previous answer.
    std::shared_ptr<const Solved> solve(const design::HookUp& hookUp);
    /// True where `solve` would take it from the previous answer.
    [[nodiscard]] bool known(const design::HookUp& hookUp) const;
    /// The circuit of a measurement, its layers cut as those are.
    [[nodiscard]] network::Circuit measured(const design::HookUp& hookUp) const;
    /// A network for one measurement, not kept; the hook-up may use a port of that winding's name at its ends.
    [[nodiscard]] network::Prepared measurement(const design::HookUp& hookUp, const design::Winding& across) const;

    [[nodiscard]] const Answer::Stages& stages() const noexcept { return *now_; }
    [[nodiscard]] std::shared_ptr<Answer::Stages> take() { return now_; }
    [[nodiscard]] const std::vector<Stage>& ran() const noexcept { return ran_; }
    void note(Stage stage) { ran_.push_back(stage); }
    [[nodiscard]] bool stopped() const { return stop_.stop_requested(); }
    [[nodiscard]] const std::stop_token& stopToken() const noexcept { return stop_; }
    [[nodiscard]] const Answer::Stages* previous() const noexcept { return previous_; }
    /// True when everything that figures of windings and hook-ups read is what the previous answer had.
    [[nodiscard]] bool sameFields() const noexcept;

private:
    void noteOnce(Stage stage);
    void computeElectric();
    void computeProximity();
    [[nodiscard]] Cut cutInto(network::Pieces pieces, const Cut* known);
    void cutLayers();
    const design::Design& design_;
    const catalog::Catalog& shop_;
    const Answer::Stages* previous_;
    std::stop_token stop_;
    std::shared_ptr<Answer::Stages> now_;
    std::vector<Stage> ran_;
    double low_ = lowestFrequency, high_ = highestFrequency;
};

}  // namespace analysis
