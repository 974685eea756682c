// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/histogram.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "bench/figure_words.h"
#include "bench/theme.h"
#include "plots/result_words.h"
#include "spread/spread_words.h"

namespace bench {

namespace {

QString axisText(const analysis::Column& column, double value) {
    return plots::shownNumber(spread::valueWords(column, value));
}

}  // namespace

HistogramView::HistogramView(QWidget* parent) : PointedPicture(parent) {
    showFigure({});
}

QSize HistogramView::sizeHint() const {
    return {26 * fontMetrics().height(), 11 * fontMetrics().height()};
}
QSize HistogramView::minimumSizeHint() const {
    return {14 * fontMetrics().height(), 7 * fontMetrics().height()};
}

void HistogramView::showFigure(std::optional<Shown> shown) {
    shown_ = std::move(shown);
    forget();
    setAccessibleName(tr("Histogram"));
    QString words = tr("No figure is shown.");
    if (shown_ && shown_->summary.occurs > 0) {
        const auto& sum = shown_->summary;
        from_ = sum.least;
        to_ = sum.greatest;
        const double spread = to_ > from_ ? to_ - from_ : std::max(std::abs(to_), 1e-12) * 0.1;
        // A limit that is near belongs into the picture; one far off would squeeze the bars.
        for (const auto& limit : {shown_->atLeast, shown_->atMost, shown_->column.nominal})
            if (limit && *limit > sum.least - 1.5 * spread && *limit < sum.greatest + 1.5 * spread) {
                from_ = std::min(from_, *limit);
                to_ = std::max(to_, *limit);
            }
        from_ -= 0.06 * spread;
        to_ += 0.06 * spread;
        setAccessibleName(tr("Histogram of %1").arg(columnText(shown_->column)));
        words = tr("%1 units from %2 to %3, 5 to 95 %: %4 to %5")
                    .arg(sum.occurs)
                    .arg(axisText(shown_->column, sum.least), axisText(shown_->column, sum.greatest),
                         axisText(shown_->column, sum.quantiles[1]), axisText(shown_->column, sum.quantiles[5]));
    } else if (shown_) {
        words = tr("Occurs in no unit.");
    }
    setAccessibleDescription(words);
    update();
}

QString HistogramView::barWords(int bar) const {
    if (!shown_ || bar < 0 || bar >= static_cast<int>(shown_->summary.histogram.units.size())) return {};
    const auto& h = shown_->summary.histogram;
    const double low = h.from + bar * h.width;
    return tr("%1 of %2 units from %3 to %4")
        .arg(h.units[static_cast<std::size_t>(bar)])
        .arg(shown_->units)
        .arg(axisText(shown_->column, low), axisText(shown_->column, low + h.width));
}

QRectF HistogramView::room() const {
    const double line = fontMetrics().height();
    return QRectF(rect()).adjusted(8, 1.6 * line, -8, -2.4 * line);
}

double HistogramView::place(double value) const {
    return room().left() + room().width() * (value - from_) / (to_ - from_);
}

int HistogramView::barAt(const QPointF& at) const {
    if (isEmpty() || !room().contains(at)) return -1;
    const auto& h = shown_->summary.histogram;
    if (!(h.width > 0)) return 0;
    const double value = from_ + (to_ - from_) * (at.x() - room().left()) / room().width();
    const int bar = static_cast<int>(std::floor((value - h.from) / h.width));
    return bar >= 0 && bar < static_cast<int>(h.units.size()) ? bar : -1;
}

int HistogramView::count() const {
    return shown_ ? static_cast<int>(shown_->summary.histogram.units.size()) : 0;
}

void HistogramView::paint(QPainter& painter) const {
    paintBars(painter);
    if (shown_->atLeast) paintLimit(painter, *shown_->atLeast, true);
    if (shown_->atMost) paintLimit(painter, *shown_->atMost, false);
    paintMarks(painter);
    paintAxis(painter);
}

void HistogramView::paintBars(QPainter& painter) const {
    const auto& h = shown_->summary.histogram;
    const auto most = static_cast<double>(*std::max_element(h.units.begin(), h.units.end()));
    const QColor fill = mixed(colour(Token::Base), colour(Token::Accent), shown_->old ? 0.2 : 0.5);
    for (std::size_t k = 0; k < h.units.size(); ++k) {
        const double low = h.from + static_cast<double>(k) * h.width;
        double left = place(low), right = place(low + h.width);
        if (!(h.width > 0)) {  // all units alike
            left -= 4;
            right += 4;
        }
        const double high = room().height() * static_cast<double>(h.units[k]) / most;
        const QRectF bar(left, room().bottom() - high, std::max(1.0, right - left - 1), high);
        painter.fillRect(bar, static_cast<int>(k) == chosen() ? colour(Token::Accent) : fill);
        painter.setPen(QPen(colour(Token::Accent), 0, shown_->old ? Qt::DotLine : Qt::SolidLine));
        if (high > 0) painter.drawRect(bar);
    }
}

/// What a limit forbids is shaded from it outward.
void HistogramView::paintLimit(QPainter& painter, double limit, bool least) const {
    const double x = std::clamp(place(limit), room().left(), room().right());
    if (limit < from_ || limit > to_) return;
    const QRectF away = least ? QRectF(QPointF(room().left(), room().top()), QPointF(x, room().bottom()))
                              : QRectF(QPointF(x, room().top()), room().bottomRight());
    painter.fillRect(away, QBrush(colour(Token::Broken), Qt::BDiagPattern));
    painter.setPen(QPen(colour(Token::Broken), 2));
    painter.drawLine(QPointF(x, room().top()), QPointF(x, room().bottom()));
}

void HistogramView::paintMarks(QPainter& painter) const {
    const auto mark = [&](double value, const QPen& pen) {
        painter.setPen(pen);
        painter.drawLine(QPointF(place(value), room().top()), QPointF(place(value), room().bottom()));
    };
    for (const std::size_t k : {std::size_t{1}, std::size_t{5}})
        mark(shown_->summary.quantiles[k], QPen(colour(Token::Muted), 0, Qt::DashLine));
    if (shown_->column.nominal && *shown_->column.nominal >= from_ && *shown_->column.nominal <= to_)
        mark(*shown_->column.nominal, QPen(colour(Token::Text), 0, Qt::SolidLine));
}

/// Names of the lines above, values below; one that would stand on another is left out.
void HistogramView::paintAxis(QPainter& painter) const {
    painter.setPen(QPen(colour(Token::Line), 1));
    painter.drawLine(room().bottomLeft(), room().bottomRight());
    struct Label {
        double value;
        QString above;
        QColor ink;
    };
    std::vector<Label> labels;
    if (shown_->column.nominal) labels.push_back({*shown_->column.nominal, tr("nominal"), colour(Token::Text)});
    if (shown_->atLeast) labels.push_back({*shown_->atLeast, tr("at least"), colour(Token::Broken)});
    if (shown_->atMost) labels.push_back({*shown_->atMost, tr("at most"), colour(Token::Broken)});
    labels.push_back({shown_->summary.quantiles[1], tr("5 %"), colour(Token::Muted)});
    labels.push_back({shown_->summary.quantiles[5], tr("95 %"), colour(Token::Muted)});
    const double line = fontMetrics().height();
    std::vector<QRectF> taken;
    for (const auto& label : labels) {
        if (label.value < from_ || label.value > to_) continue;
        const QString value = axisText(shown_->column, label.value);
        const double wide =
            std::max(fontMetrics().horizontalAdvance(label.above), fontMetrics().horizontalAdvance(value)) + 8;
        const double left =
            std::clamp(place(label.value) - wide / 2, 0.0, std::max(0.0, static_cast<double>(width()) - wide));
        const QRectF column(left, 0, wide, height());
        if (std::any_of(taken.begin(), taken.end(), [&](const QRectF& t) { return t.intersects(column); })) continue;
        taken.push_back(column);
        painter.setPen(label.ink);
        painter.drawText(QRectF(left, 2, wide, line), Qt::AlignCenter, label.above);
        painter.drawText(QRectF(left, room().bottom() + 3, wide, line), Qt::AlignCenter, value);
    }
    paintFootWords(painter, room().bottom() + 3 + line);
}

}  // namespace bench
