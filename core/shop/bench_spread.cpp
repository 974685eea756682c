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

/// A unit answered in each hook-up of the bench, at as few frequencies as the readings need. What is slow and not read
/// is the base unit's.
class Reader {
public:
    Reader(const design::Design& base, const catalog::Catalog& shop, const BenchQuestion& asked)
        : shop_(shop), asked_(asked) {
        std::set<double> all(asked.response.begin(), asked.response.end());
        all.insert(1000);
        question_.frequencies.assign(all.begin(), all.end());
        question_.everyHookUp = false;
        question_.quick = true;
        for (const auto& hookUp : base.hookUps) {
            question_.hookUp = hookUp.name;
            base_.push_back(analysis::answer(base, shop, base_.empty() ? nullptr : base_.front(), {}, question_));
        }
    }
    [[nodiscard]] Readings of(const design::Design& unit, bool distorts) const {
        Readings readings;
        for (std::size_t k = 0; k < base_.size(); ++k) {
            analysis::Question question = question_;
            question.hookUp = base_[k]->hookUp;
            const auto answer = analysis::answer(unit, shop_, base_[k], {}, question);
            for (const auto& figure : answer->figures)
                readings.figures[k == 0 ? figure.name : figure.name + "@" + answer->hookUp] = figure.value;
            if (k == 0) first(unit, *answer, distorts, readings);
        }
        return readings;
    }
    [[nodiscard]] std::set<std::string> figures() const {
        std::set<std::string> names;
        for (std::size_t k = 0; k < base_.size(); ++k)
            for (const auto& figure : base_[k]->figures)
                if (std::isfinite(figure.value))
                    names.insert(k == 0 ? figure.name : figure.name + "@" + base_[k]->hookUp);
        return names;
    }

private:
    void first(const design::Design& unit, const analysis::Answer& answer, bool distorts, Readings& readings) const {
        const auto* trace = answer.trace("response");
        const bool responds = trace != nullptr && !trace->curves.empty();
        const auto level = [&](double f) { return responds ? valueAt(*trace, trace->curves.front(), f) : none; };
        for (const double f : asked_.response) readings.response.push_back(level(f) - level(1000));
        if (!distorts) return;
        for (const auto& row : analysis::distortionTable(unit, answer, asked_.distortion, {asked_.level}))
            readings.distortion.push_back(20 * std::log10(row.thd));
    }

    const catalog::Catalog& shop_;
    const BenchQuestion& asked_;
    analysis::Question question_;
    std::vector<analysis::AnswerPtr> base_;
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

BenchSpread benchSpread(const Bench& bench, const catalog::Catalog& shop, const catalog::Tolerances& tolerances,
                        const BenchQuestion& question) {
    catalog::Tolerances made = tolerances;
    for (const char* key : {"turns_mistakes", "source_impedance", "load_impedance", "load_capacitance", "temperature"})
        made.erase(key);
    const spread::Variation variation = spread::variationOf(bench.design, shop, made);
    std::vector<double> nominal;
    for (const auto& v : variation.all) nominal.push_back(v.nominal);
    const Reader reader(*variation.base, shop, question);
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
    for (const auto& name : reader.figures()) sum.figures[name] = 0;
    sum.response.assign(question.response.size(), 0);
    sum.distortion.assign(question.distortion.size(), 0);
    for (std::size_t k = 0; k < nominal.size(); ++k) take(sum, above[k], below[k]);
    finish(sum);
    return sum;
}

}  // namespace shop
