// SPDX-License-Identifier: GPL-3.0-or-later
// One sheet, printed on both sides, that goes round the shop with a lot: what is done, by whom, out of which lots, and
// how it was tested. An inside paper.
#pragma once

#include <string>
#include <vector>

#include "shop/datasheet.h"
#include "shop/fetch_list.h"
#include "shop/paper_head.h"

namespace shop {

struct Operation {
    int number = 10;
    std::string words;
    std::string paper;  ///< which paper says how
    bool operator==(const Operation&) const = default;
};

/// What is measured on the lot; `limit` as it was agreed, or as the winding sheet expects it.
struct TestRow {
    std::string what, limit;
    bool operator==(const TestRow&) const = default;
};

struct Traveller {
    PaperHead head;
    std::string customer, use;
    std::vector<Operation> operations;
    std::vector<FetchRow> materials;  ///< for one unit; each with a lot to write in
    std::vector<TestRow> tests;
    int serials = 50;  ///< units that find room on the sheet
    bool operator==(const Traveller&) const = default;
};

/// The traveller of a checked design.
[[nodiscard]] Traveller traveller(const design::Design& design, const catalog::Catalog& shop, const Issue& issue);

}  // namespace shop
