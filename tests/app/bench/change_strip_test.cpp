// SPDX-License-Identifier: GPL-3.0-or-later
// The lines that say what an edit moved and what the other end at earth would move.
#include "bench/change_strip.h"

#include <gtest/gtest.h>

#include <QTest>

#include "bench/bench_window.h"
#include "design/edit.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"

namespace change_strip_test {

const std::string stepUp = COILWRIGHT_SOURCE_DIR "/tests/references/open_1_shielded_step_up.coilwright";
const std::string line = COILWRIGHT_SOURCE_DIR "/tests/references/open_2_interleaved_line.coilwright";

design::DesignPtr designIn(const std::string& path) {
    return exchange::readDesign(exchange::readFile(path), path, {}).design;
}

class ChangeStripTest : public testing::Test {
protected:
    bench::BenchWindow window{std::make_shared<const catalog::Catalog>(), designIn(stepUp), {}};

    void SetUp() override {
        window.show();
        settle();
    }
    void settle() {
        ASSERT_TRUE(QTest::qWaitFor([this] { return !window.computing() && window.changes().settled(); }, 20000));
    }
    void answered() {
        ASSERT_TRUE(QTest::qWaitFor([this] { return !window.computing(); }, 20000));
    }
    [[nodiscard]] design::DesignPtr withTurns(double turns) {
        return design::changed(*window.document().design(),
                               [turns](design::Design& d) { d.coil[0].order[0].section()->turns = turns; });
    }
    std::string change() { return window.changes().change().toStdString(); }
    std::string otherEnd() { return window.changes().otherEnd().toStdString(); }
};

TEST_F(ChangeStripTest, AnEditIsNamedWithWhatItMoved) {
    const auto before = window.answer();
    EXPECT_EQ(change(), "What an edit moves is said here.");
    window.document().replace(withTurns(144), "turns of P.a");
    answered();
    EXPECT_EQ(change(), "Turns of P.a: " + analysis::sentence(analysis::moves(*before, *window.answer())));
    EXPECT_NE(change().find("leakage P–S "), std::string::npos) << change();
    window.document().undo();
    answered();
    EXPECT_TRUE(change().starts_with("Undo turns of P.a: leakage P–S ")) << change();
    window.document().redo();
    answered();
    EXPECT_TRUE(change().starts_with("Turns of P.a: leakage P–S ")) << change();
}

TEST_F(ChangeStripTest, WhatIsTriedIsComparedWithTheDesignItIsTriedOn) {
    const auto before = window.answer();
    window.document().preview(withTurns(130));
    answered();
    window.document().preview(withTurns(144));
    answered();
    EXPECT_EQ(change(), "Tried: " + analysis::sentence(analysis::moves(*before, *window.answer())));
    window.document().replace(withTurns(144), "turns of P.a");
    answered();
    EXPECT_EQ(change(), "Turns of P.a: " + analysis::sentence(analysis::moves(*before, *window.answer())));
}

TEST_F(ChangeStripTest, TheOtherEndIsSolvedAndKnownAgainAfterUndo) {
    const auto expected = analysis::otherEndEffects(*window.document().design(), {}, window.answer());
    ASSERT_EQ(expected.size(), 1U);
    const std::string words = "Other end to earth, " + expected[0].words + ": " + analysis::sentence(expected[0].moves);
    EXPECT_EQ(otherEnd(), words);
    window.document().replace(withTurns(100), "turns of P.a");
    settle();
    EXPECT_NE(otherEnd(), words);
    window.document().undo();
    ASSERT_TRUE(QTest::qWaitFor([this] { return !window.computing(); }, 20000));
    EXPECT_EQ(otherEnd(), words);  // without another solve
    EXPECT_TRUE(window.changes().settled());
}

TEST_F(ChangeStripTest, AnotherDesignStartsAfresh) {
    window.document().replace(withTurns(144), "turns of P.a");
    answered();
    ASSERT_TRUE(window.openFile(QString::fromStdString(line)));
    answered();
    EXPECT_EQ(change(), "What an edit moves is said here.");
}

}  // namespace change_strip_test
