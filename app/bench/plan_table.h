// SPDX-License-Identifier: GPL-3.0-or-later
// The rows of a test plan's stage, with what was read of one unit typed in beside the limits.
#pragma once

#include <QAbstractTableModel>
#include <optional>
#include <vector>

#include "bench/result_table.h"
#include "learn/probe.h"
#include "records/unit_record.h"
#include "shop/unit_verdict.h"

namespace bench {

class PlanModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { Step, Test, Least, Expected, Most, Read, Judged, columns };
    using QAbstractTableModel::QAbstractTableModel;

    using Reads = std::vector<std::optional<double>>;  ///< a row each, SI
    /// Begins with `reads`, with nothing read where they are not of as many rows.
    void show(const shop::PlanStage& stage, Reads reads);
    void clear();  ///< takes the readings away
    [[nodiscard]] const shop::PlanStage& stage() const { return stage_; }
    [[nodiscard]] shop::UnitVerdict verdict() const { return shop::unitVerdict(stage_, reads_); }
    [[nodiscard]] bool anyRead() const;
    [[nodiscard]] const Reads& reads() const { return reads_; }
    /// As records keep them.
    [[nodiscard]] std::vector<records::Reading> readings() const;
    /// As the search for causes takes them.
    [[nodiscard]] learn::Readings probed() const;
    /// The next row below that asks for something; the same where there is none.
    [[nodiscard]] int nextAsked(int row) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
    /// Takes what reads as a quantity of the row, or yes and no; an empty text takes the reading away.
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

signals:
    void refused(const QString& sentence);
    void changed();

private:
    [[nodiscard]] QString text(int row, int column, bool editing) const;
    [[nodiscard]] QString readText(std::size_t row, bool editing) const;
    [[nodiscard]] QString judgedText(std::size_t row) const;

    shop::PlanStage stage_;
    Reads reads_;
};

/// Typing at a row begins to edit its reading, Enter goes on to the next row that asks.
class PlanTable : public ResultTable {
    Q_OBJECT
public:
    explicit PlanTable(QWidget* parent = nullptr);
    [[nodiscard]] PlanModel& model() { return model_; }
    void show(const shop::PlanStage& stage, PlanModel::Reads reads);
    void toFirst();

signals:
    void rowChanged(int row);

protected:
    void closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) override;

private:
    PlanModel model_;
    bool refused_ = false;  ///< what was typed last; the cell stays
};

}  // namespace bench
