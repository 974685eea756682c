// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/form_builder.h"

#include <QLabel>

namespace editors {

void FormBuilder::heading(const QString& text) {
    auto* label = new QLabel(text, host_);
    QFont bold = label->font();
    bold.setWeight(QFont::DemiBold);
    label->setFont(bold);
    rows_->addRow(label);
}

void FormBuilder::put(Field* field, bool own) {
    made_.push_back(field);
    if (own) {
        rows_->addRow(QString(), field);
    } else {
        auto* label = new QLabel(field->part().label, host_);
        label->setToolTip(field->part().tip);
        label->setBuddy(field->focusProxy());
        rows_->addRow(label, field);
    }
    rows_->addRow(field->faultLine());
}

void FormBuilder::button(const QString& text, const QString& act, std::function<void(design::Design&)> change) {
    auto* made = new QPushButton(text, host_);
    made->setSizePolicy(QSizePolicy::Maximum, QSizePolicy::Fixed);
    made->setAccessibleName(text);
    QObject::connect(made, &QPushButton::clicked, host_,
                     [this_ = &document_, say = say_, act, change = std::move(change)] {
                         try {
                             this_->replace(design::changed(*this_->design(), change), act);
                             say({});
                         } catch (const units::BadInput& bad) {
                             say(QString::fromUtf8(bad.what()));
                         }
                     });
    rows_->addRow(QString(), made);
}

}  // namespace editors
