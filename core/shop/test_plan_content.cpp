// SPDX-License-Identifier: GPL-3.0-or-later
// The test plan as a JSON value.
#include "json/record.h"
#include "shop/paper_content.h"
#include "shop/paper_head_fields.h"

namespace shop {

constexpr std::array<std::pair<const char*, TestOrder>, 4> names(TestOrder) {
    return {{{"polarity", TestOrder::Polarity},
             {"direct current", TestOrder::Direct},
             {"demagnetise", TestOrder::Demagnetise},
             {"signal", TestOrder::Signal}}};
}

template <class Visitor>
void fields(Visitor& visit, PlanRow& r) {
    std::string unit(r.kind == units::Kind::Share ? "" : units::unit(r.kind));
    visit.need("step", r.step);
    visit.need("part", r.order);
    visit.need("test", r.what);
    visit.need("name", r.name);
    visit.need("hook_up", r.hookUp);
    visit.need("settings", r.settings);
    visit.need("method", r.method);
    visit.need("expected", r.expected);
    visit.need("low", r.low);
    visit.need("high", r.high);
    visit.need("unit", unit);
    visit.need("limits_from", r.origin);
    visit.need("cannot_tell", r.doubt);
    visit.need("instrument_needed", r.needed);
}
template <class Visitor>
void fields(Visitor& visit, PlanStage& s) {
    visit.need("stage", s.name);
    visit.need("when", s.when);
    visit.need("rows", s.rows);
}

template <class Visitor>
void fields(Visitor& visit, TestPlan& p) {
    visit.need("head", p.head);
    visit.need("fixture", p.fixture);
    visit.need("upkeep", p.upkeep);
    visit.need("bench", p.bench);
    visit.need("stages", p.stages);
    visit.need("not_tested", p.untested);
    visit.need("notes", p.notes);
    visit.need("cautions", p.cautions);
}

json::Value contentOf(const TestPlan& plan) {
    return json::writeRecord(plan);
}

}  // namespace shop
