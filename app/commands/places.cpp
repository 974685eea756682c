// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/places.h"

#include <QCoreApplication>
#include <QDir>
#include <QDirIterator>
#include <QFileInfo>
#include <algorithm>

#include "exchange/load_catalog.h"
#include "exchange/load_tolerances.h"

namespace commands {

namespace {

QString firstFolder(const QStringList& candidates) {
    for (const QString& path : candidates)
        if (!path.isEmpty() && QFileInfo(path).isDir()) return QDir(path).absolutePath();
    return {};
}

QString dataHome() {
    const QString given = qEnvironmentVariable("XDG_DATA_HOME");
    return QDir::isAbsolutePath(given) ? given : QDir::homePath() + QStringLiteral("/.local/share");
}

}  // namespace

Places places() {
    const QString installed = QCoreApplication::applicationDirPath() + QStringLiteral("/../share/coilwright");
    const QString sources = QStringLiteral(COILWRIGHT_SOURCE_DIR);
    const QString resources =
        firstFolder({qEnvironmentVariable("COILWRIGHT_RESOURCES"), installed, sources + QStringLiteral("/resources")});
    Places found;
    found.resources = resources.toStdString();
    found.own = firstFolder({dataHome() + QStringLiteral("/coilwright")}).toStdString();
    found.demos =
        firstFolder({resources + QStringLiteral("/demo-projects"), resources + QStringLiteral("/../demo-projects"),
                     sources + QStringLiteral("/demo-projects")})
            .toStdString();
    return found;
}

std::vector<std::string> resourceFolders(const Places& where) {
    std::vector<std::string> folders{where.resources};
    if (!where.own.empty()) folders.push_back(where.own);
    return folders;
}

namespace {

/// The same, where there are resources at all.
std::vector<std::string> dataFolders(const Places& where) {
    if (where.resources.empty())
        units::refuse("COILWRIGHT_RESOURCES", "no folder with the catalog", "the folder that holds sheets.json");
    return resourceFolders(where);
}

}  // namespace

catalog::Catalog shopCatalog(const Places& where) {
    return exchange::loadCatalog(dataFolders(where));
}

catalog::Tolerances shopTolerances(const Places& where) {
    return exchange::loadTolerances(dataFolders(where));
}

std::vector<std::string> demoDesigns(const Places& where) {
    std::vector<std::string> paths;
    if (where.demos.empty()) return paths;
    QDirIterator files(QString::fromStdString(where.demos), {QStringLiteral("*.coilwright")}, QDir::Files,
                       QDirIterator::Subdirectories);
    while (files.hasNext()) paths.push_back(files.next().toStdString());
    std::sort(paths.begin(), paths.end());
    return paths;
}

}  // namespace commands
