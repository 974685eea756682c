// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/shop_papers.h"

#include <charconv>
#include <cmath>

#include "commands/paper_source.h"
#include "exchange/value_text.h"
#include "exchange/write_file.h"
#include "papers/paper_kinds.h"
#include "units/fault.h"

namespace commands {

namespace {

bool endsWith(const std::string& file, const std::string& ending) {
    return file.size() > ending.size() && file.compare(file.size() - ending.size(), ending.size(), ending) == 0;
}

std::string optionOf(const papers::PaperKind& kind) {
    return std::string("--") + kind.key;
}

/// Which endings a paper's file may have. The test plan's table is asked for as `--limits`.
bool hasTable(const papers::PaperKind& kind) {
    return std::string_view(kind.key) == "bill";
}

void checkEnding(const std::string& option, const std::string& file, bool table) {
    if (endsWith(file, ".pdf") || endsWith(file, ".json") || (table && endsWith(file, ".csv"))) return;
    refuse(option, '"' + file + '"', table ? "F.csv, F.pdf or F.json" : "F.pdf or F.json");
}

std::string writeMade(const papers::Made& made, const std::string& file) {
    if (endsWith(file, ".pdf")) {
        const QByteArray bytes = papers::paintedPdf(made.printed);
        exchange::writeFile(file, std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())));
    } else {
        exchange::writeFile(file, endsWith(file, ".csv") ? *made.table : exchange::valueText(made.content));
    }
    return file + '\n';
}

/// Refuses what stands beside no paper that it belongs to.
void expectBeside(const Arguments& arguments, const std::string& option, const std::vector<std::string>& papers,
                  const std::string& found, const std::string& allowed) {
    if (arguments.option(option).empty()) return;
    for (const std::string& paper : papers)
        if (!arguments.option(paper).empty()) return;
    refuse(option, found, allowed);
}

}  // namespace

papers::Format formatOf(const std::string& name) {
    if (name.empty() || name == "a4") return papers::Format::A4;
    if (name == "letter") return papers::Format::Letter;
    refuse("--paper", '"' + name + '"', "a4 or letter");
}

const std::set<std::string>& paperOptions() {
    static const std::set<std::string> all = [] {
        std::set<std::string> options{"--limits", "--paper", "--measures", "--language", "--prices",
                                      "--yield",  "--since", "--reason",   "--notice",   "--fixture"};
        for (const papers::PaperKind& kind : papers::paperKinds()) options.insert(optionOf(kind));
        return options;
    }();
    return all;
}

bool asksForPapers(const Arguments& arguments) {
    bool asks = !arguments.option("--limits").empty();
    for (const papers::PaperKind& kind : papers::paperKinds())
        if (const std::string file = arguments.option(optionOf(kind)); !file.empty()) {
            asks = true;
            checkEnding(optionOf(kind), file, hasTable(kind));
        }
    if (const std::string limits = arguments.option("--limits"); !limits.empty() && !endsWith(limits, ".csv"))
        refuse("--limits", '"' + limits + '"', "F.csv");
    for (const char* option : {"--prices", "--yield"})
        expectBeside(arguments, option, {"--bill", "--quotation"}, "no bill to write",
                     "it beside --bill F.csv, F.pdf or F.json, or --quotation F.pdf");
    expectBeside(arguments, "--fixture", {"--test-plan", "--limits"}, "no test plan to write",
                 "it beside --test-plan F.pdf or F.json, or --limits F.csv");
    for (const char* option : {"--since", "--reason", "--notice"})
        expectBeside(arguments, option, {"--change-notice", "--customer-notice"}, "no change notice to write",
                     "it beside --change-notice F.pdf or --customer-notice F.pdf");
    return asks;
}

std::string writePapers(const Arguments& arguments, const Opened& opened, papers::Format format) {
    PaperSource source(arguments, opened, format);
    std::string written;
    const std::string limits = arguments.option("--limits");
    for (const papers::PaperKind& kind : papers::paperKinds()) {
        const std::string file = arguments.option(optionOf(kind));
        const bool plan = std::string_view(kind.key) == "test-plan" && !limits.empty();
        if (file.empty() && !plan) continue;
        const papers::Made made = papers::made(kind, source.of(kind));
        if (!file.empty()) written += writeMade(made, file);
        if (plan) written += writeMade(made, limits);
    }
    return written;
}

}  // namespace commands
