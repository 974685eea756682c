// SPDX-License-Identifier: GPL-3.0-or-later
//
// Everything is odd in x about the block's middle, so only the right half of the outline carries unknowns: the right
// face, and the outer halves of top and bottom, whose images on the left carry the opposite.
#include "field/beside_legs.h"

#include <Eigen/LU>
#include <cmath>
#include <numbers>

#include "field/window_field.h"

namespace field {
namespace {

using std::numbers::pi;

struct Point {
    double x = 0, y = 0;
};

/// A straight panel; its outward normal points to the right of from -> to.
struct Panel {
    Point from, to;
    [[nodiscard]] double length() const { return std::hypot(to.x - from.x, to.y - from.y); }
    [[nodiscard]] Point middle() const { return {(from.x + to.x) / 2, (from.y + to.y) / 2}; }
    [[nodiscard]] Point along() const { return {(to.x - from.x) / length(), (to.y - from.y) / length()}; }
    [[nodiscard]] Point normal() const { return {along().y, -along().x}; }
    [[nodiscard]] Panel mirrored() const { return {{-to.x, to.y}, {-from.x, from.y}}; }
};

/// Panels from corner to corner, finer towards the ends that are corners.
void addEdge(std::vector<Panel>& panels, Point from, Point to, int count, bool cornerFirst, bool cornerLast) {
    const auto place = [&](double t) {
        double s = t;
        if (cornerFirst && cornerLast) s = t * t * (3 - 2 * t);
        if (cornerFirst && !cornerLast) s = t * t;
        if (!cornerFirst && cornerLast) s = t * (2 - t);
        return Point{from.x + s * (to.x - from.x), from.y + s * (to.y - from.y)};
    };
    for (int k = 0; k < count; ++k) panels.push_back({place(double(k) / count), place(double(k + 1) / count)});
}

/// Gradient at p of the potential -1/(2 pi) ln r of a panel with unit density.
Point gradient(const Panel& panel, Point p) {
    const Point t = panel.along();
    const double s = (p.x - panel.from.x) * t.x + (p.y - panel.from.y) * t.y;
    const double d = (p.x - panel.from.x) * t.y - (p.y - panel.from.y) * t.x;  // along the normal
    const double l = panel.length();
    const double near = s * s + d * d, far = (s - l) * (s - l) + d * d;
    const double tangential = std::log(near / far) / 2;
    const double turned = std::atan2(s, std::abs(d)) - std::atan2(s - l, std::abs(d));
    const double across = std::abs(d) < 1e-12 * l ? 0 : std::copysign(turned, d);
    const Point n = panel.normal();
    return {-(tangential * t.x + across * n.x) / (2 * pi), -(tangential * t.y + across * n.y) / (2 * pi)};
}

/// Mean of ln r between a point and a rectangle: antiderivative u v ln r - 3/2 u v + u^2/2 atan(v/u) + v^2/2 atan(u/v).
double meanLog(const coil::Box& b, Point p) {
    const auto corner = [](double u, double v) {
        const double r2 = u * u + v * v;
        if (r2 == 0) return 0.0;
        const double flat = u == 0 ? 0 : u * u / 2 * std::atan(v / u),
                     steep = v == 0 ? 0 : v * v / 2 * std::atan(u / v);
        return u * v * (std::log(r2) / 2 - 1.5) + flat + steep;
    };
    const double u1 = b.x1 - p.x, u0 = b.x0 - p.x, v1 = b.y1 - p.y, v0 = b.y0 - p.y;
    return (corner(u1, v1) - corner(u0, v1) - corner(u1, v0) + corner(u0, v0)) / (b.width() * b.height());
}

/// The problem scaled to the block's height, its middle at the origin.
class Block {
public:
    Block(const IronBlock& block, const std::vector<coil::Box>& boxes, const std::vector<double>& share)
        : scale_(block.above - block.below), half_(block.width / 2 / scale_), share_(share) {
        const double middle = (block.above + block.below) / 2;
        for (const auto& b : boxes)
            boxes_.push_back({b.x0 / scale_, b.x1 / scale_, (b.y0 - middle) / scale_, (b.y1 - middle) / scale_});
        constexpr int onFace = 48, onEnd = 24;
        addEdge(panels_, {0, -0.5}, {half_, -0.5}, onEnd, false, true);
        addEdge(panels_, {half_, -0.5}, {half_, 0.5}, onFace, true, true);
        addEdge(panels_, {half_, 0.5}, {0, 0.5}, onEnd, true, false);
    }

    [[nodiscard]] double value(double unit) const {
        const auto count = static_cast<Eigen::Index>(panels_.size());
        Eigen::MatrixXd system(count, count);
        Eigen::VectorXd wanted(count);
        for (Eigen::Index i = 0; i < count; ++i) {
            const Panel& at = panels_[static_cast<std::size_t>(i)];
            const Point n = at.normal();
            const Point source = sourceGradient(at.middle());
            wanted(i) = -(source.x * n.x + source.y * n.y);
            for (Eigen::Index j = 0; j < count; ++j) {
                const Panel& from = panels_[static_cast<std::size_t>(j)];
                const Point own = gradient(from, at.middle()), image = gradient(from.mirrored(), at.middle());
                // On the panel itself the normal derivative jumps; outside it is half the density.
                const double direct = i == j ? -0.5 : own.x * n.x + own.y * n.y;
                system(i, j) = direct - (image.x * n.x + image.y * n.y);
            }
        }
        const Eigen::VectorXd density = system.partialPivLu().solve(wanted);
        double sum = 0;
        for (Eigen::Index j = 0; j < count; ++j) {
            const Panel& panel = panels_[static_cast<std::size_t>(j)];
            const Point p = panel.middle();
            sum += density(j) * panel.length() * (potential(p) - potential({-p.x, p.y}));
        }
        return sum + otherSide(unit);
    }

private:
    /// Of one ampere in the boxes on the right alone, without iron, relative to `scale_`.
    [[nodiscard]] double potential(Point p) const {
        double sum = 0;
        for (std::size_t k = 0; k < boxes_.size(); ++k)
            sum -= share_[k] * meanLog(boxes_[k], {p.x - half_, p.y}) / (2 * pi);
        return sum;
    }
    /// Of both coils with their images each in its own plane.
    [[nodiscard]] Point sourceGradient(Point p) const {
        const Point right = planeGradient({p.x - half_, p.y}), left = planeGradient({-p.x - half_, p.y});
        return {right.x + left.x, right.y - left.y};
    }
    [[nodiscard]] Point planeGradient(Point p) const {
        std::vector<CurrentBox> all;
        for (const auto& b : boxes_) all.push_back({b, 1});
        const Eigen::MatrixXd h = openField(all, p.x, {p.y});
        Point sum;
        for (std::size_t k = 0; k < all.size(); ++k) {
            sum.x -= share_[k] * h(1, static_cast<Eigen::Index>(k));  // Hy = -dA/dx
            sum.y += share_[k] * h(0, static_cast<Eigen::Index>(k));
        }
        return sum;
    }
    /// Potential of the left coil and its image over the boxes on the right, and the change of the logarithm's unit of
    /// the right pair.
    [[nodiscard]] double otherSide(double unit) const {
        double sum = 0;
        constexpr double node[] = {-0.7745966692414834, 0, 0.7745966692414834}, weight[] = {5. / 18, 8. / 18, 5. / 18};
        for (std::size_t k = 0; k < boxes_.size(); ++k)
            for (int i = 0; i < 3; ++i)
                for (int j = 0; j < 3; ++j) {
                    const auto& b = boxes_[k];
                    const Point p{half_ + b.middle() + b.width() / 2 * node[i],
                                  (b.y0 + b.y1) / 2 + b.height() / 2 * node[j]};
                    const double left = -(potential({-p.x, p.y}) + potential({p.x + 2 * half_, p.y}));
                    sum += share_[k] * weight[i] * weight[j] * left;
                }
        return sum + std::log(scale_ / unit) / pi;
    }

    double scale_, half_;
    std::vector<double> share_;
    std::vector<coil::Box> boxes_;
    std::vector<Panel> panels_;
};

}  // namespace

double aroundBlock(const IronBlock& block, const std::vector<coil::Box>& boxes, const std::vector<double>& share,
                   double unit) {
    return Block(block, boxes, share).value(unit);
}

}  // namespace field
