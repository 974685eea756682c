// SPDX-License-Identifier: GPL-3.0-or-later
// Traveller and bill of materials as PDFs, the content of all three papers as JSON, and the tie of the winding sheet to
// the winding program.
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QTemporaryDir>
#include <algorithm>
#include <cmath>
#include <sstream>

#include "command_line.h"
#include "exchange/design_json.h"
#include "exchange/write_file.h"
#include "pdf_tools.h"

using namespace pdf_tools;

namespace shop_papers_test {

constexpr const char* prices = COILWRIGHT_SOURCE_DIR "/resources/prices/example.csv";

class ShopPapers : public testing::TestWithParam<std::string> {
protected:
    QTemporaryDir folder;
    QString in(const QString& name) { return folder.filePath(name); }
    QString written(const std::string& option, const QString& name, std::vector<std::string> more = {}) {
        const QString path = in(name);
        std::vector<std::string> typed{"write", GetParam(), option, path.toStdString()};
        typed.insert(typed.end(), more.begin(), more.end());
        std::ostringstream out, err;
        EXPECT_EQ(commands::run(typed, out, err), 0) << err.str();
        EXPECT_EQ(out.str(), path.toStdString() + "\n");
        return path;
    }
    QJsonObject content(const std::string& option, std::vector<std::string> more = {}) {
        const QString path = written(option, "content.json", std::move(more));
        QJsonParseError fault;
        const auto text = QByteArray::fromStdString(exchange::readFile(path.toStdString()));
        const QJsonDocument read = QJsonDocument::fromJson(text, &fault);
        EXPECT_EQ(fault.error, QJsonParseError::NoError) << fault.errorString().toStdString();
        return read.object();
    }
    void expectGood(const std::string& option, std::vector<std::string> more = {}) {
        for (const char* format : {"a4", "letter"}) {
            std::vector<std::string> typed = more;
            typed.insert(typed.end(), {"--paper", format});
            const QString path = written(option, QStringLiteral("%1.pdf").arg(format), typed);
            expectSoundVectors(path);
            expectApartAndInside(pagesOf(path));
            EXPECT_EQ(exchange::readFile(written(option, "again.pdf", typed).toStdString()),
                      exchange::readFile(path.toStdString()));
            EXPECT_TRUE(output("pdfdetach", {"-list", path}).startsWith("1 embedded file"));
        }
    }
    commands::Opened opened = commands::openDesign(GetParam());
};

TEST_P(ShopPapers, TheTravellerIsOneGoodSheet) {
    expectGood("--traveller");
    const auto pages = pagesOf(in("a4.pdf"));
    EXPECT_LE(pages.size(), 2u);
    const QString text = output("pdftotext", {"-raw", in("a4.pdf"), "-"}).simplified();
    for (const auto& winding : opened.design->windings)
        EXPECT_TRUE(text.contains("Resistance of " + QString::fromStdString(winding.name) + ",")) << winding.name;
}

TEST_P(ShopPapers, TheBillIsAGoodPaperAndATable) {
    expectGood("--bill", {"--prices", prices});
    const QString csv =
        QString::fromStdString(exchange::readFile(written("--bill", "b.csv", {"--prices", prices}).toStdString()));
    const QStringList lines = csv.split('\n', Qt::SkipEmptyParts);
    double parts = 0, total = 0, others = 0;
    for (const QString& line : lines) {
        const double cost = line.section(',', -1).toDouble();
        if (line.startsWith("part,"))
            parts += cost;
        else if (line.startsWith("total,"))
            total = cost;
        else if (!line.startsWith('#') && !line.startsWith("kind,") && !line.startsWith("material,,all parts"))
            others += cost;
    }
    // Six digits a cell.
    EXPECT_NEAR(total, parts + others, 2e-4 * total);
    EXPECT_GT(parts, 0);
}

TEST_P(ShopPapers, TheContentCountsWhatTheDesignHas) {
    const QJsonObject sheet = content("--winding-sheet");
    double turns = 0, expected = 0;
    for (const auto& step : sheet["steps"].toArray())
        for (const auto& check : step.toObject()["checks"].toArray())
            EXPECT_LT(check.toObject()["low"].toDouble(), check.toObject()["expected"].toDouble());
    for (const auto& wire : sheet["materials"].toObject()["wires"].toArray())
        turns += wire.toObject()["turns"].toDouble();
    const auto& d = *opened.design;
    for (const auto& winding : d.windings)
        if (!winding.foil)
            for (const auto* section : design::sectionsOf(d, winding)) expected += section->turns;
    for (const auto& place : d.coil)
        for (const auto& item : place.order)
            if (const auto* shield = item.shield(); shield != nullptr && shield->form == design::ShieldForm::Winding)
                for (const auto& wire : sheet["materials"].toObject()["wires"].toArray())
                    if (wire.toObject()["winding"].toString().toStdString() == shield->name)
                        expected += wire.toObject()["turns"].toDouble();
    EXPECT_NEAR(turns, expected, 1e-9);
    const int legs = d.core.kind == design::CoreKind::TwoLeg ? 2 : 1;
    EXPECT_EQ(content("--traveller")["operations"].toArray().size(), 6 + legs + (d.filling ? 2 : 0));
    EXPECT_GE(content("--bill")["lines"].toArray().size(), 5);
}

TEST_P(ShopPapers, EveryStepOfTheWindingProgramIsAStepOfTheSheet) {
    std::map<QString, double> turnsOf;
    for (const auto& step : content("--winding-sheet")["steps"].toArray())
        turnsOf[step.toObject()["number"].toString()] = step.toObject()["turns"].toDouble();
    std::size_t said = 0;
    for (const char* leg : {"1", "2"}) {
        if (leg[0] == '2' && opened.design->core.kind != design::CoreKind::TwoLeg) continue;
        const QString program = QString::fromStdString(
            exchange::readFile(written("--program", "p.iso", {"--winder", "hand-guided", "--leg", leg}).toStdString()));
        const QRegularExpression comment("WINDING SHEET STEP (\\d+\\.\\d+), section \\S+, ([\\d.]+) turns"),
            any("WINDING SHEET STEP (\\d+\\.\\d+),");
        for (auto match = any.globalMatch(program); match.hasNext(); ++said)
            EXPECT_TRUE(turnsOf.contains(match.next().captured(1)));
        for (auto match = comment.globalMatch(program); match.hasNext();) {
            const auto step = match.next();
            EXPECT_GE(turnsOf[step.captured(1)], step.captured(2).toDouble());
        }
    }
    EXPECT_EQ(said, turnsOf.size());
}

/// Files for a customer that are no paper.
TEST_P(ShopPapers, OutsideFilesNeverTellHowTheUnitIsWound) {
    std::ostringstream out, err;
    const std::string netlist = in("n.cir").toStdString(), scattering = in("n.s2p").toStdString();
    if (commands::run({"write", GetParam(), "--netlist", netlist, "--terminals-only"}, out, err) != 0)
        GTEST_SKIP() << err.str();
    QString text = QString::fromStdString(exchange::readFile(netlist));
    const auto ports = opened.design->hookUps.front().ports.size();
    const std::string named = in(QStringLiteral("n.s%1p").arg(ports)).toStdString();
    if (commands::run({"write", GetParam(), "--touchstone", named}, out, err) == 0)
        text += QString::fromStdString(exchange::readFile(named));
    ASSERT_GT(text.size(), 500);
    for (const std::string& word : recipe(opened)) EXPECT_FALSE(stands(text, word)) << word;
    for (const char* word : {"turns", "wire", "AWG", "layer", "layers", "alloy", "lamination", "nickel", "silicon"})
        EXPECT_FALSE(stands(text, word)) << word;
}

INSTANTIATE_TEST_SUITE_P(Designs, ShopPapers, testing::ValuesIn(designs()), named);

TEST(ChangeNotices, BeginFromAKeptRevisionOrAnotherFile) {
    const QTemporaryDir folder;
    const std::string file = folder.filePath("unit.coilwright").toStdString();
    commands::Opened opened =
        commands::openDesign(COILWRIGHT_SOURCE_DIR "/demo-projects/microphone-input/microphone-input.coilwright");
    const auto put = [&](const std::string& path, const design::Design& design) {
        exchange::writeFile(path, exchange::writeDesign(design, opened.shop));
    };
    const auto run = [](const std::vector<std::string>& typed) {
        const auto result = command_line::run(typed);
        EXPECT_EQ(result.code, 0) << result.err;
        return result.out;
    };
    put(file, *opened.design);
    run({"revisions", file, "--keep", "as sampled", "--date", "2025-01-31"});
    design::Design next = *opened.design;
    next.revision = "Z";
    for (design::Item& item : next.coil.front().order)
        if (design::Section* s = item.section()) s->turns = s->turns + 3;
    put(file, next);
    const std::string inside = folder.filePath("in.json").toStdString(),
                      outside = folder.filePath("out.pdf").toStdString();
    EXPECT_EQ(run({"write", file, "--change-notice", inside, "--customer-notice", outside, "--since", "1", "--reason",
                   "three turns more", "--notice", "inductance is nearer its middle"}),
              inside + "\n" + outside + "\n");
    const QString told = QString::fromStdString(exchange::readFile(inside)),
                  seen = everything(QString::fromStdString(outside));
    for (const char* words : {"three turns more", " turns: ", "2025-01-31", "inductance is nearer its middle"})
        EXPECT_TRUE(told.contains(words)) << words;
    EXPECT_TRUE(seen.contains("2025-01-31"));
    EXPECT_TRUE(seen.contains("inductance is nearer"));
    EXPECT_FALSE(stands(seen, "turns"));
    const std::string other = folder.filePath("old.coilwright").toStdString(),
                      again = folder.filePath("again.json").toStdString();
    put(other, *opened.design);
    run({"write", file, "--change-notice", again, "--since", other});
    EXPECT_TRUE(QString::fromStdString(exchange::readFile(again)).contains(" turns: "));
    // As the verb that opens revisions says it.
    EXPECT_EQ(command_line::run({"write", file, "--change-notice", again, "--since", "7"}).err,
              command_line::run({"revisions", file, "--open", "7"}).err);
}

TEST(Quotations, CarryThePredictedYieldAndTheWholeDigest) {
    const QTemporaryDir folder;
    const std::string sample = COILWRIGHT_SOURCE_DIR "/demo-projects/microphone-input/microphone-input.coilwright";
    const std::string plain = folder.filePath("q.json").toStdString(), risky = folder.filePath("y.json").toStdString();
    EXPECT_EQ(command_line::run({"write", sample, "--quotation", plain, "--prices", prices}).code, 0);
    EXPECT_EQ(command_line::run({"write", sample, "--quotation", risky, "--prices", prices, "--yield", "200"}).code, 0);
    const auto of = [](const std::string& file) {
        return QJsonDocument::fromJson(QByteArray::fromStdString(exchange::readFile(file))).object();
    };
    const QJsonObject one = of(plain), other = of(risky);
    EXPECT_EQ(one["digest"].toString().toStdString(), commands::openDesign(sample).digest);
    for (int k = 0; k < 4; ++k)
        EXPECT_GE(other["prices"].toArray()[k].toObject()["price"].toDouble(),
                  one["prices"].toArray()[k].toObject()["price"].toDouble());
}

TEST(ShopPaperOptions, AreRefusedInOneSentence) {
    const std::string sample = COILWRIGHT_SOURCE_DIR "/tests/faults/sample.coilwright";
    const auto refused = [&](std::vector<std::string> typed, const std::string& sentence) {
        typed.insert(typed.begin(), {"write", sample});
        command_line::expectRefused(typed, sentence);
    };
    refused({"--prices", "p.csv"},
            "command line: --prices: found no bill to write; allowed is it beside --bill F.csv, F.pdf or F.json, or "
            "--quotation F.pdf.");
    refused({"--since", "1"},
            "command line: --since: found no change notice to write; allowed is it beside --change-notice F.pdf or "
            "--customer-notice F.pdf.");
    refused({"--quotation", "q.pdf"}, "Quotation: found no prices; allowed is a price file beside it.");
    refused({"--change-notice", "c.pdf"}, "Change notice: found no earlier revision; allowed is one to compare with.");
    refused({"--winding-sheet", "w.pdf", "--language", "de"},
            "Winding sheet: found language Deutsch; allowed is English: papers of the shop are in English alone.");
    refused({"--datasheet", "d.pdf", "--language", "xx"},
            "command line: --language: found \"xx\"; allowed is en or de.");
    refused({"--datasheet", "d.pdf", "--measures", "cubits"},
            "command line: --measures: found \"cubits\"; allowed is mm or inch.");
    refused({"--datasheet", "d.doc"}, "command line: --datasheet: found \"d.doc\"; allowed is F.pdf or F.json.");
    refused({"--bill", "b.csv", "--prices", prices, "--yield", "5"},
            "command line: --yield: found \"5\"; allowed is 100 to 1000000 units.");
    refused({"--traveller", "t.csv"}, "command line: --traveller: found \"t.csv\"; allowed is F.pdf or F.json.");
    refused({"--bill", "b"}, "command line: --bill: found \"b\"; allowed is F.csv, F.pdf or F.json.");
}

}  // namespace shop_papers_test
