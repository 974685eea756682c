// SPDX-License-Identifier: GPL-3.0-or-later
// The datasheet as a customer gets it, looked at with the tools that anyone has: pdftotext, pdfinfo, pdffonts,
// pdfimages (poppler-utils) and qpdf.
#include "papers/datasheet.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <fstream>
#include <set>
#include <sstream>

#include "commands/run.h"
#include "commands/verb.h"
#include "exchange/read_file.h"
#include "exchange/write_file.h"
#include "units/text.h"

namespace {

std::vector<std::string> designs() {
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
QString output(const QString& program, const QStringList& arguments) {
    QProcess process;
    process.start(program, arguments);
    EXPECT_TRUE(process.waitForFinished(20000)) << program.toStdString();
    EXPECT_EQ(process.exitCode(), 0) << program.toStdString() << ": " << process.readAllStandardError().toStdString();
    return QString::fromUtf8(process.readAllStandardOutput());
}

class DatasheetPdf : public testing::TestWithParam<std::string> {
protected:
    QTemporaryDir folder;
    QString pdf(const char* format = "a4") {
        const QString path = folder.filePath(QStringLiteral("sheet-%1.pdf").arg(format));
        std::ostringstream out, err;
        EXPECT_EQ(commands::run({"write", GetParam(), "--datasheet", path.toStdString(), "--paper", format}, out, err),
                  0)
            << err.str();
        EXPECT_EQ(out.str(), path.toStdString() + "\n");
        return path;
    }
};

/// What makes up the recipe, as a person would write it down.
std::set<std::string> recipe(const commands::Opened& opened) {
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
bool stands(const QString& text, const std::string& word) {
    const QString pattern = QStringLiteral("(?<![\\w.])") + QRegularExpression::escape(QString::fromStdString(word)) +
                            QStringLiteral("(?![\\w.])");
    return QRegularExpression(
               pattern, QRegularExpression::CaseInsensitiveOption | QRegularExpression::UseUnicodePropertiesOption)
        .match(text)
        .hasMatch();
}

/// Everything that the file says in one way or another: text, metadata, and all streams unpacked.
QString everything(const QString& path) {
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

/// The same unit under a neutral name: what the shop calls its designs is its own business.
design::Design neutral(design::Design design) {
    design.name = "Unit";
    design.brief.use.clear();
    design.brief.isolation.clear();
    return design;
}

TEST_P(DatasheetPdf, NeverTellsHowTheUnitIsWound) {
    const commands::Opened opened = commands::openDesign(GetParam());
    const design::Design design = neutral(*opened.design);
    const QString path = folder.filePath("sheet.pdf");
    papers::writeDatasheet(design, *analysis::answer(design, opened.shop), opened.shop, path.toStdString());
    const QString said = everything(path);
    ASSERT_TRUE(said.contains("Pinout"));
    for (const std::string& word : recipe(opened))
        EXPECT_FALSE(stands(said, word)) << word << " in the datasheet of " << GetParam();
    for (const char* word : {"turns", "turn", "wire", "AWG", "layer", "layers", "alloy", "lamination", "interleaved",
                             "nickel", "silicon", "cobalt", "section", "barrier", "fill", "build", "winding order"})
        EXPECT_FALSE(stands(said, word)) << word;
}

TEST_P(DatasheetPdf, NeverTellsANumberOfTurns) {
    // With half a turn more the numbers are like no rounded value and no axis: one that is found is one that was told.
    const commands::Opened opened = commands::openDesign(GetParam());
    design::Design design = neutral(*opened.design);
    for (design::Place& place : design.coil)
        for (design::Item& item : place.order)
            if (design::Section* s = item.section()) s->turns = std::floor(s->turns) + 0.5;
    std::set<std::string> numbers;
    for (const design::Winding& winding : design.windings) {
        numbers.insert(units::shortest(design::conductorTurns(design, winding)));
        numbers.insert(units::shortest(std::abs(design::seriesTurns(design, winding))));
        for (const design::Section* s : design::sectionsOf(design, winding)) numbers.insert(units::shortest(s->turns));
    }
    numbers.erase("0");  // a winding whose sections cancel
    const QString path = folder.filePath("sheet.pdf");
    papers::writeDatasheet(design, *analysis::answer(design, opened.shop), opened.shop, path.toStdString());
    const QString said = everything(path);
    for (const std::string& number : numbers) EXPECT_FALSE(stands(said, number)) << number;
}

TEST_P(DatasheetPdf, IsSoundAllVectorAndEmbedsItsFonts) {
    const QString path = pdf();
    (void)output("qpdf", {"--check", path});
    const QStringList fonts = output("pdffonts", {path}).split('\n', Qt::SkipEmptyParts);
    ASSERT_GE(fonts.size(), 3);
    for (qsizetype k = 2; k < fonts.size(); ++k) {
        EXPECT_TRUE(fonts[k].contains("DejaVuSans")) << fonts[k].toStdString();
        EXPECT_TRUE(fonts[k].contains(QRegularExpression("CID TrueType\\s+\\S+\\s+yes"))) << fonts[k].toStdString();
    }
    EXPECT_EQ(output("pdfimages", {"-list", path}).split('\n', Qt::SkipEmptyParts).size(), 2);
    EXPECT_EQ(output("pdfdetach", {"-list", path}).trimmed(), "0 embedded files");
}

TEST_P(DatasheetPdf, SaysInItsMetadataItsTitleAndItsDayAndNothingElse) {
    const commands::Opened opened = commands::openDesign(GetParam());
    qputenv("SOURCE_DATE_EPOCH", "1773446400");  // 2026-03-14 00:00:00 UTC
    const QString path = pdf();
    qunsetenv("SOURCE_DATE_EPOCH");
    std::set<std::string> keys;
    const QString info = output("pdfinfo", {"-isodates", path});
    for (const QString& line : info.split('\n', Qt::SkipEmptyParts)) keys.insert(line.section(':', 0, 0).toStdString());
    EXPECT_TRUE(info.contains(
        QRegularExpression("Title:\\s+" + QRegularExpression::escape(QString::fromStdString(opened.design->name)))));
    EXPECT_TRUE(info.contains(QRegularExpression("CreationDate:\\s+2026-03-14T00:00:00Z"))) << info.toStdString();
    EXPECT_TRUE(output("pdftotext", {path, "-"}).contains("2026-03-14"));
    for (const char* key : {"Author", "Subject", "Keywords", "ModDate"}) EXPECT_FALSE(keys.contains(key)) << key;
    EXPECT_EQ(output("pdfinfo", {"-meta", path}), "");
}

TEST_P(DatasheetPdf, IsTheSameBytesTwice) {
    const std::string first = exchange::readFile(pdf().toStdString());
    EXPECT_EQ(exchange::readFile(pdf().toStdString()), first);
}

struct Word {
    QRectF box;
    QString text;
};

/// Words of each page with the page's size.
std::vector<std::pair<QSizeF, std::vector<Word>>> pagesOf(const QString& path) {
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

TEST_P(DatasheetPdf, KeepsItsTextWithinTheMarginsAndApart) {
    constexpr double marginPt = 15 / 25.4 * 72;
    for (const char* format : {"a4", "letter"}) {
        const auto pages = pagesOf(pdf(format));
        ASSERT_GE(pages.size(), 2u);
        EXPECT_LE(pages.size(), 3u);
        EXPECT_NEAR(pages[0].first.width(), std::string(format) == "a4" ? 595.3 : 612, 0.5);
        for (const auto& [size, words] : pages) {
            const QRectF inside(QPointF(marginPt - 1, marginPt - 1),
                                QPointF(size.width() - marginPt + 1, size.height() - marginPt + 1));
            for (std::size_t a = 0; a < words.size(); ++a) {
                EXPECT_TRUE(inside.contains(words[a].box)) << words[a].text.toStdString();
                // Boxes are as high as the type's tallest letters; what counts is the body between them.
                const auto body = [](const QRectF& box) {
                    return box.adjusted(0.3, 0.3 * box.height(), -0.3, -0.25 * box.height());
                };
                for (std::size_t b = a + 1; b < words.size(); ++b)
                    EXPECT_FALSE(body(words[a].box).intersects(body(words[b].box)))
                        << format << ": " << words[a].text.toStdString() << " over " << words[b].text.toStdString();
            }
        }
    }
}

std::string named(const testing::TestParamInfo<std::string>& info) {
    std::string name = info.param.substr(info.param.rfind('/') + 1);
    name = name.substr(0, name.find('.'));
    std::replace_if(
        name.begin(), name.end(), [](unsigned char c) { return !std::isalnum(c); }, '_');
    return name;
}
INSTANTIATE_TEST_SUITE_P(Designs, DatasheetPdf, testing::ValuesIn(designs()), named);

TEST(DatasheetText, FitsLongNamesAndSaysWhatItCannotPrint) {
    const std::string sample = COILWRIGHT_SOURCE_DIR "/tests/faults/sample.coilwright";
    const commands::Opened opened = commands::openDesign(sample);
    design::Design design = *opened.design;
    design.name = "A transformer with a name of sixty letters and more, to see \u4E2D";
    design.partNumber = "A-VERY-LONG-PART-NUMBER-0123456789-0123456789";
    const QTemporaryDir folder;
    const QString path = folder.filePath("long.pdf");
    papers::writeDatasheet(design, *analysis::answer(design, opened.shop), opened.shop, path.toStdString());
    EXPECT_TRUE(output("pdftotext", {path, "-"}).contains("U+4E2D"));
    for (const auto& [size, words] : pagesOf(path))
        for (const Word& word : words)
            EXPECT_TRUE(QRectF(QPointF(0, 0), size).adjusted(40, 40, -40, -40).contains(word.box))
                << word.text.toStdString();
}

TEST(DatasheetText, AnUnknownPaperIsRefused) {
    std::ostringstream out, err;
    const std::string sample = COILWRIGHT_SOURCE_DIR "/tests/faults/sample.coilwright";
    EXPECT_EQ(commands::run({"write", sample, "--datasheet", "x.pdf", "--paper", "a5"}, out, err), 2);
    EXPECT_EQ(err.str(), "command line: --paper: found \"a5\"; allowed is a4 or letter.\n");
}

TEST(DatasheetText, AFolderThatIsNotThereIsSaid) {
    std::ostringstream out, err;
    const std::string sample = COILWRIGHT_SOURCE_DIR "/tests/faults/sample.coilwright";
    EXPECT_EQ(commands::run({"write", sample, "--datasheet", "/nowhere/at/all.pdf"}, out, err), 2);
    EXPECT_EQ(out.str(), "");
    EXPECT_NE(err.str().find("/nowhere/at/all.pdf"), std::string::npos);
}

}  // namespace
