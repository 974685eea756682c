// SPDX-License-Identifier: GPL-3.0-or-later
// Every key of the window in one list.
#pragma once

#include <QDialog>
#include <QString>
#include <vector>

#include "bench/actions.h"

namespace bench {

/// One line: where a key works, the key, what it does.
struct KeyLine {
    QString where;
    QString key;
    QString does;
};
/// Keys of the acts as they are set now, then those of cut, order, plots and fields.
[[nodiscard]] std::vector<KeyLine> keyLines(const Actions& actions);

/// The list as a window that lets one work on beneath it; Esc closes it.
class KeyList : public QDialog {
    Q_OBJECT
public:
    KeyList(const Actions& actions, QWidget* parent);
};

}  // namespace bench
