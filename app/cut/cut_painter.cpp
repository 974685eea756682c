// SPDX-License-Identifier: GPL-3.0-or-later
#include "cut/cut_painter.h"

#include <algorithm>

#include "bench/language.h"
#include "cut/annotations.h"
#include "cut/hatch.h"
#include "cut/ladders.h"
#include "cut/section_painter.h"

namespace cut {

using bench::Token;
using coil::Box;
using coil::CoilBuild;
using document::WholePart;

namespace {

std::vector<Box> ironBoxes(const CoilBuild& build) {
    const double strip = ironStrip(build), w = build.windowWidth, h = build.windowHeight;
    return {{-strip, 0, -strip, h + strip}, {w, w + strip, -strip, h + strip}, {0, w, -strip, 0}, {0, w, h, h + strip}};
}

void paintIron(const Canvas& canvas, const CoilBuild& build) {
    auto& p = canvas.painter;
    const QColor iron = canvas.colour(Token::Iron), line = canvas.colour(Token::Line);
    p.setPen(canvas.pen(bench::mixed(iron, line, 0.45)));
    for (const auto& box : ironBoxes(build)) {
        const QRectF seen = canvas.seen(canvas.rect(box));
        if (seen.isEmpty()) continue;
        p.fillRect(seen, iron);
        hatch(p, seen, Qt::BDiagPattern, 6);
    }
    canvas.outline(canvas.rect({0, build.windowWidth, 0, build.windowHeight}), line);
}

/// Names of the iron's parts, turned along them.
void paintIronNames(const Canvas& canvas, const CoilBuild& build) {
    const QFontMetricsF metrics(canvas.options.font);
    auto& p = canvas.painter;
    const auto boxes = ironBoxes(build);
    const QString right = build.legs == 2 ? bench::translated("right leg") : bench::translated("outer leg");
    const QString left = build.legs == 2 ? bench::translated("left leg") : bench::translated("tongue");
    for (int i = 0; i < 2; ++i) {
        const QString& words = i == 0 ? left : right;
        const QRectF seen = canvas.seen(canvas.rect(boxes[static_cast<std::size_t>(i)]));
        const double width = metrics.horizontalAdvance(words) + 8;
        if (seen.width() < metrics.height() || seen.height() < 2 * width) continue;
        p.save();
        p.translate(seen.center().x(), seen.bottom() - seen.height() * 0.2);
        p.rotate(-90);
        const QRectF plate(-width / 2, -metrics.height() / 2, width, metrics.height());
        p.fillRect(plate, canvas.colour(Token::Iron));
        p.setPen(canvas.colour(Token::Muted));
        p.drawText(plate, Qt::AlignCenter, words);
        p.restore();
    }
}

/// Paper between two layers of a section, which is only seen with its layers.
bool insideHiddenSection(const Canvas& canvas, const CoilBuild& build, const std::vector<Shape>& shapes,
                         const Box& box) {
    return std::any_of(shapes.begin(), shapes.end(), [&](const Shape& s) {
        return s.kind == Shape::Kind::Section && box.x0 >= s.box.x0 - 1e-9 && box.x1 <= s.box.x1 + 1e-9 &&
               box.y0 < s.box.y1 && box.y1 > s.box.y0 && !showsLayers(canvas, build, s);
    });
}

void paintInsulation(const Canvas& canvas, const CoilBuild& build, const std::vector<Shape>& shapes) {
    auto& p = canvas.painter;
    const QColor text = canvas.colour(Token::Text);
    for (const auto& sheet : build.dielectrics) {
        const Box box = drawn(build, sheet.leg, sheet.box);
        const QRectF r = canvas.rect(box);
        const QRectF seen = canvas.seen(r);
        if (seen.isEmpty() || (!sheet.bobbin && insideHiddenSection(canvas, build, shapes, box))) continue;
        const QColor ground = canvas.colour(sheet.bobbin ? Token::Bobbin : Token::Paper);
        const QColor edge = bench::mixed(ground, text, sheet.bobbin ? 0.3 : 0.45);
        // A sheet thinner than its two edges is the edge alone: the paper's own hue would vanish on white.
        if (std::min(r.width(), r.height()) < 3) {
            p.fillRect(seen, edge);
            continue;
        }
        p.fillRect(seen, ground);
        canvas.outline(r, edge);
    }
}

void outlineShape(const Canvas& canvas, const Shape& shape, double width) {
    QRectF r = canvas.rect(shape.box).adjusted(-2, -2, 2, 2);
    if (r.width() < 7) r.adjust(-2, 0, 2, 0);
    canvas.outline(r, canvas.colour(Token::Accent), width);
}

void paintSelection(const Canvas& canvas, const CoilBuild& build, const std::vector<Shape>& shapes) {
    const auto& selected = canvas.options.selected;
    if (const auto* item = std::get_if<design::ItemIndex>(&selected)) {
        if (const auto* shape = shapeOf(shapes, *item)) outlineShape(canvas, *shape, 2);
    } else if (const auto* winding = std::get_if<document::WindingPart>(&selected)) {
        for (const auto& shape : shapes)
            if (shape.kind == Shape::Kind::Section && shape.winding == winding->name) outlineShape(canvas, shape, 2);
    } else if (const auto* part = std::get_if<WholePart>(&selected)) {
        const QColor accent = canvas.colour(Token::Accent);
        if (part->which == WholePart::Which::Core) {
            const double strip = ironStrip(build), w = build.windowWidth, h = build.windowHeight;
            canvas.outline(canvas.rect({-strip, w + strip, -strip, h + strip}).adjusted(-2, -2, 2, 2), accent, 2);
            canvas.outline(canvas.rect({0, w, 0, h}), accent, 2);
        }
        if (part->which == WholePart::Which::Bobbin)
            for (const auto& sheet : build.dielectrics)
                if (sheet.bobbin) canvas.outline(canvas.rect(drawn(build, sheet.leg, sheet.box)), accent, 2);
    }
}

}  // namespace

QRectF drawingArea(const QRectF& target, const CoilBuild& build, const PaintOptions& options) {
    const QFontMetricsF metrics(options.font);
    const auto lines = fitSentences(build).size() + ladderLegend(options).size();
    const auto m = marginsFor(metrics, options.rulers, static_cast<int>(lines));
    return target.adjusted(m.left, m.top, -m.right, -m.bottom);
}

Frame fittedFrame(const QRectF& target, const CoilBuild& build, const design::Design& design,
                  const PaintOptions& options) {
    QRectF area = drawingArea(target, build, options);
    const auto shapes = shapesOf(build, design);
    if (options.state) {
        QPainter none;
        const auto borders = bordersOf(build, design, shapes, *options.state);
        const double wide = laddersFor(Canvas{none, fitted(extent(build), area), area, options, design}, borders).width;
        area.adjust(0, 0, -std::min(wide, 0.55 * area.width()), 0);
    }
    const Box all = extent(build);
    QRectF room = area;
    Frame frame = fitted(all, room);
    if (!options.labels) return frame;
    const QFontMetricsF metrics(options.font);
    // Leading labels out takes room, which may lead more labels out: settles after a few rounds.
    for (int round = 0; round < 4; ++round) {
        // Measured on a picture of its own: nothing is painted.
        QPainter none;
        const auto labels = labelsFor(Canvas{none, frame, area, options, design}, build, shapes);
        double right = 0;
        for (const auto& label : labels)
            if (label.where == Label::Where::LedOut)
                right = std::max(right, label.x + label.box.width() - frame.rect(all).right());
        room = area.adjusted(0, ledOutRows(labels, false) * rowHeight(metrics), -std::min(right, area.width() / 3),
                             -ledOutRows(labels, true) * rowHeight(metrics));
        const Frame next = fitted(all, room);
        if (next == frame) break;
        frame = next;
    }
    if (options.snap) frame.origin = {std::round(frame.origin.x()), std::round(frame.origin.y())};
    return frame;
}

void paintCut(QPainter& painter, const QRectF& target, const analysis::Answer& answer, const design::Design& design,
              const PaintOptions& options) {
    if (!answer.build || answer.build->windowWidth <= 0 || answer.build->windowHeight <= 0) return;
    const CoilBuild& build = *answer.build;
    const auto shapes = shapesOf(build, design);
    const Frame frame = options.frame ? *options.frame : fittedFrame(target, build, design, options);
    painter.save();
    painter.setFont(options.font);
    painter.setRenderHint(QPainter::Antialiasing, !options.snap);
    const Canvas canvas{painter, frame, drawingArea(target, build, options), options, design};
    painter.fillRect(target, canvas.base());
    painter.save();
    painter.setClipRect(canvas.area.adjusted(-3, -3, 3, 3), Qt::IntersectClip);
    paintIron(canvas, build);
    const QRectF window = canvas.seen(canvas.rect({0, build.windowWidth, 0, build.windowHeight}));
    painter.fillRect(window.adjusted(1, 1, 0, 0), canvas.base());
    paintIronNames(canvas, build);
    paintInsulation(canvas, build, shapes);
    for (const auto& shape : shapes) {
        const bool shared = std::any_of(shapes.data(), &shape,
                                        [&](const Shape& s) { return s.kind == shape.kind && s.box == shape.box; });
        if (shape.kind == Shape::Kind::Section) paintSection(canvas, build, shape, shared);
        if (shape.kind == Shape::Kind::Shield) paintShield(canvas, shape);
    }
    paintOvershoots(canvas, build);
    paintSelection(canvas, build, shapes);
    if (options.ends)
        for (const auto& shape : shapes) paintEnds(canvas, shape);
    painter.restore();
    if (options.state) {
        const auto borders = bordersOf(build, design, shapes, *options.state);
        paintLadders(canvas, borders, laddersFor(canvas, borders));
    }
    if (options.labels) paintLabels(canvas, labelsFor(canvas, build, shapes), shapes);
    if (options.rulers) paintRulers(canvas, target);
    paintFitSentences(canvas, target, fitSentences(build), ladderLegend(options));
    painter.restore();
}

}  // namespace cut
