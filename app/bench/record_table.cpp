// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/record_table.h"

#include <QHeaderView>
#include <array>

#include "bench/control_chart_view.h"
#include "bench/language.h"
#include "bench/standing_mark.h"
#include "bench/theme.h"
#include "editors/labels.h"

namespace bench {

namespace {

constexpr std::size_t mostRead = 2000;  // records kept in memory

constexpr std::array<const char*, 4> stageWords{
    QT_TRANSLATE_NOOP("core", "wound"), QT_TRANSLATE_NOOP("core", "laminated"), QT_TRANSLATE_NOOP("core", "potted"),
    QT_TRANSLATE_NOOP("core", "return")};

QString namedText(const std::vector<records::Named>& all) {
    QStringList words;
    for (const auto& one : all) words << editors::text(one.what) + QLatin1Char(' ') + editors::text(one.name);
    return words.join(QStringLiteral(", "));
}

}  // namespace

QString stageText(const std::string& stage) {
    for (const char* word : stageWords)
        if (stage == word) return translated(stage);
    return editors::text(stage);
}

QString verdictText(const std::string& verdict) {
    if (verdict == "pass") return RecordModel::tr("pass");
    return verdict == "fail" ? RecordModel::tr("fail") : RecordModel::tr("not judged");
}

void RecordModel::show(std::shared_ptr<records::Store> store, UnitStudyPtr study) {
    beginResetModel();
    store_ = std::move(store);
    study_ = std::move(study);
    read_.clear();
    endResetModel();
}

int RecordModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() || !study_ || !store_ ? 0 : static_cast<int>(study_->numbers.size());
}
int RecordModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns;
}

const records::UnitRecord& RecordModel::record(int row) const {
    if (const auto at = read_.find(row); at != read_.end()) return at->second;
    if (read_.size() >= mostRead) read_.clear();
    records::UnitRecord unit;
    try {
        unit = store_->record(study_->numbers[static_cast<std::size_t>(row)]);
    } catch (const records::RecordsFailed& failure) {
        unit.note = failure.what();
    }
    return read_.emplace(row, std::move(unit)).first->second;
}

QString RecordModel::text(const records::UnitRecord& unit, int column) {
    switch (column) {
        case Time:
            return editors::text(unit.time).replace(QLatin1Char('T'), QLatin1Char(' '));
        case Serial:
            return editors::text(unit.serial);
        case Stage:
            return stageText(unit.stage);
        case Verdict:
            return verdictText(unit.verdict);
        case Cause:
            return translated(unit.cause);
        case Part:
            return editors::text(unit.part);
        case Revision:
            return editors::text(unit.revision);
        default:
            return namedText(unit.lots);
    }
}

QString RecordModel::words(int row) const {
    if (row < 0 || row >= rowCount()) return {};
    const auto& unit = record(row);
    QStringList lines{
        tr("%1, %2, %3: %4").arg(text(unit, Serial), text(unit, Stage), text(unit, Time), text(unit, Verdict))};
    const auto line = [&](const QString& name, const QString& words) {
        if (!words.isEmpty()) lines << name.arg(words);
    };
    line(tr("Symptom: %1"), editors::text(unit.symptom));
    line(tr("Finding: %1"), editors::text(unit.finding));
    line(tr("Cause: %1"), translated(unit.cause));
    line(tr("Note: %1"), editors::text(unit.note));
    line(tr("Lots: %1"), namedText(unit.lots));
    line(tr("Initials: %1"), namedText(unit.initials));
    for (const auto& reading : unit.readings)
        lines << recordedTest(reading.test) + QStringLiteral(": ") + recordedText(reading.unit, reading.value);
    return lines.join(QLatin1Char('\n'));
}

QVariant RecordModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    if (role != Qt::DisplayRole && role != Qt::ForegroundRole && role != Qt::DecorationRole) return {};
    const auto& unit = record(index.row());
    if (role == Qt::DisplayRole) return text(unit, index.column());
    const bool judged = index.column() == Verdict && !unit.verdict.empty();
    const auto standing = unit.verdict == "pass" ? analysis::Standing::Kept : analysis::Standing::Broken;
    if (role == Qt::DecorationRole) return judged ? QVariant(standingMark(standing, 14)) : QVariant();
    return judged ? QVariant(standingColour(standing)) : QVariant();
}

QVariant RecordModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
    const std::array<QString, columns> heads{tr("time"),  tr("serial"), tr("stage"),    tr("verdict"),
                                             tr("cause"), tr("part"),   tr("revision"), tr("lots")};
    return heads[static_cast<std::size_t>(section)];
}

RecordTable::RecordTable(QWidget* parent)
    : ResultTable(tr("Unit records"), tr("The records that are meant, the newest first"), parent), model_(this) {
    setModel(&model_);
    // Columns as wide as their words would read every record.
    constexpr std::array<int, RecordModel::Lots> characters{17, 10, 11, 12, 20, 10, 9};
    horizontalHeader()->setSectionResizeMode(QHeaderView::Interactive);
    for (std::size_t k = 0; k < characters.size(); ++k)
        setColumnWidth(static_cast<int>(k), characters[k] * fontMetrics().averageCharWidth() + 8);
    horizontalHeader()->setSectionResizeMode(RecordModel::Lots, QHeaderView::Stretch);
    connect(selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& now) { emit told(model_.words(now.row())); });
}

}  // namespace bench
