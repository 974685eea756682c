// SPDX-License-Identifier: GPL-3.0-or-later
// What a customer is offered: the unit as its datasheet says it, for a price, until a day. An outside paper: it says
// nothing of what the unit is made of or costs the shop.
#pragma once

#include <string>
#include <vector>

#include "shop/bill.h"
#include "shop/form.h"

namespace shop {

/// Of one unit in a lot of so many, in whole hundredths of the currency.
struct QuotedPrice {
    int quantity = 1;
    double price = 0;      ///< without the surcharge
    double surcharge = 0;  ///< on metals, as of the quotation's day for them
    bool operator==(const QuotedPrice&) const = default;
};

struct Quotation {
    PaperHead head;
    std::string customer, use;
    std::string digest;  ///< of the quoted revision, in full
    std::string currency, validUntil, surchargeDay;
    std::vector<QuotedPrice> prices;
    bool operator==(const Quotation&) const = default;
};

/// Price = (total - surcharge) (1 + margin), rounded up to hundredths; likewise the surcharge, without margin. `bill`
/// is of the design with `prices`. Throws units::BadInput where a price would be too low or without end: a part without
/// a price, no day until which prices are valid, no margin. `file`: the price file's name, for the sentence.
[[nodiscard]] Quotation quotation(const design::Design& design, const Bill& bill, const Prices& prices,
                                  const Issue& issue, const std::string& file);

/// As it is printed.
[[nodiscard]] Form formOf(const Quotation& quotation);

}  // namespace shop
