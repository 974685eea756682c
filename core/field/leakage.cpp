// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/leakage.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "field/axial_modes.h"
#include "field/field_units.h"
#include "field/image_potential.h"
#include "field/leg_against_leg.h"
#include "field/place_in_window.h"
#include "field/window_series.h"

namespace field {
namespace {

using std::numbers::pi;

/// Part of the turn that lies within the window: both windows of a shell, one of a two-leg core.
double lengthWithin(const coil::CoilBuild& build) {
    return (build.legs == 2 ? 1 : 2) * build.stack;
}

/// M'_ii/mu0 that each layer had over the whole height wound in its chamber: a layer cut along the axis keeps it.
Eigen::VectorXd wholeLayers(const coil::CoilBuild& build, double unit) {
    Eigen::VectorXd result(static_cast<Eigen::Index>(build.layers.size()));
    for (std::size_t i = 0; i < build.layers.size(); ++i) {
        coil::Box whole = build.layers[i].box;
        for (const auto& other : build.layers)
            if (other.leg == build.layers[i].leg && other.chamber == build.layers[i].chamber) {
                whole.y0 = std::min(whole.y0, other.box.y0);
                whole.y1 = std::max(whole.y1, other.box.y1);
            }
        result(static_cast<Eigen::Index>(i)) = imageMatrix({whole}, unit)(0, 0);
    }
    return result;
}

/// M/mu0 of all turns beyond the window. With l the length of turn there and D of `wholeLayers`,
///
///     M_ij = (l_i + l_j)/2 M'_ij - 1/4 (l_i D_j + l_j D_i),
///
/// which for D_i = M'_ii is -1/2 (l_i + l_j)/2 lambda_ij up to the gauge; with that M'_ii itself the leakage would
/// change when a layer is cut in pieces. Each leg stands before its own iron plane, so M' between legs is zero; what
/// `legAgainstLeg` says is added. In the gauge in which ampere-turns spread by the boxes' areas carry no energy.
Eigen::MatrixXd beyondTurns(const coil::CoilBuild& build, double within) {
    const double unit = build.windowHeight;
    std::vector<coil::Box> boxes;
    for (const auto& layer : build.layers) boxes.push_back(layer.box);
    Eigen::MatrixXd m = imageMatrix(boxes, unit);
    Eigen::VectorXd whole = wholeLayers(build, unit);
    const LegAgainstLeg legs = bothLegsUsed(build) ? legAgainstLeg(build, within, unit) : LegAgainstLeg{};
    const auto count = m.rows();
    Eigen::VectorXd length(count), area(count);
    for (Eigen::Index i = 0; i < count; ++i) {
        const auto& layer = build.layers[static_cast<std::size_t>(i)];
        length(i) = std::max(0.0, layer.turnLength - within);
        area(i) = layer.box.width() * layer.box.height();
        whole(i) += legs.perMetre[layer.leg == 2 ? 1 : 0];
    }
    area /= area.sum();
    for (Eigen::Index i = 0; i < count; ++i)
        for (Eigen::Index j = 0; j < count; ++j) {
            const int leg = build.layers[static_cast<std::size_t>(i)].leg;
            const bool same = leg == build.layers[static_cast<std::size_t>(j)].leg;
            const double plane = same ? m(i, j) + legs.perMetre[leg == 2 ? 1 : 0] : 0;
            m(i, j) = (length(i) + length(j)) / 2 * plane - (length(i) * whole(j) + length(j) * whole(i)) / 4 +
                      (same ? legs.inSpace / 2 : 0);
        }
    const Eigen::VectorXd toSpread = m * area;
    const double spread = area.dot(toSpread);
    for (Eigen::Index i = 0; i < count; ++i)
        for (Eigen::Index j = 0; j < count; ++j) m(i, j) -= toSpread(i) + toSpread(j) - spread;
    return m;
}

Eigen::MatrixXd beyond(const coil::CoilBuild& build, const std::vector<CurrentBox>& boxes, const Window& window) {
    const double within = lengthWithin(build);
    return windowMatrix(boxes, window, Surroundings::Closed) * within + vacuumPermeability * beyondTurns(build, within);
}

Eigen::MatrixXd walled(const coil::CoilBuild& build, const std::vector<CurrentBox>& boxes, const Window& window) {
    Eigen::VectorXd root(static_cast<Eigen::Index>(boxes.size()));
    for (Eigen::Index i = 0; i < root.size(); ++i)
        root(i) = std::sqrt(build.layers[static_cast<std::size_t>(i)].turnLength);
    const Eigen::MatrixXd axial = root.asDiagonal() * axialModes(boxes, window) * root.asDiagonal();
    return vacuumPermeability * (uniformMode(boxes, window, perimeterOf(build)) + axial);
}

/// What round wires have more than the even sheet that the series takes for them, per layer, H for its turns squared.
///
///     row:   N/s mu0/2pi [ ln(q / (2 pi r')) + pi a / (3 q) ],  q wire to wire, a the box's thickness, r' = r e^(-1/4)
///     body:  N/s mu0/2pi ln(R / r),  pi R^2 the area of box a wire has
///
/// Field of a row of line currents (elementary, derived here) against that of a sheet; r' holds the static internal
/// inductance mu0/8pi. s strands carry 1/s each. Foil is a sheet.
double wireExcess(const coil::Layer& layer) {
    const double radius = layer.conductor.bare / 2;
    if (layer.conductor.foil || radius <= 0) return 0;
    const double wires = layer.turns * layer.conductor.strands, spacing = layer.box.height() / wires;
    const double row = std::log(spacing / (2 * pi * radius)) + 0.25 + pi * layer.box.width() / (3 * spacing);
    const double body = std::log(std::sqrt(layer.box.width() * spacing / pi) / radius);
    return vacuumPermeability / (2 * pi) * layer.turns / layer.conductor.strands * layer.turnLength *
           (layer.random ? body : row);
}

void explain(LeakageResult& result, const std::string& sentence) {
    result.valid = false;
    result.why += (result.why.empty() ? "" : " ") + sentence;
}

}  // namespace

Eigen::MatrixXd windowMatrix(const std::vector<CurrentBox>& boxes, const Window& window, Surroundings around) {
    if (around == Surroundings::Closed)
        return vacuumPermeability * (uniformMode(boxes, window, {}) + axialModes(boxes, window));
    std::vector<coil::Box> plain;
    plain.reserve(boxes.size());
    for (const auto& b : boxes) plain.push_back(b.box);
    return vacuumPermeability * imageMatrix(plain, window.height);
}

Eigen::MatrixXd pairLambda(const Eigen::MatrixXd& windowMatrix) {
    const Eigen::VectorXd own = windowMatrix.diagonal();
    const auto ones = Eigen::RowVectorXd::Ones(own.size());
    return own * ones + (own * ones).transpose() - 2 * windowMatrix;
}

LeakageResult leakageMatrix(const coil::CoilBuild& build, design::Ends ends) {
    LeakageResult result;
    if (build.layers.empty()) return result;
    const auto boxes = boxesInWindow(build);
    const Window window = windowAround(build);
    if (std::any_of(build.layers.begin(), build.layers.end(), [](const auto& l) { return l.random; }))
        result.spread = 0.1;
    if (window.width > build.windowWidth)
        explain(result, "The coil is larger than the window: the leakage is that of a window as large as the coil.");
    result.matrix = ends == design::Ends::Walled ? walled(build, boxes, window) : beyond(build, boxes, window);
    Eigen::VectorXd turns(static_cast<Eigen::Index>(boxes.size()));
    for (Eigen::Index i = 0; i < turns.size(); ++i) {
        const auto& layer = build.layers[static_cast<std::size_t>(i)];
        turns(i) = layer.sense * layer.turns;
    }
    result.matrix.array() *= (turns * turns.transpose()).array();
    for (Eigen::Index i = 0; i < turns.size(); ++i)
        result.matrix(i, i) += wireExcess(build.layers[static_cast<std::size_t>(i)]);
    return result;
}

}  // namespace field
