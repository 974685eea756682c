// SPDX-License-Identifier: GPL-3.0-or-later
// What makes a figure spread, as ranked bars.
#pragma once

#include <QAbstractTableModel>
#include <QStyledItemDelegate>

#include "bench/result_table.h"
#include "bench/spread_study.h"
#include "document/selection.h"

namespace bench {

/// A row a cause, greatest first: its name, its bar, its number.
class CausesModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { Name, Bar, Value, columns };
    enum class Of { Slopes, Shares };
    /// Of a bar's column: -1 to 1, as a share of the longest.
    static constexpr int lengthRole = Qt::UserRole + 1;
    using QAbstractTableModel::QAbstractTableModel;
    /// `column`: of the study; nothing is shown where it is negative or `found` is null. `found` lives as long as it is
    /// shown.
    void show(const SpreadFound* found, int column, Of of);
    [[nodiscard]] QString words(int row) const;  ///< what a bar says, in whole sentences
    /// The part of the design that a bar is of.
    [[nodiscard]] document::Selected part(int row) const;
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    struct Row {
        QString name, value, words;
        document::Selected part;
        double length = 0;
    };
    void addSlopes(const SpreadFound& found, std::size_t column);
    void addShares(const SpreadFound& found, std::size_t column);
    std::vector<Row> rows_;
    Of of_ = Of::Slopes;
};

/// Bars to both sides of the middle for slopes, from the left for shares; `old`: hollow.
class BarDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    using QStyledItemDelegate::QStyledItemDelegate;
    void setSigned(bool on) { signed_ = on; }
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    bool signed_ = true;
};

class CauseBars : public ResultTable {
    Q_OBJECT
public:
    explicit CauseBars(QWidget* parent = nullptr);
    void showCauses(const SpreadFound* found, int column, CausesModel::Of of);
    [[nodiscard]] const CausesModel& causes() const { return model_; }

signals:
    void told(const QString& words);  ///< of the bar under the mouse, or the current one
    void partChosen(const document::Selected& part);

protected:
    void leaveEvent(QEvent* event) override;

private:
    CausesModel model_;
    BarDelegate bars_;
};

}  // namespace bench
