// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/standing_mark.h"

#include <QPainter>
#include <QPixmap>

namespace bench {

QColor standingColour(analysis::Standing standing) {
    switch (standing) {
        case analysis::Standing::Kept:
            return colour(Token::Kept);
        case analysis::Standing::Thin:
            return colour(Token::Thin);
        case analysis::Standing::Broken:
            return colour(Token::Broken);
        case analysis::Standing::Unknown:
            break;
    }
    return colour(Token::Muted);
}

QIcon standingMark(analysis::Standing standing, int size) {
    constexpr int scale = 2;  // sharp on a screen of double density
    QPixmap pixmap(size * scale, size * scale);
    pixmap.fill(Qt::transparent);
    pixmap.setDevicePixelRatio(scale);
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    const QColor ink = standingColour(standing);
    const QRectF disc = QRectF(0, 0, size, size).adjusted(2, 2, -2, -2);
    painter.setPen(QPen(ink, 1.5));
    if (standing == analysis::Standing::Kept) painter.setBrush(ink);
    painter.drawEllipse(disc);
    painter.setBrush(ink);
    if (standing == analysis::Standing::Thin) painter.drawPie(disc, 90 * 16, 180 * 16);
    if (standing == analysis::Standing::Broken) painter.drawLine(disc.bottomLeft(), disc.topRight());
    painter.end();
    return QIcon(pixmap);
}

}  // namespace bench
