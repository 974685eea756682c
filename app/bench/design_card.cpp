// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/design_card.h"

#include <QPainter>

#include "bench/theme.h"
#include "cut/cut_painter.h"

namespace bench {

namespace {

constexpr int inside = 12;

}  // namespace

QFont strong(const QFont& font, double morePoints) {
    QFont made = font;
    made.setWeight(QFont::DemiBold);
    if (made.pointSizeF() > 0) made.setPointSizeF(made.pointSizeF() + morePoints);
    return made;
}

DesignCard::DesignCard(design::DesignPtr design, const catalog::Catalog& shop, const QString& name, QString words,
                       QWidget* parent)
    : QAbstractButton(parent), design_(std::move(design)), words_(std::move(words)) {
    auto laid = std::make_shared<analysis::Answer>();
    laid->build = std::make_shared<const coil::CoilBuild>(coil::layOut(*design_, shop));
    laidOut_ = std::move(laid);
    setText(name);
    setAccessibleName(name);
    setAccessibleDescription(words_);
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::PointingHandCursor);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

QSize DesignCard::sizeHint() const {
    return {15 * fontMetrics().height(), 14 * fontMetrics().height()};
}

void DesignCard::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const bool chosen = hasFocus() || isChecked(), lit = chosen || underMouse();
    painter.fillRect(rect(), colour(Token::Base));
    painter.setPen(QPen(colour(lit ? Token::Accent : Token::Line), chosen ? 2 : 0));
    painter.drawRect(rect().adjusted(0, 0, -1, -1));
    const int line = fontMetrics().height();
    const QRect words = rect().adjusted(inside, height() - 4 * line - 4 - inside, -inside, -inside);
    cut::PaintOptions options;
    options.dark = isDark();
    options.font = font();
    options.rulers = options.labels = options.ends = false;
    painter.save();
    const QRectF drawing = rect().adjusted(inside, inside, -inside, -4 * line - 4 - 2 * inside);
    painter.setClipRect(drawing);
    cut::paintCut(painter, drawing, *laidOut_, *design_, options);
    painter.restore();
    painter.setFont(strong(font(), 0));
    painter.setPen(colour(Token::Text));
    painter.drawText(words, Qt::AlignLeft | Qt::AlignTop,
                     QFontMetrics(painter.font()).elidedText(text(), Qt::ElideRight, words.width()));
    painter.setFont(font());
    painter.setPen(colour(Token::Muted));
    painter.drawText(words.adjusted(0, line + 2, 0, 0), Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, words_);
}

}  // namespace bench
