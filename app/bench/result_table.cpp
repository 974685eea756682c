// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/result_table.h"

#include <QEvent>
#include <QHeaderView>

namespace bench {

ResultTable::ResultTable(const QString& name, const QString& description, QWidget* parent) : QTableView(parent) {
    setAccessibleName(name);
    setAccessibleDescription(description);
    setSelectionBehavior(QAbstractItemView::SelectRows);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setTabKeyNavigation(false);
    setShowGrid(false);
    setWordWrap(false);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
    setMinimumSize(120, 60);
    verticalHeader()->setVisible(false);
    verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 6);
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    horizontalHeader()->setMinimumSectionSize(24);
}

void ResultTable::fitColumns(int stretched) {
    for (int column = 0; column < model()->columnCount(); ++column)
        horizontalHeader()->setSectionResizeMode(
            column, column == stretched ? QHeaderView::Stretch : QHeaderView::ResizeToContents);
}

void ResultTable::changeEvent(QEvent* event) {
    QTableView::changeEvent(event);
    if (event->type() == QEvent::FontChange) verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 6);
}

}  // namespace bench
