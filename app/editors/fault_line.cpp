// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/fault_line.h"

#include <QEvent>
#include <QFontMetrics>
#include <QPainter>

#include "bench/theme.h"

namespace editors {

FaultLine::FaultLine(QWidget* field) : QWidget(field), field_(field) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void FaultLine::say(const QString& sentence) {
    if (sentence == sentence_) return;
    sentence_ = sentence;
    setToolTip(sentence);
    setAccessibleName(sentence);
    update();
}

QFont FaultLine::small() const {
    QFont smaller = font();
    if (smaller.pointSizeF() > 2) smaller.setPointSizeF(smaller.pointSizeF() - 1);
    return smaller;
}

QSize FaultLine::sizeHint() const {
    return {40, QFontMetrics(small()).height()};
}

void FaultLine::paintEvent(QPaintEvent*) {
    if (sentence_.isEmpty()) return;
    QPainter painter(this);
    painter.setFont(small());
    painter.setPen(bench::colour(bench::Token::Broken));
    const QFontMetrics metrics(small());
    const int wide = metrics.horizontalAdvance(sentence_) + 2;
    const int beneath = mapFromGlobal(field_->mapToGlobal(QPoint(0, 0))).x();
    const int x = std::max(0, std::min(beneath, width() - wide));
    painter.drawText(QRect(x, 0, width() - x, height()), Qt::AlignLeft | Qt::AlignVCenter,
                     metrics.elidedText(sentence_, Qt::ElideRight, width() - x));
}

void FaultLine::changeEvent(QEvent* event) {
    if (event->type() == QEvent::FontChange) updateGeometry();
    QWidget::changeEvent(event);
}

}  // namespace editors
