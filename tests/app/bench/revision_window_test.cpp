// SPDX-License-Identifier: GPL-3.0-or-later
// Keep, issue, take up again and check a revision with real events. A picture is left in the build folder.
#include "bench/revision_window.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QDir>
#include <QLabel>
#include <QTemporaryDir>
#include <QTest>

#include "bench/bench_window.h"
#include "design/edit.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"

namespace revision_window_test {

const std::string stepUp = COILWRIGHT_SOURCE_DIR "/tests/references/open_1_shielded_step_up.coilwright";

class RevisionWindowTest : public testing::Test {
protected:
    QTemporaryDir folder;
    bench::BenchWindow window{std::make_shared<const catalog::Catalog>(),
                              exchange::readDesign(exchange::readFile(stepUp), stepUp, {}).design,
                              {}};
    bench::RevisionWindow* revisions = nullptr;

    void SetUp() override {
        window.show();
        ASSERT_TRUE(window.saveTo(folder.filePath("unit.coilwright")));
        QApplication::setActiveWindow(&window);
        QTest::keyClick(&window, Qt::Key_R, Qt::ControlModifier);
        revisions = window.findChild<bench::RevisionWindow*>();
        ASSERT_NE(revisions, nullptr);
        QTest::qWait(1);
    }
    QPushButton* button(const QString& text) {
        for (auto* one : revisions->findChildren<QPushButton*>())
            if (one->text().remove('&') == text) return one;
        return nullptr;
    }
    QLineEdit* line(const QString& name) {
        for (auto* one : revisions->findChildren<QLineEdit*>())
            if (one->accessibleName() == name) return one;
        return nullptr;
    }
    void click(const QString& text) {
        QPushButton* one = button(text);
        ASSERT_NE(one, nullptr);
        ASSERT_TRUE(one->isEnabled()) << text.toStdString();
        QTest::mouseClick(one, Qt::LeftButton);
        ASSERT_TRUE(QTest::qWaitFor([this] { return !revisions->busy(); }, 20000));
    }
    void keep(const QString& reason) {
        QTest::keyClicks(line("Reason"), reason);
        click("Keep what is open");
    }
    void setTurns(double turns) {
        window.document().replace(design::changed(*window.document().design(),
                                                  [turns](design::Design& d) {
                                                      d.coil[0].order[0].section()->turns = turns;
                                                      d.revision = "B";
                                                  }),
                                  "turns");
    }
};

TEST_F(RevisionWindowTest, KeepsIssuesAndTakesUpAgainWithTheSameFigures) {
    EXPECT_FALSE(button("Keep what is open")->isEnabled()) << "without a reason";
    EXPECT_FALSE(button("Take it up")->isEnabled()) << "nothing is kept";
    keep("first sample");
    ASSERT_EQ(revisions->table().rowCount(), 1);
    setTurns(180);
    keep("less inductance");
    ASSERT_EQ(revisions->table().rowCount(), 2);
    EXPECT_EQ(revisions->table().item(1, 1)->text(), "B");
    EXPECT_EQ(revisions->table().item(1, 4)->text(), "less inductance");

    revisions->table().selectRow(0);
    click("Take it up");
    EXPECT_TRUE(revisions->words().startsWith("Every figure is as it was stored")) << revisions->words().toStdString();
    EXPECT_EQ(window.document().undoText(), "revision 1 taken up");
    EXPECT_EQ(window.document().design()->coil[0].order[0].section()->turns.value, 216);

    QTest::keyClicks(line("by"), "head of test");
    click("Set");
    EXPECT_EQ(revisions->table().item(0, 3)->text(), "sample by head of test");
    click("Set");
    EXPECT_TRUE(revisions->words().contains("sample after sample")) << revisions->words().toStdString();
    keep("the same again");
    EXPECT_TRUE(revisions->words().contains("another mark")) << revisions->words().toStdString();
    EXPECT_EQ(revisions->table().rowCount(), 2);
}

TEST_F(RevisionWindowTest, ChecksTheMaterialsAndHasRoomForItsWords) {
    keep("first sample");
    click("Check materials");
    EXPECT_EQ(revisions->words(), "Every material is current: the order may be repeated as it is.\n");
    for (const auto* label : revisions->findChildren<QLabel*>())
        EXPECT_LE(label->sizeHint().width(), label->width()) << label->text().toStdString();
    for (const auto* one : revisions->findChildren<QPushButton*>())
        EXPECT_LE(one->sizeHint().width(), one->width()) << one->text().toStdString();
    const QString pictures = COILWRIGHT_BUILD_DIR "/pictures";
    ASSERT_TRUE(QDir().mkpath(pictures));
    ASSERT_TRUE(revisions->grab().save(pictures + "/revisions.png"));
}

}  // namespace revision_window_test
