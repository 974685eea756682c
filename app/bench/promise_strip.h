// SPDX-License-Identifier: GPL-3.0-or-later
// The promises of the brief: limit, now, margin, whether they are kept, and by how many units of a production. Broken
// ones come first.
#pragma once

#include <QAbstractTableModel>

#include "analysis/answer.h"
#include "bench/result_table.h"
#include "bench/spread_study.h"

namespace bench {

class PromisesModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { Standing, Limit, Now, Margin, Yield, columns };
    using QAbstractTableModel::QAbstractTableModel;
    void show(const analysis::AnswerPtr& answer);
    /// Yields of a study; null: none. With them comes a last row for all promises together.
    void showSpread(std::shared_ptr<const SpreadFound> found, bool old);
    [[nodiscard]] bool hasYields() const { return found_ != nullptr; }
    /// Null for the row of all together.
    [[nodiscard]] const analysis::PromiseState* promise(int row) const;
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    [[nodiscard]] int promises() const { return answer_ ? static_cast<int>(answer_->promises.size()) : 0; }
    [[nodiscard]] const spread::Yield* yield(int row) const;
    [[nodiscard]] QVariant together(int column, int role) const;
    [[nodiscard]] QVariant yieldData(int row, int role) const;
    analysis::AnswerPtr answer_;
    std::shared_ptr<const SpreadFound> found_;
    bool old_ = false;
};

class PromiseStrip : public ResultTable {
    Q_OBJECT
public:
    explicit PromiseStrip(QWidget* parent = nullptr);
    void showAnswer(const analysis::AnswerPtr& answer);
    void showSpread(std::shared_ptr<const SpreadFound> found, bool old);
    [[nodiscard]] const PromisesModel& promises() const { return model_; }

signals:
    void pointed(const analysis::PromiseState& promise);  ///< clicked, or chosen with Enter

private:
    PromisesModel model_;
};

}  // namespace bench
