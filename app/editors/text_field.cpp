// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/text_field.h"

#include <QKeyEvent>
#include <QWheelEvent>

namespace editors {

TextField::TextField(FieldHome home, Part part, FaultLine* line, QWidget* parent)
    : Field(home, std::move(part), line, parent), line_(new QLineEdit(this)) {
    place(line_);
    line_->installEventFilter(this);
    line_->setFocusPolicy(Qt::StrongFocus);
    line_->setPlaceholderText(this->part().hint);
    connect(line_, &QLineEdit::textEdited, this, [this](const QString& typed) {
        edited_ = true;
        take(typed, false);
    });
    connect(line_, &QLineEdit::editingFinished, this, &TextField::finish);
    if (const auto left = leftOver())
        line_->setText(*left);
    else
        showDesign();
}

void TextField::finish() {
    if (!(edited_ || faulty()) || settled(line_->text())) return;
    if (!take(line_->text(), true)) return;
    edited_ = false;
    showDesign();
}

void TextField::showDesign() {
    if (faulty() || edited_) return;
    const QString text = part().text(*this->document().shown());
    if (text == line_->text()) return;
    line_->setText(text);
    if (!line_->hasFocus()) line_->setCursorPosition(0);  // a long text shows how it begins
}

void TextField::designChanged() {
    if (!faulty()) edited_ = false;  // what was being typed is undone or overtaken
    showDesign();
}

void TextField::restore() {
    edited_ = false;
    clearFault();
    document().endPreview();
    line_->setText(part().text(*document().design()));
    line_->selectAll();
}

void TextField::step(int steps, Qt::KeyboardModifiers modifiers) {
    const double factor = modifiers.testFlag(Qt::ShiftModifier)     ? 10
                          : modifiers.testFlag(Qt::ControlModifier) ? 0.1
                                                                    : 1;
    const auto from = document().shown();
    const QString before = line_->text();
    if (!take(part().stepped(*from, steps, factor), false)) {
        clearFault();  // the last value that is allowed stays
        if (edited_ && before == part().text(*from)) take(before, false);
        return;
    }
    line_->setText(part().text(*document().shown()));
    edited_ = true;
}

bool TextField::keyPressed(int key, Qt::KeyboardModifiers modifiers) {
    if (key == Qt::Key_Escape && (edited_ || faulty())) return restore(), true;
    if ((key == Qt::Key_Return || key == Qt::Key_Enter) && faulty()) askAgain();
    if (!part().stepped || faulty() || (key != Qt::Key_Up && key != Qt::Key_Down)) return false;
    step(key == Qt::Key_Up ? 1 : -1, modifiers);
    return true;
}

bool TextField::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::FocusIn) chosen_ = byChoice(event);
    if (handsOnUndo(event)) return true;
    if (event->type() == QEvent::Wheel) {
        auto* wheel = static_cast<QWheelEvent*>(event);
        if (!line_->hasFocus() || !chosen_ || !part().stepped || faulty()) {
            event->ignore();  // the form scrolls
            return true;
        }
        step(wheel->angleDelta().y() > 0 ? 1 : -1, wheel->modifiers());
        return true;
    }
    if (event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (keyPressed(key->key(), key->modifiers())) return true;
    }
    return Field::eventFilter(watched, event);
}

}  // namespace editors
