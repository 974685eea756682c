// SPDX-License-Identifier: GPL-3.0-or-later
// What a hook-up hangs on one port, as a piece of a form.
#include "editors/form.h"
#include "editors/labels.h"

namespace editors {

namespace {

QStringList branchCaptions() {
    return {tr("resistance"), tr("inductance"), tr("capacitance")};
}
Table::Row branchRow(const Where<design::Branch>& branch, const QString& owner, const Shop& shop) {
    Table::Row row;
    for (const char* key : {"resistance", "inductance", "capacitance"})
        row.cells.push_back(partOf(branch, key, owner, shop));
    return row;
}

/// What stands in series with the EMF, or is the load: parts in series, a measured impedance, or nothing.
Part hangingPart(const Where<design::PortUse>& use, const QString& owner) {
    QString parts = tr("parts in series"), table = tr("impedance table"), open = tr("nothing: open");
    return wordPart(namedPart(Part::Kind::Choice, use.path + "/hanging", "hanging", owner), {parts, table, open},
                    {[=](const design::Design& d) {
                         const auto* u = use.seen(d);
                         if (u == nullptr || u->through) return parts;
                         return u->table.empty() ? open : table;
                     },
                     [=](design::Design& d, const QString& word) {
                         auto* u = use.find(d);
                         if (u == nullptr) return;
                         const double before = u->through         ? u->through->resistance.value
                                               : u->table.empty() ? 10e3
                                                                  : u->table.front().real;
                         if (word == parts && !u->through) u->through.emplace().resistance = before;
                         if (word == table && u->table.empty()) u->table = {{20, before, 0}, {20e3, before, 0}};
                         if (word != parts) u->through.reset();
                         if (word != table) u->table.clear();
                     }});
}

/// One port is driven and one observed: who takes such a role gives its own to the port that had it.
Part rolePart(const Where<design::PortUse>& use, std::size_t hookUp, const QString& owner, const Shop& shop) {
    Part role = partOf(use, "role", owner, shop);
    role.with = [plain = role.with, use, hookUp](const design::Design& d, const QString& word) {
        auto next = plain(d, word);
        if (use.seen(d) == nullptr) refuse(word, "a port that is still there");
        const design::Role before = use.seen(d)->role, now = use.seen(*next)->role;
        if (before == now || now == design::Role::Load) return next;
        return design::changed(*next, [&](design::Design& copy) {
            const auto* own = use.find(copy);
            for (auto& other : copy.hookUps[hookUp].ports) {
                if (&other == own || other.role != now) continue;
                other.role = before;
                if (before != design::Role::Drive) other.mode = design::Mode::Differential;
            }
        });
    };
    return role;
}

Part pointPart(const Where<design::ImpedancePoint>& point, int column, const QString& owner) {
    const Where<double> value{
        [point, column](design::Design& d) {
            auto* p = point.find(d);
            return p == nullptr ? nullptr : column == 0 ? &p->frequency : column == 1 ? &p->real : &p->imaginary;
        },
        point.path + "/" + std::to_string(column)};
    constexpr const char* keys[] = {"frequency", "real_part", "imaginary_part"};
    const units::Kind kind = column == 0 ? units::Kind::Frequency : units::Kind::Resistance;
    const json::Allowed allowed = column == 0 ? json::aboveUpTo(0, 1e15) : json::within(-1e15, 1e15);
    return numberPart(namedPart(Part::Kind::Number, value.path, keys[column], owner),
                      {[kind](const design::Design&) { return kind; }, allowed}, accessTo(value));
}

void writeTable(FormPen& pen, const Where<design::PortUse>& use, const design::PortUse& now, const QString& owner) {
    const auto points = memberOf<std::vector<design::ImpedancePoint>>(use, "table");
    Table table{{tr("frequency"), tr("real part"), tr("imaginary part")}, 3, {}};
    for (std::size_t k = 0; k < now.table.size(); ++k) {
        const auto point = itemOf(points, k);
        const QString line = tr("line %1 of the impedance of %2").arg(k + 1).arg(owner);
        Table::Row row{{pointPart(point, 0, line), pointPart(point, 1, line), pointPart(point, 2, line)}, {}};
        if (now.table.size() > 1) row.remove = removeFrom(points, k, tr("remove %1").arg(line));
        table.rows.push_back(std::move(row));
    }
    pen.table(std::move(table));
    design::ImpedancePoint fresh = now.table.back();
    fresh.frequency *= 2;
    Act add = addTo(points, tr("Add a frequency"), fresh, now.table.size(), "/0");
    add.name = tr("add a frequency to the impedance of %1").arg(owner);
    pen.button(std::move(add));
}

void writeAcross(FormPen& pen, const Where<design::PortUse>& use, const design::PortUse& now, const QString& owner) {
    const auto across = memberOf<std::vector<design::Branch>>(use, "across");
    Table table{branchCaptions(), 3, {}};
    for (std::size_t k = 0; k < now.across.size(); ++k) {
        const QString branch = tr("branch %1 across %2").arg(k + 1).arg(owner);
        auto row = branchRow(itemOf(across, k), branch, pen.shop);
        row.remove = removeFrom(across, k, tr("remove %1").arg(branch));
        table.rows.push_back(std::move(row));
    }
    if (!now.across.empty()) {
        pen.heading(tr("across it, from terminal to terminal"), 3);
        pen.table(std::move(table));
    }
    design::Branch fresh;
    fresh.capacitance = 1e-9;
    Act add = addTo(across, tr("Add a branch across it"), fresh, now.across.size(), "/resistance");
    add.name = tr("add a branch across %1").arg(owner);
    pen.button(std::move(add));
}

}  // namespace

void writePortUse(FormPen& pen, std::size_t hookUpIndex, std::size_t useIndex) {
    const auto& hookUp = pen.design.hookUps[hookUpIndex];
    const auto& now = hookUp.ports[useIndex];
    const Where<std::vector<design::PortUse>> uses{
        [hookUpIndex](design::Design& d) {
            return hookUpIndex < d.hookUps.size() ? &d.hookUps[hookUpIndex].ports : nullptr;
        },
        "/hook_ups/" + std::to_string(hookUpIndex) + "/ports"};
    const auto use = itemOf(uses, useIndex);
    const QString owner = tr("port %1 in %2").arg(text(now.port), text(hookUp.name));
    pen.heading(tr("On port %1").arg(text(now.port)), 2);
    Table how{{labelOf("port"), labelOf("role"), labelOf("earthing")}, 3, {}};
    how.rows.push_back({{partOf(use, "port", owner, pen.shop), rolePart(use, hookUpIndex, owner, pen.shop),
                         partOf(use, "earthing", owner, pen.shop)},
                        {}});
    pen.table(std::move(how));
    if (now.role == design::Role::Drive || now.mode == design::Mode::Common) pen.fields(use, owner, {"mode"});
    Part hanging = hangingPart(use, owner);
    if (now.role == design::Role::Drive) hanging.label = tr("source");
    pen.field(std::move(hanging));
    if (now.through) {
        Table parts{branchCaptions(), 3, {}};
        parts.rows.push_back(
            branchRow(inside(memberOf<std::optional<design::Branch>>(use, "through")), owner, pen.shop));
        pen.table(std::move(parts));
    } else if (!now.table.empty()) {
        writeTable(pen, use, now, owner);
    }
    writeAcross(pen, use, now, owner);
    if (now.role == design::Role::Observe || now.amplifierVoltageNoise > 0 || now.amplifierCurrentNoise > 0)
        pen.fields(use, owner, {"amplifier_voltage_noise", "amplifier_current_noise"});
    if (const auto* port = design::port(pen.design, now.port))
        if (Act hot = hotEndButton(pen.design, hookUp, *port); hot.enabled) pen.button(std::move(hot));
    if (hookUp.ports.size() < 2) return;
    Act remove = removeFrom(uses, useIndex, tr("disconnect %1").arg(owner));
    remove.text = tr("Leave this port unconnected");
    pen.button(std::move(remove));
}

}  // namespace editors
