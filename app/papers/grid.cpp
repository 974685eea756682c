// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/grid.h"

#include <algorithm>

namespace papers {

namespace {

constexpr double inset = 1;
const QColor& ruleColour() {
    static const QColor colour(0x90, 0x90, 0x90);
    return colour;
}

void rules(Flow& flow, const std::vector<GridColumn>& columns, double height) {
    Paper& paper = flow.paper();
    const QRectF all = flow.column();
    double x = all.left();
    for (const GridColumn& column : columns) {
        paper.box({x, flow.y(), column.width, height}, hairline, {}, ruleColour());
        x += column.width;
    }
}

double heightOf(Flow& flow, const std::vector<GridColumn>& columns, const QStringList& row, const Type& type) {
    double height = 0;
    for (qsizetype k = 0; k < row.size(); ++k)
        height = std::max(
            height, flow.paper().paragraphHeight(columns[static_cast<std::size_t>(k)].width - 2 * inset, row[k], type));
    return height + 0.8;
}

void cells(Flow& flow, const std::vector<GridColumn>& columns, const QStringList& row, Type type, double height) {
    double x = flow.column().left();
    for (std::size_t k = 0; k < columns.size(); ++k) {
        if (static_cast<qsizetype>(k) < row.size() && !row[static_cast<qsizetype>(k)].isEmpty()) {
            type.align = columns[k].align;
            flow.paper().paragraph({x + inset, flow.y() + 0.4, columns[k].width - 2 * inset, 0},
                                   row[static_cast<qsizetype>(k)], type);
        }
        x += columns[k].width;
    }
    rules(flow, columns, height);
    flow.gap(height);
}

}  // namespace

void paintGrid(Flow& flow, std::vector<GridColumn> columns, const std::vector<QStringList>& rows, double size,
               double least) {
    double used = 0;
    for (const GridColumn& column : columns) used += column.width;
    for (GridColumn& column : columns)
        if (column.width <= 0) column.width = flow.column().width() - used;
    QStringList heads;
    for (const GridColumn& column : columns) heads << column.head;
    const Type type{size, false, {}, Qt::AlignLeft}, head{7.5, false, Paper::muted(), Qt::AlignLeft};
    const double headHeight = heightOf(flow, columns, heads, head);
    bool headed = false;
    int page = flow.paper().page();
    for (const QStringList& row : rows) {
        const double height = std::max(least, heightOf(flow, columns, row, type));
        flow.need(headed ? height : headHeight + height);
        if (!headed || page != flow.paper().page()) cells(flow, columns, heads, head, headHeight);
        headed = true;
        page = flow.paper().page();
        cells(flow, columns, row, type, height);
    }
}

}  // namespace papers
