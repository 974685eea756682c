// SPDX-License-Identifier: GPL-3.0-or-later
// A winding as a form: name, turns, conductor, ends, hot end.
#include "design/edit.h"
#include "design/rename.h"
#include "editors/derived.h"
#include "editors/form.h"
#include "editors/labels.h"

namespace editors {

namespace {

/// The index is the winding's own: it stays when the name changes.
Where<design::Winding> windingAt(std::size_t k) {
    return {[k](design::Design& d) { return k < d.windings.size() ? &d.windings[k] : nullptr; },
            "/windings/" + std::to_string(k)};
}

/// Wire of this winding's neighbours, else the middle of the catalog: something to begin with.
std::string usualWire(const design::Design& d, const Shop& shop) {
    for (const auto& w : d.windings)
        if (!w.wire.key.empty()) return w.wire.key;
    const QStringList all = catalogChoices<catalog::Wire>(*shop);
    return all.isEmpty() ? std::string() : catalogKey(all[all.size() / 2]);
}

Part conductorPart(const Where<design::Winding>& winding, const QString& owner, const Shop& shop) {
    const QString wire = tr("enamelled wire"), foil = tr("copper foil");
    return wordPart(namedPart(Part::Kind::Choice, winding.path + "/conductor", "conductor", owner), {wire, foil},
                    {[winding, wire, foil](const design::Design& d) {
                         const auto* w = winding.seen(d);
                         return w != nullptr && w->foil ? foil : wire;
                     },
                     [winding, foil, shop](design::Design& d, const QString& word) {
                         auto* w = winding.find(d);
                         if (w == nullptr || (word == foil) == w->foil.has_value()) return;
                         if (word == foil) {
                             w->wire = {};
                             w->strands = 1;
                             w->foil.emplace();
                         } else {
                             w->foil.reset();
                             w->wire = usualWire(d, shop);
                         }
                     }});
}

/// Name, and turns of each section or of the only one, three to a line.
void writeNameAndTurns(FormPen& pen, const design::Winding& winding, Part name) {
    std::vector<Part> parts{std::move(name)};
    for (std::size_t p = 0; p < pen.design.coil.size(); ++p)
        for (std::size_t i = 0; i < pen.design.coil[p].order.size(); ++i) {
            const auto* s = pen.design.coil[p].order[i].section();
            if (s == nullptr || s->winding != winding.name) continue;
            Part turns = partOf(coilItem<design::Section>({static_cast<int>(p), static_cast<int>(i)}, "section"),
                                "turns", tr("section %1").arg(text(s->label())), pen.shop);
            turns.label = design::sectionsOf(pen.design, winding).size() == 1 ? tr("turns")
                                                                              : tr("turns of %1").arg(text(s->label()));
            parts.push_back(std::move(turns));
        }
    constexpr std::size_t wide = 3;
    for (std::size_t k = 0; k < parts.size(); k += wide)
        pen.row({parts.begin() + static_cast<std::ptrdiff_t>(k),
                 parts.begin() + static_cast<std::ptrdiff_t>(std::min(k + wide, parts.size()))});
}

/// Start and finish, each with the colour of its lead if it is one.
void writeEnds(FormPen& pen, const Where<design::Winding>& winding, const design::Winding& now, const QString& owner) {
    std::vector<Part> parts;
    for (const bool start : {true, false}) {
        parts.push_back(partOf(winding, start ? "start" : "finish", owner, pen.shop));
        const auto& all = pen.design.terminals;
        for (std::size_t k = 0; k < all.size(); ++k) {
            if (all[k].name != (start ? now.start : now.finish) || all[k].pin != 0) continue;
            const Where<design::Terminal> lead{
                [k](design::Design& d) { return k < d.terminals.size() ? &d.terminals[k] : nullptr; },
                "/terminals/" + std::to_string(k)};
            Part colour = partOf(lead, "lead_colour", tr("terminal %1").arg(text(all[k].name)), pen.shop);
            colour.label = tr("colour of its lead");
            parts.push_back(std::move(colour));
        }
    }
    pen.row(std::move(parts));
}

void writeTaps(FormPen& pen, const Where<design::Winding>& winding, const design::Winding& now) {
    const auto taps = memberOf<std::vector<design::Tap>>(winding, "taps");
    pen.heading(tr("Taps"));
    Table table{{tr("turns from the start"), tr("terminal")}, 2, {}};
    for (std::size_t k = 0; k < now.taps.size(); ++k) {
        const auto tap = itemOf(taps, k);
        const QString owner = tr("tap %1 of winding %2").arg(k + 1).arg(text(now.name));
        table.rows.push_back({{partOf(tap, "turns", owner, pen.shop), partOf(tap, "terminal", owner, pen.shop)},
                              removeFrom(taps, k, tr("remove %1").arg(owner))});
    }
    if (!now.taps.empty()) pen.table(std::move(table));
    design::Tap fresh;
    fresh.turns = std::floor(design::conductorTurns(pen.design, now) / 2);
    // The first terminal that nothing is soldered to.
    for (const auto& t : pen.design.terminals) {
        bool used = false;
        for (const auto& w : pen.design.windings) {
            used = used || w.start == t.name || w.finish == t.name;
            for (const auto& tap : w.taps) used = used || tap.terminal == t.name;
        }
        if (!used && fresh.terminal.empty()) fresh.terminal = t.name;
    }
    Act add = addTo(taps, tr("Add a tap"), fresh, now.taps.size(), "/turns");
    add.enabled = !fresh.terminal.empty();
    if (!add.enabled) add.reason = tr("Every terminal is in use: add one under terminals and ports.");
    pen.button(std::move(add));
}

/// A button for each hook-up in which one end is at earth; else one that says why there is none.
void writeHotEnd(FormPen& pen, const design::Winding& winding) {
    std::optional<Act> idle;
    bool any = false;
    for (const auto& h : pen.design.hookUps)
        for (const auto& use : h.ports) {
            const auto* port = design::port(pen.design, use.port);
            if (port == nullptr) continue;
            const bool own = (port->plus == winding.start && port->minus == winding.finish) ||
                             (port->plus == winding.finish && port->minus == winding.start);
            if (!own) continue;
            Act act = hotEndButton(pen.design, h, *port);
            any = any || act.enabled;
            if (act.enabled)
                pen.button(std::move(act));
            else if (!idle)
                idle = std::move(act);
        }
    if (any || !idle) return;
    idle->reason = tr("Neither end is tied to earth, core or a shield in any hook-up.");
    pen.button(std::move(*idle));
}

/// Buttons that add a winding and take this one out.
void writeCount(FormPen& pen, const std::string& path, const std::string& name) {
    pen.heading(tr("Windings"));
    Act add;
    add.path = path + "/another";
    add.text = tr("Add a winding");
    add.name = tr("add a winding");
    add.reason = tr("At the outside, like the last one, with pins and a port of its own; connect it under hook-ups.");
    add.make = [shop = pen.shop](const design::Design& d) { return design::addWinding(d, *shop); };
    add.select = [](const design::Design& d) { return document::WindingPart{d.windings.back().name}; };
    pen.button(std::move(add));
    Act remove;
    remove.path = path + "/remove";
    remove.text = tr("Remove this winding");
    remove.name = tr("remove winding %1").arg(text(name));
    remove.make = [name](const design::Design& d) { return design::removeWinding(d, name); };
    remove.select = [](const design::Design& d) { return document::WindingPart{d.windings.front().name}; };
    const auto left = design::removeWinding(pen.design, name);
    const auto driven = [](const design::HookUp& h) {
        return std::any_of(h.ports.begin(), h.ports.end(),
                           [](const auto& use) { return use.role == design::Role::Drive; });
    };
    remove.enabled = pen.design.windings.size() > 1 && std::all_of(left->hookUps.begin(), left->hookUps.end(), driven);
    remove.reason = remove.enabled ? tr("With its sections, pins, ports and the promises that name it.")
                    : pen.design.windings.size() < 2
                        ? tr("It is the only one.")
                        : tr("A hook-up is driven through it: drive another port there first.");
    pen.button(std::move(remove));
}

}  // namespace

Act hotEndButton(const design::Design& d, const design::HookUp& h, const design::Port& port) {
    Act act;
    act.path = "/hot/" + h.name + "/" + port.name;
    act.text = tr("Make the other end hot");
    act.name = tr("other end of port %1 hot in “%2”").arg(text(port.name), text(h.name));
    act.make = [hookUp = h.name, name = port.name](const design::Design& from) {
        return design::otherEndHot(from, hookUp, name);
    };
    const auto after = design::otherEndHot(d, h.name, port.name);
    act.enabled = *after != d;
    if (!act.enabled)
        act.reason =
            tr("Neither end of port %1 is tied to earth, core or a shield in “%2”.").arg(text(port.name), text(h.name));
    else
        act.reason =
            tr("In “%1”, what ties %2 to earth and shields goes to %3, and back: the signal at the hot end turns "
               "round; resistance and leakage stay.")
                .arg(text(h.name), text(port.minus), text(port.plus));
    return act;
}

void writeWinding(FormPen& pen, const std::string& name) {
    const auto& all = pen.design.windings;
    const auto at = std::find_if(all.begin(), all.end(), [&](const auto& w) { return w.name == name; });
    if (at == all.end()) return;
    const auto winding = windingAt(static_cast<std::size_t>(at - all.begin()));
    const QString owner = tr("winding %1").arg(text(name));
    pen.said([name](const analysis::Answer& answer) { return derivedOf(answer, name); });
    const auto whatName = memberOf<std::string>(winding, "name");
    writeNameAndTurns(
        pen, *at, namePart(namedPart(Part::Kind::Text, whatName.path, "name", owner), whatName, design::renameWinding));
    std::vector<Part> conductor{conductorPart(winding, owner, pen.shop)};
    if (at->foil) {
        const auto foil = inside(memberOf<std::optional<design::FoilConductor>>(winding, "foil"));
        for (const char* key : {"thickness", "width"})
            conductor.push_back(partOf(foil, key, tr("the foil of %1").arg(owner), pen.shop));
    } else {
        for (const char* key : {"wire", "strands"}) conductor.push_back(partOf(winding, key, owner, pen.shop));
    }
    pen.row(std::move(conductor));
    pen.heading(tr("Ends"));
    writeEnds(pen, winding, *at, owner);
    Act swap;
    swap.path = winding.path + "/swap";
    swap.text = tr("Swap start and finish");
    swap.reason = tr("The start comes out at %1, the finish at %2: the polarity turns round.")
                      .arg(text(at->finish), text(at->start));
    swap.name = tr("swap start and finish of winding %1").arg(text(name));
    swap.make = [name](const design::Design& d) { return design::swapEnds(d, name); };
    pen.button(std::move(swap));
    writeHotEnd(pen, *at);
    if (design::sectionsOf(pen.design, *at).size() > 1) {
        pen.heading(tr("Sections"));
        pen.row(winding, owner, {"connection", "order"});
    }
    writeTaps(pen, winding, *at);
    writeCount(pen, winding.path, name);
    pen.fold(tr("Seldom changed"), "winding seldom");
    pen.fields(winding, owner, {"resistance_factor"});
}

}  // namespace editors
