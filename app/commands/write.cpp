// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright write DESIGN [--PAPER F.pdf]… [--paper a4|letter] [--measures mm|inch] [--language en|de]
// [--prices F.csv [--yield UNITS]] [--limits F.csv] [--fixture F.json] [--since N|DESIGN [--reason R] [--notice N]]
// [--netlist F.cir [--terminals-only]] [--touchstone F.sNp] [--hook-up NAME] [--program F] [--step-table F.csv]
// [--winder NAME] [--leg 1|2]
#include "analysis/answer.h"
#include "commands/arguments.h"
#include "commands/shop_papers.h"
#include "commands/verb.h"
#include "commands/winding.h"
#include "exchange/netlist.h"
#include "exchange/terminal_netlist.h"
#include "exchange/touchstone.h"
#include "exchange/write_file.h"
#include "units/fault.h"

namespace commands {

namespace {

/// Files for other programs that are written of the design's answer.
std::string writeAnswered(const Arguments& arguments, const Opened& opened) {
    const std::string netlist = arguments.option("--netlist"), touchstone = arguments.option("--touchstone");
    analysis::Question question;
    question.hookUp = knownHookUp(*opened.design, arguments.option("--hook-up"));
    const analysis::AnswerPtr answer = analysis::answer(*opened.design, opened.shop, {}, {}, question);
    std::string written;
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
                    {"--netlist", "--touchstone", "--hook-up", "--program", "--step-table", "--winder", "--leg"}};
    grammar.options.insert(paperOptions().begin(), paperOptions().end());
    const Arguments arguments = sorted(typed, grammar);
    const std::string program = arguments.option("--program"), table = arguments.option("--step-table");
    const bool winds = !program.empty() || !table.empty();
    const bool asks = !arguments.option("--netlist").empty() || !arguments.option("--touchstone").empty();
    const bool paper = asksForPapers(arguments);
    if (!asks && !winds && !paper)
        refuse("write", "nothing to write",
               "--datasheet F.pdf, --quotation F.pdf, --netlist F.cir, --touchstone F.sNp, --winding-sheet F.pdf, "
               "--traveller F.pdf, --bill F.csv, --test-plan F.pdf, --limits F.csv, --first-article F.pdf, "
               "--deviation-permit F.pdf, --return-report F.pdf, --change-notice F.pdf, --customer-notice F.pdf, "
               "--program F or --step-table F.csv");
    if (!winds && (!arguments.option("--winder").empty() || !arguments.option("--leg").empty()))
        refuse("--winder", "no program or table to write", "it beside --program F or --step-table F.csv");
    if (arguments.flags.contains("--terminals-only") && arguments.option("--netlist").empty())
        refuse("--terminals-only", "no netlist to write", "it beside --netlist F.cir");
    const papers::Format format = formatOf(arguments.option("--paper"));
    const Opened opened = openDesign(arguments.operands.front());
    std::string written;
    if (paper) written += writePapers(arguments, opened, format);
    if (asks) written += writeAnswered(arguments, opened);
    if (winds)
        written += writeWinding(*opened.design, opened.shop, program, table, arguments.option("--winder"),
                                arguments.option("--leg"));
    return written;
}

}  // namespace commands
