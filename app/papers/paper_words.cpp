// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/paper_words.h"

#include <QDir>
#include <set>

#include "exchange/read_file.h"
#include "units/fault.h"

namespace papers {

std::vector<std::string> paperLanguages(const std::vector<std::string>& folders) {
    std::set<std::string> all;
    for (const std::string& folder : folders)
        for (const QFileInfo& file :
             QDir(QString::fromStdString(folder + "/words")).entryInfoList({QStringLiteral("*.csv")}, QDir::Files))
            all.insert(file.completeBaseName().toStdString());
    return {all.begin(), all.end()};
}

std::shared_ptr<const shop::Words> paperWords(const std::string& language, const std::vector<std::string>& folders,
                                              const std::string& place) {
    if (language.empty() || language == "en") return nullptr;
    std::string file, known = "en";
    for (const std::string& one : paperLanguages(folders)) {
        known += " or " + one;
        for (const std::string& folder : folders)
            if (const std::string path = folder + "/words/" + one + ".csv";
                one == language && QFileInfo::exists(QString::fromStdString(path)))
                file = path;
    }
    if (file.empty()) throw units::BadInput(units::Fault{place, '"' + language + '"', known});
    return std::make_shared<const shop::Words>(shop::readWords(exchange::readFile(file), file));
}

}  // namespace papers
