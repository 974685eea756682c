// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/paper_words.h"

#include "exchange/read_file.h"
#include "papers/language_files.h"

namespace papers {

std::vector<std::string> paperLanguages(const std::vector<std::string>& folders) {
    std::vector<std::string> all;
    for (const auto& [language, file] : languageFiles(folders, "words", "csv")) all.push_back(language);
    return all;
}

std::shared_ptr<const shop::Words> paperWords(const std::string& language, const std::vector<std::string>& folders,
                                              const std::string& place) {
    if (language.empty() || language == "en") return nullptr;
    const std::string file = fileOfLanguage(languageFiles(folders, "words", "csv"), language, place);
    return std::make_shared<const shop::Words>(shop::readWords(exchange::readFile(file), file));
}

}  // namespace papers
