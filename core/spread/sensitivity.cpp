// SPDX-License-Identifier: GPL-3.0-or-later
#include "spread/sensitivity.h"

#include <algorithm>
#include <cmath>
#include <mutex>

#include "analysis/in_threads.h"

namespace spread {

namespace {

double stepOf(const Varying& v) {
    if (v.law.kind != catalog::Law::Discrete) return v.law.deviation(v.nominal);
    double greatest = 0;
    for (const auto& s : v.law.steps) greatest = std::max(greatest, std::abs(s.step));
    return v.law.relative ? greatest * v.nominal : greatest;
}

}  // namespace

std::vector<std::vector<Slope>> sensitivities(const Study& study, const std::stop_token& stop,
                                              const Study::Progress& progress, unsigned threads) {
    const auto& all = study.variation().all;
    const std::vector<double> nominal = nominals(study.variation());
    std::vector<analysis::Found> above(all.size()), below(all.size());
    std::mutex telling;
    std::uint64_t done = 0;
    analysis::inThreads(all.size(), threads, stop, [&] {
        return [&](std::size_t k) {
            auto values = nominal;
            values[k] = nominal[k] + stepOf(all[k]);
            above[k] = study.unit(values);
            values[k] = nominal[k] - stepOf(all[k]);
            below[k] = study.unit(values);
            const std::lock_guard lock(telling);
            ++done;
            if (progress && !stop.stop_requested()) progress(done);
        };
    });
    if (stop.stop_requested()) return {};
    std::vector<std::vector<Slope>> slopes(study.columns().size());
    for (std::size_t c = 0; c < slopes.size(); ++c) {
        for (std::size_t k = 0; k < all.size(); ++k) {
            const double slope = (above[k].values[c] - below[k].values[c]) / (2 * stepOf(all[k]));
            slopes[c].push_back({k, slope, slope * all[k].law.deviation(all[k].nominal)});
        }
        std::stable_sort(slopes[c].begin(), slopes[c].end(), [](const Slope& a, const Slope& b) {
            const double x = std::isfinite(a.effect) ? std::abs(a.effect) : -1;
            return x > (std::isfinite(b.effect) ? std::abs(b.effect) : -1);
        });
    }
    return slopes;
}

}  // namespace spread
