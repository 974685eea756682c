// SPDX-License-Identifier: GPL-3.0-or-later
// Edges taken by the hand, and the cut as a screen reader walks it.
#include "cut/handles.h"

#include <gtest/gtest.h>

#include <QAccessible>
#include <QTest>

#include "coil_on_screen.h"
#include "cut/cut_view.h"

namespace handles_test {

using cut::Handle;

class HandlesTest : public testing::Test {
protected:
    void SetUp() override {
        view.resize(480, 640);
        QObject::connect(&desk.document, &document::Document::shownChanged, &view,
                         [this] { view.showAnswer(desk.answer()); });
        view.showAnswer(desk.answer());
        view.show();
        view.setFocus();
        QTest::qWait(1);
    }
    [[nodiscard]] Handle handle(Handle::Edge edge) const {
        for (const Handle& one : view.handles())
            if (one.edge == edge) return one;
        ADD_FAILURE() << "no such handle";
        return {};
    }
    void move(const QPointF& to) {
        QMouseEvent event(QEvent::MouseMove, to, view.mapToGlobal(to), Qt::NoButton, Qt::LeftButton, {});
        QApplication::sendEvent(&view, &event);
    }
    [[nodiscard]] const design::Section& section(int item) const {
        return *desk.document.shown()->coil[0].order[static_cast<std::size_t>(item)].section();
    }
    cut_test::Desk desk;
    cut::CutView view{desk.document, desk.selection};
};

TEST_F(HandlesTest, OnlyWhatIsSelectedHasThem) {
    EXPECT_TRUE(view.handles().empty());
    desk.selection.select(design::ItemIndex{0, 4});
    EXPECT_EQ(view.handles().size(), 2U);
    desk.selection.select(design::ItemIndex{0, 1});
    ASSERT_EQ(view.handles().size(), 1U);
    EXPECT_EQ(view.handles().front().edge, Handle::Edge::Thickness);
    desk.selection.select(document::WholePart{});
    EXPECT_TRUE(view.handles().empty());
}

TEST_F(HandlesTest, DraggingAnEdgeShowsItsMarginAtOnceAndMakesOneStep) {
    desk.selection.select(design::ItemIndex{0, 4});
    const Handle low = handle(Handle::Edge::Low);
    const QPoint from = low.at.center().toPoint();
    const double scale = view.frame().scale;
    QTest::mousePress(&view, Qt::LeftButton, {}, from);
    move(from - QPointF(0, 20));
    EXPECT_NEAR(section(4).marginLow, 20 / scale, 2.6 / scale);  // steps of two to five pixels
    EXPECT_EQ(desk.document.design()->coil[0].order[4].section()->marginLow.value, 0);
    move(from - QPointF(0, 30));
    QTest::mouseRelease(&view, Qt::LeftButton, {}, from - QPoint(0, 30));
    EXPECT_NEAR(section(4).marginLow, 30 / scale, 2.6 / scale);
    EXPECT_EQ(section(4).marginHigh.value, 0);
    EXPECT_EQ(desk.document.undoText(), "margin at the low end of S.a");
    desk.document.undo();
    EXPECT_FALSE(desk.document.canUndo());
    EXPECT_EQ(section(4).marginLow.value, 0);
}

TEST_F(HandlesTest, TheThicknessOfInsulationGrowsOutwardAndNeverVanishes) {
    desk.selection.select(design::ItemIndex{0, 1});
    const QPoint from = handle(Handle::Edge::Thickness).at.center().toPoint();
    const auto thickness = [this] { return desk.document.shown()->coil[0].order[1].barrier()->ply.thickness.value; };
    QTest::mousePress(&view, Qt::LeftButton, {}, from);
    move(from + QPointF(40, 0));
    EXPECT_NEAR(thickness(), 1e-4 + 40 / view.frame().scale, 6 / view.frame().scale);
    move(from - QPointF(200, 0));
    EXPECT_GT(thickness(), 0);
    QTest::keyClick(&view, Qt::Key_Escape);
    EXPECT_EQ(thickness(), 1e-4);
    QTest::mouseRelease(&view, Qt::LeftButton, {}, from);
    EXPECT_FALSE(desk.document.canUndo());
}

TEST_F(HandlesTest, AMarginEndsAtTheFlange) {
    desk.selection.select(design::ItemIndex{0, 4});
    const QPoint from = handle(Handle::Edge::High).at.center().toPoint();
    QTest::mousePress(&view, Qt::LeftButton, {}, from);
    move(from - QPointF(0, 50));  // outward, where the margin is already nothing
    QTest::mouseRelease(&view, Qt::LeftButton, {}, from - QPoint(0, 50));
    EXPECT_EQ(section(4).marginHigh.value, 0);
    EXPECT_FALSE(desk.document.canUndo());
}

TEST_F(HandlesTest, AScreenReaderWalksTheItems) {
    auto* list = QAccessible::queryAccessibleInterface(&view);
    ASSERT_NE(list, nullptr);
    EXPECT_EQ(list->role(), QAccessible::List);
    ASSERT_EQ(list->childCount(), 7);
    auto* item = list->child(4);
    ASSERT_NE(item, nullptr);
    EXPECT_EQ(list->indexOfChild(item), 4);
    EXPECT_EQ(item->parent(), list);
    EXPECT_EQ(item->text(QAccessible::Name), "section S.a, 1200 turns, item 5 of 7 from the core outward");
    EXPECT_TRUE(item->text(QAccessible::Description).contains("DCR"));
    EXPECT_EQ(item->rect().center(), view.mapToGlobal(view.itemRect({0, 4}).toAlignedRect().center()));
    EXPECT_FALSE(item->state().selected);
    item->actionInterface()->doAction(QAccessibleActionInterface::pressAction());
    EXPECT_EQ(*desk.selection.item(), (design::ItemIndex{0, 4}));
    EXPECT_TRUE(item->state().selected);
    const QPoint middle = item->rect().center();
    EXPECT_EQ(list->childAt(middle.x(), middle.y()), item);
    // An item that is taken out leaves no entry behind.
    list->child(1)->actionInterface()->doAction(QAccessibleActionInterface::pressAction());
    QTest::keyClick(&view, Qt::Key_Delete);
    EXPECT_EQ(list->childCount(), 6);
    EXPECT_EQ(list->child(6), nullptr);
}

}  // namespace handles_test
