// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/window_series.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

namespace field {
namespace {

using std::numbers::pi;
constexpr double negligible = 1e-17;  // of a decaying exponential, relative to 1

/// Boxes with the same radial range: they share every x-integral.
struct Column {
    double x0 = 0, x1 = 0;
    std::vector<Eigen::Index> members;
    [[nodiscard]] double thickness() const { return x1 - x0; }
};

std::vector<Column> columnsOf(const std::vector<CurrentBox>& boxes, double width) {
    std::vector<Eigen::Index> order(boxes.size());
    std::iota(order.begin(), order.end(), Eigen::Index{0});
    const auto box = [&](Eigen::Index i) -> const coil::Box& { return boxes[static_cast<std::size_t>(i)].box; };
    std::sort(order.begin(), order.end(), [&](Eigen::Index i, Eigen::Index j) {
        return std::pair(box(i).x0, box(i).x1) < std::pair(box(j).x0, box(j).x1);
    });
    const double same = 1e-9 * width;
    std::vector<Column> columns;
    for (const auto i : order) {
        if (columns.empty() || std::abs(columns.back().x0 - box(i).x0) > same ||
            std::abs(columns.back().x1 - box(i).x1) > same)
            columns.push_back({box(i).x0, box(i).x1, {}});
        columns.back().members.push_back(i);
    }
    return columns;
}

/// First column that begins where `column` ends or further out.
std::size_t firstBeyond(const std::vector<Column>& columns, const Column& column, double width) {
    const double end = column.x1 - 1e-9 * width;
    return static_cast<std::size_t>(
        std::lower_bound(columns.begin(), columns.end(), end, [](const Column& c, double x) { return c.x0 < x; }) -
        columns.begin());
}

/// Boxes with the same axial range share the factor F(n).
class AxialFactors {
public:
    AxialFactors(const std::vector<CurrentBox>& boxes, double height) : height_(height) {
        const double same = 1e-9 * height;
        for (const auto& b : boxes) {
            const auto at = std::find_if(ranges_.begin(), ranges_.end(), [&](const auto& r) {
                return std::abs(r.first - b.box.y0) < same && std::abs(r.second - b.box.y1) < same;
            });
            rangeOf_.push_back(static_cast<Eigen::Index>(at - ranges_.begin()));
            if (at == ranges_.end()) ranges_.emplace_back(b.box.y0, b.box.y1);
        }
        values_.resize(static_cast<Eigen::Index>(ranges_.size()));
    }
    /// True if every box fills the window's height: no axial mode at all.
    [[nodiscard]] bool allFull() const {
        return std::all_of(ranges_.begin(), ranges_.end(), [&](const auto& r) { return full(r); });
    }
    void setMode(int n) {
        const double k = n * pi / height_;
        for (std::size_t r = 0; r < ranges_.size(); ++r) {
            const auto [y0, y1] = ranges_[r];
            values_(static_cast<Eigen::Index>(r)) =
                full(ranges_[r]) ? 0 : (std::sin(k * y1) - std::sin(k * y0)) / (k * (y1 - y0));
        }
    }
    double operator[](Eigen::Index box) const { return values_(rangeOf_[static_cast<std::size_t>(box)]); }

private:
    [[nodiscard]] bool full(const std::pair<double, double>& r) const {
        return r.first <= 1e-12 * height_ && r.second >= (1 - 1e-12) * height_;
    }
    double height_;
    std::vector<std::pair<double, double>> ranges_;
    std::vector<Eigen::Index> rangeOf_;
    Eigen::VectorXd values_;
};

/// e^(-n q) for n = 1, 2, … by repeated multiplication (no exp a mode; relative error n eps).
class Decay {
public:
    void add(double exponent) { base_.push_back(std::exp(-exponent)), value_.push_back(1); }
    void step() {
        for (std::size_t i = 0; i < base_.size(); ++i) {
            value_[i] *= base_[i];
            if (value_[i] < 1e-200) value_[i] = 0;  // denormal numbers are slow
        }
    }
    double operator[](std::size_t i) const { return value_[i]; }

private:
    std::vector<double> base_, value_;
};

/// Mean of g_n over pairs of columns, mode after mode.
class RadialKernel {
public:
    RadialKernel(const std::vector<Column>& columns, const Window& window)
        : columns_(columns), unit_(pi / window.height), width_(window.width) {
        window_.add(2 * unit_ * width_);
        for (std::size_t c = 0; c < columns.size(); ++c) addColumn(c);
    }
    struct Overlap {
        std::size_t a, b;
        double u[4];  // distances of the ends, in the order of the signs + + - -
    };
    [[nodiscard]] const std::vector<Overlap>& overlaps() const { return overlaps_; }

    void step() {
        ++n_;
        for (Decay* d : {&window_, &thickness_, &inner_, &outer_, &low_, &high_, &lead_, &stride_, &near_, &far_})
            d->step();
        const double k = n_ * unit_;
        scale_ = 1 / (2 * k * (1 - window_[0]));
        share_.resize(columns_.size());
        for (std::size_t c = 0; c < columns_.size(); ++c)
            share_[c] = (1 - thickness_[c]) / (k * columns_[c].thickness());
    }
    /// Calls `use(d, <g>)` for each column d that lies wholly outside column c, as far as it matters.
    template <class Use>
    void eachBeyond(std::size_t c, Use use) const {
        if (beyond_[c] == columns_.size()) return;
        const double own = scale_ * share_[c] * (1 + inner_[c]);
        double fall = lead_[c];
        for (std::size_t d = beyond_[c]; d < columns_.size() && fall > negligible; fall *= stride_[d++])
            use(d, own * fall * share_[d] * (1 + outer_[d]));
    }
    /// <g> of two columns that overlap (or of one with itself).
    [[nodiscard]] double ofOverlap(std::size_t index) const {
        const Overlap& o = overlaps_[index];
        const double k = n_ * unit_;
        double direct = 0, round = 0;
        for (std::size_t s = 0; s < 4; ++s) {
            const double sign = s < 2 ? 1 : -1, t = k * std::abs(o.u[s]);
            direct += sign * (near_[4 * index + s] - 1 + t);
            round += sign * (far_[4 * index + s] - window_[0] * (1 + t));
        }
        const double area = k * columns_[o.a].thickness() * k * columns_[o.b].thickness();
        const double walls = share_[o.a] * share_[o.b] * (low_[o.a] * low_[o.b] + high_[o.a] * high_[o.b]);
        return scale_ * ((direct + round) / area + walls);
    }

private:
    void addColumn(std::size_t c) {
        const Column& own = columns_[c];
        thickness_.add(unit_ * own.thickness());
        inner_.add(unit_ * (own.x0 + own.x1));
        outer_.add(unit_ * (2 * width_ - own.x0 - own.x1));
        low_.add(unit_ * own.x0);
        high_.add(unit_ * (width_ - own.x1));
        beyond_.push_back(firstBeyond(columns_, own, width_));
        const std::size_t first = beyond_[c];
        lead_.add(first < columns_.size() ? unit_ * std::max(0.0, columns_[first].x0 - own.x1) : 0);
        stride_.add(c + 1 < columns_.size() ? unit_ * (columns_[c + 1].x0 - own.x0) : 0);
        for (std::size_t d = c; d < first || d == c; ++d) {
            const Column& other = columns_[d];
            overlaps_.push_back({c, d, {own.x1 - other.x0, own.x0 - other.x1, own.x1 - other.x1, own.x0 - other.x0}});
            for (const double u : overlaps_.back().u) {
                near_.add(unit_ * std::abs(u));
                far_.add(unit_ * (2 * width_ - std::abs(u)));
            }
        }
    }
    const std::vector<Column>& columns_;
    double unit_, width_, scale_ = 0;
    int n_ = 0;
    Decay window_, thickness_, inner_, outer_, low_, high_, lead_, stride_, near_, far_;
    std::vector<std::size_t> beyond_;
    std::vector<Overlap> overlaps_;
    std::vector<double> share_;
};

int termCount(const std::vector<Column>& columns, double height) {
    double thinnest = height;
    for (const auto& c : columns) thinnest = std::min(thinnest, c.thickness());
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

/// The modes after `terms` between boxes of one column, where F_i F_j sways about 1/2 (k^2 b_i b_j) an edge in common
/// and <g> is (1 - 1/(k a)) / (k^2 a).
void addTail(const std::vector<CurrentBox>& boxes, const std::vector<Column>& columns, double height, int terms,
             Eigen::MatrixXd& sum) {
    const double unit = pi / height, from = terms + 0.5;
    for (const auto& column : columns) {
        const double a = column.thickness(), depth = unit * from * a;
        const double rest = std::max(0.0, 1.0 / 3 - 1 / (4 * depth)) / (a * std::pow(unit, 4) * std::pow(from, 3));
        for (const auto i : column.members)
            for (const auto j : column.members) {
                const auto &one = boxes[static_cast<std::size_t>(i)].box,
                           &other = boxes[static_cast<std::size_t>(j)].box;
                sum(j, i) += rest / 2 * sharedEdges(one, other, height) / (one.height() * other.height());
            }
    }
}

/// Two-point Gauss rule on each stretch between the sorted points: exact for cubics.
template <class Function>
double integral(std::vector<double> points, Function f) {
    std::sort(points.begin(), points.end());
    const double offset = 0.5 / std::sqrt(3.0);
    double sum = 0;
    for (std::size_t i = 1; i < points.size(); ++i) {
        const double length = points[i] - points[i - 1], middle = (points[i] + points[i - 1]) / 2;
        if (length > 0) sum += length / 2 * (f(middle - offset * length) + f(middle + offset * length));
    }
    return sum;
}

double share(const coil::Box& box, double x) {
    return std::clamp((x - box.x0) / box.width(), 0.0, 1.0);
}

}  // namespace

Eigen::MatrixXd uniformMode(const std::vector<CurrentBox>& boxes, const Window& window, const Perimeter& perimeter) {
    const auto count = static_cast<Eigen::Index>(boxes.size());
    const double w = window.width;
    const auto box = [&](Eigen::Index i) -> const coil::Box& { return boxes[static_cast<std::size_t>(i)].box; };
    const auto points = [&](std::initializer_list<double> inner) {
        std::vector<double> all{0, w};
        if (perimeter.mirrorAt > 0) all.push_back(perimeter.mirrorAt);
        all.insert(all.end(), inner);
        return all;
    };
    const double whole = integral(points({}), [&](double x) { return perimeter.at(x) * x * x / (w * w); });
    Eigen::VectorXd slope(count), alone(count);  // with x/w, and what a box outside all others gives
    for (Eigen::Index i = 0; i < count; ++i) {
        const auto ends = points({box(i).x0, box(i).x1});
        slope(i) = integral(ends, [&](double x) { return perimeter.at(x) * x / w * share(box(i), x); });
        alone(i) = integral(ends, [&](double x) { return perimeter.at(x) * share(box(i), x); });
    }
    Eigen::MatrixXd result(count, count);
    for (Eigen::Index i = 0; i < count; ++i)
        for (Eigen::Index j = 0; j <= i; ++j) {
            const auto &a = box(i), &b = box(j);
            const double both = a.x0 >= b.x1   ? alone(i)
                                : b.x0 >= a.x1 ? alone(j)
                                               : integral(points({a.x0, a.x1, b.x0, b.x1}), [&](double x) {
                                                     return perimeter.at(x) * share(a, x) * share(b, x);
                                                 });
            result(i, j) = result(j, i) = (whole - slope(i) - slope(j) + both) / window.height;
        }
    return result;
}

Eigen::MatrixXd axialModes(const std::vector<CurrentBox>& boxes, const Window& window) {
    const auto count = static_cast<Eigen::Index>(boxes.size());
    Eigen::MatrixXd sum = Eigen::MatrixXd::Zero(count, count);
    AxialFactors factor(boxes, window.height);
    if (factor.allFull()) return sum;
    const auto columns = columnsOf(boxes, window.width);
    RadialKernel kernel(columns, window);
    const int terms = termCount(columns, window.height);
    const auto addBlock = [&](const Column& a, const Column& b, double g) {
        for (const auto i : a.members)
            for (const auto j : b.members) sum(j, i) += g * factor[i] * factor[j];
    };
    for (int n = 1; n <= terms; ++n) {
        factor.setMode(n);
        kernel.step();
        for (std::size_t k = 0; k < kernel.overlaps().size(); ++k)
            addBlock(columns[kernel.overlaps()[k].a], columns[kernel.overlaps()[k].b], kernel.ofOverlap(k));
        for (std::size_t c = 0; c < columns.size(); ++c)
            kernel.eachBeyond(c, [&](std::size_t d, double g) { addBlock(columns[c], columns[d], g); });
    }
    addTail(boxes, columns, window.height, terms, sum);
    // Each pair of columns was met once: the entry on one side of the diagonal holds it, the other is zero.
    for (const auto& column : columns)
        for (const auto i : column.members)
            for (const auto j : column.members)
                if (i > j) sum(i, j) = 0;
    Eigen::MatrixXd result = sum + sum.transpose();
    result.diagonal() = sum.diagonal();
    return result * (2 / window.height);
}

}  // namespace field
