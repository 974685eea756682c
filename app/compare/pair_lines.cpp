// SPDX-License-Identifier: GPL-3.0-or-later
#include "compare/pair_lines.h"

#include <array>
#include <cmath>
#include <limits>

#include "bench/figure_words.h"
#include "bench/language.h"
#include "bench/theme.h"
#include "plots/result_words.h"
#include "units/text.h"

namespace compare {

namespace {

const units::Figure* same(const analysis::Answer& answer, const units::Figure& like) {
    for (const units::Figure& figure : answer.figures)
        if (figure.name == like.name && figure.hookUp == like.hookUp) return &figure;
    return nullptr;
}

QString withSign(const std::string& written, double value) {
    const QString text = plots::shownNumber(written);
    return value > 0 && !text.startsWith(QLatin1Char('+')) ? QLatin1Char('+') + text : text;
}
QString signedText(units::Kind kind, double value) {
    return withSign(units::write(kind, value, 2), value);
}

}  // namespace

std::vector<FigurePair> paired(const analysis::Answer& a, const analysis::Answer& b) {
    std::vector<FigurePair> pairs;
    for (const units::Figure& figure : a.figures) pairs.push_back({&figure, same(b, figure)});
    for (const units::Figure& figure : b.figures)
        if (!same(a, figure)) pairs.push_back({nullptr, &figure});
    return pairs;
}

QString differenceText(const FigurePair& pair) {
    if (!pair.a || !pair.b || !std::isfinite(pair.a->value) || !std::isfinite(pair.b->value)) return {};
    const double difference = pair.b->value - pair.a->value;
    if (difference == 0) return QStringLiteral("0");
    if (units::inDecibels(pair.a->unit)) {
        // A difference of two levels in dBu is in dB.
        const double hundredths = std::round(difference * 100) / 100;
        return hundredths == 0 ? QObject::tr("below 0.01 dB")
                               : withSign(units::writeExact(units::Kind::Decibel, hundredths), hundredths);
    }
    QString text = signedText(units::kindOfUnit(pair.a->unit), difference);
    if (pair.a->value != 0) {
        const double percent = 100 * difference / std::abs(pair.a->value);
        text += QStringLiteral(", ") + (std::abs(percent) < 0.1
                                            ? QObject::tr("below 0.1 %")
                                            : signedText(units::Kind::Number, percent) + QStringLiteral(" %"));
    }
    return text;
}

std::shared_ptr<const analysis::Trace> differenceTrace(const analysis::Answer& a, const analysis::Answer& b,
                                                       const std::string& name) {
    const analysis::Trace *one = a.trace(name), *other = b.trace(name);
    if (!one || !other || one->frequency != other->frequency) return nullptr;
    auto difference = std::make_shared<analysis::Trace>();
    difference->name = "difference";
    difference->title = "B − A, " + name;
    difference->hookUp = other->hookUp;
    difference->ports = other->ports;
    difference->frequency = one->frequency;
    difference->validFrom = std::max(one->validFrom, other->validFrom);
    difference->validTo = one->validTo <= 0     ? other->validTo
                          : other->validTo <= 0 ? one->validTo
                                                : std::min(one->validTo, other->validTo);
    difference->valid = one->valid && other->valid;
    difference->why = one->why.empty() ? other->why : one->why;
    difference->source = "second design's curve less the first's";
    for (const analysis::Curve& curve : other->curves) {
        const analysis::Curve* before = one->curve(curve.name);
        if (!before || before->y.size() != curve.y.size() || curve.y.empty()) continue;
        analysis::Curve less = curve;
        less.logarithmic = false;
        less.knownTo = std::numeric_limits<double>::infinity();
        for (std::size_t k = 0; k < less.y.size(); ++k)
            less.y[k] = curve.shown(curve.y[k]) - before->shown(before->y[k]);
        difference->curves.push_back(std::move(less));
    }
    return difference->curves.empty() ? nullptr : difference;
}

void PairFigures::show(analysis::AnswerPtr a, analysis::AnswerPtr b) {
    beginResetModel();
    a_ = std::move(a);
    b_ = std::move(b);
    pairs_ = a_ && b_ ? paired(*a_, *b_) : std::vector<FigurePair>{};
    endResetModel();
}

int PairFigures::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(pairs_.size());
}

int PairFigures::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns;
}

QString PairFigures::text(const FigurePair& pair, int column) const {
    switch (column) {
        case Name:
            return bench::figureText(pair.any().name);
        case A:
            return pair.a ? plots::written(*pair.a) : QString();
        case B:
            return pair.b ? plots::written(*pair.b) : QString();
        case Difference:
            return differenceText(pair);
        case HookUp:
            return QString::fromStdString(pair.any().hookUp);
        default:
            return {};
    }
}

QVariant PairFigures::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const FigurePair& pair = pairs_[static_cast<std::size_t>(index.row())];
    switch (role) {
        case Qt::DisplayRole:
            return text(pair, index.column());
        case Qt::TextAlignmentRole: {
            const bool number = index.column() == A || index.column() == B || index.column() == Difference;
            return QVariant::fromValue((number ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
        }
        case Qt::ForegroundRole: {
            const units::Figure* shown = index.column() == A ? pair.a : index.column() == B ? pair.b : nullptr;
            if (shown && !shown->valid) return bench::colour(bench::Token::Thin);
            if (index.column() == HookUp || text(pair, Difference) == QStringLiteral("0"))
                return bench::colour(bench::Token::Muted);
            return {};
        }
        case Qt::ToolTipRole: {
            const units::Figure* shown = index.column() == A ? pair.a : index.column() == B ? pair.b : nullptr;
            if (shown && !shown->valid) return tr("outside validity: %1").arg(bench::translated(shown->why));
            return QString::fromStdString(pair.any().name) + QLatin1Char('\n') + bench::translated(pair.any().source);
        }
        default:
            return {};
    }
}

QVariant PairFigures::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) return {};
    if (role == Qt::TextAlignmentRole && section >= A && section <= Difference)
        return QVariant::fromValue(Qt::AlignRight | Qt::AlignVCenter);
    if (role != Qt::DisplayRole) return {};
    const std::array<QString, columns> heads{tr("figure"), tr("A"), tr("B"), tr("B − A"), tr("hook-up")};
    return heads[static_cast<std::size_t>(section)];
}

}  // namespace compare
