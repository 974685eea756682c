// SPDX-License-Identifier: GPL-3.0-or-later
// Time of each stage alone, and of one edit with everything that a design's window shows at 600 frequencies.
#include <benchmark/benchmark.h>

#include "analysis/answer.h"
#include "analysis/stages.h"
#include "analysis/step.h"
#include "bench_designs.h"
#include "coil/coil_build.h"
#include "field/capacitance.h"
#include "field/leakage.h"
#include "field/winding_loss.h"
#include "network/granularity.h"
#include "side_by_side.h"

namespace {

using benchmark::State;
using benchmarks::shop;
using design::DesignPtr;

/// Layers laid out as the pipeline does, with the pieces that its leakage matrix is computed for.
struct Laid {
    coil::CoilBuild build;
    coil::CoilBuild refined;
    explicit Laid(const design::Design& d)
        : build(coil::layOut(d, shop())), refined(network::refined(build, network::coarsePieces(build))) {}
};

void layOut(State& state, const DesignPtr& d) {
    for (auto step : state) benchmark::DoNotOptimize(coil::layOut(*d, shop()));
}

void leakage(State& state, const DesignPtr& d) {
    const Laid laid(*d);
    for (auto step : state) benchmark::DoNotOptimize(field::leakageMatrix(laid.refined, d->assumptions.ends));
    state.counters["branches"] = static_cast<double>(laid.refined.layers.size());
}

void capacitance(State& state, const DesignPtr& d) {
    const Laid laid(*d);
    for (auto step : state) benchmark::DoNotOptimize(field::capacitances(laid.build, d->assumptions.dielectricLoss));
    state.counters["layers"] = static_cast<double>(laid.build.layers.size());
}

/// Circuit, solved frequencies and the curves carried between them, of the first hook-up.
void solve(State& state, const DesignPtr& d) {
    for (auto step : state) {
        state.PauseTiming();
        analysis::Pipeline pipeline(*d, shop(), nullptr, {});
        pipeline.layOut();
        pipeline.computeFields();
        state.ResumeTiming();
        benchmark::DoNotOptimize(pipeline.solve(d->hookUps.front()));
    }
}

/// A turn more, a turn less, each from the answer before.
void answers(State& state, const design::Design& d, const analysis::Question& question) {
    const DesignPtr other = benchmarks::withTurns(d, 1);
    analysis::AnswerPtr before = analysis::answer(d, shop());
    bool back = false;
    for (auto step : state) {
        before = analysis::answer(back ? d : *other, shop(), before, {}, question);
        back = !back;
    }
}

/// What a key press costs before the shown hook-up's curves can be painted: everything linear.
void edit(State& state, const DesignPtr& d) {
    answers(state, *d, {"", {}, true, true});
}

/// An edit with every hook-up's figures and the traces through the core's loop, which follow the shown curves.
void wholeEdit(State& state, const DesignPtr& d) {
    answers(state, *d, {});
}

/// Fields, network and curves of the first hook-up with two branches in each layer, whatever the estimate asks for.
void twoALayer(State& state, const DesignPtr& d) {
    const analysis::AnswerPtr answer = analysis::answer(*d, shop());
    const coil::CoilBuild& build = *answer->build;
    analysis::Answer::Stages stages = *answer->stages;
    const network::Pieces two(build.layers.size(), 2);
    for (auto step : state) {
        stages.capacitance =
            std::make_shared<const field::CapacitanceResult>(field::capacitances(build, d->assumptions.dielectricLoss));
        if (d->assumptions.proximity)
            stages.proximity =
                std::make_shared<const field::ProximityForm>(field::proximityForm(build, d->assumptions.ends));
        const analysis::Cut cut{two,
                                std::make_shared<const field::LeakageResult>(
                                    field::leakageMatrix(network::refined(build, two), d->assumptions.ends)),
                                nullptr};
        const network::Prepared network(analysis::circuitOf(*d, d->hookUps.front(), stages, cut));
        benchmark::DoNotOptimize(
            network::Sweep::over(network, analysis::lowestFrequency, analysis::highestFrequency, 5e-3, 600, {}));
    }
}

/// 20 levels at each of 20 frequencies, with the search coil's network.
void distortionWith(State& state, const DesignPtr& d, analysis::LoopKind loop) {
    const analysis::AnswerPtr answer = analysis::answer(*d, shop());
    std::vector<double> levels;
    for (int i = 0; i < 20; ++i) levels.push_back(d->brief.operatingLevel - 33 + 3.0 * i);
    const std::vector<double> frequencies = analysis::logarithmicGrid(20, 20e3, 20);
    for (auto step : state)
        benchmark::DoNotOptimize(analysis::distortionTable(*d, *answer, frequencies, levels, {}, loop));
}

void distortion(State& state, const DesignPtr& d) {
    distortionWith(state, d, analysis::LoopKind::BehindEddies);
}

void distortionStatic(State& state, const DesignPtr& d) {
    distortionWith(state, d, analysis::LoopKind::Static);
}

/// Step response from a solved hook-up, 600 times.
void stepResponse(State& state, const DesignPtr& d) {
    const analysis::AnswerPtr answer = analysis::answer(*d, shop());
    const auto& solved = *answer->stages->solved.at(answer->hookUp);
    if (solved.driven() < 0 || solved.observed() < 0) return state.SkipWithError("nothing driven and observed");
    const int output = solved.network.layout().voltage(solved.driven(), solved.observed());
    const std::vector<double> times = analysis::logarithmicGrid(1e-6, 1, 600);
    for (auto step : state) {
        const analysis::StepResponse response([&](double f) { return solved.at(f, output).real(); },
                                              analysis::lowestFrequency, analysis::highestFrequency);
        for (const double t : times) benchmark::DoNotOptimize(response.at(t));
    }
}

}  // namespace

int main(int argc, char** argv) {
    for (const auto& [name, design] : benchmarks::subjects()) {
        const DesignPtr d = design;
        const auto time = [&](const char* what, void (*stage)(State&, const DesignPtr&)) {
            benchmark::RegisterBenchmark((std::string(what) + '/' + name).c_str(), [stage, d](State& s) {
                stage(s, d);
            })->Unit(benchmark::kMillisecond);
        };
        time("lay_out", layOut);
        time("leakage", leakage);
        time("capacitance", capacitance);
        time("solve", solve);
        time("edit", edit);
        time("whole_edit", wholeEdit);
        if (name.ends_with("_layers")) time("two_a_layer", twoALayer);
        time("distortion", distortion);
        time("distortion_static", distortionStatic);
        time("step_response", stepResponse);
    }
    benchmark::Initialize(&argc, argv);
    if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 2;
    benchmark::RunSpecifiedBenchmarks();
    benchmark::Shutdown();
    const bool all = benchmark::GetBenchmarkFilter().empty() || benchmark::GetBenchmarkFilter() == ".";
    return !all || benchmarks::sideBySide() ? 0 : 1;  // a filter asks for less than the comparison takes
}
