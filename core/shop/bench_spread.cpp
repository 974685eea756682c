// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <limits>
#include <set>

#include "analysis/in_threads.h"
#include "shop/bench_prediction.h"
#include "shop/curve_value.h"
#include "spread/varying.h"

namespace shop {

namespace {

constexpr double none = std::numeric_limits<double>::quiet_NaN();

/// What is read of one unit.
struct Readings {
    std::map<std::string, double> figures;
    std::vector<double> response, distortion;
};

/// A unit answered in each hook-up of the bench, at as few frequencies as the readings need.
class Reader {
public:
    Reader(const design::Design& base, const catalog::Catalog& shop, const BenchQuestion& asked,
           const analysis::AnswerPtr& previous)
        : base_(base), shop_(shop), asked_(asked) {
        std::set<double> all(asked.response.begin(), asked.response.end());
        all.insert(1000);
        frequencies_.assign(all.begin(), all.end());
        previous_ = hookUpAnswer(base, base.hookUps.front(), shop, previous, frequencies_).answer;
    }
    [[nodiscard]] Readings of(const design::Design& unit, bool distorts) const {
        Readings readings;
        auto previous = previous_;
        for (std::size_t k = 0; k < unit.hookUps.size(); ++k) {
            const HookUpAnswer one = hookUpAnswer(unit, unit.hookUps[k], shop_, previous, frequencies_);
            for (const auto& figure : one.answer->figures)
                if (k == 0 || figure.hookUp == one.answer->hookUp)
                    readings.figures[figure.name + figureSuffix(unit, k)] = figure.value;
            if (k == 0) first(one, distorts, readings);
            previous = one.answer;
        }
        return readings;
    }
    /// Of the base unit.
    [[nodiscard]] Readings nominal() const { return of(base_, false); }

private:
    void first(const HookUpAnswer& one, bool distorts, Readings& readings) const {
        const auto* trace = one.answer->trace("response");
        const bool responds = trace != nullptr && !trace->curves.empty();
        const auto level = [&](double f) { return responds ? valueAt(*trace, trace->curves.front(), f) : none; };
        for (const double f : asked_.response) readings.response.push_back(level(f) - level(1000));
        if (!distorts) return;
        for (const auto& row : analysis::distortionTable(one.design, *one.answer, asked_.distortion, {asked_.level}))
            readings.distortion.push_back(20 * std::log10(row.thd));
    }

    const design::Design& base_;
    const catalog::Catalog& shop_;
    const BenchQuestion& asked_;
    std::vector<double> frequencies_;
    analysis::AnswerPtr previous_;
};

double squared(double above, double below) {
    const double change = (above - below) / 2;
    return change * change;
}

/// Adds what one number does.
void take(BenchSpread& sum, const Readings& above, const Readings& below) {
    for (auto& [name, width] : sum.figures) {
        const auto a = above.figures.find(name), b = below.figures.find(name);
        width += a == above.figures.end() || b == below.figures.end() ? none : squared(a->second, b->second);
    }
    for (std::size_t k = 0; k < sum.response.size(); ++k)
        sum.response[k] += squared(above.response[k], below.response[k]);
    for (std::size_t k = 0; k < sum.distortion.size() && k < above.distortion.size(); ++k)
        sum.distortion[k] += squared(above.distortion[k], below.distortion[k]);
}

void finish(BenchSpread& sum) {
    for (auto& [name, width] : sum.figures) width = coverage * std::sqrt(width);
    for (auto* all : {&sum.response, &sum.distortion})
        for (double& width : *all) width = coverage * std::sqrt(width);
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
    std::vector<double> nominal;
    nominal.reserve(variation.all.size());
    for (const auto& v : variation.all) nominal.push_back(v.nominal);
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
    for (const auto& [name, value] : reader.nominal().figures)
        if (std::isfinite(value)) sum.figures[name] = 0;
    sum.response.assign(question.response.size(), 0);
    sum.distortion.assign(question.distortion.size(), 0);
    for (std::size_t k = 0; k < nominal.size(); ++k) take(sum, above[k], below[k]);
    finish(sum);
    return sum;
}

}  // namespace shop
