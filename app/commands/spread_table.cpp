// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/spread_table.h"

#include <algorithm>
#include <cmath>

#include "units/joined.h"
#include "units/text.h"

namespace commands {

using units::joined;

namespace {

std::string valueText(const spread::Head& head, std::size_t column, double value) {
    if (!std::isfinite(value)) return "none";
    return units::write(units::kindOfUnit(head.columns[column].unit), value);
}

/// A difference: levels with digits of their own, since a hundredth of a decibel is too coarse for it.
std::string differenceText(const spread::Head& head, std::size_t column, double value) {
    const std::string& unit = head.columns[column].unit;
    if (unit != "dB" && unit != "dBu") return valueText(head, column, value);
    return units::significant(value, 3) + " dB";
}

std::string percent(double share) {
    return units::write(units::Kind::Share, share, share > 0.9 && share < 1 ? 4 : 3);
}

std::string nameOf(const spread::Head& head, std::size_t column) {
    const auto& c = head.columns[column];
    if (c.promise < 0) return c.name;
    return c.mask ? c.text + ", margin" : c.text;
}

std::string yieldText(const spread::Yield& yield) {
    if (yield.judged == 0) return "not judged";
    const double share = static_cast<double>(yield.kept) / static_cast<double>(yield.judged);
    return joined({percent(share), " kept (95 % interval ", percent(yield.interval.low), " to ",
                   percent(yield.interval.high), ")"});
}

std::string limitsText(const spread::Head& head, std::size_t column, const spread::Limits& limits) {
    if (!limits.missing.empty()) return "no limits: " + limits.missing;
    std::string text = joined({percent(limits.coverage), " of all units"});
    if (limits.low) text += " above " + valueText(head, column, *limits.low);
    if (limits.low && limits.high) text += " and";
    if (limits.high) text += " below " + valueText(head, column, *limits.high);
    return joined({text, " with ", percent(limits.confidence), " confidence; measured to ",
                   valueText(head, column, limits.guard), " either way"});
}

std::string causesText(const spread::VarianceShares& shares, const std::vector<spread::Cause>& causes) {
    constexpr std::size_t most = 3;
    constexpr double least = 0.01;
    if (!shares.enough) return "too few units to tell what causes it, or it does not vary";
    std::vector<std::size_t> order;
    for (std::size_t k = 0; k < causes.size(); ++k)
        if (shares.share[k] >= least) order.push_back(k);
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return shares.share[a] > shares.share[b]; });
    std::string text;
    for (std::size_t i = 0; i < std::min(most, order.size()); ++i)
        text += joined({i > 0 ? ", " : "", causes[order[i]].name, " ",
                        units::write(units::Kind::Share, shares.share[order[i]], 2)});
    return joined({"variance by ", text.empty() ? "no single cause" : text, " (regression explains ",
                   units::write(units::Kind::Share, shares.explained, 3), ")"});
}

void addColumn(const spread::Head& head, const spread::Summary& summary, std::size_t k, std::string& text) {
    const auto& sum = summary.columns[k];
    text += nameOf(head, k) + "\n";
    if (sum.yield) text += "    " + yieldText(*sum.yield) + "\n";
    if (sum.occurs == 0) {
        text += "    occurs in no unit\n";
        return;
    }
    const std::string nominal = head.columns[k].nominal ? valueText(head, k, *head.columns[k].nominal) : "none";
    text += joined({"    nominal ", nominal, "; middle ", valueText(head, k, sum.quantiles[3]), ", 5 to 95 %: ",
                    valueText(head, k, sum.quantiles[1]), " to ", valueText(head, k, sum.quantiles[5]), "\n"});
    if (sum.occurs < head.units)
        text += joined({"    occurs in ", std::to_string(sum.occurs), " of ", std::to_string(head.units), " units\n"});
    text += joined({"    ", limitsText(head, k, sum.limits), "\n    ", causesText(sum.shares, summary.causes), "\n"});
}

}  // namespace

std::string spreadTable(const spread::Head& head, const spread::Summary& summary) {
    std::string text = joined({head.design, ": ", std::to_string(head.units), " units in lots of ",
                               std::to_string(head.lotSize), ", seed ", std::to_string(head.seed), "\n\n"});
    for (std::size_t k = 0; k < head.columns.size(); ++k) addColumn(head, summary, k, text);
    if (summary.together) text += joined({"\nall promises together: ", yieldText(*summary.together), "\n"});
    if (head.expansion.units > 0) {
        text += joined({"\nfields by expansion about the nominal; ", std::to_string(head.expansion.units),
                        " units against fields of their own are off by at most\n"});
        for (std::size_t k = 0; k < head.columns.size(); ++k)
            text += joined({"    ", head.columns[k].name, "  ",
                            head.expansion.worst[k] < 0 ? std::string("occurs one way alone")
                                                        : differenceText(head, k, head.expansion.worst[k]),
                            "\n"});
    }
    text += joined({"\n", std::to_string(head.varying.size()),
                    " numbers vary; limits take units as independent of each other. Tolerances are those of the "
                    "resources, the shop and this design; --json names each with its source.\n"});
    return text;
}

std::string sensitivityTable(const spread::Head& head, const std::vector<std::vector<spread::Slope>>& slopes) {
    constexpr std::size_t most = 8;
    std::string text = head.design + ": effect of one standard deviation of each number\n";
    for (std::size_t c = 0; c < slopes.size(); ++c) {
        text += joined({"\n", nameOf(head, c), "\n"});
        for (std::size_t i = 0; i < std::min(most, slopes[c].size()); ++i) {
            const auto& slope = slopes[c][i];
            if (!std::isfinite(slope.effect) || slope.effect == 0) continue;
            text += joined({"    ", slope.effect < 0 ? "" : "+", differenceText(head, c, slope.effect), "  ",
                            head.varying[slope.varying].name, "\n"});
        }
    }
    return text;
}

}  // namespace commands
