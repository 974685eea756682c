// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/fault_line.h"

#include <QApplication>
#include <QEvent>
#include <QFontMetrics>
#include <QPainter>

#include "bench/theme.h"

namespace editors {

FaultLine::FaultLine(QWidget* parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    connect(qApp, &QApplication::focusChanged, this, [this] {
        if (said_.size() > 1) renew();
    });
}

void FaultLine::say(QWidget* field, const QString& sentence) {
    const auto at = std::find_if(said_.begin(), said_.end(), [&](const Said& s) { return s.field == field; });
    if (at != said_.end() && sentence.isEmpty())
        said_.erase(at);
    else if (at != said_.end())
        at->sentence = sentence;
    else if (!sentence.isEmpty())
        said_.push_back({field, sentence});
    else
        return;
    renew();
}

const FaultLine::Said* FaultLine::shown() const {
    for (const Said& s : said_)
        if (s.field->focusProxy() != nullptr && s.field->focusProxy()->hasFocus()) return &s;
    return said_.empty() ? nullptr : &said_.front();
}

QString FaultLine::sentence() const {
    const Said* now = shown();
    return now == nullptr ? QString() : now->sentence;
}

void FaultLine::renew() {
    setToolTip(sentence());
    setAccessibleName(sentence());
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
    const Said* now = shown();
    if (now == nullptr) return;
    QPainter painter(this);
    painter.setFont(small());
    painter.setPen(bench::colour(bench::Token::Broken));
    const QFontMetrics metrics(small());
    const int wide = metrics.horizontalAdvance(now->sentence) + 2;
    const int beneath = mapFromGlobal(now->field->mapToGlobal(QPoint(0, 0))).x();
    const int x = std::max(0, std::min(beneath, width() - wide));
    painter.drawText(QRect(x, 0, width() - x, height()), Qt::AlignLeft | Qt::AlignVCenter,
                     metrics.elidedText(now->sentence, Qt::ElideRight, width() - x));
}

void FaultLine::changeEvent(QEvent* event) {
    if (event->type() == QEvent::FontChange) updateGeometry();
    QWidget::changeEvent(event);
}

}  // namespace editors
