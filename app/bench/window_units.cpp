// SPDX-License-Identifier: GPL-3.0-or-later
// Units that were built of the open design.
#include "bench/bench_window.h"
#include "bench/units_window.h"

namespace bench {

void BenchWindow::showUnits() {
    auto* open = findChild<UnitsWindow*>();
    if (!open) {
        open = new UnitsWindow(document_, resources_, memory_.unitRecords, this);
        open->setAttribute(Qt::WA_DeleteOnClose);
        connect(open, &UnitsWindow::fileTaken, this, [this](const QString& path) {
            memory_.unitRecords = path;
            keep(memory_);
        });
        connect(&document_, &document::Document::opened, open, &QWidget::close);
    }
    open->show();
    open->raise();
    open->activateWindow();
}

}  // namespace bench
