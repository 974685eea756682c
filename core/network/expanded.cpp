// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/expanded.h"

#include <Eigen/Eigenvalues>
#include <algorithm>

#include "network/sweep.h"

namespace network {

namespace {

bool alike(const Prepared& a, const Prepared& b) {
    if (a.terms().size() != b.terms().size() || a.loops() != b.loops() || a.basis().rows() != b.basis().rows() ||
        !a.reading().turns.isApprox(b.reading().turns, 1e-12))
        return false;
    for (std::size_t k = 0; k < a.terms().size(); ++k)
        if (a.terms()[k].kind != b.terms()[k].kind || a.terms()[k].lumped != b.terms()[k].lumped) return false;
    // The bases are of the same incidence, and therefore the same to the last digit.
    return a.basis() == b.basis();
}

/// Adds the states of a network, without its loops, each of length one, as real columns.
void addStates(const Prepared& network, const std::vector<double>& frequencies, Matrix& gram, double weight) {
    const Eigen::Index rest = network.basis().cols() - network.loops();
    for (const double f : frequencies) {
        const ComplexMatrix state = network.snapshot(f).state.bottomRows(rest);
        for (Eigen::Index p = 0; p < state.cols(); ++p) {
            const double size = state.col(p).norm();
            if (!(size > 0)) continue;
            const Vector re = state.col(p).real() / size, im = state.col(p).imag() / size;
            gram.noalias() += weight * (re * re.transpose() + im * im.transpose());
        }
    }
}

/// The network in a space.
Prepared projected(const Prepared& network, const Matrix& space) {
    Terms terms;
    terms.reserve(network.terms().size());
    for (const auto& term : network.terms())
        terms.push_back({term.kind, term.bareDiameter, term.lumped, space.transpose() * (term.matrix * space)});
    return {network.circuit(), std::move(terms), network.reading().in(space.cast<Complex>())};
}

/// Greatest relative deviation of any output in the space.
double deviation(const Prepared& network, const Matrix& space, const std::vector<double>& frequencies) {
    const Prepared small = projected(network, space);
    double worst = 0;
    for (const double f : frequencies) {
        const ComplexVector full = network.solve(f), near = small.solve(f);
        for (Eigen::Index k = 0; k < full.size(); ++k)
            worst = std::max(worst, std::abs(near(k) - full(k)) / std::max(std::abs(full(k)), Sweep::floor));
    }
    return worst;
}

/// All loops, then as many of the directions in which the states lie as all outputs of all given networks need.
Matrix spaceOf(const Prepared& nominal, const std::vector<Expanded::Sides>& sides,
               const std::vector<double>& frequencies) {
    const Eigen::Index n = nominal.basis().cols(), loops = nominal.loops(), rest = n - loops;
    Matrix gram = Matrix::Zero(rest, rest);
    addStates(nominal, frequencies, gram, 1);
    for (const auto& side : sides)
        for (const Prepared* one : {&side.front(), &side.back()}) addStates(*one, frequencies, gram, 0.1);
    const Eigen::SelfAdjointEigenSolver<Matrix> directions(gram);  // rising
    const Matrix falling = directions.eigenvectors().rowwise().reverse();
    const auto spaceWith = [&](Eigen::Index kept) {
        Matrix space = Matrix::Zero(n, loops + kept);
        space.topLeftCorner(loops, loops).setIdentity();
        space.bottomRightCorner(rest, kept) = falling.leftCols(kept);
        return space;
    };
    const auto enough = [&](const Matrix& space) {
        if (deviation(nominal, space, frequencies) > Expanded::accuracy) return false;
        return std::all_of(sides.begin(), sides.end(), [&](const auto& side) {
            return deviation(side.front(), space, {frequencies.back()}) <= Expanded::accuracy &&
                   deviation(side.back(), space, {frequencies.back()}) <= Expanded::accuracy;
        });
    };
    constexpr Eigen::Index first = 6, step = 2;
    for (Eigen::Index kept = std::min(first, rest);; kept = std::min(kept + step, rest)) {
        Matrix space = spaceWith(kept);
        if (kept == rest || enough(space)) return space;
    }
}

/// Everything that depends on x, in the space, as one column.
Vector columnOf(const Prepared& network, const Matrix& space) {
    const Eigen::Index r = space.cols(), count = static_cast<Eigen::Index>(network.terms().size());
    const ComplexMatrix charges = network.reading().charges * space.cast<Complex>();
    const ComplexMatrix& injected = network.reading().injected;
    Vector column(count * r * r + 2 * charges.size() + 2 * injected.size());
    Eigen::Index at = 0;
    const auto put = [&](const auto& part) {
        column.segment(at, part.size()) = part.reshaped();
        at += part.size();
    };
    for (const auto& term : network.terms()) put(Matrix(space.transpose() * (term.matrix * space)));
    put(Matrix(charges.real()));
    put(Matrix(charges.imag()));
    put(Matrix(injected.real()));
    put(Matrix(injected.imag()));
    return column;
}

}  // namespace

std::optional<Expanded> Expanded::of(const Prepared& nominal, const std::vector<Sides>& sides,
                                     const std::vector<double>& frequencies) {
    for (const auto& side : sides)
        for (const Prepared& network : side)
            if (!alike(nominal, network)) return std::nullopt;
    Expanded made;
    for (const auto& term : nominal.terms()) made.kinds_.push_back({term.kind, term.bareDiameter, term.lumped, {}});
    const Matrix space = spaceOf(nominal, sides, frequencies);
    made.size_ = space.cols();
    made.ports_ = static_cast<Eigen::Index>(nominal.circuit().ports.size());
    made.lumped_ = nominal.reading().lumped * space.cast<Complex>();
    made.turns_ = nominal.reading().turns * space.cast<Complex>();
    made.base_ = columnOf(nominal, space);
    std::vector<std::array<Vector, 4>> moved;
    for (std::size_t k = 0; k < sides.size(); ++k) {
        std::array<Vector, 4> off;
        for (std::size_t s = 0; s < off.size(); ++s) off[s] = columnOf(sides[k][s], space) - made.base_;
        if (off.front().isZero(0) && off.back().isZero(0)) continue;  // it moves the core alone, or nothing
        made.active_.push_back(k);
        moved.push_back(std::move(off));
    }
    made.linear_.resize(made.base_.size(), static_cast<Eigen::Index>(2 * moved.size()));
    made.square_.resizeLike(made.linear_);
    for (std::size_t k = 0; k < moved.size(); ++k)
        for (const bool above : {false, true}) {
            const Vector &half = moved[k][above ? 2 : 1], &whole = moved[k][above ? 3 : 0];
            const auto column = static_cast<Eigen::Index>(2 * k + (above ? 1 : 0));
            made.linear_.col(column) = 4 * half - whole;
            made.square_.col(column) = 2 * whole - 4 * half;
        }
    return made;
}

Prepared Expanded::at(const std::vector<double>& x, Circuit circuit, const std::vector<double>& bareDiameters) const {
    Vector column = base_;
    for (std::size_t k = 0; k < active_.size(); ++k) {
        const double step = x[active_[k]];
        if (step == 0) continue;
        const auto side = static_cast<Eigen::Index>(2 * k + (step > 0 ? 1 : 0));
        column += std::abs(step) * linear_.col(side) + step * step * square_.col(side);
    }
    Terms terms = kinds_;
    Eigen::Index from = 0;
    for (std::size_t k = 0; k < terms.size(); ++k) {
        terms[k].bareDiameter = bareDiameters[k];
        terms[k].matrix = column.segment(from, size_ * size_).reshaped(size_, size_);
        from += size_ * size_;
    }
    Reading reading{lumped_, turns_, ComplexMatrix(ports_, size_), ComplexMatrix(ports_, ports_)};
    const auto take = [&](ComplexMatrix& to) {
        to.real() = column.segment(from, to.size()).reshaped(to.rows(), to.cols());
        from += to.size();
        to.imag() = column.segment(from, to.size()).reshaped(to.rows(), to.cols());
        from += to.size();
    };
    take(reading.charges);
    take(reading.injected);
    return Prepared(std::move(circuit), std::move(terms), std::move(reading));
}

}  // namespace network
