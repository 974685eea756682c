// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/choice_field.h"

#include <QAbstractItemView>
#include <QCompleter>
#include <QKeyEvent>
#include <QLineEdit>
#include <QSignalBlocker>

namespace editors {

ChoiceField::ChoiceField(FieldHome home, Part part, FaultLine* line, QWidget* parent)
    : Field(home, std::move(part), line, parent), box_(new QComboBox(this)) {
    place(box_);
    box_->setFocusPolicy(Qt::StrongFocus);
    box_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box_->setMinimumContentsLength(6);
    box_->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    box_->installEventFilter(this);
    makeSearchable();
    fill();
    connect(box_, &QComboBox::activated, this, &ChoiceField::finish);
    if (const auto left = leftOver())
        box_->setEditText(*left);
    else
        showDesign();
}

void ChoiceField::makeSearchable() {
    box_->setEditable(true);
    box_->setInsertPolicy(QComboBox::NoInsert);
    auto* found = new QCompleter(box_->model(), box_);
    found->setFilterMode(Qt::MatchContains);
    found->setCaseSensitivity(Qt::CaseInsensitive);
    found->setCompletionMode(QCompleter::PopupCompletion);
    box_->setCompleter(found);
    QLineEdit* line = box_->lineEdit();
    line->setAccessibleName(part().act);
    line->setPlaceholderText(part().hint);
    line->setToolTip(part().tip);
    line->installEventFilter(this);
    connect(line, &QLineEdit::editingFinished, this, &ChoiceField::finish);
}

void ChoiceField::fill() {
    const QStringList all = part().choices(*document().design());
    QStringList now;
    for (int i = 0; i < box_->count(); ++i) now << box_->itemText(i);
    if (all == now) return;
    const QSignalBlocker quiet(box_);
    const QString text = box_->currentText();
    box_->clear();
    box_->addItems(all);
    box_->setEditText(text);
}

/// The one choice that begins as typed, else what was typed.
QString ChoiceField::meant(const QString& typed) const {
    QStringList all;
    for (int i = 0; i < box_->count(); ++i)
        if (box_->itemText(i).startsWith(typed, Qt::CaseInsensitive)) all << box_->itemText(i);
    return all.size() == 1 && !typed.isEmpty() ? all.front() : typed;
}

void ChoiceField::finish() {
    const QString typed = box_->currentText();
    if (settled(typed)) return;
    if (typed == part().text(*document().design())) {
        if (faulty()) restore();
        return;
    }
    const QString choice = meant(typed);
    if (take(choice, true)) return showDesign();
    if (choice != typed) box_->setEditText(choice);
}

/// An open list would close while the field is half deleted, give the keyboard to whoever waits for it, and so change
/// the design under the feet of the form that comes.
void ChoiceField::retire() {
    Field::retire();
    box_->completer()->popup()->hide();
    box_->hidePopup();
}

void ChoiceField::restore() {
    clearFault();
    showDesign();
}

void ChoiceField::designChanged() {
    fill();
    showDesign();
}

void ChoiceField::showDesign() {
    if (faulty()) return;
    const QString text = part().text(*document().shown());
    if (box_->findText(text) < 0) box_->addItem(text);
    box_->setCurrentIndex(box_->findText(text));
    box_->setEditText(text);
    box_->lineEdit()->setCursorPosition(0);
}

bool ChoiceField::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::FocusIn) chosen_ = byChoice(event);
    if (handsOnUndo(event)) return true;
    if (event->type() == QEvent::Wheel && !(box_->hasFocus() && chosen_ && !faulty())) {
        event->ignore();
        return true;
    }
    const int key = event->type() == QEvent::KeyPress ? static_cast<QKeyEvent*>(event)->key() : 0;
    if (key == Qt::Key_Return || key == Qt::Key_Enter) askAgain();
    if (key == Qt::Key_Escape) {
        if (!faulty() && box_->currentText() == part().text(*document().design())) return false;
        restore();
        return true;
    }
    return Field::eventFilter(watched, event);
}

}  // namespace editors
