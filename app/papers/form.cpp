// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/form.h"

#include <algorithm>

#include "papers/grid.h"
#include "papers/missing_characters.h"
#include "papers/paper_text.h"
#include "papers/shop_file.h"

namespace papers {

namespace {

constexpr double cellSize = 9, cellLeast = 6, headLeast = 30, headMost = 62, blankRow = 3;
constexpr Type formType{9.5, false, {}, Qt::AlignLeft};

class FormPages {
public:
    FormPages(Paper& paper, const shop::Form& form, int pages)
        : paper_(paper), form_(form), flow_(paper, form.head, pages, form.outside) {}

    int paint() {
        for (const shop::FormPart& part : form_.parts) {
            flow_.heading(qt(part.heading));
            for (const std::string& words : part.words) {
                flow_.paragraph(qt(words), formType);
                flow_.gap(0.8);
            }
            if (!part.words.empty()) flow_.gap(0.8);
            facts(part.facts);
            if (!part.columns.empty()) table(part);
            flow_.gap(3.5);
        }
        if (const QString missing = missingCharacters(paper_, form_.head.manner.say()); !missing.isEmpty())
            flow_.paragraph(missing, formType);
        return flow_.end();
    }

private:
    /// Room to write is wider than the words beside it.
    void facts(const std::vector<shop::Fact>& all) {
        double head = headLeast;
        for (const shop::Fact& one : all)
            head = std::max(head, std::min(headMost, paper_.width(qt(one.what), {small, false, {}, {}}) + 2 * cellGap));
        for (const shop::Fact& one : all) {
            if (one.words.empty()) flow_.gap(blankRow);
            flow_.facts({one}, head);
        }
    }
    void table(const shop::FormPart& part) {
        std::vector<GridColumn> columns;
        columns.reserve(part.columns.size());
        for (const shop::FormColumn& one : part.columns)
            columns.push_back({qt(one.head), one.width, one.number ? Qt::AlignRight : Qt::AlignLeft});
        std::vector<QStringList> rows;
        rows.reserve(part.rows.size());
        for (const shop::FormRow& one : part.rows) {
            QStringList row;
            for (const std::string& cell : one.cells) row << qt(cell);
            rows.push_back(row);
        }
        paintGrid(flow_, columns, rows, cellSize, cellLeast);
    }

    Paper& paper_;
    const shop::Form& form_;
    Flow flow_;
};

}  // namespace

Printed printed(const shop::Form& form, Format format, const std::string& design) {
    return {form.outside ? customerFile(form.head, format) : shopFile(form.head, format, design),
            [form](Paper& paper, int pages) { return FormPages(paper, form, pages).paint(); }, 2};
}

}  // namespace papers
