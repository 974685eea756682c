// SPDX-License-Identifier: GPL-3.0-or-later
#include "spread/law.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "spread/normal.h"

namespace spread {

using Kind = catalog::Law;

namespace {

constexpr double root3 = std::numbers::sqrt3, root6 = std::numbers::sqrt2 * std::numbers::sqrt3;

/// From -1 to 1 for a share from 0 to 1.
double triangular(double share) noexcept {
    return share < 0.5 ? std::sqrt(2 * share) - 1 : 1 - std::sqrt(2 * (1 - share));
}

struct Moments {
    double mean = 0, deviation = 0;
};
Moments momentsOf(const std::vector<catalog::StepChance>& steps) noexcept {
    Moments m;
    double square = 0;
    for (const auto& s : steps) {
        m.mean += s.share * s.step;
        square += s.share * s.step * s.step;
    }
    m.deviation = std::sqrt(std::max(0.0, square - m.mean * m.mean));
    return m;
}

}  // namespace

std::vector<catalog::StepChance> wholeSteps(std::vector<catalog::StepChance> steps) {
    double left = 1;
    for (const auto& s : steps) left -= s.share;
    if (left > 1e-12) steps.push_back({0, left});
    std::stable_sort(steps.begin(), steps.end(), [](const auto& a, const auto& b) { return a.step < b.step; });
    return steps;
}

double Law::step(double z) const noexcept {
    const double share = normalProbability(z);
    double sum = 0;
    for (const auto& s : steps)
        if ((sum += s.share) > share) return s.step;
    return steps.empty() ? 0 : steps.back().step;
}

double Law::value(double nominal, double z) const noexcept {
    const double unit = relative ? nominal : 1;
    switch (kind) {
        case Kind::Normal:
            return nominal + unit * halfWidth / 2 * z;
        case Kind::Uniform:
            return nominal + unit * halfWidth * (2 * normalProbability(z) - 1);
        case Kind::Lognormal:
            return nominal * std::exp(std::log1p(relative || nominal == 0 ? halfWidth : halfWidth / nominal) / 2 * z);
        case Kind::Triangular:
            return nominal + unit * halfWidth * triangular(normalProbability(z));
        case Kind::Discrete:
            break;
    }
    return nominal + unit * step(z);
}

double Law::standard(double z) const noexcept {
    switch (kind) {
        case Kind::Uniform:
            return root3 * (2 * normalProbability(z) - 1);
        case Kind::Triangular:
            return root6 * triangular(normalProbability(z));
        case Kind::Discrete: {
            const Moments m = momentsOf(steps);
            return m.deviation > 0 ? (step(z) - m.mean) / m.deviation : 0;
        }
        case Kind::Normal:
        case Kind::Lognormal:
            break;
    }
    return z;
}

double Law::deviation(double nominal) const noexcept {
    const double unit = relative ? std::abs(nominal) : 1;
    switch (kind) {
        case Kind::Normal:
            return unit * halfWidth / 2;
        case Kind::Uniform:
            return unit * halfWidth / root3;
        case Kind::Lognormal:
            return std::abs(nominal) * std::log1p(relative || nominal == 0 ? halfWidth : halfWidth / nominal) / 2;
        case Kind::Triangular:
            return unit * halfWidth / root6;
        case Kind::Discrete:
            break;
    }
    return unit * momentsOf(steps).deviation;
}

}  // namespace spread
