// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/units_report.h"

#include <algorithm>

#include "measured/control_chart.h"
#include "measured/statistics.h"
#include "records/unit_table.h"
#include "shop/unit_verdict.h"
#include "spread/intervals.h"
#include "units/decimal.h"
#include "units/joined.h"
#include "units/text.h"

namespace commands {

namespace {

using units::joined;

constexpr int digits = 5;
constexpr std::size_t mostPoints = 10;

std::string inPercent(double share) {
    return units::fixedDecimals(100 * share, 1);
}

std::string number(double value, int significant = digits) {
    return units::significant(value, significant);
}

std::string plural(std::size_t count, const std::string& word) {
    return std::to_string(count) + " " + word + (count == 1 ? "" : "s");
}

std::string yieldLine(const records::Counts& counts) {
    const std::size_t judged = counts.passed + counts.failed;
    std::string text = joined({plural(counts.units, "record"), ", ", std::to_string(counts.passed), " passed, ",
                               std::to_string(counts.failed), " failed"});
    if (judged == 0) return text + "\n";
    const auto interval = spread::wilson(counts.passed, judged);
    return text + joined({": ", inPercent(static_cast<double>(counts.passed) / static_cast<double>(judged)),
                          " % kept (95 %: ", inPercent(interval.low), " to ", inPercent(interval.high), " %)\n"});
}

std::string causeLines(const std::vector<std::pair<std::string, std::size_t>>& causes) {
    std::string text;
    for (const auto& share : measured::pareto(causes))
        text += joined({"  ", share.cause.empty() ? "cause not told" : share.cause, ": ", std::to_string(share.units),
                        ", ", inPercent(share.share), " %, with those above ", inPercent(share.cumulative), " %\n"});
    return text.empty() ? text : "causes of failures\n" + text;
}

/// What is asked by hand, else what the test plan says.
exchange::PlanLimit limitsOf(const UnitsQuestion& question, const std::string& test, const std::string& unit) {
    const auto* planned = exchange::limitOf(question.limits, test, shop::plannedStage(question.filter.stage));
    if (question.atLeast || question.atMost || planned == nullptr)
        return {{}, test, question.atLeast, question.atMost, unit};
    return *planned;
}

std::string capabilityLine(const measured::Sample& sample, const exchange::PlanLimit& limit, const std::string& unit) {
    const bool any = limit.low || limit.high;
    if (any && limit.unit != unit)
        return joined(
            {"  the plan's limits are in ", limit.unit, ", the readings in ", unit, ": not held against each other\n"});
    const auto c = measured::capability(sample, limit.low, limit.high);
    if (!c) return {};
    std::string text = "  limits ";
    if (limit.low) text += "at least " + number(*limit.low) + " ";
    if (limit.high) text += "at most " + number(*limit.high) + " ";
    text += unit + ": ";
    if (c->cp)
        text += joined({"Cp ", number(*c->cp, 3), " (95 %: ", number(c->cpInterval.low, 3), " to ",
                        number(c->cpInterval.high, 3), "), "});
    return text + joined({"Cpk ", number(c->cpk, 3), " (95 %: ", number(c->cpkInterval.low, 3), " to ",
                          number(c->cpkInterval.high, 3), "), ", number(1e6 * c->outside, 3),
                          " of a million outside if normal\n"});
}

/// Serials of a point of the chart.
std::string pointName(const records::Series& series, std::size_t point, std::size_t subgroup) {
    const std::size_t first = point * subgroup;
    if (subgroup == 1) return series.serials[first];
    return joined({series.serials[first], " to ", series.serials[first + subgroup - 1]});
}

std::string chartLines(const records::Series& series, const UnitsQuestion& question) {
    const std::size_t n = question.subgroup;
    if (series.values.size() < 2 * std::max<std::size_t>(n, 1)) return {};
    const auto chart = n == 1 ? measured::individualsChart(series.values) : measured::meansChart(series.values, n);
    std::string text =
        joined({"  chart of ", n == 1 ? "single values" : "means of " + std::to_string(n), ": ", number(chart.line.low),
                " to ", number(chart.line.high), " ", series.unit, ", ranges up to ", number(chart.rangeLine.high),
                "; ", plural(chart.out.size() + chart.rangesOut.size(), "signal"), "\n"});
    if (question.outside) return text;
    for (std::size_t k = 0; k < std::min(mostPoints, chart.out.size()); ++k)
        text += joined({"    ", pointName(series, chart.out[k].point, n), ": ",
                        number(chart.points[chart.out[k].point]), " ", measured::words(chart.out[k].signal), "\n"});
    for (std::size_t k = 0; k < std::min(mostPoints, chart.rangesOut.size()); ++k)
        text += joined({"    ", pointName(series, chart.rangesOut[k].point + (n == 1 ? 1 : 0), n), ": range ",
                        number(chart.ranges[chart.rangesOut[k].point]), " outside the limits\n"});
    const std::size_t hidden = chart.out.size() > mostPoints ? chart.out.size() - mostPoints : 0;
    return hidden == 0 ? text : text + joined({"    and ", std::to_string(hidden), " more\n"});
}

records::Series without(records::Series series, const std::string& serial) {
    records::Series rest{series.unit, {}, {}, {}};
    for (std::size_t k = 0; k < series.values.size(); ++k) {
        if (series.serials[k] == serial) continue;
        rest.serials.push_back(std::move(series.serials[k]));
        rest.times.push_back(std::move(series.times[k]));
        rest.values.push_back(series.values[k]);
    }
    return rest;
}

std::string testLines(const records::Series& series, const std::string& test, const UnitsQuestion& question) {
    const auto d = measured::distributionOf(series.values);
    std::string text = joined({test,
                               ": ",
                               plural(d.sample.count, "reading"),
                               ", mean ",
                               number(d.sample.mean),
                               " ",
                               series.unit,
                               " (95 %: ",
                               number(d.mean.low),
                               " to ",
                               number(d.mean.high),
                               "), standard deviation ",
                               number(d.sample.deviation, 3),
                               " (",
                               number(d.deviation.low, 3),
                               " to ",
                               number(d.deviation.high, 3),
                               "), from ",
                               number(d.sample.least),
                               " to ",
                               number(d.sample.greatest),
                               "\n"});
    if (!d.looksNormal())
        text += joined({"  not normally distributed (Anderson-Darling ", number(*d.andersonDarling, 3),
                        ", at most 0.752): Cpk and shares outside say little\n"});
    return text + capabilityLine(d.sample, limitsOf(question, test, series.unit), series.unit) +
           chartLines(series, question);
}

std::string driftLine(const records::Series& series, const std::string& test) {
    std::vector<double> days, values;
    for (std::size_t k = 0; k < series.values.size(); ++k)
        if (const auto day = records::dayOf(series.times[k])) {
            days.push_back(*day);
            values.push_back(series.values[k]);
        }
    const bool enough =
        days.size() >= 3 && *std::min_element(days.begin(), days.end()) < *std::max_element(days.begin(), days.end());
    if (!enough) return joined({"reference unit, ", test, ": three readings with their time or more are needed\n"});
    const auto d = measured::drift(days, values);
    return joined({"reference unit, ", test, ": ", plural(values.size(), "reading"), ", ", number(d.perDay, 3), " +- ",
                   number(d.half, 2), " ", series.unit, " a day, ", number(d.sinceFirst, 3), " since the first; ",
                   d.isReal ? "the fixture drifts" : "no drift that scatter would not explain", "\n"});
}

}  // namespace

std::string unitsReport(records::Store& store, const UnitsQuestion& question) {
    std::string text = yieldLine(store.count(question.filter));
    if (!question.outside) text += causeLines(store.causes(question.filter));
    for (const auto& [test, unit] : store.tests(question.filter)) {
        if (!question.test.empty() && test != question.test) continue;
        const auto series = without(store.series(test, question.filter), question.reference);
        if (!series.values.empty()) text += testLines(series, test, question);
        if (question.reference.empty()) continue;
        records::Filter reference = question.filter;
        reference.serial = question.reference;
        text += driftLine(store.series(test, reference), test);
    }
    return text;
}

}  // namespace commands
