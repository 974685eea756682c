// SPDX-License-Identifier: GPL-3.0-or-later
#include "spread/spread_words.h"

#include <algorithm>
#include <cmath>

#include "json/enum_word.h"
#include "units/joined.h"
#include "units/text.h"

namespace spread {

using units::joined;

std::string columnWords(const analysis::Column& column) {
    if (column.promise < 0) return column.name;
    return column.mask ? column.text + ", margin" : column.text;
}

std::string valueWords(const analysis::Column& column, double value) {
    return std::isfinite(value) ? units::write(units::kindOfUnit(column.unit), value) : "none";
}

std::string differenceWords(const analysis::Column& column, double value) {
    if (column.unit != "dB" && column.unit != "dBu") return valueWords(column, value);
    constexpr int digits = 3;
    return units::significant(value, digits) + " dB";
}

std::string percentWords(double share) {
    constexpr double nearlyAll = 0.9;
    return units::write(units::Kind::Share, share, share > nearlyAll && share < 1 ? 4 : 3);
}

std::string yieldWords(const Yield& yield) {
    if (yield.judged == 0) return "not judged";
    const double share = static_cast<double>(yield.kept) / static_cast<double>(yield.judged);
    return joined({percentWords(share), " kept (95 % interval ", percentWords(yield.interval.low), " to ",
                   percentWords(yield.interval.high), ")"});
}

std::string limitsWords(const analysis::Column& column, const Limits& limits) {
    if (!limits.missing.empty()) return "no limits: " + limits.missing;
    std::string text = joined({percentWords(limits.coverage), " of all units"});
    if (limits.low) text += " above " + valueWords(column, *limits.low);
    if (limits.low && limits.high) text += " and";
    if (limits.high) text += " below " + valueWords(column, *limits.high);
    return joined({text, " with ", percentWords(limits.confidence), " confidence; measured to ",
                   valueWords(column, limits.guard), " either way"});
}

std::vector<std::size_t> rankedCauses(const VarianceShares& shares, double least) {
    std::vector<std::size_t> order;
    for (std::size_t k = 0; k < shares.share.size(); ++k)
        if (shares.share[k] >= least) order.push_back(k);
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return shares.share[a] > shares.share[b]; });
    return order;
}

std::string varyingWords(const Varying& varying) {
    constexpr int digits = 3;
    const std::string law = json::wordOf(varying.law.kind);
    std::string text = joined({varying.name, ": ", units::significant(varying.nominal, digits), ", ", law});
    if (varying.law.kind != catalog::Law::Discrete)
        text += joined({", ± ", varying.law.relative ? units::write(units::Kind::Share, varying.law.halfWidth, digits)
                                                     : units::significant(varying.law.halfWidth, digits)});
    if (varying.lotShare > 0)
        text += joined({", ", units::write(units::Kind::Share, varying.lotShare, 2), " of its variance by lot"});
    if (!varying.source.empty() && varying.source != varying.status) text += "; " + varying.source;
    if (!varying.status.empty()) text += joined({"; ", varying.status});
    return joined({text, " (", varying.place, ")"});
}

}  // namespace spread
