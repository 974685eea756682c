// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <string>
#include <vector>

#include "analysis/alike.h"
#include "analysis/in_threads.h"
#include "shop/bench_prediction.h"
#include "spread/run.h"

namespace shop {

namespace {

constexpr double reference = 1000;  // Hz

/// What is read of one unit; a reading that does not occur is not a number.
struct Readings {
    std::vector<double> figures, response, distortion;
};

/// Every figure that the bench shows of the base unit, by the name that it has in a unit with all hook-ups.
std::vector<std::string> shownFigures(const design::Design& base, const catalog::Catalog& shop,
                                      const analysis::AnswerPtr& first) {
    std::vector<std::string> names;
    for (std::size_t k = 0; k < base.hookUps.size(); ++k) {
        const auto answer = k == 0 ? first : hookUpAnswer(base, base.hookUps[k], shop, first, {reference}).answer;
        for (const auto& figure : answer->figures)
            if (std::isfinite(figure.value) && (k == 0 || figure.hookUp == answer->hookUp))
                names.push_back(figure.name + figureSuffix(base, k));
    }
    return names;
}

/// Units answered in every hook-up of the bench, cut as the base unit is, at as few frequencies as the readings need.
class Reader {
public:
    Reader(const design::Design& base, const catalog::Catalog& shop, const BenchQuestion& asked,
           const analysis::AnswerPtr& previous)
        : shop_(shop),
          asked_(asked),
          previous_(hookUpAnswer(base, base.hookUps.front(), shop, previous, {reference}).answer),
          names_(shownFigures(base, shop, previous_)),
          alike_(base, shop, {names_, asked.response}) {}
    [[nodiscard]] const std::vector<std::string>& names() const noexcept { return names_; }
    [[nodiscard]] Readings of(const design::Design& unit, bool distorts) const {
        const auto found = alike_.found(unit);
        return {found.values, found.response, distorts ? distortionOf(unit) : std::vector<double>{}};
    }

private:
    [[nodiscard]] std::vector<double> distortionOf(const design::Design& unit) const {
        const auto first = hookUpAnswer(unit, unit.hookUps.front(), shop_, previous_, {reference});
        std::vector<double> all;
        for (const auto& row :
             analysis::distortionTable(first.design, *first.answer, asked_.distortion, {asked_.level}))
            all.push_back(20 * std::log10(row.thd));
        return all;
    }

    const catalog::Catalog& shop_;
    const BenchQuestion& asked_;
    analysis::AnswerPtr previous_;
    std::vector<std::string> names_;
    analysis::Alike alike_;
};

/// Half widths from what each number alone changes by one standard deviation. Numbers of one lot (paper of one roll in
/// several places) move together, so the changes of each independent cause are summed before they are squared.
std::vector<double> widths(std::size_t count, const std::vector<spread::Cause>& causes,
                           const std::vector<Readings>& above, const std::vector<Readings>& below,
                           std::vector<double> Readings::*read) {
    // Distortion is read for some numbers alone.
    const auto change = [&](std::size_t number, std::size_t k) {
        const auto &up = above[number].*read, &down = below[number].*read;
        return k < up.size() ? (up[k] - down[k]) / 2 : 0;
    };
    std::vector<double> all(count, 0);
    for (std::size_t k = 0; k < count; ++k) {
        double variance = 0;
        for (const auto& cause : causes) {
            double sum = 0;
            for (const auto& effect : cause.effects) sum += effect.weight * change(effect.drawn, k);
            variance += sum * sum;
        }
        all[k] = coverage * std::sqrt(variance);
    }
    return all;
}

}  // namespace

catalog::Tolerances benchTolerances(catalog::Tolerances tolerances) {
    for (const char* key : {"turns_mistakes", "source_impedance", "load_impedance", "load_capacitance", "temperature"})
        tolerances.erase(key);
    return tolerances;
}

BenchSpread benchSpread(const Bench& bench, const catalog::Catalog& shop, const catalog::Tolerances& tolerances,
                        const BenchQuestion& question, const analysis::AnswerPtr& previous) {
    const spread::Variation variation = spread::variationOf(bench.design, shop, benchTolerances(tolerances));
    const std::vector<double> nominal = spread::nominals(variation);
    const Reader reader(*variation.base, shop, question, previous);
    std::vector<Readings> above(nominal.size()), below(nominal.size());
    analysis::inThreads(nominal.size(), 0, {}, [&] {
        auto unit = std::make_shared<spread::UnitDesign>(variation);
        return [&, unit](std::size_t k) {
            // What is no part of the core does not change how it distorts.
            const bool distorts = variation.all[k].place.starts_with("/core");
            const double step = variation.all[k].law.deviation(nominal[k]);
            for (const bool up : {true, false}) {
                auto values = nominal;
                values[k] += up ? step : -step;
                (up ? above : below)[k] = reader.of(unit->with(values), distorts);
            }
        };
    });
    BenchSpread sum;
    const auto causes = spread::causesOf(spread::drawnOf(variation.all));
    const auto figures = widths(reader.names().size(), causes, above, below, &Readings::figures);
    for (std::size_t k = 0; k < figures.size(); ++k) sum.figures[reader.names()[k]] = figures[k];
    sum.response = widths(question.response.size(), causes, above, below, &Readings::response);
    sum.distortion = widths(question.distortion.size(), causes, above, below, &Readings::distortion);
    return sum;
}

}  // namespace shop
