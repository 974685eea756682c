// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/test_plan.h"

#include <QRegularExpression>
#include <algorithm>

#include "papers/grid.h"
#include "papers/missing_characters.h"
#include "papers/shop_file.h"
#include "shop/unit_verdict.h"
#include "units/text.h"

namespace papers {

namespace {

constexpr double rowType = 8, planRow = 5.2, noteSize = 8.5, wiringHeight = 36;

/// With a minus sign before numbers below zero.
QString printed(const std::string& text) {
    static const QRegularExpression below(QStringLiteral("(^|[ (])-(?=\\d)"));
    return QString::fromStdString(text).replace(below, QStringLiteral("\\1−"));
}

QString limit(const shop::PlanRow& row, const std::optional<double>& value) {
    return value ? printed(shop::limitText(row.kind, *value)) : QString();
}

/// Room for a number, or yes and no to ring; a dash where nothing is read.
QString reading(const shop::PlanRow& row) {
    switch (shop::asked(row)) {
        case shop::Asked::Reading:
            return {};
        case shop::Asked::Answer:
            return QStringLiteral("yes   no");
        default:
            return QStringLiteral("–");
    }
}

class PlanPages {
public:
    PlanPages(Paper& paper, const shop::TestPlan& plan, int pages) : plan_(plan), flow_(paper, plan.head, pages) {}

    int paint() {
        bench();
        for (const shop::PlanStage& stage : plan_.stages) {
            flow_.gap(3);
            flow_.heading(printed("Stage: " + stage.name));
            flow_.paragraph(printed(stage.when), note());
            flow_.gap(1);
            rows(stage);
        }
        flow_.gap(3);
        flow_.heading(QStringLiteral("Where the limits come from, and what a row cannot tell"));
        origins();
        list(QStringLiteral("Not tested"), plan_.untested);
        list(QStringLiteral("Notes"), plan_.notes);
        list(QStringLiteral("Cautions"), plan_.cautions);
        if (const QString missing = missingCharacters(flow_.paper()); !missing.isEmpty())
            flow_.paragraph(missing, note());
        return flow_.end();
    }

private:
    static Type note() { return {noteSize, false, {}, Qt::AlignLeft}; }

    void bench() {
        flow_.blank(0, 50, QStringLiteral("serial"));
        flow_.blank(55, 40, QStringLiteral("date"));
        flow_.blank(100, 35, QStringLiteral("initials"));
        flow_.blank(140, 40, QStringLiteral("room, °C"));
        flow_.gap(8);
        flow_.heading(printed("Fixture: " + plan_.fixture));
        flow_.need(wiringHeight);
        const QRectF column = flow_.column();
        flow_.gap(paintWiring(flow_.paper(), {column.left(), flow_.y(), column.width(), wiringHeight}, plan_.wiring));
        flow_.gap(1);
        for (const std::string& words : plan_.bench) {
            flow_.paragraph(printed(words), note());
            flow_.gap(0.6);
        }
        flow_.gap(1);
        flow_.facts(plan_.upkeep, 30);
    }
    void rows(const shop::PlanStage& stage) {
        std::vector<QStringList> cells;
        cells.reserve(stage.rows.size());
        for (const shop::PlanRow& row : stage.rows) {
            const QString hookUp = row.hookUp == plan_.wiring.words ? QStringLiteral("As drawn.") : printed(row.hookUp);
            QString how = hookUp;
            if (!row.settings.empty()) {
                const QString settings = printed(row.settings);
                how += ' ' + settings.left(1).toUpper() + settings.mid(1) + '.';
            }
            if (!row.method.empty()) how += ' ' + printed(row.method);
            cells.push_back({QString::number(row.step), printed(row.what), how, limit(row, row.low),
                             limit(row, row.high), reading(row)});
        }
        paintGrid(flow_,
                  {{QStringLiteral("no"), 9},
                   {QStringLiteral("test"), 37},
                   {QStringLiteral("connect, set, do"), 0},
                   {QStringLiteral("at least"), 19, Qt::AlignRight},
                   {QStringLiteral("at most"), 19, Qt::AlignRight},
                   {QStringLiteral("reading"), 21}},
                  cells, rowType, planRow);
    }
    /// Rows that say the same share a line.
    void origins() {
        struct Line {
            QStringList steps;
            QString test, from, doubt;
        };
        std::vector<Line> lines;
        for (const shop::PlanStage& stage : plan_.stages)
            for (const shop::PlanRow& row : stage.rows) {
                if (row.origin.empty() && row.doubt.empty()) continue;
                const QString from = printed(row.origin), doubt = printed(row.doubt), test = printed(row.what);
                const auto same = std::find_if(lines.begin(), lines.end(), [&](const Line& line) {
                    return line.from == from && line.doubt == doubt;
                });
                if (same != lines.end())
                    same->steps << QString::number(row.step);
                else
                    lines.push_back({{QString::number(row.step)}, test, from, doubt});
            }
        std::vector<QStringList> cells;
        cells.reserve(lines.size());
        for (const Line& line : lines)
            cells.push_back({line.steps.join(QStringLiteral(", ")), line.steps.size() > 1 ? QString() : line.test,
                             line.from, line.doubt});
        paintGrid(flow_,
                  {{QStringLiteral("no"), 14},
                   {QStringLiteral("test"), 34},
                   {QStringLiteral("limits from"), 0},
                   {QStringLiteral("cannot tell"), 56}},
                  cells, 7.5, planRow);
    }
    void list(const QString& heading, const std::vector<std::string>& all) {
        if (all.empty()) return;
        flow_.gap(3);
        flow_.heading(heading);
        for (const std::string& words : all) {
            flow_.paragraph(printed(words), note());
            flow_.gap(0.8);
        }
    }

    const shop::TestPlan& plan_;
    Flow flow_;
};

}  // namespace

Printed printed(const shop::TestPlan& plan, Format format, const std::string& design) {
    return {shopFile(plan.head, format, design),
            [plan](Paper& paper, int pages) { return PlanPages(paper, plan, pages).paint(); }, 4};
}

}  // namespace papers
