// SPDX-License-Identifier: GPL-3.0-or-later
// Two designs side by side: both cuts, what differs in words, figures, responses and their difference.
#pragma once

#include <QLabel>
#include <QListWidget>
#include <QToolButton>
#include <QWidget>
#include <memory>

#include "bench/elided_label.h"
#include "bench/result_table.h"
#include "compare/pair_lines.h"
#include "compare/still_cut.h"
#include "design/transfer.h"
#include "plots/linked.h"
#include "plots/plot_pane.h"
#include "solver/latest_wins.h"

namespace compare {

class PairWindow : public QWidget {
    Q_OBJECT
public:
    /// Both designs are checked; each is computed in the background.
    PairWindow(design::DesignPtr a, design::DesignPtr b, const std::shared_ptr<const catalog::Catalog>& shop,
               QWidget* parent = nullptr);

    /// A is another design from now on: the open one was edited.
    void setFirst(design::DesignPtr a);
    void say(const QString& sentence);
    [[nodiscard]] const design::DesignPtr& second() const { return designs_[1]; }
    [[nodiscard]] QToolButton& taking() { return *take_; }  ///< its menu holds what can be taken from B

    [[nodiscard]] bool ready() const { return answers_[0] && answers_[1]; }
    [[nodiscard]] QStringList differences() const;  ///< as they are listed
    [[nodiscard]] const PairFigures& figures() const { return figures_; }
    [[nodiscard]] plots::PlotPane& overlay() { return *overlay_; }
    [[nodiscard]] plots::PlotPane& difference() { return *difference_; }

signals:
    void shown();                                       ///< both answers are there and drawn
    void portionAsked(const design::Portion& portion);  ///< of B, for the open design

private:
    void layOut();
    [[nodiscard]] QWidget* cutsSide();
    [[nodiscard]] QWidget* resultsSide();
    void showDifferences();
    void take(int which, const analysis::AnswerPtr& answer, const design::DesignPtr& design);
    void showBoth();

    design::DesignPtr designs_[2];
    analysis::AnswerPtr answers_[2];
    solver::LatestWins* solvers_[2];
    StillCut* cuts_[2];
    bench::ElidedLabel* headings_[2];
    QListWidget* words_;
    QToolButton* take_;
    PairFigures figures_;
    bench::ResultTable* table_;
    plots::Linked linked_;
    plots::PlotPane* overlay_;
    plots::PlotPane* difference_;
    bench::ElidedLabel* message_;
};

}  // namespace compare
