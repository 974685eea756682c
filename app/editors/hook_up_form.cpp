// SPDX-License-Identifier: GPL-3.0-or-later
// Terminals, ports and hook-ups as forms.
#include "design/rename.h"
#include "editors/form.h"
#include "editors/labels.h"

namespace editors {

namespace {

Where<std::vector<design::Terminal>> terminals() {
    return {[](design::Design& d) { return &d.terminals; }, "/terminals"};
}
Where<std::vector<design::Port>> ports() {
    return {[](design::Design& d) { return &d.ports; }, "/ports"};
}
Where<std::vector<design::HookUp>> hookUps() {
    return {[](design::Design& d) { return &d.hookUps; }, "/hook_ups"};
}

template <class T>
Part nameOf(const Where<T>& thing, const QString& owner, Rename rename) {
    const auto name = memberOf<std::string>(thing, "name");
    return namePart(namedPart(Part::Kind::Text, name.path, "name", owner), name, std::move(rename));
}

void writePorts(FormPen& pen) {
    pen.heading(tr("Ports: pairs of terminals where something is connected"));
    Table table{{tr("name"), tr("plus"), tr("minus")}, 3, {}};
    const auto& all = pen.design.ports;
    for (std::size_t k = 0; k < all.size(); ++k) {
        const auto port = itemOf(ports(), k);
        const QString owner = tr("port %1").arg(text(all[k].name));
        table.rows.push_back({{nameOf(port, owner, design::renamePort), partOf(port, "plus", owner, pen.shop),
                               partOf(port, "minus", owner, pen.shop)},
                              removeFrom(ports(), k, tr("remove %1").arg(owner))});
    }
    pen.table(std::move(table));
    design::Port fresh;
    fresh.name = freeName(all, "port");
    if (!pen.design.windings.empty()) {
        fresh.plus = pen.design.windings.back().start;
        fresh.minus = pen.design.windings.back().finish;
    }
    pen.button(addTo(ports(), tr("Add a port"), fresh, all.size(), "/name"));
}

void writeHookUp(FormPen& pen, std::size_t k) {
    const auto& now = pen.design.hookUps[k];
    const auto hookUp = itemOf(hookUps(), k);
    const QString owner = tr("hook-up %1").arg(text(now.name));
    pen.fold(tr("Hook-up: %1").arg(text(now.name)), hookUp.path, k > 0);
    pen.field(nameOf(hookUp, owner, design::renameHookUp));
    pen.fields(hookUp, owner, {"straps", "earths", "note"});
    for (std::size_t u = 0; u < now.ports.size(); ++u) writePortUse(pen, k, u);
    pen.heading(tr("Whole hook-up %1").arg(text(now.name)), 2);
    const auto uses = memberOf<std::vector<design::PortUse>>(hookUp, "ports");
    design::PortUse fresh;
    fresh.through.emplace().resistance = 10e3;
    for (const auto& p : pen.design.ports)
        if (fresh.port.empty() &&
            std::none_of(now.ports.begin(), now.ports.end(), [&](const auto& u) { return u.port == p.name; }))
            fresh.port = p.name;
    Act add = addTo(uses, tr("Connect another port"), fresh, now.ports.size(), "/port");
    add.name = tr("connect another port in %1").arg(owner);
    add.enabled = !fresh.port.empty();
    if (!add.enabled) add.reason = tr("Every port is connected.");
    pen.button(std::move(add));
    if (pen.design.hookUps.size() < 2) return;
    Act remove = removeFrom(hookUps(), k, tr("remove %1").arg(owner));
    remove.text = tr("Remove this hook-up");
    pen.button(std::move(remove));
}

}  // namespace

void writeTerminals(FormPen& pen) {
    pen.heading(tr("Terminals: pins of the bobbin (pin above 0) and leads"));
    Table table{{tr("name"), tr("pin"), tr("lead colour"), tr("lead length")}, 4, {}};
    const auto& all = pen.design.terminals;
    for (std::size_t k = 0; k < all.size(); ++k) {
        const auto terminal = itemOf(terminals(), k);
        const QString owner = tr("terminal %1").arg(text(all[k].name));
        const auto cell = [&](const char* key) { return partOf(terminal, key, owner, pen.shop); };
        table.rows.push_back(
            {{nameOf(terminal, owner, design::renameTerminal), cell("pin"), cell("lead_colour"), cell("lead_length")},
             removeFrom(terminals(), k, tr("remove %1").arg(owner))});
    }
    if (!all.empty()) pen.table(std::move(table));
    design::Terminal fresh;
    fresh.name = freeName(all, "lead");
    fresh.leadLength = 0.15;
    pen.button(addTo(terminals(), tr("Add a terminal"), fresh, all.size(), "/name"));
    writePorts(pen);
}

void writeHookUps(FormPen& pen) {
    design::HookUp fresh = pen.design.hookUps.empty() ? design::HookUp{} : pen.design.hookUps.back();
    fresh.name = freeName(pen.design.hookUps, fresh.name + " copy");
    Act add = addTo(hookUps(), tr("Add a hook-up"), fresh, pen.design.hookUps.size(), "/name");
    add.reason = tr("It begins as a copy of the last one. The first is shown unless another is chosen.");
    pen.button(std::move(add));
    for (std::size_t k = 0; k < pen.design.hookUps.size(); ++k) writeHookUp(pen, k);
}

}  // namespace editors
