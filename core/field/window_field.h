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

    /// Field per ampere in one turn of each box at (x, y_0…): rows Hx at all y, then Hy; a column a box; A/m.
    /// The net current returns evenly over the window.
    [[nodiscard]] Eigen::MatrixXd at(double x, const std::vector<double>& y) const;

private:
    /// A line x = const with the reflections of both walls, by mode.
    struct Line {
        double x;
        Eigen::VectorXd tongue, farWall;
    };
    Eigen::Index amplitudes(Eigen::Index box, const Line& line, Eigen::VectorXd& value, Eigen::VectorXd& slope) const;

    std::vector<CurrentBox> boxes_;
    Window window_;
    Eigen::Index terms_;
    Eigen::MatrixXd axial_;          ///< terms x boxes: mean of cos(k y), over 2 k (1 - e^(-2 k w))
    Eigen::MatrixXd inner_, outer_;  ///< terms x boxes: mean decay times reflection at the tongue, at the far wall
};

/// The same for boxes before an iron plane at x = 0 with free space beyond: closed form of the field of a rectangle,
///
///     Hx = -1/(2 pi a b) [G(u, v)],  Hy = 1/(2 pi a b) [G(v, u)],  G(u, v) = u ln r + v atan(u/v),
///
/// [ ] over the four corners (derived here: d2G/du dv = v/r^2), and its image.
[[nodiscard]] Eigen::MatrixXd openField(const std::vector<CurrentBox>& boxes, double x, const std::vector<double>& y);

}  // namespace field
