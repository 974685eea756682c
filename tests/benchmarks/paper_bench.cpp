// SPDX-License-Identifier: GPL-3.0-or-later
// How long every paper of a design of twelve windings takes, made and painted as PDF, and all of them in a row.
//   paper_bench [ROUNDS]   3 unless given; the least of them is told; exit 1 if all take more than a second
// The answer to the design is there before: the window shows it while papers are asked for. Each round is one source,
// so that papers share what they have in common. Beside the clock stands the processor's time of all threads.
#include <QApplication>
#include <QTemporaryDir>
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <ctime>

#include "bench_place.h"
#include "made_of.h"
#include "tried_designs.h"

namespace {

struct Time {
    double wall = 0, processor = 0;  ///< ms
    void least(const Time& other) {
        if (wall == 0 || other.wall < wall) *this = other;
    }
};

class Clock {
public:
    [[nodiscard]] Time passed() const {
        const std::chrono::duration<double, std::milli> wall = std::chrono::steady_clock::now() - wall_;
        return {wall.count(), 1e3 * static_cast<double>(std::clock() - processor_) / CLOCKS_PER_SEC};
    }

private:
    std::chrono::steady_clock::time_point wall_ = std::chrono::steady_clock::now();
    std::clock_t processor_ = std::clock();
};

void print(const char* what, const Time& time) {
    std::printf("%-20s %8.0f %12.0f\n", what, time.wall, time.processor);
}

}  // namespace

int main(int argc, char** argv) {
    const QTemporaryDir home;
    bench_place::prepare(home);
    const QApplication application(argc, argv);
    constexpr int usual = 3;
    const auto rounds = bench_place::countOf(argc, argv, usual, "paper_bench", "rounds");
    if (!rounds) return 2;
    constexpr double most = 1000;
    const auto& kinds = papers::paperKinds();
    std::vector<Time> best(kinds.size());
    Time all;
    for (int round = 0; round < *rounds; ++round) {
        papers::Source source = made_of::sourceOf(tried::manyWindings(12));
        (void)source.answer();
        const Clock together;
        for (std::size_t k = 0; k < kinds.size(); ++k) {
            const Clock one;
            (void)papers::paintedPdf(papers::made(kinds[k], source).printed);
            best[k].least(one.passed());
        }
        all.least(together.passed());
    }
    std::printf("%-20s %8s %12s   least of %d, 12 windings\n", "paper", "ms", "processor ms", *rounds);
    for (std::size_t k = 0; k < kinds.size(); ++k) print(kinds[k].key, best[k]);
    print("all, in a row", all);
    return all.wall <= most ? 0 : 1;
}
