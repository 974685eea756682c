// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/leakage.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "field/field_units.h"
#include "field/image_potential.h"
#include "field/place_in_window.h"
#include "field/window_series.h"

namespace field {
namespace {

using std::numbers::pi;

/// Part of the turn that lies within the window: both windows of a shell, one of a two-leg core.
double lengthWithin(const coil::CoilBuild& build) {
    return (build.legs == 2 ? 1 : 2) * build.stack;
}

/// M per metre beyond the window, H/m. Layers see their own leg as the iron plane; between two legs nothing couples
/// outside, with w, about the distance of the coils, as unit of length (no balance holds there: marked by the caller).
Eigen::MatrixXd beyondMatrix(const coil::CoilBuild& build) {
    std::vector<coil::Box> boxes;
    for (const auto& layer : build.layers) boxes.push_back(layer.box);
    const bool two = bothLegsUsed(build);
    Eigen::MatrixXd result = vacuumPermeability * imageMatrix(boxes, two ? build.windowWidth : build.windowHeight);
    if (!two) return result;
    for (std::size_t i = 0; i < boxes.size(); ++i)
        for (std::size_t j = 0; j < boxes.size(); ++j)
            if (build.layers[i].leg != build.layers[j].leg)
                result(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(j)) = 0;
    return result;
}

/// M' whose pairs' lambda is weighted by the length at the pair's mean radius, less `within`, in the gauge in which
/// ampere- turns spread by the boxes' areas carry no energy.
Eigen::MatrixXd weightedByPairs(const Eigen::MatrixXd& perMetre, const coil::CoilBuild& build, double within) {
    const auto count = perMetre.rows();
    Eigen::VectorXd length(count), area(count);
    for (Eigen::Index i = 0; i < count; ++i) {
        const auto& layer = build.layers[static_cast<std::size_t>(i)];
        length(i) = std::max(0.0, layer.turnLength - within);
        area(i) = layer.box.width() * layer.box.height();
    }
    area /= area.sum();
    Eigen::MatrixXd lambda = pairLambda(perMetre);
    for (Eigen::Index i = 0; i < count; ++i)
        for (Eigen::Index j = 0; j < count; ++j) lambda(i, j) *= (length(i) + length(j)) / 2;
    const Eigen::VectorXd toSpread = lambda * area;
    const double spread = area.dot(toSpread);
    for (Eigen::Index i = 0; i < count; ++i)
        for (Eigen::Index j = 0; j < count; ++j) lambda(i, j) -= toSpread(i) + toSpread(j) - spread;
    return -lambda / 2;
}

Eigen::MatrixXd beyond(const coil::CoilBuild& build, const std::vector<CurrentBox>& boxes, const Window& window) {
    const double within = lengthWithin(build);
    return windowMatrix(boxes, window, Surroundings::Closed) * within +
           weightedByPairs(beyondMatrix(build), build, within);
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
    if (window.width > build.windowWidth)
        explain(result, "The coil is larger than the window: the leakage is that of a window as large as the coil.");
    if (bothLegsUsed(build))
        explain(result,
                "With a coil on each leg the end regions are not balanced: their share of the leakage is an estimate.");
    result.matrix = ends == design::Ends::Walled ? walled(build, boxes, window) : beyond(build, boxes, window);
    Eigen::VectorXd turns(static_cast<Eigen::Index>(boxes.size()));
    for (Eigen::Index i = 0; i < turns.size(); ++i) {
        const auto& layer = build.layers[static_cast<std::size_t>(i)];
        turns(i) = layer.sense * layer.turns;
    }
    result.matrix = (turns.asDiagonal() * result.matrix * turns.asDiagonal()).eval();
    for (Eigen::Index i = 0; i < turns.size(); ++i)
        result.matrix(i, i) += wireExcess(build.layers[static_cast<std::size_t>(i)]);
    return result;
}

}  // namespace field
