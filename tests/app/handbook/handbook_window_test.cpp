// SPDX-License-Identifier: GPL-3.0-or-later
// The handbook on screen: reached from the menu, every page shown, links followed, words found.
#include "handbook/handbook_window.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QScrollBar>
#include <QTest>

#include "bench/bench_window.h"
#include "commands/places.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"

namespace handbook_window_test {

const QString folder = QStringLiteral(COILWRIGHT_SOURCE_DIR "/resources/handbook");

class HandbookWindowTest : public testing::Test {
protected:
    handbook::HandbookWindow window{folder, nullptr};

    void SetUp() override {
        window.showPage("index.md");
        window.show();
    }
};

TEST_F(HandbookWindowTest, ShowsEveryPageOfTheListWithoutASidewaysScroll) {
    for (int row = 0; row < window.list().count(); ++row) {
        window.list().setCurrentRow(row);
        QTest::qWait(1);
        EXPECT_EQ(window.shownPage(), window.list().item(row)->data(Qt::UserRole).toString());
        EXPECT_TRUE(window.view().toPlainText().startsWith(window.list().item(row)->text()));
        EXPECT_EQ(window.view().horizontalScrollBar()->maximum(), 0) << window.shownPage().toStdString();
    }
    window.showPage("leakage.md");
    ASSERT_TRUE(QDir().mkpath(COILWRIGHT_BUILD_DIR "/pictures"));
    EXPECT_TRUE(window.grab().save(COILWRIGHT_BUILD_DIR "/pictures/handbook.png"));
}

TEST_F(HandbookWindowTest, LinksLeadToTheirPageAndBack) {
    window.showPage("job.md");
    EXPECT_EQ(window.list().currentItem()->text(), "A job from brief to lot");
    ASSERT_TRUE(window.view().find("production will do"));
    const QRect words = window.view().cursorRect();
    QTest::mouseClick(window.view().viewport(), Qt::LeftButton, {}, words.center() - QPoint(30, 0));
    EXPECT_EQ(window.shownPage(), "spread.md");
    EXPECT_EQ(window.list().currentItem()->text(), "What a production will do");
    window.view().backward();
    EXPECT_EQ(window.shownPage(), "job.md");
}

TEST_F(HandbookWindowTest, ASearchKeepsThePagesThatHoldTheWordsAndGoesFromPlaceToPlace) {
    QTest::keyClicks(&window.search(), "Rosa");
    std::vector<QString> kept;
    for (int row = 0; row < window.list().count(); ++row)
        if (!window.list().item(row)->isHidden())
            kept.push_back(window.list().item(row)->data(Qt::UserRole).toString());
    EXPECT_EQ(kept, (std::vector<QString>{"coil.md", "leakage.md"}));
    QTest::keyClick(&window.search(), Qt::Key_Return);
    EXPECT_EQ(window.shownPage(), "coil.md");
    EXPECT_EQ(window.view().textCursor().selectedText(), "Rosa");
    QTest::keyClick(&window.search(), Qt::Key_Return);
    EXPECT_EQ(window.shownPage(), "leakage.md");
    EXPECT_TRUE(window.isVisible());
}

TEST(HandbookInTheBench, OpensFromTheHelpMenuOnceAndSaysWhereThereIsNone) {
    const commands::Places where = commands::places();
    const auto shop = std::make_shared<const catalog::Catalog>(commands::shopCatalog(where));
    const std::string path = commands::demoDesigns(where).front();
    const auto design = exchange::readDesign(exchange::readFile(path), path, *shop).design;
    bench::BenchWindow with(shop, design, {}, commands::resourceFolders(where));
    with.actions()[bench::Act::Handbook].trigger();
    with.showHandbook("plots.md");
    const auto open = with.findChildren<handbook::HandbookWindow*>();
    ASSERT_EQ(open.size(), 1);
    EXPECT_FALSE(open.front()->isModal());
    EXPECT_EQ(open.front()->shownPage(), "plots.md");
    bench::BenchWindow without(shop, design, {});
    without.actions()[bench::Act::Handbook].trigger();
    EXPECT_EQ(without.findChild<handbook::HandbookWindow*>(), nullptr);
    EXPECT_EQ(without.message(), "There is no handbook beside the program's data.");
}

}  // namespace handbook_window_test
