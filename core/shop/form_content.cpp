// SPDX-License-Identifier: GPL-3.0-or-later
// Forms, the quotation and the change notice as JSON values.
#include "json/record.h"
#include "shop/paper_content.h"
#include "shop/paper_head_fields.h"

namespace shop {

template <class Visitor>
void fields(Visitor& visit, FormColumn& r) {
    visit.need("head", r.head);
}
template <class Visitor>
void fields(Visitor& visit, FormRow& r) {
    visit.need("cells", r.cells);
}
template <class Visitor>
void fields(Visitor& visit, FormPart& r) {
    visit.need("heading", r.heading);
    visit.need("words", r.words);
    visit.need("facts", r.facts);
    visit.need("columns", r.columns);
    visit.need("rows", r.rows);
}
template <class Visitor>
void fields(Visitor& visit, Form& r) {
    visit.need("head", r.head);
    visit.need("parts", r.parts);
}
template <class Visitor>
void fields(Visitor& visit, QuotedPrice& r) {
    visit.need("quantity", r.quantity);
    visit.need("price", r.price);
    visit.need("surcharge", r.surcharge);
}
template <class Visitor>
void fields(Visitor& visit, Quotation& r) {
    visit.need("head", r.head);
    visit.need("customer", r.customer);
    visit.need("use", r.use);
    visit.need("digest", r.digest);
    visit.need("currency", r.currency);
    visit.need("valid_until", r.validUntil);
    visit.need("surcharge_day", r.surchargeDay);
    visit.need("prices", r.prices);
}

json::Value contentOf(const Form& form) {
    return json::writeRecord(form);
}
json::Value contentOf(const Quotation& quotation) {
    return json::writeRecord(quotation);
}

}  // namespace shop
