// SPDX-License-Identifier: GPL-3.0-or-later
// A table of a form made of widgets.
#pragma once

#include <QAbstractButton>

#include "editors/field.h"
#include "editors/form.h"

namespace editors {

/// Who makes the table's fields and buttons, in the order in which the keyboard goes through them.
struct TableMakers {
    std::function<Field*(const Part&, FaultLine*, QWidget*)> field;
    std::function<QAbstractButton*(const Act&, FaultLine*, QWidget*)> button;
};
[[nodiscard]] QWidget* tableView(const Table& table, const TableMakers& makers, QWidget* parent);

}  // namespace editors
