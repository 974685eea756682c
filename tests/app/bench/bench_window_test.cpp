// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/bench_window.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QFile>
#include <QLineEdit>
#include <QMessageBox>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>

#include "design/edit.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"

namespace bench_window_test {

const QString stepUp = COILWRIGHT_SOURCE_DIR "/tests/references/open_1_shielded_step_up.coilwright";
const QString line = COILWRIGHT_SOURCE_DIR "/tests/references/open_2_interleaved_line.coilwright";

design::DesignPtr designIn(const QString& path) {
    return exchange::readDesign(exchange::readFile(path.toStdString()), path.toStdString(), {}).design;
}

class BenchWindowTest : public testing::Test {
protected:
    bench::BenchWindow window{std::make_shared<const catalog::Catalog>(), designIn(stepUp), {line.toStdString()}};
    QTemporaryDir folder;

    void SetUp() override {
        window.show();
        settle();
    }
    void settle() {
        ASSERT_TRUE(QTest::qWaitFor([this] { return !window.computing(); }, 20000));
    }
    void setTurns(double turns) {
        window.document().replace(
            design::changed(*window.document().design(),
                            [turns](design::Design& d) { d.coil[0].order[0].section()->turns = turns; }),
            "P.a turns");
    }
    static void answerQuestion(QMessageBox::StandardButton button, bool& asked) {
        QTimer::singleShot(0, [button, &asked] {
            auto* question = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
            asked = question != nullptr;
            if (question) question->button(button)->click();
        });
    }
};

TEST_F(BenchWindowTest, AnEditMovesPlotsFiguresAndTitle) {
    EXPECT_FALSE(window.windowTitle().contains("modified"));
    EXPECT_FALSE(window.actions()[bench::Act::Undo].isEnabled());
    const double before = window.answer()->figure("dcr.P")->value;
    setTurns(144);
    settle();
    EXPECT_LT(window.answer()->figure("dcr.P")->value, before);
    EXPECT_TRUE(window.windowTitle().contains("modified"));
    EXPECT_TRUE(window.actions()[bench::Act::Undo].text().contains("P.a turns"));
    const int row = window.figures().figures().rowOf("dcr.P", "");
    EXPECT_GE(row, 0);
    window.document().undo();
    settle();
    EXPECT_EQ(window.answer()->figure("dcr.P")->value, before);
    EXPECT_FALSE(window.windowTitle().contains("modified"));
}

TEST_F(BenchWindowTest, PlotsAreRememberedFromRunToRun) {
    window.actions()[bench::Act::MorePlots].trigger();
    EXPECT_EQ(window.plotGrid().count(), 6);
    QComboBox* choice = window.plotGrid().pane(5).choice();
    const int index = choice->findText(QString::fromUtf8("Impedance · source side"));
    ASSERT_GE(index, 0);
    choice->setCurrentIndex(index);
    emit choice->activated(index);
    EXPECT_EQ(bench::recalled().plots, window.plotGrid().arrangement());
    bench::BenchWindow next(std::make_shared<const catalog::Catalog>(), designIn(line), {});
    EXPECT_EQ(next.plotGrid().count(), 6);
    EXPECT_EQ(next.plotGrid().pane(5).plot().view().curve, "source_side_ohm");
    window.plotGrid().arrange({});
}

TEST_F(BenchWindowTest, AFileThatCannotBeReadLeavesTheOpenDesignAndSaysWhy) {
    const design::DesignPtr before = window.document().design();
    const QString path = folder.filePath("cut.coilwright");
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(exchange::readFile(stepUp.toStdString()).substr(0, 400).c_str());
    file.close();
    EXPECT_FALSE(window.openFile(path));
    EXPECT_EQ(window.document().design(), before);
    EXPECT_TRUE(window.message().startsWith(path)) << window.message().toStdString();
    EXPECT_TRUE(window.message().contains("allowed is"));
    EXPECT_FALSE(window.openFile(folder.filePath("none.coilwright")));
    EXPECT_EQ(window.document().design(), before);
}

TEST_F(BenchWindowTest, OpeningSavingAndRecentFiles) {
    EXPECT_TRUE(window.openFile(line));
    settle();
    setTurns(200);
    const QString path = folder.filePath("mine.coilwright");
    ASSERT_TRUE(window.saveTo(path));
    EXPECT_FALSE(window.document().modified());
    EXPECT_EQ(window.message(), "mine.coilwright is saved.");
    EXPECT_EQ(bench::recalled().recent.value(0), path);
    EXPECT_EQ(bench::recalled().recent.value(1), line);
    setTurns(100);
    EXPECT_FALSE(window.saveTo("/proc/none/mine.coilwright"));
    EXPECT_TRUE(window.document().modified());
    EXPECT_EQ(window.document().path(), path);
}

TEST_F(BenchWindowTest, UndoReachesTheDesignFromAFocusedField) {
    auto* field = new QLineEdit(&window);
    field->show();
    QApplication::setActiveWindow(&window);
    field->setFocus();
    setTurns(144);
    ASSERT_TRUE(window.document().canUndo());
    QTest::keyClicks(field, "12");
    QTest::keyClick(field, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_FALSE(window.document().canUndo());
    EXPECT_EQ(field->text(), "12");
    QTest::keyClick(field, Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(field->text(), "12") << "nothing left to undo: the field's own history stays out of it";
    QTest::keyClick(field, Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_TRUE(window.document().canUndo());
}

TEST_F(BenchWindowTest, ClosingWithChangesAsksOnce) {
    bool asked = false;
    setTurns(144);
    answerQuestion(QMessageBox::Cancel, asked);
    EXPECT_FALSE(window.close());
    EXPECT_TRUE(asked);
    answerQuestion(QMessageBox::Discard, asked);
    EXPECT_TRUE(window.close());
    EXPECT_TRUE(asked);
}

TEST_F(BenchWindowTest, ClosingWithoutChangesAsksNothing) {
    EXPECT_TRUE(window.close());
}

TEST_F(BenchWindowTest, AnotherHookUpGivesItsCurves) {
    ASSERT_EQ(window.hookUps().count(), 2);
    window.hookUps().setCurrentIndex(1);
    emit window.hookUps().activated(1);
    settle();
    EXPECT_EQ(window.answer()->hookUp, "common mode");
    window.openFile(line);
    settle();
    EXPECT_EQ(window.answer()->hookUp, window.document().design()->hookUps.front().name);
}

TEST_F(BenchWindowTest, HoldingTellsTheDifferenceInWords) {
    window.actions()[bench::Act::Hold].trigger();
    setTurns(144);
    settle();
    EXPECT_TRUE(window.plotGrid().pane(0).differenceText().contains(QString::fromUtf8("→")))
        << window.plotGrid().pane(0).differenceText().toStdString();
}

TEST_F(BenchWindowTest, EveryActHasWordsAndATip) {
    for (const QAction* action : window.findChildren<QAction*>()) {
        if (action->isSeparator() || action->text().isEmpty()) continue;
        EXPECT_FALSE(action->toolTip().isEmpty()) << action->text().toStdString();
    }
    EXPECT_EQ(window.actions()[bench::Act::SaveAs].shortcut(), QKeySequence("Ctrl+Shift+S"));
    EXPECT_EQ(window.actions()[bench::Act::Quit].shortcut(), QKeySequence("Ctrl+Q"));
}

TEST_F(BenchWindowTest, TheLookChangesEveryPlot) {
    window.actions()[bench::Act::LookDark].trigger();
    QTest::qWait(20);
    const QImage dark = window.plotGrid().pane(0).plot().grab().toImage();
    EXPECT_LT(qGray(dark.pixel(2, dark.height() - 2)), 60);
    window.actions()[bench::Act::LookLight].trigger();
    QTest::qWait(20);
    const QImage light = window.plotGrid().pane(0).plot().grab().toImage();
    EXPECT_GT(qGray(light.pixel(2, light.height() - 2)), 200);
}

}  // namespace bench_window_test
