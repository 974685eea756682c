// SPDX-License-Identifier: GPL-3.0-or-later
// Design files that are not sound JSON text: cut short, doubled, too deep, too large, not text at all.
#include <gtest/gtest.h>

#include "exchange/design_json.h"
#include "exchange/read_file.h"
#include "units/fault.h"

namespace broken_text_test {

const std::string& sample() {
    static const std::string text = exchange::readFile(COILWRIGHT_SOURCE_DIR "/tests/faults/sample.coilwright");
    return text;
}

std::string with(const std::string& from, const std::string& to) {
    std::string text = sample();
    return text.replace(text.find(from), from.size(), to);
}

struct Broken {
    const char* name;
    std::string text;
    std::string says;
};
void PrintTo(const Broken& row, std::ostream* out) {
    *out << row.name;
}

const std::string gap = "\"gap\": 1e-5";

std::vector<Broken> cutShort() {
    const std::string key = "found the end of the text; allowed is a ";
    return {
        {"CutToNothing", "", "line 1, column 1: " + key + "JSON value."},
        {"CutAfter1Byte", sample().substr(0, 1), "line 1, column 2: " + key + "key in quotes."},
        {"CutInsideAKey", sample().substr(0, 10),
         "line 2, column 3: found \"coilw; allowed is a quote at the end of the text."},
        {"CutAfterAColon", sample().substr(0, 17), "line 2, column 16: " + key + "JSON value."},
        {"CutBeforeAValue", sample().substr(0, 30), "line 3, column 10: " + key + "JSON value."},
        {"CutAfter1000Bytes", sample().substr(0, 1000),
         "line 51, column 7: found \"window_; allowed is a quote at the end of the text."},
        {"CutInTheMiddle", sample().substr(0, sample().size() / 2), "line 239, column 9: " + key + "comma or \"}\"."},
        {"CutBeforeTheEnd", sample().substr(0, sample().size() - 3), "line 459, column 4: " + key + "comma or \"}\"."}};
}

std::vector<Broken> notAllowed() {
    return {
        {"NotANumber", with(gap, "\"gap\": NaN"),
         "line 100, column 12: found NaN; allowed is true, false, null, a number or text in quotes."},
        {"NumberTooLarge", with(gap, "\"gap\": 1e999"),
         "line 100, column 12: found 1e999; allowed is a finite number."},
        {"DecimalComma", with(gap, "\"gap\": 0,01"), "line 100, column 14: found 01; allowed is a key in quotes."},
        {"DoubledKey", with(gap, gap + ", \"gap\": 2e-5"),
         "/core/gap: found this key twice; allowed is each key once in an object."},
        {"DoubledName", with("\"revision\": \"B\"", "\"name\": \"again\""),
         "/name: found this key twice; allowed is each key once in an object."},
        {"Depth10000", with(gap, "\"gap\": " + std::string(10000, '[') + std::string(10000, ']')),
         "line 100, column 74: found lists and objects nested deeper than 64; allowed is at most 64 levels."},
        {"NotUtf8", with("\"nickel\"", "\"nick\xffl\""),
         "line 60, column 25: found the byte 0xFF; allowed is UTF-8 text."},
        {"Comment", with("\"gap\"", "// air\n\"gap\""), "line 100, column 5: found //; allowed is a key in quotes."},
        {"CommaTooMany", with(gap, gap + ","), "line 101, column 3: found }; allowed is a key in quotes."},
        {"NoColon", with(gap, "\"gap\" 1e-5"), "line 100, column 11: found 1e-5; allowed is a colon after the key."},
        {"SingleQuotes", with("\"gap\"", "'gap'"), "line 100, column 5: found 'gap'; allowed is a key in quotes."},
        {"TextAfterTheEnd", sample() + "x",
         "line 461, column 1: found x; allowed is the end of the text after the value."},
        {"TwoDesigns", sample() + sample(),
         "line 461, column 1: found {; allowed is the end of the text after the value."},
        {"PlainText", "tongue = 10 mm",
         "line 1, column 1: found tongue; allowed is true, false, null, a number or text in quotes."}};
}

std::vector<Broken> wholeFile() {
    return {{"LargerThan10MB", sample() + std::string(10'000'001 - sample().size(), ' '),
             "found 10000001 bytes; allowed is a file of at most 10 MB."},
            {"ByteOrderMark", "\xEF\xBB\xBF" + sample(),
             "found a byte order mark at the start; allowed is UTF-8 text without one."},
            {"AList", "[]", "found a list; allowed is a design: an object in curly brackets."},
            {"ANumber", "7", "found 7; allowed is a design: an object in curly brackets."}};
}

class BrokenText : public testing::TestWithParam<Broken> {};

TEST_P(BrokenText, IsRefusedWithItsPlace) {
    try {
        const auto opened = exchange::readDesign(GetParam().text, "sample.coilwright", {});
        FAIL() << "opened as " << opened.design->name;
    } catch (const units::BadInput& input) {
        ASSERT_EQ(input.faults.size(), 1U);
        EXPECT_EQ(std::string(input.what()), "sample.coilwright: " + GetParam().says);
    }
}

std::string caseName(const testing::TestParamInfo<Broken>& info) {
    return info.param.name;
}
INSTANTIATE_TEST_SUITE_P(CutShort, BrokenText, testing::ValuesIn(cutShort()), caseName);
INSTANTIATE_TEST_SUITE_P(NotAllowed, BrokenText, testing::ValuesIn(notAllowed()), caseName);
INSTANTIATE_TEST_SUITE_P(WholeFile, BrokenText, testing::ValuesIn(wholeFile()), caseName);

TEST(BrokenText, NoPrefixOfADesignOpens) {
    // Without its last brace and line end the text is never a design, wherever it is cut.
    for (std::size_t bytes = 0; bytes + 2 < sample().size(); bytes += 7)
        EXPECT_THROW((void)exchange::readDesign(sample().substr(0, bytes), "cut", {}), units::BadInput) << bytes;
}

}  // namespace broken_text_test
