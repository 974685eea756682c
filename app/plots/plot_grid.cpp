// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/plot_grid.h"

#include <algorithm>

namespace plots {

PlotGrid::PlotGrid(QWidget* parent) : QWidget(parent), grid_(new QGridLayout(this)) {
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setSpacing(4);
    arrange({});
}

void PlotGrid::addPane(const View& view) {
    const int index = static_cast<int>(panes_.size());
    auto* pane = new PlotPane(view, index + 1, this);
    panes_.push_back(pane);
    linked_.add(pane->plot());
    pane->plot().hold(held_);
    pane->plot().setBands(bands_, bandsOld_);
    pane->plot().setMeasured(overlays_);
    connect(pane, &PlotPane::said, this, &PlotGrid::said);
    connect(pane, &PlotPane::viewChosen, this, &PlotGrid::arranged);
    connect(&pane->plot(), &Plot::aloneAsked, this, [this, index] { toggleAlone(index); });
}

Arrangement PlotGrid::arrangement() const {
    Arrangement now = kept_;
    now.count = count_;
    for (std::size_t i = 0; i < panes_.size(); ++i) now.views[i] = panes_[i]->plot().view();
    return now;
}

void PlotGrid::arrange(Arrangement arrangement) {
    kept_ = sound(std::move(arrangement));
    const bool same = count_ == kept_.count;
    count_ = kept_.count;
    alone_ = -1;
    for (std::size_t i = 0; i < panes_.size(); ++i) panes_[i]->setView(kept_.views[i]);
    while (static_cast<int>(panes_.size()) < count_) addPane(kept_.views[panes_.size()]);
    if (!same || grid_->count() == 0) place();
    if (answer_) showAnswer(answer_, design_);
    emit arranged();
}

void PlotGrid::change(int steps) {
    const auto* const now = std::find(plotCounts.begin(), plotCounts.end(), count_);
    const auto place = std::clamp<std::ptrdiff_t>(now - plotCounts.begin() + steps, 0,
                                                  static_cast<std::ptrdiff_t>(plotCounts.size()) - 1);
    Arrangement next = arrangement();
    next.count = plotCounts[static_cast<std::size_t>(place)];
    if (next.count != count_ || alone_ >= 0) arrange(std::move(next));
}

void PlotGrid::toggleAlone(int index) {
    alone_ = alone_ == index ? -1 : index;
    place();
    if (answer_) showAnswer(answer_, design_);
    pane(index).plot().setFocus();
}

/// Two columns, as one looks down a column for a frequency; two plots stand one above the other.
void PlotGrid::place() {
    for (PlotPane* pane : panes_) grid_->removeWidget(pane);
    const int columns = count_ > 2 ? 2 : 1, rows = (count_ + columns - 1) / columns;
    for (int row = 0; row < std::max(rows, grid_->rowCount()); ++row) grid_->setRowStretch(row, row < rows ? 1 : 0);
    for (int column = 0; column < std::max(columns, grid_->columnCount()); ++column)
        grid_->setColumnStretch(column, column < columns ? 1 : 0);
    for (int i = 0; i < static_cast<int>(panes_.size()); ++i) {
        PlotPane* pane = panes_[static_cast<std::size_t>(i)];
        if (seen(i) && alone_ < 0)
            grid_->addWidget(pane, i / columns, i % columns);
        else if (seen(i))
            grid_->addWidget(pane, 0, 0, rows, columns);
        pane->setVisible(seen(i));
    }
}

void PlotGrid::showAnswer(const analysis::AnswerPtr& answer, const design::DesignPtr& design) {
    answer_ = answer;
    design_ = design;
    for (int i = 0; i < static_cast<int>(panes_.size()); ++i)
        if (seen(i)) pane(i).showAnswer(answer, design);
}

void PlotGrid::showBands(const BandsPtr& bands, bool old) {
    bands_ = bands;
    bandsOld_ = old;
    for (PlotPane* pane : panes_) pane->plot().setBands(bands, old);
}

void PlotGrid::showMeasured(const OverlaysPtr& overlays) {
    overlays_ = overlays;
    for (PlotPane* pane : panes_) pane->plot().setMeasured(overlays);
}

std::vector<std::string> PlotGrid::tracesInSight() const {
    std::vector<std::string> names;
    for (int i = 0; i < static_cast<int>(panes_.size()); ++i)
        if (seen(i)) names.push_back(panes_[static_cast<std::size_t>(i)]->plot().view().trace);
    return names;
}

void PlotGrid::setHolding(bool on) {
    held_ = on ? answer_ : nullptr;
    for (PlotPane* pane : panes_) pane->plot().hold(held_);
}

}  // namespace plots
