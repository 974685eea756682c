// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/rational_fit.h"

#include <Eigen/Eigenvalues>
#include <Eigen/QR>
#include <algorithm>
#include <cmath>
#include <numbers>

namespace analysis {
namespace {

using Complex = std::complex<double>;
using Eigen::Index;
using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;

Complex angular(double frequency) {
    return {0, 2 * std::numbers::pi * frequency};
}

Index realCount(const std::vector<Complex>& poles) {
    Index count = 0;
    for (const Complex& p : poles) count += p.imag() == 0 ? 1 : 2;
    return count;
}

/// One place of the imaginary axis: the partial fractions, for a pair those of its real and its imaginary residue.
std::vector<Complex> fractions(const std::vector<Complex>& poles, Complex s) {
    std::vector<Complex> all;
    all.reserve(2 * poles.size());
    for (const Complex& p : poles) {
        const Complex one = 1.0 / (s - p);
        if (p.imag() == 0) {
            all.push_back(one);
            continue;
        }
        const Complex other = 1.0 / (s - std::conj(p));
        all.push_back(one + other);
        all.push_back(Complex(0, 1) * (one - other));
    }
    return all;
}

/// The task, two rows (real and imaginary part) a frequency.
struct Task {
    const std::vector<double>& frequencies;
    const std::vector<std::vector<Complex>>& values;
    std::vector<std::vector<double>> weight;  ///< on a function's deviation at a frequency

    Task(const std::vector<double>& f, const std::vector<std::vector<Complex>>& functions,
         const std::vector<double>& weights)
        : frequencies(f), values(functions) {
        constexpr double least = 0.03;  // of the greatest size
        for (const auto& function : functions) {
            double greatest = 1e-300;
            for (const Complex& value : function) greatest = std::max(greatest, std::abs(value));
            weight.emplace_back();
            for (std::size_t k = 0; k < f.size(); ++k)
                weight.back().push_back((weights.empty() ? 1 : weights[k]) /
                                        std::max(std::abs(function[k]), least * greatest));
        }
    }
    [[nodiscard]] Index rows() const { return 2 * static_cast<Index>(frequencies.size()); }
    [[nodiscard]] Matrix basis(const std::vector<Complex>& poles) const {
        Matrix basis(rows(), realCount(poles));
        for (std::size_t k = 0; k < frequencies.size(); ++k) {
            const auto at = fractions(poles, angular(frequencies[k]));
            for (std::size_t n = 0; n < at.size(); ++n) {
                basis(2 * static_cast<Index>(k), static_cast<Index>(n)) = at[n].real();
                basis(2 * static_cast<Index>(k) + 1, static_cast<Index>(n)) = at[n].imag();
            }
        }
        return basis;
    }
    /// Rows times a function's weights.
    template <class Rows>
    void weigh(std::size_t function, Rows& all) const {
        for (std::size_t k = 0; k < frequencies.size(); ++k) {
            all.row(2 * static_cast<Index>(k)) *= weight[function][k];
            all.row(2 * static_cast<Index>(k) + 1) *= weight[function][k];
        }
    }
};

/// The first columns brought to one length, with what they were divided by.
Vector normalise(Matrix& a, Index count) {
    Vector lengths = a.leftCols(count).colwise().norm();
    for (Index c = 0; c < count; ++c) {
        if (lengths(c) == 0) lengths(c) = 1;
        a.col(c) /= lengths(c);
    }
    return lengths;
}

/// Zeros of d + sum c_n / (s - p_n), put into the left half of the plane.
std::vector<Complex> zeros(const std::vector<Complex>& poles, const Vector& c, double d) {
    const Index size = c.size();
    Matrix a = Matrix::Zero(size, size);
    Vector b = Vector::Zero(size);
    Index n = 0;
    for (const Complex& p : poles) {
        a(n, n) = p.real();
        b(n) = p.imag() == 0 ? 1 : 2;
        if (p.imag() != 0) {
            a(n, n + 1) = p.imag();
            a(n + 1, n) = -p.imag();
            a(n + 1, n + 1) = p.real();
            ++n;
        }
        ++n;
    }
    a -= b * c.transpose() / d;
    const Eigen::EigenSolver<Matrix> solver(a, false);
    std::vector<Complex> found;
    for (Index k = 0; k < size; ++k) {
        Complex zero = solver.eigenvalues()(k);
        if (zero.imag() < 0) continue;
        const double least = 1e-9 * std::abs(zero);
        zero = {-std::max(std::abs(zero.real()), std::max(least, 1e-6)), zero.imag()};
        found.push_back(zero);
    }
    return found;
}

/// One round: the function sigma = d + sum c_n / (s - p_n) whose product with every F_i the same poles make.
std::vector<Complex> betterPoles(const Task& task, const std::vector<Complex>& poles) {
    const Matrix basis = task.basis(poles);
    const Index count = basis.cols(), rows = basis.rows();
    Matrix stacked = Matrix::Zero(static_cast<Index>(task.values.size()) * (count + 1) + 1, count + 1);
    Index at = 0;
    for (std::size_t i = 0; i < task.values.size(); ++i) {
        Matrix whole(rows, 2 * count + 1);
        whole.leftCols(count) = basis;
        for (Index k = 0; k < rows / 2; ++k) {
            const Complex value = task.values[i][static_cast<std::size_t>(k)];
            for (Index n = 0; n <= count; ++n) {
                const Complex fraction = n < count ? Complex(basis(2 * k, n), basis(2 * k + 1, n)) : 1.0;
                whole(2 * k, count + n) = -(value * fraction).real();
                whole(2 * k + 1, count + n) = -(value * fraction).imag();
            }
        }
        task.weigh(i, whole);
        normalise(whole, count);
        const Eigen::HouseholderQR<Matrix> qr(whole);
        const Index left = std::min(rows - count, count + 1);
        stacked.block(at, 0, left, count + 1) =
            qr.matrixQR().block(count, count, left, count + 1).triangularView<Eigen::Upper>();
        at += left;
    }
    // Sigma must not vanish: its real part summed over the band is held.
    for (Index k = 0; k < rows / 2; ++k) {
        for (Index n = 0; n < count; ++n) stacked(at, n) += basis(2 * k, n);
        stacked(at, count) += 1;
    }
    const double held = 2.0 / double(rows);
    stacked.row(at) *= held;
    Vector right = Vector::Zero(stacked.rows());
    right(at) = 1;
    const Vector lengths = normalise(stacked, stacked.cols());
    const Vector x = stacked.colPivHouseholderQr().solve(right).cwiseQuotient(lengths);
    const double d = std::abs(x(count)) > 1e-9 ? x(count) : std::copysign(1e-9, x(count));
    return zeros(poles, x.head(count), d);
}

/// Half of the poles real, the rest lightly damped pairs, evenly over the logarithm of the frequency.
std::vector<Complex> firstPoles(double from, double to, int order) {
    std::vector<Complex> poles;
    const int pairs = order / 4, reals = order - 2 * pairs;
    poles.reserve(static_cast<std::size_t>(reals + pairs));
    for (int n = 0; n < reals; ++n)
        poles.emplace_back(-std::abs(angular(from)) * std::pow(to / from, double(n) / (reals - 1)), 0);
    const double low = std::sqrt(from * to);
    for (int n = 0; n < pairs; ++n) {
        const double w = std::abs(angular(low)) * std::pow(to / low, double(n + 1) / pairs);
        poles.emplace_back(-w / 20, w);
    }
    return poles;
}

}  // namespace

Complex PartialFractions::at(std::size_t function, double frequency) const {
    const Complex s = angular(frequency);
    Complex sum = 0;
    for (std::size_t k = 0; k < poles.size(); ++k) {
        sum += residue[function][k] / (s - poles[k]);
        if (poles[k].imag() != 0) sum += std::conj(residue[function][k]) / (s - std::conj(poles[k]));
    }
    return sum;
}

PartialFractions partialFractions(const std::vector<double>& frequencies,
                                  const std::vector<std::vector<Complex>>& values, int order,
                                  const std::vector<double>& weights) {
    constexpr int rounds = 8;
    const Task task(frequencies, values, weights);
    PartialFractions fit;
    fit.poles = firstPoles(frequencies.front(), frequencies.back(), order);
    for (int round = 0; round < rounds; ++round) fit.poles = betterPoles(task, fit.poles);
    const Matrix plain = task.basis(fit.poles);
    for (std::size_t i = 0; i < values.size(); ++i) {
        Matrix basis = plain;
        task.weigh(i, basis);
        const Vector lengths = normalise(basis, basis.cols());
        Vector wanted(task.rows());
        for (std::size_t k = 0; k < frequencies.size(); ++k) {
            wanted(2 * static_cast<Index>(k)) = values[i][k].real();
            wanted(2 * static_cast<Index>(k) + 1) = values[i][k].imag();
        }
        task.weigh(i, wanted);
        const Vector x = basis.colPivHouseholderQr().solve(wanted).cwiseQuotient(lengths);
        fit.residue.emplace_back();
        Index n = 0;
        for (const Complex& p : fit.poles) {
            const bool pair = p.imag() != 0;
            fit.residue.back().emplace_back(x(n), pair ? x(n + 1) : 0);
            n += pair ? 2 : 1;
        }
        for (std::size_t k = 0; k < frequencies.size(); ++k)
            fit.error = std::max(fit.error, task.weight[i][k] * std::abs(fit.at(i, frequencies[k]) - values[i][k]));
    }
    return fit;
}

StraightStep::StraightStep(Complex pole, double step) noexcept {
    const Complex z = pole * step;
    Complex one, two, three;  // (e^z - 1) / z, (one - 1) / z, (two - 1/2) / z
    if (std::abs(z) < 1) {
        constexpr int terms = 18;
        Complex power = 1;
        double factorial = 1;
        for (int k = 1; k <= terms; ++k) {
            factorial *= k;  // k!
            one += power / factorial;
            two += power / (factorial * (k + 1));
            three += power / (factorial * (k + 1) * (k + 2));
            power *= z;
        }
        stay = 1.0 + z * one;
    } else {
        stay = std::exp(z);
        one = (stay - 1.0) / z;
        two = (one - 1.0) / z;
        three = (two - 0.5) / z;
    }
    end = step * two;
    start = step * one - end;
    gathered = step * one;
    gatheredEnd = step * step * three;
    gatheredStart = step * step * two - gatheredEnd;
}

}  // namespace analysis
