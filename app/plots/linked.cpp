// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/linked.h"

#include "plots/scale.h"

namespace plots {

namespace {
constexpr std::size_t zoomsKept = 50;
}

void Linked::add(Plot& plot) {
    if (!plots_.empty()) plot.showBand(plots_.front()->band());
    plots_.push_back(&plot);
    plot.placeMark(mark_);
    plot.placeCursor(cursor_);
    connect(&plot, &Plot::cursorAsked, this, &Linked::placeCursor);
    connect(&plot, &Plot::markAsked, this, &Linked::placeMark);
    connect(&plot, &Plot::bandAsked, this, &Linked::showBand);
    connect(&plot, &Plot::aboutToZoom, this, &Linked::keepZoom);
    connect(&plot, &Plot::backAsked, this, &Linked::back);
    connect(&plot, &Plot::fitAsked, this, [this] {
        keepZoom();
        fitAll();
    });
}

void Linked::placeCursor(double frequency) {
    cursor_ = frequency;
    for (Plot* plot : plots_) plot->placeCursor(frequency);
}

void Linked::placeMark(double frequency) {
    mark_ = frequency;
    for (Plot* plot : plots_) plot->placeMark(frequency);
}

void Linked::showBand(const QCPRange& band) {
    for (Plot* plot : plots_) plot->showBand(band);
}

void Linked::fitAll() {
    showBand({frequencyLow, frequencyHigh});
    for (Plot* plot : plots_) plot->fit();
}

void Linked::keepZoom() {
    std::vector<Plot::Zoom> now;
    now.reserve(plots_.size());
    for (const Plot* plot : plots_) now.push_back(plot->zoom());
    if (!before_.empty() && before_.back() == now) return;
    if (before_.size() == zoomsKept) before_.erase(before_.begin());
    before_.push_back(std::move(now));
}

void Linked::back() {
    if (before_.empty()) return;
    const auto last = std::move(before_.back());
    before_.pop_back();
    // A plot that came later has no view of its own to go back to; it takes the band of the others.
    for (std::size_t i = 0; i < plots_.size(); ++i)
        if (i < last.size())
            plots_[i]->setZoom(last[i]);
        else
            plots_[i]->showBand(last.front().band);
}

}  // namespace plots
