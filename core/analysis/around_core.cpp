// SPDX-License-Identifier: GPL-3.0-or-later
// The network around a core without its static inductance, for stepping in time.
#include <algorithm>
#include <numbers>

#include "analysis/distortion.h"
#include "network/in_parallel.h"

namespace analysis {

namespace {

using network::Complex;
constexpr double lowest = 1, highest = 300e3;  // Hz, of the network's search coil
constexpr double carriedFrom = 30;             // Hz; below, differences want more digits than a sweep has
constexpr int pointsADecade = 14, deepest = 5;
constexpr double straight = 0.02;  // of a function's size: nearer, the fit needs no point between

/// Whether some function at the middle of two frequencies is far from the mean of its neighbours.
bool bends(const AroundCore& low, const AroundCore& middle, const AroundCore& high,
           const std::vector<double>& greatest) {
    const auto a = low.all(), b = middle.all(), c = high.all();
    for (std::size_t i = 0; i < a.size(); ++i)
        if (std::abs(b[i] - (a[i] + c[i]) / 2.0) > straight * greatest[i]) return true;
    return false;
}

}  // namespace

/// With the search coil's impedance Z and its transfer T to a port, both with the linear core, and the core's voltage
/// V: taking out Lambda_0 divides Z, T and V by  1 - Z / (j w Lambda_0)  and adds to a port's voltage what the current
/// V / (j w Lambda_0), with V so divided, had dropped there. Where Z is all but
/// the core's own the difference is small and less certain by so much.
AroundCore LargeSignal::around(double frequency) const {
    const auto& circuit = solved_.network.circuit();
    const auto layout = solved_.network.layout();
    const Complex lambda = Complex(0, 2 * std::numbers::pi * frequency) * magnetics::turnInductance(*stages_.core, 0);
    const bool exact = frequency < carriedFrom;
    const CoreView::Seen seen = exact ? view_.solvedAt(frequency) : view_.at(frequency);
    const network::ComplexVector outputs = exact ? solved_.network.solve(frequency) : solved_.at(frequency);
    const Complex without = 1.0 - seen.impedance / lambda, voltage = outputs(layout.coreVoltage(driven_));
    const auto drop = [&](int port) { return seen.atPorts[static_cast<std::size_t>(port)] / without; };
    const auto emfTo = [&](int port) { return outputs(layout.voltage(driven_, port)) + drop(port) * voltage / lambda; };
    AroundCore around{voltage / without,
                      seen.impedance / without,
                      emfTo(observed_),
                      drop(observed_),
                      0,
                      0,
                      std::min(1.0, std::abs(without))};
    const Complex through = network::throughImpedance(circuit, driven_, frequency);
    if (through != 0.0) {
        around.source = (1.0 - emfTo(driven_)) / through;
        around.sourceToCore = drop(driven_) / through;
    }
    return around;
}

CoreNetwork LargeSignal::inTime() const {
    std::vector<double> frequencies = logarithmicGrid(lowest, highest, int(pointsADecade * 5.5));
    std::vector<AroundCore> all(frequencies.size());
    network::inParallel(all.size(), [&](std::size_t i) { all[i] = around(frequencies[i]); });
    std::vector<double> greatest(all.front().all().size(), 0);
    for (const AroundCore& at : all)
        for (std::size_t i = 0; i < greatest.size(); ++i) greatest[i] = std::max(greatest[i], std::abs(at.all()[i]));
    for (int depth = 0; depth < deepest; ++depth) {
        std::vector<char> open(all.size(), 0);  // of the interval above each
        for (std::size_t i = 1; i + 1 < all.size(); ++i)
            if (bends(all[i - 1], all[i], all[i + 1], greatest)) open[i - 1] = open[i] = 1;
        std::vector<double> closer;
        std::vector<AroundCore> closerAll;
        for (std::size_t i = 0; i < all.size(); ++i) {
            closer.push_back(frequencies[i]);
            closerAll.push_back(all[i]);
            if (open[i] == 0) continue;
            closer.push_back(std::sqrt(frequencies[i] * frequencies[i + 1]));
            closerAll.push_back(around(closer.back()));
        }
        if (closer.size() == all.size()) break;
        frequencies = std::move(closer);
        all = std::move(closerAll);
    }
    return {frequencies, all, stages_.core->area, stages_.core->pathLength};
}

}  // namespace analysis
