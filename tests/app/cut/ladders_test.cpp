// SPDX-License-Identifier: GPL-3.0-or-later
// Ladders of ampere-turns and volts beside the cut.
#include "cut/ladders.h"

#include <gtest/gtest.h>

#include <QPainter>

#include "coil_on_screen.h"
#include "cut/cut_painter.h"
#include "cut/cut_view.h"

namespace ladders_test {

class LaddersTest : public testing::Test {
protected:
    LaddersTest() {
        options.state =
            std::make_shared<const analysis::CoilState>(analysis::coilState(*desk.document.design(), *answer));
        options.ampereTurns = options.layerVolts = true;
        borders = cut::bordersOf(*answer->build, *desk.document.design(),
                                 cut::shapesOf(*answer->build, *desk.document.design()), *options.state);
    }
    [[nodiscard]] cut::Ladders ladders(const QSize& size) {
        const QRectF target(QPointF(0, 0), size);
        const auto& design = *desk.document.design();
        QPainter none;
        const cut::Canvas canvas{none, cut::fittedFrame(target, *answer->build, design, options),
                                 cut::drawingArea(target, *answer->build, options), options, design};
        return cut::laddersFor(canvas, borders);
    }
    cut_test::Desk desk;
    analysis::AnswerPtr answer = analysis::answer(*desk.document.design(), *desk.document.shop());
    cut::PaintOptions options;
    std::vector<cut::Border> borders;
};

TEST_F(LaddersTest, EveryBorderHasTheAmpereTurnsOfAllLayersInsideIt) {
    ASSERT_TRUE(options.state->known()) << options.state->why;
    ASSERT_FALSE(borders.empty());
    for (const auto& border : borders) {
        double sum = 0;
        for (std::size_t k = 0; k < answer->build->layers.size(); ++k)
            if (answer->build->layers[k].box.middle() < border.x) sum += options.state->layers[k].ampereTurns;
        EXPECT_NEAR(border.ampereTurns, sum, 1e-12 * std::abs(sum)) << border.inside.toStdString();
        EXPECT_NE(border.inside, border.outside);
    }
}

TEST_F(LaddersTest, RowsStandInOrderApartAndBesideTheIron) {
    const auto all = ladders({640, 640});
    ASSERT_EQ(all.rows.size(), borders.size());
    const QRectF target(0, 0, 640, 640);
    const auto frame = cut::fittedFrame(target, *answer->build, *desk.document.design(), options);
    for (std::size_t k = 0; k < all.rows.size(); ++k) {
        EXPECT_GE(all.rows[k].row.left(), frame.rect(cut::extent(*answer->build)).right());
        EXPECT_LE(all.rows[k].row.right(), target.right());
        EXPECT_TRUE(all.rows[k].amperes.endsWith(" A"));
        EXPECT_TRUE(all.rows[k].volts.endsWith(" V") || all.rows[k].volts.endsWith(" mV"));
        if (k > 0) {
            EXPECT_GE(all.rows[k].row.top(), all.rows[k - 1].row.bottom());
        }
    }
    // The largest value takes at most eight ticks, at least three.
    double most = 0;
    for (const auto& border : borders) most = std::max(most, std::abs(border.ampereTurns));
    EXPECT_LE(most / all.ampereStep, 8 + 1e-9);
    EXPECT_GE(most / all.ampereStep, 3);
}

TEST_F(LaddersTest, WithoutHeightForAllTheLeastTellingIsLeftOut) {
    const auto some = ladders({640, 200});
    ASSERT_LT(some.rows.size(), borders.size());
    ASSERT_FALSE(some.rows.empty());
    for (std::size_t k = 1; k < some.rows.size(); ++k) EXPECT_LT(some.rows[k - 1].border, some.rows[k].border);
}

TEST_F(LaddersTest, SwitchedOffThereIsNone) {
    options.ampereTurns = options.layerVolts = false;
    EXPECT_TRUE(ladders({640, 640}).rows.empty());
    EXPECT_TRUE(cut::ladderLegend(options).empty());
    options.layerVolts = true;
    const auto volts = ladders({640, 640});
    EXPECT_FALSE(volts.rows.empty());
    EXPECT_TRUE(volts.rows.front().amperes.isEmpty());
    EXPECT_EQ(cut::ladderLegend(options).size(), 1);
}

TEST_F(LaddersTest, TheTipSaysWhatTheNumbersAreFor) {
    const QString tip = cut::borderTip(borders.front(), *options.state);
    EXPECT_TRUE(tip.startsWith("Between " + borders.front().inside + " and " + borders.front().outside));
    EXPECT_TRUE(tip.contains("shorted, 1 kHz")) << tip.toStdString();
    EXPECT_TRUE(tip.contains("1 kHz, to earth")) << tip.toStdString();
}

}  // namespace ladders_test
