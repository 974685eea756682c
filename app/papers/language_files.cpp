// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/language_files.h"

#include <QDir>

#include "units/fault.h"

namespace papers {

LanguageFiles languageFiles(const std::vector<std::string>& folders, const std::string& kind,
                            const std::string& ending) {
    LanguageFiles all;
    const QStringList named{QStringLiteral("*.") + QString::fromStdString(ending)};
    for (const std::string& folder : folders) {
        const QDir tables(QString::fromStdString(folder) + QLatin1Char('/') + QString::fromStdString(kind));
        for (const QFileInfo& file : tables.entryInfoList(named, QDir::Files))
            all.insert_or_assign(file.completeBaseName().toStdString(), file.filePath().toStdString());
    }
    return all;
}

std::string fileOfLanguage(const LanguageFiles& files, const std::string& language, const std::string& place) {
    if (const auto at = files.find(language); at != files.end()) return at->second;
    std::string known = "en";
    for (const auto& [one, file] : files) known += " or " + one;
    units::refuse(place, '"' + language + '"', known);
}

}  // namespace papers
