// SPDX-License-Identifier: GPL-3.0-or-later
// How many plots, which alone, the mark, and the way back from a zoom.
#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QTest>
#include <cmath>

#include "plot_fixture.h"

namespace plot_arrangement_test {

using plots_test::answer;
using PlotArrangementTest = plots_test::PlotTest;

int seen(plots::PlotGrid& grid, int made) {
    int count = 0;
    for (int i = 0; i < made; ++i) count += grid.pane(i).isVisible() ? 1 : 0;
    return count;
}

TEST_F(PlotArrangementTest, CountsGoFromOneToEightAndBackAndPlotsComeAgainAsTheyWere) {
    EXPECT_EQ(seen(grid, 4), 4);
    grid.change(1);
    EXPECT_EQ(grid.count(), 6);
    grid.change(1);
    grid.change(1);
    EXPECT_EQ(grid.count(), 8);
    EXPECT_EQ(seen(grid, 8), 8);
    for (int i = 0; i < 8; ++i) EXPECT_GT(grid.pane(i).plot().height(), 60) << i;
    grid.pane(6).setView({"impedance", "load_side_ohm", {}});
    grid.change(-4);
    EXPECT_EQ(grid.count(), 1);
    EXPECT_EQ(seen(grid, 8), 1);
    grid.showAnswer(answer(10), design);
    grid.change(4);
    EXPECT_EQ(grid.pane(6).plot().shownCurves(), QStringList("load side"));
    EXPECT_EQ(grid.pane(6).plot().xAxis->range(), response().xAxis->range());
}

TEST_F(PlotArrangementTest, APlotThatComesLaterHasCursorMarkAndHeldCurves) {
    grid.setHolding(true);
    grid.placeCursor(1000);
    response().setFocus();
    QTest::keyClick(&response(), Qt::Key_M);
    grid.placeCursor(10000);
    grid.change(1);
    grid.pane(4).setView({"response", "magnitude_dB", {}});
    EXPECT_TRUE(grid.pane(4).plot().holding());
    // -10 lg((1 + (10 / 80)^2) / (1 + (1 / 80)^2)) = -0.067 dB.
    EXPECT_EQ(grid.pane(4).readoutText().toStdString(), "1.00 → 10.0 kHz   response −0.07 dB");
}

TEST_F(PlotArrangementTest, OnePlotAloneByEnterAndAllAgain) {
    impedance().setFocus();
    QTest::keyClick(&impedance(), Qt::Key_Return);
    EXPECT_EQ(grid.alone(), 1);
    EXPECT_EQ(seen(grid, 4), 1);
    EXPECT_TRUE(impedance().isVisible());
    EXPECT_TRUE(QTest::qWaitFor([this] { return impedance().width() > 800; }, 1000));
    EXPECT_TRUE(impedance().hasFocus());
    grid.showAnswer(answer(20), design);
    QTest::keyClick(&impedance(), Qt::Key_Return);
    EXPECT_EQ(seen(grid, 4), 4);
    EXPECT_TRUE(response().yAxis->range().contains(20)) << "the others caught up";
}

TEST_F(PlotArrangementTest, ValuesAreToldFromTheMark) {
    grid.placeCursor(100);
    QTest::keyClick(&impedance(), Qt::Key_M);
    grid.placeCursor(1e6);
    // 200 + f / 100 ohm on a logarithmic axis is a ratio: 10200 / 201.
    EXPECT_TRUE(grid.pane(1).readoutText().startsWith(QString::fromUtf8("100 Hz → 1.00 MHz   source side × 50.7")))
        << grid.pane(1).readoutText().toStdString();
    // -10 lg(1 + (1 MHz / 80 kHz)^2) = -21.97 dB.
    EXPECT_TRUE(grid.pane(0).readoutText().contains(QString::fromUtf8("response −22.0 dB")))
        << grid.pane(0).readoutText().toStdString();
    QTest::keyClick(&impedance(), Qt::Key_Escape);
    EXPECT_TRUE(grid.pane(0).readoutText().startsWith("100 Hz")) << grid.pane(0).readoutText().toStdString();
    QTest::keyClick(&impedance(), Qt::Key_Escape);
    EXPECT_FALSE(grid.pane(0).readoutText().startsWith("100 Hz")) << grid.pane(0).readoutText().toStdString();
}

TEST_F(PlotArrangementTest, BackspaceGoesBackThroughZooms) {
    const QRect room = response().axisRect()->rect();
    const auto drag = [&](int from, int to) {
        const QPoint a(room.left() + from, room.top() + 10), b(room.left() + to, room.bottom() - 10);
        QTest::mousePress(&response(), Qt::LeftButton, {}, a);
        QTest::mouseMove(&response(), (a + b) / 2);
        QTest::mouseMove(&response(), b);
        QTest::mouseRelease(&response(), Qt::LeftButton, {}, b);
    };
    const QCPRange first = response().yAxis->range();
    drag(room.width() / 4, room.width() * 3 / 4);
    const QCPRange once = response().xAxis->range();
    drag(room.width() / 4, room.width() / 2);
    EXPECT_NE(response().xAxis->range(), once);
    QTest::keyClick(&response(), Qt::Key_Backspace);
    EXPECT_EQ(response().xAxis->range(), once);
    EXPECT_EQ(impedance().xAxis->range(), once);
    QTest::keyClick(&response(), Qt::Key_Backspace);
    EXPECT_EQ(response().xAxis->range(), QCPRange(1, 1e6));
    EXPECT_EQ(response().yAxis->range(), first);
    QTest::keyClick(&response(), Qt::Key_Backspace);
    EXPECT_EQ(response().xAxis->range(), QCPRange(1, 1e6));
}

TEST_F(PlotArrangementTest, WhatIsNotThereYetIsWaitedFor) {
    plots::Arrangement wish = grid.arrangement();
    wish.views[0] = {"balance", {}, {}};
    grid.arrange(wish);
    EXPECT_EQ(grid.pane(0).choice()->currentIndex(), -1);
    EXPECT_EQ(grid.pane(0).choice()->placeholderText(), "Common-mode rejection");
    auto more = std::make_shared<analysis::Answer>(*answer(14));
    auto balance = std::make_shared<analysis::Trace>(*more->traces[1]);
    balance->name = "balance";
    balance->title = "Common-mode rejection";
    more->traces.push_back(balance);
    grid.showAnswer(more, design);
    EXPECT_EQ(grid.pane(0).choice()->currentText(), "Common-mode rejection");
    EXPECT_EQ(grid.pane(0).plot().shownCurves().size(), 2);
}

TEST(PlotArrangement, WhatIsAmissIsAsAtFirst) {
    plots::Arrangement odd{5, {{"noise", {}, {}}}};
    odd = plots::sound(odd);
    const plots::Arrangement first;
    EXPECT_EQ(odd.count, first.count);
    ASSERT_EQ(odd.views.size(), first.views.size());
    EXPECT_EQ(odd.views[0].trace, "noise");
    EXPECT_EQ(odd.views[7], first.views[7]);
}

}  // namespace plot_arrangement_test
