// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright traces DESIGN --to DIR [--hook-up NAME] [--from HZ --to HZ --points N | --at FILE] [--pictures]
#include "analysis/answer.h"
#include "bench/theme.h"
#include "commands/arguments.h"
#include "commands/verb.h"
#include "exchange/write_file.h"
#include "plots/plot_pane.h"
#include "plots/trace_csv.h"

namespace commands {

namespace {

constexpr QSize pictureSize(720, 440);

std::string picture(const std::string& trace, const analysis::AnswerPtr& answer, const design::DesignPtr& design) {
    plots::Plot plot({trace, {}, trace == "response" ? "deg" : ""});
    plot.resize(pictureSize);
    plot.showAnswer(answer, design);
    return plots::plotPng(plot, pictureSize);
}

/// 20 frequencies from 20 Hz to 20 kHz at 20 levels up to 24 dB above the operating level.
std::string distortion(const design::Design& design, const analysis::Answer& answer) {
    constexpr int count = 20;
    std::vector<double> levels;
    levels.reserve(count);
    for (int i = 0; i < count; ++i) levels.push_back(design.brief.operatingLevel + 24 - 3.0 * (count - 1 - i));
    return plots::distortionCsv(
        analysis::distortionTable(design, answer, analysis::logarithmicGrid(20, 20e3, count), levels));
}

}  // namespace

std::string traces(const std::vector<std::string>& typed) {
    Grammar grammar{{"DESIGN"}, {"--pictures"}, {"--hook-up"}};
    allowGrid(grammar);
    const Arguments arguments = sorted(typed, grammar);
    const std::string folder = folderOf(arguments);
    analysis::Question question;
    question.frequencies = gridOf(arguments);
    question.everyHookUp = false;
    const Opened opened = openDesign(arguments.operands.front());
    question.hookUp = knownHookUp(*opened.design, arguments.option("--hook-up"));
    const analysis::AnswerPtr answer = analysis::answer(*opened.design, opened.shop, {}, {}, question);
    makeFolder(folder);
    std::string written;
    const auto put = [&](const std::string& name, const std::string& content) {
        exchange::writeFile(folder + '/' + name, content);
        written += folder + '/' + name + '\n';
    };
    if (arguments.flags.contains("--pictures")) bench::applyLook(bench::Look::Light);
    for (const auto& trace : answer->traces) {
        const bool table = trace->name == "distortion";
        put(trace->name + ".csv", table ? distortion(*opened.design, *answer) : plots::traceCsv(*trace));
        if (arguments.flags.contains("--pictures"))
            put(trace->name + ".png", picture(trace->name, answer, opened.design));
    }
    return written;
}

}  // namespace commands
