// SPDX-License-Identifier: GPL-3.0-or-later
// A production of the open design: yields, bands, histograms and causes, beside a bench that goes on.
#include "bench/spread_window.h"

#include <gtest/gtest.h>

#include <QAccessible>
#include <QApplication>
#include <QElapsedTimer>
#include <QHelpEvent>
#include <QTest>
#include <QTimer>
#include <QToolTip>
#include <numeric>

#include "bench/part_words.h"
#include "cut/cut_view.h"
#include "design/edit.h"
#include "opened_bench.h"
#include "plots/band_area.h"

namespace spread_window_test {

class SpreadOfProduction : public opened_bench::OpenedBench {
protected:
    SpreadOfProduction() : OpenedBench("ribbon-step-up") {}
    bench::SpreadWindow* spread = nullptr;

    void SetUp() override {
        plots::Arrangement two;
        two.count = 2;
        window.plotGrid().arrange(two);
        showWindow();
        QTest::keyClick(&window, Qt::Key_T, Qt::ControlModifier);
        spread = window.findChild<bench::SpreadWindow*>();
        ASSERT_NE(spread, nullptr);
        ASSERT_TRUE(QTest::qWaitForWindowActive(spread));
    }
    QPushButton& run() {
        for (auto* button : spread->findChildren<QPushButton*>()) return *button;
        throw std::runtime_error("no button");
    }
    QSpinBox& units() { return *spread->findChildren<QSpinBox*>().front(); }
    /// By keys: the count typed, the button pressed.
    void make(int count) {
        units().setFocus();
        units().selectAll();
        QTest::keyClicks(&units(), QString::number(count));
        QTest::keyClick(&run(), Qt::Key_Space);
        EXPECT_TRUE(window.spreadStudy().busy());
    }
    void finish() {
        ASSERT_TRUE(QTest::qWaitFor([this] { return !window.spreadStudy().busy(); }, 240000));
        QTest::qWait(30);
    }
    const bench::PromisesModel& promises() { return window.promises().promises(); }
    QString yieldAt(int row) { return promises().index(row, bench::PromisesModel::Yield).data().toString(); }
};

TEST_F(SpreadOfProduction, YieldsBandsAndCausesStandOnTheBenchUntilTheDesignChanges) {
    EXPECT_TRUE(window.promises().isColumnHidden(bench::PromisesModel::Yield));
    make(60);
    EXPECT_EQ(run().text(), "&Cancel");
    finish();
    const auto* found = window.spreadStudy().found();
    ASSERT_NE(found, nullptr) << window.spreadStudy().why().toStdString();
    EXPECT_EQ(found->head.units, 60U);
    EXPECT_GT(found->head.varying.size(), 10U);  // the tolerances of the resources
    // Promises, and all together, with the share of units that keep them.
    EXPECT_FALSE(window.promises().isColumnHidden(bench::PromisesModel::Yield));
    const int last = promises().rowCount() - 1;
    EXPECT_EQ(promises().promise(last), nullptr);
    EXPECT_EQ(promises().index(last, bench::PromisesModel::Limit).data(), "all promises together");
    for (int row = 0; row <= last; ++row) EXPECT_TRUE(yieldAt(row).endsWith("%")) << row;
    // A band behind the curve of each plot, about the nominal.
    const auto& plot = window.plotGrid().pane(0).plot();
    ASSERT_FALSE(plot.bands()->bands().empty());
    EXPECT_FALSE(plot.bands()->old());
    EXPECT_FALSE(window.plotGrid().pane(1).plot().bands()->bands().empty());
    window.plotGrid().placeCursor(1000);
    EXPECT_TRUE(window.plotGrid().pane(0).readoutText().contains("(units "))
        << window.plotGrid().pane(0).readoutText().toStdString();
    // The histogram counts every unit once.
    const auto& shown = spread->histogram().shown();
    ASSERT_TRUE(shown.has_value());
    const auto& bins = shown->summary.histogram.units;
    EXPECT_EQ(std::accumulate(bins.begin(), bins.end(), std::size_t{0}), 60U);

    window.document().replace(
        design::changed(*window.document().design(), [](design::Design& d) { d.brief.operatingLevel = -70; }), "level");
    EXPECT_FALSE(window.spreadStudy().current());
    EXPECT_TRUE(plot.bands()->old());
    EXPECT_TRUE(spread->state().startsWith("Old")) << spread->state().toStdString();
    EXPECT_TRUE(promises().index(0, bench::PromisesModel::Yield).data(Qt::ToolTipRole).toString().startsWith("old"))
        << "";
    window.document().undo();
    EXPECT_TRUE(window.spreadStudy().current());
    EXPECT_FALSE(plot.bands()->old());
    settle();
}

TEST_F(SpreadOfProduction, BarsAndPartsOfTheCutSayWhatAPartDoes) {
    make(120);  // shares of the variance need twice as many units as causes
    finish();
    const auto& model = spread->bars().causes();
    ASSERT_GT(model.rowCount(), 3);
    // Ranked: the greatest first, and the longest bar is whole.
    double before = 1;
    for (int row = 0; row < model.rowCount(); ++row) {
        const double length =
            std::abs(model.index(row, bench::CausesModel::Bar).data(bench::CausesModel::lengthRole).toDouble());
        EXPECT_LE(length, before + 1e-12);
        if (row == 0) {
            EXPECT_DOUBLE_EQ(length, 1);
        }
        before = length;
    }
    // The mouse over a bar.
    const QRect bar = spread->bars().visualRect(model.index(1, bench::CausesModel::Bar));
    QMouseEvent over(QEvent::MouseMove, bar.center(), spread->bars().viewport()->mapToGlobal(QPointF(bar.center())),
                     Qt::NoButton, Qt::NoButton, {});
    QApplication::sendEvent(spread->bars().viewport(), &over);
    QTest::qWait(30);
    EXPECT_EQ(spread->words(), model.words(1));
    EXPECT_TRUE(spread->words().contains("one standard deviation more")) << spread->words().toStdString();
    EXPECT_TRUE(spread->words().contains("derivative"));
    // By keys, and from there to the bench.
    spread->bars().setFocus();
    QTest::keyClick(&spread->bars(), Qt::Key_Home);
    QTest::keyClick(&spread->bars(), Qt::Key_Down);
    EXPECT_EQ(spread->words(), model.words(spread->bars().currentIndex().row()));
    int row = 0;
    while (row < model.rowCount() && !std::holds_alternative<design::ItemIndex>(model.part(row))) ++row;
    ASSERT_LT(row, model.rowCount()) << "no item of the coil among the causes";
    spread->bars().setCurrentIndex(model.index(row, 0));
    QTest::keyClick(&spread->bars(), Qt::Key_Return);
    EXPECT_EQ(window.selection().selected(), model.part(row));
    // The shares of the variance instead: with what is left they make one.
    for (auto* choice : spread->findChildren<QRadioButton*>())
        if (!choice->isChecked()) QTest::keyClick(choice, Qt::Key_Space);
    ASSERT_GT(model.rowCount(), 0);
    EXPECT_TRUE(model.index(0, bench::CausesModel::Value).data().toString().endsWith("%"));
    EXPECT_TRUE(model.words(0).contains("of the variance of"));
    // A part of the cut says the same under the mouse.
    auto* cut = window.findChild<cut::CutView*>();
    const QPoint at = cut->itemRect({0, 4}).center().toPoint();  // the primary
    QHelpEvent help(QEvent::ToolTip, at, cut->mapToGlobal(at));
    QApplication::sendEvent(cut, &help);
    EXPECT_TRUE(QToolTip::text().contains("One standard deviation more")) << QToolTip::text().toStdString();
    EXPECT_TRUE(QToolTip::text().contains(" of P")) << QToolTip::text().toStdString();
    QToolTip::hideText();
}

TEST_F(SpreadOfProduction, AStudyIsCancelledAndDroppedWithoutHoldingTheWindowUp) {
    make(100000);
    QElapsedTimer clock;
    qint64 longest = 0;
    clock.start();
    QTimer tick;
    QObject::connect(&tick, &QTimer::timeout, [&] { longest = std::max(longest, clock.restart()); });
    tick.start(10);
    QTest::qWait(1500);
    EXPECT_LT(longest, 400) << "the window stood still";
    EXPECT_TRUE(window.spreadStudy().busy());
    QTest::keyClick(&run(), Qt::Key_Space);
    EXPECT_FALSE(window.spreadStudy().busy());
    EXPECT_EQ(run().text(), "&Make them");
    make(100000);
    window.document().replace(
        design::changed(*window.document().design(), [](design::Design& d) { d.brief.operatingLevel = -70; }), "level");
    EXPECT_FALSE(window.spreadStudy().busy());
    EXPECT_EQ(window.spreadStudy().found(), nullptr);
    settle();
}

TEST_F(SpreadOfProduction, EveryControlHasANameAndFixedTextsHaveTheirRoom) {
    for (auto* widget : spread->findChildren<QWidget*>()) {
        if (!widget->isVisible() || widget->focusPolicy() == Qt::NoFocus || widget->focusProxy() != nullptr) continue;
        if (qobject_cast<QLineEdit*>(widget) && qobject_cast<QSpinBox*>(widget->parentWidget())) continue;
        auto* spoken = QAccessible::queryAccessibleInterface(widget);
        EXPECT_GT(spoken->text(QAccessible::Name).size(), 1) << widget->metaObject()->className();
    }
    for (const auto* button : spread->findChildren<QAbstractButton*>()) {
        EXPECT_LE(button->sizeHint().width(), button->width()) << button->text().toStdString();
        EXPECT_LE(button->sizeHint().height(), button->height()) << button->text().toStdString();
    }
}

}  // namespace spread_window_test
