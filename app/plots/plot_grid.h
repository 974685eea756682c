// SPDX-License-Identifier: GPL-3.0-or-later
// Four plots with one frequency axis and one cursor.
#pragma once

#include <QWidget>
#include <array>

#include "plots/plot_pane.h"

namespace plots {

class PlotGrid : public QWidget {
    Q_OBJECT
public:
    explicit PlotGrid(QWidget* parent = nullptr);

    void showAnswer(const analysis::AnswerPtr& answer, const design::DesignPtr& design);
    /// Keeps the traces that stand now, with the axes locked, or lets them go.
    void setHolding(bool on);
    [[nodiscard]] bool holding() const { return held_ != nullptr; }
    [[nodiscard]] PlotPane& pane(int index) { return *panes_[static_cast<std::size_t>(index)]; }
    [[nodiscard]] double cursor() const { return cursor_; }
    void placeCursor(double frequency);

signals:
    void said(const QString& sentence);

private:
    void showBand(const QCPRange& band);
    void fitAll();

    std::array<PlotPane*, 4> panes_{};
    analysis::AnswerPtr answer_, held_;
    double cursor_ = 0;
};

}  // namespace plots
