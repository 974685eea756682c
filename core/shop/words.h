// SPDX-License-Identifier: GPL-3.0-or-later
// The words of a paper in the language of who gets it, whatever language the program speaks.
#pragma once

#include <initializer_list>
#include <map>
#include <set>
#include <string>
#include <string_view>

namespace shop {

/// Phrases by their English, which is what the sources hold: a phrase that the table lacks is said in English.
class Words {
public:
    Words() = default;  ///< English
    Words(std::string language, std::map<std::string, std::string> table)
        : language_(std::move(language)), table_(std::move(table)) {}

    /// The phrase with `parts` in place of %1, %2 …
    [[nodiscard]] std::string operator()(std::string_view phrase,
                                         std::initializer_list<std::string_view> parts = {}) const;
    /// A value as `units::write` gives it, with the language's decimal sign: the table's word for ".".
    [[nodiscard]] std::string number(std::string text) const;
    /// What the language calls itself; "" English.
    [[nodiscard]] const std::string& language() const { return language_; }
    [[nodiscard]] const std::map<std::string, std::string>& table() const { return table_; }
    /// Phrases that were asked for and that the table lacks.
    [[nodiscard]] const std::set<std::string>& missing() const { return missing_; }

private:
    std::string language_;
    std::map<std::string, std::string> table_;
    mutable std::set<std::string> missing_;
};

/// Reads a table of words: a line `english,LANGUAGE`, then a phrase and its words a line, in quotes where they hold a
/// comma; lines that begin with # are for people. Throws units::BadInput with every fault and its line: no such first
/// line, not two cells, a phrase twice or without words, or words that do not have the phrase's %1, %2 ….
[[nodiscard]] Words readWords(std::string_view text, const std::string& file);

}  // namespace shop
