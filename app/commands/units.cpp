// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright units F.records import | list | report | copy …
#include "commands/arguments.h"
#include "commands/units_report.h"
#include "commands/verb.h"
#include "exchange/limits_file.h"
#include "exchange/read_file.h"
#include "records/store.h"
#include "records/unit_table.h"
#include "units/csv_cell.h"
#include "units/fault.h"
#include "units/joined.h"
#include "units/text.h"

namespace commands {

namespace {

const std::set<std::string> filterOptions{"--part",    "--revision", "--serial", "--stage", "--lot",
                                          "--verdict", "--cause",    "--from",   "--before"};

records::Filter filterOf(const Arguments& arguments) {
    records::Filter f;
    for (const auto& [option, to] :
         {std::pair{"--part", &f.part}, std::pair{"--revision", &f.revision}, std::pair{"--serial", &f.serial},
          std::pair{"--stage", &f.stage}, std::pair{"--lot", &f.lot}, std::pair{"--verdict", &f.verdict},
          std::pair{"--cause", &f.cause}, std::pair{"--from", &f.from}, std::pair{"--before", &f.before}})
        *to = arguments.option(option);
    for (const auto& [option, time] : {std::pair{"--from", &f.from}, std::pair{"--before", &f.before}})
        if (!time->empty() && !records::dayOf(*time)) refuse(option, '"' + *time + '"', "a day as 2026-11-27");
    return f;
}

std::optional<double> numberOf(const Arguments& arguments, const std::string& option) {
    const std::string text = arguments.option(option);
    if (text.empty()) return {};
    const auto value = units::csvNumber(text, text.find(',') != std::string::npos);
    if (!value) refuse(option, '"' + text + '"', "a number in the test's unit");
    return value;
}

std::size_t countOf(const Arguments& arguments, const std::string& option, std::size_t usual, std::size_t most) {
    const auto value = numberOf(arguments, option);
    if (!value) return usual;
    if (!(*value >= 1) || *value > static_cast<double>(most) || *value != static_cast<double>(static_cast<int>(*value)))
        refuse(option, arguments.option(option), "a whole number from 1 to " + std::to_string(most));
    return static_cast<std::size_t>(*value);
}

std::string imported(const std::string& file, const std::vector<std::string>& typed) {
    const Arguments arguments = sorted(typed, {{"F.csv"}, {}, {}});
    const std::string& table = arguments.operands.front();
    const auto units = records::readUnits(exchange::readFile(table), table);
    records::Store store(file, true);
    const auto added = store.add(units);
    return units::joined({std::to_string(added.added), " records added to ", file, ", ", std::to_string(added.known),
                          " were there already\n"});
}

std::string listed(const std::string& file, const std::vector<std::string>& typed) {
    Grammar grammar{{}, {}, filterOptions};
    grammar.options.insert("--limit");
    const Arguments arguments = sorted(typed, grammar);
    constexpr std::size_t most = 1000000;
    records::Store store(file);
    return records::unitTable(store.find(filterOf(arguments), countOf(arguments, "--limit", most, most)));
}

std::string reported(const std::string& file, const std::vector<std::string>& typed) {
    Grammar grammar{{}, {"--outside"}, filterOptions};
    grammar.options.insert({"--test", "--at-least", "--at-most", "--subgroup", "--reference", "--limits"});
    const Arguments arguments = sorted(typed, grammar);
    UnitsQuestion question;
    question.filter = filterOf(arguments);
    question.test = arguments.option("--test");
    question.atLeast = numberOf(arguments, "--at-least");
    question.atMost = numberOf(arguments, "--at-most");
    if ((question.atLeast || question.atMost) && question.test.empty())
        refuse("--at-least, --at-most", "no test that they limit", "them beside --test NAME");
    if (question.atLeast && question.atMost && !(*question.atLeast < *question.atMost))
        refuse("--at-least", arguments.option("--at-least"), "less than --at-most");
    constexpr std::size_t mostInSubgroup = 25;
    question.subgroup = countOf(arguments, "--subgroup", 1, mostInSubgroup);
    question.reference = arguments.option("--reference");
    if (const std::string limits = arguments.option("--limits"); !limits.empty())
        question.limits = exchange::readLimits(exchange::readFile(limits), limits);
    question.outside = arguments.flags.contains("--outside");
    records::Store store(file);
    if (!question.test.empty()) {
        std::string all;
        bool known = false;
        for (const auto& [name, unit] : store.tests(question.filter)) {
            known = known || name == question.test;
            all += (all.empty() ? "" : ", ") + name;
        }
        if (!known) refuse("--test", '"' + question.test + '"', "one of " + (all.empty() ? "none" : all));
    }
    return unitsReport(store, question);
}

std::string copied(const std::string& file, const std::vector<std::string>& typed) {
    const Arguments arguments = sorted(typed, {{}, {}, {"--to"}});
    const std::string to = arguments.option("--to");
    if (to.empty()) refuse("--to", "nothing", "a file for the copy");
    records::Store store(file);
    store.backup(to);
    return "a whole copy in " + to + "\n";
}

}  // namespace

std::string unitRecords(const std::vector<std::string>& typed) {
    const std::string allowed = "FILE and import F.csv, list, report, or copy --to F";
    if (typed.size() < 2) refuse("units", typed.empty() ? "nothing" : "no word behind " + typed.front(), allowed);
    const std::vector<std::string> rest(typed.begin() + 2, typed.end());
    if (typed[1] == "import") return imported(typed[0], rest);
    if (typed[1] == "list") return listed(typed[0], rest);
    if (typed[1] == "report") return reported(typed[0], rest);
    if (typed[1] == "copy") return copied(typed[0], rest);
    refuse("units", '"' + typed[1] + '"', allowed);
}

}  // namespace commands
