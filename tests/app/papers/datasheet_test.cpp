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
#include "pdf_tools.h"
#include "units/text.h"

using namespace pdf_tools;

namespace datasheet_test {

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
    expectSoundVectors(path);
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

TEST_P(DatasheetPdf, ItsSquareCodeSaysPartRevisionAndDigest) {
    const commands::Opened opened = commands::openDesign(GetParam());
    const auto& d = *opened.design;
    EXPECT_EQ(squareCodeOf(pdf()),
              (d.partNumber.empty() ? d.name : d.partNumber) + " " + d.revision + " " + opened.digest.substr(0, 10));
}

TEST_P(DatasheetPdf, IsTheSameBytesTwice) {
    const std::string first = exchange::readFile(pdf().toStdString());
    EXPECT_EQ(exchange::readFile(pdf().toStdString()), first);
}

TEST_P(DatasheetPdf, KeepsItsTextWithinTheMarginsAndApart) {
    for (const char* format : {"a4", "letter"}) {
        const auto pages = pagesOf(pdf(format));
        ASSERT_GE(pages.size(), 2u);
        EXPECT_LE(pages.size(), 3u);
        EXPECT_NEAR(pages[0].first.width(), std::string(format) == "a4" ? 595.3 : 612, 0.5);
        expectApartAndInside(pages);
    }
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

}  // namespace datasheet_test
