// SPDX-License-Identifier: GPL-3.0-or-later
// The promises of the brief: limit, now, margin, and whether they are kept. Broken ones come first.
#pragma once

#include <QAbstractTableModel>

#include "analysis/answer.h"
#include "bench/result_table.h"

namespace bench {

class PromisesModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { Standing, Limit, Now, Margin, columns };
    using QAbstractTableModel::QAbstractTableModel;
    void show(const analysis::AnswerPtr& answer);
    [[nodiscard]] const analysis::PromiseState* promise(int row) const;
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    analysis::AnswerPtr answer_;
};

class PromiseStrip : public ResultTable {
    Q_OBJECT
public:
    explicit PromiseStrip(QWidget* parent = nullptr);
    void showAnswer(const analysis::AnswerPtr& answer);
    [[nodiscard]] const PromisesModel& promises() const { return model_; }

signals:
    void pointed(const analysis::PromiseState& promise);  ///< clicked, or chosen with Enter

private:
    PromisesModel model_;
};

}  // namespace bench
