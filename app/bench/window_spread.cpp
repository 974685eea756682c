// SPDX-License-Identifier: GPL-3.0-or-later
// What a production of the open design will do, on the bench.
#include "bench/bench_window.h"
#include "bench/part_words.h"
#include "bench/spread_window.h"
#include "cut/cut_view.h"

namespace bench {

void BenchWindow::showSpread() {
    auto* open = findChild<SpreadWindow*>();
    if (!open) {
        open = new SpreadWindow(*study_, this);
        open->setAttribute(Qt::WA_DeleteOnClose);
        connect(open, &SpreadWindow::partChosen, this, [this](const document::Selected& part) {
            if (!std::holds_alternative<std::monostate>(part) && study_->current()) selection_.select(part);
        });
    }
    open->show();
    open->raise();
    open->activateWindow();
}

void BenchWindow::connectStudy() {
    connect(study_.get(), &SpreadStudy::changed, this, &BenchWindow::takeSpread);
    cut_->setEffects([this](const document::Selected& part) {
        return study_->current() ? effectsOf(*study_->found(), part) : QString();
    });
    lookAtBands();
}

void BenchWindow::takeSpread() {
    const auto found = study_->shared();
    const bool old = !study_->current();
    promises_->showSpread(found, old);
    plots_->showBands(found ? plots::BandsPtr(found, &found->bands) : nullptr, old);
}

void BenchWindow::lookAtBands() {
    study_->lookAt(hookUp_, plots_->tracesInSight());
}

}  // namespace bench
