// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/altered_lines.h"

#include <algorithm>

#include "shop/fetch_list.h"
#include "shop/paper_words.h"
#include "shop/sheet_words.h"
#include "units/joined.h"
#include "units/text.h"

namespace shop {

using units::joined;

namespace {

constexpr const char* sheetName = "winding sheet";

void addFacts(const std::string& place, const std::vector<Fact>& facts, std::vector<PaperLine>& lines) {
    for (const auto& fact : facts) lines.push_back({place, joined({fact.what, ": ", fact.words})});
}

void addStep(const WindingStep& step, std::vector<PaperLine>& lines) {
    const std::string place = joined({sheetName, ", step ", step.number});
    lines.push_back({place, step.title});
    addFacts(place, step.facts, lines);
    for (const auto& action : step.actions) {
        const std::string at = action.counter ? joined({"counter ", units::shortest(*action.counter), ": "}) : "";
        lines.push_back({place, at + action.words});
    }
    for (const auto& row : step.layers)
        lines.push_back({place, joined({"layer ", std::to_string(row.number),
                                        row.fromLow ? ", low to high: " : ", high to low: ", counted(row.turns, "turn"),
                                        ", counter ", units::shortest(row.counter)})});
    for (const auto& check : step.checks) lines.push_back({place, checkWords(check)});
}

}  // namespace

std::vector<PaperLine> linesOf(const WindingSheet& sheet) {
    std::vector<PaperLine> lines;
    addFacts(joined({sheetName, ", setting up"}), sheet.setUp, lines);
    for (const auto& row : fetchRows(sheet.materials))
        lines.push_back({joined({sheetName, ", to fetch"}), joined({row.what, ": ", row.amount})});
    addFacts(joined({sheetName, ", how it is done"}), sheet.rules, lines);
    for (const auto& step : sheet.steps) addStep(step, lines);
    const std::string finishing = joined({sheetName, ", finishing"});
    lines.push_back({finishing, "Sheet: " + sheet.finishing.outline});
    for (const auto& step : sheet.finishing.steps)
        for (const auto& words : step.words) lines.push_back({joined({finishing, " ", step.number}), words});
    for (const auto& words : sheet.finishing.cautions) lines.push_back({joined({sheetName, ", cautions"}), words});
    return lines;
}

std::vector<PaperLine> linesOf(const Bill& bill) {
    const std::string place = "bill of materials";
    std::vector<PaperLine> lines;
    for (const auto& line : bill.lines) {
        const std::string cost = line.cost ? joined({", ", fixed(*line.cost, 2), " ", bill.currency}) : "";
        lines.push_back({place, joined({line.part, " (", line.what, "): ", amountWords(line), cost})});
    }
    for (const auto& cost : bill.costs)
        lines.push_back({place + ", cost", joined({"one unit in a lot of ", std::to_string(cost.quantity), ": ",
                                                   fixed(cost.total, 2), " ", bill.currency})});
    return lines;
}

std::vector<AlteredLine> alteredLines(const std::vector<PaperLine>& before, const std::vector<PaperLine>& after) {
    std::vector<std::string> places;
    for (const auto* lines : {&before, &after})
        for (const auto& line : *lines)
            if (std::find(places.begin(), places.end(), line.place) == places.end()) places.push_back(line.place);
    const auto only = [](const std::string& place, const std::vector<PaperLine>& of,
                         const std::vector<PaperLine>& against) {
        std::vector<PaperLine> left = against;
        std::vector<std::string> words;
        for (const auto& line : of) {
            if (line.place != place) continue;
            if (const auto same = std::find(left.begin(), left.end(), line); same != left.end())
                left.erase(same);
            else
                words.push_back(line.words);
        }
        return words;
    };
    std::vector<AlteredLine> altered;
    for (const auto& place : places) {
        const auto gone = only(place, before, after), come = only(place, after, before);
        for (std::size_t k = 0; k < std::max(gone.size(), come.size()); ++k)
            altered.push_back({place, k < gone.size() ? gone[k] : "", k < come.size() ? come[k] : ""});
    }
    return altered;
}

std::vector<PaperLine> paperLines(const design::Design& design, const catalog::Catalog& shop, const Prices* prices) {
    auto lines = linesOf(windingSheet(design, shop, {}));
    for (auto& line : linesOf(bill(design, shop, {}, prices))) lines.push_back(std::move(line));
    return lines;
}

std::vector<AlteredLine> alteredLines(const design::Design& before, const design::Design& after,
                                      const catalog::Catalog& shop, const Prices* prices) {
    return alteredLines(paperLines(before, shop, prices), paperLines(after, shop, prices));
}

}  // namespace shop
