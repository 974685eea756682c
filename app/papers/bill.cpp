// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/bill.h"

#include "papers/grid.h"
#include "papers/missing_characters.h"
#include "papers/paper_text.h"
#include "papers/shop_file.h"
#include "shop/paper_words.h"

namespace papers {

namespace {

constexpr double typeSize = 9, rowLeast = 5.2;

QString money(double value) {
    return QString::number(value, 'f', 2);
}

void parts(Flow& flow, const shop::Bill& bill) {
    std::vector<QStringList> rows;
    rows.reserve(bill.lines.size());
    for (const auto& line : bill.lines)
        rows.push_back({qt(line.part), qt(line.what), qt(shop::amountWords(line)),
                        line.price ? money(*line.price) + QStringLiteral(" / ") +
                                         (line.unit == "m2" ? QStringLiteral("m²") : qt(line.unit))
                                   : QString(),
                        line.cost ? money(*line.cost) : QString()});
    paintGrid(flow,
              {{QStringLiteral("part"), 42},
               {QStringLiteral("for one unit, with waste"), 0},
               {QStringLiteral("amount"), 22, Qt::AlignRight},
               {QStringLiteral("price"), 27, Qt::AlignRight},
               {QStringLiteral("cost"), 17, Qt::AlignRight}},
              rows, typeSize, rowLeast);
}

void costs(Flow& flow, const shop::Bill& bill) {
    std::vector<GridColumn> columns{{QStringLiteral("cost of one unit in a lot of"), 0}};
    for (const auto& cost : bill.costs) columns.push_back({QString::number(cost.quantity), 25, Qt::AlignRight});
    struct Row {
        QString what;
        double shop::CostAt::*of;
    };
    const std::vector<Row> all{
        {QStringLiteral("material"), &shop::CostAt::material},
        {QStringLiteral("smallest buys that are left over"), &shop::CostAt::smallestBuys},
        {QStringLiteral("work, %1 min a unit").arg(bill.minutes, 0, 'f', 1), &shop::CostAt::labour},
        {QStringLiteral("set-up, %1 min a lot").arg(bill.setUpMinutes, 0, 'f', 0), &shop::CostAt::setUp},
        {QStringLiteral("tooling, once"), &shop::CostAt::tooling},
        {QStringLiteral("scrap, %1 % of the units").arg(100 * bill.scrap, 0, 'f', 1), &shop::CostAt::scrap},
        {bill.surchargeDay.empty() ? QStringLiteral("surcharge on metals")
                                   : QStringLiteral("surcharge on metals as of ") + qt(bill.surchargeDay),
         &shop::CostAt::surcharge},
        {QStringLiteral("total"), &shop::CostAt::total}};
    std::vector<QStringList> rows;
    rows.reserve(all.size());
    for (const Row& row : all) {
        QStringList line{row.what};
        for (const auto& cost : bill.costs) line << money(cost.*row.of);
        rows.push_back(line);
    }
    paintGrid(flow, columns, rows, typeSize, rowLeast);
}

int pagesOf(Paper& paper, const shop::Bill& bill, int pages) {
    Flow flow(paper, bill.head, pages);
    const Type plain{typeSize, false, {}, Qt::AlignLeft};
    flow.heading(QStringLiteral("Parts"));
    parts(flow, bill);
    flow.gap(4);
    flow.heading(QStringLiteral("Cost"));
    if (bill.costs.empty()) {
        flow.paragraph(QStringLiteral("No prices were given."), plain);
    } else {
        std::string words = "In " + bill.currency;
        if (!bill.validUntil.empty()) words += ", prices valid until " + bill.validUntil;
        flow.paragraph(qt(words + "."), plain);
        flow.gap(1);
        costs(flow, bill);
    }
    for (const std::string& part : bill.unpriced) {
        flow.gap(1);
        flow.paragraph(qt("No price, not in these costs: " + part + "."), plain);
    }
    if (const QString missing = missingCharacters(paper); !missing.isEmpty()) flow.paragraph(missing, plain);
    return flow.end();
}

}  // namespace

Printed printed(const shop::Bill& bill, Format format, const std::string& design) {
    return {shopFile(bill.head, format, design),
            [bill](Paper& paper, int pages) { return pagesOf(paper, bill, pages); }, 1};
}

}  // namespace papers
