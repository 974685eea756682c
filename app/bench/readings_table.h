// SPDX-License-Identifier: GPL-3.0-or-later
// What was read of one unit, typed in beside what the design computes.
#pragma once

#include <QAbstractTableModel>

#include "bench/result_table.h"
#include "spread/figure_read.h"
#include "units/figure.h"

namespace bench {

class ReadingsModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { Name, HookUp, Designed, Read, Doubt, columns };
    /// A row for each figure that has a value.
    ReadingsModel(const std::vector<units::Figure>& figures, QObject* parent);

    /// In the order of the rows.
    [[nodiscard]] std::vector<spread::FigureRead> readings() const;
    /// Replaces all.
    void take(const std::vector<spread::FigureRead>& readings);
    [[nodiscard]] const std::vector<units::Figure>& figures() const { return figures_; }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
    /// Takes what reads as a quantity of the figure; an empty text takes the reading away.
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

signals:
    void refused(const QString& sentence);
    void changed();

private:
    [[nodiscard]] QString text(int row, int column, bool editing) const;

    std::vector<units::Figure> figures_;
    std::vector<spread::FigureRead> reads_;  ///< a row each; figure "" where nothing was read
};

/// Typing at a row begins to edit its reading.
class ReadingsTable : public ResultTable {
    Q_OBJECT
public:
    ReadingsTable(const std::vector<units::Figure>& figures, QWidget* parent = nullptr);
    [[nodiscard]] ReadingsModel& model() { return model_; }

private:
    ReadingsModel model_;
};

}  // namespace bench
