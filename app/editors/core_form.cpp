// SPDX-License-Identifier: GPL-3.0-or-later
// Core, bobbin and conditions as forms.
#include "editors/form.h"
#include "editors/labels.h"

namespace editors {

namespace {

Where<design::Core> core() {
    return {[](design::Design& d) { return &d.core; }, "/core"};
}

void writeStack(FormPen& pen) {
    const auto stack = memberOf<std::vector<design::StackPart>>(core(), "stack");
    const auto& parts = pen.design.core.stack;
    pen.heading(tr("Sheets in the stack"));
    Table table{{tr("alloy"), tr("thickness"), tr("share"), tr("permeability factor")}, 4, {}};
    for (std::size_t k = 0; k < parts.size(); ++k) {
        const auto part = itemOf(stack, k);
        const QString owner = tr("sheets %1 of the stack").arg(k + 1);
        const auto cell = [&](const char* key) { return partOf(part, key, owner, pen.shop); };
        Table::Row row{{cell("alloy"), cell("thickness"), cell("share"), cell("permeability_factor")}, {}};
        if (parts.size() > 1) row.remove = removeFrom(stack, k, tr("remove %1").arg(owner));
        table.rows.push_back(std::move(row));
    }
    pen.table(std::move(table));
    if (parts.size() > 1) pen.fields(core(), tr("the core"), {"pattern"});
    design::StackPart fresh = parts.empty() ? design::StackPart{} : parts.back();
    fresh.share = 0;
    Act add = addTo(stack, tr("Add sheets of another alloy"), fresh, parts.size(), "/alloy");
    add.reason = tr("They begin with a share of 0; the shares add up to 1.");
    pen.button(std::move(add));
}

void writePhantom(FormPen& pen) {
    const Where<std::optional<design::PhantomFeed>> phantom{[](design::Design& d) { return &d.conditions.phantom; },
                                                            "/conditions/phantom"};
    pen.heading(tr("Phantom supply"));
    if (!pen.design.conditions.phantom) {
        design::PhantomFeed fresh;
        if (!pen.design.ports.empty()) fresh.port = pen.design.ports.front().name;
        Act add;
        add.path = "/conditions/phantom/add";
        add.text = tr("Feed a port");
        add.reason = tr("There is no port that could be fed.");
        add.name = tr("add a phantom supply");
        add.focus = "/conditions/phantom/port";
        add.enabled = !fresh.port.empty();
        add.make = [fresh](const design::Design& d) {
            return design::changed(d, [&](design::Design& copy) { copy.conditions.phantom = fresh; });
        };
        return pen.button(std::move(add));
    }
    const QString owner = tr("the phantom supply");
    pen.row(inside(phantom), owner, {"port", "centre_tap"});
    pen.row(inside(phantom), owner, {"feed_voltage", "feed_current"});
    pen.row(inside(phantom), owner, {"feed_resistance", "feed_mismatch"});
    pen.fields(inside(phantom), owner, {"after_short"});
    Act remove;
    remove.path = "/conditions/phantom/remove";
    remove.text = tr("Remove the phantom supply");
    remove.name = tr("remove the phantom supply");
    remove.focus = "/conditions/phantom/add";
    remove.make = [](const design::Design& d) {
        return design::changed(d, [](design::Design& copy) { copy.conditions.phantom.reset(); });
    };
    pen.button(std::move(remove));
}

void writeCans(FormPen& pen) {
    const auto cans = memberOf<std::vector<design::ScreenCan>>(core(), "cans");
    const auto& all = pen.design.core.cans;
    Table table{{tr("diameter"), tr("thickness"), tr("permeability")}, 3, {}};
    for (std::size_t k = 0; k < all.size(); ++k) {
        const auto can = itemOf(cans, k);
        const QString owner = tr("screen can %1").arg(k + 1);
        const auto cell = [&](const char* key) { return partOf(can, key, owner, pen.shop); };
        table.rows.push_back({{cell("diameter"), cell("thickness"), cell("permeability")},
                              removeFrom(cans, k, tr("remove %1").arg(owner))});
    }
    if (!all.empty()) {
        pen.heading(tr("Screen cans, from the inside out"));
        pen.table(std::move(table));
    }
    design::ScreenCan fresh;
    if (!all.empty()) {
        fresh = all.back();
        fresh.diameter = 1.3 * fresh.diameter;
    }
    Act add = addTo(cans, tr("Add a screen can"), fresh, all.size(), "/diameter");
    add.reason =
        tr("What is computed is the most that a can does: gaps of the lid and strained sheet let more field in.");
    pen.button(std::move(add));
}

void writeFilling(FormPen& pen) {
    const Where<std::optional<design::Filling>> filling{[](design::Design& d) { return &d.filling; }, "/filling"};
    pen.heading(tr("Varnish or compound"));
    if (!pen.design.filling) {
        const auto& known = pen.shop->insulation;
        design::Filling fresh;
        fresh.compound = known.contains("epoxy") ? "epoxy" : known.empty() ? "" : known.begin()->first;
        Act add;
        add.path = "/filling/add";
        add.text = tr("Soak the coil");
        add.reason = tr("The coil is dry: no varnish or compound is named.");
        add.name = tr("add varnish or compound");
        add.focus = "/filling/compound";
        add.enabled = !known.empty();
        add.make = [fresh](const design::Design& d) {
            return design::changed(d, [&](design::Design& copy) { copy.filling = fresh; });
        };
        return pen.button(std::move(add));
    }
    pen.fields(inside(filling), tr("the filling"), {"compound", "hard_potted"});
    Act remove;
    remove.path = "/filling/remove";
    remove.text = tr("Leave the coil dry");
    remove.name = tr("remove varnish or compound");
    remove.focus = "/filling/add";
    remove.make = [](const design::Design& d) {
        return design::changed(d, [](design::Design& copy) {
            copy.filling.reset();
            copy.conditions.filled = false;
        });
    };
    pen.button(std::move(remove));
}

}  // namespace

void writeCore(FormPen& pen) {
    pen.row(core(), tr("the core"), {"sheet", "height", "kind"});
    pen.row(core(), tr("the core"), {"joint", "gap"});
    writeStack(pen);
    writeCans(pen);
    writeFittings(pen);
    pen.fold(tr("Seldom changed"), "core seldom");
    pen.fields(core(), tr("the core"), {"stacking_factor"});
}

void writeBobbin(FormPen& pen) {
    pen.fields(wholeDesign(), tr("the design"), {"bobbin"});
}

void writeConditions(FormPen& pen) {
    const Where<design::Conditions> conditions{[](design::Design& d) { return &d.conditions; }, "/conditions"};
    const Where<design::Assumptions> assumptions{[](design::Design& d) { return &d.assumptions; }, "/assumptions"};
    pen.fields(conditions, tr("the conditions"), {"temperature"});
    writeFilling(pen);
    if (pen.design.filling || pen.design.conditions.filled) pen.fields(conditions, tr("the conditions"), {"filled"});
    pen.heading(tr("Direct current"));
    const auto currents = memberOf<std::vector<design::DirectCurrent>>(conditions, "direct_currents");
    const auto& all = pen.design.conditions.directCurrents;
    Table table{{tr("winding"), tr("current, start to finish")}, 2, {}};
    for (std::size_t k = 0; k < all.size(); ++k) {
        const auto one = itemOf(currents, k);
        const QString owner = tr("direct current %1").arg(k + 1);
        table.rows.push_back({{partOf(one, "winding", owner, pen.shop), partOf(one, "current", owner, pen.shop)},
                              removeFrom(currents, k, tr("remove %1").arg(owner))});
    }
    if (!all.empty()) pen.table(std::move(table));
    design::DirectCurrent fresh;
    for (const auto& w : pen.design.windings)
        if (fresh.winding.empty() &&
            std::none_of(all.begin(), all.end(), [&](const auto& c) { return c.winding == w.name; }))
            fresh.winding = w.name;
    Act add = addTo(currents, tr("Add a direct current"), fresh, all.size(), "/current");
    add.enabled = !fresh.winding.empty();
    if (!add.enabled) add.reason = tr("Every winding has its line.");
    pen.button(std::move(add));
    writePhantom(pen);
    pen.heading(tr("What is computed"));
    pen.fields(assumptions, tr("the assumptions"),
               {"ends", "proximity", "dielectric_loss", "foil_eddies", "lead_outs"});
}

}  // namespace editors
