// SPDX-License-Identifier: GPL-3.0-or-later
// Random edits, undos and redos through the window: a sample here, 10 000 with COILWRIGHT_FULL in the environment
// (target `full`).
#include <gtest/gtest.h>

#include "commands/places.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"
#include "random_edits.h"

namespace random_edits_test {

void editAndUndoAll(const std::string& name, int count, unsigned seed) {
    const auto shop = std::make_shared<const catalog::Catalog>(commands::shopCatalog(commands::places()));
    const std::string path = COILWRIGHT_SOURCE_DIR "/demo-projects/" + name + "/" + name + ".coilwright";
    bench::BenchWindow window(shop, exchange::readDesign(exchange::readFile(path), path, *shop).design, {});
    window.guardWork();
    window.show();
    const std::string start = exchange::writeDesign(*window.document().design(), *shop);
    window_test::RandomHand hand(window, seed);
    int edits = 0;
    QObject::connect(&window.document(), &document::Document::changed, &window, [&] {
        ++edits;
        if (window.document().canUndo()) {
            EXPECT_FALSE(window.document().undoText().isEmpty()) << "an act without a name";
        }
    });
    for (int k = 0; k < count; ++k) {
        hand.act();
        if (k % 16 == 0) window_test::RandomHand::settle();
    }
    EXPECT_GT(edits, count / 4) << "the hand does too little";
    hand.undoAll();
    EXPECT_FALSE(window.document().canUndo());
    EXPECT_EQ(exchange::writeDesign(*window.document().design(), *shop), start) << name << ", seed " << seed;
    EXPECT_FALSE(window.document().modified());
    EXPECT_TRUE(QTest::qWaitFor([&] { return !window.computing(); }, 20000));
    window.journal()->flush();
    EXPECT_TRUE(document::leftWork(document::recoveryFolder()).empty());
}

class RandomEdits : public testing::TestWithParam<const char*> {};

TEST_P(RandomEdits, UndoneAllGiveTheStartByteForByte) {
    editAndUndoAll(GetParam(), qEnvironmentVariableIsSet("COILWRIGHT_FULL") ? 2000 : 20, 1);
}

INSTANTIATE_TEST_SUITE_P(Demos, RandomEdits,
                         testing::Values("microphone-input", "ribbon-step-up", "direct-box", "line-unit", "splitter"),
                         [](const auto& of) {
                             std::string name = of.param;
                             std::erase(name, '-');
                             return name;
                         });

}  // namespace random_edits_test
