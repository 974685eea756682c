// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/arguments.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "exchange/read_file.h"
#include "units/text.h"

namespace commands {

namespace {

constexpr double highestFrequency = 1e9;
constexpr double mostPoints = 100000;
constexpr int usualPoints = 600;
constexpr double usualLow = 0.1, usualHigh = 1e6;

std::string inQuotes(const std::string& text) {
    return '"' + text + '"';
}

std::string listed(const std::set<std::string>& words) {
    std::string all;
    for (const std::string& word : words) all += (all.empty() ? "" : ", ") + word;
    return all.empty() ? "none" : all;
}

/// The number that `text` says as a frequency; none if it reads as something else.
std::optional<double> number(const std::string& text) {
    if (text.empty() || std::string("0123456789+-.").find(text.front()) == std::string::npos) return std::nullopt;
    try {
        return units::read(units::Kind::Frequency, text);
    } catch (const units::BadInput&) {
        return std::nullopt;
    }
}

double frequency(const std::string& text, const std::string& place) {
    const std::optional<double> read = number(text);
    if (!read || !std::isfinite(*read) || *read <= 0 || *read > highestFrequency)
        units::refuse(place, inQuotes(text), "a frequency above 0 Hz and up to 1 GHz");
    return *read;
}

int pointCount(const std::string& text) {
    std::optional<double> read;
    try {
        read = units::read(units::Kind::Number, text);
    } catch (const units::BadInput&) {
    }
    if (!read || *read < 2 || *read > mostPoints || *read != std::floor(*read))
        refuse("--points", inQuotes(text), "a whole number from 2 to 100000");
    return static_cast<int>(*read);
}

std::vector<double> frequenciesIn(const std::string& path) {
    const std::string text = exchange::readFile(path);
    std::vector<double> all;
    std::size_t from = 0;
    for (int line = 1; from < text.size(); ++line) {
        const std::size_t end = std::min(text.find('\n', from), text.size());
        std::string one = text.substr(from, end - from);
        from = end + 1;
        one.erase(0, std::min(one.find_first_not_of(" \t\r"), one.size()));
        one.erase(one.find_last_not_of(" \t\r") + 1);
        if (one.empty()) continue;
        const std::string place = path + ": line " + std::to_string(line);
        const double f = frequency(one, place);
        if (!all.empty() && f <= all.back())
            units::refuse(place, inQuotes(one), "a frequency above that of the line before");
        all.push_back(f);
    }
    if (all.empty()) units::refuse(path, "no frequency", "one frequency in Hz a line");
    return all;
}

/// Takes the value behind the option at `i`, which then stands at the value.
void takeValue(const std::vector<std::string>& typed, std::size_t& i, std::vector<std::string>& values) {
    const std::string& word = typed[i];
    if (i + 1 == typed.size() || typed[i + 1].starts_with("--")) refuse(word, "nothing after it", "a value");
    values.push_back(typed[++i]);
    if (values.size() > (word == "--to" ? 2U : 1U)) refuse(word, "it more than once", "once");
}

[[noreturn]] void refuseUnknown(const std::string& word, const Grammar& grammar) {
    std::set<std::string> all = grammar.flags;
    all.insert(grammar.options.begin(), grammar.options.end());
    units::refuse("command line", inQuotes(word), listed(all));
}

[[noreturn]] void refuseOperands(const std::vector<std::string>& operands, const Grammar& grammar) {
    std::string names;
    for (const std::string& name : grammar.operands) names += (names.empty() ? "" : " ") + name;
    std::string given;
    for (const std::string& operand : operands) given += (given.empty() ? "" : " ") + inQuotes(operand);
    units::refuse("command line", given.empty() ? "no " + grammar.operands.front() : given, names);
}

}  // namespace

std::string Arguments::option(const std::string& name) const {
    const auto it = options.find(name);
    return it == options.end() ? std::string() : it->second.front();
}

Arguments sorted(const std::vector<std::string>& typed, const Grammar& grammar) {
    Arguments found;
    for (std::size_t i = 0; i < typed.size(); ++i) {
        const std::string& word = typed[i];
        if (!word.starts_with("--"))
            found.operands.push_back(word);
        else if (grammar.flags.contains(word))
            found.flags.insert(word);
        else if (grammar.options.contains(word))
            takeValue(typed, i, found.options[word]);
        else
            refuseUnknown(word, grammar);
    }
    if (found.operands.size() != grammar.operands.size()) refuseOperands(found.operands, grammar);
    return found;
}

void allowGrid(Grammar& grammar) {
    grammar.options.insert({"--from", "--to", "--points", "--at"});
}

std::vector<double> gridOf(const Arguments& arguments) {
    std::optional<double> to;
    if (const auto it = arguments.options.find("--to"); it != arguments.options.end())
        for (const std::string& value : it->second)
            if (number(value)) {
                if (to) refuse("--to", "two frequencies", "one frequency and one folder");
                to = frequency(value, "command line: --to");
            }
    const std::string from = arguments.option("--from"), points = arguments.option("--points"),
                      at = arguments.option("--at");
    if (!at.empty()) {
        if (to || !from.empty() || !points.empty())
            refuse("--at", "--from, --to or --points beside it", "either a file of frequencies or a range");
        return frequenciesIn(at);
    }
    if (!to && from.empty() && points.empty()) return {};
    const double low = from.empty() ? usualLow : frequency(from, "command line: --from");
    const double high = to.value_or(usualHigh);
    if (low >= high)
        refuse("--from", inQuotes(from.empty() ? units::shortest(low) : from), "a frequency below that of --to");
    return analysis::logarithmicGrid(low, high, points.empty() ? usualPoints : pointCount(points));
}

std::string folderOf(const Arguments& arguments) {
    std::string folder;
    if (const auto it = arguments.options.find("--to"); it != arguments.options.end())
        for (const std::string& value : it->second)
            if (!number(value)) {
                if (!folder.empty()) refuse("--to", "two folders", "one folder and at most one frequency");
                folder = value;
            }
    if (folder.empty()) refuse("--to", "no folder", "the folder to write into (./NAME if its name is a number)");
    return folder;
}

std::string knownHookUp(const design::Design& design, const std::string& name) {
    if (name.empty() || design::hookUp(design, name)) return name;
    std::string known;
    for (const design::HookUp& h : design.hookUps) known += (known.empty() ? "one of " : ", ") + inQuotes(h.name);
    refuse("--hook-up", inQuotes(name), known);
}

void refuse(const std::string& option, const std::string& found, const std::string& allowed) {
    units::refuse("command line: " + option, found, allowed);
}

}  // namespace commands
