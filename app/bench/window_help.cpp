// SPDX-License-Identifier: GPL-3.0-or-later
// Where the window helps: start page, keys, and what governs a promise.
#include "analysis/lever.h"
#include "bench/bench_window.h"
#include "bench/figure_words.h"
#include "bench/key_list.h"
#include "bench/language.h"
#include "bench/start_page.h"
#include "editors/form_pane.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"
#include "handbook/handbook_window.h"
#include "handbook/pages.h"
#include "units/fault.h"
#include "units/text.h"

namespace bench {

void BenchWindow::showStart() {
    std::vector<Offer> offers;
    for (const std::string& path : demos_) {
        QString note, digest;
        if (design::DesignPtr demo = read(QString::fromStdString(path), note, digest))
            offers.push_back({QString::fromStdString(path), std::move(demo)});
    }
    std::vector<Blank> blanks;
    for (const auto& [key, kind] : kindsOfUnit())
        blanks.push_back({QString::fromStdString(key), translated(kind.title), translated(kind.note)});
    showBench();
    auto* page = new StartPage(offers, blanks, memory_.recent, *document_.shop());
    connect(page, &StartPage::blankChosen, this, [this](const QString& key) {
        if (mayLeave()) newOf(key.toStdString());
    });
    connect(page, &StartPage::demoChosen, this, [this](const QString& path) {
        if (mayLeave()) newFrom(path);
    });
    connect(page, &StartPage::fileChosen, this, [this](const QString& path) {
        if (mayLeave()) openFile(path);
    });
    connect(page, &StartPage::openAsked, this, &BenchWindow::chooseFile);
    connect(page, &StartPage::closed, this, &BenchWindow::showBench);
    pages_->addWidget(page);
    pages_->setCurrentWidget(page);
    page->setFocus();
}

void BenchWindow::showBench() {
    while (pages_->count() > 1) {
        QWidget* page = pages_->widget(1);
        pages_->removeWidget(page);
        page->deleteLater();  // it may be what is calling
    }
}

void BenchWindow::showKeys() {
    auto* keys = new KeyList(*actions_, this);
    keys->setAttribute(Qt::WA_DeleteOnClose);
    keys->show();
}

void BenchWindow::showHandbook(const QString& page) {
    const QString folder = handbook::folderIn(resources_);
    if (folder.isEmpty()) return say(tr("There is no handbook beside the program's data."));
    auto* open = findChild<handbook::HandbookWindow*>();
    try {
        if (!open) open = new handbook::HandbookWindow(folder, this);
    } catch (const units::BadInput& bad) {
        return say(translated(bad.what()));
    }
    open->setAttribute(Qt::WA_DeleteOnClose);
    open->showPage(page);
    open->show();
    open->raise();
}

void BenchWindow::point(const analysis::PromiseState& promise) {
    const auto& all = document_.shown()->brief.promises;
    const auto index = static_cast<std::size_t>(promise.index);
    figures_->point(promise.figure, !promise.mask && index < all.size() ? all[index].hookUp : std::string());
    if (promise.mask && promise.frequency > 0) plots_->placeCursor(promise.frequency);
    selection_.select(document::WholePart{document::WholePart::Which::Brief});
    if (!promise.mask)
        govern(promise.figure);
    else if (promise.frequency > 0)
        governMask(promise);
}

void BenchWindow::govern(const std::string& figure) {
    const units::Figure* found = answer_ ? answer_->figure(figure) : nullptr;
    if (found == nullptr) return;
    rank(figureText(figure), translated(found->source), units::kindOfUnit(found->unit),
         [figure, design = document_.shown(), shop = document_.shop(), now = answer_](
             const std::stop_token& stop) -> std::any { return analysis::pulls(*design, *shop, now, figure, stop); });
}

void BenchWindow::governMask(const analysis::PromiseState& promise) {
    const analysis::Trace* trace = answer_ ? answer_->trace(promise.figure) : nullptr;
    if (trace == nullptr) return;
    const analysis::Spot spot{promise.figure, promise.frequency};
    const QString name = tr("%1 at %2")
                             .arg(translated(trace->title),
                                  QString::fromStdString(units::write(units::Kind::Frequency, promise.frequency, 3)));
    rank(name, translated(trace->source), promise.figure == "response" ? units::Kind::Decibel : promise.kind,
         [spot, design = document_.shown(), shop = document_.shop(), now = answer_](
             const std::stop_token& stop) -> std::any { return analysis::pulls(*design, *shop, now, spot, stop); });
}

void BenchWindow::rank(const QString& name, const QString& source, units::Kind kind, solver::Aside::Job job) {
    say(tr("%1: %2. What governs it is being solved.").arg(name, source));
    governing_.start(std::move(job), [this, name, source, kind](const std::any& result) {
        const auto& pulls = std::any_cast<const std::vector<analysis::Pull>&>(result);
        say(tr("%1 is %2. %3").arg(name, translated(analysis::sentence(pulls, kind)), source));
        if (!pulls.empty() &&
            selection_.selected() == document::Selected(document::WholePart{document::WholePart::Which::Brief}))
            selectPart(pulls.front().lever);
    });
}

void BenchWindow::selectPart(const analysis::Lever& lever) {
    if (lever.item)
        selection_.select(*lever.item);
    else if (!lever.winding.empty())
        selection_.select(document::WindingPart{lever.winding});
    else
        selection_.select(document::WholePart{document::WholePart::Which::Core});
}

void BenchWindow::showFaults() {
    const int count = forms_->wrongTexts().count();
    faulty_->setText(tr("A field holds something wrong: curves are of the last good design.", nullptr, count));
    faulty_->setVisible(count > 0);
    showState();
}

}  // namespace bench
