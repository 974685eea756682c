// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/yoke_to_yoke.h"

#include <Eigen/LU>
#include <array>
#include <cmath>
#include <numbers>
#include <vector>

namespace field {
namespace {

using std::numbers::pi;
/// x across the legs, y along them, z through the stack; the middle of the core at 0.
using SpacePoint = std::array<double, 3>;

/// A rectangle square to one axis, with one unit of charge.
struct Plate {
    SpacePoint middle{}, half{};  // half sizes; 0 along the normal
    [[nodiscard]] std::size_t normal() const { return half[0] == 0 ? 0U : half[1] == 0 ? 1U : 2U; }
};

/// Integral of 1/r over the rectangle [u0, u1] x [v0, v1] at height w, in closed form.
double rectangle(double u0, double u1, double v0, double v1, double w) {
    const auto corner = [w](double u, double v) {
        const double r = std::sqrt(u * u + v * v + w * w);
        double sum = 0;
        if (r + v > 0) sum += u * std::log(r + v);
        if (r + u > 0) sum += v * std::log(r + u);
        return w == 0 ? sum : sum - w * std::atan(u * v / (w * r));
    };
    return corner(u1, v1) - corner(u0, v1) - corner(u1, v0) + corner(u0, v0);
}

/// 1/r of a unit of charge spread over the plate; far away that of its middle.
double inverseDistance(const Plate& plate, const SpacePoint& at) {
    const double dx = at[0] - plate.middle[0], dy = at[1] - plate.middle[1], dz = at[2] - plate.middle[2];
    const double r2 = dx * dx + dy * dy + dz * dz;
    const double size = plate.half[0] + plate.half[1] + plate.half[2];
    if (r2 > 16 * size * size) return 1 / std::sqrt(r2);
    const std::size_t n = plate.normal(), a = (n + 1) % 3, b = (n + 2) % 3;
    const SpacePoint d{dx, dy, dz};
    return rectangle(d[a] - plate.half[a], d[a] + plate.half[a], d[b] - plate.half[b], d[b] + plate.half[b], d[n]) /
           (4 * plate.half[a] * plate.half[b]);
}

class Surface {
public:
    explicit Surface(const TwoLegOutline& core) : core_(core) {
        const double inner = core.windowWidth / 2, outer = inner + core.leg, deep = core.stack / 2;
        const double low = core.windowHeight / 2, high = low + core.yoke;
        face({0, high, 0}, {outer, high, deep});     // top
        face({0, low, deep}, {outer, high, deep});   // yoke's front
        face({outer, low, 0}, {outer, high, deep});  // yoke's end
        face({0, low, 0}, {inner, low, deep});       // yoke over the window
        face({outer, 0, 0}, {outer, low, deep});     // leg, outside
        face({inner, 0, deep}, {outer, low, deep});  // leg, front
        face({inner, 0, 0}, {inner, low, deep});     // leg, in the window
    }

    [[nodiscard]] double permeance() const {
        const auto count = static_cast<Eigen::Index>(plates_.size());
        Eigen::MatrixXd potential(count, count);
        Eigen::VectorXd wanted(count);
        for (Eigen::Index i = 0; i < count; ++i) {
            const SpacePoint& at = plates_[static_cast<std::size_t>(i)].middle;
            wanted(i) = std::min(0.5, at[1] / core_.windowHeight);
            for (Eigen::Index j = 0; j < count; ++j)
                potential(i, j) = ofImages(plates_[static_cast<std::size_t>(j)], at) / (4 * pi);
        }
        const Eigen::VectorXd charge = potential.partialPivLu().solve(wanted);
        return 8 * charge.dot(wanted) - 2 * core_.leg * core_.stack / core_.windowHeight;
    }

private:
    void face(const SpacePoint& from, const SpacePoint& to) {
        std::size_t n = 0;
        for (std::size_t k = 0; k < 3; ++k)
            if (from[k] == to[k]) n = k;
        const std::size_t a = (n + 1) % 3, b = (n + 2) % 3;
        const auto along = cuts(from[a], to[a]), across = cuts(from[b], to[b]);
        for (std::size_t i = 1; i < along.size(); ++i)
            for (std::size_t k = 1; k < across.size(); ++k) {
                Plate plate;
                plate.middle[n] = from[n];
                plate.middle[a] = (along[i] + along[i - 1]) / 2;
                plate.half[a] = (along[i] - along[i - 1]) / 2;
                plate.middle[b] = (across[k] + across[k - 1]) / 2;
                plate.half[b] = (across[k] - across[k - 1]) / 2;
                plates_.push_back(plate);
            }
    }
    /// Finer towards both ends, but for an end at 0, a plane of symmetry.
    static std::vector<double> cuts(double from, double to) {
        constexpr int count = 4;
        std::vector<double> all;
        for (int k = 0; k <= count; ++k) {
            const double t = double(k) / count;
            all.push_back(from + (to - from) * (from == 0 ? t * (2 - t) : t * t * (3 - 2 * t)));
        }
        return all;
    }
    /// The plate with its seven images: even in x and z, odd in y.
    static double ofImages(const Plate& plate, const SpacePoint& at) {
        double sum = 0;
        for (const double x : {1.0, -1.0})
            for (const double y : {1.0, -1.0})
                for (const double z : {1.0, -1.0}) sum += y * inverseDistance(plate, {x * at[0], y * at[1], z * at[2]});
        return sum;
    }

    const TwoLegOutline& core_;
    std::vector<Plate> plates_;
};

}  // namespace

double yokeToYoke(const TwoLegOutline& core) {
    return Surface(core).permeance();
}

}  // namespace field
