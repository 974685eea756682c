// SPDX-License-Identifier: GPL-3.0-or-later
#include "cut/chip.h"

#include <QApplication>
#include <QContextMenuEvent>
#include <QKeyEvent>
#include <QPainter>
#include <cmath>

#include "bench/theme.h"
#include "cut/hatch.h"

namespace cut {

using bench::Token;

namespace {

constexpr int padding = 6;

}  // namespace

Chip::Chip(document::Selected part, const QString& text, ChipSign sign, int winding, QWidget* parent)
    : QAbstractButton(parent), part_(std::move(part)), sign_(sign), winding_(winding) {
    QString shown = text;
    setText(shown.replace(QLatin1Char('&'), QStringLiteral("&&")));
    setFocusPolicy(Qt::StrongFocus);
    setCursor(item() != nullptr ? Qt::OpenHandCursor : Qt::ArrowCursor);
}

void Chip::setSelected(bool selected) {
    if (selected == selected_) return;
    selected_ = selected;
    update();
}

double Chip::signWidth() const {
    switch (sign_) {
        case ChipSign::Winding:
            return 20;
        case ChipSign::Earth:
            return 16;
        case ChipSign::Paper:
            return 8;
        case ChipSign::None:
            break;
    }
    return 0;
}

QSize Chip::sizeHint() const {
    QString shown = text();
    shown.replace(QStringLiteral("&&"), QStringLiteral("&"));
    const int width = fontMetrics().horizontalAdvance(shown) + static_cast<int>(std::ceil(signWidth())) + 2 * padding;
    return {width, fontMetrics().height() + 8};
}

void Chip::paintSign(QPainter& painter, const QRectF& area) const {
    const double middle = area.center().y();
    if (sign_ == ChipSign::Winding)
        paintWindingMark(painter, QRectF(area.left(), std::round(middle - 6), 14, 12), bench::windingColour(winding_),
                         bench::colour(Token::Base), bench::windingBrushStyle(winding_));
    if (sign_ == ChipSign::Earth) {
        painter.setPen(QPen(bench::colour(Token::Foil), 1.5));
        paintEarth(painter, {area.left() + 6, middle - 5}, 11);
    }
    if (sign_ == ChipSign::Paper) {
        painter.setPen(QPen(bench::mixed(bench::colour(Token::Paper), bench::colour(Token::Text), 0.45), 2));
        painter.drawLine(QPointF(area.left() + 2, area.top() + 4), QPointF(area.left() + 2, area.bottom() - 4));
    }
}

void Chip::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const QRectF edge = QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5);
    painter.setRenderHint(QPainter::Antialiasing, true);
    painter.setPen(QPen(bench::colour(selected_ ? Token::Accent : Token::Line), selected_ ? 2 : 1));
    painter.setBrush(bench::colour(Token::Base));
    painter.drawRoundedRect(selected_ ? edge.adjusted(0.5, 0.5, -0.5, -0.5) : edge, 4, 4);
    if (hasFocus()) {
        painter.setPen(QPen(bench::colour(Token::Accent), 1, Qt::DotLine));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(edge.adjusted(2.5, 2.5, -2.5, -2.5), 2, 2);
    }
    const QRectF inside = QRectF(rect()).adjusted(padding, 0, -padding, 0);
    paintSign(painter, inside);
    painter.setPen(bench::colour(sign_ == ChipSign::Paper ? Token::Muted : Token::Text));
    painter.drawText(inside.adjusted(signWidth(), 0, 0, 0), Qt::AlignVCenter | Qt::AlignLeft | Qt::TextShowMnemonic,
                     text());
}

void Chip::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Left:
        case Qt::Key_Right:
        case Qt::Key_Home:
        case Qt::Key_End:
            emit walked(event->key(), event->modifiers() & Qt::ControlModifier);
            return;
        case Qt::Key_Delete:
        case Qt::Key_Backspace:
            emit removed();
            return;
        case Qt::Key_Return:
        case Qt::Key_Enter:
            emit formRequested();
            return;
        case Qt::Key_Escape:
            if (!moving_) break;
            moving_ = false;
            emit dragCancelled();
            return;
        default:
            break;
    }
    QAbstractButton::keyPressEvent(event);
}

void Chip::mousePressEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) return event->ignore();
    pressed_ = event->pos();
    setFocus(Qt::MouseFocusReason);
    emit clicked();
}

void Chip::mouseMoveEvent(QMouseEvent* event) {
    if (!(event->buttons() & Qt::LeftButton) || item() == nullptr || pressed_.isNull()) return;
    if (!moving_ && (event->pos() - pressed_).manhattanLength() < QApplication::startDragDistance()) return;
    moving_ = true;
    emit dragged(event->globalPosition().toPoint());
}

void Chip::mouseReleaseEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton) return event->ignore();
    pressed_ = {};
    if (!std::exchange(moving_, false)) return;
    emit dragged(event->globalPosition().toPoint());
    emit dropped();
}

void Chip::contextMenuEvent(QContextMenuEvent* event) {
    emit clicked();
    emit menuRequested(event->globalPos());
}

}  // namespace cut
