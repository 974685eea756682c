// SPDX-License-Identifier: GPL-3.0-or-later
// The winding sheet as the winder holds it: its text is read with pdftotext and counted anew against sums that are
// taken from the design alone.
#include "papers/winding_sheet.h"

#include <QTemporaryDir>
#include <cmath>
#include <fstream>
#include <sstream>

#include "commands/run.h"
#include "exchange/design_json.h"
#include "pdf_tools.h"

using namespace pdf_tools;

namespace winding_sheet_test {

/// All that the papers print, one blank between words, so that a broken line hides nothing.
QString flat(const QString& path) {
    return output("pdftotext", {"-raw", path, "-"}).simplified();
}
double numberIn(const QString& text) {
    bool good = false;
    const double value = text.toDouble(&good);
    EXPECT_TRUE(good) << text.toStdString();
    return value;
}

class WindingSheetPdf : public testing::TestWithParam<std::string> {
protected:
    QTemporaryDir folder;
    QString pdf(const char* format = "a4", const char* name = "sheet") {
        const QString path = folder.filePath(QStringLiteral("%1-%2.pdf").arg(name, format));
        std::ostringstream out, err;
        EXPECT_EQ(
            commands::run({"write", GetParam(), "--winding-sheet", path.toStdString(), "--paper", format}, out, err), 0)
            << err.str();
        EXPECT_EQ(out.str(), path.toStdString() + "\n");
        return path;
    }
    commands::Opened opened = commands::openDesign(GetParam());
};

TEST_P(WindingSheetPdf, LayersAddUpToTheTurnsOfTheDesign) {
    // Sections that lie in layers have a table of them; wild ones and foils say their turns in words.
    double expected = 0;
    for (const auto& place : opened.design->coil) {
        std::string hand;
        for (const auto& item : place.order) {
            const auto* s = item.section();
            const bool joins = s != nullptr && !s->hand.empty() && s->hand == hand;
            hand = s != nullptr ? s->hand : "";
            if (s == nullptr || joins || s->lay == design::Lay::Random) continue;
            if (design::winding(*opened.design, s->winding)->foil) continue;
            expected += s->turns;
        }
    }
    const QRegularExpression row("(?<![\\d.])(\\d+) (low|high) → (low|high) ([\\d.]+) ([\\d.]+)");
    double turns = 0, counter = 0;
    int due = 1;
    const QString text = flat(pdf());
    for (auto match = row.globalMatch(text); match.hasNext();) {
        const auto layer = match.next();
        const int number = layer.captured(1).toInt();
        if (number == 1) {
            due = 1;
            counter = 0;
        }
        EXPECT_EQ(number, due++);
        EXPECT_NE(layer.captured(2), layer.captured(3));
        counter += numberIn(layer.captured(4));
        EXPECT_NEAR(numberIn(layer.captured(5)), counter, 1e-6) << "counter at the end of layer " << number;
        turns += numberIn(layer.captured(4));
    }
    EXPECT_NEAR(turns, expected, 1e-6);
}

TEST_P(WindingSheetPdf, EverySectionSaysItsTurnsEndsAndWire) {
    const QString text = flat(pdf());
    for (const auto& place : opened.design->coil)
        for (const auto& item : place.order) {
            if (const auto* s = item.section()) {
                const QString label = QString::fromStdString(s->label());
                const QRegularExpression title(QRegularExpression::escape(label) + ", ([\\d.]+) turns?");
                const auto match = title.match(text);
                ASSERT_TRUE(match.hasMatch()) << s->label();
                EXPECT_NEAR(numberIn(match.captured(1)), s->turns, 1e-9);
                for (const char* end : {"Start of ", "Finish of "})
                    EXPECT_TRUE(text.contains(end + label + ":")) << end << s->label();
                EXPECT_TRUE(text.contains("Measure " + label + ",")) << s->label();
            }
            if (const auto* shield = item.shield()) {
                EXPECT_TRUE(text.contains("Shield, " + QString::fromStdString(shield->name))) << shield->name;
                EXPECT_TRUE(text.contains("must not touch"));
            }
        }
    for (const auto& winding : opened.design->windings)
        if (const auto* wire = design::part(*opened.design, winding.wire, opened.shop)) {
            const QString bare = QString::number(wire->bareDiameter * 1000, 'f', 3) + " mm bare";
            EXPECT_TRUE(text.contains(bare)) << bare.toStdString();
        }
}

TEST_P(WindingSheetPdf, EveryTerminalIsServedAtItsPinOrLead) {
    const QString text = flat(pdf());
    // Pins that only stand there are not the winder's business.
    std::set<std::string> reached;
    for (const auto& winding : opened.design->windings) {
        reached.insert({winding.start, winding.finish});
        for (const auto& tap : winding.taps) reached.insert(tap.terminal);
    }
    for (const auto& place : opened.design->coil)
        for (const auto& item : place.order) {
            if (const auto* s = item.section()) reached.insert({s->start, s->finish});
            if (const auto* shield = item.shield()) reached.insert(shield->terminal);
        }
    for (const auto& terminal : opened.design->terminals) {
        if (!reached.contains(terminal.name)) continue;
        if (terminal.pin > 0) {
            const QRegularExpression pin(QStringLiteral("pin %1(?!\\d)").arg(terminal.pin));
            EXPECT_TRUE(pin.match(text).hasMatch()) << terminal.pin;
        } else {
            EXPECT_TRUE(text.contains("(" + QString::fromStdString(terminal.name) + ")")) << terminal.name;
            if (!terminal.leadColour.empty()) {
                EXPECT_TRUE(text.contains(QString::fromStdString(terminal.leadColour) + " lead")) << terminal.name;
            }
        }
    }
}

TEST_P(WindingSheetPdf, SheetsAreCountedAndWeighed) {
    const QString text = flat(pdf());
    const auto& core = opened.design->core;
    const auto* sheet = design::part(*opened.design, core.sheet, opened.shop);
    for (const auto& part : core.stack) {
        const auto* alloy = design::part(*opened.design, part.alloy, opened.shop);
        const double count = std::round(core.height * core.stackingFactor * part.share / part.thickness);
        // Outline less windows, by hand: two windows on a shell, one on two legs.
        const bool shell = core.kind == design::CoreKind::Shell;
        const double wide = sheet->tongue + (shell ? 2 : 1) * (sheet->windowWidth + sheet->outerLeg);
        const double area =
            wide * (sheet->windowHeight + 2 * sheet->yoke) - (shell ? 2 : 1) * sheet->windowWidth * sheet->windowHeight;
        if (!(alloy->density > 0)) {
            const QRegularExpression row("Count: (\\d+) sheets? of " +
                                         QRegularExpression::escape(QString::fromStdString(alloy->title)));
            EXPECT_EQ(numberIn(row.match(text).captured(1)), count);
            continue;
        }
        const double grams = count * area * part.thickness * alloy->density * 1000;
        const QRegularExpression row("Count AND weigh: (\\d+) sheets? of " +
                                     QRegularExpression::escape(QString::fromStdString(alloy->title)) +
                                     ", [\\d.]+ mm thick, ([\\d.]+) g");
        const auto match = row.match(text);
        ASSERT_TRUE(match.hasMatch()) << alloy->title;
        EXPECT_EQ(numberIn(match.captured(1)), count);
        EXPECT_NEAR(numberIn(match.captured(2)), grams, 0.06);
    }
}

TEST_P(WindingSheetPdf, WireToFetchCoversTheWireInTheCoil) {
    // Length by the middle of the design's own window: no turn is shorter than one on the bobbin, none longer than one
    // at the window's edge.
    const QString text = flat(pdf());
    double most = 0, least = 0;
    const auto& d = *opened.design;
    const auto* sheet = design::part(d, d.core.sheet, opened.shop);
    const double around = 2 * (sheet->tongue + d.core.height);
    for (const auto& winding : d.windings)
        if (!winding.foil)
            for (const auto* s : design::sectionsOf(d, winding)) {
                least += s->turns * winding.strands * around;
                most += (s->turns * (around + 8 * sheet->windowWidth) + 1) * winding.strands * 1.1 + 2;
            }
    double metres = 0;
    const QRegularExpression row("overall, for .*? ([\\d.]+) m, ([\\d.]+) (kg|g)");
    for (auto match = row.globalMatch(text); match.hasNext();) metres += numberIn(match.next().captured(1));
    EXPECT_GT(metres, least);
    EXPECT_LT(metres, most);
}

TEST_P(WindingSheetPdf, IsSoundAllVectorAndEmbedsItsFonts) {
    expectSoundVectors(pdf());
}

TEST_P(WindingSheetPdf, OpensAgainAsTheDesign) {
    const QString path = pdf();
    EXPECT_TRUE(output("pdfdetach", {"-list", path}).startsWith("1 embedded file"));
    const QString out = folder.filePath("again.coilwright");
    (void)output("pdfdetach", {"-save", "1", "-o", out, path});
    const commands::Opened again = commands::openDesign(out.toStdString());
    EXPECT_EQ(again.digest, opened.digest);
}

TEST_P(WindingSheetPdf, IsTheSameBytesTwice) {
    const std::string first = exchange::readFile(pdf("a4", "one").toStdString());
    EXPECT_EQ(exchange::readFile(pdf("a4", "two").toStdString()), first);
}

TEST_P(WindingSheetPdf, KeepsItsTextWithinTheMarginsAndApart) {
    for (const char* format : {"a4", "letter"}) {
        const auto pages = pagesOf(pdf(format));
        EXPECT_NEAR(pages[0].first.width(), std::string(format) == "a4" ? 595.3 : 612, 0.5);
        expectApartAndInside(pages);
        const QString count = QStringLiteral("%1").arg(pages.size());
        for (std::size_t k = 0; k < pages.size(); ++k) {
            QStringList words;
            for (const Word& word : pages[k].second) words << word.text;
            EXPECT_TRUE(words.join(' ').contains(QStringLiteral("%1 of %2").arg(k + 1).arg(count)));
        }
    }
}

TEST_P(WindingSheetPdf, ItsSquareCodeReadsBack) {
    const auto& d = *opened.design;
    EXPECT_EQ(squareCodeOf(pdf()),
              (d.partNumber.empty() ? d.name : d.partNumber) + " " + d.revision + " " + opened.digest.substr(0, 10));
}

INSTANTIATE_TEST_SUITE_P(Designs, WindingSheetPdf, testing::ValuesIn(designs()), named);

TEST(WindingSheetText, LongNamesAndOtherScriptsStayOnThePage) {
    const commands::Opened opened = commands::openDesign(COILWRIGHT_SOURCE_DIR "/tests/faults/sample.coilwright");
    design::Design design = *opened.design;
    design.name = "A transformer with a name of sixty letters and more, to see \u4E2D";
    design.partNumber = "A-VERY-LONG-PART-NUMBER-0123456789-0123456789-0123456789-012";
    const QTemporaryDir folder;
    const QString path = folder.filePath("long.pdf");
    const QByteArray bytes = papers::paintedPdf(
        papers::printed(shop::windingSheet(design, opened.shop, {"2026-03-14", std::string(64, 'a')}),
                        papers::Format::A4, exchange::writeDesign(design, opened.shop)));
    std::ofstream(path.toStdString(), std::ios::binary).write(bytes.constData(), bytes.size());
    EXPECT_TRUE(flat(path).contains("U+4E2D"));
    expectApartAndInside(pagesOf(path));
}

TEST(WindingSheetText, AnotherEndingIsRefused) {
    std::ostringstream out, err;
    const std::string sample = COILWRIGHT_SOURCE_DIR "/tests/faults/sample.coilwright";
    EXPECT_EQ(commands::run({"write", sample, "--winding-sheet", "x.doc"}, out, err), 2);
    EXPECT_EQ(err.str(), "command line: --winding-sheet: found \"x.doc\"; allowed is F.pdf or F.json.\n");
}

}  // namespace winding_sheet_test
