// SPDX-License-Identifier: GPL-3.0-or-later
// Recovery, a file in two windows, a file changed from outside: through the window, answered with the mouse.
#include <gtest/gtest.h>

#include <QDir>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>

#include "bench/bench_window.h"
#include "design/edit.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"
#include "exchange/write_file.h"

namespace safety_test {

const QString stepUp = COILWRIGHT_SOURCE_DIR "/tests/references/open_1_shielded_step_up.coilwright";

design::DesignPtr designIn(const QString& path) {
    return exchange::readDesign(exchange::readFile(path.toStdString()), path.toStdString(), {}).design;
}

class SafetyTest : public testing::Test {
protected:
    QTemporaryDir folder;
    QByteArray before = qgetenv("XDG_STATE_HOME");
    QString path = folder.filePath("unit.coilwright");
    std::shared_ptr<const catalog::Catalog> shop = std::make_shared<const catalog::Catalog>();

    SafetyTest() {
        qputenv("XDG_STATE_HOME", folder.path().toUtf8());
        exchange::writeFile(path.toStdString(), exchange::writeDesign(*designIn(stepUp), {}));
    }
    ~SafetyTest() override { qputenv("XDG_STATE_HOME", before); }

    std::unique_ptr<bench::BenchWindow> makeWindow() {
        auto window = std::make_unique<bench::BenchWindow>(shop, designIn(stepUp), std::vector<std::string>{});
        window->guardWork();
        window->show();
        return window;
    }
    static design::DesignPtr withTurns(const design::Design& from, double turns) {
        return design::changed(from, [turns](design::Design& d) { d.coil[0].order[0].section()->turns = turns; });
    }
    static void setTurns(bench::BenchWindow& window, double turns) {
        window.document().replace(withTurns(*window.document().design(), turns), "turns");
    }
    static double turns(bench::BenchWindow& window) {
        return window.document().design()->coil[0].order[0].section()->turns;
    }
    void putTurns(double turns) {
        exchange::writeFile(path.toStdString(), exchange::writeDesign(*withTurns(*designIn(path), turns), {}));
    }
    static void click(bench::BenchWindow& window, const QString& text) {
        for (QPushButton* button : window.notices().buttons()) {
            if (button->text().remove('&') != text) continue;
            QTest::mouseClick(button, Qt::LeftButton);
            QTest::qWait(1);
            return;
        }
        FAIL() << "no answer " << text.toStdString() << " to " << window.notices().sentence().toStdString();
    }
    /// Edits and goes without closing, as a kill would leave it.
    void leaveWork(double turns, bool inFile) {
        auto killed = makeWindow();
        if (inFile) {
            ASSERT_TRUE(killed->openFile(path));
        }
        setTurns(*killed, turns);
        killed->journal()->flush();
    }
};

TEST_F(SafetyTest, WorkLeftBehindIsOfferedAndComesBackAsAnUndoStep) {
    leaveWork(99, true);
    auto window = makeWindow();
    EXPECT_TRUE(window->notices().isVisible());
    EXPECT_TRUE(window->notices().sentence().contains("was not saved when its window ended"));
    ASSERT_EQ(window->notices().buttons().size(), 3u);
    EXPECT_TRUE(window->notices().buttons()[0]->toolTip().contains("99")) << "the difference is not said";
    click(*window, "Take it up");
    EXPECT_FALSE(window->notices().isVisible());
    EXPECT_EQ(turns(*window), 99);
    EXPECT_TRUE(window->document().modified());
    EXPECT_EQ(window->document().path(), path);
    EXPECT_EQ(turns(*window), 99);
    window->document().undo();
    EXPECT_EQ(window->document().design()->coil, designIn(path)->coil);
    EXPECT_FALSE(window->document().modified());
    window->journal()->flush();
    EXPECT_TRUE(document::leftWork(document::recoveryFolder()).empty());
}

TEST_F(SafetyTest, WorkThatWasInNoFileComesBackUnsaved) {
    leaveWork(99, false);
    auto window = makeWindow();
    click(*window, "Take it up");
    EXPECT_EQ(turns(*window), 99);
    EXPECT_EQ(window->document().path(), "");
    EXPECT_TRUE(window->document().modified());
    EXPECT_FALSE(window->document().canUndo());
}

TEST_F(SafetyTest, LaterOffersAgainAndGivingUpDoesNot) {
    leaveWork(99, true);
    {
        auto window = makeWindow();
        click(*window, "Later");
    }
    {
        auto window = makeWindow();
        click(*window, "Give it up");
        EXPECT_EQ(turns(*window), 216);
    }
    EXPECT_FALSE(makeWindow()->notices().isVisible());
}

TEST_F(SafetyTest, AWindowThatIsClosedLeavesNothing) {
    {
        auto window = makeWindow();
        ASSERT_TRUE(window->openFile(path));
        setTurns(*window, 99);
        ASSERT_TRUE(window->saveTo(path));
        EXPECT_TRUE(window->close());
    }
    EXPECT_FALSE(makeWindow()->notices().isVisible());
    EXPECT_TRUE(QDir(document::recoveryFolder()).entryList(QDir::Files | QDir::Hidden).isEmpty());
}

TEST_F(SafetyTest, RecoveredWorkDoesNotGoOverAFileThatMovedOn) {
    leaveWork(99, true);
    putTurns(77);
    auto window = makeWindow();
    EXPECT_TRUE(window->notices().buttons()[0]->toolTip().startsWith("The file was changed since"));
    click(*window, "Take it up");
    EXPECT_TRUE(window->notices().sentence().contains("was changed outside this window"));
    EXPECT_FALSE(window->saveTo(path));
    EXPECT_EQ(designIn(path)->coil[0].order[0].section()->turns.value, 77);
    click(*window, "Keep mine");
    EXPECT_TRUE(window->saveTo(path));
    EXPECT_EQ(designIn(path)->coil[0].order[0].section()->turns.value, 99);
}

TEST_F(SafetyTest, ASecondWindowLooksOnAndSavesElsewhere) {
    auto first = makeWindow();
    ASSERT_TRUE(first->openFile(path));
    auto second = makeWindow();
    ASSERT_TRUE(second->openFile(path));
    EXPECT_TRUE(second->notices().sentence().contains("is open in another window"));
    EXPECT_TRUE(second->windowTitle().contains("read only"));
    setTurns(*second, 99);
    EXPECT_FALSE(second->saveTo(path));
    EXPECT_TRUE(second->message().contains("save it under another name")) << second->message().toStdString();
    EXPECT_EQ(designIn(path)->coil[0].order[0].section()->turns.value, 216);
    EXPECT_TRUE(second->saveTo(folder.filePath("other.coilwright")));
    EXPECT_FALSE(second->windowTitle().contains("read only"));
    EXPECT_FALSE(second->notices().isVisible());
    EXPECT_FALSE(first->saveTo(folder.filePath("other.coilwright"))) << "over a file that the second has open";
}

TEST_F(SafetyTest, AChangeFromOutsideIsToldAndTakenAsAnUndoStep) {
    auto window = makeWindow();
    ASSERT_TRUE(window->openFile(path));
    setTurns(*window, 99);
    putTurns(77);
    ASSERT_TRUE(QTest::qWaitFor([&] { return window->notices().isVisible(); }, 3000));
    EXPECT_FALSE(window->saveTo(path));
    click(*window, "Take the file's");
    EXPECT_EQ(turns(*window), 77);
    EXPECT_FALSE(window->document().modified());
    window->document().undo();
    EXPECT_EQ(turns(*window), 99);
    EXPECT_TRUE(window->saveTo(path));
}

}  // namespace safety_test
