// SPDX-License-Identifier: GPL-3.0-or-later
// Gain and insertion loss at 1 kHz.
#include <cmath>

#include "analysis/figure_making.h"
#include "network/ladders.h"
#include "network/port_networks.h"

namespace analysis {

namespace {

using network::Complex;
constexpr double referenceFrequency = 1000;

/// Level at a port, re source EMF, of an ideal transformer of the same turns between the same networks.
double idealLevel(const network::Circuit& c, int driven, int port) {
    const auto set = network::ladders(c);
    const double turns = network::portTurns(c, set, driven);
    Complex load = 0;
    for (int p = 0; p < static_cast<int>(c.ports.size()); ++p) {
        const double ratio = network::portTurns(c, set, p) / turns;
        load += ratio * ratio * network::portAdmittance(c, p, referenceFrequency);
    }
    const Complex source = network::throughImpedance(c, driven, referenceFrequency);
    return std::abs(network::portTurns(c, set, port) / turns / (1.0 + source * load));
}

double decibel(double ratio) {
    return 20 * std::log10(ratio);
}

}  // namespace

void addLevelFigures(const HookUpContext& context, std::vector<units::Figure>& figures) {
    const auto& c = context.solved.network.circuit();
    const int driven = context.solved.driven();
    if (driven < 0) return;
    const auto layout = context.solved.network.layout();
    const auto outputs = context.solved.at(referenceFrequency);
    const auto& drive = c.ports[static_cast<std::size_t>(driven)];
    for (int p = 0; p < static_cast<int>(c.ports.size()); ++p) {
        if (p == driven) continue;
        const auto& port = c.ports[static_cast<std::size_t>(p)];
        const std::string tail = p == context.solved.observed() ? "" : "." + port.name;
        const double gain = decibel(std::abs(outputs(layout.voltage(driven, p))));
        figures.push_back(hookUpFigure(context, "gain_1kHz" + tail, gain, "dB", 0.1,
                                       "network solved in branch currents", {drive.name, port.name}));
        if (drive.common || drive.through.empty()) continue;
        const double ideal = idealLevel(c, driven, p);
        if (!(ideal > 0) || !std::isfinite(ideal)) continue;
        figures.push_back(
            hookUpFigure(context, "insertion_loss" + tail, decibel(ideal) - gain, "dB", 0.1,
                         "level of an ideal transformer of the same turns between the same networks, less the gain",
                         {drive.name, port.name}));
    }
}

}  // namespace analysis
