// SPDX-License-Identifier: GPL-3.0-or-later
// What the hand does to a plot: cursor, zoom, fit, keys.
#include <cmath>

#include "plots/plot.h"
#include "plots/scale.h"

namespace plots {

namespace {
constexpr int smallestZoom = 8;  // pixels; less is a click
constexpr double stepsPerDecade = 50;
constexpr double nowhere = std::numeric_limits<double>::quiet_NaN();
}  // namespace

void Plot::placeCursor(double frequency) {
    if (overFrequency()) moveCursor(frequency > 0 ? frequency : nowhere);
}

void Plot::placeMark(double frequency) {
    if (overFrequency()) moveMark(frequency > 0 ? frequency : nowhere);
}

void Plot::stand(QCPItemStraightLine* line, double place) {
    line->setVisible(std::isfinite(place));
    if (std::isfinite(place)) {
        line->point1->setCoords(place, yAxis->range().lower);
        line->point2->setCoords(place, yAxis->range().upper);
    }
    layer(QStringLiteral("overlay"))->replot();
    emit wordsChanged();
}

void Plot::moveCursor(double place) {
    if (place == cursorAt_ || (!std::isfinite(place) && !hasCursor())) return;
    cursorAt_ = place;
    stand(cursor_, place);
}

void Plot::moveMark(double place) {
    if (place == markAt_ || (!std::isfinite(place) && !hasMark())) return;
    markAt_ = place;
    stand(markLine_, place);
}

/// To every plot that has this axis.
void Plot::askCursor(double place) {
    if (overFrequency())
        emit cursorAsked(std::isfinite(place) ? place : 0);
    else
        moveCursor(place);
}

/// Where the cursor stands; away if it stands there already, or there is no cursor.
void Plot::toggleMark() {
    const double place = cursorAt_ == markAt_ ? nowhere : cursorAt_;
    if (overFrequency())
        emit markAsked(std::isfinite(place) ? place : 0);
    else
        moveMark(place);
}

Plot::Zoom Plot::zoom() const {
    return {band_, xAxis->range(), yAxis->range(), yAxis2->range(), zoomedByHand_, view_.trace};
}

void Plot::setZoom(const Zoom& zoom) {
    band_ = zoom.band;
    if (overFrequency()) xAxis->setRange(band_);
    if (zoom.trace == view_.trace) {
        xAxis->setRange(zoom.x);
        yAxis->setRange(zoom.left);
        yAxis2->setRange(zoom.right);
        zoomedByHand_ = zoom.byHand;
    }
    replot(QCustomPlot::rpQueuedReplot);
}

void Plot::showBand(const QCPRange& band) {
    band_ = band;
    if (!overFrequency() || band == xAxis->range()) return;
    xAxis->setRange(band);
    replot(QCustomPlot::rpQueuedReplot);
}

void Plot::fit() {
    if (!trace_ || shown_.empty()) return;
    std::vector<const analysis::Curve*> left, right;
    for (const Shown& s : shown_) (s.right ? right : left).push_back(s.curve);
    if (!overFrequency() && trace_->frequency.size() > 1)
        xAxis->setRange(trace_->frequency.front(), trace_->frequency.back());
    const QCPRange band = xAxis->range();
    if (!left.empty()) yAxis->setRange(roundRange(*trace_, left, band.lower, band.upper));
    if (!right.empty()) yAxis2->setRange(roundRange(*trace_, right, band.lower, band.upper));
    widenToMeasured();
    fitted_ = true;
    zoomedByHand_ = false;
    replot(QCustomPlot::rpQueuedReplot);
}

void Plot::zoomTo(const QRect& rect) {
    if (rect.width() < smallestZoom && rect.height() < smallestZoom) return;
    emit aboutToZoom();
    if (rect.height() >= smallestZoom) {
        for (QCPAxis* axis : {yAxis, yAxis2})
            axis->setRange(axis->pixelToCoord(rect.bottom()), axis->pixelToCoord(rect.top()));
        zoomedByHand_ = true;
    }
    replot(QCustomPlot::rpQueuedReplot);
    if (rect.width() < smallestZoom) return;
    if (!overFrequency()) {
        xAxis->setRange(xAxis->pixelToCoord(rect.left()), xAxis->pixelToCoord(rect.right()));
        zoomedByHand_ = true;
        return;
    }
    emit bandAsked(
        {std::max(xAxis->pixelToCoord(rect.left()), 1e-3), std::min(xAxis->pixelToCoord(rect.right()), 1e9)});
}

void Plot::mouseMoveEvent(QMouseEvent* event) {
    QCustomPlot::mouseMoveEvent(event);
    if (event->buttons() != Qt::NoButton || !axisRect()->rect().contains(event->pos())) return;
    askCursor(xAxis->pixelToCoord(event->position().x()));
}

void Plot::mouseDoubleClickEvent(QMouseEvent*) {
    emit fitAsked();
}

void Plot::leaveEvent(QEvent* event) {
    QCustomPlot::leaveEvent(event);
    if (!hasFocus()) askCursor(nowhere);
}

/// Arrows, Home and End. False: another key.
bool Plot::moveByKey(const QKeyEvent& event) {
    const int key = event.key(), direction = key == Qt::Key_Right ? 1 : key == Qt::Key_Left ? -1 : 0;
    const QCPRange band = xAxis->range();
    if (key == Qt::Key_Home || key == Qt::Key_End) {
        askCursor(key == Qt::Key_Home ? band.lower : band.upper);
        return true;
    }
    if (direction == 0) return false;
    const int steps = direction * (event.modifiers() & Qt::ShiftModifier ? 10 : 1);
    double to = 0;
    if (overFrequency())
        to = (hasCursor() ? cursorAt_ : std::sqrt(band.lower * band.upper)) * std::pow(10, steps / stepsPerDecade);
    else
        to = (hasCursor() ? cursorAt_ : band.center()) + steps * band.size() / 100;
    askCursor(std::clamp(to, band.lower, band.upper));
    return true;
}

void Plot::keyPressEvent(QKeyEvent* event) {
    if (moveByKey(*event)) return;
    switch (event->key()) {
        case Qt::Key_M:
            return toggleMark();
        case Qt::Key_Backspace:
            return void(emit backAsked());
        case Qt::Key_0:
            return void(emit fitAsked());
        case Qt::Key_Return:
        case Qt::Key_Enter:
            return void(emit aloneAsked());
        case Qt::Key_Escape:
            if (hasCursor()) return askCursor(nowhere);
            if (hasMark()) return toggleMark();
            break;
        default:
            break;
    }
    QCustomPlot::keyPressEvent(event);
}

void Plot::changeEvent(QEvent* event) {
    QCustomPlot::changeEvent(event);
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) recolour();
}

void Plot::resizeEvent(QResizeEvent* event) {
    // The window may have moved to a screen with another scale; the plot keeps its buffers' scale by itself otherwise.
    if (bufferDevicePixelRatio() != devicePixelRatioF()) setBufferDevicePixelRatio(devicePixelRatioF());
    QCustomPlot::resizeEvent(event);
}

}  // namespace plots
