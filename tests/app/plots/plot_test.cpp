// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/plot_grid.h"

#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QTest>
#include <cmath>

#include "plot_fixture.h"
#include "plots/band_area.h"
#include "plots/plot_items.h"

namespace plot_test {

using plots_test::answer;
using PlotTest = plots_test::PlotTest;

TEST_F(PlotTest, ShowsResponseWithPhaseOnTheRight) {
    EXPECT_EQ(response().shownCurves(), QStringList({"response", "phase"}));
    EXPECT_TRUE(response().yAxis2->visible());
    EXPECT_FALSE(impedance().yAxis2->visible());
    EXPECT_TRUE(response().yAxis->range().contains(14));
    EXPECT_EQ(response().xAxis->range().lower, 1);
    EXPECT_EQ(response().xAxis->range().upper, 1e6);
    EXPECT_EQ(impedance().yAxis->scaleType(), QCPAxis::stLogarithmic);
    EXPECT_EQ(response().accessibleName(), "Response");
    EXPECT_FALSE(response().accessibleDescription().isEmpty());
}

TEST_F(PlotTest, OutsideValidityIsDashed) {
    bool solid = false, dashed = false;
    for (int i = 0; i < response().graphCount(); ++i) {
        const QCPGraph* graph = response().graph(i);
        if (graph->valueAxis() != response().yAxis) continue;
        for (const auto& point : *graph->data()) {
            if (std::isnan(point.value)) continue;
            (graph->pen().style() == Qt::SolidLine ? solid : dashed) = true;
            EXPECT_EQ(graph->pen().style() == Qt::SolidLine, point.key <= 3e5) << point.key;
        }
    }
    EXPECT_TRUE(solid);
    EXPECT_TRUE(dashed);
}

TEST_F(PlotTest, TheMaskOfTheBriefStandsAboutTheLevelAtOneKilohertz) {
    ASSERT_EQ(response().mask()->points().size(), 2U);
    EXPECT_TRUE(impedance().mask()->points().empty());
}

TEST_F(PlotTest, AnUnchangedPlotIsNotDrawnAgain) {
    QTest::qWait(30);
    QSignalSpy first(&response(), &QCustomPlot::afterReplot), second(&impedance(), &QCustomPlot::afterReplot);
    grid.showAnswer(answer(13.9), design);
    QTest::qWait(30);
    EXPECT_EQ(first.count(), 1);
    EXPECT_EQ(second.count(), 0);
}

TEST_F(PlotTest, ManyAnswersInOneTurnOfTheLoopAreDrawnOnce) {
    QTest::qWait(30);
    QSignalSpy drawn(&response(), &QCustomPlot::afterReplot);
    for (int i = 0; i < 50; ++i) grid.showAnswer(answer(10 + 0.01 * i), design);
    QTest::qWait(30);
    EXPECT_EQ(drawn.count(), 1);
}

TEST_F(PlotTest, OneCursorGoesThroughAllPlotsByMouseAndByKeys) {
    const QRect room = response().axisRect()->rect();
    QTest::mouseMove(&response(), room.center());
    ASSERT_TRUE(QTest::qWaitFor([this] { return grid.cursor() > 0; }, 1000));
    EXPECT_NEAR(grid.cursor() / 1000, 1, 0.1);
    EXPECT_TRUE(grid.pane(1).readoutText().contains("Hz")) << grid.pane(1).readoutText().toStdString();
    EXPECT_TRUE(grid.pane(1).readoutText().contains("source side")) << grid.pane(1).readoutText().toStdString();
    const double before = grid.cursor();
    response().setFocus();
    QTest::keyClick(&response(), Qt::Key_Right);
    EXPECT_NEAR(grid.cursor() / before, std::pow(10, 0.02), 1e-9);
    QTest::keyClick(&response(), Qt::Key_Left, Qt::ShiftModifier);
    EXPECT_NEAR(grid.cursor() / before, std::pow(10, -0.18), 1e-9);
}

TEST_F(PlotTest, TheReadoutSaysWhyACurveIsOutsideValidity) {
    grid.placeCursor(5e5);
    EXPECT_TRUE(grid.pane(0).readoutText().endsWith("outside validity: the leakage field is that of thin layers"));
}

TEST_F(PlotTest, DraggingZoomsEveryFrequencyAxisAndDoubleClickShowsAllAgain) {
    const QRect room = response().axisRect()->rect();
    const QPoint from(room.left() + room.width() / 4, room.top() + 10),
        to(room.left() + room.width() / 2, room.bottom() - 10);
    QTest::mousePress(&response(), Qt::LeftButton, {}, from);
    QTest::mouseMove(&response(), (from + to) / 2);
    QTest::mouseMove(&response(), to);
    QTest::mouseRelease(&response(), Qt::LeftButton, {}, to);
    EXPECT_NEAR(std::log10(response().xAxis->range().lower), 1.5, 0.1);
    EXPECT_EQ(impedance().xAxis->range(), response().xAxis->range());
    QTest::mouseDClick(&response(), Qt::LeftButton, {}, room.center());
    EXPECT_EQ(impedance().xAxis->range().lower, 1);
    EXPECT_EQ(impedance().xAxis->range().upper, 1e6);
}

TEST_F(PlotTest, HoldingKeepsTheOldCurveBeneathAndLocksTheAxes) {
    grid.setHolding(true);
    const QCPRange before = response().yAxis->range();
    grid.showAnswer(answer(34), design);
    EXPECT_EQ(response().yAxis->range(), before);
    int held = 0;
    for (int i = 0; i < response().graphCount(); ++i) held += response().graph(i)->layer()->name() == "held" ? 1 : 0;
    EXPECT_EQ(held, 2);
    EXPECT_TRUE(grid.pane(0).differenceText().contains("20")) << grid.pane(0).differenceText().toStdString();
    grid.setHolding(false);
    EXPECT_NE(response().yAxis->range(), before);
    EXPECT_TRUE(grid.pane(0).differenceText().isEmpty());
}

TEST_F(PlotTest, TheFourthPlotShowsAnyCurveThereIs) {
    QComboBox* choice = grid.pane(3).choice();
    ASSERT_NE(choice, nullptr);
    EXPECT_EQ(choice->count(), 7) << "two traces whole, and five curves";
    EXPECT_EQ(grid.pane(3).plot().shownCurves(), QStringList("group delay"));
    const int index = choice->findText(QString::fromUtf8("Impedance · load side"));
    ASSERT_GE(index, 0);
    choice->setCurrentIndex(index);
    emit choice->activated(index);
    EXPECT_EQ(grid.pane(3).plot().shownCurves(), QStringList("load side"));
}

TEST_F(PlotTest, EndLabelsStayInsideAndApart) {
    for (int i = 0; i < response().itemCount(); ++i) {
        const auto* ends = dynamic_cast<plots::EndLabels*>(response().item(i));
        if (!ends) continue;
        const auto places = ends->places(QFontMetricsF(response().xAxis->tickLabelFont()));
        ASSERT_EQ(places.size(), 2U);
        EXPECT_FALSE(places[0].rect.intersects(places[1].rect));
        for (const auto& place : places)
            EXPECT_TRUE(QRectF(response().rect()).contains(place.rect)) << place.text.toStdString();
        return;
    }
    FAIL() << "no labels at the ends of the curves";
}

TEST_F(PlotTest, PicturesAreDrawn) {
    const std::string svg = plots::plotSvg(response(), {400, 300});
    EXPECT_NE(svg.find("<svg"), std::string::npos);
    EXPECT_NE(svg.find("polyline"), std::string::npos) << "curves as vectors";
    EXPECT_TRUE(plots::plotPng(response(), {400, 300}).starts_with("\x89PNG"));
}

TEST_F(PlotTest, ABandOfItsTraceAndHookUpStandsBehindItsCurve) {
    spread::TraceBand band{
        "response", "normal", {}, {100, 1000, 10e3}, {{"magnitude_dB", {13, 13, 13}, {14, 14, 14}, {15, 15, 15}}}};
    auto other = band;
    other.hookUp = "another";
    other.curves[0].high = {99, 99, 99};
    response().setBands(std::make_shared<const std::vector<spread::TraceBand>>(std::vector{other, band}), false);
    ASSERT_EQ(response().bands()->bands().size(), 1U);
    EXPECT_EQ(response().bands()->bands()[0].high[0], 15);
    EXPECT_FALSE(response().bands()->old());
    EXPECT_TRUE(response().accessibleDescription().contains("band of 90 %"));
    grid.placeCursor(1000);
    EXPECT_TRUE(response().readout().contains("(units 13.0 dB to 15.0 dB)")) << response().readout().toStdString();
    // Seen: in the picture the places between its edges are not the ground's colour alone.
    const auto lit = [&] {
        response().replot(QCustomPlot::rpImmediateRefresh);
        const QImage picture = response().toPixmap().toImage();
        const double x = response().xAxis->coordToPixel(2000), y = response().yAxis->coordToPixel(13.4);
        return picture.pixelColor(static_cast<int>(x), static_cast<int>(y));
    };
    const QColor with = lit();
    response().setBands(nullptr, false);
    EXPECT_TRUE(response().bands()->bands().empty());
    EXPECT_NE(with, lit());
    // A view of another trace has none.
    response().setBands(std::make_shared<const std::vector<spread::TraceBand>>(std::vector{band}), true);
    EXPECT_TRUE(response().bands()->old());
    response().setView({"impedance", {}, {}});
    EXPECT_TRUE(response().bands()->bands().empty());
}

}  // namespace plot_test
