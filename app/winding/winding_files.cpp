// SPDX-License-Identifier: GPL-3.0-or-later
// Files of the winding window: programs and step tables out, a program in.
#include <QFileDialog>

#include "exchange/step_table.h"
#include "exchange/winding_program.h"
#include "exchange/write_file.h"
#include "winding/winding_window.h"

namespace winding {

bool WindingWindow::writeProgram(const QString& path) {
    return tried([&] {
        const auto [machine, plan] = planned();
        exchange::writeFile(path.toStdString(), exchange::windingProgram(plan, machine));
        say(tr("%1 is written.").arg(path));
    });
}

bool WindingWindow::writeTable(const QString& path) {
    return tried([&] {
        const auto [machine, plan] = planned();
        exchange::writeFile(path.toStdString(), exchange::stepTable(plan, machine));
        say(tr("%1 is written.").arg(path));
    });
}

void WindingWindow::chooseProgramFile() {
    const QString path = QFileDialog::getSaveFileName(
        this, tr("Write winding program"), QString::fromStdString(document_.design()->name) + QStringLiteral(".cnc"));
    if (!path.isEmpty()) static_cast<void>(writeProgram(path));
}

void WindingWindow::chooseTableFile() {
    const QString path = QFileDialog::getSaveFileName(
        this, tr("Write step table"), QString::fromStdString(document_.design()->name) + QStringLiteral(".csv"),
        QStringLiteral("CSV (*.csv)"));
    if (!path.isEmpty()) static_cast<void>(writeTable(path));
}

void WindingWindow::chooseOpen() {
    const QString path = QFileDialog::getOpenFileName(this, tr("Open a winding program"), {});
    if (!path.isEmpty()) openProgram(path);
}

}  // namespace winding
