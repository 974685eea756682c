// SPDX-License-Identifier: GPL-3.0-or-later
// How long it takes to read a program of 5,000 blocks, run it and compare it with its design: at most 50 ms is wanted.
#include <benchmark/benchmark.h>

#include "exchange/design_json.h"
#include "exchange/load_catalog.h"
#include "exchange/read_file.h"
#include "exchange/winding_program.h"
#include "replay/comparison.h"

namespace {

const std::string sources = COILWRIGHT_SOURCE_DIR;

void replayed(benchmark::State& state) {
    const catalog::Catalog shop = exchange::loadCatalog({sources + "/resources"});
    const std::string file = sources + "/demo-projects/direct-box/direct-box.coilwright";
    design::Design design = *exchange::readDesign(exchange::readFile(file), file, shop).design;
    // Few turns in each layer make many layers, and each layer some blocks.
    for (auto& item : design.coil[0].order)
        if (auto* section = item.section()) section->turnsPerLayer = 7;
    const std::string path = sources + "/resources/winders/single-traverse.json", text = exchange::readFile(path);
    const exchange::Winder winder = exchange::readWinder(text, path);
    const replay::Machine machine = replay::readMachine(text, path);
    const coil::CoilBuild build = coil::layOut(design, shop);
    const std::string program = exchange::windingProgram(exchange::windingPlan(design, build, shop, winder, 1), winder);
    std::size_t blocks = 0;
    for (auto step : state) {
        const replay::Run run = replay::run(replay::readProgram(program, "program"), machine);
        const auto found = replay::compare(run, replay::expected(design, build, shop, machine, 1), machine);
        benchmark::DoNotOptimize(found.wire);
        blocks = static_cast<std::size_t>(run.blocks);
    }
    state.counters["blocks"] = static_cast<double>(blocks);
    state.counters["ms_for_5000"] =
        benchmark::Counter(static_cast<double>(state.iterations()) * static_cast<double>(blocks) / 5000,
                           benchmark::Counter::kIsRate | benchmark::Counter::kInvert);
}
BENCHMARK(replayed)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
