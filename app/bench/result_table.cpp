// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/result_table.h"

#include <QEvent>
#include <QHeaderView>
#include <QKeyEvent>

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

void ResultTable::takeTyping() {
    setSelectionBehavior(QAbstractItemView::SelectItems);
    setEditTriggers(QAbstractItemView::AnyKeyPressed | QAbstractItemView::EditKeyPressed |
                    QAbstractItemView::DoubleClicked);
}

void ResultTable::keyPressEvent(QKeyEvent* event) {
    const QModelIndex at = currentIndex();
    if (event->key() != Qt::Key_Delete || !at.isValid() || !(at.flags() & Qt::ItemIsEditable))
        return QTableView::keyPressEvent(event);
    model()->setData(at, QString(), Qt::EditRole);
}

void ResultTable::changeEvent(QEvent* event) {
    QTableView::changeEvent(event);
    if (event->type() == QEvent::FontChange) verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 6);
}

}  // namespace bench
