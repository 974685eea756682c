// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright compare DESIGN MEASURED [--hook-up NAME] [--port NAME] [--curve KIND] [--csv F] [--columns F,V,A]
//     [--emf V] [--relative-to HZ]
#include "analysis/answer.h"
#include "commands/measured_file.h"
#include "commands/verb.h"
#include "exchange/write_file.h"
#include "measured/comparison.h"
#include "units/fault.h"

namespace commands {

namespace {

/// All measured frequencies, or none where they are more than a design is quickly computed at.
std::vector<double> frequenciesOf(const std::vector<measured::MeasuredCurve>& curves) {
    constexpr std::size_t most = 2000;
    const auto& frequencies = curves.front().frequency;
    return frequencies.size() <= most ? frequencies : std::vector<double>{};
}

}  // namespace

std::string compareMeasured(const std::vector<std::string>& typed) {
    const Arguments arguments =
        sorted(typed, {{"DESIGN", "MEASURED"},
                       {},
                       {"--hook-up", "--port", "--curve", "--csv", "--columns", "--emf", "--relative-to"}});
    const auto wanted = curveAsked(arguments);
    const auto relativeTo = positiveOption(arguments, "--relative-to", units::Kind::Frequency);
    const Opened opened = openDesign(arguments.operands[0]);
    const std::string hookUpName = knownHookUp(*opened.design, arguments.option("--hook-up"));
    const design::HookUp& hookUp = hookUpNamed(*opened.design, hookUpName);
    const std::string side = sideOfPort(hookUp, arguments.option("--port"));
    auto measured = readMeasuredFile(arguments.operands[1], hookUp, arguments);
    std::erase_if(measured.curves, [&](const auto& curve) { return wanted && curve.kind != *wanted; });
    if (measured.curves.empty()) units::refuse(arguments.operands[1], "no such curve", "a file that has one");
    analysis::Question question;
    question.hookUp = hookUpName;
    question.everyHookUp = false;
    question.frequencies = frequenciesOf(measured.curves);
    const auto answer = analysis::answer(*opened.design, opened.shop, {}, {}, question);
    std::string text;
    for (const auto& remark : measured.remarks) text += remark + "\n";
    std::vector<measured::Comparison> all;
    for (const auto& curve : measured.curves) {
        all.push_back(measured::comparison(curve, *answer, side, relativeTo, arguments.operands[1]));
        text += measured::comparisonWords(all.back());
    }
    if (const std::string file = arguments.option("--csv"); !file.empty()) {
        exchange::writeFile(file, measured::comparisonCsv(all));
        text += file + "\n";
    }
    return text;
}

}  // namespace commands
