// SPDX-License-Identifier: GPL-3.0-or-later
// Every figure of the answer with its uncertainty, hook-up and validity.
#pragma once

#include <QAbstractTableModel>

#include "analysis/answer.h"
#include "bench/result_table.h"

namespace bench {

class FiguresModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { Name, Value, Uncertainty, HookUp, Remark, columns };
    using QAbstractTableModel::QAbstractTableModel;
    void show(const analysis::AnswerPtr& answer);
    [[nodiscard]] int rowOf(const std::string& figure, const std::string& hookUp) const;  ///< -1 if there is none
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    [[nodiscard]] QString text(const units::Figure& figure, int column) const;
    analysis::AnswerPtr answer_;
};

class FiguresTable : public ResultTable {
    Q_OBJECT
public:
    explicit FiguresTable(QWidget* parent = nullptr);
    void showAnswer(const analysis::AnswerPtr& answer);
    /// Selects the figure's row and brings it into sight.
    void point(const std::string& figure, const std::string& hookUp);
    [[nodiscard]] const FiguresModel& figures() const { return model_; }

private:
    FiguresModel model_;
};

}  // namespace bench
