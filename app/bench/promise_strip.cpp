// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/promise_strip.h"

#include <array>
#include <cmath>

#include "bench/standing_mark.h"
#include "plots/result_words.h"
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
    if (!answer_ || row < 0 || row >= rowCount()) return nullptr;
    return &answer_->promises[static_cast<std::size_t>(row)];
}

int PromisesModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() || !answer_ ? 0 : static_cast<int>(answer_->promises.size());
}

int PromisesModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns;
}

QVariant PromisesModel::data(const QModelIndex& index, int role) const {
    const analysis::PromiseState* promise = this->promise(index.row());
    if (!promise) return {};
    const bool known = promise->standing != analysis::Standing::Unknown;
    switch (role) {
        case Qt::DisplayRole:
            switch (index.column()) {
                case Standing: {
                    const std::string_view word = analysis::word(promise->standing);
                    return QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
                }
                case Limit:
                    return QString::fromStdString(promise->text);
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
            return QString::fromStdString(promise->why.empty() ? promise->text : promise->text + "\n" + promise->why);
        default:
            return {};
    }
}

QVariant PromisesModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) return {};
    if (role == Qt::TextAlignmentRole && section >= Now) return QVariant::fromValue(Qt::AlignRight | Qt::AlignVCenter);
    if (role != Qt::DisplayRole) return {};
    const std::array<QString, columns> heads{tr("promise"), tr("limit"), tr("now"), tr("margin")};
    return heads[static_cast<std::size_t>(section)];
}

PromiseStrip::PromiseStrip(QWidget* parent)
    : ResultTable(tr("Promises"), tr("Each line of the brief with its limit, the value now and the margin"), parent) {
    setModel(&model_);
    setIconSize({14, 14});
    fitColumns(PromisesModel::Limit);
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
    setAccessibleDescription(tr("%n promise(s), ", nullptr, model_.rowCount()) + tr("%n broken", nullptr, broken));
}

}  // namespace bench
