// SPDX-License-Identifier: GPL-3.0-or-later
// Bad winding programs and bad descriptions of winders: winding_faults.json says each one's sentence, whole.
#include <gtest/gtest.h>

#include <random>

#include "exchange/read_file.h"
#include "exchange/winder.h"
#include "json/text.h"
#include "replay/run.h"
#include "units/fault.h"

namespace winding_faults_test {

const std::string folder = COILWRIGHT_SOURCE_DIR "/tests/faults/";
const std::string single = COILWRIGHT_SOURCE_DIR "/resources/winders/single-traverse.json";

json::Value rows(const char* kind) {
    return json::read(exchange::readFile(folder + "winding_faults.json"), "winding_faults.json")[kind];
}

/// The sentence that `act` ends with; "" if it ends well.
template <class Act>
std::string sentenceOf(Act act) {
    try {
        act();
        return "";
    } catch (const units::BadInput& bad) {
        return bad.what();
    }
}
std::string replayed(const std::string& text) {
    const auto machine = replay::readMachine(exchange::readFile(single), single);
    return sentenceOf([&] { static_cast<void>(replay::run(replay::readProgram(text, "p.iso"), machine)); });
}

TEST(WindingFaults, EveryBadProgramHasItsSentence) {
    for (const json::Value& row : rows("programs"))
        EXPECT_EQ(replayed(row["text"]), row["says"].get<std::string>()) << row["name"];
}

TEST(WindingFaults, EveryBadWinderHasItsSentence) {
    const json::Value sound = json::read(exchange::readFile(single), single);
    for (const json::Value& row : rows("winders")) {
        const std::string text = json::write(sound.patch(row["patch"]));
        EXPECT_EQ(sentenceOf([&] { static_cast<void>(exchange::readWinder(text, "w.json")); }),
                  row["says"].get<std::string>())
            << row["name"];
    }
}

TEST(WindingFaults, SizeAndDepthAreGuarded) {
    EXPECT_EQ(replayed("%\n" + std::string(401, 'A') + "\n"),
              "p.iso: line 2: found 401 signs; allowed is a line of up to 400 signs.");
    std::string lines = "%\n";
    for (int k = 0; k < 400001; ++k) lines += "(\n";
    EXPECT_EQ(replayed(lines),
              "p.iso: line 2: found a bracket that does not close; allowed is a comment that ends on "
              "its line.");
    lines = "%\n";
    for (int k = 0; k < 400001; ++k) lines += "\n";
    EXPECT_EQ(replayed(lines),
              "p.iso: line 400001: found one line more than 400000; allowed is a program of up to 400000 lines.");
    const std::string deep = std::string(70, '[') + std::string(70, ']');
    EXPECT_NE(sentenceOf([&] { static_cast<void>(exchange::readWinder(deep, "w.json")); }).find("w.json"),
              std::string::npos);
    EXPECT_NE(sentenceOf([&] { static_cast<void>(replay::readMachine(deep, "w.json")); }).find("w.json"),
              std::string::npos);
}

TEST(WindingFaults, RandomTextIsReadOrRefusedButNeverMore) {
    std::mt19937 dice(5);
    const std::string signs = "%N10:GMZCKSHE.+-() \n/0123456789";
    for (int k = 0; k < 3000; ++k) {
        std::string text = "%\n";
        for (int n = 0; n < 60; ++n) text += signs[dice() % signs.size()];
        const std::string said = replayed(text);
        EXPECT_TRUE(said.empty() || (said.starts_with("p.iso: ") && said.ends_with("."))) << said;
    }
}

}  // namespace winding_faults_test
