// SPDX-License-Identifier: GPL-3.0-or-later
#include "command_line.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QTemporaryDir>
#include <fstream>
#include <set>
#include <sstream>

#include "exchange/read_file.h"
#include "json/text.h"

namespace run_test {

const std::string references = COILWRIGHT_SOURCE_DIR "/tests/references/";
const std::string stepUp = references + "open_1_shielded_step_up.coilwright";
const std::string line = references + "open_2_interleaved_line.coilwright";

using command_line::expectRefused;
using command_line::Result;
using command_line::run;

std::vector<std::string> lines(const std::string& text) {
    std::vector<std::string> all;
    std::istringstream in(text);
    for (std::string one; std::getline(in, one);) all.push_back(one);
    return all;
}

class RunTest : public testing::Test {
protected:
    QTemporaryDir folder;
    std::string in(const std::string& name) { return folder.filePath(QString::fromStdString(name)).toStdString(); }
    std::vector<std::string> written(const std::string& name) { return lines(exchange::readFile(in(name))); }
};

TEST_F(RunTest, HelpAndVersion) {
    EXPECT_EQ(run({"--version"}).out, "coilwright " COILWRIGHT_VERSION "\n");
    const Result help = run({"--help"});
    EXPECT_EQ(help.code, 0);
    for (const char* verb : {"figures", "traces", "write", "pair"}) EXPECT_NE(help.out.find(verb), std::string::npos);
}

TEST_F(RunTest, TheWindowIsMeantWithoutAVerb) {
    EXPECT_FALSE(commands::isCommand({}));
    EXPECT_FALSE(commands::isCommand({"unit.coilwright"}));
    EXPECT_TRUE(commands::isCommand({"figures"}));
    EXPECT_TRUE(commands::isCommand({"--help"}));
    EXPECT_TRUE(commands::isCommand({"figurs", "unit.coilwright"}));
}

TEST_F(RunTest, WrongCommandsAreRefusedWithOneSentence) {
    expectRefused({"figurs", "a"},
                  "command line: found \"figurs\"; allowed is figures, traces, write, pair, picture, revisions, field, "
                  "lot, replay, "
                  "winders, spread, gather, seek, begin, ask, compare, units, cause, fit, match, handbook, --help, "
                  "--version, or one "
                  "design to open.");
    expectRefused({"figures"}, "command line: found no DESIGN; allowed is DESIGN.");
    expectRefused({"figures", stepUp, "--hook-up", "upside down"},
                  "command line: --hook-up: found \"upside down\"; allowed is one of \"normal\", \"common mode\".");
    expectRefused(
        {"write", stepUp},
        "command line: write: found nothing to write; allowed is --datasheet F.pdf, --quotation F.pdf, "
        "--netlist F.cir, --touchstone F.sNp, --winding-sheet F.pdf, --traveller F.pdf, --bill F.csv, "
        "--test-plan F.pdf, --limits F.csv, --first-article F.pdf, --deviation-permit F.pdf, --return-report F.pdf, "
        "--change-notice F.pdf, --customer-notice F.pdf, --program F or --step-table F.csv.");
}

TEST_F(RunTest, ADesignThatCannotBeReadIsRefusedWithFileFieldFoundAndAllowed) {
    std::string text = exchange::readFile(stepUp);
    const std::string turns = "\"turns\": 216";
    ASSERT_NE(text.find(turns), std::string::npos);
    text.replace(text.find(turns), turns.size(), "\"turns\": -40");
    const std::string path = in("bad.coilwright");
    std::ofstream(path) << text;
    const Result result = run({"figures", path});
    EXPECT_EQ(result.code, 2);
    EXPECT_EQ(result.out, "");
    EXPECT_EQ(result.err,
              path + ": /coil/0/order/0/section/turns: found -40; allowed is a number from 0.5 to 20000.\n");
    EXPECT_EQ(run({"figures", in("none.coilwright")}).code, 2);
    EXPECT_EQ(run({"traces", path, "--to", in("out")}).code, 2);
    EXPECT_FALSE(QDir(folder.filePath("out")).exists()) << "nothing is written before everything is understood";
}

TEST_F(RunTest, FiguresAsJsonHaveTheAgreedKeys) {
    const Result result = run({"figures", stepUp, "--json"});
    ASSERT_EQ(result.code, 0) << result.err;
    const json::Value all = json::read(result.out, "figures");
    EXPECT_EQ(all.at("design"), "Step-up 1:5, P | foil | S, 200 ohm balanced source, 22k||80p");
    EXPECT_EQ(all.at("program"), "coilwright " COILWRIGHT_VERSION);
    EXPECT_EQ(all.at("digest").get<std::string>().size(), 64U);
    std::set<std::string> names;
    for (const json::Value& figure : all.at("figures")) {
        std::vector<std::string> keys;
        for (const auto& item : figure.items()) keys.push_back(item.key());
        EXPECT_EQ(keys, (std::vector<std::string>{"name", "value", "unit", "uncertainty", "source", "valid", "why",
                                                  "hook_up", "ports"}));
        EXPECT_EQ(figure.at("value").is_null() && figure.at("valid").get<bool>(), false);
        names.insert(figure.at("name"));
    }
    EXPECT_TRUE(names.contains("dcr.P"));
    EXPECT_TRUE(names.contains("high_3dB_first"));
}

TEST_F(RunTest, FiguresAsTextSayTheSame) {
    const Result result = run({"figures", stepUp});
    ASSERT_EQ(result.code, 0) << result.err;
    EXPECT_NE(result.out.find("dcr.P"), std::string::npos);
    EXPECT_EQ(result.err, "");
}

TEST_F(RunTest, TracesAreWrittenWithTheAgreedColumns) {
    const Result result = run({"traces", stepUp, "--to", in("a/b")});
    ASSERT_EQ(result.code, 0) << result.err;
    EXPECT_EQ(written("a/b/response.csv").front(), "frequency_Hz,magnitude_dB,phase_deg,group_delay_s");
    EXPECT_EQ(written("a/b/response.csv").size(), 601U);
    EXPECT_EQ(written("a/b/impedance.csv").front(),
              "frequency_Hz,source_side_ohm,source_side_deg,load_side_ohm,load_side_deg");
    EXPECT_EQ(written("a/b/headroom.csv").front(), "frequency_Hz,maximum_level_dBu,headroom_dB,limit");
    EXPECT_EQ(written("a/b/distortion.csv").front(),
              "frequency_Hz,level_dBu,thd_percent,h2_dB,h3_dB,h4_dB,h5_dB,h6_dB,h7_dB");
    EXPECT_EQ(written("a/b/distortion.csv").size(), 401U);
    EXPECT_EQ(written("a/b/step.csv").front(), "time_s,output");
    EXPECT_EQ(written("a/b/step_core.csv").front(), "time_s,output_V,linear_V");
    EXPECT_EQ(written("a/b/square_core.csv").front(), "time_s,output_V,linear_V");
    EXPECT_EQ(written("a/b/burst.csv").front(), "time_s,output_V,linear_V");
    EXPECT_EQ(written("a/b/inrush.csv").front(),
              "time_s,source_A,magnetising_A,source_linear_A,flux_T,output_V,linear_V");
    EXPECT_EQ(written("a/b/bh_loop.csv").front(), "field_A_per_m,falling_T,rising_T");
    EXPECT_EQ(written("a/b/inductance_level.csv").front(), "level_dBu,inductance_H,peak_flux_T");
}

TEST_F(RunTest, ALotOfSheetsBecomesAnAlloy) {
    std::ofstream table(in("lot.csv"));
    table << "field_A_per_m,flux_T\n";
    for (const char* row : {"0.1,0.0007", "0.3,0.0024", "1,0.0115", "3,0.08", "5,0.25", "10,0.65", "30,1.1", "100,1.35",
                            "300,1.45", "1000,1.5"})
        table << row << '\n';
    table.close();
    const Result result = run({"lot", in("lot.csv"), "--from", "nickel-50", "--name", "Lot 7, 48 %", "--to",
                               in("alloys.json"), "--table", in("fit.csv")});
    ASSERT_EQ(result.code, 0) << result.err;
    EXPECT_TRUE(result.out.starts_with("lot-7-48 in ")) << result.out;
    EXPECT_EQ(written("fit.csv").size(), 11U);
    EXPECT_NE(exchange::readFile(in("alloys.json")).find("\"Lot 7, 48 %\""), std::string::npos);
    expectRefused({"lot", in("lot.csv"), "--from", "nickel-50", "--to", in("x.json")},
                  "command line: --name: found nothing; allowed is a name for the lot, as \"Lot 42\".");
    const Result unknown = run({"lot", in("lot.csv"), "--from", "tin", "--name", "A", "--to", in("x.json")});
    EXPECT_EQ(unknown.code, 2);
    EXPECT_TRUE(unknown.err.starts_with("command line: --from: found \"tin\"; allowed is an alloy of the catalog: "))
        << unknown.err;
}

TEST_F(RunTest, TracesAtAskedFrequencies) {
    std::ofstream(in("at.txt")) << "20\n1000\n";
    ASSERT_EQ(run({"traces", stepUp, "--to", in("out"), "--at", in("at.txt")}).code, 0);
    const auto response = written("out/response.csv");
    ASSERT_EQ(response.size(), 3U);
    EXPECT_TRUE(response[1].starts_with("20,"));
    EXPECT_TRUE(response[2].starts_with("1000,"));
}

TEST_F(RunTest, PicturesComeBesideTheTables) {
    ASSERT_EQ(run({"traces", stepUp, "--to", in("out"), "--points", "50", "--pictures"}).code, 0);
    EXPECT_TRUE(exchange::readFile(in("out/response.png")).starts_with("\x89PNG"));
}

TEST_F(RunTest, AFolderThatCannotBeIsRefused) {
    std::ofstream(in("file")) << "x";
    const Result result = run({"traces", stepUp, "--to", in("file"), "--points", "5"});
    EXPECT_EQ(result.code, 2);
    EXPECT_NE(result.err.find("allowed is a folder that exists or can be created."), std::string::npos) << result.err;
}

TEST_F(RunTest, APairIsWrittenWithBothAndTheirDifference) {
    const Result result = run({"pair", stepUp, line, "--to", in("out"), "--points", "20"});
    ASSERT_EQ(result.code, 0) << result.err;
    EXPECT_EQ(written("out/figures.csv").front(), "figure,unit,A,B,difference");
    const auto response = written("out/response.csv");
    EXPECT_EQ(response.size(), 21U);
    EXPECT_TRUE(response.front().starts_with("frequency_Hz,magnitude_dB_A,magnitude_dB_B,magnitude_dB_difference,"));
    const auto words = written("out/differences.txt");
    EXPECT_TRUE(words[0].starts_with("A: " + stepUp));
    EXPECT_GT(words.size(), 3U);
}

TEST_F(RunTest, ADesignPairedWithItselfDiffersNowhere) {
    ASSERT_EQ(run({"pair", stepUp, stepUp, "--to", in("out"), "--points", "7"}).code, 0);
    EXPECT_EQ(written("out/differences.txt").back(), "The designs are the same.");
    const auto figures = written("out/figures.csv");
    for (std::size_t i = 1; i < figures.size(); ++i)
        EXPECT_TRUE(figures[i].ends_with(",0") || figures[i].ends_with(",")) << figures[i];
}

TEST_F(RunTest, NetlistsAndTouchstoneAreWrittenAsAsked) {
    const Result result = run({"write", line, "--netlist", in("unit.cir"), "--touchstone", in("unit.s2p")});
    ASSERT_EQ(result.code, 0) << result.err;
    EXPECT_EQ(result.out, in("unit.cir") + "\n" + in("unit.s2p") + "\n");
    EXPECT_EQ(written("unit.cir").back(), ".end");
    ASSERT_EQ(run({"write", line, "--netlist", in("outside.cir"), "--terminals-only"}).code, 0);
    EXPECT_EQ(written("outside.cir").front(), "* audio transformer, revision A");
    EXPECT_EQ(exchange::readFile(in("outside.cir")).find("P/2"), std::string::npos);
    expectRefused({"write", line, "--touchstone", in("unit.s2p"), "--terminals-only"},
                  "command line: --terminals-only: found no netlist to write; allowed is it beside --netlist F.cir.");
    const Result wrong = run({"write", line, "--touchstone", in("unit.s4p")});
    EXPECT_EQ(wrong.code, 2);
    EXPECT_NE(wrong.err.find("found an ending for 4 ports; allowed is .s2p"), std::string::npos) << wrong.err;
}

}  // namespace run_test
