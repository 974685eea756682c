// SPDX-License-Identifier: GPL-3.0-or-later
// Papers looked at with the tools that anyone has: pdftotext, pdfinfo, pdffonts, pdfimages, pdfdetach, pdftoppm
// (poppler-utils), qpdf and zbarimg.
#pragma once

#include <gtest/gtest.h>

#include <QDir>
#include <QProcess>
#include <QRectF>
#include <QRegularExpression>
#include <set>
#include <string>
#include <vector>

#include "commands/verb.h"
#include "exchange/read_file.h"
#include "units/text.h"

namespace pdf_tools {

inline std::vector<std::string> designs() {
    std::vector<std::string> all{COILWRIGHT_SOURCE_DIR "/tests/faults/sample.coilwright"};
    for (const char* folder : {COILWRIGHT_SOURCE_DIR "/tests/references", COILWRIGHT_SOURCE_DIR "/demo-projects"}) {
        const QDir top(folder);
        for (const QString& file : top.entryList({"*.coilwright"}, QDir::Files))
            all.push_back(top.filePath(file).toStdString());
        for (const QString& inside : top.entryList(QDir::Dirs | QDir::NoDotAndDotDot))
            for (const QString& file : QDir(top.filePath(inside)).entryList({"*.coilwright"}, QDir::Files))
                all.push_back(top.filePath(inside + "/" + file).toStdString());
    }
    return all;
}

/// Standard output of a program; fails the test if it cannot be run or returns anything but 0.
inline QString output(const QString& program, const QStringList& arguments) {
    QProcess process;
    process.start(program, arguments);
    EXPECT_TRUE(process.waitForFinished(20000)) << program.toStdString();
    EXPECT_EQ(process.exitCode(), 0) << program.toStdString() << ": " << process.readAllStandardError().toStdString();
    return QString::fromUtf8(process.readAllStandardOutput());
}

/// What makes up the recipe, as a person would write it down.
inline std::set<std::string> recipe(const commands::Opened& opened) {
    const design::Design& d = *opened.design;
    std::set<std::string> words;
    const auto part = [&](const auto& ref) {
        words.insert(ref.key);
        if (const auto* found = design::part(d, ref, opened.shop)) words.insert(found->title);
    };
    part(d.core.sheet);
    part(d.bobbin);
    for (const design::StackPart& one : d.core.stack) part(one.alloy);
    for (const design::Winding& winding : d.windings)
        if (!winding.foil) {
            part(winding.wire);
            if (const auto* wire = design::part(d, winding.wire, opened.shop)) {
                words.insert(units::writeExact(units::Kind::Length, wire->bareDiameter));
                words.insert(units::writeExact(units::Kind::Length, wire->overallDiameter));
            }
        }
    for (const design::Place& place : d.coil)
        for (const design::Item& item : place.order) {
            if (const design::Section* s = item.section()) {
                words.insert(s->label());
                words.insert(units::shortest(s->turns) + " turns");
                if (s->interlayer) part(s->interlayer->insulation);
            }
            if (const design::Barrier* b = item.barrier()) part(b->ply.insulation);
        }
    words.erase("");
    return words;
}

/// Whether `word` stands in `text` with no letter or digit beside it.
inline bool stands(const QString& text, const std::string& word) {
    const QString pattern = QStringLiteral("(?<![\\w.])") + QRegularExpression::escape(QString::fromStdString(word)) +
                            QStringLiteral("(?![\\w.])");
    return QRegularExpression(
               pattern, QRegularExpression::CaseInsensitiveOption | QRegularExpression::UseUnicodePropertiesOption)
        .match(text)
        .hasMatch();
}

/// Everything that the file says in one way or another: text, metadata, and all streams unpacked.
inline QString everything(const QString& path) {
    const QString open = path + ".open";
    (void)output("qpdf", {"--qdf", "--object-streams=disable", path, open});
    QString all =
        output("pdftotext", {"-layout", path, "-"}) + output("pdfinfo", {path}) + output("pdfinfo", {"-meta", path});
    const QString raw = QString::fromLatin1(QByteArray::fromStdString(exchange::readFile(open.toStdString())));
    // Strings in the file's objects; drawing commands are numbers of no meaning outside the page.
    const QRegularExpression strings("\\(([^()]*)\\)");
    for (auto match = strings.globalMatch(raw); match.hasNext();) all += match.next().captured(1) + '\n';
    return all;
}

struct Word {
    QRectF box;
    QString text;
};

/// Words of each page with the page's size.
inline std::vector<std::pair<QSizeF, std::vector<Word>>> pagesOf(const QString& path) {
    std::vector<std::pair<QSizeF, std::vector<Word>>> pages;
    const QRegularExpression page("<page width=\"([\\d.]+)\" height=\"([\\d.]+)\""),
        word("<word xMin=\"([-\\d.]+)\" yMin=\"([-\\d.]+)\" xMax=\"([-\\d.]+)\" yMax=\"([-\\d.]+)\">(.*)</word>");
    for (const QString& line : output("pdftotext", {"-bbox", path, "-"}).split('\n')) {
        if (const auto match = page.match(line); match.hasMatch())
            pages.push_back({{match.captured(1).toDouble(), match.captured(2).toDouble()}, {}});
        if (const auto match = word.match(line); match.hasMatch())
            pages.back().second.push_back({QRectF(QPointF(match.captured(1).toDouble(), match.captured(2).toDouble()),
                                                  QPointF(match.captured(3).toDouble(), match.captured(4).toDouble())),
                                           match.captured(5)});
    }
    return pages;
}

/// No word outside the margins or over another one.
inline void expectApartAndInside(const std::vector<std::pair<QSizeF, std::vector<Word>>>& pages) {
    constexpr double marginPt = 42.5;  // 15 mm
    int page = 0;
    for (const auto& [size, words] : pages) {
        ++page;
        const QRectF inside(QPointF(marginPt - 1, marginPt - 1),
                            QPointF(size.width() - marginPt + 1, size.height() - marginPt + 1));
        for (std::size_t a = 0; a < words.size(); ++a) {
            EXPECT_TRUE(inside.contains(words[a].box)) << "page " << page << ": " << words[a].text.toStdString();
            // Boxes are as high as the type's tallest letters; what counts is the body between them.
            const auto body = [](const QRectF& box) {
                return box.adjusted(0.3, 0.3 * box.height(), -0.3, -0.25 * box.height());
            };
            for (std::size_t b = a + 1; b < words.size(); ++b)
                EXPECT_FALSE(body(words[a].box).intersects(body(words[b].box)))
                    << "page " << page << ": " << words[a].text.toStdString() << " over "
                    << words[b].text.toStdString();
        }
    }
}

/// Sound, every font embedded, nothing but vectors.
inline void expectSoundVectors(const QString& path) {
    (void)output("qpdf", {"--check", path});
    const QStringList fonts = output("pdffonts", {path}).split('\n', Qt::SkipEmptyParts);
    ASSERT_GE(fonts.size(), 3);
    for (qsizetype k = 2; k < fonts.size(); ++k) {
        EXPECT_TRUE(fonts[k].contains("DejaVuSans")) << fonts[k].toStdString();
        EXPECT_TRUE(fonts[k].contains(QRegularExpression("CID TrueType\\s+\\S+\\s+yes"))) << fonts[k].toStdString();
    }
    EXPECT_EQ(output("pdfimages", {"-list", path}).split('\n', Qt::SkipEmptyParts).size(), 2);
}

/// What the square code at the foot of an A4 paper's first page says, as a scanner of 300 dots an inch reads it.
inline std::string squareCodeOf(const QString& path) {
    const QString picture = path + "-foot";
    (void)output("pdftoppm", {"-r", "300", "-f", "1", "-l", "1", "-x", "2050", "-y", "3100", "-W", "430", "-H", "408",
                              "-png", "-singlefile", path, picture});
    return output("zbarimg", {"-q", "--raw", picture + ".png"}).trimmed().toStdString();
}

inline std::string named(const testing::TestParamInfo<std::string>& info) {
    std::string name = info.param.substr(info.param.rfind('/') + 1);
    name = name.substr(0, name.find('.'));
    std::replace_if(
        name.begin(), name.end(), [](unsigned char c) { return !std::isalnum(c); }, '_');
    return name;
}

}  // namespace pdf_tools
