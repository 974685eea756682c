// SPDX-License-Identifier: GPL-3.0-or-later
// From an edit to the last of four plots painted, in the real window: each demo design, 600 frequencies, 1280 x 800.
//   window_bench [EDITS]   EDITS: how many a design, 40 unless given
// Times are of the wall; beside them processor time of the window's thread (laying out, painting) and of all threads,
// which a busy machine disturbs less. Offscreen unless QT_QPA_PLATFORM names another platform.
#include <QApplication>
#include <QTemporaryDir>
#include <QTimer>
#include <algorithm>
#include <cstdio>
#include <ctime>
#include <thread>
#include <vector>

#include "bench/bench_window.h"
#include "bench_designs.h"
#include "bench_place.h"

namespace {

constexpr int patience = 20000;  // ms

double milliseconds(clockid_t clock) {
    timespec now{};
    clock_gettime(clock, &now);
    return 1e3 * static_cast<double>(now.tv_sec) + 1e-6 * static_cast<double>(now.tv_nsec);
}

/// Remembers when the window last finished painting with a plot in it.
class Timekeeper : public QApplication {
public:
    using QApplication::QApplication;
    bool notify(QObject* receiver, QEvent* event) override {
        const QEvent::Type type = event->type();  // the event may be gone afterwards
        const bool plot = type == QEvent::Paint && qobject_cast<plots::Plot*>(receiver) != nullptr;
        const bool window = type == QEvent::UpdateRequest && receiver->isWidgetType();
        const bool handled = QApplication::notify(receiver, event);
        if (plot) plotPainted_ = true;
        if (window && plotPainted_) {
            painted_ = milliseconds(CLOCK_MONOTONIC);
            plotPainted_ = false;
        }
        return handled;
    }
    [[nodiscard]] double painted() const { return painted_; }

private:
    double painted_ = 0;
    bool plotPainted_ = false;
};

struct Samples {
    std::vector<double> wall, windowThread, process;
};

double quantile(std::vector<double> of, double share) {
    std::sort(of.begin(), of.end());
    return of[std::min(of.size() - 1, static_cast<std::size_t>(share * static_cast<double>(of.size())))];
}

/// Until the answer has come and everything that it queued is painted. False if it takes too long.
bool settled(const bench::BenchWindow& window) {
    QTimer limit;
    limit.setSingleShot(true);
    limit.start(patience);
    // With a time limit of its own processEvents would spin and take a core from the answer.
    while (window.computing() || !window.answer()) {
        QApplication::processEvents(QEventLoop::AllEvents | QEventLoop::WaitForMoreEvents);
        if (!limit.isActive()) return false;
    }
    for (int round = 0; round < 4; ++round) QApplication::processEvents();
    return true;
}

/// A turn more, a turn less, by turns, as typing does it.
bool measure(const Timekeeper& keeper, const benchmarks::Subject& subject, int edits, Samples& samples) {
    bench::BenchWindow window(std::make_shared<const catalog::Catalog>(benchmarks::shop()), subject.design, {});
    window.resize(1280, 800);
    window.show();
    if (!settled(window)) return false;
    const design::DesignPtr other = benchmarks::withTurns(*subject.design, 1);
    constexpr int warmUp = 2;
    for (int i = -warmUp; i < edits; ++i) {
        const double wall = milliseconds(CLOCK_MONOTONIC), own = milliseconds(CLOCK_THREAD_CPUTIME_ID),
                     all = milliseconds(CLOCK_PROCESS_CPUTIME_ID);
        window.document().preview(i % 2 == 0 ? other : subject.design);
        if (!settled(window)) return false;
        if (i < 0) continue;
        samples.wall.push_back(keeper.painted() - wall);
        samples.windowThread.push_back(milliseconds(CLOCK_THREAD_CPUTIME_ID) - own);
        samples.process.push_back(milliseconds(CLOCK_PROCESS_CPUTIME_ID) - all);
    }
    return true;
}

}  // namespace

int main(int argc, char** argv) {
    const QTemporaryDir home;
    bench_place::prepare(home);
    const Timekeeper keeper(argc, argv);
    constexpr int usual = 40;
    const auto edits = bench_place::countOf(argc, argv, usual, "window_bench", "edits");
    if (!edits) return 2;
    std::printf("platform %s, %u cores, 1280 x 800 at ratio %g, %d edits a design; ms\n",
                qPrintable(QGuiApplication::platformName()), std::thread::hardware_concurrency(),
                keeper.devicePixelRatio(), *edits);
    std::printf("%-32s %8s %8s %8s %14s %12s\n", "edit to last plot painted", "least", "median", "p95", "window thread",
                "all threads");
    for (const benchmarks::Subject& subject : benchmarks::demoDesigns()) {
        Samples samples;
        if (!measure(keeper, subject, *edits, samples)) {
            std::fprintf(stderr, "%s: no answer within 20 seconds.\n", subject.name.c_str());
            return 1;
        }
        std::printf("%-32s %8.1f %8.1f %8.1f %14.1f %12.1f\n", subject.name.c_str(), quantile(samples.wall, 0),
                    quantile(samples.wall, 0.5), quantile(samples.wall, 0.95), quantile(samples.windowThread, 0.5),
                    quantile(samples.process, 0.5));
        std::fflush(stdout);
    }
    return 0;
}
