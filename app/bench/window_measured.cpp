// SPDX-License-Identifier: GPL-3.0-or-later
// What was measured of the open design's unit, and files that are dropped on the bench.
#include <QDragEnterEvent>
#include <QMimeData>

#include "bench/bench_window.h"
#include "bench/measured_window.h"

namespace bench {

MeasuredWindow* BenchWindow::showMeasured() {
    if (!answer_) {
        say(tr("The design's figures are not there yet."));
        return nullptr;
    }
    if (!measured_) {
        measured_ = new MeasuredWindow(
            [this] {
                return MeasuredWindow::Shown{document_.shown(), answer_};
            },
            overlays_, this);
        measured_->setAttribute(Qt::WA_DeleteOnClose);
        connect(measured_, &MeasuredWindow::laid, this, &BenchWindow::layOver);
    }
    measured_->show();
    measured_->raise();
    measured_->activateWindow();
    return measured_;
}

void BenchWindow::layOver(const plots::OverlaysPtr& overlays) {
    overlays_ = overlays;
    plots_->showMeasured(overlays_);
}

void BenchWindow::dragEnterEvent(QDragEnterEvent* event) {
    if (!filesOf(*event->mimeData()).isEmpty()) event->acceptProposedAction();
}

/// A design is opened; anything else is taken for something measured.
void BenchWindow::dropEvent(QDropEvent* event) {
    const QStringList files = filesOf(*event->mimeData());
    if (files.isEmpty()) return;
    event->acceptProposedAction();
    const QString& file = files.constFirst();
    if (file.endsWith(QStringLiteral(".coilwright"), Qt::CaseInsensitive)) {
        if (mayLeave()) openFile(file);
    } else if (auto* window = showMeasured()) {
        window->take(file);
    }
}

}  // namespace bench
