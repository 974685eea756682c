// SPDX-License-Identifier: GPL-3.0-or-later
// Undo and redo of the design while a field has the keyboard.
#pragma once

#include <QKeyEvent>
#include <QObject>

namespace bench {

/// A focused line edit keeps Ctrl+Z for its own text, so that the window's undo would never fire. This filter, put on
/// the application, lets undo and redo pass to the window's actions.
class UndoKeys : public QObject {
public:
    explicit UndoKeys(QWidget* window);
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    QWidget* window_;
};

}  // namespace bench
