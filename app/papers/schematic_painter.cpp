// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "papers/drawings.h"

namespace papers {

namespace {

constexpr double lineWidth = 0.3;  // mm
constexpr double terminalRadius = 0.7;
constexpr double leadLength = 9;
constexpr double namePitch = 5.5;    // least distance of two names, with a title between them
constexpr double shieldLeads = 5.2;  // from one shield's lead to the next
constexpr double nameRoom = 7;       // of each end and tap, with the winding's title
constexpr int humps = 4;             // of the symbol, whatever the winding

/// Earth below a terminal, outside the unit: a stem and three bars.
void earth(Paper& paper, const QPointF& terminal) {
    const QPointF foot = terminal + QPointF(0, 2.2);
    paper.line(terminal + QPointF(0, terminalRadius), foot, lineWidth);
    for (int bar = 0; bar < 3; ++bar) {
        const double half = 1.5 - 0.5 * bar, y = foot.y() + 0.6 * bar;
        paper.line({foot.x() - half, y}, {foot.x() + half, y}, lineWidth);
    }
}

struct Drawing {
    Paper& paper;
    const shop::Schematic& schematic;

    [[nodiscard]] bool earthed(const std::string& node) const {
        return std::find(schematic.earthed.begin(), schematic.earthed.end(), node) != schematic.earthed.end();
    }
    /// A lead from the coil at `from` outward to a terminal with its name.
    void terminal(const QPointF& from, int side, const std::string& name) const {
        const QPointF end = from + QPointF(side * leadLength, 0);
        paper.line(from, end, lineWidth);
        if (earthed(name)) earth(paper, end);
        paper.circle(end, terminalRadius, false, lineWidth);
        Type type{8, true, {}, side < 0 ? Qt::AlignRight : Qt::AlignLeft};
        const double wide = 14;
        const double x = side < 0 ? end.x() - terminalRadius - 1 - wide : end.x() + terminalRadius + 1;
        paper.text({x, end.y() - 2, wide, 4}, QString::fromStdString(name), type);
    }
    /// A winding from (x, top) down; its terminals on `side` (-1 left, 1 right), its humps toward the core.
    void winding(const shop::SchematicWinding& one, double x, double top, double height, int side) const {
        const double step = height / humps;
        for (int k = 0; k < humps; ++k)
            paper.arc({x, top + (k + 0.5) * step}, step / 2, 90, side < 0 ? -180 : 180, lineWidth);
        terminal({x, top}, side, one.start);
        terminal({x, top + height}, side, one.finish);
        // Taps stand at even distances, in their order: a symbol has no scale, and names need room.
        std::vector<shop::SchematicTap> taps = one.taps;
        std::stable_sort(taps.begin(), taps.end(), [](const auto& a, const auto& b) { return a.share < b.share; });
        const double gap = height / static_cast<double>(taps.size() + 1);
        for (std::size_t k = 0; k < taps.size(); ++k)
            terminal({x, top + static_cast<double>(k + 1) * gap}, side, taps[k].terminal);
        const double dot = one.dotAtStart ? top + 1.6 : top + height - 1.6;
        paper.circle({x + side * 1.8, dot}, 0.65, true, lineWidth);
        const Type type{7.5, false, Paper::muted(), side < 0 ? Qt::AlignRight : Qt::AlignLeft};
        const double wide = leadLength + 14;
        paper.text({side < 0 ? x - wide - 3.5 : x + 3.5, top + gap / 2 - 2, wide, 4}, QString::fromStdString(one.title),
                   type);
    }
    void column(const std::vector<const shop::SchematicWinding*>& windings, const QRectF& area, double x,
                int side) const {
        // Each winding's room is by its names: start, finish, taps.
        const auto names = [](const shop::SchematicWinding& one) { return static_cast<double>(one.taps.size() + 2); };
        double all = 0, top = area.top();
        for (const auto* one : windings) all += names(*one);
        for (const auto* one : windings) {
            const double room = area.height() * names(*one) / all;
            const double least = std::min(namePitch * (names(*one) - 1), room * (1 - 1 / names(*one)));
            const double height = std::max(std::min(24.0, room - 8), least);
            winding(*one, x, top + (room - height) / 2, height, side);
            top += room;
        }
    }
};

/// What is taken below the windings by the leads of shields and core.
double footOf(const shop::Schematic& schematic) {
    const auto shields = static_cast<double>(schematic.shields.size());
    return 9 + (shields > 1 ? shieldLeads * (shields - 1) : 0);
}

}  // namespace

double schematicRoom(const shop::Schematic& schematic) {
    double driven = 0, others = 0;
    for (const shop::SchematicWinding& one : schematic.windings)
        (one.driven ? driven : others) += nameRoom * static_cast<double>(one.taps.size() + 2);
    return std::max(driven, others) + footOf(schematic);
}

void paintSchematic(Paper& paper, const QRectF& rect, const shop::Schematic& schematic, const QString& core) {
    const Drawing drawing{paper, schematic};
    std::vector<const shop::SchematicWinding*> left, right;
    for (const shop::SchematicWinding& winding : schematic.windings)
        (winding.driven ? left : right).push_back(&winding);
    const auto shields = static_cast<double>(schematic.shields.size());
    const double shieldPitch = std::min(5.0, 18 / std::max(1.0, shields));
    const double middle = rect.center().x(), coreHalf = 0.8, gap = 3.5;
    const QRectF area = rect.adjusted(0, 0, 0, -footOf(schematic));
    const std::size_t most = std::max<std::size_t>({left.size(), right.size(), 1});
    const double tall = std::min(area.height(), 34.0 * static_cast<double>(most));
    const QRectF inner(area.left(), area.top(), area.width(), tall);
    // From left to right: primary, shields, core, the others.
    const double width = shields * shieldPitch;
    const double coreX = middle + width / 2;
    drawing.column(left, inner, middle - width / 2 - coreHalf - gap - 1.5, -1);
    drawing.column(right, inner, coreX + coreHalf + gap + 1.5, 1);
    for (const double x : {coreX - coreHalf, coreX + coreHalf})
        paper.line({x, inner.top() + 1}, {x, inner.bottom()}, 0.5);
    if (schematic.coreReachable) {
        const QPointF end(coreX + coreHalf, inner.bottom() - 0.25);
        paper.line({coreX - coreHalf, end.y()}, end, lineWidth);
        const QPointF corner(coreX + coreHalf, inner.bottom() + 2.5);
        paper.line(end, corner, lineWidth);
        const QPointF lead = corner + QPointF(8, 0);
        paper.line(corner, lead, lineWidth);
        paper.circle(lead, terminalRadius, false, lineWidth);
        if (drawing.earthed("core")) earth(paper, lead);
        paper.text({lead.x() + 1.7, lead.y() - 2, 14, 4}, core, {8, true, {}, Qt::AlignLeft});
    }
    for (std::size_t k = 0; k < schematic.shields.size(); ++k) {
        const shop::SchematicShield& shield = schematic.shields[k];
        const double x = coreX - coreHalf - gap - (shields - static_cast<double>(k) - 1) * shieldPitch;
        const double y = inner.bottom() + 2.5 + shieldLeads * static_cast<double>(k);
        const QPointF end(middle - width / 2 - coreHalf - gap - 6, y);
        paper.polyline({{x, inner.top() + 1}, {x, inner.bottom()}}, lineWidth, Paper::ink(), {6, 4});
        paper.line({x, inner.bottom()}, {x, y}, lineWidth);
        paper.line({x, y}, end, lineWidth);
        paper.circle(end, terminalRadius, false, lineWidth);
        if (drawing.earthed(shield.terminal)) earth(paper, end);
        const double edge = std::max(rect.left(), end.x() - 26);
        paper.text({edge, y - 2, end.x() - 1.7 - edge, 4}, QString::fromStdString(shield.terminal),
                   {8, true, {}, Qt::AlignRight});
    }
}

}  // namespace papers
