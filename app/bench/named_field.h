// SPDX-License-Identifier: GPL-3.0-or-later
// Fields as windows have them: each with its label in front, named alike for those who do not see it.
#pragma once

#include <QLabel>
#include <QLayout>
#include <QPlainTextEdit>

namespace bench {

/// Puts `label` and `field` into the row. The label's letter after & leads to the field.
template <class Field>
Field* named(QLayout& row, const QString& label, Field* field, const QString& tip) {
    auto* name = new QLabel(label);
    field->setAccessibleName(QString(label).remove(QLatin1Char('&')));
    field->setToolTip(tip);
    name->setBuddy(field);
    row.addWidget(name);
    row.addWidget(field);
    return field;
}

/// Words to be read and copied, not written; Tab goes on. `placeholder` stands where there are none.
[[nodiscard]] inline QPlainTextEdit* readOnlyWords(const QString& name, const QString& placeholder = {}) {
    auto* words = new QPlainTextEdit;
    words->setReadOnly(true);
    words->setTabChangesFocus(true);
    words->setAccessibleName(name);
    words->setPlaceholderText(placeholder);
    return words;
}

}  // namespace bench
