// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/undo_keys.h"

#include <QApplication>
#include <QWidget>

namespace bench {

UndoKeys::UndoKeys(QWidget* window) : QObject(window), window_(window) {
    qApp->installEventFilter(this);
}

bool UndoKeys::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::ShortcutOverride && event->type() != QEvent::KeyPress) return false;
    const auto* widget = qobject_cast<QWidget*>(watched);
    if (!widget || widget->window() != window_) return false;
    const auto* key = static_cast<QKeyEvent*>(event);
    const auto ctrl = key->modifiers() & ~Qt::KeypadModifier;
    const bool undo = key->key() == Qt::Key_Z && ctrl == Qt::ControlModifier;
    const bool redo = (key->key() == Qt::Key_Z && ctrl == (Qt::ControlModifier | Qt::ShiftModifier)) ||
                      (key->key() == Qt::Key_Y && ctrl == Qt::ControlModifier);
    if (!undo && !redo) return false;
    // Not accepted: the shortcut goes on to the window. The key press itself only arrives when there is nothing to
    // undo.
    event->setAccepted(event->type() == QEvent::KeyPress);
    return true;
}

}  // namespace bench
