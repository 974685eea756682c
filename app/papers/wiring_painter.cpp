// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "papers/paper_text.h"
#include "papers/test_plan.h"

namespace papers {

namespace {

constexpr double boxStroke = 0.3, dot = 0.7, pitch = 9, boxWidth = 38, head = 5;
constexpr int mostLines = 5;  // in a box; all of it stands below the picture

struct Wiring {
    Paper& paper;
    const shop::PlanWiring& wiring;

    void box(const QRectF& rect, const QString& name, const QString& words) const {
        paper.box(rect, boxStroke);
        paper.text({rect.left(), rect.top() + 0.8, rect.width(), head}, name, {9, true, {}, Qt::AlignHCenter});
        paper.paragraph({rect.left() + 1.5, rect.top() + head + 1.2, rect.width() - 3, 0}, words,
                        {8, false, Paper::muted(), Qt::AlignHCenter}, mostLines);
    }
    /// An earth below `at`.
    void earth(const QPointF& at) const {
        paper.line(at, at + QPointF(0, 2), boxStroke);
        for (int bar = 0; bar < 3; ++bar) {
            const double half = 1.5 - 0.5 * bar, y = at.y() + 2 + 0.6 * bar;
            paper.line({at.x() - half, y}, {at.x() + half, y}, boxStroke);
        }
    }
    /// Wires between the unit's side `x` and the instrument's side `from`, a terminal a wire.
    void wires(const std::vector<std::string>& terminals, double from, double x, double top) const {
        for (std::size_t k = 0; k < terminals.size(); ++k) {
            const double y = top + head + 4 + pitch * static_cast<double>(k);
            if (k < 2) paper.line({from, y}, {x, y}, boxStroke);
            paper.circle({x, y}, dot, true, boxStroke);
            const bool left = from < x;
            const QString sign = k % 2 == 0 ? QStringLiteral("+ ") : QStringLiteral("− ");
            const double wide = 24;
            paper.text({left ? x + 1.5 : x - 1.5 - wide, y - 2, wide, 4}, sign + qt(terminals[k]),
                       {8, true, {}, left ? Qt::AlignLeft : Qt::AlignRight});
        }
    }
};

}  // namespace

double paintWiring(Paper& paper, const QRectF& rect, const shop::PlanWiring& wiring) {
    const Wiring drawing{paper, wiring};
    const double tall = head + 4 + 2 * pitch;
    const QRectF generator(rect.left(), rect.top(), boxWidth, tall);
    const QRectF analyser(rect.right() - boxWidth, rect.top(), boxWidth, tall);
    const double unitWidth = rect.width() - 2 * boxWidth - 36;
    const QRectF unit(rect.center().x() - unitWidth / 2, rect.top(), unitWidth, tall);
    // Each box's name stands before its words in the hook-up.
    const auto behind = [](const std::string& words) {
        const auto comma = words.find(", ");
        return comma == std::string::npos ? QString() : qt(words.substr(comma + 2));
    };
    drawing.box(generator, QStringLiteral("generator"), behind(wiring.generator));
    drawing.box(unit, QStringLiteral("unit"), {});
    drawing.box(analyser, QStringLiteral("analyser"), behind(wiring.analyser));
    if (!wiring.driven.empty()) drawing.wires(wiring.driven, generator.right(), unit.left(), rect.top());
    if (!wiring.observed.empty()) drawing.wires(wiring.observed, analyser.left(), unit.right(), rect.top());
    double y = unit.bottom();
    if (!wiring.earthed.empty()) {
        drawing.earth({unit.center().x(), y});
        std::string names;
        for (const std::string& name : wiring.earthed) names += (names.empty() ? "" : ", ") + name;
        paper.text({unit.center().x() + 3, y + 0.6, rect.right() - unit.center().x() - 3, 4}, qt("earthed: " + names),
                   {8, false, {}, Qt::AlignLeft});
        y += 5.5;
    }
    if (!wiring.othersWords.empty())
        y += paper.paragraph({rect.left(), y, rect.width(), 0}, qt("also on the unit: " + wiring.othersWords),
                             {8, false, {}, Qt::AlignLeft});
    return y + 1 - rect.top();
}

}  // namespace papers
