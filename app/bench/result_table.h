// SPDX-License-Identifier: GPL-3.0-or-later
// A plain table view for results: one row selected at a time, light rules, sized to its words.
#pragma once

#include <QTableView>

namespace bench {

class ResultTable : public QTableView {
    Q_OBJECT
public:
    ResultTable(const QString& name, const QString& description, QWidget* parent);
    /// Columns as wide as their words; `stretched` takes what is left.
    void fitColumns(int stretched);
    /// Typing at a cell that may be edited begins to edit it, Delete empties it; cells are chosen, not rows.
    void takeTyping();

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void changeEvent(QEvent* event) override;
};

}  // namespace bench
