// SPDX-License-Identifier: GPL-3.0-or-later
// What the hand does to a plot: cursor, zoom, fit, keys.
#include <cmath>

#include "plots/plot.h"
#include "plots/scale.h"

namespace plots {

namespace {
constexpr int smallestZoom = 8;  // pixels; less is a click
constexpr double stepsPerDecade = 50;
}  // namespace

void Plot::placeCursor(double frequency) {
    if (overFrequency()) moveCursor(frequency > 0 ? frequency : std::numeric_limits<double>::quiet_NaN());
}

void Plot::moveCursor(double place) {
    if (place == cursorAt_ || (!std::isfinite(place) && !hasCursor())) return;
    cursorAt_ = place;
    cursor_->setVisible(hasCursor());
    if (hasCursor()) {
        cursor_->point1->setCoords(place, yAxis->range().lower);
        cursor_->point2->setCoords(place, yAxis->range().upper);
    }
    layer(QStringLiteral("overlay"))->replot();
    emit wordsChanged();
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
    fitted_ = true;
    zoomedByHand_ = false;
    replot(QCustomPlot::rpQueuedReplot);
}

void Plot::zoomTo(const QRect& rect) {
    if (rect.width() < smallestZoom && rect.height() < smallestZoom) return;
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
    const double place = xAxis->pixelToCoord(event->position().x());
    if (overFrequency())
        emit cursorAsked(place);
    else
        moveCursor(place);
}

void Plot::mouseDoubleClickEvent(QMouseEvent*) {
    emit fitAsked();
}

void Plot::leaveEvent(QEvent* event) {
    QCustomPlot::leaveEvent(event);
    if (hasFocus()) return;
    if (overFrequency())
        emit cursorAsked(0);
    else
        moveCursor(std::numeric_limits<double>::quiet_NaN());
}

void Plot::keyPressEvent(QKeyEvent* event) {
    const int direction = event->key() == Qt::Key_Right ? 1 : event->key() == Qt::Key_Left ? -1 : 0;
    const QCPRange band = xAxis->range();
    if (!overFrequency() && direction != 0) {
        const double step = band.size() / (event->modifiers() & Qt::ShiftModifier ? 10 : 100);
        moveCursor(std::clamp((hasCursor() ? cursorAt_ : band.center()) + direction * step, band.lower, band.upper));
    } else if (!overFrequency() && event->key() == Qt::Key_Escape && hasCursor()) {
        moveCursor(std::numeric_limits<double>::quiet_NaN());
    } else if (direction != 0) {
        const double factor =
            std::pow(10, direction * (event->modifiers() & Qt::ShiftModifier ? 10 : 1) / stepsPerDecade);
        const double from = hasCursor() ? cursorAt_ : std::sqrt(band.lower * band.upper);
        emit cursorAsked(std::clamp(from * factor, band.lower, band.upper));
    } else if (overFrequency() && (event->key() == Qt::Key_Home || event->key() == Qt::Key_End)) {
        emit cursorAsked(event->key() == Qt::Key_Home ? band.lower : band.upper);
    } else if (event->key() == Qt::Key_Escape && hasCursor()) {
        emit cursorAsked(0);
    } else if (event->key() == Qt::Key_0) {
        emit fitAsked();
    } else {
        QCustomPlot::keyPressEvent(event);
    }
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
