// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/foil_eddies.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "coil/wire_resistance.h"
#include "field/field_units.h"
#include "field/leakage.h"
#include "field/place_in_window.h"
#include "field/window_field.h"

namespace field {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;
using std::numbers::pi;

/// A piece of a foil's width.
struct Strip {
    int foil = 0;     ///< counted over all foils
    int branch = -1;  ///< of a winding: index of its layer
    coil::Layer layer;
    [[nodiscard]] double thickness() const { return layer.conductor.bare; }
    [[nodiscard]] double resistance() const {
        return coil::conductorResistance(layer.turnLength, thickness() * layer.box.height(), 20);
    }
};

int foilCount(const coil::CoilBuild& build) {
    const auto isFoil = [](const auto& part) { return part.conductor.foil; };
    return static_cast<int>(std::count_if(build.layers.begin(), build.layers.end(), isFoil) +
                            std::count_if(build.foils.begin(), build.foils.end(), isFoil));
}

std::vector<Strip> stripsOf(const coil::CoilBuild& build) {
    const int foils = foilCount(build);
    const int each = std::clamp(160 / std::max(1, foils), 4, 16);
    std::vector<Strip> strips;
    int number = 0;
    const auto cut = [&](const coil::Layer& whole, int branch) {
        for (int k = 0; k < each; ++k) {
            Strip strip{number, branch, whole};
            const double middle = (whole.box.y0 + whole.box.y1) / 2, half = whole.box.height() / 2;
            strip.layer.box.y0 = middle - half * std::cos(pi * k / each);
            strip.layer.box.y1 = middle - half * std::cos(pi * (k + 1) / each);
            strip.layer.turns = 1;
            strip.layer.sense = 1;
            strips.push_back(std::move(strip));
        }
        ++number;
    };
    for (std::size_t k = 0; k < build.layers.size(); ++k)
        if (build.layers[k].conductor.foil) cut(build.layers[k], static_cast<int>(k));
    for (const auto& foil : build.foils) {
        if (!foil.conductor.foil || foil.box.height() <= 0) continue;
        coil::Layer whole;
        whole.leg = foil.leg;
        whole.chamber = foil.chamber;
        whole.box = foil.box;
        whole.turnLength = foil.turnLength;
        whole.conductor = foil.conductor;
        cut(whole, -1);
    }
    return strips;
}

/// Orthonormal currents of the strips that add up to zero in every foil.
MatrixXd redistributions(const std::vector<Strip>& strips) {
    const auto count = static_cast<Index>(strips.size());
    const int foils = strips.empty() ? 0 : strips.back().foil + 1;
    MatrixXd basis = MatrixXd::Zero(count, count - foils);
    Index column = 0;
    for (Index first = 0; first < count;) {
        Index end = first;
        while (end < count && strips[std::size_t(end)].foil == strips[std::size_t(first)].foil) ++end;
        for (Index k = 1; first + k < end; ++k, ++column) {  // Helmert's
            const double scale = 1 / std::sqrt(double(k) * double(k + 1));
            basis.block(first, column, k, 1).setConstant(scale);
            basis(first + k, column) = -double(k) * scale;
        }
        first = end;
    }
    return basis;
}

/// Independent circuits of one ohm each: what they are in strip currents, and their time constants.
struct Modes {
    MatrixXd current;  ///< strips x modes
    VectorXd time;     ///< s
};

Modes axialModesOf(const std::vector<Strip>& strips, const MatrixXd& inductance) {
    VectorXd resistance(static_cast<Index>(strips.size()));
    for (std::size_t k = 0; k < strips.size(); ++k) resistance(static_cast<Index>(k)) = strips[k].resistance();
    const MatrixXd basis = redistributions(strips);
    const MatrixXd loss = basis.transpose() * resistance.asDiagonal() * basis;
    const MatrixXd energy = basis.transpose() * inductance * basis;
    const Eigen::GeneralizedSelfAdjointEigenSolver<MatrixXd> solved(energy, loss);
    return {basis * solved.eigenvectors(), solved.eigenvalues()};
}

/// Keeps the circuits whose share in some branch's own energy counts up to `highest` Hz.
Modes counting(const Modes& modes, const MatrixXd& mutual, const VectorXd& own, double highest) {
    constexpr double least = 1e-6;
    constexpr std::size_t most = 40;
    std::vector<std::pair<double, Index>> order;
    for (Index k = 0; k < modes.time.size(); ++k) {
        if (modes.time(k) <= 0) continue;
        const double coupled = (mutual.col(k).array().square() / own.array()).maxCoeff() / modes.time(k);
        const double weight = coupled * std::min(1.0, 2 * pi * highest * modes.time(k));
        if (weight > least) order.emplace_back(-weight, k);
    }
    std::sort(order.begin(), order.end());
    order.resize(std::min(order.size(), most));
    Modes kept{MatrixXd(modes.current.rows(), static_cast<Index>(order.size())),
               VectorXd(static_cast<Index>(order.size()))};
    for (std::size_t k = 0; k < order.size(); ++k) {
        kept.current.col(static_cast<Index>(k)) = modes.current.col(order[k].second);
        kept.time(static_cast<Index>(k)) = modes.time(order[k].second);
    }
    return kept;
}

/// Sum over the strips of R (b h)(b h)^T per foil thickness, in branches and strip currents.
std::map<double, MatrixXd> throughForms(const coil::CoilBuild& extended, const std::vector<Strip>& strips,
                                        design::Ends ends) {
    const auto count = static_cast<Index>(extended.layers.size());
    const WindowField inside(boxesInWindow(extended), windowAround(extended), 160);
    const double within = (extended.legs == 2 ? 1 : 2) * extended.stack;
    std::vector<CurrentBox> own;
    VectorXd turns(count);
    for (Index k = 0; k < count; ++k) {
        const auto& layer = extended.layers[static_cast<std::size_t>(k)];
        own.push_back({layer.box, 1});
        turns(k) = layer.sense * layer.turns;
    }
    const auto boxes = boxesInWindow(extended);
    const auto first = extended.layers.size() - strips.size();
    std::map<double, MatrixXd> forms;
    for (std::size_t s = 0; s < strips.size(); ++s) {
        const Strip& strip = strips[s];
        auto& form = forms.try_emplace(strip.thickness(), MatrixXd::Zero(count, count)).first->second;
        const double beyond = ends == design::Ends::Walled ? 0 : std::max(0.0, 1 - within / strip.layer.turnLength);
        const double scale = strip.resistance() * strip.layer.box.height() * strip.layer.box.height();
        const auto add = [&](VectorXd h, double share) {
            h.array() *= turns.array();
            form += share * scale * h * h.transpose();
        };
        const double y = (strip.layer.box.y0 + strip.layer.box.y1) / 2;
        add(inside.at(boxes[first + s].box.middle(), {y}).row(1).transpose(), 1 - beyond);
        if (beyond <= 0) continue;
        VectorXd out = openField(own, strip.layer.box.middle(), {y}).row(1).transpose();
        for (Index k = 0; k < count; ++k)
            if (extended.layers[static_cast<std::size_t>(k)].leg != strip.layer.leg) out(k) = 0;
        add(out, beyond);
    }
    return forms;
}

/// Collects circuits of one ohm.
class Loops {
public:
    Loops(Index branches, const Modes& modes, const MatrixXd& mutual) : branches_(branches), axial_(modes.time.size()) {
        for (Index k = 0; k < axial_; ++k) {
            VectorXd to(branches_ + axial_);
            to << mutual.col(k), VectorXd::Zero(axial_);
            add(to, modes.time(k));
        }
    }
    /// `to`: mutual inductance with branches and axial circuits.
    void add(VectorXd to, double inductance) {
        mutual_.push_back(std::move(to));
        inductance_.push_back(inductance);
    }
    void fill(FoilEddies& result) const {
        const auto count = static_cast<Index>(mutual_.size());
        result.resistance = VectorXd::Ones(count);
        result.inductance = MatrixXd::Zero(count, count);
        result.mutual.resize(branches_, count);
        for (Index k = 0; k < count; ++k) {
            const auto& to = mutual_[static_cast<std::size_t>(k)];
            result.mutual.col(k) = to.head(branches_);
            result.inductance(k, k) = inductance_[static_cast<std::size_t>(k)];
            if (k < axial_) continue;
            result.inductance.col(k).head(axial_) = to.tail(axial_);
            result.inductance.row(k).head(axial_) = to.tail(axial_).transpose();
        }
    }

private:
    Index branches_, axial_;
    std::vector<VectorXd> mutual_;
    std::vector<double> inductance_;
};

double timeOf(double thickness) {
    return vacuumPermeability * thickness * thickness / coil::copperResistivity20;
}

void addThrough(Loops& loops, double thickness, const MatrixXd& form, double highest) {
    const double time = timeOf(thickness), depths = std::sqrt(pi * highest * time);  // t / delta at the highest
    const int terms = depths < 1 ? 1 : depths < 2.5 ? 2 : 4;
    const Eigen::SelfAdjointEigenSolver<MatrixXd> solved(form);
    constexpr double least = 1e-4;
    const double whole = solved.eigenvalues().sum();
    for (Index k = form.rows() - 1; k >= 0 && solved.eigenvalues()(k) > least * whole; --k) {
        const VectorXd field = std::sqrt(solved.eigenvalues()(k)) * solved.eigenvectors().col(k);
        for (int n = 1; n <= terms; ++n) {
            const double odd = (2 * n - 1) * (2 * n - 1) * pi * pi;
            loops.add(std::sqrt(8.0) * time / odd * field, time / odd);
        }
    }
}

/// The conductor's own current crowds to both faces.
void addCrowding(Loops& loops, const coil::CoilBuild& build, Index size, double highest) {
    for (std::size_t k = 0; k < build.layers.size(); ++k) {
        const auto& layer = build.layers[k];
        if (!layer.conductor.foil) continue;
        const double time = timeOf(layer.conductor.bare), depths = std::sqrt(pi * highest * time);
        if (depths < 1) continue;
        for (int n = 1; n <= (depths < 2.5 ? 1 : 3); ++n) {
            const double even = 4 * n * n * pi * pi;
            VectorXd to = VectorXd::Zero(size);
            to(static_cast<Index>(k)) = std::sqrt(2 * layer.resistance20) * time / even;
            loops.add(std::move(to), time / even);
        }
    }
}

}  // namespace

FoilEddies foilEddies(const coil::CoilBuild& build, design::Ends ends, double highest) {
    const auto strips = stripsOf(build);
    if (strips.empty()) return {leakageMatrix(build, ends).matrix, {}, {}, {}};
    FoilEddies result;
    coil::CoilBuild extended = build;
    for (const auto& strip : strips) extended.layers.push_back(strip.layer);
    const MatrixXd whole = leakageMatrix(extended, ends).matrix;
    const auto branches = static_cast<Index>(build.layers.size()), count = static_cast<Index>(strips.size());
    result.leakage = whole.topLeftCorner(branches, branches);
    const Modes all = axialModesOf(strips, whole.bottomRightCorner(count, count));
    const MatrixXd toStrips = whole.topRightCorner(branches, count);
    const Modes kept = counting(all, toStrips * all.current, result.leakage.diagonal(), highest);
    Loops loops(branches, kept, toStrips * kept.current);
    const Index size = branches + kept.time.size();
    MatrixXd reduce = MatrixXd::Zero(branches + count, size);
    reduce.topLeftCorner(branches, branches).setIdentity();
    reduce.bottomRightCorner(count, kept.time.size()) = kept.current;
    for (const auto& [thickness, form] : throughForms(extended, strips, ends))
        addThrough(loops, thickness, reduce.transpose() * form * reduce, highest);
    addCrowding(loops, build, size, highest);
    loops.fill(result);
    return result;
}

}  // namespace field
