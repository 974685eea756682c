// SPDX-License-Identifier: GPL-3.0-or-later
// A table with ruled cells, some of them left open to write in.
#pragma once

#include <vector>

#include "papers/flow.h"

namespace papers {

struct GridColumn {
    QString head;
    double width = 0;  ///< mm; 0: what is left
    Qt::Alignment align = Qt::AlignLeft;
};

/// Paints rows down the pages, the head again on each; a row is as high as its longest cell, at least `least` mm.
void paintGrid(Flow& flow, std::vector<GridColumn> columns, const std::vector<QStringList>& rows, double size,
               double least);

}  // namespace papers
