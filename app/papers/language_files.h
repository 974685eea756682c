// SPDX-License-Identifier: GPL-3.0-or-later
// Tables of languages beside the program's data, of papers and of the window.
#pragma once

#include <map>
#include <string>
#include <vector>

namespace papers {

/// Paths by language, "de" for `words/de.csv` with kind "words" and ending "csv"; the last folder's where several have
/// one. English is not among them.
using LanguageFiles = std::map<std::string, std::string>;
[[nodiscard]] LanguageFiles languageFiles(const std::vector<std::string>& folders, const std::string& kind,
                                          const std::string& ending);
/// Throws units::BadInput, place `place`, where there is no such language.
[[nodiscard]] std::string fileOfLanguage(const LanguageFiles& files, const std::string& language,
                                         const std::string& place);

}  // namespace papers
