// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/field.h"

#include <QCompleter>
#include <QFocusEvent>
#include <QKeyEvent>
#include <QScopedValueRollback>
#include <QVBoxLayout>
#include <QWheelEvent>

#include "bench/theme.h"
#include "units/fault.h"

namespace editors {

Field::Field(document::Document& document, Part part, QWidget* parent)
    : QWidget(parent), document_(document), part_(std::move(part)), fault_(new QLabel(this)) {
    fault_->setWordWrap(true);
    fault_->setVisible(false);
    connect(&document_, &document::Document::shownChanged, this, [this] {
        if (!taking_) showDesign();
    });
}

void Field::place(QWidget* editor) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(1);
    layout->addWidget(editor);
    layout->addWidget(fault_);
    editor->setAccessibleName(part_.label);
    editor->setAccessibleDescription(part_.tip);
    editor->setToolTip(part_.tip);
    setFocusProxy(editor);
}

void Field::explain(const QString& sentence) {
    fault_->setText(sentence);
    fault_->setVisible(!sentence.isEmpty());
    QPalette shown = fault_->palette();
    shown.setColor(QPalette::WindowText, bench::colour(bench::Token::Broken));
    fault_->setPalette(shown);
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
        explain(tr("found %1; allowed is %2")
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

void TextField::restore() {
    edited_ = false;
    explain({});
    document().endPreview();
    line_->setText(part().text(*document().design()));
    line_->selectAll();
}

void TextField::step(int steps, Qt::KeyboardModifiers modifiers) {
    if (!part().stepped) return;
    const double factor = modifiers.testFlag(Qt::ShiftModifier)     ? 10
                          : modifiers.testFlag(Qt::ControlModifier) ? 0.1
                                                                    : 1;
    explain({});
    if (take(part().stepped(*document().design(), steps, factor), true)) {
        edited_ = false;
        showDesign();
    }
}

bool TextField::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::FocusIn) {
        const auto reason = static_cast<QFocusEvent*>(event)->reason();
        chosen_ = reason == Qt::MouseFocusReason || reason == Qt::TabFocusReason || reason == Qt::BacktabFocusReason;
    }
    if (event->type() == QEvent::Wheel) {
        auto* wheel = static_cast<QWheelEvent*>(event);
        if (!line_->hasFocus() || !chosen_ || !part().stepped) return event->ignore(), true;  // the form scrolls
        step(wheel->angleDelta().y() > 0 ? 1 : -1, wheel->modifiers());
        return true;
    }
    if (event->type() == QEvent::KeyPress) {
        auto* key = static_cast<QKeyEvent*>(event);
        if (key->key() == Qt::Key_Escape) return restore(), true;
        if (part().stepped && (key->key() == Qt::Key_Up || key->key() == Qt::Key_Down))
            return step(key->key() == Qt::Key_Up ? 1 : -1, key->modifiers()), true;
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
    connect(box_, &QComboBox::activated, this, [this] {
        if (take(box_->currentText(), true)) showDesign();
    });
    showDesign();
}

void ChoiceField::showDesign() {
    if (faulty()) return;
    const QString text = part().text(*document().shown());
    if (box_->findText(text) < 0) box_->addItem(text);
    box_->setCurrentText(text);
    box_->setCurrentIndex(box_->findText(text));
}

bool ChoiceField::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::Wheel && !box_->hasFocus()) return event->ignore(), true;
    if (event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape && faulty()) {
        explain({});
        showDesign();
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
    explain({});
    box_->setChecked(part().text(*document().shown()) == "true");
}

}  // namespace editors
