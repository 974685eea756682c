// SPDX-License-Identifier: GPL-3.0-or-later
// A paper made of paragraphs, facts and tables, some of them left open to write in.
#pragma once

#include <string>
#include <vector>

#include "shop/paper_head.h"

namespace shop {

struct FormColumn {
    std::string head;
    double width = 0;  ///< on paper, mm; 0: what is left
    bool number = false;
    bool operator==(const FormColumn&) const = default;
};
struct FormRow {
    std::vector<std::string> cells;  ///< one that is empty is written in by hand
    bool operator==(const FormRow&) const = default;
};

/// What stands under one heading: paragraphs, then facts, then a table.
struct FormPart {
    std::string heading;
    std::vector<std::string> words;
    std::vector<Fact> facts;
    std::vector<FormColumn> columns;
    std::vector<FormRow> rows;
    bool operator==(const FormPart&) const = default;
};

struct Form {
    PaperHead head;
    bool outside = false;  ///< for a customer: it carries no recipe and no design
    std::vector<FormPart> parts;
    bool operator==(const Form&) const = default;
};

}  // namespace shop
