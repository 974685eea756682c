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

/// Samples the field over the wires of a layer and adds up its squares.
class ProximitySum {
public:
    ProximitySum(const coil::CoilBuild& build, design::Ends ends)
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

    /// Mean square field over layer k per ampere in the layers' wires.
    [[nodiscard]] Eigen::MatrixXd ofLayer(std::size_t k) const {
        const double beyond = beyondShare_[k];
        Eigen::MatrixXd sum = meanSquare(k, boxes_[k].box, pointsAlong,
                                         [&](double x, const std::vector<double>& y) { return inside_.at(x, y); });
        if (beyond > 0) {
            Eigen::MatrixXd out =
                meanSquare(k, own_[k].box, pointsAlongBeyond, [&](double x, const std::vector<double>& y) {
                    Eigen::MatrixXd field = openField(own_, x, y);
                    for (std::size_t j = 0; j < own_.size(); ++j)
                        if (build_.layers[j].leg != build_.layers[k].leg)
                            field.col(static_cast<Eigen::Index>(j)).setZero();
                    return field;
                });
            sum = (1 - beyond) * sum + beyond * out;
        }
        return sum.cwiseProduct(turns_ * turns_.transpose());
    }

private:
    static constexpr int axialTerms = 120, pointsAlong = 8, pointsAlongBeyond = 4, linesInBody = 5;

    template <class Field>
    Eigen::MatrixXd meanSquare(std::size_t k, const coil::Box& box, int points, Field field) const {
        const auto& layer = build_.layers[k];
        const int along = std::clamp(static_cast<int>(std::ceil(layer.turns * layer.conductor.strands)), 1, points);
        const auto y = middles(box.y0, box.y1, along);
        const auto x = middles(box.x0, box.x1, layer.random ? linesInBody : 1);
        Eigen::MatrixXd sum = Eigen::MatrixXd::Zero(turns_.size(), turns_.size());
        for (const double line : x) {
            const Eigen::MatrixXd h = field(line, y);
            sum.selfadjointView<Eigen::Lower>().rankUpdate(h.transpose());
        }
        sum.triangularView<Eigen::StrictlyUpper>() = sum.transpose();
        return sum / static_cast<double>(x.size() * y.size());
    }

    const coil::CoilBuild& build_;
    std::vector<CurrentBox> boxes_, own_;  // in the window; each from its own leg
    WindowField inside_;
    Eigen::VectorXd turns_;
    std::vector<double> beyondShare_;
};

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

ProximityForm proximityForm(const coil::CoilBuild& build, design::Ends ends) {
    ProximityForm result;
    const ProximitySum sum(build, ends);
    const auto count = static_cast<Eigen::Index>(build.layers.size());
    for (std::size_t k = 0; k < build.layers.size(); ++k) {
        const auto& layer = build.layers[k];
        result.perLayer.push_back(layer.conductor.foil ? Eigen::MatrixXd::Zero(count, count) : sum.ofLayer(k));
        result.wireLength.push_back(layer.turns * layer.turnLength * layer.conductor.strands);
    }
    return result;
}

}  // namespace field
