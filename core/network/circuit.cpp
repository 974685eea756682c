// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/circuit.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace network {

int Circuit::portOfRole(design::Role role) const {
    for (std::size_t i = 0; i < ports.size(); ++i)
        if (ports[i].role == role) return static_cast<int>(i);
    return -1;
}

namespace {

Complex fromTable(const std::vector<design::ImpedancePoint>& table, double f) {
    const auto value = [](const design::ImpedancePoint& p) { return Complex(p.real, p.imaginary); };
    if (f <= table.front().frequency) return value(table.front());
    if (f >= table.back().frequency) return value(table.back());
    const auto above = std::upper_bound(table.begin(), table.end(), f,
                                        [](double x, const design::ImpedancePoint& p) { return x < p.frequency; });
    const auto below = above - 1;
    const double t = std::log(f / below->frequency) / std::log(above->frequency / below->frequency);
    return value(*below) * (1 - t) + value(*above) * t;
}

}  // namespace

Complex impedance(const LumpedBranch& branch, double frequency) {
    if (!branch.table.empty()) return branch.share * fromTable(branch.table, frequency);
    const double w = 2 * std::numbers::pi * frequency;
    const auto& e = branch.element;
    Complex z(e.resistance, w * e.inductance);
    if (e.capacitance > 0) z += 1.0 / Complex(0, w * e.capacitance);
    return branch.share * z;
}

Complex throughImpedance(const Circuit& circuit, int port, double frequency) {
    Complex sum = 0;
    for (const int t : circuit.ports[static_cast<std::size_t>(port)].through)
        sum += impedance(circuit.lumped[static_cast<std::size_t>(t)], frequency);
    return sum;
}

}  // namespace network
