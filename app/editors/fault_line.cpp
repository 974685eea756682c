// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/fault_line.h"

#include <QEvent>
#include <QFontMetrics>
#include <QPainter>

#include "bench/theme.h"

namespace editors {

QFont smallFont(const QFont& usual) {
    QFont font = usual;
    if (font.pointSizeF() > 2) font.setPointSizeF(font.pointSizeF() - 1);
    return font;
}

FaultLine::FaultLine(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("Reason"));
}

void FaultLine::add(Binding* binding, QWidget* field) {
    sources_.push_back({binding, field});
    connect(binding, &Binding::faultChanged, this, &FaultLine::refresh);
    refresh();
}

void FaultLine::refresh() {
    sentence_.clear();
    faulty_.clear();
    for (const Source& source : sources_)
        if (source.binding && !source.binding->fault().isEmpty()) {
            sentence_ = source.binding->fault();
            faulty_ = source.field;
            break;
        }
    setToolTip(sentence_);
    setAccessibleDescription(sentence_);
    update();
}

QSize FaultLine::sizeHint() const {
    return {40, QFontMetrics(smallFont(font())).height() + 1};
}

QSize FaultLine::minimumSizeHint() const {
    return sizeHint();
}

void FaultLine::paintEvent(QPaintEvent*) {
    if (sentence_.isEmpty()) return;
    QPainter painter(this);
    const QFont font = smallFont(this->font());
    painter.setFont(font);
    painter.setPen(bench::colour(bench::Token::Broken));
    const QFontMetrics metrics(font);
    const int wide = metrics.horizontalAdvance(sentence_) + 2;
    const int beneath = faulty_ ? mapFromGlobal(faulty_->mapToGlobal(QPoint(0, 0))).x() : 0;
    const int x = std::max(0, std::min(beneath, width() - wide));
    painter.drawText(QRect(x, 0, width() - x, height()), Qt::AlignLeft | Qt::AlignVCenter,
                     metrics.elidedText(sentence_, Qt::ElideRight, width() - x));
}

void FaultLine::changeEvent(QEvent* event) {
    if (event->type() == QEvent::FontChange) updateGeometry();
    QWidget::changeEvent(event);
}

}  // namespace editors
