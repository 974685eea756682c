// SPDX-License-Identifier: GPL-3.0-or-later
// A small field on top of a section, opened by typing digits: its turns.
#pragma once

#include <QFrame>
#include <QLabel>
#include <QLineEdit>

#include "cut/coil_edits.h"

namespace cut {

/// Shows turns while they are typed; Return makes them a step, Esc leaves the design as it was. What is wrong stands
/// beneath; the text stays. Closes itself.
class TurnsEditor : public QFrame {
    Q_OBJECT
public:
    TurnsEditor(CoilEdits& edits, design::ItemIndex section, const QString& sectionName, QWidget* parent);
    /// Opens near `anchor`, inside the parent, with the first typed character.
    void open(const QPoint& anchor, const QString& typed);
    void close();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void tryText();
    void commit();
    void explain(const QString& fault);
    void place();

    CoilEdits& edits_;
    design::ItemIndex section_;
    QPoint anchor_;
    QLineEdit* field_;
    QLabel* fault_;
    bool closing_ = false;
};

}  // namespace cut
