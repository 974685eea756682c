// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/spread_table.h"

#include <QFont>
#include <array>

#include "bench/figure_words.h"
#include "bench/language.h"
#include "bench/theme.h"
#include "plots/result_words.h"
#include "spread/spread_words.h"

namespace bench {

QString yieldShare(const spread::Yield& yield) {
    if (yield.judged == 0) return QStringLiteral("–");
    return QString::fromStdString(
        spread::percentWords(static_cast<double>(yield.kept) / static_cast<double>(yield.judged)));
}

void SpreadModel::show(const SpreadFound* found, bool old) {
    beginResetModel();
    found_ = found;
    old_ = old;
    endResetModel();
}

int SpreadModel::rowCount(const QModelIndex& parent) const {
    if (parent.isValid() || found_ == nullptr) return 0;
    return static_cast<int>(found_->head.columns.size()) + (found_->summary.together ? 1 : 0);
}
int SpreadModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns;
}
bool SpreadModel::together(int row) const {
    return row == static_cast<int>(found_->head.columns.size());
}

QString SpreadModel::text(int row, int column) const {
    if (together(row))
        return column == Name   ? tr("all promises together")
               : column == Kept ? yieldShare(*found_->summary.together)
                                : QString();
    const auto k = static_cast<std::size_t>(row);
    const auto& c = found_->head.columns[k];
    const auto& sum = found_->summary.columns[k];
    const auto value = [&](double v) { return plots::shownNumber(spread::valueWords(c, v)); };
    switch (column) {
        case Name:
            return columnText(c);
        case Kept:
            return sum.yield ? yieldShare(*sum.yield) : QString();
        case Nominal:
            return c.nominal ? value(*c.nominal) : tr("none");
        case Low:
            return sum.occurs > 0 ? value(sum.quantiles[1]) : QStringLiteral("–");
        case High:
            return sum.occurs > 0 ? value(sum.quantiles[5]) : QStringLiteral("–");
        default:
            return {};
    }
}

QString SpreadModel::tip(int row) const {
    const auto lines = [](const std::vector<std::string>& all) {
        QStringList words;
        for (const auto& line : all) words << translated(line);
        return words.join(QLatin1Char('\n'));
    };
    if (together(row)) return lines({spread::yieldWords(*found_->summary.together)});
    const auto k = static_cast<std::size_t>(row);
    const auto& c = found_->head.columns[k];
    const auto& sum = found_->summary.columns[k];
    std::vector<std::string> all;
    if (sum.yield) all.push_back(spread::yieldWords(*sum.yield));
    all.push_back(spread::limitsWords(c, sum.limits));
    if (found_->head.expansion.units > 0 && found_->head.expansion.worst[k] >= 0)
        all.push_back("fields by expansion, off by at most " +
                      spread::differenceWords(c, found_->head.expansion.worst[k]) + " in the units that were checked");
    return columnText(c) + QLatin1Char('\n') + lines(all);
}

QVariant SpreadModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || found_ == nullptr || index.row() >= rowCount()) return {};
    switch (role) {
        case Qt::DisplayRole:
            return text(index.row(), index.column());
        case Qt::ToolTipRole:
            return tip(index.row());
        case Qt::ForegroundRole:
            return old_ ? QVariant(colour(Token::Muted)) : QVariant();
        case Qt::FontRole: {
            QFont font;
            font.setBold(together(index.row()));
            font.setItalic(old_);
            return font;
        }
        case Qt::TextAlignmentRole:
            return QVariant::fromValue(index.column() == Name ? Qt::AlignLeft | Qt::AlignVCenter
                                                              : Qt::AlignRight | Qt::AlignVCenter);
        default:
            return {};
    }
}

QVariant SpreadModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) return {};
    if (role == Qt::TextAlignmentRole && section > Name) return QVariant::fromValue(Qt::AlignRight | Qt::AlignVCenter);
    if (role != Qt::DisplayRole) return {};
    const std::array<QString, columns> heads{tr("promise or figure"), tr("kept"), tr("nominal"), tr("5 %"), tr("95 %")};
    return heads[static_cast<std::size_t>(section)];
}

SpreadTable::SpreadTable(QWidget* parent)
    : ResultTable(tr("Promises and figures"),
                  tr("Each with the units that keep it, and from where to where it spreads"), parent) {
    setModel(&model_);
    fitColumns(SpreadModel::Name);
    connect(selectionModel(), &QItemSelectionModel::currentChanged, this, [this](const QModelIndex& index) {
        const bool figure =
            index.isValid() && !model_.index(index.row(), SpreadModel::Nominal).data().toString().isEmpty();
        emit chosen(figure ? index.row() : -1);
    });
}

void SpreadTable::showFound(const SpreadFound* found, bool old) {
    const int row = std::max(0, currentIndex().row());
    model_.show(found, old);
    if (model_.rowCount() > 0)
        setCurrentIndex(model_.index(std::min(row, model_.rowCount() - 1), 0));
    else
        emit chosen(-1);
}

}  // namespace bench
