// SPDX-License-Identifier: GPL-3.0-or-later
// Magnetic field of boxes with current at points of the window, and beyond it.
#pragma once

#include <Eigen/Core>
#include <vector>

#include "field/leakage.h"

namespace field {

/// Field in the closed window from the series of `axialModes` and `uniformMode`, its tables made once for all points.
class WindowField {
public:
    /// `terms` axial modes; finer structure than h / terms is lost.
    WindowField(std::vector<CurrentBox> boxes, const Window& window, int terms);

    /// Points of a line along the axis, with what all lines through these heights have in common.
    struct Heights {
        std::vector<double> y;
        /// True where they lie evenly about the window's middle: then modes that do too are summed on one half.
        bool mirrored = false;
        std::vector<Eigen::MatrixXd> waves;  ///< a group each: a column a mode, k sin(k y) above, k cos(k y) below
    };
    [[nodiscard]] Heights heights(const std::vector<double>& y) const;

    /// Field per ampere in one turn of each box at (x, y_0…): rows Hx at all y, then Hy; a column a box; A/m.
    /// The net current returns evenly over the window.
    [[nodiscard]] Eigen::MatrixXd at(double x, const Heights& heights) const;
    [[nodiscard]] Eigen::MatrixXd at(double x, const std::vector<double>& y) const { return at(x, heights(y)); }

private:
    /// Boxes that have the same modes: every mode, or every second where they lie in the middle of the window.
    struct Group {
        Eigen::Index stride = 1;          ///< modes n = stride, 2 stride, …
        std::vector<Eigen::Index> boxes;  ///< outward
        Eigen::MatrixXd axial;            ///< modes x boxes: mean of cos(k y), over 2 k (1 - e^(-2 k w))
        /// The same times the mean decay and the reflection at the tongue, or at the far wall.
        Eigen::MatrixXd inner, outer;
    };
    /// What all boxes on one side of a line have in common: the field at its points of a mode of amplitude 1 there.
    using Side = Eigen::MatrixXd;
    [[nodiscard]] Group groupOf(Eigen::Index stride, std::vector<Eigen::Index> boxes) const;
    [[nodiscard]] double step(const Group& group) const;  ///< k of the group's first mode
    [[nodiscard]] Side sideOf(const Group& group, const Eigen::MatrixXd& waves, double toWall, double direction) const;
    void addSide(const Group& group, double x, bool inside, const Side& side, Eigen::MatrixXd& field) const;
    void addThrough(const Group& group, double x, const Side& left, const Side& right, Eigen::MatrixXd& field) const;
    [[nodiscard]] const coil::Box& box(Eigen::Index k) const { return boxes_[static_cast<std::size_t>(k)].box; }

    std::vector<CurrentBox> boxes_;
    Window window_;
    Eigen::Index terms_;
    std::vector<Group> groups_;
};

/// The same for boxes before an iron plane at x = 0 with free space beyond: closed form of the field of a rectangle,
///
///     Hx = -1/(2 pi a b) [G(u, v)],  Hy = 1/(2 pi a b) [G(v, u)],  G(u, v) = u ln r + v atan(u/v),
///
/// [ ] over the four corners (derived here: d2G/du dv = v/r^2), and its image.
[[nodiscard]] Eigen::MatrixXd openField(const std::vector<CurrentBox>& boxes, double x, const std::vector<double>& y);

}  // namespace field
