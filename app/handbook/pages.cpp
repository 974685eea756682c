// SPDX-License-Identifier: GPL-3.0-or-later
#include "handbook/pages.h"

#include <QFileInfo>
#include <QRegularExpression>
#include <set>

#include "exchange/read_file.h"
#include "units/fault.h"

namespace handbook {

namespace {

const QRegularExpression& linkForm() {
    static const QRegularExpression form(QStringLiteral(R"(\[([^\]]+)\]\(([a-z_-]+\.md)\))"));
    return form;
}

Page pageIn(const QString& folder, const QString& file) {
    const std::string path = (folder + QLatin1Char('/') + file).toStdString();
    Page page{file, {}, QString::fromStdString(exchange::readFile(path))};
    const QString head = page.text.section(QLatin1Char('\n'), 0, 0);
    if (!head.startsWith(QStringLiteral("# ")))
        units::refuse(path, '"' + head.toStdString() + '"', "a first line that is \"# TITLE\"");
    page.title = head.mid(2).trimmed();
    return page;
}

}  // namespace

std::vector<Link> linksOf(const QString& text) {
    std::vector<Link> links;
    for (auto match = linkForm().globalMatch(text); match.hasNext();) {
        const auto one = match.next();
        links.push_back({one.captured(1), one.captured(2)});
    }
    return links;
}

QString withoutLinks(const QString& text, const std::function<QString(const Link&)>& words) {
    QString plain;
    qsizetype from = 0;
    for (auto match = linkForm().globalMatch(text); match.hasNext();) {
        const auto one = match.next();
        plain += QStringView(text).mid(from, one.capturedStart() - from);
        plain += words({one.captured(1), one.captured(2)});
        from = one.capturedEnd();
    }
    plain += QStringView(text).mid(from);
    return plain;
}

std::vector<Page> pages(const QString& folder) {
    std::vector<Page> all{pageIn(folder, QStringLiteral("index.md"))};
    std::set<QString> seen{all.front().file};
    for (const Link& link : linksOf(all.front().text))
        if (seen.insert(link.file).second) all.push_back(pageIn(folder, link.file));
    return all;
}

QString folderIn(const std::vector<std::string>& resources) {
    for (const std::string& one : resources) {
        QString folder = QString::fromStdString(one) + QStringLiteral("/handbook");
        if (QFileInfo::exists(folder + QStringLiteral("/index.md"))) return folder;
    }
    return {};
}

}  // namespace handbook
