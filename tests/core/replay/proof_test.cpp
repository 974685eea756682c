// SPDX-License-Identifier: GPL-3.0-or-later
// What the writer writes, the replay winds as the coil build lies: all demo designs on all winders, and random valid
// designs: a sample here, 10 000 with COILWRIGHT_FULL in the environment (target `full`).
#include <gtest/gtest.h>

#include <cmath>
#include <cstdlib>
#include <set>

#include "random_designs.h"

namespace proof_test {

using namespace winding_cases;

TEST(WindingProof, EveryDemoOnEveryWinderIsWoundAsItLies) {
    for (const char* name : demos)
        for (const char* winder : winders) {
            const design::Design design = demo(name);
            EXPECT_EQ(said(program(design, both(winder)), design, both(winder)), "") << name << " on " << winder;
        }
}

TEST(WindingProof, TurnsOfADemoAreThoseOfItsSections) {
    // From demo-projects/microphone-input: P.a 150, S.a 2100, P.b 150.
    const auto run = replay::run(replay::readProgram(program(demo("microphone-input"), both("six-spindle")), "p"),
                                 both("six-spindle").machine);
    EXPECT_EQ(run.turns(), 2400);
    EXPECT_EQ(run.stepLines.size(), 10U);
}

TEST(RandomWindingProof, EveryProgramIsWoundAsItsDesignLies) {
    const int count = std::getenv("COILWRIGHT_FULL") != nullptr ? 10000 : 50;
    RandomDesigns designs(20);
    int programs = 0, wraps = 0, halfTurns = 0;
    std::set<int> legs;
    for (int k = 0; k < count; ++k) {
        const design::Design design = designs.next();
        legs.clear();
        for (const auto& place : design.coil)
            for (const auto& item : place.order)
                if (item.section() != nullptr) {
                    legs.insert(place.leg);
                    halfTurns += std::fmod(item.section()->turns.value, 1) > 0 ? 1 : 0;
                }
        for (const char* winder : winders)
            for (const int leg : legs) {
                const std::string text = program(design, both(winder), leg);
                ++programs;
                wraps += text.find("PIN WRAP") != std::string::npos ? 1 : 0;
                ASSERT_EQ(said(text, design, both(winder), leg), "")
                    << "design " << k << " on " << winder << ", leg " << leg << "\n"
                    << text;
            }
    }
    // The cases are not of one kind.
    EXPECT_GT(programs, 3 * count);  // some have two coils
    EXPECT_GT(wraps, count / 20);
    EXPECT_GT(halfTurns, count / 20);
    std::cout << programs << " programs, " << wraps << " with wrapped pins, " << halfTurns
              << " sections with a half turn\n";
}

}  // namespace proof_test
