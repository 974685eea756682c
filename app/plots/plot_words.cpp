// SPDX-License-Identifier: GPL-3.0-or-later
// What stands above a plot.
#include <cmath>

#include "bench/language.h"
#include "plots/plot.h"
#include "plots/result_words.h"
#include "plots/scale.h"
#include "units/text.h"

namespace plots {

namespace {

/// Levels differ by decibels; what has a logarithmic axis is told as a ratio.
QString differenceText(const analysis::Curve& curve, double from, double to) {
    if (!std::isfinite(from) || !std::isfinite(to)) return QStringLiteral("–");
    if (from >= curve.knownTo || to >= curve.knownTo) return QStringLiteral("–");
    if (curve.logarithmic)
        return from > 0 ? QStringLiteral("× ") + shownNumber(units::write(units::Kind::Number, to / from, 3))
                        : QStringLiteral("–");
    const bool level = curve.kind == units::Kind::LevelDbu;
    const auto kind = level ? units::Kind::Decibel : curve.kind;
    const QString number = shownNumber(units::write(kind, to - from, 3));
    const QString sign = to > from && !number.startsWith(QLatin1Char('+')) ? QStringLiteral("+") : QString();
    const bool bare = kind == units::Kind::Number && !curve.unit.empty();
    return sign + (bare ? number + QLatin1Char(' ') + QString::fromStdString(curve.unit) : number);
}

}  // namespace

QString Plot::title() const {
    if (!trace_) {
        for (const analysis::TraceKind& kind : analysis::traceKinds())
            if (kind.name == view_.trace) return bench::translated(kind.title);
        return QString::fromStdString(view_.trace);
    }
    QString title = bench::translated(trace_->title);
    if (view_.curve.empty() || shown_.empty()) return title;
    return title + QStringLiteral(" · ") + bench::translated(shown_.front().curve->label);
}

QString Plot::readout() const {
    if (!answer_) return {};
    if (!trace_) return tr("nothing to show of this design and hook-up");
    if (!hasCursor() && !hasMark()) return summary(*answer_, *trace_, shownNames());
    if (hasCursor() && hasMark() && cursorAt_ != markAt_) return valuesSinceMark();
    return valuesAt(hasCursor() ? cursorAt_ : markAt_);
}

QString Plot::valuesAt(double place) const {
    QStringList parts{QString::fromStdString(units::write(axis_.kind, place, 3))};
    for (const Shown& s : shown_)
        parts << bench::translated(s.curve->label) + QLatin1Char(' ') +
                     valueText(*s.curve, valueAt(trace_->frequency, *s.curve, place, axis_.logarithmic)) +
                     measuredAt(*s.curve, place) + bandAt(*s.curve, place);
    if (!trace_->valid || place < trace_->validFrom || (trace_->validTo > 0 && place > trace_->validTo))
        parts << tr("outside validity: %1").arg(bench::translated(trace_->why));
    return parts.join(QStringLiteral("   "));
}

/// " (13.6 to 14.1 dB)": within what 90 % of all units lie.
QString Plot::bandAt(const analysis::Curve& curve, double place) const {
    const auto* band = traceBand();
    if (band == nullptr) return {};
    for (const auto& one : band->curves) {
        if (one.curve != curve.name) continue;
        analysis::Curve side = curve;
        side.y = one.low;
        const double low = valueAt(band->at, side, place, axis_.logarithmic);
        side.y = one.high;
        const double high = valueAt(band->at, side, place, axis_.logarithmic);
        if (!std::isfinite(low) || !std::isfinite(high)) return {};
        return (bandsOld_ ? tr(" (old band %1 to %2)") : tr(" (units %1 to %2)"))
            .arg(valueText(side, low), valueText(side, high));
    }
    return {};
}

/// "100 Hz → 1 kHz   response +0.3 dB   source side × 2.1": what changes from the mark to the cursor.
QString Plot::valuesSinceMark() const {
    QStringList parts{change(QString::fromStdString(units::write(axis_.kind, markAt_, 3)),
                             QString::fromStdString(units::write(axis_.kind, cursorAt_, 3)))};
    for (const Shown& s : shown_) {
        const double from = valueAt(trace_->frequency, *s.curve, markAt_, axis_.logarithmic),
                     to = valueAt(trace_->frequency, *s.curve, cursorAt_, axis_.logarithmic);
        parts << bench::translated(s.curve->label) + QLatin1Char(' ') + differenceText(*s.curve, from, to);
    }
    return parts.join(QStringLiteral("   "));
}

QString Plot::difference() const {
    if (!held_ || !answer_ || !trace_) return {};
    return plots::difference(*held_, *answer_, view_.trace, shownNames(), xAxis->range());
}

std::vector<std::string> Plot::shownNames() const {
    std::vector<std::string> names;
    for (const Shown& s : shown_) names.push_back(s.curve->name);
    return names;
}

QStringList Plot::shownCurves() const {
    QStringList labels;
    for (const Shown& s : shown_) labels << bench::translated(s.curve->label);
    return labels;
}

}  // namespace plots
