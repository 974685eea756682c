// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/band_area.h"

#include <algorithm>
#include <cmath>

namespace plots {

BandArea::BandArea(QCustomPlot* plot) : QCPAbstractItem(plot) {
    setSelectable(false);
    setClipToAxisRect(true);
}

void BandArea::show(std::vector<Band> bands, bool old) {
    bands_ = std::move(bands);
    old_ = old;
}

void BandArea::draw(QCPPainter* painter) {
    for (const Band& band : bands_) drawBand(painter, band);
}

void BandArea::drawBand(QCPPainter* painter, const Band& band) const {
    constexpr double reach = 20000;  // pixels that a painter takes
    constexpr int sheer = 56;        // of 255: masks and other bands are seen through it
    QPolygonF low, high;
    const auto flush = [&] {
        if (low.size() > 1) {
            QPolygonF area = low;
            for (auto it = high.crbegin(); it != high.crend(); ++it) area << *it;
            QColor fill = band.colour;
            fill.setAlpha(sheer);
            painter->setPen(Qt::NoPen);
            painter->setBrush(old_ ? QBrush(Qt::NoBrush) : QBrush(fill));
            painter->drawPolygon(area);
            painter->setBrush(Qt::NoBrush);
            painter->setPen(QPen(band.colour, 0, old_ ? Qt::DotLine : Qt::SolidLine));
            painter->drawPolyline(low);
            painter->drawPolyline(high);
        }
        low.clear();
        high.clear();
    };
    const QCPAxis* x = parentPlot()->xAxis;
    for (std::size_t k = 0; k < band.at.size(); ++k) {
        const double at = x->coordToPixel(band.at[k]);
        const double below = band.valueAxis->coordToPixel(band.low[k]),
                     above = band.valueAxis->coordToPixel(band.high[k]);
        if (!std::isfinite(band.low[k]) || !std::isfinite(band.high[k]) || !std::isfinite(at) ||
            !std::isfinite(below) || !std::isfinite(above)) {
            flush();
            continue;
        }
        low << QPointF(std::clamp(at, -reach, reach), std::clamp(below, -reach, reach));
        high << QPointF(std::clamp(at, -reach, reach), std::clamp(above, -reach, reach));
    }
    flush();
}

}  // namespace plots
