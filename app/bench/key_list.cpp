// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/key_list.h"

#include <QCoreApplication>
#include <QHeaderView>
#include <QTableWidget>
#include <QVBoxLayout>
#include <array>

namespace bench {

namespace {

struct Line {
    const char* where;
    const char* key;
    const char* does;
};
constexpr std::array<Line, 36> others{{
    {QT_TRANSLATE_NOOP("bench", "cut"), "← →", QT_TRANSLATE_NOOP("bench", "walk inward and outward")},
    {QT_TRANSLATE_NOOP("bench", "cut"), "↑ ↓", QT_TRANSLATE_NOOP("bench", "to the chamber above or below")},
    {QT_TRANSLATE_NOOP("bench", "cut"), "Ctrl+← →", QT_TRANSLATE_NOOP("bench", "move the item through the order")},
    {QT_TRANSLATE_NOOP("bench", "cut"), "Ctrl+↑ ↓", QT_TRANSLATE_NOOP("bench", "move the item to another chamber")},
    {QT_TRANSLATE_NOOP("bench", "cut"), "0 … 9", QT_TRANSLATE_NOOP("bench", "type the section's turns")},
    {QT_TRANSLATE_NOOP("bench", "cut"), "Enter", QT_TRANSLATE_NOOP("bench", "to the form of what is selected")},
    {QT_TRANSLATE_NOOP("bench", "cut"), "Del", QT_TRANSLATE_NOOP("bench", "take the item out of the coil")},
    {QT_TRANSLATE_NOOP("bench", "cut"), "+ −", QT_TRANSLATE_NOOP("bench", "zoom; the wheel does too")},
    {QT_TRANSLATE_NOOP("bench", "cut"), "F", QT_TRANSLATE_NOOP("bench", "show the whole drawing")},
    {QT_TRANSLATE_NOOP("bench", "cut"), "Space",
     QT_TRANSLATE_NOOP("bench", "held: the mouse moves the drawing; the middle button does too")},
    {QT_TRANSLATE_NOOP("bench", "cut"), "Esc", QT_TRANSLATE_NOOP("bench", "give up what is being dragged")},
    {QT_TRANSLATE_NOOP("bench", "cut"), "Menu", QT_TRANSLATE_NOOP("bench", "insert, split, join, swap, remove")},
    {QT_TRANSLATE_NOOP("bench", "order"), "← →", QT_TRANSLATE_NOOP("bench", "walk inward and outward")},
    {QT_TRANSLATE_NOOP("bench", "order"), "Ctrl+← →", QT_TRANSLATE_NOOP("bench", "move the item through the order")},
    {QT_TRANSLATE_NOOP("bench", "order"), "Enter", QT_TRANSLATE_NOOP("bench", "to the form of what is selected")},
    {QT_TRANSLATE_NOOP("bench", "order"), "Del", QT_TRANSLATE_NOOP("bench", "take the item out of the coil")},
    {QT_TRANSLATE_NOOP("bench", "plot"), "← →",
     QT_TRANSLATE_NOOP("bench", "move the cursor, with Shift ten times as far")},
    {QT_TRANSLATE_NOOP("bench", "plot"), "Home End", QT_TRANSLATE_NOOP("bench", "cursor to an end of the band")},
    {QT_TRANSLATE_NOOP("bench", "plot"), "M",
     QT_TRANSLATE_NOOP("bench", "mark the cursor's place: values are told from there; again: no mark")},
    {QT_TRANSLATE_NOOP("bench", "plot"), "Esc", QT_TRANSLATE_NOOP("bench", "no cursor, then no mark")},
    {QT_TRANSLATE_NOOP("bench", "plot"), "Enter", QT_TRANSLATE_NOOP("bench", "this plot alone, or all again")},
    {QT_TRANSLATE_NOOP("bench", "plot"), "Backspace", QT_TRANSLATE_NOOP("bench", "the axes as before the last zoom")},
    {QT_TRANSLATE_NOOP("bench", "plot"), "0", QT_TRANSLATE_NOOP("bench", "fit all axes; a double click does too")},
    {QT_TRANSLATE_NOOP("bench", "field"), "Enter", QT_TRANSLATE_NOOP("bench", "make it a step of the design")},
    {QT_TRANSLATE_NOOP("bench", "field"), "Esc", QT_TRANSLATE_NOOP("bench", "back to what the design has")},
    {QT_TRANSLATE_NOOP("bench", "field"), "↑ ↓",
     QT_TRANSLATE_NOOP("bench", "the next sensible value, with Shift ten steps, with Ctrl a tenth")},
    {QT_TRANSLATE_NOOP("bench", "promises"), "↑ ↓", QT_TRANSLATE_NOOP("bench", "from promise to promise")},
    {QT_TRANSLATE_NOOP("bench", "promises"), "Enter", QT_TRANSLATE_NOOP("bench", "what governs it")},
    {QT_TRANSLATE_NOOP("bench", "histogram"), "← →",
     QT_TRANSLATE_NOOP("bench", "from bar to bar, Home and End to the first and last")},
    {QT_TRANSLATE_NOOP("bench", "spread bars"), "Enter", QT_TRANSLATE_NOOP("bench", "the bar's part on the bench")},
    {QT_TRANSLATE_NOOP("bench", "test plan"), "Enter", QT_TRANSLATE_NOOP("bench", "on to the next row that asks")},
    {QT_TRANSLATE_NOOP("bench", "test plan"), "Del", QT_TRANSLATE_NOOP("bench", "take the reading away")},
    {QT_TRANSLATE_NOOP("bench", "test plan"), "Ctrl+Enter",
     QT_TRANSLATE_NOOP("bench", "keep the unit's record, and on to the next unit")},
    {QT_TRANSLATE_NOOP("bench", "control chart"), "← →",
     QT_TRANSLATE_NOOP("bench", "from reading to reading, Home and End to the first and last")},
    {QT_TRANSLATE_NOOP("bench", "everywhere"), "Tab", QT_TRANSLATE_NOOP("bench", "onward, with Shift back")},
    {QT_TRANSLATE_NOOP("bench", "everywhere"), "Alt",
     QT_TRANSLATE_NOOP("bench", "with an underlined letter: that menu")},
}};

QString keyWords(const char* text) {
    return QCoreApplication::translate("bench", text);
}

}  // namespace

std::vector<KeyLine> keyLines(const Actions& actions) {
    std::vector<KeyLine> lines;
    for (const QAction* action : actions.all())
        for (const QKeySequence& key : action->shortcuts())
            lines.push_back({keyWords(QT_TRANSLATE_NOOP("bench", "window")), key.toString(QKeySequence::NativeText),
                             action->statusTip()});
    for (const Line& line : others) lines.push_back({keyWords(line.where), keyWords(line.key), keyWords(line.does)});
    return lines;
}

KeyList::KeyList(const Actions& actions, QWidget* parent) : QDialog(parent) {
    setWindowTitle(tr("Keys"));
    const std::vector<KeyLine> lines = keyLines(actions);
    auto* table = new QTableWidget(static_cast<int>(lines.size()), 3, this);
    table->setAccessibleName(tr("Keys"));
    table->setAccessibleDescription(tr("Where a key works, the key, what it does"));
    table->setHorizontalHeaderLabels({tr("where"), tr("key"), tr("what it does")});
    for (int row = 0; row < table->rowCount(); ++row) {
        const KeyLine& line = lines[static_cast<std::size_t>(row)];
        const std::array<QString, 3> texts{line.where, line.key, line.does};
        for (int column = 0; column < 3; ++column) {
            auto* cell = new QTableWidgetItem(texts[static_cast<std::size_t>(column)]);
            cell->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable);
            table->setItem(row, column, cell);
        }
    }
    table->setSelectionBehavior(QAbstractItemView::SelectRows);
    table->setTabKeyNavigation(false);
    table->setShowGrid(false);
    table->setFrameShape(QFrame::NoFrame);
    table->verticalHeader()->setVisible(false);
    table->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 6);
    table->horizontalHeader()->setHighlightSections(false);
    table->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    table->resizeColumnsToContents();
    const int wide = table->columnWidth(0) + table->columnWidth(1) + table->columnWidth(2);
    table->horizontalHeader()->setStretchLastSection(true);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(12, 12, 12, 12);
    column->addWidget(table);
    resize(wide + 64, 44 * (fontMetrics().height() + 6) / 2);
}

}  // namespace bench
