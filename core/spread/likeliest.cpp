// SPDX-License-Identifier: GPL-3.0-or-later
#include "spread/likeliest.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>

#include "analysis/in_threads.h"
#include "spread/summary.h"

namespace spread {

namespace {

using Eigen::Index;
using Matrix = Eigen::MatrixXd;
using Vector = Eigen::VectorXd;

constexpr double mostDeviates = 8;  // beyond, a law says nothing

/// Columns of the readings in a study: promised figures come under their own names, the others behind them.
std::vector<std::size_t> columnsOf(const Study& study, const std::vector<FigureRead>& readings) {
    std::vector<std::size_t> found;
    for (const auto& reading : readings) {
        const auto& columns = study.columns();
        const auto at = std::find_if(columns.begin(), columns.end(),
                                     [&](const auto& c) { return !c.mask && c.name == reading.figure; });
        found.push_back(static_cast<std::size_t>(at - columns.begin()));
    }
    return found;
}

class Fit {
public:
    Fit(const Study& study, const std::vector<FigureRead>& readings)
        : study_(study), readings_(readings), columns_(columnsOf(study, readings)) {
        const auto& all = study_.variation().all;
        const auto n = static_cast<Index>(all.size());
        together_ = Matrix::Zero(n, n);
        for (const auto& cause : causesOf(drawnOf(all)))
            for (const auto& a : cause.effects)
                for (const auto& b : cause.effects)
                    together_(static_cast<Index>(a.drawn), static_cast<Index>(b.drawn)) += a.weight * b.weight;
        at_ = Vector::Zero(n);
    }

    void run(const std::stop_token& stop) {
        constexpr int rounds = 6;
        constexpr double near = 0.01;  // standard deviations
        const auto m = static_cast<Index>(readings_.size());
        Vector read(m), variance(m);
        for (Index k = 0; k < m; ++k) {
            const auto& one = readings_[static_cast<std::size_t>(k)];
            read(k) = one.value;
            variance(k) = one.doubt * one.doubt / 4;
        }
        for (int round = 0; round < rounds && !stop.stop_requested(); ++round) {
            const Vector now = figures(at_);
            const Matrix slopes = slopesAt(at_, stop);
            if (stop.stop_requested() || !now.allFinite() || !slopes.allFinite()) return;
            const Matrix whole = slopes * together_ * slopes.transpose() + Matrix(variance.asDiagonal());
            const Vector next = (together_ * slopes.transpose() * whole.ldlt().solve(read - now + slopes * at_))
                                    .cwiseMax(-mostDeviates)
                                    .cwiseMin(mostDeviates);
            const double moved = (next - at_).cwiseAbs().maxCoeff();
            at_ = next;
            if (moved < near) return;
        }
    }

    [[nodiscard]] std::vector<double> values() const { return values(at_); }
    [[nodiscard]] double deviate(std::size_t k) const { return at_(static_cast<Index>(k)); }
    [[nodiscard]] Vector figures() const { return figures(at_); }

private:
    [[nodiscard]] bool counted(Index k) const {
        return study_.variation().all[static_cast<std::size_t>(k)].law.kind == catalog::Law::Discrete;
    }
    [[nodiscard]] std::vector<double> values(const Vector& at) const {
        const auto& all = study_.variation().all;
        std::vector<double> values(all.size());
        for (std::size_t k = 0; k < values.size(); ++k) {
            const bool turns = counted(static_cast<Index>(k));
            values[k] = turns ? all[k].nominal : all[k].law.value(all[k].nominal, at(static_cast<Index>(k)));
        }
        return values;
    }
    [[nodiscard]] Vector figures(const Vector& at) const {
        const auto found = study_.unit(values(at));
        Vector all(static_cast<Index>(columns_.size()));
        for (std::size_t k = 0; k < columns_.size(); ++k) all(static_cast<Index>(k)) = found.values[columns_[k]];
        return all;
    }
    /// A row a reading, a column a number: by half a standard deviation to either side.
    [[nodiscard]] Matrix slopesAt(const Vector& at, const std::stop_token& stop) const {
        constexpr double step = 0.5;
        Matrix slopes = Matrix::Zero(static_cast<Index>(readings_.size()), at.size());
        analysis::inThreads(static_cast<std::size_t>(at.size()), 0, stop, [&] {
            return [&](std::size_t number) {
                const auto k = static_cast<Index>(number);
                if (counted(k)) return;
                Vector more = at, less = at;
                more(k) += step;
                less(k) -= step;
                slopes.col(k) = (figures(more) - figures(less)) / (2 * step);
            };
        });
        return slopes;
    }

    const Study& study_;
    const std::vector<FigureRead>& readings_;
    std::vector<std::size_t> columns_;
    Matrix together_;
    Vector at_;
};

}  // namespace

LikeliestUnit likeliestUnit(const design::Design& design, const catalog::Catalog& shop,
                            const catalog::Tolerances& tolerances, std::vector<FigureRead> readings,
                            const std::stop_token& stop) {
    Plan plan;
    plan.exact = true;
    for (const auto& reading : readings) plan.wanted.figures.push_back(reading.figure);
    const Study study(design, shop, tolerances, plan, stop);
    const auto columns = columnsOf(study, readings);
    for (std::size_t k = 0; k < readings.size(); ++k)
        if (!(readings[k].doubt > 0))
            readings[k].doubt = measurementGuard(study.columns()[columns[k]].unit, readings[k].value);
    Fit fit(study, readings);
    fit.run(stop);
    LikeliestUnit unit;
    if (stop.stop_requested()) return unit;
    const auto values = fit.values();
    UnitDesign made(study.variation());
    unit.design = std::make_shared<const design::Design>(made.with(values));
    unit.variation = study.variation();
    for (std::size_t k = 0; k < values.size(); ++k) unit.deviated.push_back({k, fit.deviate(k), values[k]});
    std::stable_sort(unit.deviated.begin(), unit.deviated.end(),
                     [](const auto& a, const auto& b) { return std::abs(a.deviate) > std::abs(b.deviate); });
    const Vector figures = fit.figures();
    for (std::size_t k = 0; k < readings.size(); ++k) {
        unit.figures.push_back(figures(static_cast<Index>(k)));
        unit.furthest = std::max(unit.furthest, std::abs(unit.figures[k] - readings[k].value) / readings[k].doubt);
    }
    return unit;
}

}  // namespace spread
