// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/pointed_picture.h"

#include <QFocusEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>

#include "bench/theme.h"

namespace bench {

PointedPicture::PointedPicture(QWidget* parent) : QWidget(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
}

void PointedPicture::choose(int thing) {
    if (thing == chosen_) return;
    chosen_ = thing;
    emit told(wordsOf(thing));
    update();
}

void PointedPicture::mouseMoveEvent(QMouseEvent* event) {
    choose(at(event->position()));
}
void PointedPicture::leaveEvent(QEvent*) {
    choose(-1);
}
void PointedPicture::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    update();
}
void PointedPicture::focusOutEvent(QFocusEvent* event) {
    QWidget::focusOutEvent(event);
    update();
}

void PointedPicture::keyPressEvent(QKeyEvent* event) {
    const int last = count() - 1;
    if (last < 0) return QWidget::keyPressEvent(event);
    switch (event->key()) {
        case Qt::Key_Left:
            return choose(std::max(chosen_ - 1, 0));
        case Qt::Key_Right:
            return choose(std::min(chosen_ + 1, last));
        case Qt::Key_Home:
            return choose(0);
        case Qt::Key_End:
            return choose(last);
        default:
            QWidget::keyPressEvent(event);
    }
}

void PointedPicture::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.fillRect(rect(), colour(Token::Base));
    if (hasFocus()) {
        painter.setPen(QPen(colour(Token::Accent), 2));
        painter.drawRect(rect().adjusted(1, 1, -1, -1));
    }
    painter.setPen(colour(Token::Muted));
    if (isEmpty()) return painter.drawText(rect(), Qt::AlignCenter | Qt::TextWordWrap, accessibleDescription());
    paint(painter);
}

void PointedPicture::paintFootWords(QPainter& painter, double top) const {
    painter.setPen(colour(Token::Muted));
    const QString foot = chosen_ >= 0 ? wordsOf(chosen_) : accessibleDescription();
    painter.drawText(QRectF(4, top, width() - 8, fontMetrics().height()), Qt::AlignCenter,
                     fontMetrics().elidedText(foot, Qt::ElideRight, width() - 8));
}

}  // namespace bench
