// SPDX-License-Identifier: GPL-3.0-or-later
// The kinematic model by itself: times against sums done by hand, and each remark in its own words.
#include <gtest/gtest.h>

#include "winding_cases.h"

namespace run_test {

using namespace winding_cases;

const std::string head = "%1\n:10 G90 G71 M05\nN20 G00 Z5.000 M05\n";

replay::Run onSingle(const std::string& blocks) {
    return replay::run(replay::readProgram(head + blocks + "N9000 M30\n", "p"), both("single-traverse").machine);
}
std::string remarks(const std::string& blocks) {
    std::string all;
    for (const auto& one : onSingle(blocks).remarks)
        all.append(std::to_string(one.line)).append(": ").append(one.words).append("\n");
    return all;
}

TEST(WindingRun, TimeIsRampUpRunAndRampDown) {
    // 12 turns/s2 (single-traverse.json). 1200 turns a minute are 20/s, reached after 20^2 / 24 = 16.667 turns in
    // 1.6667 s. 100 turns: 66.667 turns at 20/s in 3.3333 s, and a ramp at either end: 6.6667 s.
    EXPECT_NEAR(onSingle("N30 G33 Z5.000 C100 S1200 M03\n").stretches.at(0).seconds, 20.0 / 3, 1e-9);
    // 12 turns are too few for 20/s: up for 6 turns in sqrt(2 * 6 / 12) = 1 s, and down for as long.
    EXPECT_NEAR(onSingle("N30 G33 Z5.000 C12 S1200 M03\n").stretches.at(0).seconds, 2, 1e-9);
    // 3 turns at 2/s, left at 2/s: 1/6 s up, 2^2 / 24 turns, the rest at 2/s.
    const auto slow = onSingle("N30 G33 Z5.000 C3 S120 M03\nN40 G33 Z5.000 C100 S1200\n");
    EXPECT_NEAR(slow.stretches.at(0).seconds, 1.0 / 6 + (3 - 1.0 / 6) / 2, 1e-9);
    // From 2/s to 20/s and down: 18/12 s + 20/12 s, (400 - 4)/24 + 400/24 turns, the rest at 20/s.
    EXPECT_NEAR(slow.stretches.at(1).seconds, 38.0 / 12 + (100 - 796.0 / 24) / 20, 1e-9);
}

TEST(WindingRun, AStopTakesWhatTheDescriptionSays) {
    const auto run = onSingle("N30 H1 M00 (MSG PAPER X)\nN40 G00 Z13.000 M05\n");
    EXPECT_EQ(run.halts.at(0).kind, "paper");
    EXPECT_EQ(run.waiting, 30);
    EXPECT_NEAR(run.moving, 0.1, 1e-9);  // 8 mm at 80 mm/s
    EXPECT_NEAR(run.cycle(both("single-traverse").machine), 70.1, 1e-9);
    EXPECT_EQ(run.unitsADay(both("single-traverse").machine), 359);  // 7 h of 70.1 s
}

TEST(WindingRun, SixSpindlesWindSixUnits) {
    const auto& machine = both("six-spindle").machine;
    const auto run = replay::run(replay::readProgram("%\n:5 G90 G70 M05\nN10 M02\n", "p"), machine);
    EXPECT_EQ(run.cycle(machine), 120);
    EXPECT_EQ(run.unitsADay(machine), 6 * 480);  // 16 h of 2 min
}

TEST(WindingRun, InchesAndNumbersWithoutAPoint) {
    const auto run =
        replay::run(replay::readProgram(
                        "%\n:5 G90 G70 M05\nN6 G00 X50000 Z0 M05\nN7 G33 X60000 A1050 F9524 S100 M04\nN10 M02\n", "p"),
                    both("six-spindle").machine);
    EXPECT_NEAR(run.stretches.at(0).from.traverse, 0.0127, 1e-12);  // 0.5 in
    EXPECT_NEAR(run.stretches.at(0).to.traverse, 0.01524, 1e-12);   // 0.6 in
    EXPECT_NEAR(run.stretches.at(0).turns, 10.5, 1e-12);
    EXPECT_EQ(run.stretches.at(0).sense, 1);  // this machine's M04
    EXPECT_TRUE(run.remarks.empty());
}

TEST(WindingRun, ACountThatRunsOnStartsAgainAtAMainBlock) {
    const auto run = replay::run(
        replay::readProgram("%\n:1 G71 M05\nN2 G01 C50.0 M03\nN3 G01 C75.5\n:4 M05\nN5 G01 C20 M03\nN6 M30\n", "p"),
        both("hand-guided").machine);
    EXPECT_EQ(run.stretches.at(1).turns, 25.5);
    EXPECT_EQ(run.stretches.at(2).turns, 20);
    EXPECT_EQ(run.turns(), 95.5);
}

TEST(WindingRun, WhatTheMachineCannotDoIsSaid) {
    EXPECT_EQ(remarks("N30 G33 Z6.000 C10 K0.1 S1200 M03\n"), "");
    EXPECT_EQ(remarks("N30 G33 Z6.000 C10 K0.2 S1200 M03\n"),
              "4: a pitch of 0.2000 mm in 10 turns is not the move of 1.000 mm\n");
    EXPECT_EQ(remarks("N30 G33 Z6.000 C10 S1200 M03\n"), "4: a traverse without a pitch\n");
    EXPECT_EQ(remarks("N30 G33 Z5.001 C10 S1200 M03\n"), "");  // one place, rounded to either side
    EXPECT_EQ(remarks("N30 G33 Z5.002 C10 S1200 M03\n"), "4: a traverse without a pitch\n");
    EXPECT_EQ(remarks("N30 G33 Z5.000 C10 S5000 M03\n"),
              "4: a speed of 5000 turns a minute, the machine winds at 20 to 4000\n");
    EXPECT_EQ(remarks("N30 G00 Z200.000 M05\n"),
              "4: the traverse goes to 200 mm, the machine's travel is -5.00 mm to 160 mm\n");
    EXPECT_EQ(remarks("N30 E5000\n"), "4: a tension of 50 N, the machine has 0.02 to 20 N\n");
    EXPECT_EQ(remarks("N30 G33 Z5.000 C10 S1200\n"), "4: turns with the spindle standing\n");
    EXPECT_EQ(remarks("N30 G33 Z5.000 C10 S1200 M03\nN40 G00 Z6.000\n"),
              "5: the guide moves while the spindle turns\n");
    EXPECT_EQ(remarks("N30 G33 Z5.000 C100 S1200 M03\nN40 G33 Z5.000 C1 S1200\n"),
              "5: a speed of 1200 turns a minute cannot be left in 1 turns\n");
    EXPECT_EQ(remarks("N30 G33 Z25.000 C10 K2 S4000 M03\n"), "4: the traverse runs at 133.33 mm/s, it can do 80\n");
}

TEST(WindingRun, AProgramLongerThanTheMachineHoldsOrWithoutEndIsSaid) {
    std::string blocks;
    for (int k = 0; k < 10000; ++k) blocks += "N1 E100\n";
    EXPECT_EQ(remarks(blocks), "0: 10003 blocks, the machine holds 9999\n");
    const auto run = replay::run(replay::readProgram(head, "p"), both("single-traverse").machine);
    ASSERT_EQ(run.remarks.size(), 1U);
    EXPECT_EQ(run.remarks[0].words, "the program has no end");
}

TEST(WindingRun, EventsStandInOrderWithTimeAndTurns) {
    const auto run = onSingle("N30 G33 Z6.000 C10 K0.1 S1200 M03\nN40 H1 M00 (MSG PAPER)\n");
    ASSERT_EQ(run.events.size(), 5U);
    for (std::size_t k = 1; k < run.events.size(); ++k) EXPECT_GE(run.events[k].seconds, run.events[k - 1].seconds);
    EXPECT_EQ(run.events[2].turns, 10);
    EXPECT_NEAR(run.events[4].seconds, run.moving + run.waiting, 1e-9);
}

/// A program of the microphone input on the six-spindle machine with one word changed.
std::string changed(const std::string& from, const std::string& to) {
    std::string text = program(demo("microphone-input"), both("six-spindle"));
    const auto at = text.find(from);
    EXPECT_NE(at, std::string::npos) << text.substr(0, 3000);
    return said(text.replace(at, from.size(), to), demo("microphone-input"), both("six-spindle"));
}

TEST(WindingCollisions, AGuideThatIsNotLiftedRunsIntoTheFlange) {
    const std::string text = program(demo("microphone-input"), both("six-spindle"));
    // The first rapid move down to the layer is taken for the travel depth of the main block.
    const auto main = text.find(":5 G90 G70 G00 Z"), end = text.find(' ', main + 16);
    const std::string travel = text.substr(main + 15, end - main - 15);
    const std::string words = changed(travel, "Z10000");
    EXPECT_NE(words.find("the guide runs into the flange, at a depth of 2.540 mm"), std::string::npos) << words;
}

TEST(WindingCollisions, NothingStandsInTheWayOfTheWrittenProgram) {
    const design::Design design = demo("microphone-input");
    const auto& on = both("six-spindle");
    const auto run = replay::run(replay::readProgram(program(design, on), "p"), on.machine);
    const auto due = replay::expected(design, coil::layOut(design, shop()), shop(), on.machine, 1);
    EXPECT_TRUE(replay::collisions(run, due.around, on.machine).empty());
    EXPECT_FALSE(run.wraps.empty());
    EXPECT_FALSE(due.around.pins.empty());
}

TEST(WindingCollisions, WireOverAFlangeIsFound) {
    replay::Run run;
    run.stretches.push_back({});
    run.stretches.back().line = 7;
    run.stretches.back().from.traverse = 0.002;
    run.stretches.back().to.traverse = 0.0009;
    const replay::Surroundings around{0.01, {{0.001, 0.02}}, {{3, 0.005, 0.0005}}};
    const auto found = replay::collisions(run, around, both("single-traverse").machine);
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0], "line 7: the guide winds at 0.9000 mm, over the flange and into the sweep of pin 3");
}

}  // namespace run_test
