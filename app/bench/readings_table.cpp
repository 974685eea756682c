// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/readings_table.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "bench/figure_words.h"
#include "bench/language.h"
#include "bench/theme.h"
#include "editors/labels.h"
#include "exchange/readings_file.h"
#include "plots/result_words.h"
#include "units/fault.h"
#include "units/kind.h"
#include "units/text.h"

namespace bench {

ReadingsModel::ReadingsModel(const std::vector<units::Figure>& figures, QObject* parent) : QAbstractTableModel(parent) {
    std::copy_if(figures.begin(), figures.end(), std::back_inserter(figures_),
                 [](const units::Figure& f) { return std::isfinite(f.value); });
    reads_.resize(figures_.size());
}

std::vector<spread::FigureRead> ReadingsModel::readings() const {
    std::vector<spread::FigureRead> all;
    std::copy_if(reads_.begin(), reads_.end(), std::back_inserter(all),
                 [](const spread::FigureRead& r) { return !r.figure.empty(); });
    return all;
}

void ReadingsModel::take(const std::vector<spread::FigureRead>& readings) {
    for (std::size_t row = 0; row < figures_.size(); ++row) {
        const auto found = std::find_if(readings.begin(), readings.end(),
                                        [&](const auto& r) { return r.figure == figures_[row].name; });
        reads_[row] = found == readings.end() ? spread::FigureRead{} : *found;
    }
    if (rowCount() > 0) emit dataChanged(index(0, Read), index(rowCount() - 1, Doubt));
    emit changed();
}

int ReadingsModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(figures_.size());
}
int ReadingsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns;
}

QString ReadingsModel::text(int row, int column, bool editing) const {
    const auto& figure = figures_[static_cast<std::size_t>(row)];
    const auto& read = reads_[static_cast<std::size_t>(row)];
    const auto kind = units::kindOfUnit(figure.unit);
    switch (column) {
        case Name:
            return figureText(figure.name);
        case HookUp:
            return editors::text(figure.hookUp);
        case Designed:
            return plots::written(figure);
        case Read:
            if (read.figure.empty()) return {};
            return editors::text(editing ? units::writeExact(kind, read.value) : units::write(kind, read.value, 4));
        default:
            if (editing || !(read.doubt > 0)) return editors::text(exchange::doubtText(figure, read));
            return editors::text(
                units::write(kind == units::Kind::LevelDbu ? units::Kind::Decibel : kind, read.doubt, 2));
    }
}

QVariant ReadingsModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const auto& figure = figures_[static_cast<std::size_t>(index.row())];
    switch (role) {
        case Qt::DisplayRole:
            return text(index.row(), index.column(), false);
        case Qt::EditRole:
            return text(index.row(), index.column(), true);
        case Qt::TextAlignmentRole:
            return QVariant::fromValue((index.column() >= Designed ? Qt::AlignRight : Qt::AlignLeft) |
                                       Qt::AlignVCenter);
        case Qt::ForegroundRole:
            return index.column() == HookUp || index.column() == Designed ? QVariant(colour(Token::Muted)) : QVariant();
        case Qt::ToolTipRole:
            if (index.column() == Read) return tr("What the unit read, with its unit; empty where nothing was read");
            if (index.column() == Doubt)
                return tr(
                    "Half the width within which the true value lies, in the same unit or per cent of the "
                    "reading; empty: as good instruments read it");
            return translated(figure.source);
        default:
            return {};
    }
}

QVariant ReadingsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) return {};
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue((section >= Designed ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
    if (role != Qt::DisplayRole) return {};
    const std::array<QString, columns> heads{tr("figure"), tr("hook-up"), tr("designed"), tr("read"), tr("doubt")};
    return heads[static_cast<std::size_t>(section)];
}

Qt::ItemFlags ReadingsModel::flags(const QModelIndex& index) const {
    const auto plain = QAbstractTableModel::flags(index);
    const bool read = index.isValid() && !reads_[static_cast<std::size_t>(index.row())].figure.empty();
    const bool editable = index.column() == Read || (index.column() == Doubt && read);
    return editable ? plain | Qt::ItemIsEditable : plain;
}

bool ReadingsModel::setData(const QModelIndex& index, const QVariant& value, int role) {
    if (role != Qt::EditRole || !(flags(index) & Qt::ItemIsEditable)) return false;
    const std::string typed = value.toString().trimmed().toStdString();
    const auto& figure = figures_[static_cast<std::size_t>(index.row())];
    auto& read = reads_[static_cast<std::size_t>(index.row())];
    try {
        if (index.column() == Read) {
            const double doubt = read.doubt;
            read = typed.empty() ? spread::FigureRead{} : exchange::readReading(figure, typed, "", figure.name);
            if (!typed.empty()) read.doubt = doubt;
        } else {
            const auto kept = units::writeExact(units::kindOfUnit(figure.unit), read.value);
            read.doubt = exchange::readReading(figure, kept, typed, tr("doubt of ").toStdString() + figure.name).doubt;
        }
    } catch (const units::BadInput& bad) {
        emit refused(translated(bad.what()));
        return false;
    }
    emit dataChanged(this->index(index.row(), Read), this->index(index.row(), Doubt));
    emit changed();
    return true;
}

ReadingsTable::ReadingsTable(const std::vector<units::Figure>& figures, QWidget* parent)
    : ResultTable(tr("Readings"), tr("What was read of the unit, beside what the design computes"), parent),
      model_(figures, this) {
    setModel(&model_);
    takeTyping();
    fitColumns(ReadingsModel::Read);
    if (model_.rowCount() > 0) setCurrentIndex(model_.index(0, ReadingsModel::Read));
}

}  // namespace bench
