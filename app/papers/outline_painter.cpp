// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "bench/theme.h"
#include "papers/drawings.h"

namespace papers {

namespace {

constexpr double dimensionGap = 5.5;  // mm between an edge and its dimension line, and between two of them
constexpr double arrow = 2.2;
constexpr double stroke = 0.35;

void arrowHead(Paper& paper, const QPointF& tip, const QPointF& along) {
    const QPointF across(-along.y(), along.x());
    const QPointF back = tip - arrow * along;
    paper.polygon({tip, back + 0.15 * arrow * across, back - 0.15 * arrow * across}, Paper::ink());
}

/// A dimension between two points of the object, its line at a constant y (or x) with the figure above it.
void horizontal(Paper& paper, double x0, double x1, double from, double y, const QString& figure) {
    const double beyond = y > from ? 1.2 : -1.2, off = y > from ? 0.8 : -0.8;
    for (const double x : {x0, x1}) paper.line({x, from + off}, {x, y + beyond});
    const bool narrow = x1 - x0 < 3 * arrow;
    const double out = narrow ? 2 * arrow : 0;
    paper.line({x0 - out, y}, {x1 + out, y});
    arrowHead(paper, {x0, y}, {narrow ? 1.0 : -1.0, 0});
    arrowHead(paper, {x1, y}, {narrow ? -1.0 : 1.0, 0});
    const Type type{8, false, {}, Qt::AlignHCenter};
    if (narrow && paper.width(figure, type) > x1 - x0 - 1)
        paper.text({x0 - out - 14.8, y - 2, 14, 4}, figure, {8, false, {}, Qt::AlignRight});
    else
        paper.text({(x0 + x1) / 2 - 10, y - 4, 20, 4}, figure, type);
}

void vertical(Paper& paper, double y0, double y1, double from, double x, const QString& figure) {
    const double beyond = x > from ? 1.2 : -1.2, off = x > from ? 0.8 : -0.8;
    for (const double y : {y0, y1}) paper.line({from + off, y}, {x + beyond, y});
    paper.line({x, y0}, {x, y1});
    arrowHead(paper, {x, y0}, {0, -1});
    arrowHead(paper, {x, y1}, {0, 1});
    paper.textUpward({x - 4, (y0 + y1) / 2 - 10, 4, 20}, figure, {8, false, {}, Qt::AlignHCenter});
}

/// Lines of symmetry; the one between the pins stops at the coil, where their numbers stand.
void centreLines(Paper& paper, const QRectF& around, const QRectF& coil) {
    const QVector<double> chain{24, 6, 4, 6};
    const QPointF middle = around.center();
    const auto draw = [&](const QPointF& a, const QPointF& b) {
        paper.polyline({a, b}, hairline, Paper::ink(), chain);
    };
    draw({around.left() - 2, middle.y()}, {around.right() + 2, middle.y()});
    draw({middle.x(), around.top() - 2}, {middle.x(), coil.top() - 1.5});
    draw({middle.x(), coil.bottom() + 1.5}, {middle.x(), around.bottom() + 2});
}

/// Scale of the drawing: the largest usual one at which both views and their dimensions fit.
double usualScale(const QRectF& rect, const shop::Outline& outline) {
    const double wide = 1000 * (outline.width + outline.length), high = 1000 * std::max(outline.length, outline.height);
    for (const double scale : {5.0, 2.0, 1.0, 0.5, 0.2, 0.1})
        if (wide * scale + 9 * dimensionGap <= rect.width() && high * scale + 3.9 * dimensionGap <= rect.height())
            return scale;
    return 0.05;
}

QRectF centred(const QPointF& middle, double width, double height) {
    return {middle.x() - width / 2, middle.y() - height / 2, width, height};
}

struct View {
    Paper& paper;
    const shop::Outline& outline;
    const shop::Manner& manner;
    double mm;  ///< mm on paper a metre
    QColor iron, coil;

    [[nodiscard]] QString figure(double metres) const {
        return QString::fromStdString(manner.say().number(manner.in.figure(metres)));
    }
    void pins(const QPointF& middle) const {
        // Numbers as large as their pitch allows.
        double wide = 0;
        for (const shop::PinSpot& pin : outline.pins)
            wide = std::max(wide, paper.width(QString::number(pin.number), {7, true, {}, {}}));
        const double size = std::clamp(7 * 0.85 * outline.pitch * mm / wide, 4.5, 7.0);
        for (const shop::PinSpot& pin : outline.pins) {
            const QPointF at = middle + QPointF(pin.x * mm, -pin.y * mm);
            const double radius = std::min(0.9, outline.pitch * mm / 5);
            if (pin.number == outline.pins.front().number)
                paper.box(centred(at, 2 * radius, 2 * radius), stroke, pin.used ? Paper::ink() : QColor(Qt::white));
            else
                paper.circle(at, radius, pin.used, stroke);
            const double inward = pin.y > 0 ? 1 : -1;
            paper.text({at.x() - 4, at.y() + inward * 2.4 - 1.7, 8, 3.4}, QString::number(pin.number),
                       {size, pin.used, pin.used ? Paper::ink() : Paper::muted(), Qt::AlignHCenter});
        }
    }
    /// Frame, can or cup take up more than core and coil.
    [[nodiscard]] bool housed() const {
        constexpr double visible = 1e-6;  // m
        return outline.width > std::max(outline.coreWidth, outline.coilWidth) + visible ||
               outline.length > std::max(outline.coreLength, outline.coilLength) + visible ||
               outline.height > std::max(outline.coreHeight, outline.coilHeight) + visible;
    }
    void housing(const QRectF& all) const {
        if (!housed()) return;
        paper.polyline({all.topLeft(), all.topRight(), all.bottomRight(), all.bottomLeft(), all.topLeft()}, stroke,
                       Paper::ink(), {8, 4});
    }
    /// From the solder side: x across, y along the tongue upward.
    void fromBelow(const QPointF& middle) const {
        const QRectF core = centred(middle, outline.coreWidth * mm, outline.coreLength * mm);
        const QRectF all = centred(middle, outline.width * mm, outline.length * mm);
        const QRectF body = centred(middle, outline.coilWidth * mm, outline.coilLength * mm);
        paper.box(core, stroke, iron);
        paper.box(body, stroke, coil);
        housing(all);
        centreLines(paper, all, body);
        pins(middle);
        horizontal(paper, all.left(), all.right(), core.top(), all.top() - dimensionGap, figure(outline.width));
        vertical(paper, all.top(), all.bottom(), all.left(), all.left() - dimensionGap, figure(outline.length));
        pinDimensions(middle, all);
    }
    void pinDimensions(const QPointF& middle, const QRectF& all) const {
        if (outline.pins.size() < 2) return;
        const auto place = [&](const shop::PinSpot& pin) { return middle + QPointF(pin.x * mm, -pin.y * mm); };
        double low = outline.pins.front().y, right = outline.pins.front().x;
        for (const shop::PinSpot& pin : outline.pins) {
            low = std::min(low, pin.y);
            right = std::max(right, pin.x);
        }
        std::vector<QPointF> row;
        for (const shop::PinSpot& pin : outline.pins)
            if (pin.y - low < 1e-6) row.push_back(place(pin));
        std::sort(row.begin(), row.end(), [](const QPointF& a, const QPointF& b) { return a.x() < b.x(); });
        if (row.size() > 1) {
            const double y = all.bottom() + dimensionGap;
            horizontal(paper, row[0].x(), row[1].x(), row[0].y() + 1, y, figure((row[1].x() - row[0].x()) / mm));
            if (row.size() > 2)
                horizontal(paper, row.front().x(), row.back().x(), row[0].y() + 1, y + dimensionGap,
                           figure((row.back().x() - row.front().x()) / mm));
        }
        if (outline.rowDistance > 0) {
            const double bottom = middle.y() - low * mm;
            vertical(paper, bottom - outline.rowDistance * mm, bottom, middle.x() + right * mm + 1,
                     all.right() + dimensionGap, figure(outline.rowDistance));
        }
    }
    /// From the side: along the tongue from left to right, the board below.
    void fromSide(const QPointF& middle) const {
        const QRectF core = centred(middle, outline.coreLength * mm, outline.coreHeight * mm);
        const QRectF body = centred(middle, outline.coilLength * mm, outline.coilHeight * mm);
        const QRectF all = centred(middle, outline.length * mm, outline.height * mm);
        constexpr double stub = 3.5;  // a pin's length is not part of the drawing
        std::vector<double> shown;
        for (const shop::PinSpot& pin : outline.pins) {
            const double x = middle.x() + pin.y * mm;
            if (std::any_of(shown.begin(), shown.end(), [&](double other) { return std::abs(other - x) < 0.05; }))
                continue;
            shown.push_back(x);
            const double top = std::abs(pin.y) * mm < body.width() / 2 ? body.bottom() : core.bottom();
            paper.box({x - 0.4, top, 0.8, all.bottom() + stub - top}, stroke, Qt::white);
        }
        paper.box(body, stroke, coil);
        paper.box(core, stroke, iron);
        housing(all);
        vertical(paper, all.top(), all.bottom(), core.right(), all.right() + 2 * dimensionGap, figure(outline.height));
        vertical(paper, core.top(), core.bottom(), core.right(), all.right() + dimensionGap,
                 figure(outline.coreHeight));
        horizontal(paper, all.left(), all.right(), core.top(), all.top() - dimensionGap, figure(outline.length));
    }
};

}  // namespace

void paintOutline(Paper& paper, const QRectF& rect, const shop::Outline& outline, const shop::Manner& manner) {
    if (outline.width <= 0) return;

    constexpr double captions = 5;
    const QRectF room = rect.adjusted(0, 0, 0, -captions);
    const double scale = usualScale(room, outline), mm = 1000 * scale;
    const View view{paper,
                    outline,
                    manner,
                    mm,
                    bench::colour(bench::Token::Iron, false),
                    bench::mixed(bench::colour(bench::Token::Bobbin, false), Qt::white, 0.4)};
    const double wide = outline.width * mm, along = outline.length * mm;
    const double spare = (room.width() - wide - along - 8 * dimensionGap) / 3;
    const double y = room.center().y() - dimensionGap * (outline.pins.empty() ? -0.4 : 0.1);
    const QPointF below(room.left() + spare + 1.5 * dimensionGap + wide / 2, y);
    const QPointF side(below.x() + wide / 2 + 3.5 * dimensionGap + spare + along / 2, y);
    view.fromBelow(below);
    view.fromSide(side);
    const shop::Words& say = manner.say();
    const auto words = [&](const char* phrase) { return QString::fromStdString(say(phrase)); };
    const QString ratio = scale >= 1 ? QString::number(scale) + QStringLiteral(" : 1")
                                     : QStringLiteral("1 : ") + QString::number(1 / scale);
    const Type caption{8, false, Paper::muted(), Qt::AlignHCenter};
    paper.text({below.x() - 40, rect.bottom() - captions, 80, captions}, words("seen from below (pin side)"), caption);
    paper.text({side.x() - 40, rect.bottom() - captions, 80, captions},
               words(view.housed() ? "from the side; broken line: frame, can or cup" : "from the side"), caption);
    paper.text({rect.right() - 110, rect.top() - 6, 110, 5},
               QString::fromStdString(say("%1 · tolerances ISO 2768-m, height at most · scale %2",
                                          {manner.in.unit(), ratio.toStdString()})),
               {8, false, Paper::muted(), Qt::AlignRight});
}

}  // namespace papers
