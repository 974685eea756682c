// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/unit_losses.h"

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>
#include <Eigen/LU>
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

#include "analysis/stages.h"
#include "magnetics/permeability.h"
#include "magnetics/stack.h"
#include "network/solve.h"
#include "units/fault.h"

namespace exchange {

namespace {

using network::Circuit;
using network::Matrix;
using network::Vector;

constexpr double lowest = 10, highest = analysis::highestFrequency;
constexpr std::array zerosOfJ0{2.404825557695773, 5.520078110286311, 8.653727912911013, 11.791534439014281,
                               14.930917708487787};
constexpr std::array zerosOfJ1{3.831705970207512, 7.015586669815619, 10.173468135062722, 13.323691936314223,
                               16.470630050877634};

/// Relaxations of one wire: weight and tau of each pole within the band, and one for all beyond; `whole` is the sum of
/// weight tau over all poles.
std::vector<Relaxation> poles(const std::array<double, 5>& zeros, double time, double whole,
                              double (*weight)(double zero, double time)) {
    constexpr double beyond = 8;  // poles so far above the band act as one
    std::vector<Relaxation> all;
    for (const double zero : zeros) {
        const double tau = time / (zero * zero);
        if (2 * std::numbers::pi * highest * tau * beyond < 1 || zero == zeros.back()) {
            all.push_back({whole / tau, tau});
            break;
        }
        all.push_back({weight(zero, time), tau});
        whole -= all.back().weight * tau;
    }
    return all;
}

/// mu0 a^2 / rho.
double wireTime(double bareDiameter, double resistivity) {
    return magnetics::mu0 * bareDiameter * bareDiameter / (4 * resistivity);
}

/// One form of eddy currents and the relaxations of its wire.
struct Eddies {
    Matrix form;  ///< H for a weight of 1
    std::vector<Relaxation> poles;
};

void addProximity(const Circuit& unit, std::vector<Eddies>& all) {
    for (const auto& group : unit.eddies) {
        if (group.bareDiameter <= 0 || group.form.cwiseAbs().maxCoeff() == 0) continue;
        const double time = wireTime(group.bareDiameter, unit.resistivity);
        const double scale = magnetics::mu0 * std::numbers::pi * group.bareDiameter * group.bareDiameter / 2;
        all.push_back(
            {scale * group.form, poles(zerosOfJ0, time, time / 8, [](double z, double) { return 4 / (z * z); })});
    }
}

void addSkin(const Circuit& unit, std::vector<Eddies>& all) {
    Vector diameters = unit.bareDiameter;
    std::sort(diameters.data(), diameters.data() + diameters.size());
    double done = 0;
    for (const double diameter : diameters) {
        if (diameter <= done) continue;
        done = diameter;
        const double time = wireTime(diameter, unit.resistivity);
        constexpr double nothing = 1e-4;  // of the resistance, at the top of the band
        if (std::pow(2 * std::numbers::pi * highest * time, 2) / 192 < nothing) continue;
        const Vector resistance = (unit.bareDiameter.array() == diameter).select(unit.resistance, 0);
        all.push_back({Matrix(resistance.asDiagonal()),
                       poles(zerosOfJ1, time, time * time / 192, [](double z, double t) { return t / (z * z); })});
    }
}

/// Cholesky factor of a matrix in units of many sizes; empty if it is not safely positive definite.
Matrix safeFactor(const Matrix& m) {
    if (m.diagonal().minCoeff() <= 0) return {};
    const Vector scale = m.diagonal().cwiseSqrt(), inverse = scale.cwiseInverse();
    const Matrix even = inverse.asDiagonal() * m * inverse.asDiagonal();
    if (Eigen::SelfAdjointEigenSolver<Matrix>(even, Eigen::EigenvaluesOnly).eigenvalues()(0) < 1e-9) return {};
    return scale.asDiagonal() * Matrix(even.llt().matrixL());
}

/// One mode's share of flux displaced, in units of its inductance: jw (1 + extra - weight jw tau/(1 + jw tau)).
struct TamedMode {
    double extra = 0, weight = 0, tau = 0;
};

/// The loop, and the inductance beside it, that come nearest from 30 kHz to 1 MHz to poles that displace `displaced`
/// times more flux than there is; the loop displaces at most `most` of all.
TamedMode tamed(const std::vector<Relaxation>& wire, double displaced, double most) {
    constexpr int points = 16;
    using Row = Eigen::Array<network::Complex, points, 1>;
    Row s, wanted = Row::Zero();
    for (int k = 0; k < points; ++k) s(k) = {0, 2 * std::numbers::pi * highest * std::pow(30.0, k / 15.0 - 1)};
    for (const auto& pole : wire) wanted -= displaced * pole.weight * s * pole.tau / (1.0 + s * pole.tau);
    TamedMode best;
    double least = std::numeric_limits<double>::max();
    for (double reach = 0.05; reach < 200; reach *= 1.2) {
        const double tau = reach / (2 * std::numbers::pi * highest);
        const Row loop = s * tau / (1.0 + s * tau);
        const auto dot = [](const Row& x, const Row& y) { return (x.conjugate() * y).sum().real(); };
        const auto take = [&](double extra, double weight) {
            extra = std::max(0.0, extra);
            weight = std::clamp(weight, 0.0, most * (1 + extra));
            const double off = (wanted - extra + weight * loop).abs2().sum();
            if (off < least) {
                least = off;
                best = {extra, weight, tau};
            }
        };
        take(0, -dot(loop, wanted) / dot(loop, loop));
        const Row both = 1.0 - most * loop;
        const double edge = std::max(0.0, dot(both, Row(wanted + most * loop)) / dot(both, both));
        take(edge, most * (1 + edge));
        Eigen::Matrix2d normal;
        normal << points, -loop.real().sum(), -loop.real().sum(), dot(loop, loop);
        const Eigen::Vector2d free = normal.inverse() * Eigen::Vector2d(wanted.real().sum(), -dot(loop, wanted));
        take(free(0), free(1));
    }
    return best;
}

/// Loops of one form, mode by mode in the metric of the inductance that is `left` with all loops before shorted.
/// `exact`: as they come. Else a mode displaces no more than nearly all flux, and its inductance grows where that comes
/// nearer.
void addLoops(const Eddies& eddies, bool exact, Matrix& left, UnitLosses& losses) {
    constexpr double most = 0.95;
    constexpr double nothing = 3e-5;  // of a mode's reactance, at the top of the band
    const Matrix factor = safeFactor(left);
    const auto lower = factor.triangularView<Eigen::Lower>();
    const Matrix half = lower.solve(eddies.form);
    const Eigen::SelfAdjointEigenSolver<Matrix> solver(lower.solve(half.transpose()));
    double weights = 0;
    for (const auto& pole : eddies.poles) weights += pole.weight;
    for (Eigen::Index k = 0; k < factor.rows(); ++k) {
        const double displaced = solver.eigenvalues()(k);
        const Vector shape = factor * solver.eigenvectors().col(k);
        const auto add = [&](double weight, double tau) {
            if (weight * std::min(1.0, 2 * std::numbers::pi * highest * tau) < nothing) return;
            losses.loops.push_back({weight, tau, shape});
            if (!exact) left -= weight * shape * shape.transpose();
        };
        if (exact || displaced * weights <= most) {
            for (const auto& pole : eddies.poles) add(displaced * pole.weight, pole.tau);
            continue;
        }
        const TamedMode mode = tamed(eddies.poles, displaced, most);
        const Matrix extra = mode.extra * shape * shape.transpose();
        losses.leakage += extra;
        left += extra;
        add(mode.weight, mode.tau);
    }
}

RelaxationSum coreSum(const Circuit& unit, double constant) {
    RelaxationTask task;
    task.function = [&](double f) { return magnetics::turnInductance(unit.core, f); };
    task.from = lowest;
    task.to = highest;
    task.perDecade = 20;
    task.constant = constant;
    return relaxationSum(task);
}

RelaxationSum dielectricSum() {
    RelaxationTask task;
    task.function = [](double) { return std::complex<double>(0, -1); };
    constexpr double mattersFrom = 20e3;
    task.weight = task.weightOfLoss = [](double f) { return std::min(1.0, std::sqrt(f / mattersFrom)); };
    task.from = lowest;
    task.to = highest;
    task.perDecade = 1;
    task.freeConstant = true;
    return relaxationSum(task);
}

double windingResidual(const Circuit& unit, const UnitLosses& losses) {
    double worst = 0;
    for (const double f : {1e3, 1e4, 3e4, 1e5, 3e5, 1e6}) {
        const double w = 2 * std::numbers::pi * f;
        network::ComplexMatrix z = network::windingImpedance(unit, f);
        z -= network::Complex(0, w) * magnetics::turnInductance(unit.core, f) *
             (unit.turns * unit.turns.transpose()).cast<network::Complex>();
        const double size = z.norm();
        z -= network::Complex(0, w) *
             (losses.leakage - losses.core.constant * unit.turns * unit.turns.transpose()).cast<network::Complex>();
        z.diagonal() -= unit.resistance.cast<network::Complex>();
        for (const auto& loop : losses.loops)
            z -= w * w * loop.tau * loop.weight / network::Complex(1, w * loop.tau) *
                 (loop.shape * loop.shape.transpose()).cast<network::Complex>();
        worst = std::max(worst, z.norm() / size);
    }
    return worst;
}

}  // namespace

UnitLosses unitLosses(const Circuit& unit, bool exact) {
    UnitLosses losses;
    const Matrix square = unit.turns * unit.turns.transpose();
    // The least of the core's inductance, taken out of its losses, that makes the leakage an inductance by itself.
    const double top = std::abs(magnetics::turnInductance(unit.core, highest));
    double constant = top / 50;
    Matrix factor = safeFactor(unit.leakage + constant * square);
    while (factor.size() == 0 && constant < top / 4) factor = safeFactor(unit.leakage + (constant *= 2) * square);
    if (factor.size() == 0)
        units::refuse("netlist", "a leakage matrix that is no inductance",
                      "windings that lie within the window and do not overlap");
    losses.core = coreSum(unit, constant);
    losses.leakage = unit.leakage + constant * square;
    std::vector<Eddies> eddies;
    addSkin(unit, eddies);
    addProximity(unit, eddies);
    Matrix left = losses.leakage;
    for (const auto& each : eddies) addLoops(each, exact, left, losses);
    losses.dielectric = dielectricSum();
    losses.windingResidual = windingResidual(unit, losses);
    return losses;
}

}  // namespace exchange
