// SPDX-License-Identifier: GPL-3.0-or-later
#include "cut/order_strip.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QTest>

#include "coil_on_screen.h"

namespace order_strip_test {

using design::ItemIndex;

class OrderStripTest : public testing::Test {
protected:
    void SetUp() override {
        strip.resize(900, strip.heightForWidth(900));
        strip.show();
        strip.activateWindow();
        QTest::qWait(1);
    }
    cut::Chip* chip(int item, int place = 0) const { return strip.chip({place, item}); }
    void dragTo(cut::Chip* from, const QPoint& atStrip, bool release) {
        QTest::mousePress(from, Qt::LeftButton, {}, from->rect().center());
        const QPoint local = from->mapFrom(&strip, atStrip);
        QMouseEvent event(QEvent::MouseMove, local, from->mapToGlobal(QPointF(local)), Qt::NoButton, Qt::LeftButton,
                          {});
        QApplication::sendEvent(from, &event);
        if (release) QTest::mouseRelease(from, Qt::LeftButton, {}, local);
    }

    cut_test::Desk desk;
    cut::OrderStrip strip{desk.document, desk.selection};
};

TEST_F(OrderStripTest, ChipsNameTheOrder) {
    ASSERT_NE(chip(4), nullptr);
    EXPECT_EQ(chip(0)->accessibleName(), "P.a 120");
    EXPECT_EQ(chip(4)->accessibleName(), "S.a 1200");
    EXPECT_EQ(chip(2)->accessibleDescription(), "Faraday shield SH, item 3 of 7 from the core outward");
    for (int i = 0; i + 1 < 7; ++i) EXPECT_LT(chip(i)->geometry().right(), chip(i + 1)->geometry().left());
}

TEST_F(OrderStripTest, LongOrdersWrapInsideTheWidth) {
    strip.resize(260, strip.heightForWidth(260));
    EXPECT_GT(strip.heightForWidth(260), strip.heightForWidth(900));
    for (int i = 0; i < 7; ++i) EXPECT_TRUE(strip.rect().contains(chip(i)->geometry())) << i;
}

TEST_F(OrderStripTest, ClickSelectsAndArrowsWalk) {
    QTest::mouseClick(chip(4), Qt::LeftButton);
    EXPECT_EQ(desk.selection.selected(), document::Selected(ItemIndex{0, 4}));
    EXPECT_TRUE(chip(4)->isSelected());
    QTest::keyClick(chip(4), Qt::Key_Left);
    EXPECT_EQ(*desk.selection.item(), (ItemIndex{0, 3}));
    EXPECT_FALSE(chip(4)->isSelected());
    QTest::keyClick(chip(3), Qt::Key_Home);
    EXPECT_EQ(desk.selection.selected(), document::Selected(document::WholePart{}));
}

TEST_F(OrderStripTest, ControlArrowMovesAndFocusFollows) {
    QTest::mouseClick(chip(4), Qt::LeftButton);
    QTest::keyClick(chip(4), Qt::Key_Right, Qt::ControlModifier);
    EXPECT_EQ(desk.order(), "P.a | SH | | S.a P.b ");
    EXPECT_EQ(*desk.selection.item(), (ItemIndex{0, 5}));
    EXPECT_TRUE(chip(5)->hasFocus());
    QTest::keyClick(chip(5), Qt::Key_Right, Qt::ControlModifier);
    EXPECT_EQ(desk.order(), "P.a | SH | | P.b S.a ");
}

TEST_F(OrderStripTest, DraggingAChipMovesItInOneStep) {
    dragTo(chip(4), chip(0)->geometry().center() - QPoint(10, 0), true);
    EXPECT_EQ(desk.order(), "S.a P.a | SH | | P.b ");
    EXPECT_EQ(desk.document.undoText(), "move S.a inward");
    EXPECT_EQ(chip(0)->accessibleName(), "S.a 1200");
    desk.document.undo();
    EXPECT_FALSE(desk.document.canUndo());
}

TEST_F(OrderStripTest, EscapeEndsADrag) {
    const auto design = desk.document.design();
    auto* held = chip(4);
    dragTo(held, chip(0)->geometry().center() - QPoint(10, 0), false);
    EXPECT_NE(desk.document.shown(), design);
    QTest::keyClick(held, Qt::Key_Escape);
    EXPECT_EQ(desk.document.shown(), design);
    QTest::mouseRelease(held, Qt::LeftButton, {}, {});
    EXPECT_EQ(desk.document.design(), design);
    EXPECT_EQ(chip(4)->accessibleName(), "S.a 1200");
}

TEST_F(OrderStripTest, OneTabStop) {
    desk.selection.select(ItemIndex{0, 4});
    int stops = 0;
    for (const auto* c : strip.findChildren<cut::Chip*>()) stops += (c->focusPolicy() & Qt::TabFocus) != 0;
    EXPECT_EQ(stops, 1);
    EXPECT_TRUE(chip(4)->focusPolicy() & Qt::TabFocus);
}

}  // namespace order_strip_test
