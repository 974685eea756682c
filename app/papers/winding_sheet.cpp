// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/winding_sheet.h"

#include <algorithm>

#include "papers/cut_steps.h"
#include "papers/flow.h"
#include "papers/missing_characters.h"
#include "papers/paper_text.h"
#include "papers/shop_file.h"
#include "shop/fetch_list.h"
#include "shop/paper_words.h"
#include "units/text.h"

namespace papers {

namespace {

constexpr double pictureWidth = 42, pictureHigh = 52, pictureLow = 34, headWidth = 24, stepGap = 3, layerRow = 5.2;

QString numberText(double value) {
    return qt(units::shortest(value));
}

class SheetPages {
public:
    SheetPages(Paper& paper, const shop::WindingSheet& sheet, int pages)
        : paper_(paper), sheet_(sheet), flow_(paper, sheet.head, pages) {}

    int paint() {
        setUp();
        fetch();
        flow_.gap(stepGap);
        flow_.heading(QStringLiteral("How it is done"));
        flow_.facts(sheet_.rules, headWidth);
        flow_.facts(
            {{"Pictures",
              "show the cut with the core's tongue at the left, stretched sideways: pale what lies there, strong "
              "what the step adds; filled circle start, open circle finish"}},
            headWidth);
        for (std::size_t k = 0; k < sheet_.steps.size(); ++k) step(static_cast<int>(k));
        finishing();
        cautions();
        return flow_.end();
    }

private:
    void setUp() {
        const double wide = flow_.column().width() - pictureWidth - 6, top = flow_.y();
        const bool drawn = !sheet_.pins.empty();
        if (drawn) flow_.narrow(0, wide);
        flow_.heading(QStringLiteral("Setting up"));
        flow_.facts(sheet_.setUp, headWidth);
        const double bottom = flow_.y();
        flow_.wide();
        if (drawn) {
            constexpr double high = 58;
            paintBobbinPins(paper_, {flow_.column().right() - pictureWidth, top, pictureWidth, high}, sheet_);
            flow_.moveTo(std::max(bottom, top + high));
        }
        flow_.gap(stepGap);
    }

    /// A row of the list of material: what, how much, and a line for its lot.
    void fetchRow(const std::string& what, const std::string& much) {
        const Type type{fact, false, {}, Qt::AlignLeft};
        constexpr double lot = 42, amount = 40;
        const QRectF column = flow_.column();
        const double wide = column.width() - lot - amount - 2 * cellGap;
        const double height = paper_.paragraphHeight(wide, qt(what), type);
        flow_.need(height + 1);
        paper_.paragraph({column.left(), flow_.y(), wide, 0}, qt(what), type);
        paper_.text({column.left() + wide + cellGap, flow_.y(), amount, Paper::lineHeight(type)}, qt(much),
                    {fact, false, {}, Qt::AlignRight});
        flow_.blank(wide + amount + 2 * cellGap, lot, QStringLiteral("lot"));
        flow_.gap(height + 1);
    }
    void fetch() {
        flow_.heading(QStringLiteral("To fetch, for one unit with waste"));
        for (const auto& row : shop::fetchRows(sheet_.materials, sheet_.head.manner.in)) fetchRow(row.what, row.amount);
    }

    void step(int index) {
        const shop::WindingStep& step = sheet_.steps[static_cast<std::size_t>(index)];
        const bool wire = step.kind == shop::StepKind::Wire;
        const double high = wire ? pictureHigh : pictureLow;
        flow_.gap(stepGap);
        flow_.need(std::min(stepHeight(step, high), flow_.pageHeight()));
        const QRectF all = flow_.column();
        paper_.line({all.left(), flow_.y()}, {all.right(), flow_.y()}, 0.35, Paper::accent());
        flow_.gap(1);
        const Type title{instruction, true, {}, Qt::AlignLeft};
        const double numbers = 14;
        paper_.text({all.left(), flow_.y(), numbers, Paper::lineHeight(title)}, qt(step.number),
                    {instruction, true, Paper::accent(), Qt::AlignLeft});
        flow_.moveTo(
            flow_.y() +
            paper_.paragraph({all.left() + numbers, flow_.y(), all.width() - numbers, 0}, qt(step.title), title) + 1);
        const int page = paper_.page();
        const double top = flow_.y();
        paintCutStep(paper_, {all.right() - pictureWidth, top, pictureWidth, high}, sheet_, index, step.leg);
        flow_.narrow(0, all.width() - pictureWidth - 5);
        flow_.facts(step.facts, headWidth);
        flow_.gap(1);
        actions(step);
        checks(step);
        flow_.need(6);
        flow_.blank(0, 45, QStringLiteral("initials"));
        flow_.blank(50, 45, QStringLiteral("date"));
        flow_.gap(6);
        flow_.wide();
        if (paper_.page() == page) flow_.moveTo(std::max(flow_.y(), top + high + 1));
    }
    /// What a step takes, so that it stands on one page where it can.
    [[nodiscard]] double stepHeight(const shop::WindingStep& step, double picture) {
        const double whole = flow_.column().width();
        flow_.narrow(0, whole - pictureWidth - 5);
        double height = flow_.factsHeight(step.facts, headWidth) + 1 + 6;
        for (const shop::Action& action : step.actions) {
            height += flow_.tickHeight(qt(action.words), counterWidth(step), actionType());
            const std::size_t lines = 2 + step.layers.size() / 2;
            if (action.layers) height += layerRow * static_cast<double>(lines);
        }
        height += 12 * static_cast<double>(step.checks.size());
        flow_.wide();
        return 9 + std::max(height, picture);
    }
    static Type actionType() { return {instruction, false, {}, Qt::AlignLeft}; }
    static double counterWidth(const shop::WindingStep& step) {
        const bool counted = std::any_of(step.actions.begin(), step.actions.end(),
                                         [](const shop::Action& a) { return a.counter.has_value(); });
        return counted ? 15 : 0;
    }
    void actions(const shop::WindingStep& step) {
        const Type type = actionType();
        const double before = counterWidth(step);
        for (const shop::Action& action : step.actions) {
            flow_.tick(action.counter ? numberText(*action.counter) : QString(), qt(action.words), before, type);
            if (action.layers) layers(step.layers);
        }
    }
    /// Two layers a line: number, way, turns, counter, box to tick.
    void layers(const std::vector<shop::LayerRow>& rows) {
        const Type plain{fact, false, {}, Qt::AlignRight}, bold{fact, true, {}, Qt::AlignRight};
        const Type head{8, false, Paper::muted(), Qt::AlignRight};
        constexpr double row = layerRow, box = 3.4, indent = 6;
        const int columns = rows.size() > 1 ? 2 : 1;
        const double wide = (flow_.column().width() - indent) / 2 - 2, x0 = flow_.column().left() + indent;
        const auto cells = [&](int k, const QString& n, const QString& way, const QString& turns,
                               const QString& counter, const Type& type, const Type& last) {
            const double x = x0 + k * (wide + 4);
            paper_.text({x, flow_.y(), 8, row}, n, type);
            paper_.text({x + 9, flow_.y(), 21, row}, way,
                        {type.size - (type.size > 9 ? 1 : 0), false, type.colour, Qt::AlignLeft});
            paper_.text({x + 29, flow_.y(), wide - 50, row}, turns, type);
            paper_.text({x + wide - 20, flow_.y(), 15, row}, counter, last);
        };
        flow_.need(2 * row);
        for (int k = 0; k < columns; ++k)
            cells(k, QStringLiteral("layer"), QStringLiteral("from to"), QStringLiteral("turns"),
                  QStringLiteral("counter"), head, head);
        flow_.gap(row - 1);
        for (std::size_t k = 0; k < rows.size(); k += 2) {
            flow_.need(row);
            for (std::size_t j = k; j < std::min(k + 2, rows.size()); ++j) {
                const shop::LayerRow& layer = rows[j];
                const int at = static_cast<int>(j - k);
                cells(at, QString::number(layer.number),
                      layer.fromLow ? QStringLiteral("low → high") : QStringLiteral("high → low"),
                      numberText(layer.turns), numberText(layer.counter), plain, bold);
                paper_.box({x0 + at * (wide + 4) + wide - box, flow_.y() + (row - box) / 2, box, box}, 0.25);
            }
            flow_.gap(row);
        }
        flow_.gap(1);
    }
    void checks(const shop::WindingStep& step) {
        for (const shop::ResistanceCheck& check : step.checks) {
            flow_.need(14);
            flow_.tick({}, qt(shop::checkWords(check)), 0, {fact, true, {}, Qt::AlignLeft});
            flow_.blank(6, 50, QStringLiteral("measured"));
            flow_.blank(60, 30, QStringLiteral("at °C"));
            flow_.gap(6);
        }
    }

    void finishing() {
        flow_.newPage();
        const shop::Finishing& all = sheet_.finishing;
        flow_.heading(QStringLiteral("Finishing"));
        flow_.facts({{"Sheet", all.outline}}, headWidth);
        for (const auto& step : all.steps) {
            flow_.gap(1.5);
            flow_.need(20);
            flow_.paragraph(qt(step.number + "  " + step.title), {instruction, true, {}, Qt::AlignLeft});
            for (const std::string& words : step.words) flow_.tick({}, qt(words), 0, {11, false, {}, Qt::AlignLeft});
        }
    }
    void cautions() {
        flow_.gap(stepGap);
        flow_.heading(QStringLiteral("Cautions"));
        for (const std::string& words : sheet_.finishing.cautions) {
            flow_.paragraph(qt(words), {fact, false, {}, Qt::AlignLeft});
            flow_.gap(1);
        }
        if (const QString missing = missingCharacters(paper_); !missing.isEmpty())
            flow_.paragraph(missing, {fact, false, {}, Qt::AlignLeft});
    }

    Paper& paper_;
    const shop::WindingSheet& sheet_;
    Flow flow_;
};

}  // namespace

Printed printed(const shop::WindingSheet& sheet, Format format, const std::string& design) {
    const int guess = 2 + static_cast<int>(sheet.steps.size()) / 2;
    return {shopFile(sheet.head, sheet.head.title, format, design),
            [sheet](Paper& paper, int pages) { return SheetPages(paper, sheet, pages).paint(); }, guess};
}

}  // namespace papers
