// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/plot.h"

#include <cmath>
#include <cstring>

#include "bench/theme.h"
#include "plots/band_area.h"
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
    addLayer(QStringLiteral("bands"), layer(QStringLiteral("grid")), QCustomPlot::limBelow);
    addLayer(QStringLiteral("names"), layer(QStringLiteral("main")), QCustomPlot::limAbove);
    mask_ = new MaskArea(this);
    bandArea_ = new BandArea(this);
    bandArea_->setLayer(QStringLiteral("bands"));
    labels_ = new EndLabels(this);
    labels_->setLayer(QStringLiteral("names"));
    for (QCPItemStraightLine** line : {&cursor_, &markLine_}) {
        *line = new QCPItemStraightLine(this);
        (*line)->setLayer(QStringLiteral("overlay"));
        (*line)->setSelectable(false);
        (*line)->setVisible(false);
    }
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
    markLine_->setPen(QPen(bench::colour(Token::Accent), 0, Qt::SolidLine));
    unitLeft_->setColor(muted);
    unitRight_->setColor(muted);
    selectionRect()->setPen(QPen(bench::colour(Token::Accent), 1));
    selectionRect()->setBrush(Qt::NoBrush);
    if (answer_) drawCurves();
    replot(QCustomPlot::rpQueuedReplot);
}

void Plot::setView(View view) {
    if (view == view_) return;
    view_ = std::move(view);
    trace_.reset();
    fitted_ = false;
    if (answer_) showAnswer(answer_, design_);
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
    describe();
    return !same;
}

void Plot::describe() {
    QString words = trace_ ? summary(*answer_, *trace_, shownNames()) : tr("nothing to show");
    if (traceBand() != nullptr)
        words += bandsOld_ ? tr("; an old band of 90 % of all units") : tr("; with the band of 90 % of all units");
    if (const QString measured = measuredWords(); !measured.isEmpty()) words += QStringLiteral("; ") + measured;
    setAccessibleName(title());
    setAccessibleDescription(words);
    emit wordsChanged();
}

void Plot::setBands(BandsPtr bands, bool old) {
    bands_ = std::move(bands);
    bandsOld_ = old;
    showBands();
    replot(QCustomPlot::rpQueuedReplot);
    if (answer_) describe();
}

void Plot::hold(const analysis::AnswerPtr& held) {
    held_ = held;
    drawCurves();
    if (!held_ && !zoomedByHand_) fit();
    replot(QCustomPlot::rpQueuedReplot);
    emit wordsChanged();
}

}  // namespace plots
