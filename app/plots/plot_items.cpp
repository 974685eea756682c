// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/plot_items.h"

#include <cmath>

#include "bench/theme.h"

namespace plots {

MaskArea::MaskArea(QCustomPlot* plot) : QCPAbstractItem(plot) {
    setSelectable(false);
    setClipToAxisRect(true);
    setLayer(QStringLiteral("background"));
}

void MaskArea::show(std::vector<design::MaskPoint> points, double offset) {
    points_ = std::move(points);
    offset_ = offset;
}

void MaskArea::draw(QCPPainter* painter) {
    const QCPRange band = parentPlot()->xAxis->range();
    drawSide(painter, band, true);
    drawSide(painter, band, false);
}

void MaskArea::drawSide(QCPPainter* painter, const QCPRange& band, bool low) const {
    const QCPAxis* x = parentPlot()->xAxis;
    const QCPAxis* y = parentPlot()->yAxis;
    const double away = low ? parentPlot()->axisRect()->bottom() + 2 : parentPlot()->axisRect()->top() - 2;
    const auto flush = [&](QPolygonF& edge) {
        if (edge.size() > 1) {
            QPolygonF area = edge;
            area << QPointF(edge.last().x(), away) << QPointF(edge.first().x(), away);
            painter->setPen(Qt::NoPen);
            painter->setBrush(bench::colour(bench::Token::MaskArea));
            painter->drawPolygon(area);
            painter->setBrush(Qt::NoBrush);
            painter->setPen(QPen(bench::colour(bench::Token::Broken), 1));
            painter->drawPolyline(edge);
        }
        edge.clear();
    };
    QPolygonF edge;
    for (const design::MaskPoint& point : points_) {
        const std::optional<double>& limit = low ? point.low : point.high;
        if (!limit || point.frequency <= 0) {
            flush(edge);
            continue;
        }
        // Far-off corners are kept within reach of the painter; the line's direction at the edge hardly changes.
        const double f = std::clamp(point.frequency, band.lower * 1e-3, band.upper * 1e3);
        const double level = y->coordToPixel(*limit + offset_);
        if (std::isfinite(level)) edge << QPointF(x->coordToPixel(f), std::clamp(level, -20000.0, 20000.0));
    }
    flush(edge);
}

EndLabels::EndLabels(QCustomPlot* plot) : QCPAbstractItem(plot) {
    setSelectable(false);
    setClipToAxisRect(false);
}

EndLabels::Placed EndLabels::place(const Label& label, const QFontMetricsF& metrics) const {
    const QRectF room = parentPlot()->axisRect()->rect();
    const QCPAxis* x = parentPlot()->xAxis;
    QPointF end, before;
    bool found = false;
    for (std::size_t i = label.y.size(); i-- > 0;) {
        if (!std::isfinite(label.y[i])) continue;
        const QPointF at(x->coordToPixel(label.frequency[i]), label.valueAxis->coordToPixel(label.y[i]));
        if (!found) {
            if (!room.adjusted(-1, -1, 1, 1).contains(at)) continue;
            end = before = at;
            found = true;
        } else {
            before = at;
            if (end.x() - at.x() >= 12) break;
        }
    }
    if (!found) return {};
    QString wrapped = label.text;
    wrapped.replace(QLatin1Char(' '), QLatin1Char('\n'));
    const QSizeF narrow = metrics.size(0, wrapped), wide = metrics.size(0, label.text);
    QRectF rect({}, wide + QSizeF(4, 0));
    const bool marginFree =
        !parentPlot()->yAxis2->visible() && narrow.width() + 6 <= parentPlot()->width() - room.right();
    if (marginFree && end.x() > room.right() - 3) {
        rect = QRectF(QPointF(room.right() + 5, end.y() - narrow.height() / 2), narrow);
    } else if (end.x() + 6 + rect.width() <= room.right()) {
        rect.moveTopLeft({end.x() + 6, end.y() - rect.height() / 2});
    } else {
        // Beside a falling curve the room below its end is free, beside a rising one the room above.
        const bool falling = end.y() > before.y();
        rect.moveTopLeft({end.x() - rect.width(), falling ? end.y() + 3 : end.y() - 3 - rect.height()});
    }
    rect.moveTop(std::clamp(rect.top(), room.top(), std::max(room.top(), room.bottom() - rect.height())));
    return {rect, rect.left() > room.right() ? wrapped : label.text};
}

std::vector<EndLabels::Placed> EndLabels::places(const QFontMetricsF& metrics) const {
    const QRectF room = parentPlot()->axisRect()->rect();
    std::vector<Placed> all;
    for (const Label& label : labels_) {
        Placed placed = place(label, metrics);
        QRectF& rect = placed.rect;
        for (int tries = 0; !rect.isEmpty() && tries < 8; ++tries) {
            const auto hit =
                std::find_if(all.begin(), all.end(), [&](const Placed& other) { return other.rect.intersects(rect); });
            if (hit == all.end()) break;
            const bool down = hit->rect.bottom() + rect.height() <= room.bottom() && tries < 4;
            rect.moveTop(down ? hit->rect.bottom() + 1 : hit->rect.top() - rect.height() - 1);
        }
        all.push_back(placed);
    }
    return all;
}

void EndLabels::draw(QCPPainter* painter) {
    const QFont font = parentPlot()->xAxis->tickLabelFont();
    painter->setFont(font);
    const std::vector<Placed> all = places(QFontMetricsF(font));
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (all[i].rect.isEmpty()) continue;
        const QRectF room = parentPlot()->axisRect()->rect();
        const int side = all[i].rect.left() > room.right() ? Qt::AlignLeft | Qt::AlignVCenter : Qt::AlignCenter;
        // A rim in the ground's colour keeps the name readable where a curve crosses it.
        painter->setPen(bench::colour(bench::Token::Base));
        for (const QPointF& off : {QPointF(-1, 0), QPointF(1, 0), QPointF(0, -1), QPointF(0, 1)})
            painter->drawText(all[i].rect.translated(off), side, all[i].text);
        painter->setPen(labels_[i].colour);
        painter->drawText(all[i].rect, side, all[i].text);
    }
}

}  // namespace plots
