// SPDX-License-Identifier: GPL-3.0-or-later
// The small transformer with promises, and what its units are like.
#pragma once

#include <cmath>

#include "exchange/load_tolerances.h"
#include "small_transformer.h"
#include "spread/run.h"

inline const catalog::Catalog& shop() {
    static const catalog::Catalog all = small::shop();
    return all;
}

inline const catalog::Tolerances& usual() {
    static const catalog::Tolerances all = exchange::loadTolerances({COILWRIGHT_SOURCE_DIR "/resources"});
    return all;
}

inline design::Design promising() {
    design::Design d = small::transformer();
    d.core.gap = 4e-6;
    design::Promise low, high, copper;
    low.figure = "low_3dB";
    low.atMost = 60;
    high.figure = "high_3dB_first";
    high.atLeast = 20e3;
    copper.figure = "dcr.P";
    copper.atMost = 30;
    d.brief.promises = {low, high, copper};
    design::Mask mask;
    mask.trace = "response";
    mask.points = {{100, -1, 1}, {10e3, -1, 1}};
    d.brief.masks = {mask};
    return d;
}

inline double mean(const spread::Batch& batch, std::size_t column) {
    double sum = 0;
    for (const auto& unit : batch.values) sum += unit[column];
    return sum / static_cast<double>(batch.values.size());
}
inline double deviation(const spread::Batch& batch, std::size_t column) {
    const double middle = mean(batch, column);
    double sum = 0;
    for (const auto& unit : batch.values) sum += (unit[column] - middle) * (unit[column] - middle);
    return std::sqrt(sum / static_cast<double>(batch.values.size() - 1));
}

inline spread::Plan planOf(std::uint64_t units, std::vector<std::string> figures) {
    spread::Plan plan;
    plan.units = units;
    plan.wanted.figures = std::move(figures);
    return plan;
}
