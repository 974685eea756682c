// SPDX-License-Identifier: GPL-3.0-or-later
#include "learn/reading_model.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>
#include <set>

#include "analysis/in_threads.h"
#include "learn/terminal_reader.h"
#include "spread/run.h"

namespace learn {

namespace {

/// Whether a meter shows an inductance at all: near and above the winding's own resonance it shows the capacitance.
bool isInductance(const Probe& probe, double shown) {
    constexpr double most = 1.5;
    return shown > probe.expected / most && shown < probe.expected * most;
}

}  // namespace

Vector scaledOf(const std::vector<Probe>& probes, const std::vector<double>& values) {
    Vector all(static_cast<Eigen::Index>(values.size()));
    for (std::size_t k = 0; k < values.size(); ++k) all(static_cast<Eigen::Index>(k)) = scaled(probes[k], values[k]);
    return all;
}

namespace {

/// A column for each of the chosen numbers.
Matrix slopesByNumber(const spread::Variation& variation, const std::vector<std::size_t>& chosen,
                      const std::vector<double>& middle, const UnitReader& read) {
    std::vector<Vector> columns(chosen.size());
    analysis::inThreads(chosen.size(), 0, {}, [&] {
        auto unit = std::make_shared<spread::UnitDesign>(variation);
        return [&, unit](std::size_t k) {
            const auto& one = variation.all[chosen[k]];
            const double step = one.law.deviation(one.nominal);
            auto values = middle;
            values[chosen[k]] = middle[chosen[k]] + step;
            const Vector above = read(*unit, values);
            values[chosen[k]] = middle[chosen[k]] - step;
            columns[k] = (above - read(*unit, values)) / 2;
        };
    });
    Matrix slopes(columns.empty() ? 0 : columns.front().size(), static_cast<Eigen::Index>(chosen.size()));
    for (std::size_t k = 0; k < columns.size(); ++k) slopes.col(static_cast<Eigen::Index>(k)) = columns[k];
    return slopes;
}

/// A column for each independent cause, from those for the chosen numbers.
Matrix slopesByCause(const spread::Variation& variation, const std::vector<std::size_t>& chosen, const Matrix& slopes) {
    std::map<std::size_t, Eigen::Index> column;
    for (const auto k : chosen) column.emplace(k, static_cast<Eigen::Index>(column.size()));
    const auto causes = spread::causesOf(spread::drawnOf(variation.all));
    Matrix all = Matrix::Zero(slopes.rows(), static_cast<Eigen::Index>(causes.size()));
    for (std::size_t c = 0; c < causes.size(); ++c)
        for (const auto& effect : causes[c].effects)
            if (const auto at = column.find(effect.drawn); at != column.end())
                all.col(static_cast<Eigen::Index>(c)) += effect.weight * slopes.col(at->second);
    return all;
}

}  // namespace

Matrix slopesOf(const spread::Variation& variation, const std::vector<std::size_t>& chosen,
                const std::vector<double>& middle, const UnitReader& read) {
    return slopesByCause(variation, chosen, slopesByNumber(variation, chosen, middle, read));
}

Matrix slopesOfAll(const spread::Variation& variation, const UnitReader& read) {
    std::vector<std::size_t> all(variation.all.size());
    std::iota(all.begin(), all.end(), std::size_t{0});
    Matrix slopes = slopesByNumber(variation, all, spread::nominals(variation), read);
    for (Eigen::Index k = 0; k < slopes.cols(); ++k)
        if (!slopes.col(k).allFinite()) slopes.col(k).setZero();
    return slopesByCause(variation, all, slopes);
}

ReadingModel nominalModel(const design::Design& design, const shop::PlanPrediction& prediction,
                          const shop::TestPlan& plan, const catalog::Catalog& shop,
                          const catalog::Tolerances& tolerances, const design::Fixture& fixture) {
    constexpr double floorShare = 1e-4, floorCapacitance = 2.5e-12;
    ReadingModel model;
    const auto& bench = prediction.states.back().bench.design;
    model.variation = spread::variationOf(bench, shop, shop::benchTolerances(tolerances));
    auto probes = probesOf(design, prediction, plan, fixture);
    const auto nominal = readings({model.variation.base, {}, {}, 0, {}}, probes, shop);
    for (std::size_t k = 0; k < probes.size(); ++k) {
        Probe& probe = probes[k];
        if (!std::isfinite(nominal[k])) continue;
        if (probe.kind == ProbeKind::Inductance && !isInductance(probe, nominal[k])) continue;
        probe.floor = probe.kind == ProbeKind::Capacitance ? floorCapacitance : floorShare * std::abs(nominal[k]);
        if (!(probe.floor > 0) && probe.kind != ProbeKind::Gain && probe.kind != ProbeKind::Response) continue;
        // Until here the instrument's uncertainty is in the reading's unit, the model's a share of it, or in dB.
        probe.instrument *= slope(probe, nominal[k]);
        if (probe.unit == units::Kind::Decibel) probe.model *= slope(probe, nominal[k]);
        model.nominal.push_back(nominal[k]);
        model.probes.push_back(probe);
    }
    model.scaled = scaledOf(model.probes, model.nominal);
    return model;
}

ReadingModel readingModel(const design::Design& design, const shop::PlanPrediction& prediction,
                          const shop::TestPlan& plan, const catalog::Catalog& shop,
                          const catalog::Tolerances& tolerances, const design::Fixture& fixture) {
    ReadingModel model = nominalModel(design, prediction, plan, shop, tolerances, fixture);
    const auto read = [&](spread::UnitDesign& unit, const std::vector<double>& values) {
        const Unit made{std::make_shared<design::Design>(unit.with(values)), {}, {}, 0, {}};
        return scaledOf(model.probes, readings(made, model.probes, shop));
    };
    model.slopes = slopesOfAll(model.variation, read);
    return model;
}

std::vector<double> scaledReadings(const std::vector<Probe>& probes, const Readings& readings,
                                   std::vector<std::string>* unknown) {
    std::vector<double> all(probes.size(), std::numeric_limits<double>::quiet_NaN());
    for (const auto& [name, value] : readings) {
        bool known = false;
        for (std::size_t k = 0; k < probes.size(); ++k) {
            if (units::dotted(probes[k].name) != units::dotted(name)) continue;
            known = true;
            const bool sign = probes[k].kind == ProbeKind::Polarity;
            const double one = sign                                 ? (value < 0 ? -1.0 : 1.0)
                               : probes[k].kind == ProbeKind::Ratio ? std::abs(value)
                                                                    : value;
            if (std::isfinite(value)) all[k] = scaled(probes[k], one);
        }
        if (!known && unknown != nullptr) unknown->push_back(name);
    }
    return all;
}

}  // namespace learn
