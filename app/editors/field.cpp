// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/field.h"

#include <QCompleter>
#include <QFocusEvent>
#include <QKeyEvent>
#include <QPainter>
#include <QScopedValueRollback>
#include <QVBoxLayout>
#include <QWheelEvent>

#include "bench/theme.h"
#include "units/fault.h"

namespace editors {

namespace {

/// Whether the keyboard came here because the designer wanted it to: then the wheel may change the value.
bool byChoice(const QEvent* event) {
    switch (static_cast<const QFocusEvent*>(event)->reason()) {
        case Qt::MouseFocusReason:
        case Qt::TabFocusReason:
        case Qt::BacktabFocusReason:
        case Qt::ShortcutFocusReason:
            return true;
        default:
            return false;
    }
}

/// Undo and redo belong to the design, not to the letters in a field.
bool isUndo(const QEvent* event) {
    const auto* key = static_cast<const QKeyEvent*>(event);
    return key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo) ||
           (key->key() == Qt::Key_Y && key->modifiers() == Qt::ControlModifier);
}
bool handsOnUndo(QEvent* event) {
    if (event->type() != QEvent::ShortcutOverride && event->type() != QEvent::KeyPress) return false;
    if (!isUndo(event)) return false;
    event->ignore();
    return true;
}

constexpr int markHeight = 2;

}  // namespace

Field::Field(document::Document& document, Part part, QWidget* parent)
    : QWidget(parent), document_(document), part_(std::move(part)), fault_(new FaultLine(this)) {
    connect(&document_, &document::Document::changed, this, [this] {
        if (!taking_) designChanged();
    });
    connect(&document_, &document::Document::shownChanged, this, [this] {
        if (!taking_) showDesign();
    });
}

void Field::place(QWidget* editor) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, markHeight);
    layout->setSpacing(0);
    layout->addWidget(editor);
    editor->setAccessibleName(part_.act);
    editor->setAccessibleDescription(part_.tip);
    editor->setToolTip(part_.tip);
    setFocusProxy(editor);
}

void Field::explain(const QString& sentence) {
    fault_->say(sentence);
    if (focusProxy()) focusProxy()->setAccessibleDescription(sentence.isEmpty() ? part_.tip : sentence);
    update();
}

void Field::paintEvent(QPaintEvent*) {
    if (faulty())
        QPainter(this).fillRect(0, height() - markHeight, width(), markHeight, bench::colour(bench::Token::Broken));
}

bool Field::take(const QString& typed, bool commit) {
    const QScopedValueRollback own(taking_, true);
    try {
        auto next = part_.with(*document_.design(), typed);
        if (commit)
            document_.replace(std::move(next), part_.act);
        else
            document_.preview(std::move(next));
        explain({});
        return true;
    } catch (const units::BadInput& bad) {
        const auto& fault = bad.faults.front();
        explain(tr("Found %1; allowed is %2.")
                    .arg(QString::fromStdString(fault.found), QString::fromStdString(fault.allowed)));
        document_.endPreview();
        return false;
    }
}

TextField::TextField(document::Document& document, Part part, QWidget* parent)
    : Field(document, std::move(part), parent), line_(new QLineEdit(this)) {
    place(line_);
    line_->installEventFilter(this);
    line_->setFocusPolicy(Qt::StrongFocus);
    connect(line_, &QLineEdit::textEdited, this, [this](const QString& typed) {
        edited_ = true;
        take(typed, false);
    });
    connect(line_, &QLineEdit::editingFinished, this, [this] {
        if (!edited_) return;
        if (!take(line_->text(), true)) return;
        edited_ = false;
        showDesign();
    });
    showDesign();
}

void TextField::showDesign() {
    if (faulty() || edited_) return;
    const QString text = part().text(*this->document().shown());
    if (text != line_->text()) line_->setText(text);
}

void TextField::designChanged() {
    if (!faulty()) edited_ = false;  // what was being typed is undone or overtaken
    showDesign();
}

void TextField::putBack(const QString& typed) {
    line_->setText(typed);
    edited_ = true;
    take(typed, false);
}

void TextField::restore() {
    edited_ = false;
    explain({});
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
        explain({});  // the last value that is allowed stays
        if (edited_ && before == part().text(*from)) take(before, false);
        return;
    }
    line_->setText(part().text(*document().shown()));
    edited_ = true;
}

bool TextField::keyPressed(int key, Qt::KeyboardModifiers modifiers) {
    if (key == Qt::Key_Escape && (edited_ || faulty())) return restore(), true;
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

ChoiceField::ChoiceField(document::Document& document, Part part, QWidget* parent)
    : Field(document, std::move(part), parent), box_(new QComboBox(this)) {
    place(box_);
    box_->setFocusPolicy(Qt::StrongFocus);
    box_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box_->setMinimumContentsLength(12);
    box_->installEventFilter(this);
    box_->addItems(this->part().choices());
    constexpr int longList = 8;
    if (box_->count() > longList) makeSearchable();
    connect(box_, &QComboBox::activated, this, &ChoiceField::commit);
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
    line->setToolTip(part().tip);
    line->installEventFilter(this);
    connect(line, &QLineEdit::editingFinished, this, &ChoiceField::commit);
}

void ChoiceField::commit() {
    const QString typed = box_->currentText();
    if (typed == part().text(*document().design())) return restore();
    if (take(typed, true)) showDesign();
}

void ChoiceField::restore() {
    explain({});
    showDesign();
}

void ChoiceField::putBack(const QString& typed) {
    if (box_->isEditable()) box_->setEditText(typed);
    box_->setCurrentText(typed);
    take(typed, false);
}

void ChoiceField::showDesign() {
    if (faulty()) return;
    const QString text = part().text(*document().shown());
    if (box_->findText(text) < 0) box_->addItem(text);
    box_->setCurrentIndex(box_->findText(text));
    if (box_->isEditable()) box_->lineEdit()->setCursorPosition(0);
}

bool ChoiceField::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::FocusIn) chosen_ = byChoice(event);
    if (handsOnUndo(event)) return true;
    if (event->type() == QEvent::Wheel && !(box_->hasFocus() && chosen_)) {
        event->ignore();
        return true;
    }
    if (event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        if (!faulty() && box_->currentText() == part().text(*document().design())) return false;
        restore();
        return true;
    }
    return Field::eventFilter(watched, event);
}

CheckField::CheckField(document::Document& document, Part part, QWidget* parent)
    : Field(document, std::move(part), parent), box_(new QCheckBox(this->part().label, this)) {
    place(box_);
    connect(box_, &QCheckBox::clicked, this, [this](bool on) { take(on ? "true" : "false", true); });
    showDesign();
}

void CheckField::showDesign() {
    if (faulty()) return;
    box_->setChecked(part().text(*document().shown()) == "true");
}

}  // namespace editors
