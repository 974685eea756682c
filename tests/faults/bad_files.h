// SPDX-License-Identifier: GPL-3.0-or-later
// Kinds of files that are read, each with a sound one and its reader, and the ways one is made bad.
#pragma once

#include <ostream>
#include <string>
#include <vector>

#include "json/value.h"

namespace bad_files {

struct Kind {
    std::string name;  ///< also of the table of what is said, said/NAME.json
    std::string file;  ///< as it is called in sentences
    std::string text;  ///< sound
    void (*read)(const std::string& text, const std::string& file);
    bool json = true;
};
/// Its name alone, in the name of a test.
inline void PrintTo(const Kind& kind, std::ostream* out) {
    *out << kind.name;
}
[[nodiscard]] const std::vector<Kind>& kinds();

/// Every sentence that reading `text` ends with; none if it is read.
[[nodiscard]] std::vector<std::string> said(const Kind& kind, const std::string& text);

/// The JSON pointers of all keys, of lists' items the first one with each key.
[[nodiscard]] std::vector<std::string> keys(const json::Value& root);

/// The text with a key's value of a wrong type (true; 7 instead of true or false), without the key, with it twice.
[[nodiscard]] std::string wrongType(const json::Value& sound, const std::string& key);
[[nodiscard]] std::string without(const json::Value& sound, const std::string& key);
[[nodiscard]] std::string doubled(const json::Value& sound, const std::string& key);

}  // namespace bad_files
