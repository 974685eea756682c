// SPDX-License-Identifier: GPL-3.0-or-later
#include "learn/fit.h"

#include <Eigen/Cholesky>
#include <Eigen/LU>
#include <algorithm>
#include <cmath>

#include "learn/least_squares.h"
#include "learn/numbers.h"
#include "learn/reading_model.h"
#include "learn/terminal_reader.h"
#include "learn/unknowns.h"
#include "shop/bench_prediction.h"
#include "units/fault.h"

namespace learn {

namespace {

constexpr double heldWidth = 2;     // of the shop's spread, by which an unknown is held
constexpr double toldShare = 0.67;  // of the doubt that may be left of what counts as told
constexpr double standInLeast = 0.95;

/// Everything that one computation needs.
struct Task {
    const catalog::Catalog& shop;
    spread::Variation variation;
    std::vector<Unknown> unknowns;
    std::vector<Probe> probes;
    Vector read;
    std::vector<int> pieces;

    [[nodiscard]] std::vector<double> valuesAt(const Vector& logs) const {
        std::vector<double> values = spread::nominals(variation);
        for (std::size_t u = 0; u < unknowns.size(); ++u)
            for (const std::size_t k : unknowns[u].members) values[k] *= std::exp(logs(static_cast<Eigen::Index>(u)));
        return values;
    }
    [[nodiscard]] Vector computed(spread::UnitDesign& unit, const std::vector<double>& values) const {
        const Unit made{std::make_shared<design::Design>(unit.with(values)), {}, {}, 0, {}};
        return scaledOf(probes, readings(made, probes, shop, pieces));
    }
    /// Of readings: the instruments', and what varies from unit to unit without being fitted.
    [[nodiscard]] Matrix covariance() const {
        std::vector<std::size_t> others;
        for (std::size_t k = 0; k < variation.all.size(); ++k)
            if (std::none_of(unknowns.begin(), unknowns.end(), [&](const Unknown& u) {
                    return std::find(u.members.begin(), u.members.end(), k) != u.members.end();
                }))
                others.push_back(k);
        const auto middle = valuesAt(Vector::Zero(static_cast<Eigen::Index>(unknowns.size())));
        const Matrix slopes = slopesOf(variation, others, middle,
                                       [this](auto& unit, const auto& values) { return computed(unit, values); });
        Matrix all = others.empty() ? Matrix::Zero(read.size(), read.size()) : Matrix(slopes * slopes.transpose());
        for (Eigen::Index k = 0; k < read.size(); ++k)
            all(k, k) += std::pow(probes[static_cast<std::size_t>(k)].instrument, 2);
        return all;
    }
};

Task taskOf(const design::Design& design, const std::vector<Point>& points, const std::vector<std::string>& keys,
            const catalog::Catalog& shop, const catalog::Tolerances& tolerances, bool fine) {
    Task task{shop, spread::variationOf(design, shop, shop::benchTolerances(tolerances)), {}, {}, {}, {}};
    task.unknowns = unknownsOf(task.variation, keys);
    if (task.unknowns.empty())
        units::refuse("fit", "nothing to adjust", "a design that has one of what is to be fitted");
    if (points.size() < task.unknowns.size())
        units::refuse("fit", std::to_string(points.size()) + " measured numbers",
                      "at least as many as there are unknowns, " + std::to_string(task.unknowns.size()));
    task.read.resize(static_cast<Eigen::Index>(points.size()));
    for (std::size_t k = 0; k < points.size(); ++k) {
        task.probes.push_back(points[k].probe);
        task.read(static_cast<Eigen::Index>(k)) = scaled(points[k].probe, points[k].reading);
    }
    if (fine) task.pieces = finePieces(*task.variation.base, shop);
    return task;
}

/// What the end of the search says of each unknown.
void learnFrom(const Task& task, const Squares& end, Fitted& fitted) {
    const auto count = static_cast<Eigen::Index>(task.unknowns.size());
    // The doubt before is the spread itself: what holds an unknown is wider, so as not to draw it.
    const Matrix information = end.slopes.transpose() * end.slopes;
    const Matrix covariance = information.ldlt().solve(Matrix::Identity(count, count));
    for (Eigen::Index u = 0; u < count; ++u) {
        const Unknown& unknown = task.unknowns[static_cast<std::size_t>(u)];
        Learned one{unknown.key, unknown.words, std::exp(end.at(u)), 0, coverage95 * unknown.spread, false, false, {}};
        const double deviation = std::sqrt(covariance(u, u)) * fitted.scale;
        one.halfWidth = coverage95 * deviation;
        one.told = deviation < toldShare * unknown.spread;
        one.atBound = std::abs(end.at(u)) > 0.999 * unknown.most;
        double most = standInLeast;
        for (Eigen::Index v = 0; v < count; ++v) {
            const double together = std::abs(covariance(u, v)) / std::sqrt(covariance(u, u) * covariance(v, v));
            if (v == u || together < most) continue;
            most = together;
            one.standIn = task.unknowns[static_cast<std::size_t>(v)].words;
        }
        fitted.learned.push_back(std::move(one));
    }
}

}  // namespace

Fitted fitted(const design::Design& design, const std::vector<Point>& points, const std::vector<std::string>& keys,
              const catalog::Catalog& shop, const catalog::Tolerances& tolerances, bool fine,
              const std::stop_token& stop) {
    const Task task = taskOf(design, points, keys, shop, tolerances, fine);
    const auto count = static_cast<Eigen::Index>(task.unknowns.size()), data = task.read.size();
    const Eigen::LLT<Matrix> factor(task.covariance());
    spread::UnitDesign unit(task.variation);
    Vector spreads(count), bounds(count);
    for (Eigen::Index u = 0; u < count; ++u) {
        spreads(u) = task.unknowns[static_cast<std::size_t>(u)].spread;
        bounds(u) = task.unknowns[static_cast<std::size_t>(u)].most;
    }
    SquaresProblem problem;
    problem.start = Vector::Zero(count);
    problem.low = -bounds;
    problem.high = bounds;
    constexpr double stepShare = 0.05;
    problem.step = stepShare * spreads;
    problem.count = data + count;
    problem.off = [&](const Vector& at, Vector& off) {
        off.head(data) = factor.matrixL().solve(task.read - task.computed(unit, task.valuesAt(at)));
        off.tail(count) = at.cwiseQuotient(heldWidth * spreads);
    };
    const Squares end = leastSquares(problem, stop);
    Fitted fitted;
    fitted.points = points.size();
    fitted.settled = end.settled;
    const double held = end.at.cwiseQuotient(heldWidth * spreads).squaredNorm();
    fitted.before = std::sqrt(end.before / static_cast<double>(data));
    fitted.after = std::sqrt(std::max(0.0, end.squares - held) / static_cast<double>(data));
    // Chi-squared with the unknowns' own hold counted in has as many degrees of freedom as there are points.
    fitted.scale = std::max(1.0, std::sqrt(end.squares / static_cast<double>(data)));
    learnFrom(task, end, fitted);
    std::vector<double> factors;
    for (const auto& one : fitted.learned) factors.push_back(one.factor);
    fitted.design = withFactors(design, shop, task.variation, task.unknowns, factors, fitted.left);
    return fitted;
}

}  // namespace learn
