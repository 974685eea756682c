// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/chart_painter.h"

#include <algorithm>
#include <cmath>

#include "bench/theme.h"
#include "plots/scale.h"

namespace papers {

namespace {

constexpr double lowest = 1, highest = 1e6;  // Hz, as on the screen
constexpr double curveWidth = 0.4;           // mm
constexpr Type axisType{7.5, false, {}, Qt::AlignHCenter};

struct Stroke {
    QColor colour;
    QVector<double> dashes;  // in widths of the pen
};
/// Told apart in black and white too.
Stroke strokeOf(std::size_t index) {
    static const std::vector<QVector<double>> dashes{{}, {8, 3}, {8, 3, 2, 3}, {4, 2}, {8, 2, 2, 2, 2, 2}};
    const QColor colours[] = {Paper::accent(), Paper::ink(), Paper::muted()};
    return {colours[index % 3], dashes[index % dashes.size()]};
}

double roundStep(double least) {
    const double decade = std::pow(10, std::floor(std::log10(least)));
    for (const double factor : {1.0, 2.0, 5.0})
        if (factor * decade >= least * (1 - 1e-9)) return factor * decade;
    return 10 * decade;
}

/// The steps that suit an axis of angles.
double degreeStep(double span) {
    for (const double step : {15.0, 45.0, 90.0, 180.0, 360.0})
        if (span / step <= 6) return step;
    return 720;
}

struct Frame {
    QRectF area;
    Span left, right;
    [[nodiscard]] double x(double f) const {
        return area.left() + area.width() * std::log(f / lowest) / std::log(highest / lowest);
    }
    [[nodiscard]] double y(double value, bool onRight) const {
        return area.bottom() - area.height() * (onRight ? right : left).share(value);
    }
};

/// Numbers and grid of a value axis. With `offset` the axis shows value less offset.
void paintValueAxis(Paper& paper, const Frame& frame, const shop::ChartAxis& axis, bool right, double offset,
                    const shop::Words& say) {
    const Span& span = right ? frame.right : frame.left;
    const QColor grid = bench::mixed(Qt::white, bench::colour(bench::Token::Line, false), 0.35);
    Type type = axisType;
    type.align = right ? Qt::AlignLeft : Qt::AlignRight;
    const auto tick = [&](double value, double shown) {
        const double y = frame.y(value, right);
        if (!right) paper.line({frame.area.left(), y}, {frame.area.right(), y}, hairline, grid);
        const double x = right ? frame.area.right() + 1.2 : frame.area.left() - 13.2;
        paper.text({x, y - 2, 12, 4},
                   QString::fromStdString(say.number(plots::tickText(shown, axis.prefixed).toStdString())), type);
    };
    if (span.logarithmic) {
        // Decades too close for their numbers are left out.
        const double decades = std::log10(span.high / span.low);
        const double factor = std::pow(10, std::ceil(4 * decades / frame.area.height()));
        for (double value = span.low; value <= span.high * 1.001; value *= factor) tick(value, value);
    } else {
        const double first = std::ceil((span.low - offset) / span.step - 1e-9) * span.step;
        for (double shown = first; shown + offset <= span.high + 1e-9 * span.step; shown += span.step)
            tick(shown + offset, std::abs(shown) < 1e-9 * span.step ? 0 : shown);
    }
    const double x = right ? frame.area.right() : frame.area.left();
    paper.line({x, frame.area.top()}, {x, frame.area.bottom()});
    const QRectF beside(right ? frame.area.right() + 9.5 : frame.area.left() - 14.5, frame.area.top(), 4,
                        frame.area.height());
    // The heading tells the quantity: where the chart is low, the unit alone does.
    const QString whole = QString::fromStdString(axis.label + ", " + axis.unit);
    const bool fits = paper.width(whole, axisType) <= beside.height();
    paper.textUpward(beside, fits ? whole : QString::fromStdString(axis.unit), axisType);
}

void paintFrequencyAxis(Paper& paper, const Frame& frame, const shop::Words& say) {
    const QColor line = bench::colour(bench::Token::Line, false);
    for (double decade = lowest; decade < highest * 1.5; decade *= 10) {
        const double x = frame.x(decade);
        paper.line({x, frame.area.top()}, {x, frame.area.bottom()}, hairline, bench::mixed(Qt::white, line, 0.35));
        paper.text({x - 6, frame.area.bottom() + 0.8, 12, 4}, plots::tickText(decade, true), axisType);
        for (int k = 2; k < 10 && decade * k < highest; ++k) {
            const double minor = frame.x(decade * k);
            paper.line({minor, frame.area.bottom()}, {minor, frame.area.bottom() - 1});
        }
    }
    paper.line(frame.area.bottomLeft(), frame.area.bottomRight());
    paper.text({frame.area.left(), frame.area.bottom() + 4.2, frame.area.width(), 4},
               QString::fromStdString(say("frequency, Hz")), axisType);
}

void paintMask(Paper& paper, const Frame& frame, const std::vector<design::MaskPoint>& points) {
    const QColor fill = bench::colour(bench::Token::MaskArea, false), edge = bench::colour(bench::Token::Broken, false);
    for (std::size_t k = 1; k < points.size(); ++k) {
        const design::MaskPoint &a = points[k - 1], &b = points[k];
        if (a.frequency <= 0 || b.frequency <= 0) continue;
        const double xa = frame.x(a.frequency), xb = frame.x(b.frequency);
        const auto side = [&](const std::optional<double>& from, const std::optional<double>& to, double end) {
            if (!from || !to) return;
            const QPointF one(xa, frame.y(*from, false)), other(xb, frame.y(*to, false));
            paper.polygon({{xa, end}, one, other, {xb, end}}, fill);
            paper.line(one, other, hairline, edge);
        };
        side(a.low, b.low, frame.area.bottom());
        side(a.high, b.high, frame.area.top());
    }
}

void paintLine(Paper& paper, const Frame& frame, const shop::Chart& chart, std::size_t index) {
    const shop::ChartLine& line = chart.lines[index];
    const Stroke stroke = strokeOf(index);
    std::vector<QPointF> run;
    bool solid = true;
    const auto flush = [&] {
        paper.polyline(run, solid ? curveWidth : 0.7 * curveWidth, stroke.colour,
                       solid ? stroke.dashes : QVector<double>{1, 2 + 2 * static_cast<double>(index)});
        run.clear();
    };
    for (std::size_t k = 0; k < chart.frequency.size(); ++k) {
        const double f = chart.frequency[k], y = line.y[k];
        const bool logarithmic = (line.right ? frame.right : frame.left).logarithmic;
        if (f < lowest || f > highest || !std::isfinite(y) || (logarithmic && y <= 0)) {
            flush();
            continue;
        }
        const bool good = chart.valid && f >= chart.validFrom && (chart.validTo <= 0 || f <= chart.validTo);
        const QPointF point(frame.x(f), frame.y(y, line.right));
        if (good != solid) {
            if (!run.empty()) run.push_back(point);
            flush();
            solid = good;
        }
        run.push_back(point);
    }
    flush();
}

void paintLegend(Paper& paper, const QRectF& rect, const shop::Chart& chart) {
    const Type type{8, false, {}, Qt::AlignLeft};
    double x = rect.right();
    for (std::size_t k = chart.lines.size(); k-- > 0;) {
        const QString label = QString::fromStdString(chart.lines[k].label);
        const double wide = std::min(paper.width(label, type), 45.0);
        x -= wide;
        if (x - 11 < rect.left()) return;
        paper.text({x, rect.top(), wide, rect.height()}, label, type);
        const Stroke stroke = strokeOf(k);
        paper.polyline({{x - 9.5, rect.center().y()}, {x - 1.5, rect.center().y()}}, curveWidth, stroke.colour,
                       stroke.dashes);
        x -= 13;
    }
}

}  // namespace

double Span::share(double value) const {
    return logarithmic ? std::log(value / low) / std::log(high / low) : (value - low) / (high - low);
}

Span spanOf(const shop::Chart& chart, bool right, double fromHz, double toHz) {
    const shop::ChartAxis& axis = right ? chart.right : chart.left;
    double low = std::numeric_limits<double>::infinity(), high = -low;
    for (const shop::ChartLine& line : chart.lines)
        for (std::size_t k = 0; line.right == right && k < line.y.size(); ++k) {
            const double f = chart.frequency[k], y = line.y[k];
            if (f < fromHz || f > toHz || !std::isfinite(y) || (axis.logarithmic && y <= 0)) continue;
            low = std::min(low, y);
            high = std::max(high, y);
        }
    if (!(low <= high)) return {};
    // A mask's upper edge is seen with room above it.
    for (const design::MaskPoint& point : chart.mask)
        if (!right && !axis.logarithmic && point.high && point.frequency > 0) high = std::max(high, *point.high + 1);
    if (axis.logarithmic) {
        const double first = std::pow(10, std::floor(std::log10(low) + 1e-9));
        const double last = std::pow(10, std::ceil(std::log10(high) - 1e-9));
        return {first, std::max(last, 10 * first), 1, true};
    }
    constexpr double mostDecibels = 60;
    if (axis.unit == "dB") low = std::max(low, high - mostDecibels);
    if (axis.unit == "dBu") high = std::min(high, low + mostDecibels);
    const double step = axis.unit == "°" ? degreeStep(high - low) : std::max(1.0, roundStep((high - low) / 6));
    Span span{std::floor(low / step + 1e-9) * step, std::ceil(high / step - 1e-9) * step, step, false};
    while (span.high - span.low < 3 * step) {
        span.high += step;
        if (span.high - span.low < 3 * step) span.low -= step;
    }
    return span;
}

void paintChart(Paper& paper, const QRectF& rect, const shop::Chart& chart, const shop::Words& say) {
    Frame frame;
    const QString title = QString::fromStdString(chart.title);
    const Type heading{10, true, Paper::accent(), Qt::AlignLeft};
    paper.text({rect.left(), rect.top(), rect.width(), 5}, title, heading);
    const double used = paper.width(title, heading) + 6;
    paintLegend(paper, {rect.left() + used, rect.top(), rect.width() - used, 5}, chart);
    frame.area = rect.adjusted(15, 7, -15, -9);
    frame.left = spanOf(chart, false, lowest, highest);
    frame.right = chart.rightOffset ? frame.left : spanOf(chart, true, lowest, highest);
    paper.clip(frame.area);
    paintMask(paper, frame, chart.mask);
    paper.unclip();
    paintFrequencyAxis(paper, frame, say);
    paintValueAxis(paper, frame, chart.left, false, 0, say);
    if (!chart.right.unit.empty()) paintValueAxis(paper, frame, chart.right, true, chart.rightOffset.value_or(0), say);
    paper.clip(frame.area.adjusted(-0.1, -0.1, 0.1, 0.1));
    for (std::size_t k = 0; k < chart.lines.size(); ++k) paintLine(paper, frame, chart, k);
    paper.unclip();
}

}  // namespace papers
