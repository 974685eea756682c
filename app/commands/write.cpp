// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright write DESIGN [--datasheet F.pdf [--paper a4|letter]] [--netlist F.cir [--terminals-only]]
// [--touchstone F.sNp] [--hook-up NAME]
#include "analysis/answer.h"
#include "commands/arguments.h"
#include "commands/verb.h"
#include "exchange/netlist.h"
#include "exchange/terminal_netlist.h"
#include "exchange/touchstone.h"
#include "exchange/write_file.h"
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
    const Arguments arguments = sorted(
        typed,
        {{"DESIGN"}, {"--terminals-only"}, {"--datasheet", "--netlist", "--touchstone", "--paper", "--hook-up"}});
    const std::string datasheet = arguments.option("--datasheet"), netlist = arguments.option("--netlist"),
                      touchstone = arguments.option("--touchstone");
    if (datasheet.empty() && netlist.empty() && touchstone.empty())
        throw units::BadInput(units::Fault{"command line: write", "nothing to write",
                                           "--datasheet F.pdf, --netlist F.cir or --touchstone F.sNp"});
    const bool terminalsOnly = arguments.flags.contains("--terminals-only");
    if (terminalsOnly && netlist.empty())
        throw units::BadInput(
            units::Fault{"command line: --terminals-only", "no netlist to write", "it beside --netlist F.cir"});
    const papers::Format format = formatOf(arguments.option("--paper"));
    const Opened opened = openDesign(arguments.operands.front());
    analysis::Question question;
    question.hookUp = knownHookUp(*opened.design, arguments.option("--hook-up"));
    const analysis::AnswerPtr answer = analysis::answer(*opened.design, opened.shop, {}, {}, question);
    std::string written;
    if (!datasheet.empty()) {
        papers::writeDatasheet(*opened.design, *answer, opened.shop, datasheet, format);
        written += datasheet + '\n';
    }
    const auto writeText = [&](const std::string& file, const std::string& text) {
        exchange::writeFile(file, text);
        written += file + '\n';
    };
    if (!netlist.empty())
        writeText(netlist, terminalsOnly ? exchange::terminalNetlist(*opened.design, *answer)
                                         : exchange::netlist(*opened.design, *answer));
    if (!touchstone.empty()) writeText(touchstone, exchange::touchstone(*opened.design, *answer, touchstone));
    return written;
}

}  // namespace commands
