// SPDX-License-Identifier: GPL-3.0-or-later
// Impedance into the unit at each port, everything else connected.
#include <cmath>
#include <numbers>

#include "analysis/trace_making.h"

namespace analysis {

std::shared_ptr<const Trace> impedanceTrace(const TraceContext& context) {
    const auto& ports = context.solved.network.circuit().ports;
    const auto layout = context.solved.network.layout();
    const int driven = context.solved.driven(), observed = context.solved.observed();
    std::vector<int> order;
    for (const int p : {driven, observed})
        if (p >= 0) order.push_back(p);
    for (int p = 0; p < static_cast<int>(ports.size()); ++p)
        if (p != driven && p != observed) order.push_back(p);
    std::vector<std::string> names;
    for (const int p : order) names.push_back(ports[static_cast<std::size_t>(p)].name);
    Trace trace =
        startTrace(context, "impedance", names, "voltage over current into the unit at the port, all else connected");
    for (const int p : order) {
        const auto& port = ports[static_cast<std::size_t>(p)];
        if (port.common) continue;
        const std::string side = p == driven ? "source_side" : p == observed ? "load_side" : port.name;
        const std::string people = p == driven ? "source side" : p == observed ? "load side" : port.name;
        trace.curves.push_back({side + "_ohm", people, units::Kind::Resistance, "ohm", {}, true, {}});
        trace.curves.push_back({side + "_deg", people + " angle", units::Kind::Angle, "deg", {}, false, {}});
    }
    for (const double f : context.frequencies) {
        const auto values = context.solved.at(f);
        std::size_t at = 0;
        for (const int p : order) {
            if (ports[static_cast<std::size_t>(p)].common) continue;
            const auto z = values(layout.impedance(p));
            trace.curves[at++].y.push_back(std::abs(z));
            trace.curves[at++].y.push_back(std::arg(z) * 180 / std::numbers::pi);
        }
    }
    return std::make_shared<const Trace>(std::move(trace));
}

}  // namespace analysis
