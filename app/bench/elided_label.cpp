// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/elided_label.h"

#include <QAccessible>
#include <QPainter>

namespace bench {

ElidedLabel::ElidedLabel(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void ElidedLabel::setText(const QString& text) {
    if (text == text_) return;
    text_ = text;
    setToolTip(text);
    setAccessibleName(text);
    updateGeometry();
    update();
}

void ElidedLabel::setColourRole(QPalette::ColorRole role) {
    role_ = role;
    update();
}

void ElidedLabel::setAlignment(Qt::Alignment alignment) {
    alignment_ = alignment;
    update();
}

QSize ElidedLabel::sizeHint() const {
    const QMargins around = contentsMargins();
    return {fontMetrics().horizontalAdvance(text_) + 2 + around.left() + around.right(), fontMetrics().height() + 2};
}

QSize ElidedLabel::minimumSizeHint() const {
    return {fontMetrics().averageCharWidth() * 4, fontMetrics().height() + 2};
}

void ElidedLabel::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setPen(palette().color(role_));
    painter.drawText(contentsRect(), static_cast<int>(alignment_ | Qt::AlignVCenter),
                     fontMetrics().elidedText(text_, Qt::ElideRight, contentsRect().width()));
}

}  // namespace bench
