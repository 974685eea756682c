// SPDX-License-Identifier: GPL-3.0-or-later
#include "magnetics/lot_fit.h"

#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <unsupported/Eigen/NonLinearOptimization>

#include "magnetics/permeability.h"
#include "magnetics/plays.h"

namespace magnetics {
namespace {

using Vector = Eigen::VectorXd;
using Matrix = Eigen::MatrixXd;
constexpr int numbers = 5;  // ln of mu_i, nu, coercivity, saturation, knee

double lawFlux(double initial, double rayleigh, double slack, double saturation, double knee, double field) {
    const Plays plays(slack, rayleigh / initial);
    const double x = mu0 * (initial - 1) * plays.fromRest(field).value / (plays.direct() * saturation);
    return mu0 * field + saturation * x / std::pow(1 + std::pow(x, knee), 1 / knee);
}

double lawFlux(const Vector& log, double field) {
    return lawFlux(std::exp(log(0)), std::exp(log(1)), std::exp(log(2)), std::exp(log(3)), std::exp(log(4)), field);
}

/// What is known before any point is read.
struct Held {
    Vector middle = Vector(numbers), spread = Vector(numbers);
};

Held heldBy(const catalog::Alloy& like, double coercivity) {
    constexpr double usualKnee = 2;
    const double slack = coercivity > 0 ? coercivity : like.coercivity.value;
    const double greatest = std::max(like.maximumPermeability.value, 2 * like.initialPermeability.value);
    const double nu =
        like.rayleigh > 0 ? like.rayleigh.value : (greatest - like.initialPermeability) / like.coercivity.value;
    Held held;
    held.middle << std::log(like.initialPermeability), std::log(nu), std::log(slack), std::log(like.saturation),
        std::log(usualKnee);
    held.spread << std::log(2.0), std::log(3.0), coercivity > 0 ? 0.03 : std::log(2.0), 0.05, std::log(2.0);
    return held;
}

/// Deviations in units of their spread: the points', then those from what is held.
struct Deviations {
    using Scalar = double;
    using InputType = Vector;
    using ValueType = Vector;
    using JacobianType = Matrix;

    const std::vector<catalog::BhPoint>& points;
    const Held& held;
    double scatter;

    [[nodiscard]] int inputs() const { return numbers; }
    [[nodiscard]] int values() const { return static_cast<int>(points.size()) + numbers; }
    int operator()(const Vector& log, Vector& off) const {
        const auto count = static_cast<Eigen::Index>(points.size());
        for (Eigen::Index i = 0; i < count; ++i) {
            const auto& point = points[static_cast<std::size_t>(i)];
            off(i) = std::log(lawFlux(log, point.field) / point.flux) / scatter;
        }
        off.tail(numbers) = (log - held.middle).cwiseQuotient(held.spread);
        return 0;
    }
    int df(const Vector& log, Matrix& slopes) const {
        constexpr double step = 1e-5;
        Vector above(values()), below(values());
        for (int k = 0; k < numbers; ++k) {
            Vector moved = log;
            moved(k) += step;
            (*this)(moved, above);
            moved(k) -= 2 * step;
            (*this)(moved, below);
            slopes.col(k) = (above - below) / (2 * step);
        }
        return 0;
    }
};

/// A place where the squares are least round about.
struct Minimum {
    Vector log;
    Matrix covariance;
    double squares = 0;  ///< of all deviations
    bool settled = false;
};

Minimum minimumFrom(Vector log, const Deviations& task) {
    Deviations deviations = task;
    Eigen::LevenbergMarquardt<Deviations> search(deviations);
    search.parameters.xtol = search.parameters.ftol = 1e-10;
    search.parameters.maxfev = 400;
    const auto end = search.minimize(log);
    Minimum minimum;
    minimum.settled = end >= 1 && end <= 4;
    Vector off(task.values());
    task(log, off);
    minimum.squares = off.squaredNorm();
    Matrix slopes(task.values(), numbers);
    task.df(log, slopes);
    minimum.covariance = (slopes.transpose() * slopes).inverse();
    minimum.log = std::move(log);
    return minimum;
}

/// Coercivity and knee can stand in for each other: there are several minima, sought from nine places. Least first.
std::vector<Minimum> minima(const Deviations& task) {
    constexpr double near = 0.2;  // of a standard uncertainty: the same one
    std::vector<Minimum> all;
    for (const double coercivity : {-1.2, 0.0, 1.2})
        for (const double knee : {-0.8, 0.0, 0.8}) {
            Vector start = task.held.middle;
            start(2) += coercivity;
            start(4) += knee;
            Minimum found = minimumFrom(std::move(start), task);
            const auto same = [&](const Minimum& other) {
                const Vector apart = (found.log - other.log).cwiseAbs();
                return (apart.array() < near * other.covariance.diagonal().cwiseSqrt().array()).all();
            };
            if (std::isfinite(found.squares) && std::none_of(all.begin(), all.end(), same))
                all.push_back(std::move(found));
        }
    std::sort(all.begin(), all.end(), [](const Minimum& a, const Minimum& b) { return a.squares < b.squares; });
    return all;
}

/// Variances of all minima together, each as likely as its squares and its width make it.
Vector variances(const std::vector<Minimum>& all) {
    Vector sum = Vector::Zero(numbers);
    double weights = 0;
    const Minimum& best = all.front();
    for (const Minimum& one : all) {
        const double width = std::sqrt(one.covariance.determinant() / best.covariance.determinant());
        const double weight = width * std::exp((best.squares - one.squares) / 2);
        if (!std::isfinite(weight)) continue;
        sum += weight * (one.covariance.diagonal() + (one.log - best.log).cwiseAbs2());
        weights += weight;
    }
    return sum / weights;
}

}  // namespace

double LotLaw::flux(double field) const {
    return lawFlux(initialPermeability.value, rayleigh.value, coercivity.value, saturation.value, knee.value, field);
}

double LotLaw::greatestPermeability(double low, double high) const {
    double greatest = 0;
    for (double field = low; field < high; field *= 1.02) greatest = std::max(greatest, flux(field) / (mu0 * field));
    return greatest;
}

LotFit lotFit(const std::vector<catalog::BhPoint>& points, const catalog::Alloy& like, double coercivity) {
    constexpr double firstScatter = 0.03, leastScatter = 1e-3;
    constexpr int rounds = 3;
    const Held held = heldBy(like, coercivity);
    const auto count = static_cast<Eigen::Index>(points.size());
    LotFit fit;
    double scatter = firstScatter;
    std::vector<Minimum> all;
    for (int round = 0; round < rounds; ++round) {
        const Deviations task{points, held, scatter};
        all = minima(task);
        Vector off(task.values());
        task(all.front().log, off);
        const double squares = off.head(count).squaredNorm() * scatter * scatter;
        fit.residual = std::sqrt(squares / double(count));
        scatter = std::max(leastScatter, std::sqrt(squares / double(std::max<Eigen::Index>(1, count - numbers))));
    }
    all = minima({points, held, scatter});
    fit.settled = all.front().settled;
    const Vector variance = variances(all);
    const auto found = [&](int k) { return Found{std::exp(all.front().log(k)), std::sqrt(variance(k))}; };
    fit.law = {found(0), found(1), found(2), found(3), found(4)};
    for (const auto& point : points) {
        const double off = std::abs(point.flux / fit.law.flux(point.field) - 1);
        if (off <= fit.worst) continue;
        fit.worst = off;
        fit.worstField = point.field;
    }
    return fit;
}

catalog::Alloy fittedAlloy(const LotFit& fit, const std::vector<catalog::BhPoint>& points, const catalog::Alloy& like,
                           double remanence) {
    constexpr int count = 30;
    constexpr double foot = 0.1;  // share of mu_i at which Rayleigh's rise begins to tell
    const LotLaw& law = fit.law;
    const auto [least, most] = std::minmax_element(points.begin(), points.end(),
                                                   [](const auto& a, const auto& b) { return a.field < b.field; });
    const double low = std::min(least->field, foot * law.initialPermeability.value / law.rayleigh.value),
                 high = most->field;
    catalog::Alloy alloy = like;
    alloy.initialPermeability = law.initialPermeability.value;
    alloy.rayleigh = law.rayleigh.value;
    alloy.coercivity = law.coercivity.value;
    alloy.saturation = law.saturation.value;
    alloy.maximumPermeability = std::max(law.initialPermeability.value, law.greatestPermeability(low, high));
    alloy.remanence = remanence > 0 ? remanence : like.remanence * law.saturation.value / like.saturation;
    alloy.curve = {{0, 0}};
    for (int i = 0; i < count; ++i) {
        const double field = low * std::pow(high / low, double(i) / (count - 1));
        alloy.curve.push_back({field, law.flux(field)});
    }
    return alloy;
}

}  // namespace magnetics
