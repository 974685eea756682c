// SPDX-License-Identifier: GPL-3.0-or-later
// Each promise and figure of a study with its yield and its spread.
#pragma once

#include <QAbstractTableModel>

#include "bench/result_table.h"
#include "bench/spread_study.h"

namespace bench {

class SpreadModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { Name, Kept, Nominal, Low, High, columns };
    using QAbstractTableModel::QAbstractTableModel;
    /// `found` lives as long as it is shown; null: nothing.
    void show(const SpreadFound* found, bool old);
    /// The last row, where there is more than one promise, is of all of them together.
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    [[nodiscard]] bool together(int row) const;
    [[nodiscard]] QString text(int row, int column) const;
    [[nodiscard]] QString tip(int row) const;
    const SpreadFound* found_ = nullptr;
    bool old_ = false;
};

class SpreadTable : public ResultTable {
    Q_OBJECT
public:
    explicit SpreadTable(QWidget* parent = nullptr);
    /// The row that was current stays so where it is there again.
    void showFound(const SpreadFound* found, bool old);
    [[nodiscard]] const SpreadModel& rows() const { return model_; }

signals:
    void chosen(int column);  ///< of the study; -1: none

private:
    SpreadModel model_;
};

/// "97.3 %"; "–" where nothing was judged.
[[nodiscard]] QString yieldShare(const spread::Yield& yield);

}  // namespace bench
