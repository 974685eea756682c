// SPDX-License-Identifier: GPL-3.0-or-later
// The test plan as a PDF, as content and as a table, of every design there is.
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QTemporaryDir>
#include <sstream>

#include "command_line.h"
#include "pdf_tools.h"

using namespace pdf_tools;

namespace test_plan_test {

class TestPlanPaper : public testing::TestWithParam<std::string> {
protected:
    QTemporaryDir folder;
    QString in(const QString& name) { return folder.filePath(name); }
    void write(std::vector<std::string> typed) {
        typed.insert(typed.begin(), {"write", GetParam()});
        std::ostringstream out, err;
        ASSERT_EQ(commands::run(typed, out, err), 0) << err.str();
    }
};

TEST_P(TestPlanPaper, IsAGoodPaperWithWiringOrderAndCautions) {
    for (const char* format : {"a4", "letter"}) {
        const QString path = in(QStringLiteral("%1.pdf").arg(format));
        write({"--test-plan", path.toStdString(), "--paper", format});
        expectSoundVectors(path);
        expectApartAndInside(pagesOf(path));
        EXPECT_TRUE(output("pdfdetach", {"-list", path}).startsWith("1 embedded file"));
    }
    const QString text = output("pdftotext", {"-raw", in("a4.pdf"), "-"}).simplified();
    for (const char* words :
         {"Inside paper", "Test plan", "generator", "analyser", "Stage: wound coil", "Stage: laminated", "Demagnetise",
          "Cautions", "only by trained persons", "Daily reference", "Calibration"})
        EXPECT_TRUE(text.contains(words)) << words;
}

TEST_P(TestPlanPaper, ContentAndTableSayTheSameLimits) {
    write({"--test-plan", in("p.json").toStdString(), "--limits", in("l.csv").toStdString()});
    const auto text = QByteArray::fromStdString(exchange::readFile(in("p.json").toStdString()));
    const QJsonArray stages = QJsonDocument::fromJson(text).object()["stages"].toArray();
    const QStringList lines =
        QString::fromStdString(exchange::readFile(in("l.csv").toStdString())).split('\n', Qt::SkipEmptyParts);
    qsizetype line = 0;
    for (const auto& stage : stages)
        for (const auto& row : stage.toObject()["rows"].toArray()) {
            ASSERT_LT(++line, lines.size());
            const QJsonObject one = row.toObject();
            EXPECT_EQ(lines[line].section(',', 0, 0).toInt(), one["step"].toInt());
            const QString unit = lines[line].section(',', -1), high = lines[line].section(',', -2, -2);
            EXPECT_EQ(high.isEmpty(), one["high"].isNull());
            EXPECT_NEAR(high.toDouble(), one["high"].toDouble() * (unit == "%" ? 100 : 1),
                        1e-8 * std::abs(high.toDouble()));
        }
    EXPECT_EQ(line + 1, lines.size());
    EXPECT_GT(line, 20);
}

INSTANTIATE_TEST_SUITE_P(Designs, TestPlanPaper, testing::ValuesIn(designs()), named);

TEST(TestPlanOptions, AreRefusedInOneSentence) {
    const std::string sample = COILWRIGHT_SOURCE_DIR "/tests/faults/sample.coilwright";
    const auto refused = [&](std::vector<std::string> typed, const std::string& sentence) {
        typed.insert(typed.begin(), {"write", sample});
        command_line::expectRefused(typed, sentence);
    };
    refused({"--test-plan", "t.csv"}, "command line: --test-plan: found \"t.csv\"; allowed is F.pdf or F.json.");
    refused({"--limits", "l.pdf"}, "command line: --limits: found \"l.pdf\"; allowed is F.csv.");
    refused(
        {"--fixture", "f.json"},
        "command line: --fixture: found no test plan to write; allowed is it beside --test-plan F.pdf or F.json, or "
        "--limits F.csv.");
    refused({"--limits", "l.csv", "--fixture", "none.json"},
            "none.json: found no such file; allowed is a readable file of at most 10 MB.");
}

}  // namespace test_plan_test
