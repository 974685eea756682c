// SPDX-License-Identifier: GPL-3.0-or-later
#include "cut/cut_view.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QSignalSpy>
#include <QTest>
#include <QWheelEvent>

#include "coil_on_screen.h"
#include "design/edit.h"

namespace cut_view_test {

using design::ItemIndex;
using document::WholePart;

class CutViewTest : public testing::Test {
protected:
    void SetUp() override { start(); }

    void start() {
        view.resize(480, 640);
        // What the bench does: every design shown is answered.
        QObject::connect(&desk.document, &document::Document::shownChanged, &view,
                         [this] { view.showAnswer(desk.answer()); });
        view.showAnswer(desk.answer());
        view.show();
        view.activateWindow();
        view.setFocus();
        QTest::qWait(1);
    }
    QPoint middle(int item, int place = 0) const { return view.itemRect({place, item}).center().toPoint(); }
    void drag(const QPoint& from, const QPoint& to, bool release = true) {
        QTest::mousePress(&view, Qt::LeftButton, {}, from);
        QTest::mouseMove(&view, from + QPoint(QApplication::startDragDistance() + 2, 0));
        move(to);
        if (release) QTest::mouseRelease(&view, Qt::LeftButton, {}, to);
    }
    void move(const QPoint& to) {
        QMouseEvent event(QEvent::MouseMove, to, view.mapToGlobal(QPointF(to)), Qt::NoButton, Qt::LeftButton, {});
        QApplication::sendEvent(&view, &event);
    }
    QLineEdit* field() const { return view.findChild<QLineEdit*>(); }
    int steps() {
        int count = 0;
        for (; desk.document.canUndo(); ++count) desk.document.undo();
        return count;
    }
    double turnsShown(int item) const {
        return desk.document.shown()->coil[0].order[static_cast<std::size_t>(item)].section()->turns;
    }

    cut_test::Desk desk;
    cut::CutView view{desk.document, desk.selection};
};

TEST_F(CutViewTest, ClickSelectsWhatIsUnderIt) {
    for (int i = 0; i < 7; ++i) {
        QTest::mouseClick(&view, Qt::LeftButton, {}, middle(i));
        ASSERT_NE(desk.selection.item(), nullptr) << i;
        EXPECT_EQ(*desk.selection.item(), (ItemIndex{0, i}));
    }
    const auto frame = view.frame();
    QTest::mouseClick(&view, Qt::LeftButton, {}, frame.point(-0.0004, 0.009).toPoint());
    EXPECT_EQ(desk.selection.selected(), document::Selected(WholePart{WholePart::Which::Core}));
    QTest::mouseClick(&view, Qt::LeftButton, {}, frame.point(0.0005, 0.009).toPoint());
    EXPECT_EQ(desk.selection.selected(), document::Selected(WholePart{WholePart::Which::Bobbin}));
    QTest::mouseClick(&view, Qt::LeftButton, {}, frame.point(0.0058, 0.009).toPoint());
    EXPECT_EQ(desk.selection.selected(), document::Selected());
    EXPECT_FALSE(desk.document.canUndo());
}

TEST_F(CutViewTest, DragMovesASectionInOneStep) {
    const auto before = desk.order();
    drag(middle(4), view.itemRect({0, 0}).topLeft().toPoint() + QPoint(1, 200));
    EXPECT_EQ(desk.order(), "S.a P.a | SH | | P.b ");
    EXPECT_EQ(desk.document.undoText(), "move S.a inward");
    EXPECT_EQ(desk.selection.selected(), document::Selected(ItemIndex{0, 0}));
    EXPECT_EQ(steps(), 1);
    EXPECT_EQ(desk.order(), before);
}

TEST_F(CutViewTest, DesignIsTriedWhileDraggingAndTheDrawingHoldsStill) {
    const auto rect = view.itemRect({0, 4});
    drag(middle(4), middle(0) - QPoint(6, 0), false);
    EXPECT_TRUE(view.dragging());
    EXPECT_NE(desk.document.shown(), desk.document.design());
    EXPECT_EQ(desk.document.shown()->coil[0].order[0].section()->label(), "S.a");
    EXPECT_EQ(view.itemRect({0, 4}), rect);
    QTest::mouseRelease(&view, Qt::LeftButton, {}, middle(0));
    EXPECT_FALSE(view.dragging());
    EXPECT_NE(view.itemRect({0, 4}), rect);
}

TEST_F(CutViewTest, EscapeEndsADragWithoutATrace) {
    const auto design = desk.document.design();
    const auto rect = view.itemRect({0, 4});
    drag(middle(4), middle(0), false);
    QTest::keyClick(&view, Qt::Key_Escape);
    EXPECT_FALSE(view.dragging());
    EXPECT_EQ(desk.document.shown(), design);
    QTest::mouseRelease(&view, Qt::LeftButton, {}, middle(0));
    EXPECT_EQ(desk.document.design(), design);
    EXPECT_FALSE(desk.document.canUndo());
    EXPECT_EQ(view.itemRect({0, 4}), rect);
}

TEST_F(CutViewTest, DropWhereItWasMakesNoStep) {
    drag(middle(4), middle(4) + QPoint(0, 60));
    EXPECT_FALSE(desk.document.canUndo());
    EXPECT_EQ(desk.document.shown(), desk.document.design());
}

TEST_F(CutViewTest, ArrowsWalkAndControlArrowsMove) {
    desk.selection.select(ItemIndex{0, 4});
    QTest::keyClick(&view, Qt::Key_Left);
    EXPECT_EQ(*desk.selection.item(), (ItemIndex{0, 3}));
    QTest::keyClick(&view, Qt::Key_Right);
    QTest::keyClick(&view, Qt::Key_Right, Qt::ControlModifier);
    EXPECT_EQ(desk.order(), "P.a | SH | | S.a P.b ");
    EXPECT_EQ(desk.document.undoText(), "move S.a outward");
    EXPECT_EQ(*desk.selection.item(), (ItemIndex{0, 5}));
    QTest::keyClick(&view, Qt::Key_Left, Qt::ControlModifier);
    EXPECT_EQ(*desk.selection.item(), (ItemIndex{0, 4}));
    EXPECT_EQ(steps(), 2);
}

TEST_F(CutViewTest, DeleteRemovesOrSaysWhyNot) {
    QSignalSpy messages(&view, &cut::CutView::message);
    desk.selection.select(ItemIndex{0, 2});
    QTest::keyClick(&view, Qt::Key_Delete);
    EXPECT_EQ(desk.order(), "P.a | | S.a | P.b ");
    EXPECT_EQ(desk.document.undoText(), "remove shield SH");
    EXPECT_EQ(messages.count(), 0);
    desk.selection.select(ItemIndex{0, 3});
    QTest::keyClick(&view, Qt::Key_Delete);  // the only section of S
    EXPECT_EQ(desk.order(), "P.a | | S.a | P.b ");
    ASSERT_EQ(messages.count(), 1);
    EXPECT_TRUE(messages[0][0].toString().contains("allowed is")) << messages[0][0].toString().toStdString();
}

TEST_F(CutViewTest, DigitsChangeTurnsAndReturnMakesOneStep) {
    desk.selection.select(ItemIndex{0, 4});
    QTest::keyClick(&view, Qt::Key_9);
    ASSERT_NE(field(), nullptr);
    QTest::keyClicks(field(), "00");
    EXPECT_EQ(turnsShown(4), 900);
    EXPECT_EQ(desk.item(4).section()->turns.value, 1200);
    QTest::keyClick(field(), Qt::Key_Return);
    EXPECT_EQ(desk.item(4).section()->turns.value, 900);
    EXPECT_EQ(desk.document.undoText(), "turns of S.a");
    EXPECT_EQ(steps(), 1);
}

TEST_F(CutViewTest, EscapeLeavesTheTurnsAsTheyWere) {
    desk.selection.select(ItemIndex{0, 4});
    QTest::keyClick(&view, Qt::Key_9);
    EXPECT_EQ(turnsShown(4), 9);
    QTest::keyClick(field(), Qt::Key_Escape);
    EXPECT_EQ(turnsShown(4), 1200);
    EXPECT_FALSE(desk.document.canUndo());
}

TEST_F(CutViewTest, RubbishStaysInTheFieldWithItsReason) {
    const auto design = desk.document.design();
    desk.selection.select(ItemIndex{0, 4});
    QTest::keyClick(&view, Qt::Key_9);
    QTest::keyClicks(field(), "0 ducks");
    QTest::keyClick(field(), Qt::Key_Return);
    ASSERT_NE(field(), nullptr);
    EXPECT_EQ(field()->text(), "90 ducks");
    const auto* fault = view.findChild<QLabel*>("fault");
    EXPECT_TRUE(fault->isVisible());
    EXPECT_TRUE(fault->text().startsWith("Found ")) << fault->text().toStdString();
    EXPECT_EQ(desk.document.design(), design);
    EXPECT_EQ(desk.document.shown(), design);
}

TEST_F(CutViewTest, MenuInsertsSplitsAndJoins) {
    const auto choose = [&](int item, const QString& text) {
        QContextMenuEvent ask(QContextMenuEvent::Mouse, middle(item), view.mapToGlobal(middle(item)));
        QApplication::sendEvent(&view, &ask);
        auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
        ASSERT_NE(menu, nullptr);
        EXPECT_EQ(*desk.selection.item(), (ItemIndex{0, item}));
        QAction* chosen = nullptr;
        for (auto* action : menu->actions())
            if (action->text().remove('&') == text && action->isEnabled()) chosen = action;
        ASSERT_NE(chosen, nullptr) << text.toStdString();
        chosen->trigger();
        menu->close();
    };
    choose(4, "Split section");
    EXPECT_EQ(desk.order(), "P.a | SH | S.a S.b | P.b ");
    EXPECT_EQ(desk.item(4).section()->turns + desk.item(5).section()->turns, 1200);
    choose(4, "Join with next");
    EXPECT_EQ(desk.order(), "P.a | SH | S.a | P.b ");
    choose(5, "Insert shield here");
    EXPECT_EQ(desk.document.undoText(), "insert shield SH1");
    EXPECT_EQ(desk.item(desk.selection.item()->item).shield()->name, "SH1");
    choose(0, "Insert insulation here");
    EXPECT_EQ(desk.document.undoText(), "insert insulation 0.1 mm");
    choose(5, "Swap hot end");
    EXPECT_EQ(desk.document.design()->windings[1].start, "S-");
    choose(5, "Remove");  // the only section of S: refused
    EXPECT_EQ(steps(), 5);
}

TEST_F(CutViewTest, WheelZoomsAboutThePointerAndFShowsAll) {
    const auto whole = view.frame();
    const QPointF at(200, 300);
    QWheelEvent wheel(at, view.mapToGlobal(at), {}, {0, 240}, {}, {}, Qt::NoScrollPhase, false);
    QApplication::sendEvent(&view, &wheel);
    EXPECT_GT(view.frame().scale, 1.4 * whole.scale);
    EXPECT_NEAR(view.frame().x(200), whole.x(200), 1e-9);
    EXPECT_NEAR(view.frame().y(300), whole.y(300), 1e-9);
    QTest::keyClick(&view, Qt::Key_F);
    EXPECT_EQ(view.frame(), whole);
}

TEST_F(CutViewTest, SpaceDragPansAndEditsNothing) {
    const auto whole = view.frame();
    QTest::keyPress(&view, Qt::Key_Space);
    QTest::mousePress(&view, Qt::LeftButton, {}, {200, 300});
    move({230, 280});
    QTest::mouseRelease(&view, Qt::LeftButton, {}, {230, 280});
    QTest::keyRelease(&view, Qt::Key_Space);
    EXPECT_EQ(view.frame().origin - whole.origin, QPointF(30, -20));
    EXPECT_FALSE(desk.document.canUndo());
}

TEST_F(CutViewTest, EnterAsksForTheFormAndTheSelectionIsSaidInWords) {
    QSignalSpy asked(&view, &cut::CutView::formRequested);
    desk.selection.select(ItemIndex{0, 4});
    QTest::keyClick(&view, Qt::Key_Return);
    EXPECT_EQ(asked.count(), 1);
    EXPECT_TRUE(view.accessibleDescription().startsWith(
        "Selected: section S.a, 1200 turns, item 5 of 7 from the core outward."))
        << view.accessibleDescription().toStdString();
}

TEST_F(CutViewTest, OvershootIsDrawnInTheWarningColour) {
    const auto broken = bench::colour(bench::Token::Broken).rgb();
    const auto count = [&] {
        const QImage image = view.grab().toImage();
        int pixels = 0;
        for (int y = 0; y < image.height(); ++y)
            for (int x = 0; x < image.width(); ++x) pixels += image.pixel(x, y) == broken;
        return pixels;
    };
    EXPECT_EQ(count(), 0);
    desk.document.replace(
        design::changed(*desk.document.design(), [](design::Design& d) { d.coil[0].order[4].section()->turns = 9000; }),
        "turns");
    EXPECT_GT(count(), 200);
}

}  // namespace cut_view_test
