// SPDX-License-Identifier: GPL-3.0-or-later
// Where the response falls and where it peaks.
#include <cmath>
#include <limits>

#include "analysis/figure_making.h"

namespace analysis {

void addBandFigures(const HookUpContext& context, std::vector<units::Figure>& figures) {
    const int driven = context.solved.driven(), observed = context.solved.observed();
    if (driven < 0 || observed < 0) return;
    const auto layout = context.solved.network.layout();
    const auto& c = context.solved.network.circuit();
    if (c.ports[static_cast<std::size_t>(driven)].common) return;  // a rejection has no band edges
    const auto power = [&](double f) { return std::norm(context.solved.at(f, layout.voltage(driven, observed))); };
    const double reference = power(1000);
    const auto level = [&](double f) { return 10 * std::log10(power(f) / reference); };
    // Five points over two thirds of an octave.
    const auto smoothed = [&](double f) {
        double sum = 0;
        for (int k = -2; k <= 2; ++k) sum += power(f * std::pow(2.0, k / 6.0));
        return 10 * std::log10(sum / 5 / reference);
    };
    const double halfPower = 10 * std::log10(0.5);
    constexpr double none = std::numeric_limits<double>::quiet_NaN();
    const std::vector<std::string> ports{c.ports[static_cast<std::size_t>(driven)].name,
                                         c.ports[static_cast<std::size_t>(observed)].name};
    const std::string source = "response re 1 kHz, network of one or more branches a layer";
    // The upper end goes with the root of leakage and capacitance, each by chance.
    const double chance = std::hypot(context.stages.cut.leakage->spread, context.stages.capacitance->spread) / 2;
    const double upper = std::hypot(0.2, chance);
    const auto low = firstFall(level, 1000, lowestFrequency, halfPower);
    const auto high = firstFall(level, 1000, highestFrequency, halfPower);
    const auto smooth = firstFall(smoothed, 1000, highestFrequency / std::pow(2.0, 1.0 / 3), halfPower);
    const auto peak = firstMaximum(level, 3000, highestFrequency, 1e-3);
    figures.push_back(hookUpFigure(context, "low_3dB", low.found ? low.frequency : none, "Hz", 0.3, source, ports));
    figures.push_back(
        hookUpFigure(context, "high_3dB_first", high.found ? high.frequency : none, "Hz", upper, source, ports));
    figures.push_back(
        hookUpFigure(context, "high_3dB_smoothed", smooth.found ? smooth.frequency : none, "Hz", upper, source, ports));
    figures.push_back(
        hookUpFigure(context, "peak_frequency", peak.found ? peak.frequency : none, "Hz", upper, source, ports));
    figures.push_back(
        hookUpFigure(context, "peak_level", peak.found ? level(peak.frequency) : none, "dB", 0.5, source, ports));
}

}  // namespace analysis
