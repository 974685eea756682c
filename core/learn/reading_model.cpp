// SPDX-License-Identifier: GPL-3.0-or-later
#include "learn/reading_model.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "analysis/in_threads.h"
#include "learn/terminal_reader.h"

namespace learn {

namespace {

std::string alike(std::string name) {
    std::replace(name.begin(), name.end(), ' ', '.');
    return name;
}

Vector scaledOf(const std::vector<Probe>& probes, const std::vector<double>& values) {
    Vector all(static_cast<Eigen::Index>(values.size()));
    for (std::size_t k = 0; k < values.size(); ++k) all(static_cast<Eigen::Index>(k)) = scaled(probes[k], values[k]);
    return all;
}

/// Whether a meter shows an inductance at all: near and above the winding's own resonance it shows the capacitance.
bool isInductance(const Probe& probe, double shown) {
    constexpr double most = 1.5;
    return shown > probe.expected / most && shown < probe.expected * most;
}

}  // namespace

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
    const auto& varying = model.variation.all;
    std::vector<double> middle;
    middle.reserve(varying.size());
    for (const auto& one : varying) middle.push_back(one.nominal);
    model.slopes = Matrix::Zero(model.scaled.size(), static_cast<Eigen::Index>(varying.size()));
    analysis::inThreads(varying.size(), 0, {}, [&] {
        auto unit = std::make_shared<spread::UnitDesign>(model.variation);
        return [&, unit](std::size_t k) {
            const double step = varying[k].law.deviation(varying[k].nominal);
            const auto at = [&](double value) {
                auto values = middle;
                values[k] = value;
                return scaledOf(model.probes,
                                readings({std::make_shared<design::Design>(unit->with(values)), {}, {}, 0, {}},
                                         model.probes, shop));
            };
            const Vector above = at(middle[k] + step), below = at(middle[k] - step);
            const Vector change = (above - below) / 2;
            if (change.allFinite()) model.slopes.col(static_cast<Eigen::Index>(k)) = change;
        };
    });
    return model;
}

std::vector<double> scaledReadings(const std::vector<Probe>& probes, const Readings& readings,
                                   std::vector<std::string>* unknown) {
    std::vector<double> all(probes.size(), std::numeric_limits<double>::quiet_NaN());
    for (const auto& [name, value] : readings) {
        bool known = false;
        for (std::size_t k = 0; k < probes.size(); ++k) {
            if (alike(probes[k].name) != alike(name)) continue;
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
