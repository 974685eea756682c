// SPDX-License-Identifier: GPL-3.0-or-later
// Up to eight plots with one frequency axis and one cursor; any of them full size on demand.
#pragma once

#include <QGridLayout>
#include <QWidget>
#include <vector>

#include "plots/arrangement.h"
#include "plots/linked.h"
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

    /// Bands of a production behind the curves; null: none.
    void showBands(const BandsPtr& bands, bool old);
    /// Measured curves over the computed ones; null: none.
    void showMeasured(const OverlaysPtr& overlays);
    /// Names of the traces that plots in sight show.
    [[nodiscard]] std::vector<std::string> tracesInSight() const;

    [[nodiscard]] Arrangement arrangement() const;
    void arrange(Arrangement arrangement);
    /// The next greater or smaller count of plots; the same at an end.
    void change(int steps);
    /// That plot alone, or all again if it is alone.
    void toggleAlone(int index);
    [[nodiscard]] int alone() const { return alone_; }  ///< -1: none

    /// Of those that there are; a plot beyond the count is kept for when it comes again.
    [[nodiscard]] PlotPane& pane(int index) { return *panes_[static_cast<std::size_t>(index)]; }
    [[nodiscard]] int count() const { return count_; }
    [[nodiscard]] double cursor() const { return linked_.cursor(); }
    void placeCursor(double frequency) { linked_.placeCursor(frequency); }

signals:
    void said(const QString& sentence);
    void arranged();  ///< the count or a view changed

private:
    void addPane(const View& view);
    void place();
    [[nodiscard]] bool seen(int index) const { return alone_ < 0 ? index < count_ : index == alone_; }

    std::vector<PlotPane*> panes_;
    Arrangement kept_;  ///< views of plots that were not made yet
    QGridLayout* grid_;
    Linked linked_;
    analysis::AnswerPtr answer_, held_;
    BandsPtr bands_;
    bool bandsOld_ = false;
    OverlaysPtr overlays_;
    design::DesignPtr design_;
    int count_ = 0, alone_ = -1;
};

}  // namespace plots
