// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/paper_content.h"

#include "json/record.h"
#include "shop/paper_head_fields.h"

namespace shop {

template <class Visitor>
void fields(Visitor& visit, WireUse& r) {
    visit.need("winding", r.winding);
    visit.need("key", r.key);
    visit.need("title", r.title);
    visit.need("bare", r.bare);
    visit.need("overall", r.overall);
    visit.need("overall_maximum", r.overallMaximum);
    visit.need("strands", r.strands);
    visit.need("turns", r.turns);
    visit.need("length", r.length);
    visit.need("bought", r.bought);
    visit.need("mass", r.mass);
}
template <class Visitor>
void fields(Visitor& visit, FoilUse& r) {
    visit.need("name", r.name);
    visit.need("shield", r.shield);
    visit.need("thickness", r.thickness);
    visit.need("width", r.width);
    visit.need("length", r.length);
    visit.need("mass", r.mass);
}
template <class Visitor>
void fields(Visitor& visit, FilmUse& r) {
    visit.need("key", r.key);
    visit.need("title", r.title);
    visit.need("thickness", r.thickness);
    visit.need("turns", r.turns);
    visit.need("area", r.area);
    visit.need("bought", r.bought);
    visit.need("mass", r.mass);
}
template <class Visitor>
void fields(Visitor& visit, SheetUse& r) {
    visit.need("key", r.key);
    visit.need("title", r.title);
    visit.need("brittle", r.brittle);
    visit.need("thickness", r.thickness);
    visit.need("count", r.count);
    visit.need("height", r.height);
    visit.need("mass", r.mass);
}
template <class Visitor>
void fields(Visitor& visit, LeadUse& r) {
    visit.need("terminal", r.terminal);
    visit.need("colour", r.colour);
    visit.need("length", r.length);
    visit.need("cut", r.cut);
}
template <class Visitor>
void fields(Visitor& visit, CompoundUse& r) {
    visit.need("key", r.key);
    visit.need("title", r.title);
    visit.need("varnish", r.varnish);
    visit.need("volume", r.volume);
    visit.need("mass", r.mass);
}
template <class Visitor>
void fields(Visitor& visit, PieceUse& r) {
    visit.need("key", r.key);
    visit.need("title", r.title);
    visit.need("form", r.form);
    visit.need("insulated", r.insulated);
    visit.need("conducts", r.conducts);
    visit.need("count", r.count);
    visit.need("mass", r.mass);
}
template <class Visitor>
void fields(Visitor& visit, ReelUse& r) {
    visit.need("key", r.key);
    visit.need("title", r.title);
    visit.need("length", r.length);
    visit.need("mass", r.mass);
}
template <class Visitor>
void fields(Visitor& visit, Materials& r) {
    visit.need("bobbin_key", r.bobbinKey);
    visit.need("bobbin_title", r.bobbinTitle);
    visit.need("sheet_key", r.sheetKey);
    visit.need("sheet_title", r.sheetTitle);
    visit.need("bobbins", r.bobbins);
    visit.need("wires", r.wires);
    visit.need("foils", r.foils);
    visit.need("films", r.films);
    visit.need("sheets", r.sheets);
    visit.need("leads", r.leads);
    visit.need("compounds", r.compounds);
    visit.need("pieces", r.pieces);
    visit.need("lead", r.lead);
    visit.need("sleeving", r.sleeving);
    visit.need("tape", r.tape);
    visit.need("joints", r.joints);
    visit.need("solder", r.solder);
}
template <class Visitor>
void fields(Visitor& visit, LayerRow& r) {
    visit.need("number", r.number);
    visit.need("turns", r.turns);
    visit.need("counter", r.counter);
    visit.need("from_low", r.fromLow);
}
template <class Visitor>
void fields(Visitor& visit, Action& r) {
    visit.need("counter", r.counter);
    visit.need("words", r.words);
    visit.need("layers", r.layers);
}
template <class Visitor>
void fields(Visitor& visit, ResistanceCheck& r) {
    visit.need("between", r.between);
    visit.need("expected", r.expected);
    visit.need("low", r.low);
    visit.need("high", r.high);
}
constexpr std::array<std::pair<const char*, StepKind>, 3> names(StepKind) {
    return {{{"wire", StepKind::Wire}, {"paper", StepKind::Paper}, {"shield", StepKind::Shield}}};
}
template <class Visitor>
void fields(Visitor& visit, WindingStep& r) {
    visit.need("number", r.number);
    visit.need("kind", r.kind);
    visit.need("title", r.title);
    visit.need("leg", r.leg);
    visit.need("chamber", r.chamber);
    visit.need("turns", r.turns);
    visit.need("layers", r.layers);
    visit.need("facts", r.facts);
    visit.need("actions", r.actions);
    visit.need("checks", r.checks);
}
constexpr std::array<std::pair<const char*, CutPart>, 4> names(CutPart) {
    return {
        {{"bobbin", CutPart::Bobbin}, {"wire", CutPart::Wire}, {"paper", CutPart::Paper}, {"shield", CutPart::Shield}}};
}
template <class Visitor>
void fields(Visitor& visit, CutShape& r) {
    visit.need("step", r.step);
    visit.need("part", r.part);
    visit.need("leg", r.leg);
    visit.need("winding", r.winding);
    visit.need("x0", r.x0);
    visit.need("x1", r.x1);
    visit.need("y0", r.y0);
    visit.need("y1", r.y1);
    visit.need("start_at_low", r.startAtLow);
    visit.need("finish_at_low", r.finishAtLow);
}
template <class Visitor>
void fields(Visitor& visit, BobbinPin& r) {
    visit.need("number", r.number);
    visit.need("x", r.x);
    visit.need("y", r.y);
    visit.need("used", r.used);
}
template <class Visitor>
void fields(Visitor& visit, FinishingStep& r) {
    visit.need("number", r.number);
    visit.need("title", r.title);
    visit.need("words", r.words);
}
template <class Visitor>
void fields(Visitor& visit, StackBlock& r) {
    visit.need("alloy", r.alloy);
    visit.need("thickness", r.thickness);
    visit.need("height", r.height);
    visit.need("count", r.count);
    visit.need("mass", r.mass);
}
template <class Visitor>
void fields(Visitor& visit, Finishing& r) {
    visit.need("outline", r.outline);
    visit.need("stack", r.stack);
    visit.need("closed_height", r.closedHeight);
    visit.need("steps", r.steps);
    visit.need("cautions", r.cautions);
}
template <class Visitor>
void fields(Visitor& visit, WindingSheet& r) {
    visit.need("head", r.head);
    visit.need("set_up", r.setUp);
    visit.need("pins", r.pins);
    visit.need("bobbin_width", r.bobbinWidth);
    visit.need("bobbin_length", r.bobbinLength);
    visit.need("materials", r.materials);
    visit.need("rules", r.rules);
    visit.need("window_width", r.windowWidth);
    visit.need("window_height", r.windowHeight);
    visit.need("legs", r.legs);
    visit.need("steps", r.steps);
    visit.need("shapes", r.shapes);
    visit.need("finishing", r.finishing);
}
template <class Visitor>
void fields(Visitor& visit, Operation& r) {
    visit.need("number", r.number);
    visit.need("words", r.words);
    visit.need("paper", r.paper);
}
template <class Visitor>
void fields(Visitor& visit, FetchRow& r) {
    visit.need("what", r.what);
    visit.need("amount", r.amount);
}
template <class Visitor>
void fields(Visitor& visit, TestRow& r) {
    visit.need("what", r.what);
    visit.need("limit", r.limit);
}
template <class Visitor>
void fields(Visitor& visit, Traveller& r) {
    visit.need("head", r.head);
    visit.need("customer", r.customer);
    visit.need("use", r.use);
    visit.need("operations", r.operations);
    visit.need("materials", r.materials);
    visit.need("tests", r.tests);
    visit.need("serials", r.serials);
}
template <class Visitor>
void fields(Visitor& visit, BillLine& r) {
    visit.need("part", r.part);
    visit.need("what", r.what);
    visit.need("amount", r.amount);
    visit.need("unit", r.unit);
    visit.need("price", r.price);
    visit.need("cost", r.cost);
    visit.need("minimum", r.minimum);
    visit.need("surcharge", r.surcharge);
}
template <class Visitor>
void fields(Visitor& visit, CostAt& r) {
    visit.need("quantity", r.quantity);
    visit.need("material", r.material);
    visit.need("smallest_buys", r.smallestBuys);
    visit.need("labour", r.labour);
    visit.need("set_up", r.setUp);
    visit.need("tooling", r.tooling);
    visit.need("scrap", r.scrap);
    visit.need("surcharge", r.surcharge);
    visit.need("total", r.total);
}
template <class Visitor>
void fields(Visitor& visit, Bill& r) {
    visit.need("head", r.head);
    visit.need("lines", r.lines);
    visit.need("minutes", r.minutes);
    visit.need("set_up_minutes", r.setUpMinutes);
    visit.need("currency", r.currency);
    visit.need("valid_until", r.validUntil);
    visit.need("surcharge_day", r.surchargeDay);
    visit.need("scrap", r.scrap);
    visit.need("costs", r.costs);
    visit.need("unpriced", r.unpriced);
}

json::Value contentOf(const WindingSheet& sheet) {
    return json::writeRecord(sheet);
}
json::Value contentOf(const Traveller& traveller) {
    return json::writeRecord(traveller);
}
json::Value contentOf(const Bill& bill) {
    return json::writeRecord(bill);
}

}  // namespace shop
