// SPDX-License-Identifier: GPL-3.0-or-later
// Unit records as rows; of a hundred thousand only those in sight are read.
#pragma once

#include <QAbstractTableModel>
#include <map>
#include <memory>

#include "bench/result_table.h"
#include "bench/unit_study.h"

namespace bench {

class RecordModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { Time, Serial, Stage, Verdict, Cause, Part, Revision, Lots, columns };
    using QAbstractTableModel::QAbstractTableModel;
    /// Records of the study in `store`; null: none.
    void show(std::shared_ptr<records::Store> store, UnitStudyPtr study);
    /// What stands in a record, a line each: readings, symptom, finding, note.
    [[nodiscard]] QString words(int row) const;
    [[nodiscard]] std::size_t readSoFar() const { return read_.size(); }
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    /// Read when it is first looked at; a record that cannot be read is empty.
    [[nodiscard]] const records::UnitRecord& record(int row) const;
    [[nodiscard]] static QString text(const records::UnitRecord& unit, int column);

    std::shared_ptr<records::Store> store_;
    UnitStudyPtr study_;
    mutable std::map<int, records::UnitRecord> read_;
};

class RecordTable : public ResultTable {
    Q_OBJECT
public:
    explicit RecordTable(QWidget* parent = nullptr);
    [[nodiscard]] RecordModel& model() { return model_; }

signals:
    void told(const QString& words);  ///< of the chosen record

private:
    RecordModel model_;
};

/// "wound", "laminated", "potted", "return" in the language of the window; other words as they are.
[[nodiscard]] QString stageText(const std::string& stage);
/// "pass", "fail", or "not judged".
[[nodiscard]] QString verdictText(const std::string& verdict);

}  // namespace bench
