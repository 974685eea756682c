// SPDX-License-Identifier: GPL-3.0-or-later
#include "design/design.h"

#include <gtest/gtest.h>

#include "design/check.h"
#include "sample_design.h"

namespace design {
namespace design_test {

std::vector<std::string> labels(const Design& d, const std::string& name) {
    std::vector<std::string> all;
    for (const Section* s : sectionsOf(d, *winding(d, name))) all.push_back(s->label());
    return all;
}

TEST(Design, SampleHasNoFault) {
    EXPECT_TRUE(check(sampleDesign(), sampleShop(), "s").empty());
}

TEST(Design, ThingsAreFoundByName) {
    const Design d = sampleDesign();
    EXPECT_EQ(winding(d, "S"), &d.windings[1]);
    EXPECT_EQ(winding(d, "Q"), nullptr);
    EXPECT_EQ(port(d, "output"), &d.ports[1]);
    EXPECT_EQ(hookUp(d, "normal"), &d.hookUps[0]);
    EXPECT_EQ(hookUp(d, ""), &d.hookUps[0]);  // the first is shown unless another is named
    EXPECT_EQ(section(d, "P", "b")->turns.value, 40);
    EXPECT_EQ(section(d, "P", "c"), nullptr);
}

TEST(Design, SectionsComeInCoilOrderUnlessAnOrderIsGiven) {
    Design d = sampleDesign();
    EXPECT_EQ(labels(d, "P"), (std::vector<std::string>{"P.a", "P.b"}));
    d.windings[0].order = {"b", "a"};
    EXPECT_EQ(labels(d, "P"), (std::vector<std::string>{"P.b", "P.a"}));
    EXPECT_EQ(labels(d, "S"), (std::vector<std::string>{"S.a", "S.b"}));  // across chambers
}

TEST(Design, TurnsAddUpWithTheirSense) {
    Design d = sampleDesign();
    EXPECT_EQ(seriesTurns(d, d.windings[0]), 100);
    d.coil[0].order[5].section()->reversed = true;
    EXPECT_EQ(seriesTurns(d, d.windings[0]), 20);
    EXPECT_EQ(conductorTurns(d, d.windings[0]), 100);
    d.windings[0].connection = Connection::Parallel;
    EXPECT_EQ(seriesTurns(d, d.windings[0]), 60);
}

TEST(Design, SectionEndsFollowTheSeriesOrder) {
    Design d = sampleDesign();
    const auto ends = [&](const char* name) {
        const SectionEnds e = sectionEnds(d, *section(d, "P", name));
        return e.start + " " + e.finish;
    };
    EXPECT_EQ(ends("a"), "1 P.a>");
    EXPECT_EQ(ends("b"), "P.a> 2");
    d.windings[0].order = {"b", "a"};
    EXPECT_EQ(ends("b"), "1 P.b>");
    EXPECT_EQ(ends("a"), "P.b> 2");
    d.windings[0].connection = Connection::Parallel;
    EXPECT_EQ(ends("a"), "1 2");
    EXPECT_EQ(ends("b"), "1 2");
}

TEST(Design, ASectionsOwnTerminalIsWhereTheNextOneStarts) {
    Design d = sampleDesign();
    d.coil[0].order[0].section()->finish = "3";
    EXPECT_EQ(sectionEnds(d, *section(d, "P", "b")).start, "3");
    d.coil[0].order[5].section()->start = "4";
    EXPECT_EQ(sectionEnds(d, *section(d, "P", "b")).start, "4");
}

TEST(Design, AShieldThatComesOutIsItsTerminal) {
    Design d = sampleDesign();
    EXPECT_EQ(nodeOf(d, "SH"), "SH");
    d.coil[0].order[2].shield()->terminal = "4";
    EXPECT_EQ(nodeOf(d, "SH"), "4");
    EXPECT_EQ(nodeOf(d, "core"), "core");
    EXPECT_EQ(nodeOf(d, "earth"), "earth");
    EXPECT_EQ(nodeOf(d, "case"), "");
}

}  // namespace design_test
}  // namespace design
