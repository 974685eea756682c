// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/spread_table.h"

#include <algorithm>
#include <cmath>

#include "spread/spread_words.h"
#include "units/joined.h"
#include "units/text.h"

namespace commands {

using units::joined;

namespace {

std::string causesText(const spread::VarianceShares& shares, const std::vector<spread::Cause>& causes) {
    constexpr std::size_t most = 3;
    constexpr double least = 0.01;
    if (!shares.enough) return "too few units to tell what causes it, or it does not vary";
    const auto order = spread::rankedCauses(shares, least);
    std::string text;
    for (std::size_t i = 0; i < std::min(most, order.size()); ++i)
        text += joined({i > 0 ? ", " : "", causes[order[i]].name, " ",
                        units::write(units::Kind::Share, shares.share[order[i]], 2)});
    return joined({"variance by ", text.empty() ? "no single cause" : text, " (regression explains ",
                   units::write(units::Kind::Share, shares.explained, 3), ")"});
}

void addColumn(const spread::Head& head, const spread::Summary& summary, std::size_t k, std::string& text) {
    const auto& sum = summary.columns[k];
    text += spread::columnWords(head.columns[k]) + "\n";
    if (sum.yield) text += "    " + spread::yieldWords(*sum.yield) + "\n";
    if (sum.occurs == 0) {
        text += "    occurs in no unit\n";
        return;
    }
    const std::string nominal =
        head.columns[k].nominal ? spread::valueWords(head.columns[k], *head.columns[k].nominal) : "none";
    text += joined({"    nominal ", nominal, "; middle ", spread::valueWords(head.columns[k], sum.quantiles[3]),
                    ", 5 to 95 %: ", spread::valueWords(head.columns[k], sum.quantiles[1]), " to ",
                    spread::valueWords(head.columns[k], sum.quantiles[5]), "\n"});
    if (sum.occurs < head.units)
        text += joined({"    occurs in ", std::to_string(sum.occurs), " of ", std::to_string(head.units), " units\n"});
    text += joined({"    ", spread::limitsWords(head.columns[k], sum.limits), "\n    ",
                    causesText(sum.shares, summary.causes), "\n"});
}

}  // namespace

std::string spreadTable(const spread::Head& head, const spread::Summary& summary) {
    std::string text = joined({head.design, ": ", std::to_string(head.units), " units in lots of ",
                               std::to_string(head.lotSize), ", seed ", std::to_string(head.seed), "\n\n"});
    for (std::size_t k = 0; k < head.columns.size(); ++k) addColumn(head, summary, k, text);
    if (summary.together) text += joined({"\nall promises together: ", spread::yieldWords(*summary.together), "\n"});
    if (head.expansion.units > 0) {
        text += joined({"\nfields by expansion about the nominal; ", std::to_string(head.expansion.units),
                        " units against fields of their own are off by at most\n"});
        for (std::size_t k = 0; k < head.columns.size(); ++k)
            text +=
                joined({"    ", head.columns[k].name, "  ",
                        head.expansion.worst[k] < 0 ? std::string("occurs one way alone")
                                                    : spread::differenceWords(head.columns[k], head.expansion.worst[k]),
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
        text += joined({"\n", spread::columnWords(head.columns[c]), "\n"});
        for (std::size_t i = 0; i < std::min(most, slopes[c].size()); ++i) {
            const auto& slope = slopes[c][i];
            if (!std::isfinite(slope.effect) || slope.effect == 0) continue;
            text += joined({"    ", slope.effect < 0 ? "" : "+", spread::differenceWords(head.columns[c], slope.effect),
                            "  ", head.varying[slope.varying].name, "\n"});
        }
    }
    return text;
}

}  // namespace commands
