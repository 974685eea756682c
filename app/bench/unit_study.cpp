// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/unit_study.h"

#include <algorithm>
#include <future>

namespace bench {

namespace {

/// The plan's limits where they are this part's and in the readings' unit.
std::optional<shop::RecordedLimits> limitsFor(const StudyAsked& asked, const std::string& test,
                                              const std::string& unit) {
    if (!asked.plan || asked.filter.part != asked.plan->part) return {};
    const std::string stage = asked.filter.stage == "return" ? std::string() : asked.filter.stage;
    auto limits = shop::recordedLimits(asked.plan->plan, test, stage);
    return limits && limits->unit == unit ? limits : std::nullopt;
}

TestStudy testStudy(records::Store& store, const StudyAsked& asked, const std::string& test) {
    TestStudy study;
    study.test = test;
    study.series = store.series(test, asked.filter);
    auto values = study.series.values;
    study.summary = spread::described(values);
    study.limits = limitsFor(asked, test, study.series.unit);
    if (study.series.values.size() < 2) return study;
    study.spread = measured::distributionOf(study.series.values);
    study.chart = measured::individualsChart(study.series.values);
    if (study.limits)
        study.capability = measured::capability(study.spread->sample, study.limits->low, study.limits->high);
    return study;
}

}  // namespace

UnitStudyPtr unitStudy(const StudyAsked& asked) {
    records::Store store(asked.file);
    auto study = std::make_shared<UnitStudy>();
    // Beside the readings, on a connection of its own: each takes about half of the time.
    auto counted = std::async(std::launch::async, [&asked, &study] {
        records::Store own(asked.file);
        study->counts = own.count(asked.filter);
        study->numbers = own.numbers(asked.filter);
        study->causes = measured::pareto(own.causes(asked.filter));
    });
    study->tests = store.tests(asked.filter);
    if (!study->tests.empty()) {
        const bool known = std::any_of(study->tests.begin(), study->tests.end(),
                                       [&](const auto& one) { return one.first == asked.test; });
        study->test = testStudy(store, asked, known ? asked.test : study->tests.front().first);
    }
    counted.get();
    return study;
}

}  // namespace bench
