// SPDX-License-Identifier: GPL-3.0-or-later
// A person at the window who edits at random, with real key events.
#pragma once

#include <QApplication>
#include <QLineEdit>
#include <QPointer>
#include <QTest>
#include <random>

#include "bench/bench_window.h"
#include "cut/cut_view.h"
#include "editors/form_pane.h"

namespace window_test {

class RandomHand {
public:
    RandomHand(bench::BenchWindow& window, unsigned seed) : window_(window), dice_(seed) {}

    /// One act: an edit in the cut, a number typed or stepped in a form, undo or redo.
    void act() {
        switch (dice_() % 10) {
            case 0:
            case 1:
                return key(Qt::Key_Z, Qt::ControlModifier);
            case 2:
                return key(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
            case 3:
            case 4:
                return move();
            case 5:
                return typeTurns();
            case 6:
                select();
                return dice_() % 4 == 0 ? key(Qt::Key_Delete, Qt::NoModifier) : move();
            default:
                return useField();
        }
    }
    /// Lets the window work off what waits. Without a running event loop nothing else deletes the forms that were left.
    static void settle() {
        QCoreApplication::processEvents();
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    }
    void undoAll() {
        for (int presses = 0; window_.document().canUndo() && presses < 100000; ++presses)
            key(Qt::Key_Z, Qt::ControlModifier);
    }

private:
    QWidget& cut() { return *window_.findChild<cut::CutView*>(); }
    void key(Qt::Key which, Qt::KeyboardModifiers with) {
        if (QWidget* list = QApplication::activePopupWidget()) list->close();  // what a choice offers to a typed text
        if (QApplication::activeWindow() != &window_) QApplication::setActiveWindow(&window_);
        cut().setFocus();
        QTest::keyClick(&cut(), which, with);
    }
    void select() {
        const auto& places = window_.document().design()->coil;
        const auto place = dice_() % places.size();
        if (places[place].order.empty()) return;
        window_.selection().select(
            design::ItemIndex{static_cast<int>(place), static_cast<int>(dice_() % places[place].order.size())});
    }
    void move() {
        select();
        key(dice_() % 2 == 0 ? Qt::Key_Left : Qt::Key_Right, Qt::ControlModifier);
    }
    /// Digits on a selected section open its turns.
    void typeTurns() {
        select();
        key(static_cast<Qt::Key>(Qt::Key_1 + dice_() % 9), Qt::NoModifier);
        const QPointer<QLineEdit> line = cut().findChild<QLineEdit*>();
        if (line) QTest::keyClicks(line, QString::number(dice_() % 100));
        if (line) QTest::keyClick(line, dice_() % 4 == 0 ? Qt::Key_Escape : Qt::Key_Return);
    }
    void selectForm() {
        using Which = document::WholePart::Which;
        const auto& windings = window_.document().design()->windings;
        switch (dice_() % 4) {
            case 0:
                return window_.selection().select(
                    document::WholePart{static_cast<Which>(dice_() % (static_cast<unsigned>(Which::Conditions) + 1))});
            case 1:
                return window_.selection().select(document::WindingPart{windings[dice_() % windings.size()].name});
            default:
                return select();
        }
    }
    /// A number typed, right or wrong, or stepped, in some field of the form.
    void useField() {
        selectForm();
        settle();  // the form is made once the selection has settled
        const auto lines = window_.findChild<editors::FormPane*>()->findChildren<QLineEdit*>();
        if (lines.isEmpty()) return;
        const QPointer<QLineEdit> line = lines[static_cast<qsizetype>(dice_() % static_cast<unsigned>(lines.size()))];
        if (!line->isVisible() || !line->isEnabled()) return;
        line->setFocus();
        if (dice_() % 2 == 0) {
            QTest::keyClick(line, dice_() % 2 == 0 ? Qt::Key_Up : Qt::Key_Down);
            if (line) QTest::keyClick(line, Qt::Key_Return);
            return;
        }
        static const std::vector<QString> texts{"12", "0.2 mm", "0.004in", "38 AWG", "4k7", "-10 dBu", "1200/2", "x y"};
        line->selectAll();
        QTest::keyClicks(line, texts[dice_() % texts.size()]);
        if (line) QTest::keyClick(line, dice_() % 4 == 0 ? Qt::Key_Escape : Qt::Key_Return);
    }

    bench::BenchWindow& window_;
    std::mt19937 dice_;
};

}  // namespace window_test
