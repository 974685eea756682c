// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright revisions DESIGN [--keep REASON | --open N [--to F] | --state STATE --of N | --lot LOT --of N |
// --variant PART --of N | --check [--of N]]
#include <QDate>
#include <algorithm>
#include <array>
#include <charconv>

#include "commands/arguments.h"
#include "commands/verb.h"
#include "compare/revision_words.h"
#include "exchange/design_json.h"
#include "exchange/revision_store.h"
#include "exchange/write_file.h"
#include "units/fault.h"
#include "units/joined.h"

namespace commands {

namespace {

using units::joined;

std::string dateOf(const Arguments& arguments) {
    const std::string typed = arguments.option("--date");
    return typed.empty() ? QDate::currentDate().toString(Qt::ISODate).toStdString() : typed;
}

int numberAt(const Arguments& arguments, const std::string& option) {
    const std::string typed = arguments.option(option);
    int number = 0;
    const auto read = std::from_chars(typed.data(), typed.data() + typed.size(), number);
    if (typed.empty() || read.ec != std::errc() || read.ptr != typed.data() + typed.size() || number < 1)
        refuse(option, typed.empty() ? "nothing" : '"' + typed + '"', "the number of a kept revision");
    return number;
}

design::Issue issueOf(const std::string& typed) {
    for (const auto& [name, issue] : names(design::Issue{}))
        if (typed == name) return issue;
    refuse("--state", '"' + typed + '"', "sample, released or retired");
}

std::string listed(const design::Register& all) {
    if (all.revisions.empty()) return "No revision is kept yet.\n";
    std::string text;
    for (const design::Revision& r : all.revisions) {
        text += joined({std::to_string(r.number), "  revision ", r.mark, "  ", r.date, "  ", design::word(r.issue()),
                        "  ", r.digest.substr(0, 12), "  ", r.reason, "\n"});
        for (const design::IssueStep& s : r.steps)
            text += joined({"   ", design::word(s.issue), " ", s.date, s.by.empty() ? "" : " by ", s.by,
                            s.note.empty() ? "" : ": ", s.note, "\n"});
        if (!r.firstLot.empty()) text += joined({"   first lot ", r.firstLot, "\n"});
        if (!r.notice.empty()) text += joined({"   notice to the customer: ", r.notice, "\n"});
        for (const design::Variant& v : all.variants)
            if (v.number == r.number)
                text += joined({"   part number ", v.partNumber, v.what.empty() ? "" : ": ", v.what, "\n"});
    }
    return text;
}

std::string reopened(const std::string& path, const Arguments& arguments, const catalog::Catalog& shop) {
    const auto kept = exchange::openRevision(path, numberAt(arguments, "--open"), shop);
    std::string text = joined(
        {"revision ", std::to_string(kept.entry.number), ", kept on ", kept.entry.date, ": ", kept.entry.reason, "\n"});
    text += compare::reproductionWords(kept, shop);
    if (const std::string to = arguments.option("--to"); !to.empty()) {
        exchange::writeFile(to, exchange::writeDesign(*kept.design, shop));
        text += to + '\n';
    }
    return text;
}

}  // namespace

std::string revisions(const std::vector<std::string>& typed) {
    const Arguments arguments = sorted(typed, {{"DESIGN"},
                                               {"--check"},
                                               {"--keep", "--notice", "--open", "--to", "--state", "--of", "--by",
                                                "--note", "--lot", "--variant", "--date"}});
    const std::string& path = arguments.operands.front();
    const bool check = arguments.flags.contains("--check");
    const auto given = [&](const char* option) { return arguments.options.contains(option); };
    constexpr std::array<const char*, 5> changes{"--keep", "--open", "--state", "--lot", "--variant"};
    const auto acts = std::count_if(changes.begin(), changes.end(), given) + (check ? 1 : 0);
    if (acts > 1) refuse("revisions", "more than one act", "one of --keep, --open, --state, --lot, --variant, --check");
    if (acts == 0) return listed(exchange::readRegister(path));
    if (given("--keep") || given("--open") || check) {
        const Opened opened = openDesign(path);
        if (given("--open")) return reopened(path, arguments, opened.shop);
        if (check)
            return compare::repeatOrderWords(
                given("--of") ? *exchange::openRevision(path, numberAt(arguments, "--of"), opened.shop).design
                              : *opened.design,
                opened.shop);
        const exchange::KeptWhy why{dateOf(arguments), arguments.option("--keep"), programName(),
                                    arguments.option("--notice")};
        return listed(exchange::keepRevision(path, *opened.design, opened.shop,
                                             compare::everyFigure(*opened.design, opened.shop), why));
    }
    design::Register all = exchange::readRegister(path);
    const int number = numberAt(arguments, "--of");
    if (given("--state"))
        all = design::withStep(all, number,
                               {issueOf(arguments.option("--state")),
                                dateOf(arguments),
                                arguments.option("--by"),
                                arguments.option("--note"),
                                {}});
    else if (given("--lot"))
        all = design::withFirstLot(all, number, arguments.option("--lot"));
    else
        all = design::withVariant(all, {arguments.option("--variant"), number, arguments.option("--note"), {}});
    exchange::writeRegister(path, all);
    return listed(all);
}

}  // namespace commands
