// SPDX-License-Identifier: GPL-3.0-or-later
// Sections, shields and insulation as forms.
#include "design/rename.h"
#include "editors/derived.h"
#include "editors/form.h"
#include "editors/labels.h"

namespace editors {

namespace {

/// Insulation between layers: in files there or not, on a form a choice.
void writeInterlayer(FormPen& pen, const Where<design::Section>& section, const design::Section& now,
                     const QString& owner) {
    const auto interlayer = memberOf<std::optional<design::Ply>>(section, "interlayer");
    pen.heading(tr("Between the layers"));
    Act act;
    if (now.interlayer) {
        pen.row(inside(interlayer), tr("the insulation between layers of %1").arg(owner), {"insulation", "thickness"});
        act.path = interlayer.path + "/remove";
        act.text = tr("Wind without it");
        act.name = tr("remove insulation between layers of %1").arg(owner);
        act.focus = interlayer.path + "/add";
        act.make = [interlayer](const design::Design& d) {
            return design::changed(d, [&](design::Design& copy) {
                if (auto* ply = interlayer.find(copy)) ply->reset();
            });
        };
        return pen.button(std::move(act));
    }
    design::Ply fresh;
    fresh.thickness = 25e-6;
    for (const auto& [key, entry] : pen.shop->insulation)
        if (fresh.insulation.empty() || key == "polyester-film") fresh.insulation = key;
    act.path = interlayer.path + "/add";
    act.text = tr("Put insulation between the layers");
    act.reason = tr("The layers lie on each other.");
    act.name = tr("add insulation between layers of %1").arg(owner);
    act.focus = interlayer.path + "/insulation";
    act.enabled = !fresh.insulation.empty();
    act.make = [interlayer, fresh](const design::Design& d) {
        return design::changed(d, [&](design::Design& copy) {
            if (auto* ply = interlayer.find(copy)) *ply = fresh;
        });
    };
    pen.button(std::move(act));
}

void writeSection(FormPen& pen, const design::ItemIndex& at, const design::Section& now) {
    const auto section = coilItem<design::Section>(at, "section");
    const QString owner = tr("section %1").arg(text(now.label()));
    pen.said([at](const analysis::Answer& answer) { return derivedOf(answer, at); });
    pen.row(section, owner, {"turns", "lay", "turns_per_layer"});
    const auto name = memberOf<std::string>(section, "name");
    Part called =
        namePart(namedPart(Part::Kind::Text, name.path, "name", owner), name,
                 [winding = now.winding](const design::Design& d, const std::string& from, const std::string& to) {
                     return design::renameSection(d, winding, from, to);
                 });
    pen.row({partOf(section, "margin_low", owner, pen.shop), partOf(section, "margin_high", owner, pen.shop),
             std::move(called)});
    writeInterlayer(pen, section, now, owner);
    pen.heading(tr("Direction"));
    pen.row(section, owner, {"starts", "traverse"});
    pen.fields(section, owner, {"reversed"});
    pen.heading(tr("Ends of its own"));
    pen.row(section, owner, {"start", "finish"});
    pen.fold(tr("Seldom changed"), "section seldom");
    pen.row(section, owner, {"last_layer", "hand"});
    pen.row(section, owner, {"layer_factor", "pitch_factor"});
}

void writeShield(FormPen& pen, const design::ItemIndex& at, const design::Shield& now) {
    const auto shield = coilItem<design::Shield>(at, "shield");
    const QString owner = tr("shield %1").arg(text(now.name));
    const auto name = memberOf<std::string>(shield, "name");
    // An open winding needs its wire at once: both change in one step.
    Part form = partOf(shield, "form", owner, pen.shop);
    form.with = [plain = form.with, shield, shop = pen.shop](const design::Design& d, const QString& word) {
        auto next = plain(d, word);
        const auto* s = shield.seen(*next);
        if (s == nullptr || s->form != design::ShieldForm::Winding || !s->wire.empty()) return next;
        const QStringList wires = catalogChoices<catalog::Wire>(*shop);
        const std::string wire = wires.isEmpty() ? std::string() : catalogKey(wires[wires.size() / 2]);
        return design::changed(*next, [&](design::Design& copy) { shield.find(copy)->wire = wire; });
    };
    const bool winding = now.form == design::ShieldForm::Winding;
    pen.row({namePart(namedPart(Part::Kind::Text, name.path, "name", owner), name, design::renameShield),
             std::move(form), partOf(shield, winding ? "wire" : "thickness", owner, pen.shop)});
    pen.row(shield, owner, {"terminal", "margin_low", "margin_high"});
    if (!winding) pen.fields(shield, owner, {"over_ends"});
    pen.fields(shield, owner, {"lead_inductance"});
}

}  // namespace

void writeItem(FormPen& pen, const design::ItemIndex& at) {
    if (const auto* s = coilItem<design::Section>(at, "section").seen(pen.design)) return writeSection(pen, at, *s);
    if (const auto* s = coilItem<design::Shield>(at, "shield").seen(pen.design)) return writeShield(pen, at, *s);
    const auto barrier = coilItem<design::Barrier>(at, "barrier");
    if (barrier.seen(pen.design) == nullptr) return;
    const Where<design::Ply> ply{[barrier](design::Design& d) {
                                     auto* b = barrier.find(d);
                                     return b == nullptr ? nullptr : &b->ply;
                                 },
                                 barrier.path};
    pen.row(ply, tr("insulation"), {"insulation", "thickness"});
}

}  // namespace editors
