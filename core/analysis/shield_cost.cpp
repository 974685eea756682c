// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/shield_cost.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "analysis/change.h"
#include "analysis/most_rejection.h"
#include "design/edit.h"
#include "units/text.h"

namespace analysis {

namespace {

constexpr std::array<std::string_view, 7> told{"leakage_10kHz.",     "input_capacitance.", "high_3dB_first",
                                               "rejection_1kHz",     "rejection_20kHz",    "rejection_10ohm_20kHz",
                                               "output_balance_1kHz"};

bool isTold(const units::Figure& figure) {
    return figure.name.find('@') == std::string::npos &&
           std::any_of(told.begin(), told.end(), [&](auto stem) { return figure.name.starts_with(stem); });
}

/// Shields from the core outward, by name.
std::vector<std::string> shieldsOf(const design::Design& d) {
    std::vector<std::string> names;
    for (const auto& place : d.coil)
        for (const auto& item : place.order)
            if (const auto* shield = item.shield()) names.push_back(shield->name);
    return names;
}

design::DesignPtr without(const design::Design& d, const std::string& shield) {
    for (std::size_t p = 0; p < d.coil.size(); ++p)
        for (std::size_t i = 0; i < d.coil[p].order.size(); ++i)
            if (const auto* s = d.coil[p].order[i].shield(); s != nullptr && s->name == shield)
                return design::removeItem(d, {static_cast<int>(p), static_cast<int>(i)});
    return std::make_shared<design::Design>(d);
}

std::string valueText(const units::Figure* figure) {
    if (figure == nullptr || !std::isfinite(figure->value)) return "none";
    if (isOverMost(*figure)) return "over " + units::write(units::Kind::Decibel, figure->value, 2);
    return units::writeWithUncertainty(units::kindOfUnit(figure->unit), figure->value, figure->uncertainty);
}

}  // namespace

std::vector<ShieldVariant> shieldCosts(const design::Design& design, const catalog::Catalog& shop, const AnswerPtr& now,
                                       const std::stop_token& stop) {
    std::vector<ShieldVariant> all{{"as designed", {}, now}};
    for (const auto& figure : now->figures)
        if (isTold(figure)) all.front().figures.push_back(&figure);
    const auto add = [&](const std::string& name, const design::Design& other) {
        const auto then = answer(other, shop, now, stop, {now->hookUp, {1000.0}, false});
        ShieldVariant variant{name, {}, then};
        for (const auto* figure : all.front().figures) variant.figures.push_back(then->figure(figure->name));
        all.push_back(std::move(variant));
        return !then->stopped;
    };
    const auto shields = shieldsOf(design);
    auto bare = std::make_shared<const design::Design>(design);
    for (const auto& shield : shields) {
        if (!add("without " + shield, *without(design, shield))) return {};
        bare = without(*bare, shield);
    }
    if (shields.size() > 1 && !add("without shields", *bare)) return {};
    return all;
}

std::vector<std::vector<std::string>> table(const std::vector<ShieldVariant>& variants) {
    std::vector<std::vector<std::string>> rows{{""}};
    for (const auto& variant : variants) rows.front().push_back(variant.name);
    if (variants.empty()) return rows;
    const auto& first = variants.front().figures;
    for (std::size_t k = 0; k < first.size(); ++k) {
        std::vector<std::string> row{first[k]->name, valueText(first[k])};
        for (std::size_t v = 1; v < variants.size(); ++v) {
            const auto* then = variants[v].figures[k];
            std::string text = valueText(then);
            if (then != nullptr && text != row[1] && !isOverMost(*then) && !isOverMost(*first[k])) {
                const auto kind = units::kindOfUnit(then->unit);
                const std::string by = difference(kind, first[k]->value, then->value, then->uncertainty);
                if (!by.empty()) text.append(" (").append(by).append(")");
            }
            row.push_back(std::move(text));
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

}  // namespace analysis
