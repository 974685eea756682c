// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/step.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace analysis {

namespace {

constexpr double pi = std::numbers::pi;

/// Adds the frequencies between two that straight lines need, each with its value.
void refine(const std::function<double(double)>& real, double f0, double y0, double f1, double y1, double tolerance,
            int depth, std::vector<double>& f, std::vector<double>& y) {
    const double middle = (f0 + f1) / 2, value = real(middle);
    if (depth > 0 && std::abs(value - (y0 + y1) / 2) > tolerance) {
        refine(real, f0, y0, middle, value, tolerance, depth - 1, f, y);
        refine(real, middle, value, f1, y1, tolerance, depth - 1, f, y);
        return;
    }
    f.insert(f.end(), {middle, f1});
    y.insert(y.end(), {value, y1});
}

}  // namespace

double sineIntegral(double x, double sine, double cosine) noexcept {
    if (x < 1.5) {  // power series
        const double square = x * x;
        double term = x, sum = x;
        for (int k = 1; k < 9; ++k) {
            term *= -square / ((2 * k) * (2 * k + 1));
            sum += term / (2 * k + 1);
        }
        return sum;
    }
    const double s = x * x;
    const double f = (((((s + 38.027264) * s + 265.187033) * s + 335.677320) * s + 38.102495) /
                      ((((s + 40.021433) * s + 322.624911) * s + 570.236280) * s + 157.105423)) /
                     x;
    const double g = (((((s + 42.242855) * s + 302.757865) * s + 352.018498) * s + 21.821899) /
                      ((((s + 48.196927) * s + 482.485984) * s + 1114.978885) * s + 449.690326)) /
                     s;
    return pi / 2 - f * cosine - g * sine;
}

StepResponse::StepResponse(const std::function<double(double)>& real, double lowest, double highest, double tolerance) {
    constexpr int perDecade = 12, beyond = 5;
    std::vector<double> f{lowest}, y{real(lowest)};
    const double ratio = std::pow(10.0, 1.0 / perDecade);
    double greatest = 0;
    for (double from = lowest; from < highest * (1 - 1e-9);) {
        const double to = std::min(from * ratio, highest);
        const double start = y.back(), end = real(to);
        greatest = std::max({greatest, std::abs(start), std::abs(end)});
        refine(real, from, start, to, end, tolerance / 2 * std::max(greatest, 1e-12), 10, f, y);
        from = to;
    }
    const double square = (real(2 * lowest) - y.front()) / (3 * lowest * lowest);
    angular_.push_back(0);
    real_.push_back(y.front() - square * lowest * lowest);
    for (std::size_t i = 0; i < f.size(); ++i) {
        angular_.push_back(2 * pi * f[i]);
        real_.push_back(y[i]);
    }
    for (int k = 1; k <= beyond * 4; ++k) {
        const double stretch = std::pow(10.0, double(k) / (beyond * 4) * 2);
        angular_.push_back(2 * pi * highest * stretch);
        real_.push_back(y.back() / (stretch * stretch));
    }
}

double StepResponse::at(double time) const {
    if (time <= 0) return 0;
    // By parts: s = (2/pi) [R Si(w t)] - (2/pi) sum R' [w Si(w t) + cos(w t)/t].
    double sum = 0, before = 1 / time, integral = 0;
    for (std::size_t i = 1; i < angular_.size(); ++i) {
        const double x = angular_[i] * time, sine = std::sin(x), cosine = std::cos(x);
        integral = sineIntegral(x, sine, cosine);
        const double now = angular_[i] * integral + cosine / time;
        sum -= (real_[i] - real_[i - 1]) / (angular_[i] - angular_[i - 1]) * (now - before);
        before = now;
    }
    return 2 / pi * (real_.back() * integral + sum);
}

std::vector<double> squareResponse(const std::function<std::complex<double>(double)>& transfer, double frequency,
                                   double highest, int count) {
    const auto steps = static_cast<std::size_t>(count);
    std::vector<std::complex<double>> turn(steps);
    for (std::size_t n = 0; n < steps; ++n) turn[n] = std::polar(1.0, 2 * pi * double(n) / count);
    std::vector<double> response(steps, 0);
    const int last = static_cast<int>(highest / frequency);
    for (int k = 1; k <= last; k += 2) {
        const double place = pi * k / (last + 1);
        const std::complex<double> part = transfer(k * frequency) * (4 / (pi * k) * std::sin(place) / place);
        for (std::size_t n = 0; n < steps; ++n) {
            const std::complex<double>& t = turn[static_cast<std::size_t>(k) * n % steps];
            response[n] += part.real() * t.imag() + part.imag() * t.real();
        }
    }
    return response;
}

}  // namespace analysis
