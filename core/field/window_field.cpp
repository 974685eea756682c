// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/window_field.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "field/decay.h"

namespace field {
namespace {

using std::numbers::pi;
constexpr double forgotten = 15;  // exponents beyond count as zero

/// Adds the field of one rectangle with unit current. Both corner functions share their logarithm and their angle.
void addRectangle(const coil::Box& b, double x, double y, double& hx, double& hy) {
    const double u[2] = {x - b.x0, x - b.x1}, v[2] = {y - b.y0, y - b.y1};
    const double scale = 1 / (2 * pi * b.width() * b.height());
    for (int i = 0; i < 2; ++i)
        for (int j = 0; j < 2; ++j) {
            const double r2 = u[i] * u[i] + v[j] * v[j];
            if (r2 == 0) continue;
            const double sign = i == j ? scale : -scale, logarithm = std::log(r2) / 2;
            const double steep = v[j] == 0 ? std::copysign(pi / 2, u[i]) : std::atan(u[i] / v[j]);  // atan(u/v)
            const double flat = u[i] == 0 ? 0 : std::copysign(pi / 2, u[i] * v[j]) - steep;         // atan(v/u)
            hx -= sign * (u[i] * logarithm + v[j] * steep);
            hy += sign * (v[j] * logarithm + u[i] * flat);
        }
}

/// cos(n t), sin(n t) for n = 1… by the addition theorem.
void fillWaves(double t, double* cosine, double* sine, Eigen::Index count, Eigen::Index stride) {
    const double c = std::cos(t), s = std::sin(t);
    double cn = c, sn = s;
    for (Eigen::Index n = 0; n < count; ++n) {
        cosine[n * stride] = cn;
        sine[n * stride] = sn;
        const double next = cn * c - sn * s;
        sn = sn * c + cn * s;
        cn = next;
    }
}

/// e^(-k length) of a group's modes.
Eigen::ArrayXd decayOf(double step, Eigen::Index count, double length) {
    Eigen::ArrayXd all(count);
    fillDecay(step * length, step * length, all);
    return all;
}

}  // namespace

WindowField::WindowField(std::vector<CurrentBox> boxes, const Window& window, int terms)
    : boxes_(std::move(boxes)), window_(window), terms_(terms) {
    std::vector<Eigen::Index> middle, others;
    for (Eigen::Index j = 0; j < static_cast<Eigen::Index>(boxes_.size()); ++j) {
        const bool even = std::abs(box(j).y0 + box(j).y1 - window.height) < 1e-12 * window.height;
        (even ? middle : others).push_back(j);
    }
    if (!middle.empty()) groups_.push_back(groupOf(2, std::move(middle)));
    if (!others.empty()) groups_.push_back(groupOf(1, std::move(others)));
}

WindowField::Group WindowField::groupOf(Eigen::Index stride, std::vector<Eigen::Index> boxes) const {
    Group group;
    group.stride = stride;
    group.boxes = std::move(boxes);
    std::sort(group.boxes.begin(), group.boxes.end(),
              [&](Eigen::Index i, Eigen::Index j) { return box(i).x0 != box(j).x0 ? box(i).x0 < box(j).x0 : i < j; });
    const Eigen::Index modes = terms_ / stride, count = static_cast<Eigen::Index>(group.boxes.size());
    const double unit = step(group), w = window_.width;
    const Eigen::ArrayXd k = unit * Eigen::ArrayXd::LinSpaced(modes, 1, static_cast<double>(modes));
    const Eigen::ArrayXd walls = 2 * k * (1 - decayOf(unit, modes, 2 * w));
    for (auto* table : {&group.axial, &group.inner, &group.outer}) table->resize(modes, count);
    for (Eigen::Index c = 0; c < count; ++c) {
        const auto& b = box(group.boxes[static_cast<std::size_t>(c)]);
        const auto* before = c > 0 ? &box(group.boxes[static_cast<std::size_t>(c - 1)]) : nullptr;
        if (before != nullptr && before->y0 == b.y0 && before->y1 == b.y1)
            group.axial.col(c) = group.axial.col(c - 1);
        else
            group.axial.col(c) = ((k * b.y1).sin() - (k * b.y0).sin()) / (k * b.height()) / walls;
        const Eigen::ArrayXd share =
            group.axial.col(c).array() * (1 - decayOf(unit, modes, b.width())) / (k * b.width());
        group.inner.col(c) = share * (1 + decayOf(unit, modes, b.x0 + b.x1));
        group.outer.col(c) = share * (1 + decayOf(unit, modes, 2 * w - b.x0 - b.x1));
    }
    return group;
}

double WindowField::step(const Group& group) const {
    return static_cast<double>(group.stride) * pi / window_.height;
}

WindowField::Heights WindowField::heights(const std::vector<double>& y) const {
    Heights made{y, true, {}};
    for (std::size_t p = 0; p < y.size(); ++p)
        if (std::abs(y[p] + y[y.size() - 1 - p] - window_.height) > 1e-12 * window_.height) made.mirrored = false;
    for (const Group& group : groups_) {
        const bool half = made.mirrored && group.stride == 2;
        const auto points = static_cast<Eigen::Index>(half ? (y.size() + 1) / 2 : y.size());
        Eigen::MatrixXd waves(2 * points, group.axial.rows());
        for (Eigen::Index p = 0; p < points; ++p)
            fillWaves(step(group) * y[static_cast<std::size_t>(p)], &waves(points + p, 0), &waves(p, 0), waves.cols(),
                      waves.rows());
        for (Eigen::Index n = 0; n < waves.cols(); ++n) waves.col(n) *= static_cast<double>(n + 1) * step(group);
        made.waves.push_back(std::move(waves));
    }
    return made;
}

/// `toWall`: from the line to the wall that reflects; `direction` +1 if the field's potential grows outward.
WindowField::Side WindowField::sideOf(const Group& group, const Eigen::MatrixXd& waves, double toWall,
                                      double direction) const {
    const Eigen::Index points = waves.rows() / 2;
    const double factor = -2 / window_.height;
    const Eigen::ArrayXd wall = decayOf(step(group), waves.cols(), 2 * toWall);
    Side side(waves.rows(), waves.cols());
    for (Eigen::Index n = 0; n < waves.cols(); ++n) {
        side.col(n).head(points) = factor * (1 + wall(n)) * waves.col(n).head(points);
        side.col(n).tail(points) = factor * direction * (1 - wall(n)) * waves.col(n).tail(points);
    }
    return side;
}

/// Boxes that lie inside of the line (or outside): their modes have fallen by their distance.
void WindowField::addSide(const Group& group, double x, bool inside, const Side& side, Eigen::MatrixXd& field) const {
    constexpr Eigen::Index modesAtOnce = 20;
    const double unit = step(group);
    const auto gapOf = [&](std::size_t c) { return inside ? x - box(group.boxes[c]).x1 : box(group.boxes[c]).x0 - x; };
    std::vector<std::size_t> near;  // nearest first
    for (std::size_t c = 0; c < group.boxes.size(); ++c)
        if (gapOf(c) >= 0) near.push_back(c);
    std::sort(near.begin(), near.end(), [&](std::size_t a, std::size_t b) { return gapOf(a) < gapOf(b); });
    if (near.empty()) return;
    const Eigen::MatrixXd& source = inside ? group.inner : group.outer;
    const auto count = static_cast<Eigen::Index>(near.size()), modes = source.rows();
    Eigen::MatrixXd amplitude = Eigen::MatrixXd::Zero(modes, count), sum = Eigen::MatrixXd::Zero(side.rows(), count);
    std::vector<Eigen::Index> reach;  // modes that count, falling
    for (Eigen::Index c = 0; c < count; ++c) {
        const double fall = unit * gapOf(near[static_cast<std::size_t>(c)]);
        const auto most =
            fall * static_cast<double>(modes) < forgotten ? modes : static_cast<Eigen::Index>(forgotten / fall);
        auto column = amplitude.col(c).head(most);
        fillDecay(fall, fall, column);
        column.array() *= source.col(static_cast<Eigen::Index>(near[static_cast<std::size_t>(c)])).head(most).array();
        reach.push_back(most);
    }
    for (Eigen::Index n = 0; n < modes; n += modesAtOnce) {
        const Eigen::Index rows = std::min(modesAtOnce, modes - n);
        const auto used =
            std::partition_point(reach.begin(), reach.end(), [&](Eigen::Index m) { return m > n; }) - reach.begin();
        if (used == 0) break;
        sum.leftCols(used).noalias() += side.middleCols(n, rows) * amplitude.block(n, 0, rows, used);
    }
    for (Eigen::Index c = 0; c < count; ++c) field.col(group.boxes[near[static_cast<std::size_t>(c)]]) += sum.col(c);
}

/// Boxes through which the line runs: their parts on either side of it.
void WindowField::addThrough(const Group& group, double x, const Side& left, const Side& right,
                             Eigen::MatrixXd& field) const {
    const auto modes = group.axial.rows();
    const double unit = step(group), w = window_.width;
    const Eigen::ArrayXd k = unit * Eigen::ArrayXd::LinSpaced(modes, 1, static_cast<double>(modes));
    for (std::size_t c = 0; c < group.boxes.size(); ++c) {
        const auto& b = box(group.boxes[c]);
        if (!(b.x0 < x && x < b.x1)) continue;
        const Eigen::ArrayXd whole = group.axial.col(static_cast<Eigen::Index>(c)).array() / (k * b.width());
        const Eigen::ArrayXd inside =
            whole * (1 - decayOf(unit, modes, x - b.x0)) * (1 + decayOf(unit, modes, b.x0 + x));
        const Eigen::ArrayXd outside =
            whole * (1 - decayOf(unit, modes, b.x1 - x)) * (1 + decayOf(unit, modes, 2 * w - b.x1 - x));
        field.col(group.boxes[c]) += left * inside.matrix() + right * outside.matrix();
    }
}

Eigen::MatrixXd WindowField::at(double x, const Heights& heights) const {
    const auto count = static_cast<Eigen::Index>(boxes_.size()), points = static_cast<Eigen::Index>(heights.y.size());
    Eigen::MatrixXd result = Eigen::MatrixXd::Zero(2 * points, count);
    for (Eigen::Index j = 0; j < count; ++j) {
        const double passed = std::clamp((x - box(j).x0) / box(j).width(), 0.0, 1.0);
        result.col(j).tail(points).setConstant((passed - x / window_.width) / window_.height);
    }
    for (std::size_t g = 0; g < groups_.size(); ++g) {
        const Group& group = groups_[g];
        const Eigen::MatrixXd& waves = heights.waves[g];
        // What comes from inside is reflected at the far wall, what comes from outside at the tongue.
        const Side left = sideOf(group, waves, window_.width - x, -1), right = sideOf(group, waves, x, 1);
        Eigen::MatrixXd field = Eigen::MatrixXd::Zero(waves.rows(), count);
        addSide(group, x, true, left, field);
        addSide(group, x, false, right, field);
        addThrough(group, x, left, right, field);
        const Eigen::Index done = waves.rows() / 2;
        result.topRows(done) += field.topRows(done);
        result.middleRows(points, done) += field.bottomRows(done);
        for (Eigen::Index p = done; p < points; ++p) {
            result.row(p) -= field.row(points - 1 - p);
            result.row(points + p) += field.row(done + points - 1 - p);
        }
    }
    return result;
}

Eigen::MatrixXd openField(const std::vector<CurrentBox>& boxes, double x, const std::vector<double>& y) {
    const auto count = static_cast<Eigen::Index>(boxes.size()), points = static_cast<Eigen::Index>(y.size());
    Eigen::MatrixXd result = Eigen::MatrixXd::Zero(2 * points, count);
    for (Eigen::Index j = 0; j < count; ++j) {
        const auto& b = boxes[static_cast<std::size_t>(j)].box;
        for (Eigen::Index p = 0; p < points; ++p) {
            const double height = y[static_cast<std::size_t>(p)];
            addRectangle(b, x, height, result(p, j), result(points + p, j));
            addRectangle({-b.x1, -b.x0, b.y0, b.y1}, x, height, result(p, j), result(points + p, j));
        }
    }
    return result;
}

}  // namespace field
