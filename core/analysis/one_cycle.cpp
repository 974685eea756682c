// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/one_cycle.h"

#include <numbers>

namespace analysis {

using Complex = std::complex<double>;

OneCycle::OneCycle(int highest, bool even, int samples) : turn_(static_cast<std::size_t>(samples)), even_(even) {
    for (std::size_t n = 0; n < turn_.size(); ++n)
        turn_[n] = std::polar(1.0, 2 * std::numbers::pi * double(n) / samples);
    for (int k = even ? 0 : 1; k <= highest; k += even ? 1 : 2) kinds_.push_back(k);
}

std::vector<double> OneCycle::inTime(const Eigen::Ref<const Eigen::VectorXd>& packed) const {
    std::vector<double> wave(turn_.size(), 0);
    const std::size_t mask = turn_.size() - 1, count = even_ ? wave.size() : wave.size() / 2;
    for (std::size_t i = 0; i < kinds_.size(); ++i) {
        const auto k = static_cast<std::size_t>(kinds_[i]);
        const auto at = 2 * static_cast<Eigen::Index>(i);
        const double twice = k == 0 ? 1 : 2, real = twice * packed(at), imaginary = twice * packed(at + 1);
        for (std::size_t n = 0; n < count; ++n) {
            const Complex& turn = turn_[k * n & mask];
            wave[n] += real * turn.real() - imaginary * turn.imag();
        }
    }
    for (std::size_t n = count; n < wave.size(); ++n) wave[n] = -wave[n - count];
    return wave;
}

Complex OneCycle::coefficient(const std::vector<double>& values, std::size_t k) const {
    double real = 0, imaginary = 0;
    const std::size_t mask = turn_.size() - 1;
    // Where there are no even harmonics the second half adds what the first did.
    const std::size_t count = even_ ? values.size() : values.size() / 2;
    for (std::size_t n = 0; n < count; ++n) {
        const Complex& turn = turn_[k * n & mask];
        real += values[n] * turn.real();
        imaginary -= values[n] * turn.imag();
    }
    return Complex(real, imaginary) / double(count);
}

std::vector<Complex> OneCycle::coefficients(const std::vector<double>& values) const {
    std::vector<Complex> all;
    all.reserve(kinds_.size());
    for (const int k : kinds_) all.push_back(coefficient(values, static_cast<std::size_t>(k)));
    return all;
}

Eigen::VectorXd OneCycle::packed(const std::vector<double>& values) const {
    Eigen::VectorXd packed(unknowns());
    for (std::size_t i = 0; i < kinds_.size(); ++i) {
        const Complex x = coefficient(values, static_cast<std::size_t>(kinds_[i]));
        packed(2 * static_cast<Eigen::Index>(i)) = x.real();
        packed(2 * static_cast<Eigen::Index>(i) + 1) = x.imag();
    }
    return packed;
}

Eigen::RowVectorXd OneCycle::sampling(std::size_t sample) const {
    Eigen::RowVectorXd row(unknowns());
    for (std::size_t i = 0; i < kinds_.size(); ++i) {
        const auto k = static_cast<std::size_t>(kinds_[i]);
        const Complex turn = turn_[k * sample & (turn_.size() - 1)];
        row(2 * static_cast<Eigen::Index>(i)) = (k == 0 ? 1 : 2) * turn.real();
        row(2 * static_cast<Eigen::Index>(i) + 1) = k == 0 ? 0 : -2 * turn.imag();
    }
    return row;
}

Eigen::MatrixXd OneCycle::multiplier(const std::vector<double>& factor) const {
    const auto highest = static_cast<std::size_t>(kinds_.back());
    std::vector<Complex> tone(2 * highest + 1);
    for (std::size_t m = 0; m < tone.size(); m += even_ ? 1 : 2) tone[m] = coefficient(factor, m);
    const auto toneAt = [&](int m) {
        return m >= 0 ? tone[static_cast<std::size_t>(m)] : std::conj(tone[static_cast<std::size_t>(-m)]);
    };
    const auto count = static_cast<Eigen::Index>(kinds_.size());
    Eigen::MatrixXd made = Eigen::MatrixXd::Zero(2 * count, 2 * count);
    for (Eigen::Index i = 0; i < count; ++i) {
        const int k = kinds_[static_cast<std::size_t>(i)];
        for (Eigen::Index j = 0; j < count; ++j) {
            const int l = kinds_[static_cast<std::size_t>(j)];
            const Complex direct = toneAt(k - l), mirrored = l == 0 ? 0 : toneAt(k + l);
            const Complex real = direct + mirrored, imaginary = Complex(0, 1) * (direct - mirrored);
            made(2 * i, 2 * j) = real.real();
            made(2 * i + 1, 2 * j) = real.imag();
            if (l == 0) continue;  // a mean has no imaginary part
            made(2 * i, 2 * j + 1) = imaginary.real();
            made(2 * i + 1, 2 * j + 1) = imaginary.imag();
        }
    }
    return made;
}

}  // namespace analysis
