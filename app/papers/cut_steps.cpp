// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/cut_steps.h"

#include <algorithm>

#include "bench/theme.h"

namespace papers {

namespace {

constexpr double tongueRoom = 5, labelRoom = 3.6, usualLine = 0.2;

QColor inkOf(const shop::CutShape& shape, bool fresh) {
    QColor colour;
    switch (shape.part) {
        case shop::CutPart::Bobbin:
            return bench::colour(bench::Token::Bobbin, false);
        case shop::CutPart::Wire:
            colour = bench::windingColour(shape.winding, false);
            break;
        case shop::CutPart::Paper:
            colour = fresh ? QColor(0xC8, 0xA4, 0x50) : bench::colour(bench::Token::Paper, false);
            break;
        case shop::CutPart::Shield:
            colour = bench::colour(bench::Token::Foil, false);
            break;
    }
    return fresh || shape.part == shop::CutPart::Paper ? colour : bench::mixed(colour, QColor(Qt::white), 0.7);
}

void paintEnds(Paper& paper, const shop::CutShape& shape, const QRectF& box) {
    const double radius = std::clamp(box.width() * 0.45, 0.5, 0.9);
    const auto spot = [&](bool low, bool filled) {
        const double y = low ? box.bottom() - radius : box.top() + radius;
        paper.circle({box.center().x(), y}, radius, filled, usualLine);
    };
    if (shape.startAtLow) spot(*shape.startAtLow, true);
    if (shape.finishAtLow) spot(*shape.finishAtLow, false);
}

}  // namespace

void paintCutStep(Paper& paper, const QRectF& rect, const shop::WindingSheet& sheet, int step, int leg) {
    if (sheet.windowWidth <= 0 || sheet.windowHeight <= 0) return;
    const Type label{7, false, Paper::muted(), Qt::AlignHCenter};
    const QRectF window = rect.adjusted(tongueRoom, labelRoom, 0, -labelRoom);
    const double across = window.width() / sheet.windowWidth, along = window.height() / sheet.windowHeight;
    paper.text({window.left(), rect.top(), window.width(), labelRoom}, QStringLiteral("high"), label);
    paper.text({window.left(), window.bottom(), window.width(), labelRoom}, QStringLiteral("low"), label);
    paper.box({rect.left(), window.top(), tongueRoom, window.height()}, usualLine,
              bench::colour(bench::Token::Iron, false));
    const auto place = [&](const shop::CutShape& s) {
        return QRectF(window.left() + s.x0 * across, window.bottom() - s.y1 * along, (s.x1 - s.x0) * across,
                      (s.y1 - s.y0) * along);
    };
    bool odd = false;
    for (const auto& shape : sheet.shapes) {
        if (shape.leg != leg || shape.step > step) continue;
        QColor ink = inkOf(shape, shape.step == step);
        // Neighbouring layers differ a little, as lines between them would hide them.
        if (shape.part == shop::CutPart::Wire && (odd = !odd)) ink = bench::mixed(ink, QColor(Qt::white), 0.25);
        paper.box(place(shape), 0, ink);
    }
    for (const auto& shape : sheet.shapes)
        if (shape.leg == leg && shape.step == step) paintEnds(paper, shape, place(shape));
    paper.box(window, usualLine);
}

void paintBobbinPins(Paper& paper, const QRectF& rect, const shop::WindingSheet& sheet) {
    double across = sheet.bobbinWidth / 2, along = sheet.bobbinLength / 2;
    for (const auto& pin : sheet.pins) {
        across = std::max(across, std::abs(pin.x));
        along = std::max(along, std::abs(pin.y));
    }
    if (across <= 0 || along <= 0) return;
    constexpr double words = 5, edge = 6;
    const double scale =
        std::min((rect.width() - 2 * edge) / (2 * across), (rect.height() - 2 * words - 2 * edge) / (2 * along));
    const QPointF middle = rect.center();
    const QRectF body(middle.x() - across * scale, middle.y() - along * scale, 2 * across * scale, 2 * along * scale);
    paper.box(body, usualLine, bench::colour(bench::Token::Bobbin, false));
    const Type label{8, false, Paper::muted(), Qt::AlignHCenter};
    const double above = body.top() - edge - words + 1.5, below = body.bottom() + edge - 1.5;
    paper.text({rect.left(), above, rect.width(), words}, QStringLiteral("high flange, from below"), label);
    paper.text({rect.left(), below, rect.width(), words}, QStringLiteral("low flange"), label);
    // Numbers as large as the pins' distance allows.
    double pitch = 2 * across, widest = 0.1;
    for (const auto& pin : sheet.pins) {
        widest = std::max(widest, paper.width(QString::number(pin.number), {7, true, {}, {}}));
        for (const auto& other : sheet.pins)
            if (other.y == pin.y && other.x > pin.x) pitch = std::min(pitch, other.x - pin.x);
    }
    const double size = std::clamp(7 * 0.85 * pitch * scale / widest, 4.5, 7.0);
    const double radius = std::min(1.0, pitch * scale / 3.2);
    for (const auto& pin : sheet.pins) {
        const QPointF at = middle + QPointF(pin.x * scale, -pin.y * scale);
        if (pin.number == 1)
            paper.box({at.x() - radius, at.y() - radius, 2 * radius, 2 * radius}, 0.3,
                      pin.used ? Paper::ink() : QColor(Qt::white));
        else
            paper.circle(at, radius, pin.used, 0.3);
        const double inward = pin.y > 0 ? 1 : -1;
        paper.text({at.x() - 4, at.y() + inward * 3 - 2, 8, 4}, QString::number(pin.number),
                   {size, pin.used, pin.used ? Paper::ink() : Paper::muted(), Qt::AlignHCenter});
    }
}

}  // namespace papers
