// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/rational.h"

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>

namespace network {

void Rational::add(double frequency, ComplexVector value) {
    const auto at = std::lower_bound(frequency_.begin(), frequency_.end(), frequency);
    const auto index = at - frequency_.begin();
    frequency_.insert(at, frequency);
    solved_.insert(solved_.begin() + index, std::move(value));
}

bool Rational::tryWeights(std::size_t supports) {
    const std::size_t count = frequency_.size();
    std::vector<char> isSupport(count, 0);
    support_.clear();
    supportValue_.clear();
    for (std::size_t k = 0; k < supports; ++k) {
        const auto at = static_cast<std::size_t>(std::lround(double(k) * double(count - 1) / double(supports - 1)));
        isSupport[at] = 1;
        support_.push_back(frequency_[at]);
        supportValue_.push_back(solved_[at]);
    }
    const auto m = static_cast<Eigen::Index>(supports);
    const auto outputs = solved_.front().size();
    // The Loewner rows' Gram matrix; its lowest eigenvector makes the linearised residual least.
    ComplexMatrix rows(static_cast<Eigen::Index>(count - supports) * outputs, m);
    Eigen::Index row = 0;
    for (std::size_t i = 0; i < count; ++i) {
        if (isSupport[i]) continue;
        for (Eigen::Index q = 0; q < outputs; ++q, ++row) {
            const double scale = 1 / (std::abs(solved_[i](q)) + 1e-300);
            for (Eigen::Index k = 0; k < m; ++k) {
                const auto s = static_cast<std::size_t>(k);
                // Columns scaled by their own frequency keep seven decades in range.
                rows(row, k) = scale * (solved_[i](q) - supportValue_[s](q)) / (frequency_[i] - support_[s]) * support_[s];
            }
        }
    }
    const ComplexMatrix gram = rows.adjoint() * rows;
    const Eigen::SelfAdjointEigenSolver<ComplexMatrix> eigen(gram);
    weight_ = eigen.eigenvectors().col(0);
    for (Eigen::Index k = 0; k < m; ++k) weight_(k) *= support_[static_cast<std::size_t>(k)];
    double worst = 0;
    for (std::size_t i = 0; i < count; ++i)
        if (!isSupport[i]) worst = std::max(worst, deviation(frequency_[i], solved_[i]));
    return worst < 1e-7;
}

void Rational::weigh() {
    const std::size_t most = (frequency_.size() + 1) / 2;
    for (std::size_t supports = std::min<std::size_t>(8, most);; supports = std::min(most, supports + 4))
        if (tryWeights(supports) || supports == most) return;
}

double Rational::deviation(double frequency, const ComplexVector& solved) const {
    const ComplexVector r = value(frequency);
    double worst = 0;
    for (Eigen::Index q = 0; q < r.size(); ++q) {
        const double d = std::abs(r(q) - solved(q)) / (std::abs(solved(q)) + 1e-300);
        worst = std::max(worst, std::isfinite(d) ? d : 1e300);
    }
    return worst;
}

ComplexVector Rational::value(double frequency) const {
    ComplexVector top = ComplexVector::Zero(supportValue_.front().size());
    Complex bottom = 0;
    for (std::size_t k = 0; k < support_.size(); ++k) {
        const double distance = frequency - support_[k];
        if (distance == 0) return supportValue_[k];
        const Complex term = weight_(static_cast<Eigen::Index>(k)) / distance;
        top += term * supportValue_[k];
        bottom += term;
    }
    return top / bottom;
}

ComplexVector Rational::slope(double frequency) const {
    // r' = sum w_k (r - y_k)/(f - f_k)^2 / sum w_k/(f - f_k); at a support the limit from beside it.
    for (const double s : support_)
        if (std::abs(frequency - s) < 1e-9 * s) frequency = s * (1 + 1e-6);
    const ComplexVector r = value(frequency);
    ComplexVector top = ComplexVector::Zero(r.size());
    Complex bottom = 0;
    for (std::size_t k = 0; k < support_.size(); ++k) {
        const double distance = frequency - support_[k];
        const Complex term = weight_(static_cast<Eigen::Index>(k)) / distance;
        top += (term / distance) * (r - supportValue_[k]);
        bottom += term;
    }
    return top / bottom;
}

Rational Rational::fit(const std::function<ComplexVector(double)>& solve, double from, double to, double tolerance,
                       int mostSolves, const std::stop_token& stop) {
    constexpr int first = 17;
    Rational r;
    const double ratio = std::log(to / from);
    for (int k = 0; k < first && !stop.stop_requested(); ++k) {
        const double f = from * std::exp(ratio * k / (first - 1));
        r.add(f, solve(f));
    }
    std::vector<std::pair<double, double>> open;  // intervals whose middle has not yet agreed
    for (int k = 1; k < first; ++k)
        open.emplace_back(r.frequency_.empty() ? 0 : from * std::exp(ratio * (k - 1) / (first - 1)), from * std::exp(ratio * k / (first - 1)));
    while (!stop.stop_requested()) {
        r.weigh();
        std::vector<std::pair<double, double>> next;
        r.error_ = 0;
        std::vector<std::pair<double, ComplexVector>> fresh;
        for (const auto& [low, high] : open) {
            if (stop.stop_requested()) return r;
            const double middle = std::sqrt(low * high);
            fresh.emplace_back(middle, solve(middle));
            const double off = r.deviation(middle, fresh.back().second);
            r.error_ = std::max(r.error_, off);
            if (off > tolerance) {
                next.emplace_back(low, middle);
                next.emplace_back(middle, high);
            }
        }
        for (auto& [f, y] : fresh) r.add(f, std::move(y));
        if (next.empty()) {
            r.weigh();
            r.converged_ = true;
            return r;
        }
        if (r.solves() + static_cast<int>(next.size()) > mostSolves) return r;
        open = std::move(next);
    }
    return r;
}

}  // namespace network
