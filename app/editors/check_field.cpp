// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/check_field.h"

#include <QKeyEvent>

namespace editors {

CheckField::CheckField(FieldHome home, Part part, FaultLine* line, QWidget* parent)
    : Field(home, std::move(part), line, parent), box_(new QCheckBox(this->part().label, this)) {
    place(box_);
    box_->installEventFilter(this);
    connect(box_, &QCheckBox::clicked, this, [this](bool on) { take(on ? "true" : "false", true); });
    if (const auto left = leftOver())
        box_->setChecked(*left == "true");
    else
        showDesign();
}

void CheckField::showDesign() {
    if (faulty()) return;
    box_->setChecked(part().text(*document().shown()) == "true");
}

bool CheckField::eventFilter(QObject* watched, QEvent* event) {
    const bool escape =
        event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape && faulty();
    if (escape) {
        clearFault();
        showDesign();
        return true;
    }
    return Field::eventFilter(watched, event);
}

}  // namespace editors
