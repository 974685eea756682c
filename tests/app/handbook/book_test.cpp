// SPDX-License-Identifier: GPL-3.0-or-later
// The handbook as one PDF, looked at with the tools that anyone has.
#include "handbook/book.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QFontDatabase>
#include <QRawFont>
#include <QTemporaryDir>

#include "commands/run.h"
#include "exchange/read_file.h"
#include "handbook/pages.h"
#include "json/text.h"
#include "papers/pdf_outline.h"
#include "pdf_tools.h"

namespace book_test {

const QString folder = QStringLiteral(COILWRIGHT_SOURCE_DIR "/resources/handbook");

/// Without the ligatures that a PDF's letters are.
QString plain(const QString& text) {
    return text.normalized(QString::NormalizationForm_KC);
}

/// Painted once a program for each format.
const QByteArray& book(papers::Format format) {
    static std::map<papers::Format, QByteArray> all;
    QByteArray& one = all[format];
    if (one.isEmpty()) one = handbook::paintedBook(folder, format, "2026-03-14");
    return one;
}

class HandbookBook : public testing::TestWithParam<papers::Format> {
protected:
    QTemporaryDir place;
    QString path = place.filePath("handbook.pdf");

    void SetUp() override {
        QFile file(path);
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(book(GetParam()));
    }
};

TEST_P(HandbookBook, EveryPageBeginsWhereTheContentsSay) {
    QStringList sheets = plain(pdf_tools::output("pdftotext", {"-layout", path, "-"})).split('\f');
    sheets.removeLast();
    const QString contents = plain(pdf_tools::output("pdftotext", {path, "-"})).simplified();
    const auto pages = handbook::pages(folder);
    qsizetype from = 0;
    for (const handbook::Page& page : pages) {
        qsizetype sheet = from;
        while (sheet < sheets.size() &&
               !sheets[sheet].contains(QRegularExpression("\\n *" + QRegularExpression::escape(page.title) + " *\\n")))
            ++sheet;
        ASSERT_LT(sheet, sheets.size()) << page.title.toStdString();
        EXPECT_TRUE(sheets[sheet].contains(QStringLiteral("page %1 of %2").arg(sheet + 1).arg(sheets.size())));
        if (page.file != pages.front().file) {
            EXPECT_TRUE(contents.contains(QStringLiteral("%1 (page %2)").arg(page.title).arg(sheet + 1)))
                << page.title.toStdString() << " on " << sheet + 1;
        }
        from = sheet + 1;
    }
}

TEST_P(HandbookBook, EveryHeadingIsInItAndNoneAtTheFootOfASheet) {
    QStringList headings;
    for (const handbook::Page& page : handbook::pages(folder))
        for (const QString& line : page.text.split('\n'))
            if (line.startsWith("## ") || line.startsWith("### "))
                headings << plain(line.section(' ', 1).remove('`')).simplified();
    const QString all = plain(pdf_tools::output("pdftotext", {path, "-"})).simplified();
    for (const QString& heading : headings) EXPECT_TRUE(all.contains(heading)) << heading.toStdString();
    for (const QString& sheet : plain(pdf_tools::output("pdftotext", {"-layout", path, "-"})).split('\f')) {
        const QStringList lines = sheet.split(QRegularExpression("\\s*\n\\s*"), Qt::SkipEmptyParts);
        if (lines.size() > 2) {
            EXPECT_FALSE(headings.contains(lines[lines.size() - 2].simplified())) << sheet.right(200).toStdString();
        }
    }
}

TEST_P(HandbookBook, NothingLiesOutsideTheMarginsOrOverAnything) {
    pdf_tools::expectApartAndInside(pdf_tools::pagesOf(path));
}

TEST_P(HandbookBook, IsSoundWithItsFontsInIt) {
    (void)pdf_tools::output("qpdf", {"--check", path});
    const QStringList fonts = pdf_tools::output("pdffonts", {path}).split('\n', Qt::SkipEmptyParts);
    ASSERT_GE(fonts.size(), 4);
    for (qsizetype k = 2; k < fonts.size(); ++k) EXPECT_TRUE(fonts[k].contains("DejaVuSans")) << fonts[k].toStdString();
}

/// As another program reads it: every page with its headings, each leading where it stands.
TEST_P(HandbookBook, TheOutlineLeadsToEveryPageAndHeading) {
    const auto read = json::read(pdf_tools::output("qpdf", {"--json", "--json-key=outlines", path}).toStdString(),
                                 path.toStdString());
    const auto& outlines = read.at("outlines");
    QStringList sheets = plain(pdf_tools::output("pdftotext", {"-layout", path, "-"})).split('\f');
    const auto standsOn = [&](const json::Value& entry) {
        const QString title = plain(QString::fromStdString(entry.at("title").get<std::string>())).simplified();
        const int sheet = entry.at("destpageposfrom1").get<int>();
        EXPECT_TRUE(sheets.value(sheet - 1).simplified().contains(title)) << title.toStdString() << " on " << sheet;
        return title;
    };
    const auto pages = handbook::pages(folder);
    ASSERT_EQ(outlines.size(), pages.size());
    for (std::size_t k = 0; k < pages.size(); ++k) {
        EXPECT_EQ(standsOn(outlines[k]), plain(pages[k].title));
        QStringList headings, kids;
        for (const QString& line : pages[k].text.split('\n'))
            if (line.startsWith("## ")) headings << plain(line.section(' ', 1).remove('`')).simplified();
        for (const auto& kid : outlines[k].at("kids")) kids << standsOn(kid);
        EXPECT_EQ(kids, headings) << pages[k].title.toStdString();
    }
}

TEST(PdfOutline, RefusesWhatItDoesNotKnow) {
    EXPECT_THROW((void)papers::withOutline("no PDF", {{"a", 1, 0}}), std::runtime_error);
    const QByteArray& pdf = book(papers::Format::A4);
    EXPECT_THROW((void)papers::withOutline(pdf, {{"a", 1000, 0}}), std::runtime_error);
    EXPECT_THROW((void)papers::withOutline(pdf, {{"a", 1, 1}}), std::runtime_error);
    EXPECT_EQ(papers::withOutline(pdf, {}), pdf);
}

INSTANTIATE_TEST_SUITE_P(Formats, HandbookBook, testing::Values(papers::Format::A4, papers::Format::Letter),
                         [](const auto& one) { return one.param == papers::Format::A4 ? "A4" : "Letter"; });

TEST(HandbookType, HasEveryCharacterOfThePages) {
    const QRawFont sans = QRawFont::fromFont(QFont("DejaVu Sans")),
                   mono = QRawFont::fromFont(QFont("DejaVu Sans Mono"));
    for (const handbook::Page& page : handbook::pages(folder))
        for (const char32_t one : page.text.toUcs4())
            if (one != U'\n') {
                EXPECT_TRUE(sans.supportsCharacter(one) && mono.supportsCharacter(one))
                    << page.file.toStdString() << ": U+" << std::hex << static_cast<unsigned>(one);
            }
}

TEST(HandbookVerb, WritesTheBookAndRefusesInOneSentence) {
    const QTemporaryDir place;
    const std::string path = place.filePath("b.pdf").toStdString();
    std::ostringstream out, err;
    EXPECT_EQ(commands::run({"handbook", "--to", path}, out, err), 0) << err.str();
    EXPECT_EQ(out.str(), path + "\n");
    EXPECT_TRUE(exchange::readFile(path).starts_with("%PDF"));
    EXPECT_EQ(commands::run({"handbook"}, out, err), 2);
    EXPECT_EQ(err.str(), "command line: --to: found no file; allowed is the PDF file to write.\n");
}

}  // namespace book_test
