// SPDX-License-Identifier: GPL-3.0-or-later
// Impedance and input capacitance at each port.
#include <cmath>

#include "analysis/figure_making.h"
#include "network/input_capacitance.h"

namespace analysis {

void addImpedanceFigures(const HookUpContext& context, std::vector<units::Figure>& figures) {
    const auto& c = context.solved.network.circuit();
    const auto layout = context.solved.network.layout();
    for (int p = 0; p < static_cast<int>(c.ports.size()); ++p) {
        const auto& port = c.ports[static_cast<std::size_t>(p)];
        if (port.common) continue;
        for (const auto& [name, f, uncertainty] :
             {std::tuple{"impedance_20Hz.", 20.0, 0.3}, std::tuple{"impedance_1kHz.", 1e3, 0.1},
              std::tuple{"impedance_20kHz.", 20e3, 0.2}})
            figures.push_back(hookUpFigure(context, name + port.name,
                                           std::abs(context.solved.at(f, layout.impedance(p))), "ohm", uncertainty,
                                           "network solved in branch currents, all else connected", {port.name}));
    }
}

void addInputCapacitanceFigures(const HookUpContext& context, std::vector<units::Figure>& figures) {
    const auto& c = context.solved.network.circuit();
    for (int p = 0; p < static_cast<int>(c.ports.size()); ++p) {
        const auto& port = c.ports[static_cast<std::size_t>(p)];
        if (port.common) continue;
        figures.push_back(
            hookUpFigure(context, "input_capacitance." + port.name, network::inputCapacitance(c, p), "F", 0.25,
                         "energy of the linear voltages with a lossless, very large core and no load", {port.name}));
    }
}

}  // namespace analysis
