// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <chrono>
#include <limits>
#include <string>

#include "json/text.h"
#include "units/fault.h"

namespace read_test {

std::string refusal(std::string_view text) {
    try {
        return "was read as " + json::read(text, "d.coilwright").dump();
    } catch (const units::BadInput& bad) {
        std::string all;
        for (const units::Fault& fault : bad.faults) all += (all.empty() ? "" : "\n") + units::sentence(fault);
        return all;
    }
}

std::string nested(std::size_t depth, char open, char close) {
    return std::string(depth, open) + std::string(depth, close);
}

struct Row {
    std::string text, sentence;
};

const std::string value = "; allowed is a JSON value.";
const std::string literal = "; allowed is true, false, null, a number or text in quotes.";
const std::string number = "; allowed is a number as in JSON, with digits on both sides of the point.";
const std::string escape = "; allowed is an escape such as \\n, \\\" or \\u00B5.";
const std::string quote = "; allowed is a quote at the end of the text.";
const std::string finite = "; allowed is a finite number.";
const std::string once = ": found this key twice; allowed is each key once in an object.";

const Row rows[] = {
    {"", "d.coilwright: line 1, column 1: found the end of the text" + value},
    {" \n ", "d.coilwright: line 2, column 2: found the end of the text" + value},
    {"{", "d.coilwright: line 1, column 2: found the end of the text; allowed is a key in quotes."},
    {"{\"a\"", "d.coilwright: line 1, column 5: found the end of the text; allowed is a colon after the key."},
    {"{\"a\":", "d.coilwright: line 1, column 6: found the end of the text" + value},
    {"{\"a\":1", "d.coilwright: line 1, column 7: found the end of the text; allowed is a comma or \"}\"."},
    {"{\"a\":1,", "d.coilwright: line 1, column 8: found the end of the text; allowed is a key in quotes."},
    {"[1", "d.coilwright: line 1, column 3: found the end of the text; allowed is a comma or \"]\"."},
    {"[1,", "d.coilwright: line 1, column 4: found the end of the text" + value},
    {"{\n  \"a\": 1\n  \"b\": 2\n}", "d.coilwright: line 3, column 3: found \"b\"; allowed is a comma or \"}\"."},
    {"{\"a\" 1}", "d.coilwright: line 1, column 6: found 1; allowed is a colon after the key."},
    {"{a: 1}", "d.coilwright: line 1, column 2: found a; allowed is a key in quotes."},
    {"[1 2]", "d.coilwright: line 1, column 4: found 2; allowed is a comma or \"]\"."},
    {"[1,]", "d.coilwright: line 1, column 4: found ]" + literal},
    {"[1}", "d.coilwright: line 1, column 3: found }; allowed is a comma or \"]\"."},
    {"{\"a\":1}}", "d.coilwright: line 1, column 8: found }; allowed is the end of the text after the value."},
    {"[\"a\tb\"]", "d.coilwright: line 1, column 4: found a control character in quotes; allowed is an escape for it."},
    {"[+1]", "d.coilwright: line 1, column 2: found +1" + number},
    {"[\"\\ud800\\u0041\"]", "d.coilwright: line 1, column 3: found \\ud800\\u0041" + escape},
    {"1 2", "d.coilwright: line 1, column 3: found 2; allowed is the end of the text after the value."},
    {"[tru]", "d.coilwright: line 1, column 2: found tru" + literal},
    {"[NaN]", "d.coilwright: line 1, column 2: found NaN" + literal},
    {"[Infinity]", "d.coilwright: line 1, column 2: found Infinity" + literal},
    {"[-Infinity]", "d.coilwright: line 1, column 2: found -Infinity" + number},
    {"['a']", "d.coilwright: line 1, column 2: found 'a'" + literal},
    {"[.5]", "d.coilwright: line 1, column 2: found .5" + number},
    {"[5.]", "d.coilwright: line 1, column 2: found 5." + number},
    {"[1e]", "d.coilwright: line 1, column 2: found 1e" + number},
    {"[01]", "d.coilwright: line 1, column 2: found 01" + number},
    {"[1e400]", "d.coilwright: line 1, column 2: found 1e400" + finite},
    {"{\n\"a\": -1e999\n}", "d.coilwright: line 2, column 6: found -1e999" + finite},
    {"[\"abc", "d.coilwright: line 1, column 2: found \"abc" + quote},
    {"[\"a\nb\"]", "d.coilwright: line 1, column 4: found a line break in quotes; allowed is an escape for it."},
    {"[\"\\x\"]", "d.coilwright: line 1, column 3: found \\x" + escape},
    {"[\"\\u12\"]", "d.coilwright: line 1, column 3: found \\u12" + escape},
    {"[\"\\ud800\"]", "d.coilwright: line 1, column 3: found \\ud800" + escape},
    {"// no\n{}", "d.coilwright: line 1, column 1: found //" + literal},
    {"\xEF\xBB\xBF{}", "d.coilwright: found a byte order mark at the start; allowed is UTF-8 text without one."},
    {"{\"a\":\n \"µ\xFF\"}", "d.coilwright: line 2, column 4: found the byte 0xFF; allowed is UTF-8 text."},
    {"\"\xC0\xAF\"", "d.coilwright: line 1, column 2: found the byte 0xC0; allowed is UTF-8 text."},
    {"\"\xED\xA0\x80\"", "d.coilwright: line 1, column 2: found the byte 0xED; allowed is UTF-8 text."},
    {"\"\xF5\x80\x80\x80\"", "d.coilwright: line 1, column 2: found the byte 0xF5; allowed is UTF-8 text."},
    {"\"\xE2\x82", "d.coilwright: line 1, column 2: found the byte 0xE2; allowed is UTF-8 text."},
    {"{\"a\":1,\"a\":2}", "d.coilwright: /a" + once},
    {"{\"w\":[{},{\"t\":1,\"u\":{\"b\":0,\"b\":[{}]},\"t\":2}]}",
     "d.coilwright: /w/1/u/b" + once + "\nd.coilwright: /w/1/t" + once},
    {nested(65, '[', ']'),
     "d.coilwright: line 1, column 65: found lists and objects nested deeper than 64; allowed is at most 64 levels."},
    {nested(10000, '[', ']'),
     "d.coilwright: line 1, column 65: found lists and objects nested deeper than 64; allowed is at most 64 levels."},
    {"\"" + std::string(10'000'000, 'a') + "\"",
     "d.coilwright: found 10000002 bytes; allowed is a file of at most 10 MB."},
};

TEST(ReadJson, EveryBadTextHasItsSentence) {
    for (const Row& row : rows) EXPECT_EQ(refusal(row.text), row.sentence) << row.text.substr(0, 60);
}

TEST(ReadJson, GoodTextIsReadInItsOrder) {
    const json::Value read = json::read(
        "{\"z\": 1, \"a\": [true, null, -0.0, 1e-7, \"\\u00B5 \\\" }{ µ\"], \"m\": {\"k\": {}}, \"\": []}\r\n", "d");
    EXPECT_EQ(read.dump(), R"({"z":1,"a":[true,null,-0.0,1e-07,"µ \" }{ µ"],"m":{"k":{}},"":[]})");
    EXPECT_EQ(json::read(nested(64, '[', ']'), "d").dump(), nested(64, '[', ']'));
    EXPECT_EQ(json::read("\"[[[[\"", "d"), "[[[[");
    EXPECT_EQ(json::read("18446744073709551615", "d").get<std::uint64_t>(), 18446744073709551615u);
}

TEST(ReadJson, EveryCutOfADocumentIsRefusedWithOnePlace) {
    const std::string text = "{\"a\": [1.5, {\"b\": \"µ\"}], \"c\": true}";
    for (std::size_t length = 0; length < text.size(); ++length) {
        const std::string sentence = refusal(text.substr(0, length));
        EXPECT_EQ(sentence.find("d.coilwright: line 1, column "), 0u) << sentence;
    }
    EXPECT_EQ(refusal(text).find("was read as"), 0u);
}

TEST(ReadJson, VeryManyKeysCostNoMoreThanTheirSize) {
    std::string text = "{";
    for (int i = 0; i < 200000; ++i) text += (i > 0 ? ",\"" : "\"") + std::to_string(i) + "\":0";
    text += "}";
    EXPECT_EQ(json::read(text, "d").size(), 200000u);  // a search for each key would take minutes
}

}  // namespace read_test
