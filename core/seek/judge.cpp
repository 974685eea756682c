// SPDX-License-Identifier: GPL-3.0-or-later
#include "seek/judge.h"

#include <algorithm>
#include <cmath>

#include "analysis/promise.h"
#include "coil/coil_build.h"
#include "shop/bill.h"
#include "units/kind.h"

namespace seek {

namespace {

double inThins(double margin, double limit, units::Kind kind) {
    return std::clamp(analysis::marginShare(kind, margin, limit) / analysis::thinBelow(kind), noMargin, anyMargin);
}

double promiseMargin(const design::Promise& promise, const analysis::Column& column, double value,
                     analysis::Standing standing) {
    if (standing == analysis::Standing::Unknown) return noMargin;
    if (!std::isfinite(value)) return standing == analysis::Standing::Broken ? noMargin : anyMargin;
    double margin = anyMargin;
    const units::Kind kind = units::kindOfUnit(column.unit);
    if (promise.atLeast) margin = std::min(margin, inThins(value - *promise.atLeast, *promise.atLeast, kind));
    if (promise.atMost) margin = std::min(margin, inThins(*promise.atMost - value, *promise.atMost, kind));
    // Judged by more than its value (rejection that ends at a limit): the standing rules.
    if (standing == analysis::Standing::Broken) return std::min(margin, -1.0 / anyMargin);
    return margin;
}

}  // namespace

double Verdict::weakest() const {
    return margins.empty() ? noMargin : *std::min_element(margins.begin(), margins.end());
}

double Verdict::broken() const {
    double sum = margins.empty() ? noMargin : 0;
    for (const double m : margins) sum += std::min(0.0, m);
    return sum;
}

Verdict Judge::verdict(const design::Design& design, const std::stop_token& stop) const {
    const auto found = alike_.found(design, stop);
    const auto& columns = alike_.columns();
    Verdict verdict;
    for (std::size_t k = 0; k < columns.size() && k < found.values.size(); ++k) {
        const auto& column = columns[k];
        if (column.promise < 0) continue;
        if (column.mask) {
            const bool known = std::isfinite(found.values[k]) && found.standings[k] != analysis::Standing::Unknown;
            verdict.margins.push_back(known ? inThins(found.values[k], 0, units::kindOfUnit(column.unit)) : noMargin);
        } else {
            verdict.margins.push_back(promiseMargin(brief_.promises[static_cast<std::size_t>(column.promise)], column,
                                                    found.values[k], found.standings[k]));
        }
    }
    return verdict;
}

double marginOf(const analysis::PromiseState& state) {
    if (state.standing == analysis::Standing::Unknown) return noMargin;
    if (!std::isfinite(state.now)) return state.standing == analysis::Standing::Broken ? noMargin : anyMargin;
    return inThins(state.margin, state.limit, state.kind);
}

Burden burdenOf(const design::Design& design, const catalog::Catalog& shop, const shop::Prices* prices) {
    Burden burden;
    if (const auto* sheet = design::part(design, design.core.sheet, shop)) {
        burden.width = catalog::overallWidth(*sheet);
        burden.length = catalog::overallHeight(*sheet);
        burden.height = design.core.height + 2 * sheet->windowWidth;
    }
    const auto materials = shop::materialsOf(design, coil::layOut(design, shop), shop);
    for (const auto& use : materials.wires) burden.copper += use.mass;
    for (const auto& use : materials.foils) burden.copper += use.mass;
    for (const auto& use : materials.sheets) burden.iron += use.mass;
    burden.cost = burden.copper + burden.iron;
    if (prices == nullptr) return burden;
    constexpr int lot = 100;
    for (const auto& cost : shop::bill(design, shop, {}, prices).costs)
        if (cost.quantity == lot) burden.cost = cost.total;
    burden.priced = true;
    return burden;
}

}  // namespace seek
