// SPDX-License-Identifier: GPL-3.0-or-later
#include "side_by_side.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>

#include "analysis/answer.h"
#include "bench_designs.h"
#include "exchange/netlist.h"
#include "exchange/write_file.h"

namespace benchmarks {

namespace {

template <class Work>
double milliseconds(const Work& work) {
    const auto start = std::chrono::steady_clock::now();
    work();
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
}

double editTime(const design::Design& d) {
    const auto other = withTurns(d, 1);
    analysis::Question question;
    question.everyHookUp = false;
    auto before = analysis::answer(d, shop(), {}, {}, question);
    std::vector<double> all;
    for (int k = 0; k < 7; ++k)
        all.push_back(
            milliseconds([&] { before = analysis::answer(k % 2 == 0 ? *other : d, shop(), before, {}, question); }));
    std::nth_element(all.begin(), all.begin() + 3, all.end());
    return all[3];
}

/// Negative if it fails.
double ngspiceTime(const design::Design& d, const std::string& name) {
    const auto folder = std::filesystem::temp_directory_path() / ("side_by_side_" + name);
    std::filesystem::create_directories(folder);
    std::string text = exchange::netlist(d, *analysis::answer(d, shop()));
    const std::string usual = "ac dec 40 10 1meg";
    text.replace(text.rfind(usual), usual.size(), "ac dec 120 10 1meg");
    exchange::writeFile((folder / "unit.cir").string(), text);
    const std::string command = "cd '" + folder.string() + "' && ngspice -b unit.cir > ngspice.log 2>&1";
    int status = 0;
    const double time = milliseconds([&] { status = std::system(command.c_str()); });
    std::filesystem::remove_all(folder);
    return status == 0 ? time : -1;
}

}  // namespace

bool sideBySide() {
    std::printf("\n%-32s %12s %12s %8s\n", "side by side", "edit ms", "ngspice ms", "ratio");
    bool ran = true;
    for (const auto& [name, d] : subjects()) {
        const double own = editTime(*d), theirs = ngspiceTime(*d, name);
        ran = ran && theirs >= 0;
        std::printf("%-32s %12.1f %12.0f %8.0f\n", name.c_str(), own, theirs, theirs / own);
        std::fflush(stdout);
    }
    return ran;
}

}  // namespace benchmarks
