// SPDX-License-Identifier: GPL-3.0-or-later
// How a page of the handbook is set, in the window and on paper alike.
#pragma once

#include <QColor>
#include <QTextDocument>

namespace handbook {

struct PageLook {
    double pictureWidth = 640;  ///< at most, in pixels of 96 an inch
    QColor line;                ///< of tables
    QColor ground;              ///< behind formulas and files
};

/// Dresses what was read from markdown: tables ruled and wide, formulas and files on a ground in one type, pictures no
/// wider than told.
void dress(QTextDocument& page, const PageLook& look);

}  // namespace handbook
