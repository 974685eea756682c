// SPDX-License-Identifier: GPL-3.0-or-later
#include "cut/annotations.h"

#include <algorithm>
#include <cmath>

#include "bench/language.h"
#include "cut/hatch.h"
#include "cut/item_words.h"
#include "units/inch.h"
#include "units/text.h"

namespace cut {

using bench::Token;

namespace {

constexpr double tick = 6;
constexpr double signRoom = 14;

QString shapeLabel(const Canvas& canvas, const Shape& shape) {
    const auto* item = itemAt(canvas.design, shape.item);
    return item != nullptr ? itemLabel(*item) : QString::fromStdString(shape.name);
}

/// Text on a plate of the ground beneath, so that hatching does not run through it.
void paintPlate(const Canvas& canvas, const Label& label, const QColor& ground, bool sign) {
    auto& p = canvas.painter;
    p.save();
    p.translate(label.box.center());
    if (label.where == Label::Where::Turned) p.rotate(-90);
    const QRectF box(-label.box.width() / 2, -label.box.height() / 2, label.box.width(), label.box.height());
    p.fillRect(box.adjusted(-2, 0, 2, 0), ground);
    p.setPen(canvas.pen(canvas.colour(Token::Text)));
    if (sign) paintEarth(p, {box.left() + 5, box.center().y() - 4}, 9);
    p.drawText(box.adjusted(sign ? signRoom : 0, 0, 0, 0), Qt::AlignVCenter | Qt::AlignLeft | Qt::TextDontClip,
               label.text);
    p.restore();
}

void paintLedOut(const Canvas& canvas, const Label& label, bool sign) {
    auto& p = canvas.painter;
    const QColor ink = canvas.colour(Token::Muted);
    const double shelf = label.below ? label.box.top() : label.box.bottom();
    p.setPen(canvas.pen(ink));
    p.drawLine(QPointF(label.x, label.start), QPointF(label.x, shelf));
    paintPlate(canvas, label, canvas.base(), sign);
    p.setPen(canvas.pen(ink));
    p.drawLine(QPointF(std::min(label.x, label.box.left()), shelf), QPointF(label.box.right(), shelf));
}

}  // namespace

Margins marginsFor(const QFontMetricsF& metrics, bool rulers, int sentences) {
    Margins m{8, 8, 8, 8};
    m.top += sentences * (metrics.height() + 4);
    if (!rulers) return m;
    m.left += tick + 4 + metrics.horizontalAdvance(QStringLiteral("00.0"));
    m.bottom += tick + metrics.height();
    return m;
}

QStringList fitSentences(const coil::CoilBuild& build) {
    QStringList all;
    for (const auto& fill : build.fill) {
        QString where;
        if (build.fill.size() > 1) where = bench::translated("Leg %1 chamber %2: ").arg(fill.leg).arg(fill.chamber);
        for (const auto& problem : fill.problems) {
            QString words = bench::translated(problem);
            if (where.isEmpty() && words.startsWith(QStringLiteral("the "))) words[0] = words[0].toUpper();
            all << where + words;
        }
        if (fill.problems.empty() && fill.over > 1e-9)
            all << where + bench::translated("%1 over the room").arg(lengthWords(fill.over));
    }
    return all;
}

void paintFitSentences(const Canvas& canvas, const QRectF& target, const QStringList& sentences,
                       const QStringList& remarks) {
    auto& p = canvas.painter;
    const QFontMetricsF metrics(canvas.options.font);
    QRectF line(target.left() + 8, target.top() + 6, target.width() - 16, metrics.height() + 4);
    for (const auto& sentence : sentences) {
        p.setPen(QPen(canvas.colour(Token::Broken), 1.5));
        paintBrokenSign(p, {line.left() + 6, line.center().y()}, 5);
        p.setPen(canvas.colour(Token::Broken));
        p.drawText(line.adjusted(18, 0, 0, 0), Qt::AlignVCenter | Qt::AlignLeft,
                   metrics.elidedText(sentence, Qt::ElideRight, line.width() - 18));
        line.translate(0, line.height());
    }
    p.setPen(canvas.colour(Token::Muted));
    for (const auto& remark : remarks) {
        p.drawText(line, Qt::AlignVCenter | Qt::AlignLeft, metrics.elidedText(remark, Qt::ElideRight, line.width()));
        line.translate(0, line.height());
    }
}

namespace {

/// What a shape's label asks for; without a body it has none.
LabelWish wishOf(const Canvas& canvas, const coil::CoilBuild& build, const Shape& shape,
                 const std::vector<Shape>& shapes) {
    LabelWish wish;
    const QRectF seen = canvas.seen(canvas.rect(shape.box));
    if (shape.kind == Shape::Kind::Barrier || seen.isEmpty()) return wish;
    wish.body = seen;
    wish.text = shapeLabel(canvas, shape);
    wish.thin = shape.kind == Shape::Kind::Shield;
    wish.sign = wish.thin ? signRoom : 0;
    wish.below = (shape.box.y0 + shape.box.y1) / 2 < 0.45 * build.windowHeight;
    // Sections wound in one hand lie in the same place: their labels share it.
    for (const auto& other : shapes) {
        if (other.item == shape.item || other.kind != shape.kind || other.box != shape.box) continue;
        if (other.item < shape.item)
            wish.text.clear();
        else
            wish.text += QStringLiteral(" + ") + shapeLabel(canvas, other);
    }
    if (wish.text.isEmpty()) wish.body = {};
    if (wish.text.isEmpty()) wish.thin = false;
    return wish;
}

}  // namespace

std::vector<Label> labelsFor(const Canvas& canvas, const coil::CoilBuild& build, const std::vector<Shape>& shapes) {
    std::vector<LabelWish> wishes;
    wishes.reserve(shapes.size());
    for (const auto& shape : shapes) wishes.push_back(wishOf(canvas, build, shape, shapes));
    const QFontMetricsF metrics(canvas.options.font);
    auto labels = placeLabels(wishes, metrics, canvas.area.right());
    const QRectF whole = canvas.frame.rect(extent(build));
    const double rows = rowHeight(metrics);
    settle(labels, std::max(whole.top(), canvas.area.top() + ledOutRows(labels, false) * rows + 3),
           std::min(whole.bottom(), canvas.area.bottom() - ledOutRows(labels, true) * rows - 3));
    return labels;
}

void paintLabels(const Canvas& canvas, const std::vector<Label>& labels, const std::vector<Shape>& shapes) {
    for (const auto& label : labels) {
        const auto& shape = shapes[static_cast<std::size_t>(label.wish)];
        const bool sign = shape.kind == Shape::Kind::Shield;
        if (label.where == Label::Where::LedOut)
            paintLedOut(canvas, label, sign);
        else
            paintPlate(canvas, label, tint(canvas.hue(shape.winding), canvas.base()), sign);
    }
}

void paintOvershoots(const Canvas& canvas, const coil::CoilBuild& build) {
    auto& p = canvas.painter;
    const QFontMetricsF metrics(canvas.options.font);
    const QColor broken = canvas.colour(Token::Broken);
    for (const auto& beyond : overshoots(build)) {
        const QRectF r = canvas.rect(beyond.box);
        const QRectF seen = canvas.seen(r);
        if (seen.isEmpty()) continue;
        p.setPen(QPen(broken, canvas.options.hairline > 0 ? canvas.options.hairline : 1.0));
        hatch(p, seen, Qt::DiagCrossPattern, 6);
        canvas.outline(r, broken, 2);
        const QString words = bench::translated("%1 over").arg(lengthWords(beyond.over));
        QRectF plate(0, 0, metrics.horizontalAdvance(words) + 8, metrics.height() + 2);
        plate.moveCenter(QPointF(seen.center().x(), seen.top() + 0.75 * seen.height()));
        plate.moveLeft(std::clamp(plate.left(), canvas.area.left(),
                                  std::max(canvas.area.left(), canvas.area.right() - plate.width())));
        p.fillRect(plate, canvas.base());
        canvas.outline(plate, broken);
        p.setPen(broken);
        p.drawText(plate, Qt::AlignCenter, words);
    }
}

namespace {

/// Distances along a ruler in its own unit.
struct Ruler {
    double unit = 1e-3;  ///< m
    double step = 0;     ///< between figures, in units
    const char* name = "mm";
    Ruler(const Canvas& canvas, double least) {
        if (canvas.options.inch) {
            unit = units::millimetresPerInch * 1e-3;
            name = "inch";
        }
        step = rulerStep(canvas.frame.scale * unit, least);
    }
    /// Calls draw(metres, text) for every tick from `from` to `to`, m; text only where there is a figure.
    template <class Draw>
    void each(double from, double to, const Draw& draw) const {
        const double fifth = step / 5;
        for (auto k = std::llround(std::ceil(from / unit / fifth)); static_cast<double>(k) * fifth * unit <= to; ++k) {
            const double at = static_cast<double>(k) * fifth;
            draw(at * unit,
                 k % 5 == 0 ? QString::fromStdString(units::shortest(std::round(at * 1e6) / 1e6)) : QString());
        }
    }
};

}  // namespace

void paintRulers(const Canvas& canvas, const QRectF& target) {
    auto& p = canvas.painter;
    const QFontMetricsF metrics(canvas.options.font);
    const QColor line = canvas.colour(Token::Line), ink = canvas.colour(Token::Muted);
    const Ruler ruler(canvas, 3.2 * metrics.height());
    const QRectF area = canvas.area;
    const double bottom = target.bottom() - metrics.height() - tick - 2, left = area.left() - 4;
    p.fillRect(QRectF(target.left(), target.top(), left - target.left(), target.height()), canvas.base());
    p.fillRect(QRectF(target.left(), bottom, target.width(), target.bottom() - bottom), canvas.base());
    p.setPen(canvas.pen(line));
    p.drawLine(QPointF(left, bottom), QPointF(area.right(), bottom));
    p.drawLine(QPointF(left, area.top()), QPointF(left, bottom));
    const auto mark = [&](const QPointF& from, const QPointF& direction, const QRectF& room, int align,
                          const QString& text) {
        p.setPen(canvas.pen(line));
        p.drawLine(from, from + direction * (text.isEmpty() ? tick / 2 : tick));
        p.setPen(ink);
        if (!text.isEmpty()) p.drawText(room, align, text);
    };
    ruler.each(canvas.frame.x(left), canvas.frame.x(area.right()), [&](double metres, const QString& text) {
        const double x = canvas.frame.point(metres, 0).x();
        mark({x, bottom}, {0, 1}, QRectF(x - 40, bottom + tick, 80, metrics.height()), Qt::AlignCenter, text);
    });
    ruler.each(canvas.frame.y(bottom), canvas.frame.y(area.top()), [&](double metres, const QString& text) {
        const double y = canvas.frame.point(0, metres).y();
        mark({left, y}, {-1, 0}, QRectF(target.left(), y - 20, left - tick - 2 - target.left(), 40),
             Qt::AlignVCenter | Qt::AlignRight, text);
    });
    p.setPen(ink);
    p.drawText(QRectF(target.left(), bottom + tick, left - target.left(), metrics.height()), Qt::AlignCenter,
               QString::fromUtf8(ruler.name));
}

}  // namespace cut
