// SPDX-License-Identifier: GPL-3.0-or-later
// Every form of a demo design through real events.
#include "editors/form_pane.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>

#include "design/edit.h"
#include "exchange/design_json.h"
#include "exchange/load_catalog.h"
#include "exchange/read_file.h"

namespace {

using document::WholePart;

std::shared_ptr<const catalog::Catalog> shop() {
    static const auto all =
        std::make_shared<const catalog::Catalog>(exchange::loadCatalog({COILWRIGHT_SOURCE_DIR "/resources"}));
    return all;
}
design::DesignPtr demo(const std::string& name) {
    const std::string path = COILWRIGHT_SOURCE_DIR "/demo-projects/" + name + "/" + name + ".coilwright";
    return exchange::readDesign(exchange::readFile(path), path, *shop()).design;
}

/// Every part that the list of parts offers.
int partCount(editors::FormPane& pane) {
    return pane.parts().count();
}
void choose(editors::FormPane& pane, int part) {
    pane.parts().setCurrentIndex(part);
    emit pane.parts().activated(part);
    QTest::qWait(1);
}

class Forms : public testing::Test {
protected:
    Forms() : document_(shop(), demo("splitter")), pane_(document_, selection_) {
        pane_.resize(460, 500);
        pane_.show();
        QTest::qWait(1);
    }
    editors::TextField* field(const QString& label) {
        for (auto* f : pane_.fields())
            if (f->part().label == label) return qobject_cast<editors::TextField*>(f);
        return nullptr;
    }
    document::Document document_;
    document::Selection selection_;
    editors::FormPane pane_;
};

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

TEST_F(Forms, RubbishInEveryFieldLeavesTheDesignAndTheTextAndSaysWhy) {
    const auto before = document_.design();
    int tried = 0;
    for (int part = 0; part < partCount(pane_); ++part) {
        choose(pane_, part);
        for (auto* f : pane_.fields()) {
            auto* text = qobject_cast<editors::TextField*>(f);
            // Free text takes anything; numbers and lists of names do not.
            if (text == nullptr || !text->part().stepped) continue;
            text->line()->setFocus();
            text->line()->selectAll();
            QTest::keyClicks(text->line(), "12 bananas(");
            QTest::keyClick(text->line(), Qt::Key_Return);
            EXPECT_TRUE(text->faulty()) << text->part().label.toStdString();
            EXPECT_TRUE(text->fault().contains("allowed is")) << text->fault().toStdString();
            EXPECT_EQ(text->line()->text(), "12 bananas(");
            EXPECT_EQ(document_.design(), before);
            EXPECT_EQ(document_.shown(), before);
            ++tried;
            QTest::keyClick(text->line(), Qt::Key_Escape);
            EXPECT_FALSE(text->faulty());
        }
    }
    EXPECT_GT(tried, 60);
    EXPECT_FALSE(document_.canUndo());
}

TEST_F(Forms, ADesignThatMakesNoSenseIsRefusedInPlace) {
    selection_.select(document::WindingPart{"P"});
    auto* finish = field("finish");
    ASSERT_NE(finish, nullptr);
    finish->line()->setFocus();
    finish->line()->selectAll();
    QTest::keyClicks(finish->line(), "1");
    QTest::keyClick(finish->line(), Qt::Key_Return);
    EXPECT_TRUE(finish->faulty());
    EXPECT_EQ(finish->line()->text(), "1");
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
    editors::ChoiceField* wire = nullptr;
    for (auto* f : pane_.fields())
        if (f->part().label == "wire") wire = qobject_cast<editors::ChoiceField*>(f);
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
    const auto buttons = pane_.findChildren<QPushButton*>();
    auto* add = *std::find_if(buttons.begin(), buttons.end(), [](auto* b) { return b->text() == "Add to terminals"; });
    QTest::mouseClick(add, Qt::LeftButton);
    EXPECT_EQ(document_.design()->terminals.size(), count + 1);
    document_.undo();
    EXPECT_EQ(document_.design()->terminals.size(), count);
}

TEST_F(Forms, EveryControlHasANameAndATip) {
    for (int part = 0; part < partCount(pane_); ++part) {
        choose(pane_, part);
        for (auto* f : pane_.fields()) {
            EXPECT_FALSE(f->part().label.isEmpty());
            EXPECT_FALSE(f->part().tip.isEmpty()) << f->part().label.toStdString();
            auto* control = f->focusProxy();
            ASSERT_NE(control, nullptr);
            EXPECT_FALSE(control->accessibleName().isEmpty()) << f->part().label.toStdString();
        }
        for (auto* label : pane_.findChildren<QLabel*>())
            if (label->isVisible() && !label->wordWrap()) {
                EXPECT_LE(label->sizeHint().width(), label->width() + 1) << label->text().toStdString();
            }
    }
}

TEST_F(Forms, FormsFollowEveryDemo) {
    for (const char* name : {"microphone-input", "ribbon-step-up", "direct-box", "line-unit"}) {
        document_.open(demo(name), {});
        QTest::qWait(1);
        for (int part = 0; part < partCount(pane_); ++part) {
            choose(pane_, part);
            EXPECT_FALSE(pane_.fields().empty()) << name << " " << part;
        }
    }
}

}  // namespace
