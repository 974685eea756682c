// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/table_view.h"

#include <QGridLayout>
#include <QLabel>

#include "editors/text_field.h"

namespace editors {

namespace {

void addCaptions(const Table& table, QGridLayout& grid, QWidget* host) {
    for (int i = 0; i < table.captions.size(); ++i) {
        auto* label = new QLabel(table.captions[i], host);
        QFont small = label->font();
        if (small.pointSizeF() > 2) small.setPointSizeF(small.pointSizeF() - 1);
        label->setFont(small);
        label->setForegroundRole(QPalette::PlaceholderText);
        grid.addWidget(label, i / table.columns, i % table.columns);
    }
}

}  // namespace

QWidget* tableView(const Table& table, const TableMakers& makers, QWidget* parent) {
    auto* host = new QWidget(parent);
    auto* grid = new QGridLayout(host);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(4);
    grid->setVerticalSpacing(1);
    addCaptions(table, *grid, host);
    for (int c = 0; c < table.columns; ++c)
        grid->setColumnStretch(c, c == 0 && table.captions.size() > table.columns ? 5 : 4);
    int line = grid->rowCount();
    for (const auto& row : table.rows) {
        auto* fault = new FaultLine(host);
        int column = 0;
        for (const auto& cell : row.cells) {
            if (column == table.columns) {
                column = 0;
                ++line;
            }
            auto* field = makers.field(cell, fault, host);
            if (auto* text = qobject_cast<TextField*>(field); text != nullptr && cell.kind == Part::Kind::Number)
                text->line()->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
            grid->addWidget(field, line, column++);
        }
        if (row.remove) grid->addWidget(makers.button(*row.remove, fault, host), line, table.columns);
        ++line;
        grid->addWidget(fault, line++, 0, 1, table.columns + (row.remove ? 1 : 0));
    }
    return host;
}

}  // namespace editors
