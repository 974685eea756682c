// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/step.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace analysis {

namespace {

constexpr double pi = std::numbers::pi;

/// What is integrated with sin(w t): Re H / w, told by Re H.
struct Place {
    double w, real;
    [[nodiscard]] double value() const { return real / w; }
};

/// integral of cos, u^2 cos and u sin of theta u from -1 to 1.
struct Moments {
    double even, square, odd;
    explicit Moments(double theta) {
        const double s = theta * theta;
        if (theta < 0.3) {  // to 1e-9
            even = 2 * (1 - s / 6 * (1 - s / 20 * (1 - s / 42)));
            square = 2 * (1.0 / 3 - s / 10 + s * s / 168 - s * s * s / 6480);
            odd = 2 * theta * (1.0 / 3 - s / 30 + s * s / 840 - s * s * s / 45360);
            return;
        }
        const double sine = std::sin(theta), cosine = std::cos(theta);
        even = 2 * sine / theta;
        odd = 2 * (sine / theta - cosine) / theta;
        square = even - 2 * odd / theta;
    }
};

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
    constexpr int perDecade = 12, deepest = 10;
    constexpr double beyond = 100;
    const double top = real(highest);
    const auto at = [&](double f) {
        return Place{2 * pi * f, f > highest ? top * (highest / f) * (highest / f) : real(f)};
    };
    const Place first = at(lowest);
    const double low = first.w;
    square_ = (real(2 * lowest) - first.real) / (3 * low * low);
    constant_ = first.real - square_ * low * low;
    lowest_ = low;
    double greatest = std::abs(first.real);
    const std::function<void(const Place&, const Place&, const Place&, int)> add =
        [&](const Place& from, const Place& middle, const Place& to, int depth) {
            const double half = (to.w - from.w) / 2;
            const double slope = (to.value() - from.value()) / 2;
            const double bend = (to.value() + from.value()) / 2 - middle.value();
            const auto off = [&](const Place& place, double side) {
                return std::abs(place.value() - (middle.value() + side * (slope / 2) + bend / 4)) * place.w;
            };
            const Place before = at((from.w + middle.w) / 4 / pi), after = at((middle.w + to.w) / 4 / pi);
            if (depth > 0 && std::max(off(before, -1), off(after, 1)) > tolerance / 2 * std::max(greatest, 1e-12)) {
                add(from, before, middle, depth - 1);
                add(middle, after, to, depth - 1);
                return;
            }
            pieces_.push_back({middle.w, half, half * middle.value(), half * slope, half * bend});
        };
    const double ratio = std::pow(10.0, 1.0 / perDecade);
    Place from = first;
    for (double f = lowest; f < beyond * highest * (1 - 1e-9);) {
        // A piece ends at the highest frequency: there the function has a corner.
        const double end = f < highest * (1 - 1e-9) ? std::min(f * ratio, highest) : f * ratio;
        const Place to = at(end);
        greatest = std::max(greatest, std::abs(to.real));
        add(from, at((f + end) / 2), to, deepest);
        from = to;
        f = end;
    }
}

double StepResponse::at(double time) const {
    if (time <= 0) return 0;
    const double x = lowest_ * time, sine = std::sin(x), cosine = std::cos(x);
    double sum = constant_ * sineIntegral(x, sine, cosine) + square_ * (sine - x * cosine) / (time * time);
    for (const Piece& piece : pieces_) {
        const Moments over(piece.half * time);
        const double phase = piece.middle * time;
        sum += std::sin(phase) * (piece.value * over.even + piece.bend * over.square) +
               std::cos(phase) * piece.slope * over.odd;
    }
    return 2 / pi * sum;
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
