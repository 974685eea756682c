// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/reduced.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "network/in_parallel.h"
#include "network/symmetric.h"

namespace network {

namespace {

constexpr Eigen::Index perGroup = 6, probeCount = 2 * perGroup;

/// Columns that look random and are the same every time: the first half on loops, the others on the rest.
Matrix probesOf(Eigen::Index n, Eigen::Index loops) {
    return Matrix::NullaryExpr(n, probeCount, [loops](Eigen::Index i, Eigen::Index k) {
        const auto x = static_cast<double>(1 + i + 997 * k);
        return (i < loops) == (k < perGroup) ? std::sin(12.9898 * x * x) : 0.0;
    });
}

/// Orthonormal columns that span all states and slopes, by Gram and Schmidt's process, each column twice. What lies in
/// the span of those before up to 1e-5 is left out.
ComplexMatrix spanOf(const std::vector<Snapshot>& solved) {
    constexpr double nothingNew = 1e-5;
    const Eigen::Index n = solved.front().state.rows(), ports = solved.front().state.cols();
    ComplexMatrix span(n, std::min(n, 2 * ports * static_cast<Eigen::Index>(solved.size())));
    Eigen::Index r = 0;
    /// Takes the shares of those before away; false where nothing is left.
    const auto rid = [&](ComplexVector& column) {
        const double size = column.norm();
        if (!(size > 0)) return false;
        column /= size;
        const ComplexVector shares = span.leftCols(r).adjoint() * column;
        column.noalias() -= span.leftCols(r) * shares;
        return column.norm() >= nothingNew;
    };
    for (const auto& at : solved)
        for (const ComplexMatrix* columns : {&at.state, &at.slope})
            for (Eigen::Index p = 0; p < ports && r < span.cols(); ++p) {
                ComplexVector column = columns->col(p);
                if (rid(column) && rid(column)) span.col(r++) = column.normalized();
            }
    return span.leftCols(r);
}

}  // namespace

Reduced::Reduced(const Prepared& network, const std::vector<Snapshot>& solved)
    : network_(network), basis_(spanOf(solved)) {
    if (!worthwhile()) return;
    const Eigen::Index n = basis_.rows(), loops = network.loops();
    const Matrix probes = probesOf(n, loops);
    reading_ = network.reading().in(basis_);
    probing_ = network.reading().in(probes.cast<Complex>());
    const Eigen::Index r = basis_.cols(), count = static_cast<Eigen::Index>(network.terms().size());
    terms_.resize((r + probeCount) * r, 2 * count);
    diagonal_.resize(2, count);
    Matrix rows(n, 2 * r + probeCount);
    rows << basis_.real(), basis_.imag(), probes;
    inParallel(network.terms().size(),
               [&](std::size_t k) { take(static_cast<Eigen::Index>(k), network.terms()[k].matrix, rows, loops); });
}

/// One term, `rows` being [Re V, Im V, G]: from their products with T and each other.
void Reduced::take(Eigen::Index k, const Matrix& term, const Matrix& rows, Eigen::Index loops) {
    const Eigen::Index n = basis_.rows(), r = basis_.cols();
    const Vector diagonal = term.diagonal().cwiseAbs();
    diagonal_.col(k) << diagonal.head(loops).sum() / double(std::max<Eigen::Index>(loops, 1)),
        diagonal.tail(n - loops).sum() / double(std::max<Eigen::Index>(n - loops, 1));
    const Matrix along = term * rows.leftCols(2 * r);
    const Matrix all = rows.transpose() * along;
    Matrix re(r + probeCount, r), im(r + probeCount, r);
    re << all.topLeftCorner(r, r) - all.block(r, r, r, r), all.bottomLeftCorner(probeCount, r);
    im << all.block(0, r, r, r) + all.block(r, 0, r, r), all.bottomRightCorner(probeCount, r);
    terms_.col(k) = re.reshaped();
    terms_.col(terms_.cols() / 2 + k) = im.reshaped();
}

Reduced::Systems Reduced::systems(const std::vector<Complex>& coefficient, const std::vector<Complex>& change) const {
    const Eigen::Index r = basis_.cols(), count = terms_.cols() / 2;
    // Real and imaginary parts of both sums at once: a column each.
    Matrix factor(2 * count, 4);
    for (Eigen::Index k = 0; k < count; ++k) {
        const Complex c = coefficient[static_cast<std::size_t>(k)], d = change[static_cast<std::size_t>(k)];
        factor.row(k) << c.real(), c.imag(), d.real(), d.imag();
        factor.row(count + k) << -c.imag(), c.real(), -d.imag(), d.real();
    }
    const Matrix sums = terms_ * factor;
    Systems all{ComplexMatrix(r + probeCount, r), ComplexMatrix(r, r)};
    all.own.reshaped().real() = sums.col(0);
    all.own.reshaped().imag() = sums.col(1);
    all.slope.real() = sums.col(2).reshaped(r + probeCount, r).topRows(r);
    all.slope.imag() = sums.col(3).reshaped(r + probeCount, r).topRows(r);
    return all;
}

bool Reduced::worthwhile() const noexcept {
    return 10 * basis_.cols() < 9 * basis_.rows();
}

std::optional<Point> Reduced::point(double frequency) const {
    const Circuit& circuit = network_.circuit();
    const double above = frequency * (1 + slopeStep), below = frequency * (1 - slopeStep);
    const auto coefficient = coefficients(network_.terms(), circuit, frequency);
    auto change = coefficients(network_.terms(), circuit, above);
    const auto before = coefficients(network_.terms(), circuit, below);
    for (std::size_t k = 0; k < change.size(); ++k) change[k] -= before[k];
    const Eigen::Index r = basis_.cols();
    const auto [whole, slope] = systems(coefficient, change);
    const SymmetricFactors factors(whole.topRows(r).real(), whole.topRows(r).imag());
    // The space itself is far less exact than a sound solution in it.
    constexpr double exact = SymmetricFactors::sound;
    Snapshot at{frequency, factors.solve(drive(circuit, reading_, frequency), exact), {}};
    const ComplexMatrix wanted = drive(circuit, probing_, frequency);
    const ComplexMatrix left = whole.bottomRows(probeCount) * at.state - wanted;
    const Vector size = diagonal_ * ComplexVector::Map(coefficient.data(), diagonal_.cols()).cwiseAbs();
    const auto energy = [&](const ComplexMatrix& m, Eigen::Index p) {
        const double inLoops = size(0) > 0 ? m.col(p).head(perGroup).squaredNorm() / size(0) : 0;
        const double inRest = size(1) > 0 ? m.col(p).tail(perGroup).squaredNorm() / size(1) : 0;
        return inLoops + inRest;
    };
    for (Eigen::Index p = 0; p < wanted.cols(); ++p)
        if (energy(left, p) > enough * enough * energy(wanted, p)) return std::nullopt;
    const ComplexMatrix right = drive(circuit, reading_, above) - drive(circuit, reading_, below);
    at.slope = factors.solve(right - slope * at.state, exact) / (2 * slopeStep);
    return pointOf(circuit, reading_, at);
}

}  // namespace network
