// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/cause_bars.h"

#include <QHeaderView>
#include <QPainter>
#include <algorithm>
#include <array>
#include <cmath>

#include "bench/figure_words.h"
#include "bench/language.h"
#include "bench/part_words.h"
#include "bench/theme.h"
#include "editors/labels.h"
#include "plots/result_words.h"
#include "spread/spread_words.h"

namespace bench {

namespace {}  // namespace

void CausesModel::show(const SpreadFound* found, int column, Of of) {
    beginResetModel();
    rows_.clear();
    of_ = of;
    if (found != nullptr && column >= 0 && static_cast<std::size_t>(column) < found->head.columns.size()) {
        if (of == Of::Slopes)
            addSlopes(*found, static_cast<std::size_t>(column));
        else
            addShares(*found, static_cast<std::size_t>(column));
    }
    endResetModel();
}

void CausesModel::addSlopes(const SpreadFound& found, std::size_t column) {
    if (column >= found.slopes.size()) return;
    const auto& c = found.head.columns[column];
    double longest = 0;
    for (const auto& slope : found.slopes[column]) {
        if (!std::isfinite(slope.effect) || slope.effect == 0) continue;
        longest = std::max(longest, std::abs(slope.effect));
        QString value = plots::shownNumber(spread::differenceWords(c, slope.effect));
        if (slope.effect > 0 && !value.startsWith(QLatin1Char('+'))) value.prepend(QLatin1Char('+'));
        rows_.push_back({translated(found.head.varying[slope.varying].name), value, slopeWords(found, column, slope),
                         partOf(found.head.varying[slope.varying], *found.study->variation().base),
                         slope.effect / longest});
    }
}

void CausesModel::addShares(const SpreadFound& found, std::size_t column) {
    constexpr double least = 1e-3;
    const auto& shares = found.summary.columns[column].shares;
    if (!shares.enough) return;
    const auto order = spread::rankedCauses(shares, least);
    const QString whole = columnText(found.head.columns[column]);
    for (const std::size_t k : order) {
        const auto& cause = found.summary.causes[k];
        const QString percent = editors::text(spread::percentWords(shares.share[k]));
        QStringList words{
            tr("%1 makes %2 of the variance of %3 (all that is known of its causes explains %4 of it).")
                .arg(translated(cause.name), percent, whole, editors::text(spread::percentWords(shares.explained)))};
        for (const auto& effect : cause.effects)
            words << translated(spread::varyingWords(found.head.varying[effect.drawn])) + QLatin1Char('.');
        document::Selected part;
        if (!cause.effects.empty())
            part = partOf(found.head.varying[cause.effects.front().drawn], *found.study->variation().base);
        rows_.push_back({translated(cause.name), percent, words.join(QLatin1Char(' ')), part,
                         shares.share[k] / shares.share[order.front()]});
    }
}

QString CausesModel::words(int row) const {
    return row >= 0 && row < rowCount() ? rows_[static_cast<std::size_t>(row)].words : QString();
}

document::Selected CausesModel::part(int row) const {
    return row >= 0 && row < rowCount() ? rows_[static_cast<std::size_t>(row)].part : document::Selected();
}

int CausesModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}
int CausesModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns;
}

QVariant CausesModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() >= rowCount()) return {};
    const Row& row = rows_[static_cast<std::size_t>(index.row())];
    if (role == Qt::DisplayRole)
        return index.column() == Name ? row.name : index.column() == Value ? row.value : QString();
    if (role == Qt::ToolTipRole) return row.words;
    if (role == lengthRole) return row.length;
    if (role == Qt::AccessibleTextRole) return row.name + QStringLiteral(", ") + row.value;
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(index.column() == Value ? Qt::AlignRight | Qt::AlignVCenter
                                                           : Qt::AlignLeft | Qt::AlignVCenter);
    return {};
}

QVariant CausesModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
    const bool slopes = of_ == Of::Slopes;
    const std::array<QString, columns> heads{tr("what varies"), QString(),
                                             slopes ? tr("one deviation more") : tr("of the variance")};
    return heads[static_cast<std::size_t>(section)];
}

void BarDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    QStyledItemDelegate::paint(painter, option, index);
    const double length = index.data(CausesModel::lengthRole).toDouble();
    const QRectF room = QRectF(option.rect).adjusted(4, 4, -4, -4);
    const bool chosen = option.state & QStyle::State_Selected;
    const double zero = signed_ ? room.center().x() : room.left(), whole = signed_ ? room.width() / 2 : room.width();
    const QColor ink = chosen ? option.palette.color(QPalette::HighlightedText) : colour(Token::Accent);
    const QRectF bar(std::min(zero, zero + length * whole), room.top(), std::max(1.0, std::abs(length) * whole),
                     room.height());
    // Full to the right, hatched to the left: told apart without colour.
    painter->fillRect(bar, length < 0 ? QBrush(ink, Qt::BDiagPattern) : QBrush(ink));
    painter->setPen(QPen(ink, 1));
    painter->drawRect(bar);
    if (signed_) painter->drawLine(QPointF(zero, option.rect.top()), QPointF(zero, option.rect.bottom()));
}

QSize BarDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex&) const {
    return {8 * option.fontMetrics.height(), option.fontMetrics.height()};
}

CauseBars::CauseBars(QWidget* parent)
    : ResultTable(tr("What makes it spread"), tr("Each cause as a bar, greatest first"), parent), bars_(this) {
    setModel(&model_);
    setItemDelegateForColumn(CausesModel::Bar, &bars_);
    fitColumns(CausesModel::Bar);
    setMouseTracking(true);
    connect(this, &QAbstractItemView::entered, this,
            [this](const QModelIndex& index) { emit told(model_.words(index.row())); });
    connect(selectionModel(), &QItemSelectionModel::currentChanged, this,
            [this](const QModelIndex& index) { emit told(model_.words(index.row())); });
    const auto choose = [this](const QModelIndex& index) { emit partChosen(model_.part(index.row())); };
    connect(this, &QAbstractItemView::clicked, this, choose);
    connect(this, &QAbstractItemView::activated, this, choose);
}

void CauseBars::showCauses(const SpreadFound* found, int column, CausesModel::Of of) {
    bars_.setSigned(of == CausesModel::Of::Slopes);
    model_.show(found, column, of);
    emit told({});
}

void CauseBars::leaveEvent(QEvent* event) {
    ResultTable::leaveEvent(event);
    emit told(model_.words(currentIndex().row()));
}

}  // namespace bench
