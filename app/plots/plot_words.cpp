// SPDX-License-Identifier: GPL-3.0-or-later
// What stands above a plot.
#include <cmath>

#include "plots/plot.h"
#include "plots/result_words.h"
#include "plots/scale.h"
#include "units/text.h"

namespace plots {

namespace {

QString numberAt(const analysis::Curve& curve, double value) {
    if (!std::isfinite(value)) return QStringLiteral("–");
    const QString number = shownNumber(units::write(curve.kind, value, 3));
    const bool bare = curve.kind == units::Kind::Number && !curve.unit.empty();
    return bare ? number + QLatin1Char(' ') + QString::fromStdString(curve.unit) : number;
}

}  // namespace

QString Plot::title() const {
    if (!trace_) return QString::fromStdString(view_.trace);
    QString title = QString::fromStdString(trace_->title);
    if (view_.curve.empty() || shown_.empty()) return title;
    return title + QStringLiteral(" · ") + QString::fromStdString(shown_.front().curve->label);
}

QString Plot::readout() const {
    if (!trace_ || !answer_) return {};
    if (!hasCursor()) return summary(*answer_, *trace_, shownNames());
    QStringList parts{QString::fromStdString(units::write(axis_.kind, cursorAt_, 3))};
    for (const Shown& s : shown_)
        parts << QString::fromStdString(s.curve->label) + QLatin1Char(' ') +
                     numberAt(*s.curve, valueAt(trace_->frequency, *s.curve, cursorAt_, axis_.logarithmic));
    if (!trace_->valid || cursorAt_ < trace_->validFrom || (trace_->validTo > 0 && cursorAt_ > trace_->validTo))
        parts << tr("outside validity: %1").arg(QString::fromStdString(trace_->why));
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
    for (const Shown& s : shown_) labels << QString::fromStdString(s.curve->label);
    return labels;
}

}  // namespace plots
