// SPDX-License-Identifier: GPL-3.0-or-later
// Buttons and choices as this window and its row of stepping have them.
#pragma once

#include <QComboBox>
#include <QLabel>
#include <QPushButton>

namespace winding {

/// A button that does one act of its owner; Return elsewhere in the window is not for it.
template <class Owner>
[[nodiscard]] QPushButton* actButton(Owner* owner, const QString& text, const QString& tip, void (Owner::*act)()) {
    auto* made = new QPushButton(text);
    made->setToolTip(tip);
    made->setAutoDefault(false);
    QObject::connect(made, &QPushButton::clicked, owner, act);
    return made;
}

/// A choice that is named by the label beside it.
[[nodiscard]] inline QComboBox* namedChoice(QLabel& label, const QString& tip) {
    auto* made = new QComboBox;
    made->setAccessibleName(label.text().remove(QLatin1Char('&')));
    made->setToolTip(tip);
    made->setFocusPolicy(Qt::StrongFocus);
    label.setBuddy(made);
    return made;
}

}  // namespace winding
