// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/plan_table.h"

#include <QHeaderView>
#include <algorithm>
#include <array>

#include "bench/language.h"
#include "bench/standing_mark.h"
#include "bench/theme.h"
#include "editors/labels.h"
#include "plots/result_words.h"
#include "units/fault.h"
#include "units/text.h"

namespace bench {

using shop::Asked;
using shop::RowVerdict;

void PlanModel::show(const shop::PlanStage& stage, Reads reads) {
    beginResetModel();
    stage_ = stage;
    reads_ = std::move(reads);
    if (reads_.size() != stage_.rows.size()) reads_.assign(stage_.rows.size(), std::nullopt);
    endResetModel();
    emit changed();
}

void PlanModel::clear() {
    reads_.assign(stage_.rows.size(), std::nullopt);
    if (rowCount() > 0) emit dataChanged(index(0, Read), index(rowCount() - 1, Judged));
    emit changed();
}

bool PlanModel::anyRead() const {
    return std::any_of(reads_.begin(), reads_.end(), [](const auto& one) { return one.has_value(); });
}

std::vector<records::Reading> PlanModel::readings() const {
    std::vector<records::Reading> all;
    for (std::size_t k = 0; k < reads_.size(); ++k) {
        if (!reads_[k]) continue;
        auto kept = shop::recorded(stage_.rows[k], *reads_[k]);
        all.push_back({std::move(kept.test), std::move(kept.unit), kept.value});
    }
    return all;
}

learn::Readings PlanModel::probed() const {
    learn::Readings all;
    for (std::size_t k = 0; k < reads_.size(); ++k)
        if (reads_[k] && shop::asked(stage_.rows[k]) == Asked::Reading) all[stage_.rows[k].name] = *reads_[k];
    return all;
}

int PlanModel::nextAsked(int row) const {
    for (int next = row + 1; next < rowCount(); ++next)
        if (shop::asked(stage_.rows[static_cast<std::size_t>(next)]) != Asked::Nothing) return next;
    return row;
}

int PlanModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(stage_.rows.size());
}
int PlanModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns;
}

QString PlanModel::readText(std::size_t row, bool editing) const {
    const auto& one = stage_.rows[row];
    if (shop::asked(one) == Asked::Nothing) return editing ? QString() : QStringLiteral("–");
    if (!reads_[row]) return editing || shop::asked(one) == Asked::Reading ? QString() : tr("yes / no");
    if (shop::asked(one) == Asked::Answer) return *reads_[row] > 0 ? tr("yes") : tr("no");
    if (editing) return editors::text(units::writeExact(one.kind, *reads_[row]));
    return plots::shownNumber(shop::limitText(one.kind, *reads_[row]));
}

QString PlanModel::judgedText(std::size_t row) const {
    if (shop::asked(stage_.rows[row]) == Asked::Nothing) return tr("not asked");
    switch (shop::rowVerdict(stage_.rows[row], reads_[row])) {
        case RowVerdict::Pass:
            return tr("pass");
        case RowVerdict::Fail:
            return tr("fail");
        case RowVerdict::Taken:
            return tr("no limit");
        default:
            return {};
    }
}

QString PlanModel::text(int row, int column, bool editing) const {
    const auto k = static_cast<std::size_t>(row);
    const auto& one = stage_.rows[k];
    const auto limit = [&](const std::optional<double>& value) {
        return value ? plots::shownNumber(shop::limitText(one.kind, *value)) : QString();
    };
    switch (column) {
        case Step:
            return QString::number(one.step);
        case Test:
            return translated(one.what);
        case Least:
            return limit(one.low);
        case Expected:
            return limit(one.expected);
        case Most:
            return limit(one.high);
        case Read:
            return readText(k, editing);
        default:
            return judgedText(k);
    }
}

QVariant PlanModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const auto k = static_cast<std::size_t>(index.row());
    const auto verdict = shop::rowVerdict(stage_.rows[k], reads_[k]);
    const bool judged = index.column() == Judged && (verdict == RowVerdict::Pass || verdict == RowVerdict::Fail);
    const auto standing = verdict == RowVerdict::Pass ? analysis::Standing::Kept : analysis::Standing::Broken;
    const bool number = index.column() == Step || (index.column() >= Least && index.column() <= Read);
    switch (role) {
        case Qt::DisplayRole:
            return text(index.row(), index.column(), false);
        case Qt::EditRole:
            return text(index.row(), index.column(), true);
        case Qt::TextAlignmentRole:
            return QVariant::fromValue((number ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
        case Qt::ForegroundRole:
            if (judged) return standingColour(standing);
            return index.column() == Test || (index.column() == Read && reads_[k]) ? QVariant()
                                                                                   : QVariant(colour(Token::Muted));
        case Qt::DecorationRole:
            return judged ? QVariant(standingMark(standing, 14)) : QVariant();
        case Qt::ToolTipRole:
            if (index.column() == Test) return text(index.row(), Test, false);  // whole, where the column is narrow
            if (index.column() == Read)
                return tr("What was read, with its unit: 4.7k, 0,12; yes or no where it is asked");
            return {};
        default:
            return {};
    }
}

QVariant PlanModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) return {};
    const bool number = section == Step || (section >= Least && section <= Read);
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue((number ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
    if (role != Qt::DisplayRole) return {};
    const std::array<QString, columns> heads{tr("row"),     tr("test"), tr("at least"), tr("expected"),
                                             tr("at most"), tr("read"), tr("verdict")};
    return heads[static_cast<std::size_t>(section)];
}

Qt::ItemFlags PlanModel::flags(const QModelIndex& index) const {
    const auto plain = QAbstractTableModel::flags(index);
    const bool asks =
        index.isValid() && shop::asked(stage_.rows[static_cast<std::size_t>(index.row())]) != Asked::Nothing;
    return asks && index.column() == Read ? plain | Qt::ItemIsEditable : plain;
}

bool PlanModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (role != Qt::EditRole || !(flags(index) & Qt::ItemIsEditable)) return false;
    const auto k = static_cast<std::size_t>(index.row());
    QString typed = value.toString().trimmed();
    if (shop::asked(stage_.rows[k]) == Asked::Answer)
        for (const auto& [own, word] : {std::pair{tr("yes"), "yes"}, std::pair{tr("no"), "no"}})
            if (typed.compare(own, Qt::CaseInsensitive) == 0 || typed.compare(own.left(1), Qt::CaseInsensitive) == 0)
                typed = QString::fromLatin1(word);
    try {
        reads_[k] = typed.isEmpty() ? std::nullopt : std::optional(shop::readAt(stage_.rows[k], typed.toStdString()));
    } catch (const units::BadInput& bad) {
        emit refused(translated(bad.what()));
        return false;
    }
    emit dataChanged(this->index(index.row(), Read), this->index(index.row(), Judged));
    emit changed();
    return true;
}

PlanTable::PlanTable(QWidget* parent)
    : ResultTable(tr("Test plan"), tr("What is tested in which order, its limits, and what this unit read"), parent),
      model_(this) {
    setModel(&model_);
    takeTyping();
    fitColumns(PlanModel::Test);
    for (const int column : {int{PlanModel::Read}, int{PlanModel::Judged}}) {  // nothing jumps while one types
        horizontalHeader()->setSectionResizeMode(column, QHeaderView::Interactive);
        setColumnWidth(column, 14 * fontMetrics().averageCharWidth());
    }
    connect(&model_, &PlanModel::refused, this, [this] { refused_ = true; });
    connect(&model_, &PlanModel::changed, this, [this] { refused_ = false; });
    connect(selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& now) { emit rowChanged(now.row()); });
}

void PlanTable::show(const shop::PlanStage& stage, PlanModel::Reads reads) {
    model_.show(stage, std::move(reads));
    toFirst();
}

void PlanTable::toFirst() {
    if (model_.rowCount() > 0) setCurrentIndex(model_.index(std::max(0, model_.nextAsked(-1)), PlanModel::Read));
}

void PlanTable::closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) {
    ResultTable::closeEditor(editor, hint);
    if (hint == QAbstractItemDelegate::SubmitModelCache && !refused_)
        setCurrentIndex(model_.index(model_.nextAsked(currentIndex().row()), PlanModel::Read));
    refused_ = false;
}

}  // namespace bench
