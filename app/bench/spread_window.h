// SPDX-License-Identifier: GPL-3.0-or-later
// A production of the open design: yields, a histogram for each figure, and what makes it spread.
#pragma once

#include <QCheckBox>
#include <QDialog>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QRadioButton>
#include <QSpinBox>

#include "bench/cause_bars.h"
#include "bench/histogram.h"
#include "bench/spread_study.h"
#include "bench/spread_table.h"

namespace bench {

class SpreadWindow : public QDialog {
    Q_OBJECT
public:
    /// `study` outlives this.
    SpreadWindow(SpreadStudy& study, QWidget* parent);

    [[nodiscard]] SpreadTable& table() { return *table_; }
    [[nodiscard]] HistogramView& histogram() { return *histogram_; }
    [[nodiscard]] CauseBars& bars() { return *bars_; }
    [[nodiscard]] QString words() const { return words_->text(); }
    [[nodiscard]] QString state() const { return state_->text(); }

signals:
    void partChosen(const document::Selected& part);

private:
    QLayout* asking();
    QWidget* picture();
    void startOrCancel();
    void showFound();
    void showState();
    void showColumn(int column);
    void tell(const QString& words);
    [[nodiscard]] CausesModel::Of barsOf() const;

    SpreadStudy& study_;
    std::shared_ptr<const SpreadFound> shown_;  ///< kept while the tables show it
    int column_ = -1;
    QSpinBox *units_ = nullptr, *seed_ = nullptr, *lot_ = nullptr;
    QCheckBox* every_ = nullptr;
    QPushButton* run_ = nullptr;
    QProgressBar* progress_ = nullptr;
    QLabel *state_ = nullptr, *words_ = nullptr;
    SpreadTable* table_ = nullptr;
    HistogramView* histogram_ = nullptr;
    QRadioButton *slopes_ = nullptr, *shares_ = nullptr;
    CauseBars* bars_ = nullptr;
};

}  // namespace bench
