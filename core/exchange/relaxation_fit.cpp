// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/relaxation_fit.h"

#include <Eigen/QR>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace exchange {

namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

constexpr int pointsPerDecade = 24;

VectorXd solvedOn(const MatrixXd& a, const VectorXd& b, const std::vector<Index>& used) {
    MatrixXd part(a.rows(), static_cast<Index>(used.size()));
    for (std::size_t k = 0; k < used.size(); ++k) part.col(static_cast<Index>(k)) = a.col(used[k]);
    return part.colPivHouseholderQr().solve(b);
}

/// Moves x towards the unconstrained solution on `used` and drops what would turn negative, until nothing does.
void settle(const MatrixXd& a, const VectorXd& b, std::vector<Index>& used, VectorXd& x) {
    while (!used.empty()) {
        const VectorXd wanted = solvedOn(a, b, used);
        double step = 1;
        for (std::size_t k = 0; k < used.size(); ++k)
            if (const double to = wanted(static_cast<Index>(k)); to <= 0)
                step = std::min(step, x(used[k]) / std::max(x(used[k]) - to, 1e-300));
        for (std::size_t k = 0; k < used.size(); ++k) x(used[k]) += step * (wanted(static_cast<Index>(k)) - x(used[k]));
        if (step >= 1) return;
        const double floor = 1e-14 * x.maxCoeff();
        std::erase_if(used, [&](Index k) {
            if (x(k) > floor) return false;
            x(k) = 0;
            return true;
        });
    }
}

}  // namespace

std::complex<double> RelaxationSum::at(double frequency) const {
    std::complex<double> sum = constant;
    for (const auto& t : terms) sum += t.weight / std::complex<double>(1, 2 * std::numbers::pi * frequency * t.tau);
    return sum;
}

VectorXd leastSquaresNonNegative(const MatrixXd& a, const VectorXd& b) {
    VectorXd x = VectorXd::Zero(a.cols());
    std::vector<Index> used;
    std::vector<char> refused(static_cast<std::size_t>(a.cols()), 0);
    const double small = 1e-12 * (a.transpose() * b).cwiseAbs().maxCoeff();
    for (Index round = 0; round < 3 * a.cols(); ++round) {
        VectorXd pull = a.transpose() * (b - a * x);
        for (const Index k : used) pull(k) = 0;
        for (Index k = 0; k < a.cols(); ++k)
            if (refused[static_cast<std::size_t>(k)] != 0) pull(k) = 0;
        Index next = 0;
        if (pull.maxCoeff(&next) <= small) break;
        used.push_back(next);
        settle(a, b, used, x);
        // Rounding alone can turn the newest negative at once; it would come back for ever.
        if (x(next) <= 0)
            refused[static_cast<std::size_t>(next)] = 1;
        else
            std::fill(refused.begin(), refused.end(), 0);
    }
    return x;
}

RelaxationSum relaxationSum(const RelaxationTask& task) {
    const double decades = std::log10(task.to / task.from);
    const auto points = static_cast<Index>(decades * pointsPerDecade) + 1;
    // A decade beyond the band on either side.
    const auto choices = static_cast<Index>((decades + 2) * task.perDecade) + 1;
    MatrixXd a(2 * points, choices);
    VectorXd b(2 * points), one = VectorXd::Zero(2 * points), f(points);
    std::vector<double> tau;
    for (Index c = 0; c < choices; ++c)
        tau.push_back(1 / (2 * std::numbers::pi * task.from) *
                      std::pow(10, 1 - static_cast<double>(c) / task.perDecade));
    for (Index p = 0; p < points; ++p) {
        f(p) = task.from * std::pow(10, decades * static_cast<double>(p) / static_cast<double>(points - 1));
        const double usual = 1 / std::abs(task.function(f(p)));
        const double weight = task.weight ? task.weight(f(p)) : usual;
        const double weightOfLoss = task.weightOfLoss ? task.weightOfLoss(f(p)) : usual;
        const auto put = [&](Index column, std::complex<double> value) {
            a(2 * p, column) = weight * value.real();
            a(2 * p + 1, column) = weightOfLoss * value.imag();
        };
        for (Index c = 0; c < choices; ++c)
            put(c, 1.0 / std::complex<double>(1, 2 * std::numbers::pi * f(p) * tau[static_cast<std::size_t>(c)]));
        one(2 * p) = weight;
        const auto wanted = task.function(f(p)) - task.constant;
        b(2 * p) = weight * wanted.real();
        b(2 * p + 1) = weightOfLoss * wanted.imag();
    }
    RelaxationSum sum;
    sum.constant = task.constant;
    VectorXd x;
    if (task.freeConstant) {
        // The constant takes what it can of everything; the rest is left to the relaxations.
        const double size = one.norm();
        one /= size;
        x = leastSquaresNonNegative(a - one * (one.transpose() * a), b - one * one.dot(b));
        sum.constant += one.dot(b - a * x) / size;
    } else {
        x = leastSquaresNonNegative(a, b);
    }
    const double floor = 1e-9 * x.maxCoeff();
    for (Index c = 0; c < choices; ++c)
        if (x(c) > floor) sum.terms.push_back({x(c), tau[static_cast<std::size_t>(c)]});
    for (Index p = 0; p < points; ++p)
        sum.residual =
            std::max(sum.residual, std::abs(sum.at(f(p)) - task.function(f(p))) / std::abs(task.function(f(p))));
    return sum;
}

}  // namespace exchange
