// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright write DESIGN [--datasheet F.pdf [--paper a4|letter]] [--netlist F.cir [--terminals-only]]
// [--touchstone F.sNp] [--hook-up NAME] [--winding-sheet F.pdf]
// [--traveller F.pdf] [--bill F.csv [--prices F.csv]] [--program F] [--step-table F.csv] [--winder NAME]
// [--leg 1|2] [--test-plan F.pdf] [--limits F.csv] [--fixture F.json]
#include "analysis/answer.h"
#include "commands/arguments.h"
#include "commands/shop_papers.h"
#include "commands/verb.h"
#include "commands/winding.h"
#include "exchange/netlist.h"
#include "exchange/terminal_netlist.h"
#include "exchange/touchstone.h"
#include "exchange/write_file.h"
#include "papers/datasheet.h"
#include "units/fault.h"

namespace commands {

namespace {

/// What is written of the design's answer.
std::string writeAnswered(const Arguments& arguments, const Opened& opened, papers::Format format) {
    const std::string datasheet = arguments.option("--datasheet"), netlist = arguments.option("--netlist"),
                      touchstone = arguments.option("--touchstone");
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
        writeText(netlist, arguments.flags.contains("--terminals-only")
                               ? exchange::terminalNetlist(*opened.design, *answer)
                               : exchange::netlist(*opened.design, *answer));
    if (!touchstone.empty()) writeText(touchstone, exchange::touchstone(*opened.design, *answer, touchstone));
    return written;
}

}  // namespace

std::string write(const std::vector<std::string>& typed) {
    Grammar grammar{{"DESIGN"},
                    {"--terminals-only"},
                    {"--datasheet", "--netlist", "--touchstone", "--paper", "--hook-up", "--program", "--step-table",
                     "--winder", "--leg", "--prices", "--fixture"}};
    grammar.options.insert(shopPaperOptions().begin(), shopPaperOptions().end());
    const Arguments arguments = sorted(typed, grammar);
    const std::string program = arguments.option("--program"), table = arguments.option("--step-table");
    const bool winds = !program.empty() || !table.empty();
    const bool asks = !arguments.option("--datasheet").empty() || !arguments.option("--netlist").empty() ||
                      !arguments.option("--touchstone").empty();
    const bool shopPapers = asksForShopPapers(arguments);
    if (!asks && !winds && !shopPapers)
        throw units::BadInput(units::Fault{
            "command line: write", "nothing to write",
            "--datasheet F.pdf, --netlist F.cir, --touchstone F.sNp, --winding-sheet F.pdf, --traveller F.pdf, "
            "--bill F.csv, --test-plan F.pdf, --limits F.csv, --program F or --step-table F.csv"});
    if (!winds && (!arguments.option("--winder").empty() || !arguments.option("--leg").empty()))
        throw units::BadInput(units::Fault{"command line: --winder", "no program or table to write",
                                           "it beside --program F or --step-table F.csv"});
    if (arguments.flags.contains("--terminals-only") && arguments.option("--netlist").empty())
        throw units::BadInput(
            units::Fault{"command line: --terminals-only", "no netlist to write", "it beside --netlist F.cir"});
    const papers::Format format = formatOf(arguments.option("--paper"));
    const Opened opened = openDesign(arguments.operands.front());
    std::string written;
    if (asks) written += writeAnswered(arguments, opened, format);
    if (shopPapers) written += writeShopPapers(arguments, opened, format);
    if (winds)
        written += writeWinding(*opened.design, opened.shop, program, table, arguments.option("--winder"),
                                arguments.option("--leg"));
    return written;
}

}  // namespace commands
