// SPDX-License-Identifier: GPL-3.0-or-later
#include "json/record.h"

#include <gtest/gtest.h>

#include "json/text.h"

namespace shop {

enum class Shape { Round, Square };
constexpr auto names(Shape) {
    return std::array<std::pair<const char*, Shape>, 2>{{{"round", Shape::Round}, {"square", Shape::Square}}};
}

struct Pin {
    double x = 0;
    int row = 1;
    bool operator==(const Pin&) const = default;
};
template <class Visitor>
void fields(Visitor& visit, Pin& pin) {
    visit.need("x", pin.x, json::within(-1, 1).in("m"));
    visit.may("row", pin.row, json::within(1, 4));
}

struct Former {
    std::string name;
    int chambers = 1;
    bool split = false;
    Shape shape = Shape::Square;
    units::Quantity wall{0.001};
    units::Datum permittivity;
    std::vector<Pin> pins;
    std::optional<double> gap;
    std::map<std::string, double> prices;
    std::shared_ptr<const Pin> earth;
    json::Value extra;
    bool operator==(const Former& other) const {
        const bool sameEarth = earth && other.earth ? *earth == *other.earth : earth == other.earth;
        return name == other.name && chambers == other.chambers && split == other.split && shape == other.shape &&
               wall == other.wall && permittivity == other.permittivity && pins == other.pins && gap == other.gap &&
               prices == other.prices && sameEarth && extra == other.extra;
    }
};
template <class Visitor>
void fields(Visitor& visit, Former& former) {
    visit.need("name", former.name);
    visit.may("chambers", former.chambers, json::within(1, 8).whole());
    visit.may("split", former.split);
    visit.may("shape", former.shape);
    visit.may("wall", former.wall, json::aboveUpTo(0, 0.1).in("m"));
    visit.may("permittivity", former.permittivity, json::within(1, 100));
    visit.may("pins", former.pins);
    visit.may("gap", former.gap, json::within(0, 0.01));
    visit.may("prices", former.prices);
    visit.may("earth", former.earth);
}

}  // namespace shop

namespace record_test {

using json::Value;
using shop::Former;

Former read(const std::string& text, std::vector<units::Fault>& faults) {
    return json::readRecord<Former>(json::read(text, "f"), "f.json", "/formers/0", faults);
}

std::string sentences(const std::string& text) {
    std::vector<units::Fault> faults;
    (void)read(text, faults);
    std::string all;
    for (const units::Fault& fault : faults) all += (all.empty() ? "" : "\n") + units::sentence(fault);
    return all;
}

struct Row {
    const char* text;
    const char* sentence;
};

TEST(Record, EveryFaultHasItsSentence) {
    const Row rows[] = {
        {R"({})", "f.json: /formers/0/name: found nothing; allowed is text in quotes."},
        {R"({"name": 5})", "f.json: /formers/0/name: found 5; allowed is text in quotes."},
        {R"({"name": "a", "chambers": 1.5})",
         "f.json: /formers/0/chambers: found 1.5; allowed is a whole number from 1 to 8."},
        {R"({"name": "a", "chambers": -2})",
         "f.json: /formers/0/chambers: found -2; allowed is a whole number from 1 to 8."},
        {R"({"name": "a", "chambers": 1e300})",
         "f.json: /formers/0/chambers: found 1e300; allowed is a whole number from 1 to 8."},
        {R"({"name": "a", "chambers": "2"})",
         "f.json: /formers/0/chambers: found \"2\"; allowed is a whole number from 1 to 8."},
        {R"({"name": "a", "split": 1})", "f.json: /formers/0/split: found 1; allowed is true or false."},
        {R"({"name": "a", "shape": "oval"})",
         "f.json: /formers/0/shape: found \"oval\"; allowed is one of \"round\", \"square\"."},
        {R"({"name": "a", "wall": 0})",
         "f.json: /formers/0/wall: found 0; allowed is a number above 0 and up to 0.1 m."},
        {R"({"name": "a", "wall": {"value": 0.2}})",
         "f.json: /formers/0/wall/value: found 0.2; allowed is a number above 0 and up to 0.1 m."},
        {R"({"name": "a", "wall": {}})",
         "f.json: /formers/0/wall/value: found nothing; allowed is a number above 0 and up to 0.1 m."},
        {R"({"name": "a", "wall": {"value": 0.01, "tolerance": {"plus_minus": -1}}})",
         "f.json: /formers/0/wall/tolerance/plus_minus: found -1; allowed is a number from 0 to 1000000000000."},
        {R"({"name": "a", "wall": {"value": 0.01, "colour": 3}})",
         "f.json: /formers/0/wall/colour: found 3; allowed is no such key here."},
        {R"({"name": "a", "permittivity": {"value": 3, "guaranteed": "yes"}})",
         "f.json: /formers/0/permittivity/guaranteed: found \"yes\"; allowed is true or false."},
        {R"({"name": "a", "pins": {}})",
         "f.json: /formers/0/pins: found an object; allowed is a list in square brackets."},
        {R"({"name": "a", "pins": [{"x": 0}, 7]})",
         "f.json: /formers/0/pins/1: found 7; allowed is an object in curly brackets."},
        {R"({"name": "a", "pins": [{"x": 2, "row": 9, "colour": null}]})",
         "f.json: /formers/0/pins/0/x: found 2; allowed is a number from -1 to 1 m.\n"
         "f.json: /formers/0/pins/0/row: found 9; allowed is a whole number from 1 to 4.\n"
         "f.json: /formers/0/pins/0/colour: found nothing; allowed is no such key here."},
        {R"({"name": "a", "gap": true})", "f.json: /formers/0/gap: found true; allowed is a number from 0 to 0.01."},
        {R"({"name": "a", "prices": [1]})",
         "f.json: /formers/0/prices: found a list; allowed is an object in curly brackets."},
        {R"({"name": "a", "prices": {"x": "y"}})", "f.json: /formers/0/prices/x: found \"y\"; allowed is a number."},
        {R"({"name": "a", "earth": {}})",
         "f.json: /formers/0/earth/x: found nothing; allowed is a number from -1 to 1 m."},
    };
    for (const Row& row : rows) EXPECT_EQ(sentences(row.text), row.sentence) << row.text;
}

TEST(Record, WhatIsUsualIsNotWritten) {
    Former former;
    former.name = "a";
    EXPECT_EQ(json::writeRecord(former).dump(), R"({"name":"a"})");
    former.wall = 0.002;
    former.chambers = 2;
    EXPECT_EQ(json::writeRecord(former).dump(), R"({"name":"a","chambers":2,"wall":0.002})");
}

TEST(Record, GoesRoundWithEverythingInIt) {
    const std::string text =
        R"({"name":"a","chambers":3,"split":true,"shape":"round",)"
        R"("wall":{"value":0.002,"tolerance":{"plus_minus":0.05,"relative":false,"distribution":"uniform"},"note":"n"},)"
        R"("permittivity":{"value":3.2,"source":"s","guaranteed":true},"pins":[{"x":0.5},{"x":-1,"row":2}],"gap":0,)"
        R"("prices":{"x":1.5},"earth":{"x":0,"row":3},"unknown":{"b":[1],"a":null},"second":2})";
    std::vector<units::Fault> faults;
    const Former former = read(text, faults);
    EXPECT_TRUE(faults.empty());
    EXPECT_EQ(former.chambers, 3);
    EXPECT_EQ(former.shape, shop::Shape::Round);
    EXPECT_EQ(former.pins.at(1).row, 2);
    EXPECT_TRUE(former.permittivity.guaranteed);
    EXPECT_EQ(former.extra.dump(), R"({"unknown":{"b":[1],"a":null},"second":2})");
    EXPECT_EQ(json::writeRecord(former).dump(), text);
    EXPECT_EQ(read(json::write(json::writeRecord(former)), faults), former);
}

TEST(Record, AKeptKeyNeverDoublesAKnownOne) {
    Former former;
    former.name = "a";
    former.extra = Value::parse(R"({"name": "b", "c": 1})");
    EXPECT_EQ(json::writeRecord(former).dump(), R"({"name":"a","c":1})");
}

TEST(Record, NothingStandsForAnEmptyOptional) {
    std::vector<units::Fault> faults;
    EXPECT_FALSE(read(R"({"name": "a", "gap": null})", faults).gap);
    EXPECT_TRUE(faults.empty());
}

TEST(Record, WordsOfWhatIsAllowed) {
    EXPECT_EQ(json::Allowed{}.words(), "a number");
    EXPECT_EQ(json::Allowed{}.whole().words(), "a whole number");
    EXPECT_EQ(json::within(1, 2).whole().words(), "a whole number from 1 to 2");
    EXPECT_EQ(json::aboveUpTo(0, 0.5).in("m").words(), "a number above 0 and up to 0.5 m");
    constexpr double any = std::numeric_limits<double>::max();
    EXPECT_EQ(json::within(0, any).words(), "a number of at least 0");
    EXPECT_EQ(json::aboveUpTo(0, any).in("ohm").words(), "a number above 0 ohm");
    EXPECT_EQ(json::within(-any, 5).words(), "a number of at most 5");
}

TEST(Record, FoundIsCutBetweenCharacters) {
    std::string text;
    for (int i = 0; i < 40; ++i) text += "µ";
    const std::string words = json::foundWords(Value(text));
    EXPECT_EQ(words.substr(words.size() - 3), "…");
    EXPECT_EQ(words.size(), 1 + 58 + 3u);
    EXPECT_EQ(json::foundWords(Value()), "nothing");
    EXPECT_EQ(json::foundWords(Value(1.5)), "1.5");
    EXPECT_EQ(json::foundWords(Value(true)), "true");
}

}  // namespace record_test
