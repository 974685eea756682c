// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/rational.h"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>

namespace network {

namespace {
constexpr double tiny = 1e-300;
constexpr std::size_t mostSupports = 48;
}  // namespace

void Rational::add(double frequency, ComplexVector value) {
    const auto at = std::lower_bound(samples_.begin(), samples_.end(), frequency,
                                     [](const Sample& s, double f) { return s.frequency < f; });
    samples_.insert(at, {frequency, std::move(value), false});
}

void Rational::useAsSupport(std::size_t sample) {
    auto& s = samples_[sample];
    s.support = true;
    support_.push_back(s.frequency);
    const auto m = static_cast<Eigen::Index>(support_.size());
    supportValue_.conservativeResize(s.value.size(), m);
    supportValue_.col(m - 1) = s.value;
}

void Rational::weigh() {
    const auto m = static_cast<Eigen::Index>(support_.size());
    const auto outputs = supportValue_.rows();
    // Loewner rows; the lowest eigenvector of their Gram matrix makes the linearised residual least.
    ComplexMatrix rows((static_cast<Eigen::Index>(samples_.size()) - m) * outputs, m);
    Eigen::Index row = 0;
    for (const auto& s : samples_) {
        if (s.support) continue;
        const Eigen::ArrayXd scale = (s.value.array().abs() + tiny).inverse();
        for (Eigen::Index k = 0; k < m; ++k) {
            // Columns scaled by their own frequency keep seven decades in range.
            const double f = support_[static_cast<std::size_t>(k)];
            rows.block(row, k, outputs, 1) =
                ((s.value - supportValue_.col(k)).array() * (scale * (f / (s.frequency - f)))).matrix();
        }
        row += outputs;
    }
    ComplexMatrix gram = rows.adjoint() * rows;
    const double size = gram.diagonal().real().maxCoeff();
    gram.diagonal().array() += Complex(1e-15 * size + tiny, 0);
    const Eigen::LLT<ComplexMatrix> factors(gram);
    ComplexVector w = ComplexVector::Ones(m);
    for (int turn = 0; turn < 6; ++turn) {  // inverse iteration
        w = factors.solve(w);
        w.normalize();
    }
    for (Eigen::Index k = 0; k < m; ++k) w(k) *= support_[static_cast<std::size_t>(k)];
    before_ = weight_;
    weight_ = w;
}

ComplexVector Rational::valueWith(const ComplexVector& weights, double frequency) const {
    const Eigen::Index m = weights.size();
    ComplexVector terms(m);
    for (Eigen::Index k = 0; k < m; ++k) {
        const double distance = frequency - support_[static_cast<std::size_t>(k)];
        if (distance == 0) return supportValue_.col(k);
        terms(k) = weights(k) / distance;
    }
    const Complex bottom = terms.sum();
    return supportValue_.leftCols(m) * terms / bottom;
}

ComplexVector Rational::value(double frequency) const {
    return valueWith(weight_, frequency);
}

Complex Rational::value(double frequency, int output) const {
    Complex top = 0, bottom = 0;
    for (Eigen::Index k = 0; k < weight_.size(); ++k) {
        const double distance = frequency - support_[static_cast<std::size_t>(k)];
        if (distance == 0) return supportValue_(output, k);
        const double share = 1 / distance;
        const Complex term(weight_(k).real() * share, weight_(k).imag() * share);
        const Complex y = supportValue_(output, k);
        top +=
            Complex(term.real() * y.real() - term.imag() * y.imag(), term.real() * y.imag() + term.imag() * y.real());
        bottom += term;
    }
    return top / bottom;
}

ComplexVector Rational::slope(double frequency) const {
    // r' = sum w_k (r - y_k)/(f - f_k)^2 / sum w_k/(f - f_k); at a support the limit from beside it.
    for (const double s : support_)
        if (std::abs(frequency - s) < 1e-6 * s) frequency = s * (1 + 1e-6);
    const ComplexVector r = value(frequency);
    ComplexVector terms(weight_.size());
    Complex bottom = 0;
    for (Eigen::Index k = 0; k < weight_.size(); ++k) {
        const double distance = frequency - support_[static_cast<std::size_t>(k)];
        const Complex term = weight_(k) / distance;
        bottom += term;
        terms(k) = term / distance;
    }
    return (r * terms.sum() - supportValue_ * terms) / bottom;
}

double Rational::deviation(const Sample& sample) const {
    const double worst =
        ((value(sample.frequency) - sample.value).array().abs() / (sample.value.array().abs() + tiny)).maxCoeff();
    return std::isfinite(worst) ? worst : 1e300;
}

void Rational::refine(double tolerance) {
    while (true) {
        weigh();
        double worst = 0;
        std::size_t at = 0, free = 0;
        for (std::size_t k = 0; k < samples_.size(); ++k) {
            if (samples_[k].support) continue;
            ++free;
            const double off = deviation(samples_[k]);
            if (off > worst) {
                worst = off;
                at = k;
            }
        }
        // Enough samples must stay free to say whether the fit holds.
        if (worst < tolerance || free <= samples_.size() / 3 || support_.size() == mostSupports) return;
        useAsSupport(at);
    }
}

std::vector<double> Rational::doubtful(std::size_t most) const {
    std::vector<std::pair<double, double>> doubts;
    for (std::size_t k = 1; k < samples_.size(); ++k) {
        const double low = samples_[k - 1].frequency, high = samples_[k].frequency;
        const double middle = std::sqrt(low * high);
        const ComplexVector now = value(middle);
        const double differ =
            before_.size() == 0
                ? 1
                : ((valueWith(before_, middle) - now).array().abs() / (now.array().abs() + tiny)).maxCoeff();
        // Wide gaps are tried before narrow ones of equal doubt.
        doubts.emplace_back(-(std::isfinite(differ) ? differ : 1e300) * std::log(high / low), middle);
    }
    std::sort(doubts.begin(), doubts.end());
    std::vector<double> chosen;
    for (std::size_t k = 0; k < std::min(most, doubts.size()); ++k) chosen.push_back(doubts[k].second);
    return chosen;
}

Rational Rational::fit(const std::function<ComplexVector(double)>& solve, double from, double to, double tolerance,
                       int mostSolves, const std::stop_token& stop) {
    constexpr int first = 24;
    constexpr std::size_t batch = 6;
    Rational r;
    for (int k = 0; k < first; ++k) {
        if (stop.stop_requested()) return r;
        // Closer towards the upper end, where the resonances are.
        const double f = to * std::pow(from / to, std::pow(1 - double(k) / (first - 1), 1.3));
        r.add(f, solve(f));
    }
    for (const std::size_t at : {std::size_t{0}, std::size_t{first} / 2, std::size_t{first} - 1}) r.useAsSupport(at);
    int agreed = 0;
    while (!stop.stop_requested()) {
        r.refine(tolerance * 0.1);
        r.error_ = 0;
        for (const double f : r.doubtful(batch)) {
            Sample fresh{f, solve(f), false};
            r.error_ = std::max(r.error_, r.deviation(fresh));
            r.add(f, std::move(fresh.value));
        }
        agreed = r.error_ < tolerance ? agreed + 1 : 0;
        if (agreed == 2) {
            r.converged_ = true;
            return r;
        }
        if (r.solves() >= mostSolves) return r;
    }
    return r;
}

}  // namespace network
