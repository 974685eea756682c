// SPDX-License-Identifier: GPL-3.0-or-later
// The curves of a plot: which, on which axis, in which stroke, with what names.
#include <array>
#include <cmath>

#include "bench/language.h"
#include "bench/theme.h"
#include "plots/band_area.h"
#include "plots/plot.h"
#include "plots/plot_items.h"
#include "plots/scale.h"

namespace plots {

using bench::Token;

namespace {

/// How a stroke is broken; empty: not at all. Curves differ in it as well as in hue, so that they are told apart in
/// grey. Outside validity the same stroke is drawn with wide gaps, a held curve with short dashes throughout.
enum class Stroke { Inside, Outside, Held };
QVector<qreal> dashes(std::size_t index, Stroke stroke) {
    static const std::array<QVector<qreal>, 4> inside{{{}, {12, 3, 2, 3}, {3, 2}, {12, 3, 2, 3, 2, 3}}},
        outside{{{8, 5}, {8, 6, 2, 6}, {3, 6}, {8, 6, 2, 6, 2, 6}}};
    if (stroke == Stroke::Held) return {4, 3};
    return (stroke == Stroke::Inside ? inside : outside)[index % inside.size()];
}

QPen penOf(const QColor& colour, std::size_t index, Stroke stroke) {
    QPen pen(colour, 1);
    if (const auto pattern = dashes(index, stroke); !pattern.isEmpty()) pen.setDashPattern(pattern);
    return pen;
}

}  // namespace

QColor Plot::hue(std::size_t index) const {
    return bench::windingColour(static_cast<int>(index));
}

std::vector<Plot::Shown> Plot::choose(const analysis::Trace& trace) const {
    std::vector<Shown> chosen;
    std::string unit;
    for (const analysis::Curve& curve : trace.curves) {
        if (curve.y.empty()) continue;
        if (!view_.curve.empty() && curve.name != view_.curve) continue;
        if (unit.empty()) unit = curve.unit;
        if (curve.unit == unit) chosen.push_back({&curve, false});
    }
    for (const analysis::Curve& curve : trace.curves)
        if (!view_.rightUnit.empty() && curve.unit == view_.rightUnit && !curve.y.empty())
            chosen.push_back({&curve, true});
    return chosen;
}

void Plot::drawCurves() {
    clearGraphs();
    shown_.clear();
    measured_.clear();
    measuredWords_.clear();
    setAxis();
    if (!trace_) {
        showBands();
        return labels_->show({});
    }
    shown_ = choose(*trace_);
    const auto right = std::find_if(shown_.begin(), shown_.end(), [](const Shown& s) { return s.right; });
    setScale(yAxis, shown_.empty() ? nullptr : shown_.front().curve);
    setScale(yAxis2, right == shown_.end() ? nullptr : right->curve);
    yAxis2->setVisible(right != shown_.end());
    yAxis2->grid()->setVisible(false);
    // Two axes in one plot: the right one's numbers have its curve's colour.
    yAxis2->setTickLabelColor(hue(static_cast<std::size_t>(right - shown_.begin())));
    if (held_)
        if (const auto before = traceOf(*held_, view_.trace)) fill(*before, choose(*before), true);
    fill(*trace_, shown_, false);
    drawMeasured();
    showMasks();
    showBands();
    showLabels();
}

void Plot::setAxis() {
    const analysis::Axis axis = trace_ ? trace_->axis : analysis::Axis{};
    if (axis != axis_) {
        axis_ = axis;
        for (double* place : {&cursorAt_, &markAt_}) *place = std::numeric_limits<double>::quiet_NaN();
        cursor_->setVisible(false);
        markLine_->setVisible(false);
        xAxis->setScaleType(axis.logarithmic ? QCPAxis::stLogarithmic : QCPAxis::stLinear);
        if (axis.logarithmic)
            xAxis->setTicker(QSharedPointer<PrefixedLogTicker>::create());
        else
            xAxis->setTicker(QSharedPointer<PlainTicker>::create(takesPrefix(axis.unit)));
        const QString label = bench::translated(axis.label);
        xAxis->setLabel(axis.unit.empty() ? label : label + QStringLiteral(", ") + unitText(axis.unit));
        fitted_ = false;
        if (overFrequency()) xAxis->setRange(band_);
    }
}

void Plot::setScale(QCPAxis* axis, const analysis::Curve* curve) {
    QCPItemText* unit = axis == yAxis ? unitLeft_ : unitRight_;
    unit->setText(curve ? unitText(curve->unit) : QString());
    unit->setVisible(curve != nullptr && !curve->unit.empty());
    if (!curve) return;
    axis->setScaleType(curve->logarithmic ? QCPAxis::stLogarithmic : QCPAxis::stLinear);
    if (curve->logarithmic)
        axis->setTicker(QSharedPointer<PrefixedLogTicker>::create(takesPrefix(curve->unit)));
    else if (curve->unit == "deg")
        axis->setTicker(QSharedPointer<DegreeTicker>::create());
    else
        axis->setTicker(QSharedPointer<PlainTicker>::create(takesPrefix(curve->unit)));
}

void Plot::fill(const analysis::Trace& trace, const std::vector<Shown>& shown, bool held) {
    const double gap = std::numeric_limits<double>::quiet_NaN();
    for (std::size_t i = 0; i < shown.size(); ++i) {
        const analysis::Curve& curve = *shown[i].curve;
        QVector<double> inside, outside;
        for (std::size_t k = 0; k < curve.y.size(); ++k) {
            const double f = trace.frequency[k],
                         y = curve.logarithmic && curve.y[k] <= 0 ? gap : curve.shown(curve.y[k]);
            const bool good =
                held || (trace.valid && f >= trace.validFrom && (trace.validTo <= 0 || f <= trace.validTo));
            inside << (good ? y : gap);
            outside << (good ? gap : y);
        }
        const QVector<double> frequency(trace.frequency.begin(), trace.frequency.end());
        QCPAxis* axis = shown[i].right ? yAxis2 : yAxis;
        const auto add = [&](const QVector<double>& y, const QPen& pen) {
            QCPGraph* graph = addGraph(xAxis, axis);
            graph->setLayer(held ? QStringLiteral("held") : QStringLiteral("main"));
            graph->setSelectable(QCP::stNone);
            graph->setPen(pen);
            graph->setData(frequency, y, true);
        };
        if (held) {
            add(inside, penOf(bench::mixed(hue(i), bench::colour(Token::Base), 0.4), i, Stroke::Held));
            continue;
        }
        add(inside, penOf(hue(i), i, Stroke::Inside));
        if (std::any_of(outside.begin(), outside.end(), [](double y) { return std::isfinite(y); }))
            add(outside, penOf(hue(i), i, Stroke::Outside));
    }
}

void Plot::showMasks() {
    double offset = 0;
    if (view_.trace == "response" && !shown_.empty()) {
        offset = valueAt(trace_->frequency, *shown_.front().curve, 1000);
        if (!std::isfinite(offset)) offset = 0;
    }
    const bool applies = overFrequency() && !shown_.empty() && !trace_->curves.empty() &&
                         shown_.front().curve == &trace_->curves.front();
    mask_->show(applies ? maskPoints_ : std::vector<design::MaskPoint>{}, offset);
}

const spread::TraceBand* Plot::traceBand() const {
    if (!bands_ || !trace_) return nullptr;
    for (const auto& band : *bands_)
        if (band.trace == trace_->name && band.hookUp == trace_->hookUp && band.axis == trace_->axis &&
            !band.curves.empty())
            return &band;
    return nullptr;
}

void Plot::showBands() {
    std::vector<BandArea::Band> areas;
    if (const auto* band = traceBand())
        for (std::size_t i = 0; i < shown_.size(); ++i)
            for (const auto& curve : band->curves) {
                if (curve.curve != shown_[i].curve->name) continue;
                BandArea::Band area{hue(i), shown_[i].right ? yAxis2 : yAxis, band->at, curve.low, curve.high};
                if (shown_[i].curve->logarithmic)
                    for (std::size_t k = 0; k < area.at.size(); ++k)
                        if (!(area.low[k] > 0)) area.low[k] = std::numeric_limits<double>::quiet_NaN();
                areas.push_back(std::move(area));
            }
    bandArea_->show(std::move(areas), bandsOld_);
}

void Plot::showLabels() {
    std::vector<EndLabels::Label> labels;
    for (std::size_t i = 0; i < shown_.size(); ++i) {
        const analysis::Curve& curve = *shown_[i].curve;
        std::vector<double> y = curve.y;
        for (double& value : y) value = curve.shown(value);
        labels.push_back({bench::translated(curve.label), hue(i), shown_[i].right ? yAxis2 : yAxis, trace_->frequency,
                          std::move(y)});
    }
    labels_->show(std::move(labels));
}

}  // namespace plots
