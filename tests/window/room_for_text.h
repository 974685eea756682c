// SPDX-License-Identifier: GPL-3.0-or-later
// Whether fixed texts have the room that they ask for.
#pragma once

#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QLabel>

namespace room_for_text {

/// Words of a widget whose text is fixed; empty for others.
inline QString fixedText(const QWidget& widget) {
    if (const auto* label = qobject_cast<const QLabel*>(&widget)) return label->wordWrap() ? QString() : label->text();
    if (const auto* button = qobject_cast<const QAbstractButton*>(&widget)) return button->text();
    return {};
}

/// Labels, buttons and boxes that are seen within `window`; at least so many are expected.
inline void expectRoomForEveryText(const QWidget& window, int least) {
    int seen = 0;
    for (const auto* widget : window.findChildren<QWidget*>()) {
        const QString text = fixedText(*widget);
        if (text.isEmpty() || !widget->isVisible()) continue;
        ++seen;
        EXPECT_LE(widget->sizeHint().width(), widget->width()) << text.toStdString();
        EXPECT_LE(widget->sizeHint().height(), widget->height()) << text.toStdString();
    }
    EXPECT_GE(seen, least);
}

}  // namespace room_for_text
