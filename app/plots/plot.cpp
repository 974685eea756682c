// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/plot.h"

#include <array>
#include <cmath>
#include <cstring>

#include "bench/theme.h"
#include "plots/plot_items.h"
#include "plots/result_words.h"
#include "plots/scale.h"

namespace plots {

using bench::Token;

namespace {

QFont smaller(const QFont& font) {
    QFont small = font;
    if (font.pointSizeF() > 0)
        small.setPointSizeF(std::max(6.0, font.pointSizeF() - 1));
    else
        small.setPixelSize(std::max(8, font.pixelSize() - 1));
    return small;
}

/// Bit for bit, so that values that are not known count as the same.
bool sameValues(const std::vector<double>& a, const std::vector<double>& b) {
    return a.size() == b.size() && (a.empty() || std::memcmp(a.data(), b.data(), a.size() * sizeof(double)) == 0);
}

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

bool sameCurves(const analysis::Trace& a, const analysis::Trace& b) {
    if (a.axis != b.axis || a.frequency != b.frequency || a.curves.size() != b.curves.size() || a.valid != b.valid ||
        a.validFrom != b.validFrom || a.validTo != b.validTo || a.hookUp != b.hookUp)
        return false;
    for (std::size_t i = 0; i < a.curves.size(); ++i)
        if (a.curves[i].name != b.curves[i].name || !sameValues(a.curves[i].y, b.curves[i].y) ||
            a.curves[i].words != b.curves[i].words)
            return false;
    return true;
}

}  // namespace

std::shared_ptr<const analysis::Trace> traceOf(const analysis::Answer& answer, const std::string& name) {
    for (const auto& trace : answer.traces)
        if (trace->name == name) return trace;
    return nullptr;
}

Plot::Plot(View view, QWidget* parent) : QCustomPlot(parent), view_(std::move(view)) {
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setNoAntialiasingOnDrag(true);
    setPlottingHint(QCP::phFastPolylines, true);
    build();
    recolour();
}

void Plot::build() {
    addLayer(QStringLiteral("held"), layer(QStringLiteral("main")), QCustomPlot::limBelow);
    addLayer(QStringLiteral("names"), layer(QStringLiteral("main")), QCustomPlot::limAbove);
    mask_ = new MaskArea(this);
    labels_ = new EndLabels(this);
    labels_->setLayer(QStringLiteral("names"));
    cursor_ = new QCPItemStraightLine(this);
    cursor_->setLayer(QStringLiteral("overlay"));
    cursor_->setSelectable(false);
    cursor_->setVisible(false);
    for (QCPItemText** text : {&unitLeft_, &unitRight_}) {
        *text = new QCPItemText(this);
        (*text)->setSelectable(false);
        (*text)->setClipToAxisRect(false);
        (*text)->position->setType(QCPItemPosition::ptAxisRectRatio);
        (*text)->setLayer(QStringLiteral("names"));
    }
    unitLeft_->position->setCoords(0, 0);
    unitLeft_->setPositionAlignment(Qt::AlignLeft | Qt::AlignBottom);
    unitRight_->position->setCoords(1, 0);
    unitRight_->setPositionAlignment(Qt::AlignRight | Qt::AlignBottom);
    xAxis->setScaleType(QCPAxis::stLogarithmic);
    xAxis->setTicker(QSharedPointer<PrefixedLogTicker>::create());
    band_ = {frequencyLow, frequencyHigh};
    xAxis->setRange(band_);
    xAxis->setLabel(tr("frequency, Hz"));
    for (QCPAxis* axis : {xAxis, yAxis, yAxis2}) {
        axis->setSubTicks(axis == xAxis);
        axis->setTickLengthIn(0);
        axis->setTickLengthOut(4);
        axis->setSubTickLength(0, 2);
        axis->setTickLabelPadding(3);
        axis->setLabelPadding(0);
    }
    axisRect()->setAutoMargins(QCP::msNone);
    setSelectionRectMode(QCP::srmCustom);
    connect(selectionRect(), &QCPSelectionRect::accepted, this, [this](const QRect& rect) { zoomTo(rect); });
}

void Plot::axisFonts() {
    const QFont small = smaller(font());
    for (QCPAxis* axis : {xAxis, yAxis, yAxis2}) {
        axis->setTickLabelFont(small);
        axis->setLabelFont(small);
    }
    unitLeft_->setFont(small);
    unitRight_->setFont(small);
    const QFontMetrics metrics(small);
    // The same margins in every plot, so that one frequency stands at one place in a column of plots.
    const int side = metrics.horizontalAdvance(tr("maximum")) + 10;
    axisRect()->setMargins({side, metrics.height() + 4, side, 2 * metrics.height() + 10});
}

void Plot::recolour() {
    axisFonts();
    const QColor base = bench::colour(Token::Base), line = bench::colour(Token::Line),
                 muted = bench::colour(Token::Muted);
    setBackground(QBrush(base));
    for (QCPAxis* axis : {xAxis, yAxis, yAxis2}) {
        axis->setBasePen(QPen(line, 1));
        axis->setTickPen(QPen(line, 1));
        axis->setSubTickPen(QPen(line, 1));
        axis->setTickLabelColor(muted);
        axis->setLabelColor(muted);
        axis->grid()->setPen(QPen(bench::mixed(base, line, 0.2), 1));
        axis->grid()->setZeroLinePen(QPen(bench::mixed(base, line, 0.5), 1));
        axis->grid()->setSubGridVisible(false);
    }
    cursor_->setPen(QPen(bench::colour(Token::Text), 0, Qt::DashLine));
    unitLeft_->setColor(muted);
    unitRight_->setColor(muted);
    selectionRect()->setPen(QPen(bench::colour(Token::Accent), 1));
    selectionRect()->setBrush(Qt::NoBrush);
    if (answer_) drawCurves();
    replot(QCustomPlot::rpQueuedReplot);
}

QColor Plot::hue(std::size_t index) const {
    return bench::windingColour(static_cast<int>(index));
}

void Plot::setView(View view) {
    if (view == view_) return;
    view_ = std::move(view);
    trace_.reset();
    fitted_ = false;
    if (answer_) showAnswer(answer_, design_);
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

bool Plot::showAnswer(const analysis::AnswerPtr& answer, const design::DesignPtr& design) {
    const std::shared_ptr<const analysis::Trace> next = answer ? traceOf(*answer, view_.trace) : nullptr;
    std::vector<design::MaskPoint> points;
    if (design && next)
        for (const design::Mask& mask : design->brief.masks) {
            const std::string& hookUp =
                mask.hookUp.empty() && !design->hookUps.empty() ? design->hookUps.front().name : mask.hookUp;
            if (mask.trace != view_.trace || hookUp != next->hookUp) continue;
            if (!points.empty()) points.push_back({});  // a gap between two masks
            points.insert(points.end(), mask.points.begin(), mask.points.end());
        }
    const bool same = trace_ && next && points == maskPoints_ && (next == trace_ || sameCurves(*next, *trace_));
    answer_ = answer;
    design_ = design;
    if (!same) {
        trace_ = next;
        maskPoints_ = std::move(points);
        drawCurves();
        if (!fitted_ || (!held_ && !zoomedByHand_)) fit();
        replot(QCustomPlot::rpQueuedReplot);
    }
    const QString words = trace_ ? summary(*answer_, *trace_, shownNames()) : tr("nothing to show");
    setAccessibleName(title());
    setAccessibleDescription(words);
    emit wordsChanged();
    return !same;
}

void Plot::drawCurves() {
    clearGraphs();
    shown_.clear();
    setAxis();
    if (!trace_) return labels_->show({});
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
    showMasks();
    showLabels();
}

void Plot::setAxis() {
    const analysis::Axis axis = trace_ ? trace_->axis : analysis::Axis{};
    if (axis != axis_) {
        axis_ = axis;
        cursorAt_ = std::numeric_limits<double>::quiet_NaN();
        cursor_->setVisible(false);
        xAxis->setScaleType(axis.logarithmic ? QCPAxis::stLogarithmic : QCPAxis::stLinear);
        if (axis.logarithmic)
            xAxis->setTicker(QSharedPointer<PrefixedLogTicker>::create());
        else
            xAxis->setTicker(QSharedPointer<PlainTicker>::create(takesPrefix(axis.unit)));
        const QString label = QString::fromStdString(axis.label);
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
            const double f = trace.frequency[k], y = curve.logarithmic && curve.y[k] <= 0 ? gap : curve.y[k];
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

void Plot::showLabels() {
    std::vector<EndLabels::Label> labels;
    for (std::size_t i = 0; i < shown_.size(); ++i)
        labels.push_back({QString::fromStdString(shown_[i].curve->label), hue(i), shown_[i].right ? yAxis2 : yAxis,
                          trace_->frequency, shown_[i].curve->y});
    labels_->show(std::move(labels));
}

void Plot::hold(const analysis::AnswerPtr& held) {
    held_ = held;
    drawCurves();
    if (!held_ && !zoomedByHand_) fit();
    replot(QCustomPlot::rpQueuedReplot);
    emit wordsChanged();
}

}  // namespace plots
