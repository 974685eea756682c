// SPDX-License-Identifier: GPL-3.0-or-later
#include "spread/shares.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "spread/sobol.h"

namespace spread {

namespace {

using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;

/// Regressors of one unit, without the constant.
void fill(Eigen::Ref<Vector> row, const std::vector<double>& numbers, bool squares) {
    const auto count = static_cast<Eigen::Index>(numbers.size());
    for (Eigen::Index c = 0; c < count; ++c) {
        const double x = numbers[static_cast<std::size_t>(c)];
        row(c) = x;
        if (squares) row(count + c) = (x * x - 1) / std::numbers::sqrt2;
    }
}

/// Sums over all units of products of regressors, and of regressors with values, each less its mean.
struct Products {
    Matrix regressors, right;  // p x p, p x columns
    Vector variance;           // a column each, times the units
};

Products productsOf(const std::vector<std::vector<double>>& numbers, const std::vector<std::vector<double>>& values,
                    Eigen::Index p, bool squares) {
    constexpr std::size_t block = 512;  // fixed, so that the sums run the same way for the same units
    const std::size_t units = numbers.size();
    const auto columns = static_cast<Eigen::Index>(values.size());
    Vector mean = Vector::Zero(p), valueMean = Vector::Zero(columns), row(p);
    for (std::size_t k = 0; k < units; ++k) {
        fill(row, numbers[k], squares);
        mean += row;
        for (Eigen::Index c = 0; c < columns; ++c) valueMean(c) += values[static_cast<std::size_t>(c)][k];
    }
    mean /= static_cast<double>(units);
    valueMean /= static_cast<double>(units);
    Products sum{Matrix::Zero(p, p), Matrix::Zero(p, columns), Vector::Zero(columns)};
    for (std::size_t from = 0; from < units; from += block) {
        const std::size_t count = std::min(block, units - from);
        Matrix x(p, static_cast<Eigen::Index>(count)), y(static_cast<Eigen::Index>(count), columns);
        for (std::size_t i = 0; i < count; ++i) {
            const auto k = static_cast<Eigen::Index>(i);
            fill(row, numbers[from + i], squares);
            x.col(k) = row - mean;
            for (Eigen::Index c = 0; c < columns; ++c)
                y(k, c) = values[static_cast<std::size_t>(c)][from + i] - valueMean(c);
        }
        sum.regressors.noalias() += x * x.transpose();
        sum.right.noalias() += x * y;
        sum.variance += y.colwise().squaredNorm().transpose();
    }
    return sum;
}

}  // namespace

std::vector<Regression> regressions(const std::vector<std::vector<double>>& numbers,
                                    const std::vector<std::vector<double>>& values) {
    constexpr std::size_t unitsPerCoefficient = 10;
    const std::size_t units = numbers.size(), count = numbers.empty() ? 0 : numbers.front().size();
    Regression usual;
    usual.squares = units >= unitsPerCoefficient * 2 * count;
    usual.enough = count > 0 && units >= 2 * count && units > 2;
    usual.linear.assign(count, 0);
    usual.square.assign(count, 0);
    std::vector<Regression> all(values.size(), usual);
    if (!usual.enough || values.empty()) return all;
    const auto p = static_cast<Eigen::Index>(usual.squares ? 2 * count : count);
    Products products = productsOf(numbers, values, p, usual.squares);
    // A number that never changes among these units (all of one lot) has no coefficient.
    for (Eigen::Index c = 0; c < p; ++c)
        if (!(products.regressors(c, c) > 1e-9 * static_cast<double>(units))) {
            products.regressors.row(c).setZero();
            products.regressors.col(c).setZero();
            products.regressors(c, c) = 1;
            products.right.row(c).setZero();
        }
    const Matrix coefficients = products.regressors.selfadjointView<Eigen::Lower>().ldlt().solve(products.right);
    for (std::size_t k = 0; k < all.size(); ++k) {
        const auto column = static_cast<Eigen::Index>(k);
        const double variance = products.variance(column);
        if (!(variance > 0)) {
            all[k].enough = false;
            continue;
        }
        const auto coefficient = coefficients.col(column);
        const double made = coefficient.dot(products.right.col(column));
        all[k].explained = made / variance;
        all[k].residual = std::max(0.0, variance - made) / static_cast<double>(units);
        for (std::size_t c = 0; c < count; ++c) {
            all[k].linear[c] = coefficient(static_cast<Eigen::Index>(c));
            if (usual.squares) all[k].square[c] = coefficient(static_cast<Eigen::Index>(count + c));
        }
    }
    return all;
}

VarianceShares sharesOf(const Regression& regression, const std::vector<Cause>& causes) {
    VarianceShares shares{{}, regression.explained, regression.squares, regression.enough};
    if (!regression.enough) return shares;
    double all = regression.residual;
    // (x^2 - 1) of a sum of causes: their own squares, and products of lot and unit, which belong to neither.
    for (const double b : regression.square) all += b * b;
    for (const auto& cause : causes) {
        double linear = 0, square = 0, own = 0;
        for (const auto& effect : cause.effects) {
            const double b = regression.square[effect.drawn] * effect.weight * effect.weight;
            linear += regression.linear[effect.drawn] * effect.weight;
            square += b;
            own += b * b;
        }
        shares.share.push_back(linear * linear + square * square);
        all += shares.share.back() - own;
    }
    for (double& share : shares.share) share = all > 0 ? share / all : 0;
    return shares;
}

VarianceIndices varianceIndices(const std::function<double(const std::vector<double>&)>& function,
                                std::size_t dimensions, std::uint64_t n, std::uint64_t seed) {
    const EvenPoints points(seed, 2 * dimensions);
    VarianceIndices found;
    found.first.assign(dimensions, 0);
    found.total.assign(dimensions, 0);
    std::vector<double> a(dimensions), b(dimensions);
    double sum = 0, squares = 0;
    for (std::uint64_t k = 0; k < n; ++k) {
        for (std::size_t d = 0; d < dimensions; ++d) {
            a[d] = points.at(k, d);
            b[d] = points.at(k, dimensions + d);
        }
        const double atA = function(a), atB = function(b);
        sum += atA + atB;
        squares += atA * atA + atB * atB;
        for (std::size_t d = 0; d < dimensions; ++d) {
            std::vector<double> mixed = a;
            mixed[d] = b[d];
            const double at = function(mixed);
            found.first[d] += atB * (at - atA);
            found.total[d] += (atA - at) * (atA - at) / 2;
        }
    }
    const auto count = static_cast<double>(n);
    found.mean = sum / (2 * count);
    found.variance = squares / (2 * count) - found.mean * found.mean;
    for (std::size_t d = 0; d < dimensions; ++d) {
        found.first[d] /= count * found.variance;
        found.total[d] /= count * found.variance;
    }
    return found;
}

}  // namespace spread
