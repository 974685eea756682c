// SPDX-License-Identifier: GPL-3.0-or-later
// Units a second of a spread: a design of 24 layers with all that its brief promises, then the demo designs.
//   spread_bench [UNITS]     10 000 unless told; exit 1 if 10 000 of 24 layers would take more than 20 s
#include <charconv>
#include <chrono>
#include <cstdio>
#include <cstring>

#include "bench_designs.h"
#include "exchange/load_tolerances.h"
#include "spread/run.h"

namespace {

double seconds(std::chrono::steady_clock::time_point since) {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - since).count();
}

/// Time of that many units with everything that goes before them, s.
double timed(const benchmarks::Subject& subject, std::uint64_t units) {
    static const auto tolerances = exchange::loadTolerances({COILWRIGHT_SOURCE_DIR "/resources"});
    spread::Plan plan;
    plan.units = units;
    const auto start = std::chrono::steady_clock::now();
    const spread::Study study(*subject.design, benchmarks::shop(), tolerances, plan);
    const double before = seconds(start);
    const auto batch = study.run(0, units);
    const double all = seconds(start);
    std::printf("%-24s %zu vary, %llu units: %.2f s, of that %.2f s before the first; %.3f ms a unit%s\n",
                subject.name.c_str(), study.variation().all.size(), static_cast<unsigned long long>(units), all, before,
                1e3 * (all - before) / static_cast<double>(units), study.expansion().units > 0 ? "" : ", not expanded");
    for (std::size_t c = 0; c < study.columns().size() && study.expansion().units > 0; ++c)
        std::printf("    %-24s off by %.3g %s\n", study.columns()[c].name.c_str(), study.expansion().worst[c],
                    study.columns()[c].unit.c_str());
    return before + (all - before) * 1e4 / static_cast<double>(units);
}

}  // namespace

int main(int argc, char** argv) {
    constexpr double most = 20;
    std::uint64_t units = 10000;
    if (argc > 1 && std::from_chars(argv[1], argv[1] + std::strlen(argv[1]), units).ec != std::errc{}) return 2;
    double ofMany = 0;
    for (const auto& subject : benchmarks::subjects()) {
        if (subject.name == "24_layers") ofMany = timed(subject, units);
    }
    for (const auto& demo : benchmarks::demoDesigns()) timed(demo, std::max<std::uint64_t>(1, units / 10));
    std::printf("10 000 units of 24 layers: %.1f s (at most %.0f)\n", ofMany, most);
    return ofMany <= most ? 0 : 1;
}
