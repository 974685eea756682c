// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/input_capacitance.h"

#include <Eigen/LU>
#include <algorithm>

#include "network/ladders.h"

namespace network {

namespace {

Matrix unitOwn(const Circuit& circuit) {
    Matrix capacitance = circuit.capacitance.real();
    for (const auto& port : circuit.ports)
        for (const int a : {port.plus, port.minus})
            for (const int b : {port.plus, port.minus})
                if (a != earth && b != earth) capacitance(a, b) -= (a == b ? 1 : -1) * port.acrossCapacitance;
    return capacitance;
}

}  // namespace

double inputCapacitance(const Circuit& circuit, int portIndex) {
    const Ladders set = ladders(circuit);
    const double between = portTurns(circuit, set, portIndex);
    if (between == 0) return 0;
    std::vector<int> held{0};
    Vector volts = set.turns / between;
    for (const auto& p : circuit.ports) {
        if (p.through.size() != 2 || p.plus == earth || p.minus == earth) continue;
        const int island = set.island[static_cast<std::size_t>(p.plus)];
        if (island != set.island[static_cast<std::size_t>(p.minus)] ||
            std::find(held.begin(), held.end(), island) != held.end())
            continue;
        held.push_back(island);
        const double middle = (volts(p.plus) + volts(p.minus)) / 2;
        for (Eigen::Index n = 0; n < volts.size(); ++n)
            if (set.island[static_cast<std::size_t>(n)] == island) volts(n) -= middle;
    }
    const Matrix capacitance = unitOwn(circuit);
    Matrix floats = Matrix::Zero(volts.size(), set.count);
    for (Eigen::Index n = 0; n < volts.size(); ++n) floats(n, set.island[static_cast<std::size_t>(n)]) = 1;
    for (const int island : held) floats.col(island).setZero();
    // Held islands leave a zero row and column, for which the full-pivot solution takes no shift.
    const Matrix shiftForm = floats.transpose() * capacitance * floats;
    const Vector shift = shiftForm.fullPivLu().solve(floats.transpose() * capacitance * volts);
    const Vector least = volts - floats * shift;
    return least.dot(capacitance * least);
}

}  // namespace network
