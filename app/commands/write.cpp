// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright write DESIGN --datasheet F.pdf [--paper a4|letter] [--hook-up NAME]
#include "analysis/answer.h"
#include "commands/arguments.h"
#include "commands/verb.h"
#include "papers/datasheet.h"
#include "units/fault.h"

namespace commands {

namespace {

papers::Format formatOf(const std::string& name) {
    if (name.empty() || name == "a4") return papers::Format::A4;
    if (name == "letter") return papers::Format::Letter;
    throw units::BadInput(units::Fault{"command line: --paper", '"' + name + '"', "a4 or letter"});
}

}  // namespace

std::string write(const std::vector<std::string>& typed) {
    const Arguments arguments = sorted(typed, {{"DESIGN"}, {}, {"--datasheet", "--paper", "--hook-up"}});
    const std::string path = arguments.option("--datasheet");
    if (path.empty())
        throw units::BadInput(units::Fault{"command line: --datasheet", "no file", "the PDF file to write"});
    const papers::Format format = formatOf(arguments.option("--paper"));
    const Opened opened = openDesign(arguments.operands.front());
    analysis::Question question;
    question.hookUp = knownHookUp(*opened.design, arguments.option("--hook-up"));
    const analysis::AnswerPtr answer = analysis::answer(*opened.design, opened.shop, {}, {}, question);
    papers::writeDatasheet(*opened.design, *answer, opened.shop, path, format);
    return path + '\n';
}

}  // namespace commands
