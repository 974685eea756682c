// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright pair A B --to DIR [--hook-up NAME] [--from HZ --to HZ --points N | --at FILE]
#include <cmath>

#include "analysis/answer.h"
#include "commands/arguments.h"
#include "commands/verb.h"
#include "design/difference.h"
#include "exchange/write_file.h"
#include "plots/trace_csv.h"
#include "units/csv_cell.h"
#include "units/text.h"

namespace commands {

namespace {

std::string differencesText(const Opened& a, const Opened& b, const std::vector<std::string>& paths) {
    std::string text = "A: " + paths[0] + ", " + a.design->name + ", revision " + a.design->revision +
                       "\nB: " + paths[1] + ", " + b.design->name + ", revision " + b.design->revision + "\n\n";
    const std::vector<std::string> lines = design::differences(*a.design, *b.design);
    for (const std::string& line : lines) text += line + '\n';
    if (lines.empty()) text += "The designs are the same.\n";
    return text;
}

const units::Figure* sameFigure(const analysis::Answer& answer, const units::Figure& like) {
    for (const units::Figure& figure : answer.figures)
        if (figure.name == like.name && figure.hookUp == like.hookUp) return &figure;
    return nullptr;
}

std::string figureLine(const units::Figure& named, const units::Figure* a, const units::Figure* b) {
    using units::csvCell;
    return csvCell(named.name) + ',' + csvCell(named.unit) + ',' + (a ? csvCell(a->value) : "") + ',' +
           (b ? csvCell(b->value) : "") + ',' + (a && b ? csvCell(b->value - a->value) : "") + '\n';
}

std::string figuresCsv(const analysis::Answer& a, const analysis::Answer& b) {
    std::string text = "figure,unit,A,B,difference\n";
    for (const units::Figure& figure : a.figures) text += figureLine(figure, &figure, sameFigure(b, figure));
    for (const units::Figure& figure : b.figures)
        if (!sameFigure(a, figure)) text += figureLine(figure, nullptr, &figure);
    return text;
}

std::string responseCsv(const analysis::Trace& a, const analysis::Trace& b) {
    std::string head = "frequency_Hz";
    std::vector<std::pair<const analysis::Curve*, const analysis::Curve*>> curves;
    for (const analysis::Curve& curve : a.curves)
        if (const analysis::Curve* other = b.curve(curve.name);
            other && curve.y.size() == other->y.size() && !curve.y.empty()) {
            curves.emplace_back(&curve, other);
            head += ',' + curve.name + "_A," + curve.name + "_B," + curve.name + "_difference";
        }
    std::string text = head + '\n';
    for (std::size_t i = 0; i < a.frequency.size(); ++i) {
        text += units::shortest(a.frequency[i]);
        for (const auto& [one, other] : curves)
            text += ',' + units::csvCell(one->y[i]) + ',' + units::csvCell(other->y[i]) + ',' +
                    units::csvCell(other->y[i] - one->y[i]);
        text += '\n';
    }
    return text;
}

}  // namespace

std::string pair(const std::vector<std::string>& typed) {
    Grammar grammar{{"A", "B"}, {}, {"--hook-up"}};
    allowGrid(grammar);
    const Arguments arguments = sorted(typed, grammar);
    const std::string folder = folderOf(arguments);
    analysis::Question question;
    question.frequencies = gridOf(arguments);
    const Opened a = openDesign(arguments.operands[0]), b = openDesign(arguments.operands[1]);
    const std::string asked = arguments.option("--hook-up");
    question.hookUp = knownHookUp(*a.design, asked);
    const analysis::AnswerPtr first = analysis::answer(*a.design, a.shop, {}, {}, question);
    question.hookUp = knownHookUp(*b.design, asked);
    const analysis::AnswerPtr second = analysis::answer(*b.design, b.shop, first, {}, question);
    makeFolder(folder);
    std::string written;
    const auto put = [&](const std::string& name, const std::string& content) {
        exchange::writeFile(folder + '/' + name, content);
        written += folder + '/' + name + '\n';
    };
    put("differences.txt", differencesText(a, b, arguments.operands));
    put("figures.csv", figuresCsv(*first, *second));
    const analysis::Trace* before = first->trace("response");
    const analysis::Trace* after = second->trace("response");
    if (before && after) put("response.csv", responseCsv(*before, *after));
    return written;
}

}  // namespace commands
