// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/promise_strip.h"

#include <array>
#include <cmath>

#include "bench/figure_words.h"
#include "bench/language.h"
#include "bench/spread_table.h"
#include "bench/standing_mark.h"
#include "bench/theme.h"
#include "plots/result_words.h"
#include "spread/spread_words.h"
#include "units/text.h"

namespace bench {

namespace {

QString number(units::Kind kind, double value, bool sign) {
    if (!std::isfinite(value)) return QStringLiteral("–");
    QString text = plots::shownNumber(units::write(kind, value, 3));
    if (sign && value > 0 && !text.startsWith(QLatin1Char('+'))) text.prepend(QLatin1Char('+'));
    return text;
}

}  // namespace

void PromisesModel::show(const analysis::AnswerPtr& answer) {
    beginResetModel();
    answer_ = answer;
    endResetModel();
}

const analysis::PromiseState* PromisesModel::promise(int row) const {
    if (row < 0 || row >= promises()) return nullptr;
    return &answer_->promises[static_cast<std::size_t>(row)];
}

int PromisesModel::rowCount(const QModelIndex& parent) const {
    if (parent.isValid()) return 0;
    return promises() + (found_ && found_->summary.together && promises() > 0 ? 1 : 0);
}

void PromisesModel::showSpread(std::shared_ptr<const SpreadFound> found, bool old) {
    beginResetModel();
    found_ = std::move(found);
    old_ = old;
    endResetModel();
}

/// Of the promise in that row, or of all together; null where it was not judged.
const spread::Yield* PromisesModel::yield(int row) const {
    if (!found_) return nullptr;
    const auto* state = promise(row);
    if (state == nullptr) return found_->summary.together ? &*found_->summary.together : nullptr;
    for (std::size_t k = 0; k < found_->head.columns.size(); ++k) {
        const auto& column = found_->head.columns[k];
        if (column.promise == state->index && column.mask == state->mask && found_->summary.columns[k].yield)
            return &*found_->summary.columns[k].yield;
    }
    return nullptr;
}

QVariant PromisesModel::yieldData(int row, int role) const {
    const auto* found = yield(row);
    switch (role) {
        case Qt::DisplayRole:
            return found ? yieldShare(*found) : QStringLiteral("–");
        case Qt::ForegroundRole:
            return old_ ? QVariant(colour(Token::Muted)) : QVariant();
        case Qt::FontRole: {
            QFont font;
            font.setItalic(old_);
            return font;
        }
        case Qt::TextAlignmentRole:
            return QVariant::fromValue(Qt::AlignRight | Qt::AlignVCenter);
        case Qt::AccessibleTextRole:
        case Qt::ToolTipRole: {
            if (!found) return tr("not judged");
            const QString words = translated(spread::yieldWords(*found));
            return old_ ? tr("old, of a design before: %1").arg(words) : words;
        }
        default:
            return {};
    }
}

QVariant PromisesModel::together(int column, int role) const {
    if (column == Yield) return yieldData(promises(), role);
    if (column == Limit && role == Qt::DisplayRole) return tr("all promises together");
    if (role == Qt::FontRole) {
        QFont font;
        font.setBold(true);
        return font;
    }
    return {};
}

int PromisesModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns;
}

QVariant PromisesModel::data(const QModelIndex& index, int role) const {
    const analysis::PromiseState* promise = this->promise(index.row());
    if (!promise) return index.row() < rowCount() ? together(index.column(), role) : QVariant();
    if (index.column() == Yield) return yieldData(index.row(), role);
    const bool known = promise->standing != analysis::Standing::Unknown;
    switch (role) {
        case Qt::DisplayRole:
            switch (index.column()) {
                case Standing: {
                    const std::string_view word = analysis::word(promise->standing);
                    return translated(std::string(word));
                }
                case Limit:
                    return promiseText(promise->text);
                case Now:
                    return known ? number(promise->kind, promise->now, false) : QStringLiteral("–");
                case Margin:
                    return known ? number(promise->kind, promise->margin, true) : QStringLiteral("–");
                default:
                    return {};
            }
        case Qt::DecorationRole:
            return index.column() == Standing ? QVariant(standingMark(promise->standing, 14)) : QVariant();
        case Qt::ForegroundRole:
            return index.column() == Standing ? QVariant(standingColour(promise->standing)) : QVariant();
        case Qt::TextAlignmentRole:
            return QVariant::fromValue(index.column() >= Now ? Qt::AlignRight | Qt::AlignVCenter
                                                             : Qt::AlignLeft | Qt::AlignVCenter);
        case Qt::ToolTipRole:
            // The key is what a brief and the command line call it.
            return promiseText(promise->text) + QLatin1Char('\n') + QString::fromStdString(promise->figure) +
                   (promise->why.empty() ? QString() : QLatin1Char('\n') + translated(promise->why));
        default:
            return {};
    }
}

QVariant PromisesModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) return {};
    if (role == Qt::TextAlignmentRole && section >= Now) return QVariant::fromValue(Qt::AlignRight | Qt::AlignVCenter);
    if (role != Qt::DisplayRole) return {};
    const std::array<QString, columns> heads{tr("promise"), tr("limit"), tr("now"), tr("margin"), tr("units")};
    return heads[static_cast<std::size_t>(section)];
}

PromiseStrip::PromiseStrip(QWidget* parent)
    : ResultTable(tr("Promises"), tr("Each line of the brief with its limit, the value now and the margin"), parent) {
    setModel(&model_);
    setIconSize({14, 14});
    fitColumns(PromisesModel::Limit);
    setColumnHidden(PromisesModel::Yield, true);
    const auto point = [this](const QModelIndex& index) {
        if (const analysis::PromiseState* promise = model_.promise(index.row())) emit pointed(*promise);
    };
    connect(this, &QAbstractItemView::clicked, this, point);
    connect(this, &QAbstractItemView::activated, this, point);
}

void PromiseStrip::showAnswer(const analysis::AnswerPtr& answer) {
    const int row = currentIndex().row();
    model_.show(answer);
    if (row >= 0 && row < model_.rowCount()) setCurrentIndex(model_.index(row, 0));
    int broken = 0;
    for (const analysis::PromiseState& p : answer->promises) broken += p.standing == analysis::Standing::Broken ? 1 : 0;
    const int count = static_cast<int>(answer->promises.size());
    setAccessibleDescription(tr("%n promise(s), ", nullptr, count) + tr("%n broken", nullptr, broken));
}

void PromiseStrip::showSpread(std::shared_ptr<const SpreadFound> found, bool old) {
    const int row = currentIndex().row();
    model_.showSpread(std::move(found), old);
    setColumnHidden(PromisesModel::Yield, !model_.hasYields());
    if (row >= 0 && row < model_.rowCount()) setCurrentIndex(model_.index(row, 0));
}

}  // namespace bench
