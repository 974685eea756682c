// SPDX-License-Identifier: GPL-3.0-or-later
// What fields, choices and catalog entries are called on screen, and why one would change them.
#pragma once

#include <QString>
#include <string>

namespace editors {

/// What the forms say themselves, in the language of the program.
[[nodiscard]] QString tr(const char* words);
[[nodiscard]] inline QString text(const std::string& s) {
    return QString::fromStdString(s);
}

/// Label of a field by its key in files ("margin_low" → "margin, low end").
[[nodiscard]] QString labelOf(const std::string& key);
/// One sentence on what it is and what it does.
[[nodiscard]] QString tipOf(const std::string& key);
/// What an empty field of this key means, in a word or two; "" where it cannot be empty or says nothing.
[[nodiscard]] QString hintOf(const std::string& key);
/// A choice by its word in files ("emf" → "source EMF"); two words of one choice never read alike.
[[nodiscard]] QString wordOf(const std::string& word);
/// How many characters the free text of this key may have.
[[nodiscard]] int textRoom(const std::string& key);

/// A catalog entry in a list: its key, marked where it is retired; and back.
[[nodiscard]] QString catalogWord(const std::string& key, bool current);
[[nodiscard]] std::string catalogKey(const QString& word);
/// What stands for an entry that the design holds itself.
[[nodiscard]] QString ownEntry();

}  // namespace editors
