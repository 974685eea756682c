// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/core_view.h"

namespace analysis {

network::Circuit withSearchCoil(network::Circuit c) {
    // Every node needs some; over one turn this is nothing, and enough to keep 1 Hz clear of rounding.
    constexpr double capacitance = 1e-8;  // F
    const Eigen::Index branches = c.turns.size(), nodes = c.capacitance.rows();
    const auto grown = [](auto& vector, double last) {
        vector.conservativeResize(vector.size() + 1);
        vector(vector.size() - 1) = last;
    };
    const auto bordered = [](auto& matrix) {
        const Eigen::Index size = matrix.rows();
        matrix.conservativeResize(size + 1, size + 1);
        matrix.row(size).setZero();
        matrix.col(size).setZero();
    };
    c.nodes.emplace_back("search coil");
    bordered(c.capacitance);
    c.capacitance(nodes, nodes) = capacitance;
    const int node = static_cast<int>(nodes);
    c.windingBranches.push_back({node, network::earth});
    grown(c.turns, 1);
    grown(c.resistance, 0);
    grown(c.bareDiameter, 0);
    c.leakage.conservativeResize(branches, branches);
    bordered(c.leakage);
    for (auto& eddy : c.eddies) bordered(eddy.form);
    c.windingOf.push_back(-1);
    c.sectionOf.emplace_back("search coil");
    network::CircuitPort port;
    port.name = "search coil";
    port.plus = node;
    c.ports.push_back(port);
    return c;
}

CoreView::CoreView(const network::Circuit& circuit) : network_(withSearchCoil(circuit)) {}

CoreView::CoreView(const network::Circuit& circuit, double from, double to, const std::stop_token& stop)
    : CoreView(circuit) {
    constexpr double tolerance = 3e-2;  // leaves some 1e-4 (see Sweep)
    constexpr int mostSolves = 200;
    from_ = from;
    to_ = to;
    sweep_ = network::Sweep::over(network_, from, to, tolerance, mostSolves, stop);
}

CoreView::Seen CoreView::at(double frequency) const {
    const bool carried = sweep_.carries() && frequency >= from_ && frequency <= to_;
    return carried ? seen(sweep_.value(frequency)) : solvedAt(frequency);
}

CoreView::Seen CoreView::solvedAt(double frequency) const {
    return seen(network_.solve(frequency));
}

CoreView::Seen CoreView::seen(const network::ComplexVector& outputs) const {
    const auto layout = network_.layout();
    const int coil = layout.ports - 1;
    Seen seen;
    seen.impedance = outputs(layout.voltage(coil, coil));
    for (int port = 0; port < coil; ++port) seen.atPorts.push_back(outputs(layout.voltage(coil, port)));
    return seen;
}

}  // namespace analysis
