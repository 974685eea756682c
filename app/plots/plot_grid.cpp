// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/plot_grid.h"

#include <QGridLayout>

#include "plots/scale.h"

namespace plots {

PlotGrid::PlotGrid(QWidget* parent) : QWidget(parent) {
    const std::array<View, 4> views{
        {{"response", {}, "deg"}, {"impedance", {}, {}}, {"headroom", {}, {}}, {"response", "group_delay_s", {}}}};
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setSpacing(4);
    for (std::size_t i = 0; i < views.size(); ++i) {
        panes_[i] = new PlotPane(views[i], i == 3, this);
        const int row = static_cast<int>(i) / 2, column = static_cast<int>(i) % 2;
        grid->addWidget(panes_[i], row, column);
        grid->setRowStretch(row, 1);
        grid->setColumnStretch(column, 1);
        Plot& plot = panes_[i]->plot();
        connect(&plot, &Plot::cursorAsked, this, &PlotGrid::placeCursor);
        connect(&plot, &Plot::bandAsked, this, &PlotGrid::showBand);
        connect(&plot, &Plot::fitAsked, this, &PlotGrid::fitAll);
        connect(panes_[i], &PlotPane::said, this, &PlotGrid::said);
    }
}

void PlotGrid::showAnswer(const analysis::AnswerPtr& answer, const design::DesignPtr& design) {
    answer_ = answer;
    for (PlotPane* pane : panes_) pane->showAnswer(answer, design);
}

void PlotGrid::setHolding(bool on) {
    held_ = on ? answer_ : nullptr;
    for (PlotPane* pane : panes_) pane->plot().hold(held_);
}

void PlotGrid::placeCursor(double frequency) {
    cursor_ = frequency;
    for (PlotPane* pane : panes_) pane->plot().placeCursor(frequency);
}

void PlotGrid::showBand(const QCPRange& band) {
    for (PlotPane* pane : panes_) pane->plot().showBand(band);
}

void PlotGrid::fitAll() {
    showBand({frequencyLow, frequencyHigh});
    for (PlotPane* pane : panes_) pane->plot().fit();
}

}  // namespace plots
