// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/paper.h"

#include <QAbstractTextDocumentLayout>
#include <QPageSize>
#include <QPainterPath>
#include <cmath>

#include "bench/theme.h"

namespace papers {

namespace {

constexpr const char* family = "DejaVu Sans";
constexpr char16_t emptySquare = 0x25A1;

}  // namespace

QSizeF sizeOf(Format format) {
    return QPageSize(format == Format::A4 ? QPageSize::A4 : QPageSize::Letter).size(QPageSize::Millimeter);
}

Paper::Paper(Sheets& sheets, Format format) : sheets_(sheets), size_(sizeOf(format)) {
    sheets_.begin(painter_);
    painter_.setRenderHint(QPainter::Antialiasing);
}

QColor Paper::muted() {
    return bench::colour(bench::Token::Muted, false);
}

QColor Paper::accent() {
    return bench::colour(bench::Token::Accent, false);
}

QRectF Paper::content() const {
    return QRectF(QPointF(0, 0), size_).adjusted(margin, margin, -margin, -margin);
}

void Paper::newPage() {
    sheets_.next(painter_);
    painter_.setRenderHint(QPainter::Antialiasing);
    said_ << QString();
    ++page_;
}

QPen Paper::pen(double width, const QColor& colour) const {
    QPen pen(colour, dots(width));
    pen.setCapStyle(Qt::FlatCap);
    pen.setJoinStyle(Qt::RoundJoin);
    return pen;
}

void Paper::line(const QPointF& a, const QPointF& b, double width, const QColor& colour) {
    painter_.setPen(pen(width, colour));
    painter_.drawLine(dots(a), dots(b));
}

void Paper::polyline(const std::vector<QPointF>& points, double width, const QColor& colour,
                     const QVector<double>& dashes) {
    if (points.size() < 2) return;
    QPainterPath path(dots(points.front()));
    for (std::size_t k = 1; k < points.size(); ++k) path.lineTo(dots(points[k]));
    QPen ink = pen(width, colour);
    if (!dashes.isEmpty()) ink.setDashPattern(dashes);
    painter_.strokePath(path, ink);
}

void Paper::box(const QRectF& rect, double width, const QColor& fill, const QColor& colour) {
    painter_.setPen(width > 0 ? pen(width, colour) : QPen(Qt::NoPen));
    painter_.setBrush(fill.isValid() ? QBrush(fill) : QBrush(Qt::NoBrush));
    painter_.drawRect(dots(rect));
}

void Paper::fill(const std::vector<QRectF>& rects, const QColor& colour) {
    QPainterPath path;
    path.setFillRule(Qt::WindingFill);
    for (const QRectF& rect : rects) path.addRect(dots(rect));
    painter_.fillPath(path, colour);
}

void Paper::circle(const QPointF& middle, double radius, bool filled, double width) {
    painter_.setPen(pen(width, ink()));
    painter_.setBrush(filled ? ink() : QColor(Qt::white));
    painter_.drawEllipse(dots(middle), dots(radius), dots(radius));
}

void Paper::polygon(const std::vector<QPointF>& points, const QColor& fill) {
    QPolygonF shape;
    for (const QPointF& point : points) shape << dots(point);
    painter_.setPen(Qt::NoPen);
    painter_.setBrush(fill);
    painter_.drawPolygon(shape);
}

void Paper::arc(const QPointF& middle, double radius, double fromDegrees, double spanDegrees, double width) {
    const QRectF around = dots(QRectF(middle.x() - radius, middle.y() - radius, 2 * radius, 2 * radius));
    QPainterPath path;
    path.arcMoveTo(around, fromDegrees);
    path.arcTo(around, fromDegrees, spanDegrees);
    painter_.strokePath(path, pen(width, ink()));
}

void Paper::clip(const QRectF& rect) {
    painter_.save();
    painter_.setClipRect(dots(rect));
}

void Paper::unclip() {
    painter_.restore();
}

const Paper::Face& Paper::face(const Type& type) const {
    const int dots = std::max(1, static_cast<int>(std::lround(type.size * resolution / 72)));
    if (const auto made = faces_.find({dots, type.bold}); made != faces_.end()) return made->second;
    QFont font(QString::fromLatin1(family));
    font.setStyleHint(QFont::SansSerif);
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setPixelSize(dots);
    font.setBold(type.bold);
    return faces_.emplace(std::pair(dots, type.bold), Face{font, QFontMetricsF(font, sheets_.device())}).first->second;
}

bool Paper::has(char32_t character) const {
    if (const auto known = known_.find(character); known != known_.end()) return known->second;
    return known_[character] = face({}).metrics.inFontUcs4(character);
}

QString Paper::printable(const QString& words) const {
    QString shown;
    shown.reserve(words.size());
    for (const char32_t one : words.toUcs4()) {
        if (one == U'\n' || one == U'\t') {
            shown += QLatin1Char(' ');
        } else if (has(one)) {
            shown += QString::fromUcs4(&one, 1);
        } else {
            missing_.insert(one);
            shown += QChar(emptySquare);
        }
    }
    return shown;
}

double Paper::width(const QString& words, const Type& type) const {
    const Face& by = face(type);
    const auto known = by.widths.constFind(words);
    if (known != by.widths.constEnd()) return *known;
    const double mm = by.metrics.horizontalAdvance(printable(words)) * units::millimetresPerInch / resolution;
    by.widths.insert(words, mm);
    return mm;
}

void Paper::text(const QRectF& rect, const QString& words, const Type& type) {
    const Face& by = face(type);
    const QFontMetricsF& metrics = by.metrics;
    const QString shown = metrics.elidedText(printable(words), Qt::ElideRight, dots(rect.width()) + 1);
    if (!shown.isEmpty()) said_.last() += shown + QLatin1Char('\n');
    const double used = metrics.horizontalAdvance(shown);
    double x = dots(rect.left());
    if (type.align & Qt::AlignRight) x = dots(rect.right()) - used;
    if (type.align & Qt::AlignHCenter) x = dots(rect.center().x()) - used / 2;
    const double baseline = dots(rect.center().y()) + (metrics.ascent() - metrics.descent()) / 2;
    painter_.setFont(by.font);
    painter_.setPen(type.colour.isValid() ? type.colour : ink());
    painter_.drawText(QPointF(x, baseline), shown);
}

void Paper::textUpward(const QRectF& rect, const QString& words, const Type& type) {
    painter_.save();
    painter_.translate(dots(rect.center()));
    painter_.rotate(-90);
    text(QRectF(-rect.height() / 2, -rect.width() / 2, rect.height(), rect.width()), words, type);
    painter_.restore();
}

QStringList Paper::broken(double width, const QString& words, const Type& type) const {
    QStringList lines;
    QString line;
    const auto fits = [&](const QString& some) { return this->width(some, type) <= width; };
    for (QString word : words.split(QLatin1Char(' '), Qt::SkipEmptyParts)) {
        if (!line.isEmpty() && fits(line + QLatin1Char(' ') + word)) {
            line += QLatin1Char(' ') + word;
            continue;
        }
        if (!line.isEmpty()) lines << line;
        // A word longer than the line is cut where the line ends.
        while (!fits(word) && word.size() > 1) {
            qsizetype kept = word.size() - 1;
            while (kept > 1 && !fits(word.left(kept))) --kept;
            lines << word.left(kept);
            word.remove(0, kept);
        }
        line = word;
    }
    if (!line.isEmpty()) lines << line;
    return lines;
}

double Paper::paragraphHeight(double width, const QString& words, const Type& type) const {
    return static_cast<double>(broken(width, words, type).size()) * lineHeight(type);
}

double Paper::paragraph(const QRectF& rect, const QString& words, const Type& type, int most) {
    QStringList lines = broken(rect.width(), words, type);
    // What is too much goes into the last line, which is then cut with an ellipsis.
    while (lines.size() > most) {
        const QString last = lines.takeLast();
        lines.last() += QLatin1Char(' ') + last;
    }
    const double step = lineHeight(type);
    for (qsizetype k = 0; k < lines.size(); ++k)
        text(QRectF(rect.left(), rect.top() + static_cast<double>(k) * step, rect.width(), step), lines[k], type);
    return static_cast<double>(lines.size()) * step;
}

void Paper::layOut(QTextDocument& text, const QSizeF& size) const {
    text.documentLayout()->setPaintDevice(sheets_.device());
    // Whole dots: sheets then begin where lines do.
    text.setPageSize({std::floor(dots(size.width())), std::floor(dots(size.height()))});
}

void Paper::page(const QTextDocument& text, int sheet, const QRectF& rect) {
    const QSizeF size = text.pageSize();
    QAbstractTextDocumentLayout::PaintContext context;
    context.clip = QRectF(QPointF(0, sheet * size.height()), size);
    context.palette.setColor(QPalette::Text, ink());
    painter_.save();
    painter_.translate(dots(rect.topLeft()) - context.clip.topLeft());
    painter_.setClipRect(context.clip);
    text.documentLayout()->draw(&painter_, context);
    painter_.restore();
}

}  // namespace papers
