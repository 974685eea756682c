// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/quotation.h"

#include <cmath>

#include "shop/sheet_words.h"
#include "units/fault.h"

namespace shop {

namespace {

/// Up to the next hundredth; what is there but for rounding stays.
double hundredths(double value) {
    constexpr double hundred = 100, rounding = 1e-6;
    return std::ceil(value * hundred - rounding) / hundred;
}

}  // namespace

Quotation quotation(const design::Design& design, const Bill& bill, const Prices& prices, const Issue& issue,
                    const std::string& file) {
    std::vector<units::Fault> faults;
    for (const std::string& part : bill.unpriced)
        faults.push_back({file, "no price of " + part, "a line with the price of every part that is quoted"});
    if (bill.validUntil.empty())
        faults.push_back({file, "no day until which prices are valid", "a line valid,2027-03-31,,,,"});
    if (!(prices.margin > 0)) faults.push_back({file, "no margin", "a line margin,,%,40,,"});
    if (!faults.empty()) throw units::BadInput(std::move(faults));
    Quotation q;
    q.head = paperHead(issue.manner.say()("Quotation"), design, issue);
    q.customer = design.brief.customer;
    q.use = design.brief.use;
    q.digest = issue.digest;
    q.currency = bill.currency;
    q.validUntil = bill.validUntil;
    q.surchargeDay = bill.surchargeDay;
    for (const CostAt& cost : bill.costs)
        q.prices.push_back({cost.quantity, hundredths((cost.total - cost.surcharge) * (1 + prices.margin)),
                            hundredths(cost.surcharge)});
    return q;
}

Form formOf(const Quotation& q) {
    const Words& say = q.head.manner.say();
    const auto money = [&](double value) { return say.number(fixed(value, 2)); };
    Form form{q.head, true, {}};
    FormPart what{say("What is offered"), {}, {}, {}, {}};
    const auto fact = [&](const char* head, const std::string& words) {
        if (!words.empty()) what.facts.emplace_back(say(head), words);
    };
    fact("for", q.customer);
    fact("unit", q.head.title);
    fact("part", q.head.partNumber);
    fact("use", q.use);
    fact("revision", q.head.revision);
    fact("digest of the design", q.digest);
    what.facts.emplace_back(say("your reference"), "");
    what.words = {
        say("The unit as its datasheet of this revision and digest describes it. Limits are those that the "
            "datasheet names as agreed; typical values are none.")};
    form.parts.push_back(std::move(what));

    const bool surcharge = !q.surchargeDay.empty();
    FormPart prices{say("Prices"), {}, {}, {}, {}};
    prices.columns = {{say("quantity"), 26, true}, {say("price of one, %1", {q.currency}), 0, true}};
    if (surcharge) prices.columns.push_back({say("surcharge on metals, %1", {q.currency}), 42, true});
    if (surcharge) prices.columns.push_back({say("one in all, %1", {q.currency}), 36, true});
    prices.columns.push_back({say("the lot in all, %1", {q.currency}), 36, true});
    for (const QuotedPrice& p : q.prices) {
        const double one = p.price + p.surcharge;
        FormRow row{{std::to_string(p.quantity), money(p.price)}};
        if (surcharge) row.cells.insert(row.cells.end(), {money(p.surcharge), money(one)});
        row.cells.push_back(money(one * p.quantity));
        prices.rows.push_back(std::move(row));
    }
    form.parts.push_back(std::move(prices));

    FormPart terms{say("Terms"), {}, {}, {}, {}};
    terms.words.push_back(say("Valid until %1.", {q.validUntil}));
    if (surcharge)
        terms.words.push_back(
            say("The surcharge on metals is that of %1; it is charged as it stands on the day of the order.",
                {q.surchargeDay}));
    terms.words.push_back(say("Without taxes, duties and carriage. Each lot is made and delivered at one time."));
    terms.words.push_back(
        say("Another revision or digest is another unit and is quoted anew; how the unit is made is the shop's own."));
    terms.words.push_back(say("Not for mains isolation or protective separation unless designed and approved for it."));
    terms.facts = {{say("date"), q.head.date}, {say("name, signature"), ""}};
    form.parts.push_back(std::move(terms));
    return form;
}

}  // namespace shop
