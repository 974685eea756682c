// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/sweep.h"

#include <algorithm>
#include <cmath>

#include "network/point_source.h"

namespace network {

namespace {

ComplexVector newton(const std::vector<double>& node, const ComplexMatrix& coefficient, double x) {
    ComplexVector sum = coefficient.col(coefficient.cols() - 1);
    for (Eigen::Index k = coefficient.cols() - 2; k >= 0; --k)
        sum = coefficient.col(k) + (x - node[static_cast<std::size_t>(k)]) * sum;
    return sum;
}

double deviation(const ComplexVector& guess, const ComplexVector& solved) {
    return ((guess - solved).array().abs() / solved.array().abs().max(Sweep::floor)).maxCoeff();
}

}  // namespace

Sweep::Interval Sweep::interval(std::size_t left) const {
    const std::size_t count = std::min<std::size_t>(4, points_.size());
    const std::size_t first = std::min(left == 0 ? 0 : left - 1, points_.size() - count);
    Interval made;
    const auto n = static_cast<Eigen::Index>(2 * count);
    made.coefficient.resize(points_.front().value.size(), n);
    for (std::size_t k = 0; k < count; ++k)
        for (int twice = 0; twice < 2; ++twice) {
            made.node.push_back(log_[first + k]);
            made.coefficient.col(static_cast<Eigen::Index>(2 * k) + twice) = points_[first + k].value;
        }
    // Divided differences with doubled nodes: the first order at a doubled node is the slope.
    for (Eigen::Index order = 1; order < n; ++order)
        for (Eigen::Index k = n - 1; k >= order; --k) {
            const auto high = static_cast<std::size_t>(k), low = static_cast<std::size_t>(k - order);
            if (made.node[high] == made.node[low])
                made.coefficient.col(k) = points_[first + high / 2].slope;
            else
                made.coefficient.col(k) =
                    (made.coefficient.col(k) - made.coefficient.col(k - 1)) / (made.node[high] - made.node[low]);
        }
    return made;
}

std::size_t Sweep::intervalOf(double logFrequency) const {
    const auto above = std::upper_bound(log_.begin() + 1, log_.end() - 1, logFrequency);
    return static_cast<std::size_t>(above - log_.begin()) - 1;
}

ComplexVector Sweep::value(double frequency) const {
    const double x = std::log(frequency);
    const auto& i = intervals_[intervalOf(x)];
    return newton(i.node, i.coefficient, x);
}

Complex Sweep::value(double frequency, int output) const {
    const double x = std::log(frequency);
    const auto& i = intervals_[intervalOf(x)];
    Complex sum = i.coefficient(output, i.coefficient.cols() - 1);
    for (Eigen::Index k = i.coefficient.cols() - 2; k >= 0; --k)
        sum = i.coefficient(output, k) + (x - i.node[static_cast<std::size_t>(k)]) * sum;
    return sum;
}

ComplexVector Sweep::slope(double frequency) const {
    const double x = std::log(frequency);
    const auto& i = intervals_[intervalOf(x)];
    ComplexVector sum = i.coefficient.col(i.coefficient.cols() - 1);
    ComplexVector derivative = ComplexVector::Zero(sum.size());
    for (Eigen::Index k = i.coefficient.cols() - 2; k >= 0; --k) {
        const double step = x - i.node[static_cast<std::size_t>(k)];
        derivative = sum + step * derivative;
        sum = i.coefficient.col(k) + step * sum;
    }
    return derivative / frequency;
}

void Sweep::finish() {
    intervals_.clear();
    for (std::size_t k = 0; k + 1 < points_.size(); ++k) intervals_.push_back(interval(k));
}

void Sweep::takeLogarithms() {
    log_.clear();
    for (const auto& p : points_) log_.push_back(std::log(p.frequency));
}

Sweep::Judged Sweep::insert(const std::vector<Point>& middles, const std::vector<char>& open, double tolerance) {
    std::vector<Point> points;
    Judged next;
    std::size_t used = 0;
    for (std::size_t k = 0; k < open.size(); ++k) {
        points.push_back(points_[k]);
        if (open[k] == 0) {
            next.open.push_back(0);
            continue;
        }
        const Interval guess = interval(k);
        const Point& middle = middles[used++];
        const double off = deviation(newton(guess.node, guess.coefficient, std::log(middle.frequency)), middle.value);
        const bool agrees = off < tolerance;
        double& worst = agrees ? error_ : next.worst;
        worst = std::max(worst, off);
        points.push_back(middle);
        next.open.insert(next.open.end(), 2, agrees ? 0 : 1);
    }
    points.push_back(points_.back());
    points_ = std::move(points);
    return next;
}

Sweep Sweep::over(const Prepared& network, double from, double to, double tolerance, int mostSolves,
                  const std::stop_token& stop) {
    constexpr double startPerDecade = 3;
    Sweep sweep;
    const int first = 1 + static_cast<int>(std::ceil(std::max(3.0, std::log10(to / from) * startPerDecade)));
    std::vector<double> wanted{from};
    // Below 10 kHz states change little but for the core.
    constexpr double border = 1e4, few = 0.5, many = 3;
    while (wanted.back() < to)
        wanted.push_back(wanted.back() * std::pow(10, 1 / (wanted.back() < border ? few : many)));
    wanted.back() = to;
    PointSource source(network, wanted, stop);
    wanted.clear();
    for (int k = 0; k < first; ++k) wanted.push_back(from * std::pow(to / from, double(k) / (first - 1)));
    sweep.points_ = source.at(wanted);
    if (stop.stop_requested()) return sweep;
    std::vector<char> open(sweep.points_.size() - 1, 1);  // per interval: its middle has not yet agreed
    double worst = 0;
    while (std::find(open.begin(), open.end(), 1) != open.end() && sweep.solves() < mostSolves) {
        sweep.takeLogarithms();
        wanted.clear();
        for (std::size_t k = 0; k < open.size(); ++k)
            if (open[k] != 0) wanted.push_back(std::exp((sweep.log_[k] + sweep.log_[k + 1]) / 2));
        const std::vector<Point> middles = source.at(wanted);
        if (stop.stop_requested()) return sweep;
        auto judged = sweep.insert(middles, open, tolerance);
        open = std::move(judged.open);
        worst = judged.worst;
    }
    sweep.takeLogarithms();
    sweep.finish();
    sweep.converged_ = std::find(open.begin(), open.end(), 1) == open.end();
    if (!sweep.converged_) sweep.error_ = std::max(sweep.error_, worst);
    return sweep;
}

}  // namespace network
