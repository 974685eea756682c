// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright figures DESIGN [--json [--layers]] [--shields] [--hook-up NAME]
#include <algorithm>
#include <cmath>

#include "analysis/answer.h"
#include "analysis/most_rejection.h"
#include "analysis/shield_cost.h"
#include "commands/arguments.h"
#include "commands/verb.h"
#include "exchange/figures_json.h"
#include "exchange/stage_json.h"
#include "json/text.h"
#include "plots/result_words.h"
#include "units/text.h"

namespace commands {

namespace {

std::string asJson(const Opened& opened, const analysis::Answer& answer, bool layers) {
    json::Value all;
    all["design"] = opened.design->name;
    all["digest"] = opened.digest;
    all["program"] = programName();
    all["figures"] = exchange::figuresJson(answer.figures);
    if (layers) all.update(exchange::layersJson(answer));
    return json::write(all);
}

std::size_t columns(const std::string& utf8) {
    return static_cast<std::size_t>(std::count_if(utf8.begin(), utf8.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

std::string padded(const std::string& text, std::size_t width) {
    const std::size_t used = columns(text);
    return used < width ? text + std::string(width - used, ' ') : text;
}

std::string valueText(const units::Figure& figure) {
    if (!std::isfinite(figure.value)) return "none";
    if (analysis::isOverMost(figure)) return "over " + units::write(units::Kind::Decibel, figure.value, 2);
    return units::writeWithUncertainty(units::kindOfUnit(figure.unit), figure.value, figure.uncertainty);
}

std::string asText(const Opened& opened, const analysis::Answer& answer) {
    std::size_t nameWidth = 0, valueWidth = 0;
    for (const units::Figure& figure : answer.figures) {
        nameWidth = std::max(nameWidth, columns(figure.name));
        valueWidth = std::max(valueWidth, columns(valueText(figure)));
    }
    std::string text = opened.design->name + ", revision " + opened.design->revision + "\n\n";
    for (const units::Figure& figure : answer.figures) {
        std::string line = padded(figure.name, nameWidth + 2) + padded(valueText(figure), valueWidth + 2) +
                           padded(plots::uncertaintyText(figure).toStdString(), 8);
        if (!figure.valid) line += "outside validity: " + figure.why;
        line.erase(line.find_last_not_of(' ') + 1);
        text += line + '\n';
    }
    if (!answer.promises.empty()) text += "\nPromises\n";
    for (const analysis::PromiseState& promise : answer.promises)
        text += std::string(analysis::word(promise.standing)) + ": " + promise.text + '\n';
    if (!answer.assumptions.empty()) text += "\nComputed with\n";
    for (const std::string& assumption : answer.assumptions) text += assumption + '\n';
    return text;
}

/// The design with and without each of its shields, side by side.
std::string shieldsText(const Opened& opened, const analysis::AnswerPtr& answer) {
    const auto rows = analysis::table(analysis::shieldCosts(*opened.design, opened.shop, answer));
    std::vector<std::size_t> widths(rows.front().size());
    for (const auto& row : rows)
        for (std::size_t k = 0; k < row.size(); ++k) widths[k] = std::max(widths[k], columns(row[k]));
    std::string text = opened.design->name + ", hook-up " + answer->hookUp + "\n\n";
    for (const auto& row : rows) {
        std::string line;
        for (std::size_t k = 0; k < row.size(); ++k) line += padded(row[k], widths[k] + 2);
        line.erase(line.find_last_not_of(' ') + 1);
        text += line + '\n';
    }
    return text;
}

}  // namespace

std::string figures(const std::vector<std::string>& typed) {
    const Arguments arguments = sorted(typed, {{"DESIGN"}, {"--json", "--layers", "--shields"}, {"--hook-up"}});
    const Opened opened = openDesign(arguments.operands.front());
    analysis::Question question;
    question.hookUp = knownHookUp(*opened.design, arguments.option("--hook-up"));
    question.everyHookUp = question.hookUp.empty();
    const bool shields = arguments.flags.contains("--shields");
    if (shields && arguments.flags.contains("--json")) refuse("--shields", "--json beside it", "one of the two");
    if (shields) question.everyHookUp = false;
    const analysis::AnswerPtr answer = analysis::answer(*opened.design, opened.shop, {}, {}, question);
    if (shields) return shieldsText(opened, answer);
    const bool layers = arguments.flags.contains("--layers");
    if (layers && !arguments.flags.contains("--json"))
        refuse("--layers", "no --json beside it", "figures DESIGN --json --layers");
    return arguments.flags.contains("--json") ? asJson(opened, *answer, layers) : asText(opened, *answer);
}

}  // namespace commands
