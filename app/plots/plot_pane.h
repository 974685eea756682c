// SPDX-License-Identifier: GPL-3.0-or-later
// A plot with what stands above it: title or choice, values at the cursor, difference to the held trace.
#pragma once

#include <QComboBox>
#include <QWidget>

#include "bench/elided_label.h"
#include "plots/plot.h"

namespace plots {

class PlotPane : public QWidget {
    Q_OBJECT
public:
    /// A plot with a number, from 1, offers every trace and curve there is in a combo box; with 0 it has a title.
    PlotPane(View view, int number, QWidget* parent = nullptr);
    [[nodiscard]] Plot& plot() { return *plot_; }
    void setView(const View& view);
    [[nodiscard]] QComboBox* choice() { return choice_; }
    void showAnswer(const analysis::AnswerPtr& answer, const design::DesignPtr& design);
    [[nodiscard]] QString readoutText() const { return readout_->text(); }
    [[nodiscard]] QString differenceText() const { return difference_->text(); }

signals:
    void viewChosen();
    void said(const QString& sentence);  ///< what copying or saving did

protected:
    void contextMenuEvent(QContextMenuEvent* event) override;

private:
    void showWords();
    void makeChoice(int number);
    void offer(const analysis::Answer& answer);
    void showChoice();
    void fitChoice();
    void savePicture();
    void saveTable();
    [[nodiscard]] QString askPath(const QString& what, const QString& suffix);

    Plot* plot_;
    QComboBox* choice_ = nullptr;
    bench::ElidedLabel* title_ = nullptr;
    bench::ElidedLabel* readout_;
    bench::ElidedLabel* difference_;
    QStringList offered_;
};

/// The plot as SVG text, `size` in pixels.
[[nodiscard]] std::string plotSvg(Plot& plot, const QSize& size);
/// The plot as PNG bytes, drawn at twice the pixels of `size`.
[[nodiscard]] std::string plotPng(Plot& plot, const QSize& size);

}  // namespace plots
