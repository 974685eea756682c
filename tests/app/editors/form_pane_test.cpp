// SPDX-License-Identifier: GPL-3.0-or-later
// Every form of a demo design through real events.
#include "forms_fixture.h"

#include "design/edit.h"

#include <QApplication>

namespace form_pane_test {

using document::WholePart;

TEST_F(Forms, TypingPreviewsAndReturnMakesOneStep) {
    selection_.select(design::ItemIndex{0, 0});
    auto* turns = field("turns");
    ASSERT_NE(turns, nullptr);
    const auto before = document_.design();
    turns->line()->setFocus();
    turns->line()->selectAll();
    QTest::keyClicks(turns->line(), "300");
    EXPECT_EQ(document_.design(), before);
    EXPECT_EQ(document_.shown()->coil[0].order[0].section()->turns.value, 300);
    QTest::keyClick(turns->line(), Qt::Key_Return);
    EXPECT_EQ(document_.design()->coil[0].order[0].section()->turns.value, 300);
    EXPECT_EQ(document_.undoText(), "turns of section S1.a");
    document_.undo();
    EXPECT_EQ(*document_.design(), *before);
    EXPECT_EQ(turns->line()->text(), "290");
}

TEST_F(Forms, UnitsAndArithmeticAreRead) {
    selection_.select(WholePart{WholePart::Which::Core});
    auto* height = field("height");
    ASSERT_NE(height, nullptr);
    height->line()->setFocus();
    height->line()->selectAll();
    QTest::keyClicks(height->line(), "5/8 in");
    QTest::keyClick(height->line(), Qt::Key_Return);
    EXPECT_NEAR(document_.design()->core.height, 0.015875, 1e-12);
}

TEST_F(Forms, ADesignThatMakesNoSenseIsRefusedInPlace) {
    selection_.select(document::WindingPart{"P"});
    auto* finish = anyField("finish");
    ASSERT_NE(finish, nullptr);
    type(finish, "1");
    EXPECT_TRUE(finish->faulty());
    EXPECT_EQ(finish->fault(),
              "Found \"1\", where the winding also starts; allowed is another terminal than its "
              "start: a winding is not connected to itself.");
    EXPECT_EQ(finish->typed(), "1");
    EXPECT_FALSE(document_.canUndo());
}

/// Turns of the first item, which is a section.
double turnsOf(const design::DesignPtr& d) {
    return d->coil[0].order[0].section()->turns;
}
void turnWheel(QWidget* over) {
    QWheelEvent wheel(QPointF(5, 5), over->mapToGlobal(QPointF(5, 5)), {}, QPoint(0, 120), Qt::NoButton, Qt::NoModifier,
                      Qt::NoScrollPhase, false);
    QApplication::sendEvent(over, &wheel);
}

TEST_F(Forms, ArrowsStepAndTheWheelOnlyStepsAfterAClick) {
    selection_.select(design::ItemIndex{0, 0});
    auto* turns = field("turns");
    ASSERT_NE(turns, nullptr);
    turns->line()->setFocus(Qt::OtherFocusReason);
    turnWheel(turns->line());
    EXPECT_EQ(turnsOf(document_.shown()), 290);
    QTest::keyClick(turns->line(), Qt::Key_Up);
    EXPECT_EQ(turnsOf(document_.shown()), 291);
    QTest::keyClick(turns->line(), Qt::Key_Down, Qt::ShiftModifier);
    EXPECT_EQ(turnsOf(document_.shown()), 281);
    EXPECT_EQ(turnsOf(document_.design()), 290) << "tried, not yet done";
    turns->line()->clearFocus();
    EXPECT_EQ(turnsOf(document_.design()), 281);
    document_.undo();
    EXPECT_EQ(turnsOf(document_.design()), 290) << "all steps are one act";
    turns->line()->setFocus(Qt::MouseFocusReason);
    turnWheel(turns->line());
    EXPECT_EQ(turnsOf(document_.shown()), 291);
    QTest::keyClick(turns->line(), Qt::Key_Escape);
    EXPECT_EQ(turnsOf(document_.shown()), 290);
    EXPECT_FALSE(document_.canUndo());
}

TEST_F(Forms, UndoWhileTypingGivesTheFieldBackToTheDesign) {
    selection_.select(design::ItemIndex{0, 0});
    auto* turns = field("turns");
    ASSERT_NE(turns, nullptr);
    turns->line()->setFocus();
    turns->line()->selectAll();
    QTest::keyClicks(turns->line(), "300");
    QKeyEvent undo(QEvent::ShortcutOverride, Qt::Key_Z, Qt::ControlModifier);
    undo.ignore();
    QApplication::sendEvent(turns->line(), &undo);
    EXPECT_FALSE(undo.isAccepted()) << "the window's undo gets the key";
    document_.undo();
    EXPECT_EQ(turns->line()->text(), "290");
    turns->line()->clearFocus();
    EXPECT_EQ(turnsOf(document_.design()), 290) << "leaving the field does not bring it back";
    EXPECT_FALSE(document_.canUndo());
}

TEST_F(Forms, AWrongFieldIsNotOverwrittenAndNothingJumps) {
    selection_.select(design::ItemIndex{0, 0});
    auto* turns = field("turns");
    ASSERT_NE(turns, nullptr);
    const int high = turns->parentWidget()->sizeHint().height();
    turns->line()->setFocus();
    turns->line()->selectAll();
    QTest::keyClicks(turns->line(), "many");
    QTest::keyClick(turns->line(), Qt::Key_Return);
    ASSERT_TRUE(turns->faulty());
    EXPECT_EQ(turns->parentWidget()->sizeHint().height(), high);
    document_.replace(design::changed(*document_.design(), [](design::Design& d) { d.core.gap = 2e-5; }), "gap");
    EXPECT_EQ(turns->line()->text(), "many");
    EXPECT_TRUE(turns->faulty());
}

TEST_F(Forms, ALongListIsSearchedByTyping) {
    selection_.select(document::WindingPart{"P"});
    const QString before = QString::fromStdString(document_.design()->windings[0].wire.key);
    auto* wire = qobject_cast<editors::ChoiceField*>(anyField("wire"));
    ASSERT_NE(wire, nullptr);
    ASSERT_TRUE(wire->box()->isEditable());
    QLineEdit* line = wire->box()->lineEdit();
    line->setFocus();
    line->selectAll();
    QTest::keyClicks(line, "barbed");
    QTest::keyClick(line, Qt::Key_Return);
    EXPECT_TRUE(wire->faulty());
    EXPECT_EQ(line->text(), "barbed");
    EXPECT_EQ(QString::fromStdString(document_.design()->windings[0].wire.key), before);
    QTest::keyClick(line, Qt::Key_Escape);
    EXPECT_EQ(line->text(), before);
    EXPECT_FALSE(wire->faulty());
    line->selectAll();
    QTest::keyClicks(line, "AWG 33 heavy");
    QTest::keyClick(line, Qt::Key_Return);
    EXPECT_EQ(document_.design()->windings[0].wire.key, "AWG 33 heavy");
    document_.undo();
    EXPECT_FALSE(document_.canUndo()) << "one step";
}

TEST_F(Forms, ListsGrowAndShrinkByOneStepEach) {
    selection_.select(WholePart{WholePart::Which::Terminals});
    const auto count = document_.design()->terminals.size();
    QTest::mouseClick(button("Add a terminal"), Qt::LeftButton);
    EXPECT_EQ(document_.design()->terminals.size(), count + 1);
    document_.undo();
    EXPECT_EQ(document_.design()->terminals.size(), count);
}

TEST_F(Forms, FormsFollowEveryDemo) {
    for (const char* name : {"microphone-input", "ribbon-step-up", "direct-box", "line-unit"}) {
        document_.open(demo(name), {});
        QTest::qWait(1);
        for (int part = 0; part < pane_.parts().count(); ++part) {
            choose(part);
            EXPECT_FALSE(pane_.fields().empty()) << name << " " << part;
        }
    }
}

TEST_F(Forms, APaneMayGoWhileAFieldHasTheKeyboard) {
    const auto before = document_.design();
    for (const char* typed : {"300", "3 apples"}) {
        auto pane = std::make_unique<editors::FormPane>(document_, selection_);
        selection_.select(design::ItemIndex{0, 0});
        pane->resize(460, 500);
        pane->show();
        pane->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(pane.get()));
        int fields = 0;
        for (auto* f : pane->fields()) {
            if (!QString::fromStdString(f->part().path).endsWith("turns")) continue;
            f->focusProxy()->setFocus();
            auto* line = qobject_cast<QLineEdit*>(f->focusProxy());
            ASSERT_NE(line, nullptr);
            line->selectAll();
            QTest::keyClicks(line, typed);
            ASSERT_TRUE(line->hasFocus());
            ++fields;
        }
        ASSERT_EQ(fields, 1);
        pane.reset();
        EXPECT_EQ(document_.design(), before) << typed;
        document_.endPreview();
    }
    EXPECT_FALSE(document_.canUndo());
}

}  // namespace form_pane_test
