// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/touchstone_words.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "units/fault.h"
#include "units/joined.h"

namespace exchange::detail {

namespace {

char small(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool isBlank(char c) {
    return c == ' ' || c == '\t';
}

std::vector<TouchstoneWord> wordsOf(std::string_view text, int line) {
    std::vector<TouchstoneWord> words;
    bool inside = false;
    for (const char c : text) {
        if (isBlank(c)) {
            inside = false;
            continue;
        }
        if (!inside) words.push_back({{}, line});
        inside = true;
        words.back().text += small(c);
    }
    return words;
}

[[noreturn]] void refuse(const std::string& file, int line, std::string_view found, std::string allowed) {
    units::refuse(touchstonePlace(file, line), units::joined({"\"", found.substr(0, 60), "\""}), std::move(allowed));
}

TouchstoneLine keywordLine(std::string_view text, int number, const std::string& file) {
    const auto close = text.find(']');
    if (close == std::string_view::npos) refuse(file, number, text, "a keyword in brackets, as [Version]");
    TouchstoneLine line{TouchstoneLineKind::Keyword, number, {}, wordsOf(text.substr(close + 1), number)};
    for (const auto& word : wordsOf(text.substr(1, close - 1), number))
        line.keyword += (line.keyword.empty() ? "" : " ") + word.text;
    std::replace(line.keyword.begin(), line.keyword.end(), '-', ' ');
    return line;
}

/// One line without its end; what is left of `text` begins with the next. CR, LF and both end lines.
std::string_view nextLine(std::string_view& text) {
    const auto end = std::min(text.find_first_of("\r\n"), text.size());
    const std::string_view line = text.substr(0, end);
    const bool both = end + 1 < text.size() && text[end] == '\r' && text[end + 1] == '\n';
    text.remove_prefix(std::min(end + (both ? 2 : 1), text.size()));
    return line;
}

}  // namespace

std::string touchstonePlace(const std::string& file, int line) {
    return units::joined({file, ": line ", std::to_string(line)});
}

std::vector<TouchstoneLine> touchstoneLines(std::string_view text, const std::string& file) {
    if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
    std::vector<TouchstoneLine> lines;
    for (int number = 1; !text.empty(); ++number) {
        std::string_view line = nextLine(text);
        line = line.substr(0, line.find('!'));
        while (!line.empty() && isBlank(line.front())) line.remove_prefix(1);
        while (!line.empty() && isBlank(line.back())) line.remove_suffix(1);
        if (line.empty()) continue;
        for (const char c : line)
            if (static_cast<unsigned char>(c) < 0x20 && c != '\t')
                refuse(file, number, "a character that no text has", "plain text");
        if (line.front() == '#')
            lines.push_back({TouchstoneLineKind::Options, number, {}, wordsOf(line.substr(1), number)});
        else if (line.front() == '[')
            lines.push_back(keywordLine(line, number, file));
        else
            lines.push_back({TouchstoneLineKind::Data, number, {}, wordsOf(line, number)});
    }
    return lines;
}

double touchstoneNumber(const TouchstoneWord& word, const std::string& file) {
    std::string_view text = word.text;
    if (text.starts_with('+')) text.remove_prefix(1);
    double value = 0;
    const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
    if (read.ec != std::errc() || read.ptr != text.data() + text.size() || !std::isfinite(value))
        refuse(file, word.line, word.text, "a number, as -12.5 or 1.2e-3");
    return value;
}

int touchstoneCount(const TouchstoneLine& line, int most, const std::string& file) {
    int value = 0;
    if (line.words.size() == 1) {
        const std::string& text = line.words.front().text;
        const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
        if (read.ptr == text.data() + text.size() && value >= 1 && value <= most) return value;
    }
    refuse(file, line.number, line.words.empty() ? "nothing" : line.words.front().text,
           units::joined({"a whole number from 1 to ", std::to_string(most), " behind [", line.keyword, "]"}));
}

TouchstoneOptions touchstoneOptions(const TouchstoneLine& line, const std::string& file) {
    using measured::Parameter;
    constexpr std::array<std::pair<std::string_view, double>, 4> hertz{
        {{"hz", 1}, {"khz", 1e3}, {"mhz", 1e6}, {"ghz", 1e9}}};
    constexpr std::array<std::pair<std::string_view, Parameter>, 5> parameters{
        {{"s", Parameter::S}, {"y", Parameter::Y}, {"z", Parameter::Z}, {"h", Parameter::H}, {"g", Parameter::G}}};
    constexpr std::array<std::pair<std::string_view, PairForm>, 3> forms{
        {{"ri", PairForm::RealImaginary}, {"ma", PairForm::MagnitudeAngle}, {"db", PairForm::DecibelAngle}}};
    const auto take = [](const auto& table, const std::string& word, auto& to) {
        for (const auto& [name, value] : table) {
            if (word != name) continue;
            to = value;
            return true;
        }
        return false;
    };
    TouchstoneOptions options;
    for (std::size_t k = 0; k < line.words.size(); ++k) {
        const std::string& word = line.words[k].text;
        if (word == "r") {
            options.reference.clear();
            while (k + 1 < line.words.size() && line.words[k + 1].text.find_first_of("0123456789") != std::string::npos)
                options.reference.push_back(touchstoneNumber(line.words[++k], file));
            const bool positive =
                std::all_of(options.reference.begin(), options.reference.end(), [](double value) { return value > 0; });
            if (options.reference.empty() || !positive)
                refuse(file, line.number, line.words[k].text, "a resistance above 0 ohm behind R");
        } else if (!take(hertz, word, options.hertz) && !take(parameters, word, options.parameter) &&
                   !take(forms, word, options.form)) {
            refuse(file, line.number, word, "Hz, kHz, MHz or GHz; S, Y, Z, H or G; RI, MA or DB; R and a resistance");
        }
    }
    return options;
}

}  // namespace exchange::detail
