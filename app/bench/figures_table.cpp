// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/figures_table.h"

#include <QHeaderView>
#include <array>

#include "bench/figure_words.h"
#include "bench/language.h"
#include "bench/theme.h"
#include "plots/result_words.h"

namespace bench {

void FiguresModel::show(const analysis::AnswerPtr& answer) {
    const auto sameRows = [&] {
        if (!answer_ || !answer || answer_->figures.size() != answer->figures.size()) return false;
        for (std::size_t i = 0; i < answer->figures.size(); ++i)
            if (answer->figures[i].name != answer_->figures[i].name) return false;
        return true;
    };
    if (sameRows()) {  // scroll position and selection stay while numbers move
        answer_ = answer;
        if (rowCount() > 0) emit dataChanged(index(0, 0), index(rowCount() - 1, columns - 1));
        return;
    }
    beginResetModel();
    answer_ = answer;
    endResetModel();
}

int FiguresModel::rowOf(const std::string& figure, const std::string& hookUp) const {
    int loose = -1;
    for (int row = 0; row < rowCount(); ++row) {
        const units::Figure& f = answer_->figures[static_cast<std::size_t>(row)];
        const bool named = f.name == figure || f.name.starts_with(figure + "@");
        if (named && (hookUp.empty() || f.hookUp.empty() || f.hookUp == hookUp)) return row;
        if (loose < 0 && f.name.starts_with(figure + ".")) loose = row;
    }
    return loose;
}

int FiguresModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() || !answer_ ? 0 : static_cast<int>(answer_->figures.size());
}

int FiguresModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns;
}

QString FiguresModel::text(const units::Figure& figure, int column) const {
    switch (column) {
        case Name:
            return figureText(figure.name);  // the hook-up has its own column
        case Value:
            return plots::written(figure);
        case Uncertainty:
            return plots::uncertaintyText(figure);
        case HookUp:
            return QString::fromStdString(figure.hookUp);
        case Remark:
            return figure.valid ? QString() : tr("outside validity: %1").arg(translated(figure.why));
        default:
            return {};
    }
}

QVariant FiguresModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || !answer_) return {};
    const units::Figure& figure = answer_->figures[static_cast<std::size_t>(index.row())];
    switch (role) {
        case Qt::DisplayRole:
            return text(figure, index.column());
        case Qt::TextAlignmentRole:
            return QVariant::fromValue(index.column() == Value ? Qt::AlignRight | Qt::AlignVCenter
                                                               : Qt::AlignLeft | Qt::AlignVCenter);
        case Qt::ForegroundRole:
            if (index.column() == Remark) return colour(Token::Thin);
            return index.column() == Uncertainty || index.column() == HookUp ? QVariant(colour(Token::Muted))
                                                                             : QVariant();
        case Qt::ToolTipRole: {
            // The key is what a brief and the command line call it.
            QString tip = figureText(figure.name) + QLatin1Char('\n') + QString::fromStdString(figure.name) +
                          QLatin1Char('\n') + translated(figure.source);
            if (!figure.why.empty()) tip += QLatin1Char('\n') + translated(figure.why);
            return tip;
        }
        default:
            return {};
    }
}

QVariant FiguresModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) return {};
    if (role == Qt::TextAlignmentRole && section == Value)
        return QVariant::fromValue(Qt::AlignRight | Qt::AlignVCenter);
    if (role != Qt::DisplayRole) return {};
    const std::array<QString, columns> heads{tr("figure"), tr("value"), tr("within"), tr("hook-up"), tr("remark")};
    return heads[static_cast<std::size_t>(section)];
}

FiguresTable::FiguresTable(QWidget* parent)
    : ResultTable(tr("Figures"), tr("Every computed number of the design, with its uncertainty"), parent) {
    setModel(&model_);
    fitColumns(FiguresModel::Remark);
    // The longest names would push the values out of sight; tips hold them whole.
    constexpr int letters = 26;
    horizontalHeader()->setSectionResizeMode(FiguresModel::Name, QHeaderView::Interactive);
    horizontalHeader()->resizeSection(FiguresModel::Name, letters * fontMetrics().averageCharWidth());
}

void FiguresTable::showAnswer(const analysis::AnswerPtr& answer) {
    model_.show(answer);
}

void FiguresTable::point(const std::string& figure, const std::string& hookUp) {
    const int row = model_.rowOf(figure, hookUp);
    if (row < 0) return;
    selectRow(row);
    scrollTo(model_.index(row, 0));
}

}  // namespace bench
