// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/words.h"

#include <cctype>
#include <vector>

#include "units/csv_cell.h"
#include "units/fault.h"
#include "units/joined.h"
#include "units/most_faults.h"

namespace shop {

namespace {

using units::joined;

bool digit(char c) {
    return c >= '0' && c <= '9';
}

/// "%1", "%2": which parts a phrase has room for.
std::set<std::string> roomsOf(std::string_view phrase) {
    std::set<std::string> rooms;
    for (std::size_t at = phrase.find('%'); at != std::string_view::npos; at = phrase.find('%', at + 1))
        if (at + 1 < phrase.size() && digit(phrase[at + 1])) rooms.emplace(phrase.substr(at, 2));
    return rooms;
}

}  // namespace

std::string Words::operator()(std::string_view phrase, std::initializer_list<std::string_view> parts) const {
    std::string_view words = phrase;
    if (!language_.empty()) {
        if (const auto found = table_.find(std::string(phrase)); found != table_.end())
            words = found->second;
        else
            missing_.emplace(phrase);
    }
    std::string text;
    for (std::size_t k = 0; k < words.size(); ++k) {
        const bool room = words[k] == '%' && k + 1 < words.size() && digit(words[k + 1]);
        const auto part = room ? static_cast<std::size_t>(words[k + 1] - '0') : 0;
        if (part >= 1 && part <= parts.size()) {
            text += parts.begin()[part - 1];
            ++k;
        } else {
            text += words[k];
        }
    }
    return text;
}

std::string Words::number(std::string text) const {
    const auto sign = table_.find(".");
    if (sign == table_.end()) return text;
    for (std::size_t k = 1; k + 1 < text.size(); ++k)
        if (text[k] == '.' && digit(text[k - 1]) && digit(text[k + 1])) text.replace(k, 1, sign->second);
    return text;
}

Words readWords(std::string_view text, const std::string& file) {
    std::vector<units::Fault> faults;
    std::string language;
    std::map<std::string, std::string> table;
    int number = 0;
    const auto fault = [&](const std::string& found, const std::string& allowed) {
        faults.push_back({joined({file, ": line ", std::to_string(number)}), found, allowed});
    };
    for (const std::string_view line : units::csvLines(text)) {
        ++number;
        if (faults.size() >= units::mostFaults) break;
        if (line.find_first_not_of(" \t") == std::string_view::npos || line.front() == '#') continue;
        const auto cells = units::csvCells(line);
        if (cells.size() != 2 || cells[0].empty() || cells[1].empty()) {
            fault(joined({"\"", line.substr(0, 60), "\""}), "a phrase, a comma and its words");
        } else if (language.empty()) {
            if (cells[0] != "english") fault(joined({"\"", cells[0], "\""}), "english,LANGUAGE in the first line");
            language = cells[1];
        } else if (roomsOf(cells[0]) != roomsOf(cells[1])) {
            fault(joined({"\"", cells[1], "\""}), joined({"words with the same %1, %2 … as \"", cells[0], "\""}));
        } else if (!table.emplace(cells[0], cells[1]).second) {
            fault(joined({"\"", cells[0], "\" a second time"}), "each phrase once");
        }
    }
    if (language.empty() && faults.empty()) fault("no words", "english,LANGUAGE in the first line");
    if (!faults.empty()) throw units::BadInput(std::move(faults));
    return {std::move(language), std::move(table)};
}

}  // namespace shop
