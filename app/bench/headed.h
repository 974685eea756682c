// SPDX-License-Identifier: GPL-3.0-or-later
// A part of a window with its heading above.
#pragma once

#include <QWidget>

namespace bench {

/// `what` under `heading`, which becomes semibold; `what` has all the room that is left.
[[nodiscard]] QWidget* headed(QWidget* heading, QWidget* what);

}  // namespace bench
