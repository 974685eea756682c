// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/traveller.h"

#include "papers/grid.h"
#include "papers/missing_characters.h"
#include "papers/paper_text.h"
#include "papers/shop_file.h"

namespace papers {

namespace {

constexpr double entrySize = 8, entryRow = 5.2;

class TravellerPages {
public:
    TravellerPages(Paper& paper, const shop::Traveller& traveller, int pages)
        : t_(traveller), flow_(paper, traveller.head, pages) {}

    int paint() {
        order();
        flow_.heading(QStringLiteral("Operations"));
        operations();
        flow_.gap(2);
        flow_.heading(QStringLiteral("Materials, for one unit"));
        materials();
        flow_.newPage();  // the other side
        flow_.heading(QStringLiteral("Tests of the lot"));
        tests();
        flow_.gap(2);
        flow_.heading(QStringLiteral("Serial numbers: number, result, initials"));
        serials();
        if (const QString missing = missingCharacters(flow_.paper()); !missing.isEmpty())
            flow_.paragraph(missing, {entrySize, false, {}, Qt::AlignLeft});
        return flow_.end();
    }

private:
    void order() {
        if (!t_.customer.empty() || !t_.use.empty()) {
            const std::string joint = t_.customer.empty() || t_.use.empty() ? "" : ": ";
            flow_.paragraph(qt(t_.customer + joint + t_.use), {9, false, Paper::muted(), Qt::AlignLeft});
        }
        flow_.blank(0, 55, QStringLiteral("order"));
        flow_.blank(60, 55, QStringLiteral("lot"));
        flow_.blank(120, 28, QStringLiteral("quantity"));
        flow_.blank(152, 28, QStringLiteral("due"));
        flow_.gap(8);
    }
    void operations() {
        std::vector<QStringList> rows;
        rows.reserve(t_.operations.size());
        for (const auto& one : t_.operations)
            rows.push_back({QString::number(one.number), qt(one.words), qt(one.paper), {}, {}, {}, {}});
        paintGrid(flow_,
                  {{QStringLiteral("no"), 9},
                   {QStringLiteral("operation"), 0},
                   {QStringLiteral("by"), 44},
                   {QStringLiteral("in"), 13},
                   {QStringLiteral("good"), 13},
                   {QStringLiteral("scrap"), 13},
                   {QStringLiteral("name, date"), 30}},
                  rows, entrySize, entryRow);
    }
    void materials() {
        std::vector<QStringList> rows;
        rows.reserve(t_.materials.size());
        for (const auto& one : t_.materials) rows.push_back({qt(one.what), qt(one.amount), {}});
        paintGrid(flow_,
                  {{QStringLiteral("material"), 0},
                   {QStringLiteral("amount"), 40, Qt::AlignRight},
                   {QStringLiteral("lot"), 42}},
                  rows, entrySize, entryRow);
    }
    void tests() {
        std::vector<QStringList> rows;
        rows.reserve(t_.tests.size());
        for (const auto& one : t_.tests) rows.push_back({qt(one.what), qt(one.limit), {}, {}, {}});
        paintGrid(flow_,
                  {{QStringLiteral("test"), 0},
                   {QStringLiteral("limit"), 46},
                   {QStringLiteral("least measured"), 22},
                   {QStringLiteral("greatest"), 22},
                   {QStringLiteral("all good"), 16}},
                  rows, entrySize, entryRow);
    }
    void serials() {
        constexpr int across = 5;
        std::vector<QStringList> rows;
        for (int k = 0; k < t_.serials; k += across) {
            QStringList row;
            for (int j = 0; j < across; ++j) row << QString::number(k + j + 1) << QString();
            rows.push_back(row);
        }
        std::vector<GridColumn> columns;
        const double wide = flow_.column().width() / across;
        for (int j = 0; j < across; ++j) {
            columns.push_back({QStringLiteral("unit"), 8});
            columns.push_back({{}, wide - 8});
        }
        paintGrid(flow_, columns, rows, entrySize, entryRow);
    }

    const shop::Traveller& t_;
    Flow flow_;
};

}  // namespace

Printed printed(const shop::Traveller& traveller, Format format, const std::string& design) {
    return {shopFile(traveller.head, format, design),
            [traveller](Paper& paper, int pages) { return TravellerPages(paper, traveller, pages).paint(); }, 2};
}

}  // namespace papers
