// SPDX-License-Identifier: GPL-3.0-or-later
// What was measured, over the curves that it belongs to.
#include <cmath>

#include "bench/language.h"
#include "bench/theme.h"
#include "measured/comparison.h"
#include "plots/plot.h"
#include "plots/result_words.h"
#include "plots/scale.h"
#include "units/fault.h"
#include "units/text.h"

namespace plots {

using bench::Token;

namespace {

constexpr int mostMarks = 40;  // crosses along a curve; more would be a bar

/// The measured values as a curve of the computed one's kind.
analysis::Curve asMeasured(const analysis::Curve& computed, std::vector<double> values) {
    analysis::Curve curve = computed;
    curve.y = std::move(values);
    curve.words.clear();
    curve.knownTo = std::numeric_limits<double>::infinity();
    return curve;
}

}  // namespace

void Plot::setMeasured(OverlaysPtr overlays) {
    overlays_ = std::move(overlays);
    if (answer_) drawCurves();
    if (!held_ && !zoomedByHand_) fit();
    replot(QCustomPlot::rpQueuedReplot);
    if (answer_) describe();
}

std::vector<Plot::Measured> Plot::measuredHere() const {
    std::vector<Measured> here;
    if (!overlays_ || !trace_ || !overFrequency()) return here;
    for (const auto& overlay : *overlays_) {
        if (overlay.trace != trace_->name) continue;
        for (std::size_t i = 0; i < shown_.size(); ++i) {
            const analysis::Curve& computed = *shown_[i].curve;
            if (computed.name != overlay.column) continue;
            std::vector<double> values = overlay.curve.value;
            if (overlay.relativeTo) {
                const double at = *overlay.relativeTo,
                             read = valueAt(overlay.curve.frequency, asMeasured(computed, values), at),
                             wanted = valueAt(trace_->frequency, computed, at);
                for (double& value : values)
                    value = computed.logarithmic ? value * wanted / read : value + wanted - read;
            }
            here.push_back({&overlay, i, asMeasured(computed, std::move(values))});
        }
    }
    return here;
}

void Plot::drawMeasured() {
    measured_ = measuredHere();
    measuredWords_ = distances();
    const QColor ink = bench::colour(Token::Text);
    for (const Measured& one : measured_) {
        const auto& frequency = one.overlay->curve.frequency;
        QVector<double> x, y;
        for (std::size_t k = 0; k < frequency.size(); ++k) {
            x << frequency[k];
            y << (one.curve.logarithmic && !(one.curve.y[k] > 0) ? std::nan("") : one.curve.y[k]);
        }
        QCPGraph* graph = addGraph(xAxis, shown_[one.shown].right ? yAxis2 : yAxis);
        graph->setLayer(QStringLiteral("main"));
        graph->setSelectable(QCP::stNone);
        graph->setPen(QPen(ink, 1));
        graph->setScatterStyle(QCPScatterStyle(QCPScatterStyle::ssCross, QPen(ink, 1), Qt::NoBrush, 6));
        graph->setScatterSkip(static_cast<int>(frequency.size()) / mostMarks);
        graph->setData(x, y, true);
    }
}

void Plot::widenToMeasured() {
    const QCPRange band = xAxis->range();
    for (const Measured& one : measured_) {
        QCPAxis* axis = shown_[one.shown].right ? yAxis2 : yAxis;
        QCPRange range = axis->range();
        for (std::size_t k = 0; k < one.curve.y.size(); ++k)
            if (band.contains(one.overlay->curve.frequency[k]) && std::isfinite(one.curve.y[k]) &&
                (!one.curve.logarithmic || one.curve.y[k] > 0))
                range.expand(one.curve.y[k]);
        axis->setRange(range);
    }
}

/// "; measured 13.9 dB" at a place, of the curves that belong to this one.
QString Plot::measuredAt(const analysis::Curve& curve, double place) const {
    QString words;
    for (const Measured& one : measured_) {
        if (shown_[one.shown].curve != &curve) continue;
        const double value = valueAt(one.overlay->curve.frequency, one.curve, place);
        if (std::isfinite(value)) words += tr(" (measured %1)").arg(valueText(one.curve, value));
    }
    return words;
}

/// "measured less computed, response: at most +0.42 dB at 18.0 kHz, rms 0.11 dB", a part for each curve.
QString Plot::distances() const {
    QStringList parts;
    for (const Measured& one : measured_) {
        try {
            const auto held =
                measured::comparison(one.overlay->curve, *trace_, one.overlay->column, one.overlay->relativeTo);
            if (held.inside == 0) continue;
            const bool angle = one.curve.unit == "deg";
            const auto amount = [&](double value) {
                return shownNumber(units::write(angle ? units::Kind::Angle : units::Kind::Decibel, value, 2));
            };
            const QString sign = held.largest > 0 ? QStringLiteral("+") : QString();
            parts << tr("%1 at most %2 at %3, rms %4")
                         .arg(bench::translated(one.curve.label), sign + amount(held.largest),
                              QString::fromStdString(units::write(units::Kind::Frequency, held.where, 3)),
                              amount(held.rms));
        } catch (const units::BadInput& nothing) {
            parts << bench::translated(nothing.what());
        }
    }
    return parts.isEmpty() ? QString() : tr("measured less computed: %1").arg(parts.join(QStringLiteral("; ")));
}

}  // namespace plots
