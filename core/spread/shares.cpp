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
void fill(Eigen::Ref<Vector> row, const std::vector<double>& causes, bool squares) {
    const auto count = static_cast<Eigen::Index>(causes.size());
    for (Eigen::Index c = 0; c < count; ++c) {
        const double x = causes[static_cast<std::size_t>(c)];
        row(c) = x;
        if (squares) row(count + c) = (x * x - 1) / std::numbers::sqrt2;
    }
}

/// Sums over all units of products of regressors, and of regressors with values, each less its mean.
struct Products {
    Matrix regressors, right;  // p x p, p x columns
    Vector variance;           // a column each, times the units
};

Products productsOf(const std::vector<std::vector<double>>& causes, const std::vector<std::vector<double>>& values,
                    Eigen::Index p, bool squares) {
    constexpr std::size_t block = 512;  // fixed, so that the sums run the same way for the same units
    const std::size_t units = causes.size();
    const auto columns = static_cast<Eigen::Index>(values.size());
    Vector mean = Vector::Zero(p), valueMean = Vector::Zero(columns), row(p);
    for (std::size_t k = 0; k < units; ++k) {
        fill(row, causes[k], squares);
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
            fill(row, causes[from + i], squares);
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

std::vector<RegressedShares> regressedShares(const std::vector<std::vector<double>>& causes,
                                             const std::vector<std::vector<double>>& values) {
    constexpr std::size_t unitsPerCoefficient = 10;
    const std::size_t units = causes.size(), count = causes.empty() ? 0 : causes.front().size();
    RegressedShares usual;
    usual.squares = units >= unitsPerCoefficient * 2 * count;
    usual.enough = count > 0 && units >= 2 * count && units > 2;
    std::vector<RegressedShares> all(values.size(), usual);
    if (!usual.enough || values.empty()) return all;
    const auto p = static_cast<Eigen::Index>(usual.squares ? 2 * count : count);
    Products products = productsOf(causes, values, p, usual.squares);
    // A cause that never changes among these units (there is one lot alone) gets no share.
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
        all[k].explained = coefficient.dot(products.right.col(column)) / variance;
        for (std::size_t c = 0; c < count; ++c) {
            double square = coefficient(static_cast<Eigen::Index>(c)) * coefficient(static_cast<Eigen::Index>(c));
            if (usual.squares) {
                const double second = coefficient(static_cast<Eigen::Index>(count + c));
                square += second * second;
            }
            all[k].share.push_back(square * static_cast<double>(units) / variance);
        }
    }
    return all;
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
