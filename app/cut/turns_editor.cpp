// SPDX-License-Identifier: GPL-3.0-or-later
#include "cut/turns_editor.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QVBoxLayout>
#include <algorithm>

#include "bench/theme.h"

namespace cut {

TurnsEditor::TurnsEditor(CoilEdits& edits, design::ItemIndex section, const QString& sectionName, QWidget* parent)
    : QFrame(parent), edits_(edits), section_(section), field_(new QLineEdit(this)), fault_(new QLabel(this)) {
    setAutoFillBackground(true);
    setFrameShape(QFrame::Box);
    auto* name = new QLabel(tr("%1 turns").arg(sectionName), this);
    name->setBuddy(field_);
    field_->setAccessibleName(tr("turns of %1").arg(sectionName));
    field_->setToolTip(tr("Return makes it a step, Esc leaves the design as it was"));
    field_->setFixedWidth(field_->fontMetrics().horizontalAdvance(QStringLiteral("0000000000")));
    fault_->setWordWrap(true);
    fault_->setObjectName(QStringLiteral("fault"));
    auto* line = new QHBoxLayout;
    line->addWidget(name);
    line->addWidget(field_);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(8, 4, 8, 4);
    all->setSpacing(4);
    all->addLayout(line);
    all->addWidget(fault_);
    fault_->hide();
    field_->installEventFilter(this);
    connect(field_, &QLineEdit::textEdited, this, &TurnsEditor::tryText);
    connect(field_, &QLineEdit::returnPressed, this, &TurnsEditor::commit);
}

void TurnsEditor::open(const QPoint& anchor, const QString& typed) {
    anchor_ = anchor;
    field_->setText(typed);
    place();
    show();
    raise();
    field_->setFocus(Qt::OtherFocusReason);
    field_->end(false);
    tryText();
}

void TurnsEditor::close() {
    if (closing_) return;
    closing_ = true;
    hide();
    if (parentWidget() != nullptr) parentWidget()->setFocus(Qt::OtherFocusReason);
    deleteLater();
}

void TurnsEditor::place() {
    adjustSize();
    if (parentWidget() == nullptr) return;
    const QRect room = parentWidget()->rect().adjusted(4, 4, -4, -4);
    const int x = std::clamp(anchor_.x() - width() / 2, room.left(), std::max(room.left(), room.right() - width()));
    const int y = std::clamp(anchor_.y() - height() / 2, room.top(), std::max(room.top(), room.bottom() - height()));
    move(x, y);
}

void TurnsEditor::tryText() {
    if (field_->text().trimmed().isEmpty()) {
        edits_.cancel();
        explain({});
        return;
    }
    explain(edits_.tryTurns(section_, field_->text()));
}

void TurnsEditor::commit() {
    if (closing_) return;
    const QString fault = edits_.setTurns(section_, field_->text());
    if (fault.isEmpty())
        close();
    else
        explain(fault);
}

void TurnsEditor::explain(const QString& fault) {
    auto palette = fault_->palette();
    palette.setColor(QPalette::WindowText, bench::colour(bench::Token::Broken));
    fault_->setPalette(palette);
    fault_->setText(fault);
    fault_->setVisible(!fault.isEmpty());
    field_->setAccessibleDescription(fault);
    place();
}

bool TurnsEditor::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        edits_.cancel();
        close();
        return true;
    }
    // Leaving the field applies a good text; a faulty one stays with its reason.
    if (event->type() == QEvent::FocusOut && static_cast<QFocusEvent*>(event)->reason() != Qt::PopupFocusReason &&
        !field_->text().trimmed().isEmpty())
        commit();
    return QFrame::eventFilter(watched, event);
}

}  // namespace cut
