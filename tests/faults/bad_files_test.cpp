// SPDX-License-Identifier: GPL-3.0-or-later
// Every kind of file cut at each fiftieth of its length, and with each key of a wrong type, missing and doubled: what
// is said stands word for word in said/KIND.json. After a change of a reader the new table stands in the build folder,
// to be read sentence by sentence and then copied over the old one. Then what no text file may be: not UTF-8, too
// large, too deep, with numbers that are none.
#include <gtest/gtest.h>

#include <fstream>

#include "bad_files.h"
#include "exchange/read_file.h"
#include "json/text.h"

namespace bad_files_test {

using bad_files::Kind;
using Sentences = std::vector<std::string>;

class BadFiles : public testing::TestWithParam<Kind> {
protected:
    [[nodiscard]] Sentences said(const std::string& text) {
        ++cases_;
        return bad_files::said(GetParam(), text);
    }
    [[nodiscard]] std::string named(const std::string& rest) const { return GetParam().file + ": " + rest; }
    int cases_ = 0;
};

/// One sentence, or a list of them.
json::Value asValue(const Sentences& said) {
    return said.size() == 1 ? json::Value(said.front()) : json::Value(said);
}

TEST_P(BadFiles, SayWhatTheTableSays) {
    constexpr std::size_t parts = 50;
    json::Value made;
    for (std::size_t k = 0; k < parts; ++k)
        made["cut"].push_back(asValue(said(GetParam().text.substr(0, GetParam().text.size() * k / parts))));
    if (GetParam().json) {
        const json::Value sound = json::read(GetParam().text, GetParam().file);
        for (const std::string& key : bad_files::keys(sound)) {
            made["wrong"][key] = asValue(said(bad_files::wrongType(sound, key)));
            made["missing"][key] = asValue(said(bad_files::without(sound, key)));
        }
    }
    const std::string name = "/said/" + GetParam().name + ".json";
    const std::string fresh = COILWRIGHT_BUILD_DIR "/said_" + GetParam().name + ".json";
    std::ofstream(fresh, std::ios::binary) << json::write(made);
    const std::string path = COILWRIGHT_SOURCE_DIR "/tests/faults" + name;
    const json::Value table = json::read(exchange::readFile(path), path);
    for (const auto& [way, rows] : made.items())
        for (const auto& [key, sentences] : rows.items()) {
            const json::Value::json_pointer place = json::Value::json_pointer("/" + way) / key;
            EXPECT_EQ(sentences, table.contains(place) ? table[place] : json::Value("no row")) << way << ' ' << key;
        }
    EXPECT_TRUE(table == made) << path << " differs from " << fresh;
    RecordProperty("cases", cases_);
}

TEST_P(BadFiles, WhatIsNoTextOfOursHasItsSentence) {
    const std::string& sound = GetParam().text;
    EXPECT_EQ(said(sound), Sentences());
    if (!GetParam().json) return;
    const std::size_t at = sound.find("\n");
    const auto with = [&](const std::string& what) { return sound.substr(0, at) + what + sound.substr(at); };
    const std::string line = named("line 1, column 2");
    EXPECT_EQ(said(with("\xff")), Sentences{line + ": found the byte 0xFF; allowed is UTF-8 text."});
    EXPECT_EQ(said(with("\xc0\xaf")), Sentences{line + ": found the byte 0xC0; allowed is UTF-8 text."});
    EXPECT_EQ(said(with("\xed\xa0\x80")), Sentences{line + ": found the byte 0xED; allowed is UTF-8 text."});
    EXPECT_EQ(said(with(std::string(1, '\0'))), Sentences{line + ": found  ; allowed is a key in quotes."});
    for (const char* number : {"1e400", "-1e400"})
        EXPECT_EQ(said(with("\"x\": " + std::string(number) + ",")),
                  Sentences{named("line 1, column 7: found ") + number + "; allowed is a finite number."});
    for (const char* word : {"NaN", "nan", "Infinity", "True", "undefined"})
        EXPECT_EQ(said(with("\"x\": " + std::string(word) + ",")),
                  Sentences{named("line 1, column 7: found ") + word +
                            "; allowed is true, false, null, a number or text in quotes."});
    for (const char* number : {"-Infinity", "+1", ".5", "1.", "01", "0x10", "1e", "1,5e"})
        EXPECT_NE(said(with("\"x\": " + std::string(number) + ",")), Sentences()) << number;
    const std::string deep = "\"x\": " + std::string(64, '[') + std::string(64, ']') + ",";
    EXPECT_EQ(said(with(deep)), Sentences{named("line 1, column 70: found lists and objects nested deeper than 64; "
                                                "allowed is at most 64 levels.")});
    EXPECT_EQ(said("\xEF\xBB\xBF" + sound),
              Sentences{named("found a byte order mark at the start; allowed is UTF-8 text without one.")});
    EXPECT_EQ(said(sound + std::string(json::maximumBytes + 1 - sound.size(), ' ')),
              Sentences{named("found 10000001 bytes; allowed is a file of at most 10 MB.")});
    const json::Value root = json::read(sound, GetParam().file);
    for (const std::string& key : bad_files::keys(root))
        EXPECT_EQ(said(bad_files::doubled(root, key)),
                  Sentences{named(key + ": found this key twice; allowed is each key once in an object.")});
    RecordProperty("cases", cases_);
}

INSTANTIATE_TEST_SUITE_P(Kinds, BadFiles, testing::ValuesIn(bad_files::kinds()),
                         [](const auto& of) { return of.param.name; });

}  // namespace bad_files_test
