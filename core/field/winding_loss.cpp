// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/winding_loss.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "field/bessel.h"
#include "field/field_units.h"
#include "field/place_in_window.h"
#include "field/window_field.h"

namespace field {
namespace {

using std::numbers::pi;
using Complex = std::complex<double>;

/// The middles of `count` equal stretches of [from, to].
std::vector<double> middles(double from, double to, int count) {
    std::vector<double> all;
    for (int i = 0; i < count; ++i) all.push_back(from + (to - from) * (i + 0.5) / count);
    return all;
}

/// X^T X.
Eigen::MatrixXd squared(const Eigen::MatrixXd& x) {
    Eigen::MatrixXd sum = Eigen::MatrixXd::Zero(x.cols(), x.cols());
    sum.selfadjointView<Eigen::Lower>().rankUpdate(x.transpose());
    sum.triangularView<Eigen::StrictlyUpper>() = sum.transpose();
    return sum;
}

/// Samples the field over the wires of a layer.
class WireField {
public:
    WireField(const coil::CoilBuild& build, design::Ends ends)
        : build_(build), boxes_(boxesInWindow(build)), inside_(boxes_, windowAround(build), axialTerms) {
        const double within = (build.legs == 2 ? 1 : 2) * build.stack;
        turns_.resize(static_cast<Eigen::Index>(boxes_.size()));
        for (std::size_t k = 0; k < boxes_.size(); ++k) {
            const auto& layer = build.layers[k];
            turns_(static_cast<Eigen::Index>(k)) = layer.sense * layer.turns;
            beyondShare_.push_back(ends == design::Ends::Walled ? 0 : std::max(0.0, 1 - within / layer.turnLength));
            own_.push_back({layer.box, layer.turns});
        }
    }

    /// Over layer k per ampere in the layers' wires.
    [[nodiscard]] Eigen::MatrixXd ofLayer(std::size_t k) {
        const double beyond = beyondShare_[k];
        Eigen::MatrixXd all =
            sampled(k, boxes_[k].box, pointsAlong, 1 - beyond, [&](double x, const std::vector<double>& y) {
                if (heights_.y != y) heights_ = inside_.heights(y);
                return inside_.at(x, heights_);
            });
        if (beyond > 0) {
            const Eigen::MatrixXd out =
                sampled(k, own_[k].box, pointsAlongBeyond, beyond, [&](double x, const std::vector<double>& y) {
                    Eigen::MatrixXd field = openField(own_, x, y);
                    for (std::size_t j = 0; j < own_.size(); ++j)
                        if (build_.layers[j].leg != build_.layers[k].leg)
                            field.col(static_cast<Eigen::Index>(j)).setZero();
                    return field;
                });
            const Eigen::Index within = all.rows();
            all.conservativeResize(within + out.rows(), Eigen::NoChange);
            all.bottomRows(out.rows()) = out;
        }
        return all;
    }

private:
    static constexpr int axialTerms = 120, pointsAlong = 8, pointsAlongBeyond = 4, linesInBody = 5;

    /// `weight`: of the mean square of these samples.
    template <class Field>
    Eigen::MatrixXd sampled(std::size_t k, const coil::Box& box, int points, double weight, Field field) const {
        const auto& layer = build_.layers[k];
        const int along = std::clamp(static_cast<int>(std::ceil(layer.turns * layer.conductor.strands)), 1, points);
        const auto y = middles(box.y0, box.y1, along);
        const auto x = middles(box.x0, box.x1, layer.random ? linesInBody : 1);
        const double root = std::sqrt(weight / static_cast<double>(x.size() * y.size()));
        Eigen::MatrixXd all(2 * static_cast<Eigen::Index>(x.size() * y.size()), turns_.size());
        Eigen::Index row = 0;
        for (const double line : x) {
            const auto rows = 2 * static_cast<Eigen::Index>(y.size());
            all.middleRows(row, rows) = field(line, y) * (root * turns_).asDiagonal();
            row += rows;
        }
        return all;
    }

    const coil::CoilBuild& build_;
    std::vector<CurrentBox> boxes_, own_;  // in the window; each from its own leg
    WindowField inside_;
    WindowField::Heights heights_;  // most layers share them
    Eigen::VectorXd turns_;
    std::vector<double> beyondShare_;
};

/// All layers' samples of one wire below each other, each layer by the root of its wire's length.
Eigen::MatrixXd formOf(const coil::CoilBuild& build, const ProximityForm& all, double bareDiameter) {
    const auto isOfWire = [&](std::size_t k) {
        return !build.layers[k].conductor.foil && build.layers[k].conductor.bare == bareDiameter;
    };
    Eigen::Index rows = 0;
    for (std::size_t k = 0; k < all.field.size(); ++k)
        if (isOfWire(k)) rows += all.field[k].rows();
    Eigen::MatrixXd samples(rows, static_cast<Eigen::Index>(all.field.size()));
    Eigen::Index at = 0;
    for (std::size_t k = 0; k < all.field.size(); ++k) {
        if (!isOfWire(k)) continue;
        samples.middleRows(at, all.field[k].rows()) = std::sqrt(all.wireLength[k]) * all.field[k];
        at += all.field[k].rows();
    }
    return squared(samples);
}

}  // namespace

double skinDepth(double frequency, double resistivity) {
    return std::sqrt(resistivity / (pi * frequency * vacuumPermeability));
}

Complex roundWireImpedanceFactor(double diameterOverSkinDepth) {
    if (diameterOverSkinDepth < 1e-6) return 1;
    const Complex z = Complex(1, -1) * (diameterOverSkinDepth / 2);
    return z / (2.0 * besselRatio10(z));
}

double dowellFactor(double delta, int layers) {
    if (delta < 1e-6) return 1;
    const Complex z = Complex(1, 1) * delta;
    const double others = (double(layers) * layers - 1) / 3;
    return (z / std::tanh(z)).real() + others * (2.0 * z * std::tanh(z / 2.0)).real();
}

Complex transverseFieldFactor(double frequency, double bareDiameter, double resistivity) {
    const double radius = bareDiameter / 2;
    const Complex z = Complex(1, -1) * (radius / skinDepth(frequency, resistivity));
    const double drive = 2 * pi * frequency * vacuumPermeability * 2 * pi * radius * radius;
    return Complex(0, drive) * besselRatio20(z);
}

Eigen::MatrixXd ProximityForm::ofLayer(std::size_t layer) const {
    return squared(field[layer]);
}

ProximityForm proximityForm(const coil::CoilBuild& build, design::Ends ends) {
    ProximityForm result;
    WireField field(build, ends);
    std::vector<double> diameters;
    for (std::size_t k = 0; k < build.layers.size(); ++k) {
        const auto& layer = build.layers[k];
        const bool foil = layer.conductor.foil;
        result.field.push_back(foil ? Eigen::MatrixXd(0, static_cast<Eigen::Index>(build.layers.size()))
                                    : field.ofLayer(k));
        result.wireLength.push_back(layer.turns * layer.turnLength * layer.conductor.strands);
        if (!foil) diameters.push_back(layer.conductor.bare);
    }
    std::sort(diameters.begin(), diameters.end());
    diameters.erase(std::unique(diameters.begin(), diameters.end()), diameters.end());
    for (const double bare : diameters) result.ofWires.push_back({bare, formOf(build, result, bare)});
    return result;
}

}  // namespace field
