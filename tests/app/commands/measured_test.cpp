// SPDX-License-Identifier: GPL-3.0-or-later
// compare and units from the command line.
#include <gtest/gtest.h>

#include <QTemporaryDir>
#include <cmath>
#include <fstream>
#include <sstream>

#include "command_line.h"
#include "exchange/read_file.h"
#include "units/csv_cell.h"
#include "units/text.h"

namespace measured_test {

const std::string unit = COILWRIGHT_SOURCE_DIR "/tests/references/open_2_interleaved_line.coilwright";

using command_line::expectRefused;
using command_line::Result;
using command_line::run;

class MeasuredVerbs : public testing::Test {
protected:
    QTemporaryDir folder;
    std::string in(const std::string& name) { return folder.filePath(QString::fromStdString(name)).toStdString(); }
    void put(const std::string& name, const std::string& text) { std::ofstream(in(name)) << text; }
    std::vector<std::vector<std::string>> rows(const std::string& name) {
        std::vector<std::vector<std::string>> all;
        const std::string text = exchange::readFile(in(name));
        for (const auto line : units::csvLines(text)) all.push_back(units::csvCells(line));
        return all;
    }
};

TEST_F(MeasuredVerbs, ADesignsOwnTouchstoneFileIsWhatTheDesignComputes) {
    ASSERT_EQ(run({"write", unit, "--touchstone", in("unit.s2p")}).code, 0);
    const Result result = run({"compare", unit, in("unit.s2p"), "--csv", in("c.csv")});
    ASSERT_EQ(result.code, 0) << result.err;
    for (const char* words : {"response against response magnitude_dB", "phase against", "impedance against",
                              "impedance angle against", "largest difference", "rms"})
        EXPECT_NE(result.out.find(words), std::string::npos) << result.out;
    const auto table = rows("c.csv");
    ASSERT_EQ(table.size(), 202U);
    ASSERT_EQ(table[0].size(), 17U);
    EXPECT_EQ(table[0][3], "response_difference_dB");
    for (std::size_t k = 1; k < table.size(); ++k) EXPECT_LT(std::abs(*units::csvNumber(table[k][3])), 0.002);
}

TEST_F(MeasuredVerbs, AMeasuredTableOfAnotherLevelIsToldFromOneFrequency) {
    ASSERT_EQ(run({"traces", unit, "--to", in("out"), "--from", "20", "--to", "20000", "--points", "31"}).code, 0);
    std::string text = "Freq (kHz);Level (dBV)\n";
    const auto computed = rows("out/response.csv");
    for (std::size_t k = 1; k < computed.size(); ++k) {
        const double f = *units::csvNumber(computed[k][0]) / 1000, level = *units::csvNumber(computed[k][1]);
        std::string line = units::shortest(f) + ";" + units::shortest(level - 12 + (k == 20 ? 0.25 : 0)) + "\n";
        for (char& c : line) c = c == '.' ? ',' : c;
        text += line;
    }
    put("m.csv", text);
    const Result plain = run({"compare", unit, in("m.csv")});
    ASSERT_EQ(plain.code, 0) << plain.err;
    EXPECT_NE(plain.out.find("mean -12.0 dB"), std::string::npos) << plain.out;
    const Result told = run({"compare", unit, in("m.csv"), "--relative-to", "100"});
    ASSERT_EQ(told.code, 0) << told.err;
    EXPECT_NE(told.out.find("largest difference 0.250 dB at"), std::string::npos) << told.out;
    const Result emf = run({"compare", unit, in("m.csv"), "--emf", "0.251188643"});
    EXPECT_NE(emf.out.find("largest difference 0.250 dB at"), std::string::npos) << emf.out << emf.err;
}

TEST_F(MeasuredVerbs, CompareRefusesWithOneSentence) {
    put("m.csv", "f,dB\n100,0\n1000,x\n");
    expectRefused({"compare", unit, in("m.csv")},
                  in("m.csv") + ": line 3, column 2: found \"x\"; allowed is a number, as -12.5 or 1.2e-3.");
    put("m.csv", "f,dB\n100,0\n1000,0\n");
    expectRefused({"compare", unit, in("m.csv"), "--curve", "colour"},
                  "command line: --curve: found \"colour\"; allowed is one of response, phase, impedance, angle, "
                  "distortion, noise.");
    expectRefused(
        {"compare", unit, in("m.csv"), "--columns", "1"},
        "command line: --columns: found \"1\"; allowed is two or three numbers of columns, counted from 1, as "
        "1,3,4.");
    expectRefused({"compare", unit, in("m.csv"), "--curve", "phase"},
                  in("m.csv") + ": found no such curve; allowed is a file that has one.");
    put("m.s3p", "# Hz S RI R 50\n100 0 0 0 0 0 0\n0 0 0 0 0 0\n0 0 0 0 0 0\n");
    const Result ports = run({"compare", unit, in("m.s3p")});
    EXPECT_EQ(ports.code, 2);
    EXPECT_EQ(ports.err, in("m.s3p") +
                             ": found 3 ports; allowed is 2 ports, those of hook-up normal, balanced ones "
                             "twice.\n");
}

/// Forty invented units, one failed; the reference unit R drifts by 0.01 ohm a day.
std::string table() {
    std::string text = "part,serial,stage,time,verdict,cause,dcr P [ohm]\n";
    for (int k = 0; k < 40; ++k)
        text += "T-1,S" + std::to_string(k) + ",potted,2026-01-" + (k % 28 < 9 ? "0" : "") +
                std::to_string(k % 28 + 1) + (k % 2 == 0 ? "T08:00" : "T09:00") + "," +
                (k == 7 ? "fail,shorted turn," : "pass,,") + units::shortest(45 + 0.1 * ((k * 7) % 11 - 5)) + "\n";
    for (int k = 0; k < 5; ++k)
        text += "T-1,R,potted,2026-02-0" + std::to_string(k + 1) + ",,," + units::shortest(45 + 0.01 * k) + "\n";
    return text;
}

TEST_F(MeasuredVerbs, UnitsAreImportedListedReportedAndCopied) {
    put("u.csv", table());
    const std::string file = in("u.records");
    EXPECT_EQ(run({"units", file, "import", in("u.csv")}).out,
              "45 records added to " + file + ", 0 were there already\n");
    EXPECT_EQ(run({"units", file, "import", in("u.csv")}).out,
              "0 records added to " + file + ", 45 were there already\n");
    const Result failed = run({"units", file, "list", "--verdict", "fail"});
    EXPECT_EQ(failed.out,
              "part,revision,serial,stage,time,verdict,symptom,finding,cause,note,dcr P [ohm]\n"
              "T-1,,S7,potted,2026-01-08T09:00,fail,,,shorted turn,,45\n")
        << failed.err;
    const Result report = run({"units", file, "report", "--part", "T-1", "--test", "dcr P", "--at-least", "44",
                               "--at-most", "46,5", "--reference", "R"});
    ASSERT_EQ(report.code, 0) << report.err;
    for (const char* words : {"45 records, 39 passed, 1 failed: 97.5 % kept", "shorted turn: 1, 100.0 %",
                              "dcr P: 40 readings, mean 4", "Cp ", "Cpk ", "chart of single values",
                              "reference unit, dcr P: 5 readings, 0.0100 +- ", "the fixture drifts"})
        EXPECT_NE(report.out.find(words), std::string::npos) << words << "\n" << report.out;
    // The same by the plan's table; a stage that is not in it has no limit, and another unit is not held against it.
    put("limits.csv",
        "step,stage,test,name,settings,low,high,unit\n1,wound coil,DC,dcr.P,x,40,50,ohm\n"
        "2,potted,DC,dcr.P,x,44,46.5,ohm\n3,potted,L,inductance.P,x,1,,H\n");
    const auto lineOf = [](const std::string& text, const std::string& words) {
        const auto at = text.find(words);
        return at == std::string::npos ? text : text.substr(at, text.find('\n', at) - at);
    };
    const Result planned = run({"units", file, "report", "--limits", in("limits.csv"), "--reference", "R"});
    EXPECT_EQ(lineOf(planned.out, "  limits at least 44"), lineOf(report.out, "  limits at least 44")) << planned.err;
    const Result wound =
        run({"units", file, "report", "--limits", in("limits.csv"), "--stage", "wound coil", "--reference", "R"});
    EXPECT_EQ(wound.out.find("limits"), std::string::npos) << wound.out;
    put("mohm.csv", "stage,name,low,high,unit\npotted,dcr P,44,46.5,mohm\n");
    EXPECT_NE(run({"units", file, "report", "--limits", in("mohm.csv")}).out.find("not held against each other"),
              std::string::npos);
    const Result outside = run({"units", file, "report", "--outside"});
    EXPECT_EQ(outside.out.find("shorted turn"), std::string::npos) << "a customer's report tells no causes";
    EXPECT_EQ(outside.out.find("S7"), std::string::npos);
    ASSERT_EQ(run({"units", file, "copy", "--to", in("copy.records")}).code, 0);
    EXPECT_EQ(run({"units", in("copy.records"), "list"}).out, run({"units", file, "list"}).out);
    put("again.csv", run({"units", file, "list"}).out);
    EXPECT_EQ(run({"units", in("again.records"), "import", in("again.csv")}).code, 0);
    EXPECT_EQ(run({"units", in("again.records"), "list"}).out, run({"units", file, "list"}).out);
}

TEST_F(MeasuredVerbs, UnitsRefusesWithOneSentence) {
    expectRefused({"units"},
                  "command line: units: found nothing; allowed is FILE and import F.csv, list, report, or "
                  "copy --to F.");
    expectRefused({"units", "f", "sell"},
                  "command line: units: found \"sell\"; allowed is FILE and import F.csv, list, "
                  "report, or copy --to F.");
    expectRefused({"units", in("none.records"), "list"},
                  in("none.records") +
                      ": found no such file; allowed is a file of unit records, as units import makes "
                      "it.");
    expectRefused({"units", unit, "import", unit},
                  unit +
                      ": line 1, column 1 ({): found \"{\"; allowed is part, revision, serial, stage, time, verdict, "
                      "symptom, finding, cause, note, lot WHAT, initials STEP, or a test with its unit, as dcr P "
                      "[ohm].");
    put("u.csv", table());
    ASSERT_EQ(run({"units", in("u.records"), "import", in("u.csv")}).code, 0);
    expectRefused({"units", in("u.records"), "report", "--test", "ratio"},
                  "command line: --test: found \"ratio\"; allowed is one of dcr P.");
    expectRefused({"units", in("u.records"), "report", "--at-least", "3"},
                  "command line: --at-least, --at-most: found no test that they limit; allowed is them beside --test "
                  "NAME.");
    put("limits.csv", "stage,name,low,high\n");
    expectRefused({"units", in("u.records"), "report", "--limits", in("limits.csv")},
                  in("limits.csv") + ": line 1: found no column \"unit\"; allowed is stage, name, low, high and unit.");
    expectRefused({"units", in("u.records"), "list", "--from", "yesterday"},
                  "command line: --from: found \"yesterday\"; allowed is a day as 2026-11-27.");
}

}  // namespace measured_test
