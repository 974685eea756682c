// SPDX-License-Identifier: GPL-3.0-or-later
#include "cut/ladders.h"

#include <algorithm>
#include <cmath>

#include "bench/language.h"
#include "cut/item_words.h"
#include "units/text.h"

namespace cut {

using bench::Token;

namespace {

constexpr double tickLength = 4, longestRail = 44, gap = 6;  // painter units
constexpr int mostTicks = 8;

QString number(units::Kind kind, double value, int digits) {
    QString text = QString::fromStdString(units::write(kind, value, digits));
    if (text.startsWith(QLatin1Char('-'))) text[0] = QChar(0x2212);
    return text;
}

double mean(const analysis::LayerState& layer) {
    return (layer.startVolts + layer.finishVolts) / 2;
}

/// Volts of the layer of a section that lies farthest out (or in), or of a shield.
double voltsOf(const coil::CoilBuild& build, const analysis::CoilState& state, const Shape& shape, bool farthestOut) {
    if (shape.kind == Shape::Kind::Shield) {
        for (std::size_t k = 0; k < build.foils.size(); ++k)
            if (build.foils[k].item == shape.item) return state.foilVolts[k];
        return 0;
    }
    double edge = 0, sum = 0;
    int count = 0;
    for (std::size_t k = 0; k < build.layers.size(); ++k) {
        const auto& layer = build.layers[k];
        if (layer.item != shape.item) continue;
        const double at = farthestOut ? layer.box.x1 : -layer.box.x0;
        if (count > 0 && at < edge - 1e-9) continue;
        if (count == 0 || at > edge + 1e-9) {
            edge = at;
            sum = 0;
            count = 0;
        }
        sum += mean(state.layers[k]);
        ++count;
    }
    return count > 0 ? sum / count : 0;
}

double ampereTurnsInside(const coil::CoilBuild& build, const analysis::CoilState& state, design::ItemIndex item) {
    double sum = 0;
    for (std::size_t k = 0; k < build.layers.size(); ++k)
        if (build.layers[k].item.place == item.place && build.layers[k].item.item <= item.item)
            sum += state.layers[k].ampereTurns;
    return sum;
}

double largest(const std::vector<Border>& borders, bool volts) {
    double most = 0;
    for (const auto& b : borders)
        most = std::max(most,
                        volts ? std::max(std::abs(b.insideVolts), std::abs(b.outsideVolts)) : std::abs(b.ampereTurns));
    return most;
}

/// 1, 2 or 5 times a power of ten, so that `most` has at most eight ticks.
double stepFor(double most) {
    const double wanted = most / mostTicks, decade = std::pow(10.0, std::floor(std::log10(wanted)));
    for (const double times : {1.0, 2.0, 5.0})
        if (times * decade >= wanted * (1 - 1e-12)) return times * decade;
    return 10 * decade;
}

/// Numbers of one column alike: the same prefix and decimals for all, three digits for the largest.
class Column {
public:
    Column(double most, QLatin1Char unit) : unit_(unit) {
        if (!(most > 0)) return;
        const int exponent = static_cast<int>(std::floor(std::log10(most)));
        if (exponent < -1) prefix_ = exponent < -4 ? micro : milli;
        decimals_ = std::clamp(2 - exponent - prefix_.exponent, 0, 6);
    }
    [[nodiscard]] QString bare(double value) const {
        QString text = QString::number(value * std::pow(10.0, prefix_.exponent), 'f', decimals_);
        if (!text.startsWith(QLatin1Char('-'))) return text;
        const bool nothing = text.toDouble() == 0;
        text.remove(0, 1);
        return nothing ? text : QChar(0x2212) + text;
    }
    [[nodiscard]] QString with(double value) const {
        return bare(value) + QLatin1Char(' ') + QString::fromUtf8(prefix_.sign) + unit_;
    }

private:
    struct Prefix {
        int exponent;
        const char* sign;
    };
    static constexpr Prefix milli{3, "m"}, micro{6, "µ"};
    QLatin1Char unit_;
    Prefix prefix_{0, ""};
    int decimals_ = 0;
};

/// How much a border has to tell, from 0 to 2.
double weight(const Border& border, double mostAmperes, double mostVolts) {
    double sum = 0;
    if (mostAmperes > 0) sum += std::abs(border.ampereTurns) / mostAmperes;
    if (mostVolts > 0) sum += std::abs(border.outsideVolts - border.insideVolts) / mostVolts;
    return sum;
}

/// Of a rail from `from` to the right: ticks above it (`up`) or below.
void paintRail(const Canvas& canvas, const QPointF& from, double value, double unit, double step, bool up) {
    auto& p = canvas.painter;
    const double side = up ? -tickLength : tickLength, reach = std::abs(value) * unit;
    p.drawLine(from, from + QPointF(reach, 0));
    const int ticks = static_cast<int>(std::floor(std::abs(value) / step + 1e-6));
    for (int t = 0; t <= ticks; ++t) {
        const QPointF at = from + QPointF(std::round(t * step * unit), 0);
        p.drawLine(at, at + QPointF(0, side));
    }
}

void placeColumns(const Canvas& canvas, Ladders& all) {
    const QFontMetricsF metrics(canvas.options.font);
    double amperes = 0, volts = 0;
    for (const auto& row : all.rows) {
        amperes = std::max(amperes, metrics.horizontalAdvance(row.amperes));
        volts = std::max(volts, metrics.horizontalAdvance(row.volts));
    }
    double at = 4;
    if (all.ampereUnit > 0) {
        all.ampereText = at + longestRail + gap;
        at = all.ampereText + amperes + 2 * gap;
    }
    if (all.voltUnit > 0) {
        all.voltRail = at;
        all.voltText = at + longestRail + gap;
        at = all.voltText + volts + gap;
    }
    all.width = at;
}

}  // namespace

std::vector<Border> bordersOf(const coil::CoilBuild& build, const design::Design& design,
                              const std::vector<Shape>& shapes, const analysis::CoilState& state) {
    std::vector<Border> borders;
    if (!state.known() || state.layers.size() != build.layers.size()) return borders;
    const Shape* inner = nullptr;
    for (const auto& shape : shapes) {
        if (shape.kind == Shape::Kind::Barrier) continue;
        const Shape* before = inner;
        inner = &shape;
        if (before == nullptr || before->item.place != shape.item.place || before->box == shape.box) continue;
        const bool mirrored = shape.leg == 2;
        Border b;
        for (const auto& [name, one] : {std::pair{&b.inside, before}, std::pair{&b.outside, &shape}})
            if (const auto* item = itemAt(design, one->item)) *name = itemName(*item);
        b.x = mirrored ? (before->box.x0 + shape.box.x1) / 2 : (before->box.x1 + shape.box.x0) / 2;
        b.y0 = std::max(before->box.y0, shape.box.y0);
        b.y1 = std::min(before->box.y1, shape.box.y1);
        b.ampereTurns = ampereTurnsInside(build, state, before->item);
        b.insideVolts = voltsOf(build, state, *before, true);
        b.outsideVolts = voltsOf(build, state, shape, false);
        if (b.y1 > b.y0) borders.push_back(b);
    }
    return borders;
}

Ladders laddersFor(const Canvas& canvas, const std::vector<Border>& borders) {
    Ladders all;
    const double amperes = canvas.options.ampereTurns ? largest(borders, false) : 0,
                 volts = canvas.options.layerVolts ? largest(borders, true) : 0;
    const auto scale = [](double most, double& unit, double& step) {
        if (!(most > 0) || !std::isfinite(most)) return;
        unit = longestRail / most;
        step = stepFor(most);
    };
    scale(amperes, all.ampereUnit, all.ampereStep);
    scale(volts, all.voltUnit, all.voltStep);
    if (all.ampereUnit <= 0 && all.voltUnit <= 0) return all;
    const double high = QFontMetricsF(canvas.options.font).height() + 2;
    const Column ampereColumn(amperes, QLatin1Char('A')), voltColumn(volts, QLatin1Char('V'));
    for (int k = 0; k < static_cast<int>(borders.size()); ++k) {
        const auto& b = borders[static_cast<std::size_t>(k)];
        LadderRow row{k, canvas.frame.point(b.x, b.y1), {}, {}, {}};
        if (row.dot.x() < canvas.area.left() || row.dot.x() > canvas.area.right()) continue;
        if (all.ampereUnit > 0) row.amperes = ampereColumn.with(b.ampereTurns);
        if (all.voltUnit > 0)
            row.volts = voltColumn.bare(b.insideVolts) + QStringLiteral(" | ") + voltColumn.with(b.outsideVolts);
        all.rows.push_back(row);
    }
    double top = canvas.area.top(), bottom = canvas.area.bottom();
    for (const auto& b : borders) {
        top = std::max(top, canvas.frame.point(0, b.y1).y() + high);
        bottom = std::min(bottom, canvas.frame.point(0, b.y0).y());
    }
    while (!all.rows.empty() && static_cast<double>(all.rows.size()) * high > bottom - top) {
        const auto told = [&](const LadderRow& row) {
            return weight(borders[static_cast<std::size_t>(row.border)], amperes, volts);
        };
        all.rows.erase(std::min_element(all.rows.begin(), all.rows.end(),
                                        [&](const auto& a, const auto& b) { return told(a) < told(b); }));
    }
    placeColumns(canvas, all);
    const double left = std::round(canvas.area.right() - all.width);
    for (auto& row : all.rows) {
        row.row = QRectF(left, top, all.width, high);
        row.dot.setY(std::round(row.row.center().y()));
        top += high;
    }
    return all;
}

void paintLadders(const Canvas& canvas, const std::vector<Border>& borders, const Ladders& ladders) {
    auto& p = canvas.painter;
    const QColor ink = canvas.colour(Token::Text), line = canvas.colour(Token::Muted);
    for (const auto& row : ladders.rows) {
        const auto& border = borders[static_cast<std::size_t>(row.border)];
        p.setPen(canvas.pen(line));
        p.drawLine(row.dot, QPointF(row.row.left(), row.dot.y()));
        p.fillRect(QRectF(row.dot.x() - 2, row.dot.y() - 2, 4, 4), line);
        p.fillRect(row.row, canvas.base());
        p.setPen(canvas.pen(ink));
        const auto words = [&](double x, const QString& text) {
            p.drawText(row.row.adjusted(x, 0, 0, 0), Qt::AlignVCenter | Qt::AlignLeft, text);
        };
        if (ladders.ampereUnit > 0) {
            const QPointF from(row.row.left() + 4, row.dot.y());
            paintRail(canvas, from, border.ampereTurns, ladders.ampereUnit, ladders.ampereStep,
                      border.ampereTurns >= 0);
            words(ladders.ampereText, row.amperes);
        }
        if (ladders.voltUnit > 0) {
            const QPointF from(row.row.left() + ladders.voltRail, row.dot.y());
            paintRail(canvas, from, border.insideVolts, ladders.voltUnit, ladders.voltStep, true);
            paintRail(canvas, from, border.outsideVolts, ladders.voltUnit, ladders.voltStep, false);
            words(ladders.voltText, row.volts);
        }
    }
}

QStringList ladderLegend(const PaintOptions& options) {
    QStringList lines;
    if (!options.state || !options.state->known()) return lines;
    const QString driven = QString::fromStdString(options.state->driven),
                  observed = QString::fromStdString(options.state->observed);
    if (options.ampereTurns)
        lines << bench::translated("A: ampere-turns at each border for 1 A into %1, %2 shorted").arg(driven, observed);
    if (options.layerVolts)
        lines << bench::translated("V: layers inside | outside each border for 1 V at %1").arg(driven);
    return lines;
}

QString borderTip(const Border& border, const analysis::CoilState& state) {
    const QString driven = QString::fromStdString(state.driven), observed = QString::fromStdString(state.observed),
                  hookUp = QString::fromStdString(state.hookUp);
    return bench::translated("Between %1 and %2 (hook-up %3)\n").arg(border.inside, border.outside, hookUp) +
           bench::translated(
               "Ampere-turns %1 for 1 A into %2 with %3 shorted, 1 kHz: all layers from the core to here.\n"
               "Their square, over the height of the border, is the leakage field: interleaving keeps them small.\n")
               .arg(number(units::Kind::Current, border.ampereTurns, 3), driven, observed) +
           bench::translated(
               "Layer voltages %1 inside and %2 outside for 1 V at %4, 1 kHz, to earth: middle of each layer.\n"
               "Their difference of %3 charges the capacitance between the two.")
               .arg(number(units::Kind::Voltage, border.insideVolts, 3),
                    number(units::Kind::Voltage, border.outsideVolts, 3),
                    number(units::Kind::Voltage, std::abs(border.outsideVolts - border.insideVolts), 3), driven);
}

}  // namespace cut
