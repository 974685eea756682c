// SPDX-License-Identifier: GPL-3.0-or-later
//
// Boxes are sorted outward. For two that do not overlap the mean of g_n is a product of what each gives by itself and
// e^(-k d) of their distance d: seen from a line between them, a product of two decaying powers. So all pairs across a
// line are one matrix product over the modes, and the boxes on either side are parted again. Parts whose farthest pairs
// no longer matter are parted too. Modes are taken some at a time.
#include "field/axial_modes.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <numeric>

#include "field/decay.h"

namespace field {
namespace {

using Eigen::Index;
using std::numbers::pi;
using PerMode = Eigen::ArrayXd;
constexpr double lost = 39;  // e^-39 is 1e-17

/// Boxes with the same radial range: they share every x-integral.
struct Slab {
    double x0 = 0, x1 = 0;
    Index from = 0, to = 0;  ///< of the sorted boxes
    [[nodiscard]] double thickness() const { return x1 - x0; }
};

/// Boxes sorted outward, slab by slab.
struct Sorted {
    std::vector<coil::Box> boxes;
    std::vector<Index> place;  ///< among the boxes as they came
    std::vector<Slab> slabs;

    Sorted(const std::vector<CurrentBox>& given, double width) : place(given.size()) {
        std::iota(place.begin(), place.end(), Index{0});
        const auto box = [&](Index i) -> const coil::Box& { return given[static_cast<std::size_t>(i)].box; };
        std::sort(place.begin(), place.end(),
                  [&](Index i, Index j) { return std::pair(box(i).x0, box(i).x1) < std::pair(box(j).x0, box(j).x1); });
        const double same = 1e-9 * width;
        for (const Index i : place) {
            const auto at = static_cast<Index>(boxes.size());
            if (slabs.empty() || std::abs(slabs.back().x0 - box(i).x0) > same ||
                std::abs(slabs.back().x1 - box(i).x1) > same)
                slabs.push_back({box(i).x0, box(i).x1, at, at});
            ++slabs.back().to;
            boxes.push_back(box(i));
        }
    }
};

bool isFull(const coil::Box& b, double height) {
    return b.y0 <= 1e-12 * height && b.y1 >= (1 - 1e-12) * height;
}

/// A run of modes, with powers of e^-1 over it.
struct Run {
    double unit;  ///< pi / h
    Index first, count;
    [[nodiscard]] double low() const { return unit * static_cast<double>(first); }
    [[nodiscard]] PerMode k() const {
        return unit * PerMode::LinSpaced(count, static_cast<double>(first), static_cast<double>(first + count - 1));
    }
    /// e^(-k length) of each mode.
    template <class Column>
    void powers(double length, Column&& to) const {
        fillDecay(low() * length, unit * length, to);
    }
    [[nodiscard]] PerMode powers(double length) const {
        PerMode all(count);
        powers(length, all);
        return all;
    }
};

/// Adds run after run of modes up.
class ModeSum {
public:
    ModeSum(const Sorted& sorted, const Window& window)
        : sorted_(sorted), slabs_(sorted.slabs), window_(window), same_(1e-9 * window.width) {
        const auto count = static_cast<Index>(sorted.boxes.size());
        sum_ = Eigen::MatrixXd::Zero(count, count);
        factor_.resize(modesAtOnce, count);
    }

    void add(const Run& run) {
        run_ = &run;
        const auto count = static_cast<Index>(sorted_.boxes.size());
        inward_.resize(run.count, count);
        outward_.resize(run.count, count);
        k_ = run.k();
        wall_ = run.powers(2 * window_.width);
        scale_ = 1 / (2 * k_ * (1 - wall_));
        takeFactors();
        for (std::size_t c = 0; c < slabs_.size(); ++c) takeSlab(c);
        across(0, slabs_.size());
    }
    /// Each pair of boxes stands once: at (outer, inner) if their slabs differ, both ways round in one slab.
    [[nodiscard]] const Eigen::MatrixXd& sum() const { return sum_; }
    static constexpr Index modesAtOnce = 64;

private:
    /// F of each box; equal neighbours in the sorted order share it.
    void takeFactors() {
        const double h = window_.height, same = 1e-9 * h;
        const auto rows = run_->count;
        std::vector<std::size_t> known;
        for (std::size_t i = 0; i < sorted_.boxes.size(); ++i) {
            const auto& b = sorted_.boxes[i];
            const auto like = std::find_if(known.begin(), known.end(), [&](std::size_t j) {
                return std::abs(sorted_.boxes[j].y0 - b.y0) < same && std::abs(sorted_.boxes[j].y1 - b.y1) < same;
            });
            auto column = factor_.col(static_cast<Index>(i)).head(rows);
            if (like != known.end()) {
                column = factor_.col(static_cast<Index>(*like)).head(rows);
                continue;
            }
            known.push_back(i);
            if (isFull(b, h))
                column.setZero();
            else
                column = ((k_ * b.y1).sin() - (k_ * b.y0).sin()) / (k_ * (b.y1 - b.y0));
        }
    }

    /// What a slab's boxes give to those further out and take from those further in, and what it gives itself and
    /// those that overlap it.
    void takeSlab(std::size_t c) {
        const Slab& slab = slabs_[c];
        const PerMode share = (1 - run_->powers(slab.thickness())) / (k_ * slab.thickness());
        const PerMode gives = scale_ * share * (1 + run_->powers(slab.x0 + slab.x1));
        const PerMode takes = share * (1 + run_->powers(2 * window_.width - slab.x0 - slab.x1));
        for (Index i = slab.from; i < slab.to; ++i) {
            const auto own = factor_.col(i).head(run_->count).array();
            outward_.col(i).array() = own * gives;
            inward_.col(i).array() = own * takes;
        }
        for (std::size_t d = c; d < slabs_.size() && !isBeyond(slab, slabs_[d]); ++d) {
            const PerMode mean = overlap(slab, slabs_[d]);
            for (Index i = slab.from; i < slab.to; ++i)
                for (Index j = slabs_[d].from; j < slabs_[d].to; ++j)
                    sum_(j, i) +=
                        (mean * factor_.col(i).head(run_->count).array() * factor_.col(j).head(run_->count).array())
                            .sum();
        }
    }
    [[nodiscard]] bool isBeyond(const Slab& inner, const Slab& outer) const {
        return &inner != &outer && outer.x0 >= inner.x1 - same_;
    }

    /// <g> of two slabs that overlap (or of one with itself).
    [[nodiscard]] PerMode overlap(const Slab& a, const Slab& b) const {
        const double w = window_.width;
        const bool wallsCount = run_->low() * w < 1.3 * lost;
        const std::array<double, 4> u{a.x1 - b.x0, a.x0 - b.x1, a.x1 - b.x1, a.x0 - b.x0};
        PerMode around = PerMode::Zero(run_->count);
        for (std::size_t s = 0; s < u.size(); ++s) {
            const double sign = s < 2 ? 1 : -1, distance = std::abs(u[s]);
            const PerMode t = k_ * distance;
            around += sign * (run_->powers(distance) - 1 + t);
            if (wallsCount) around += sign * (run_->powers(2 * w - distance) - wall_ * (1 + t));
        }
        const PerMode ofA = k_ * a.thickness(), ofB = k_ * b.thickness();
        const PerMode share = (1 - run_->powers(a.thickness())) * (1 - run_->powers(b.thickness()));
        const PerMode walls = run_->powers(a.x0 + b.x0) + run_->powers(2 * w - a.x1 - b.x1);
        return scale_ * (around + share * walls) / (ofA * ofB);
    }

    /// All pairs among slabs from .. to - 1.
    void across(std::size_t from, std::size_t to) {
        constexpr std::size_t few = 8;
        constexpr double safe = 200;  // exponents
        if (to - from < 2) return;
        const double extent = slabs_[to - 1].x0 - slabs_[from].x0;
        if (to - from <= few && (run_->low() + run_->unit * modesAtOnce) * extent < safe) return among(from, to);
        const std::size_t middle = (from + to) / 2;
        between(from, middle, middle, to);
        across(from, middle);
        across(middle, to);
    }

    /// Slabs a0 .. a1 - 1 with those b0 .. b1 - 1 further out.
    void between(std::size_t a0, std::size_t a1, std::size_t b0, std::size_t b1) {
        constexpr std::size_t few = 8;
        double line = 0;
        for (std::size_t c = a0; c < a1; ++c) line = std::max(line, slabs_[c].x1);
        const double gap = slabs_[b0].x0 - line;
        if (gap * run_->low() > lost) return;
        const bool apart = gap >= -same_, single = a1 - a0 == 1 && b1 - b0 == 1;
        if (!apart && single) return;  // they overlap
        const double farthest = slabs_[b1 - 1].x0 - slabs_[a0].x1;
        const bool large = a1 - a0 > few && b1 - b0 > few;
        if (apart && !(large && farthest * run_->low() > lost)) return product(a0, a1, b0, b1, line);
        if (a1 - a0 >= b1 - b0) {
            const std::size_t middle = (a0 + a1) / 2;
            between(a0, middle, b0, b1);
            between(middle, a1, b0, b1);
        } else {
            const std::size_t middle = (b0 + b1) / 2;
            between(a0, a1, b0, middle);
            between(a0, a1, middle, b1);
        }
    }

    void product(std::size_t a0, std::size_t a1, std::size_t b0, std::size_t b1, double line) {
        const Index i0 = slabs_[a0].from, j0 = slabs_[b0].from;
        const Index inner = slabs_[a1 - 1].to - i0, outer = slabs_[b1 - 1].to - j0;
        left_.resize(run_->count, inner);
        right_.resize(run_->count, outer);
        fall(a0, a1, outward_, left_, [&](const Slab& s) { return line - s.x1; });
        fall(b0, b1, inward_, right_, [&](const Slab& s) { return std::max(0.0, s.x0 - line); });
        sum_.block(j0, i0, outer, inner).noalias() += right_.transpose() * left_;
    }

    /// A few slabs all with each other, seen from where the first begins; what of that belongs to pairs that overlap,
    /// or to pairs the wrong way round, is left.
    void among(std::size_t from, std::size_t to) {
        const Index i0 = slabs_[from].from, count = slabs_[to - 1].to - i0;
        const double line = slabs_[from].x0;
        left_.resize(run_->count, count);
        right_.resize(run_->count, count);
        fall(from, to, outward_, left_, [&](const Slab& s) { return line - s.x1; });
        fall(from, to, inward_, right_, [&](const Slab& s) { return s.x0 - line; });
        const Eigen::MatrixXd all = right_.transpose() * left_;
        for (std::size_t c = from; c < to; ++c)
            for (std::size_t d = c + 1; d < to; ++d) {
                if (!isBeyond(slabs_[c], slabs_[d])) continue;
                const Slab &a = slabs_[c], &b = slabs_[d];
                sum_.block(b.from, a.from, b.to - b.from, a.to - a.from) +=
                    all.block(b.from - i0, a.from - i0, b.to - b.from, a.to - a.from);
            }
    }

    /// Columns of the slabs' boxes times e^(-k distance).
    template <class Distance>
    void fall(std::size_t from, std::size_t to, const Eigen::MatrixXd& columns, Eigen::MatrixXd& fallen,
              const Distance& distance) {
        power_.resize(run_->count);
        const Index first = slabs_[from].from;
        for (std::size_t c = from; c < to; ++c) {
            run_->powers(distance(slabs_[c]), power_);
            for (Index i = slabs_[c].from; i < slabs_[c].to; ++i)
                fallen.col(i - first).array() = columns.col(i).array() * power_;
        }
    }

    const Sorted& sorted_;
    const std::vector<Slab>& slabs_;
    Window window_;
    double same_;
    const Run* run_ = nullptr;
    PerMode k_, wall_, scale_, power_;
    Eigen::MatrixXd factor_, outward_, inward_;  // a row a mode, a column a box
    Eigen::MatrixXd left_, right_, sum_;
};

int termCount(const std::vector<Slab>& slabs, double height) {
    double thinnest = height;
    for (const auto& s : slabs) thinnest = std::min(thinnest, s.thickness());
    return static_cast<int>(std::clamp(4 * height / (pi * thinnest), 160.0, 2000.0));
}

/// Signed count of the inner edges (not at a wall) that two boxes share.
double sharedEdges(const coil::Box& a, const coil::Box& b, double height) {
    const double same = 1e-9 * height;
    const auto edge = [&](double y, double other) {
        return std::abs(y - other) < same && y > same && y < height - same ? 1.0 : 0.0;
    };
    return edge(a.y0, b.y0) + edge(a.y1, b.y1) - edge(a.y0, b.y1) - edge(a.y1, b.y0);
}

/// The modes after `terms` between boxes of one slab, where F_i F_j sways about 1/2 (k^2 b_i b_j) an edge in common
/// and <g> is (1 - 1/(k a)) / (k^2 a).
void addTail(const Sorted& sorted, double height, int terms, Eigen::MatrixXd& sum) {
    const double unit = pi / height, from = terms + 0.5;
    for (const auto& slab : sorted.slabs) {
        const double a = slab.thickness(), depth = unit * from * a;
        const double rest = std::max(0.0, 1.0 / 3 - 1 / (4 * depth)) / (a * std::pow(unit, 4) * std::pow(from, 3));
        for (Index i = slab.from; i < slab.to; ++i)
            for (Index j = slab.from; j < slab.to; ++j) {
                const auto &one = sorted.boxes[static_cast<std::size_t>(i)],
                           &other = sorted.boxes[static_cast<std::size_t>(j)];
                sum(j, i) += rest / 2 * sharedEdges(one, other, height) / (one.height() * other.height());
            }
    }
}

}  // namespace

Eigen::MatrixXd axialModes(const std::vector<CurrentBox>& boxes, const Window& window) {
    const auto count = static_cast<Index>(boxes.size());
    if (std::all_of(boxes.begin(), boxes.end(), [&](const auto& b) { return isFull(b.box, window.height); }))
        return Eigen::MatrixXd::Zero(count, count);
    const Sorted sorted(boxes, window.width);
    const int terms = termCount(sorted.slabs, window.height);
    ModeSum modes(sorted, window);
    for (Index n = 1; n <= terms; n += ModeSum::modesAtOnce)
        modes.add({pi / window.height, n, std::min(ModeSum::modesAtOnce, terms + 1 - n)});
    Eigen::MatrixXd sum = modes.sum();
    addTail(sorted, window.height, terms, sum);
    Eigen::MatrixXd result(count, count);
    for (Index i = 0; i < count; ++i)
        for (Index j = i; j < count; ++j) {
            const Index a = sorted.place[static_cast<std::size_t>(i)], b = sorted.place[static_cast<std::size_t>(j)];
            result(a, b) = result(b, a) = 2 / window.height * sum(j, i);
        }
    return result;
}

}  // namespace field
