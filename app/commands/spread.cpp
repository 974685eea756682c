// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright spread DESIGN [--units N] [--seed S] [--lot L] [--part K/M] [--to F] [--json]; coilwright gather F...
#include <cmath>

#include "commands/arguments.h"
#include "commands/spread_table.h"
#include "commands/verb.h"
#include "exchange/read_file.h"
#include "exchange/spread_json.h"
#include "exchange/spread_part.h"
#include "exchange/write_file.h"
#include "json/text.h"
#include "units/joined.h"
#include "units/text.h"

namespace commands {

namespace {

std::uint64_t whole(const std::string& text, const std::string& option, std::uint64_t least, std::uint64_t most,
                    const std::string& allowed = {}) {
    double read = -1;
    if (!text.empty() && text.find_first_not_of("0123456789") == std::string::npos)
        read = units::read(units::Kind::Number, text);
    if (!(read >= static_cast<double>(least)) || read > static_cast<double>(most))
        refuse(option, '"' + text + '"',
               !allowed.empty()
                   ? allowed
                   : units::joined({"a whole number from ", std::to_string(least), " to ", std::to_string(most)}));
    return static_cast<std::uint64_t>(read);
}

struct PartOf {
    std::uint64_t number = 1, parts = 1;
};

PartOf partAsked(const Arguments& arguments, std::uint64_t units) {
    const std::string text = arguments.option("--part");
    if (text.empty()) return {};
    const std::string allowed =
        units::joined({"K/M: part K of M, K from 1 to M, M up to the ", std::to_string(units), " units"});
    const auto slash = text.find('/');
    if (slash == std::string::npos) refuse("--part", '"' + text + '"', allowed);
    PartOf part;
    const auto number = [&](const std::string& digits, std::uint64_t most) {
        if (digits.empty() || digits.find_first_not_of("0123456789") != std::string::npos)
            refuse("--part", '"' + text + '"', allowed);
        const double read = units::read(units::Kind::Number, digits);
        if (!(read >= 1) || read > static_cast<double>(most)) refuse("--part", '"' + text + '"', allowed);
        return static_cast<std::uint64_t>(read);
    };
    part.parts = number(text.substr(slash + 1), units);
    part.number = number(text.substr(0, slash), part.parts);
    return part;
}

std::vector<std::string> listOf(const std::string& text) {
    std::vector<std::string> all;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t comma = std::min(text.find(',', from), text.size());
        if (comma > from) all.push_back(text.substr(from, comma - from));
        from = comma + 1;
    }
    return all;
}

spread::Plan planOf(const Arguments& arguments) {
    constexpr std::uint64_t mostUnits = 10'000'000, mostSeed = 1ULL << 53;
    spread::Plan plan;
    const auto take = [&](const char* option, std::uint64_t& to, std::uint64_t least, std::uint64_t most) {
        if (arguments.options.contains(option)) to = whole(arguments.option(option), option, least, most);
    };
    take("--units", plan.units, 1, mostUnits);
    take("--seed", plan.seed, 0, mostSeed);
    take("--lot", plan.lotSize, 1, mostUnits);
    plan.exact = arguments.flags.contains("--exact") || arguments.flags.contains("--sensitivity");
    plan.wanted.figures = listOf(arguments.option("--figures"));
    constexpr double low = 10, high = 200e3;
    constexpr int points = 87;  // twenty a decade
    plan.wanted.response = analysis::logarithmicGrid(low, high, points);
    return plan;
}

std::string toFile(const Arguments& arguments) {
    const auto it = arguments.options.find("--to");
    if (it == arguments.options.end()) return {};
    if (it->second.size() > 1) refuse("--to", "it more than once", "once");
    return it->second.front();
}

}  // namespace

std::string spreadUnits(const std::vector<std::string>& typed) {
    const Arguments arguments = sorted(typed, {{"DESIGN"},
                                               {"--json", "--sensitivity", "--exact"},
                                               {"--units", "--seed", "--lot", "--figures", "--part", "--to"}});
    const spread::Plan plan = planOf(arguments);
    const PartOf part = partAsked(arguments, plan.units);
    const std::string file = toFile(arguments);
    if (arguments.options.contains("--part") && file.empty())
        refuse("--part", "no file to write it to", "--to F beside it");
    const bool slopes = arguments.flags.contains("--sensitivity");
    if (slopes && !file.empty()) refuse("--sensitivity", "--to beside it", "it without --part and --to");
    const Opened opened = openDesign(arguments.operands.front());
    const spread::Study study(*opened.design, opened.shop, shopTolerances(places()), plan);
    const spread::Head head = spread::headOf(*opened.design, opened.digest, programName(), study);
    const bool json = arguments.flags.contains("--json");
    if (slopes) {
        const auto all = spread::sensitivities(study);
        return json ? json::write(exchange::sensitivityJson(head, all)) : sensitivityTable(head, all);
    }
    const auto range = spread::partOf(plan.units, part.number, part.parts);
    spread::Batch batch = study.run(range.first, range.last);
    if (!file.empty()) {
        exchange::writeFile(file, exchange::writeSpreadPart({head, part.number, part.parts, std::move(batch)}));
        return file + "\n";
    }
    const spread::Summary summary = spread::summed(head, {batch});
    return json ? json::write(exchange::spreadJson(head, summary)) : spreadTable(head, summary);
}

std::string gather(const std::vector<std::string>& typed) {
    for (const std::string& word : typed)
        if (word.starts_with("--")) units::refuse("command line", '"' + word + '"', "files that spread --to wrote");
    if (typed.empty()) units::refuse("command line", "no file", "files that spread --to wrote");
    std::vector<exchange::SpreadPart> parts;
    parts.reserve(typed.size());
    for (const std::string& file : typed) parts.push_back(exchange::readSpreadPart(exchange::readFile(file), file));
    const spread::Head head = parts.front().head;
    const auto batches = exchange::gatheredParts(std::move(parts), typed);
    return json::write(exchange::spreadJson(head, spread::summed(head, batches)));
}

}  // namespace commands
