// SPDX-License-Identifier: GPL-3.0-or-later
#include "cut/coil_edits.h"

#include <QMenu>
#include <algorithm>
#include <set>

#include "bench/language.h"
#include "cut/item_words.h"
#include "design/edit.h"
#include "units/fault.h"
#include "units/text.h"

namespace cut {

using design::Design;
using design::ItemIndex;

namespace {

QString words(const units::BadInput& bad) {
    QString sentence = bench::translated(units::sentence(bad.faults.front()));
    if (const auto more = bad.faults.size() - 1; more > 0) sentence += bench::translated(" (and %1 more)").arg(more);
    return sentence;
}

/// Insulation like that already used, else the first film or paper that the shop keeps.
design::Ply usualPly(const Design& d, const catalog::Catalog& shop) {
    for (const auto& place : d.coil)
        for (const auto& item : place.order)
            if (const auto* barrier = item.barrier()) return barrier->ply;
    for (const auto& place : d.coil)
        for (const auto& item : place.order)
            if (const auto* section = item.section(); section != nullptr && section->interlayer)
                return *section->interlayer;
    for (const auto& [key, insulation] : shop.insulation)
        if (insulation.standing == catalog::Standing::Current && !insulation.thicknesses.empty())
            return {key, insulation.thicknesses.front()};
    return {};
}

std::string freeShieldName(const Design& d) {
    std::set<std::string> taken;
    for (const auto& terminal : d.terminals) taken.insert(terminal.name);
    for (const auto& place : d.coil)
        for (const auto& item : place.order)
            if (const auto* shield = item.shield()) taken.insert(shield->name);
    for (int n = 1;; ++n)
        if (auto name = "SH" + std::to_string(n); !taken.contains(name)) return name;
}

int itemsIn(const Design& d, int place) {
    return static_cast<int>(d.coil[static_cast<std::size_t>(place)].order.size());
}

}  // namespace

CoilEdits::CoilEdits(document::Document& document, document::Selection& selection, QObject* parent)
    : QObject(parent), document_(document), selection_(selection) {}

bool CoilEdits::commit(const QString& act, const Make& make) {
    try {
        const auto before = document_.design();
        auto next = make(*before);
        const bool differs = !(*next == *before);
        document_.replace(std::move(next), act);
        return differs;
    } catch (const units::BadInput& bad) {
        document_.endPreview();
        emit message(words(bad));
    }
    return false;
}

void CoilEdits::movedTo(ItemIndex item) {
    if (itemAt(*document_.design(), item) != nullptr)
        selection_.select(item);
    else
        selection_.select({});
}

void CoilEdits::step(ItemIndex item, int steps) {
    const auto* what = itemAt(*document_.design(), item);
    if (what == nullptr) return;
    const QString way = steps > 0 ? tr("outward") : tr("inward");
    if (commit(tr("move %1 %2").arg(itemName(*what), way),
               [&](const Design& d) { return design::stepItem(d, item, steps); }))
        movedTo({item.place, item.item + steps});
}

void CoilEdits::move(ItemIndex from, ItemIndex to) {
    const auto* what = itemAt(*document_.design(), from);
    if (what == nullptr) return;
    const bool same = from.place == to.place;
    QString act = tr("move %1").arg(itemName(*what));
    if (same) act += QLatin1Char(' ') + (to.item > from.item ? tr("outward") : tr("inward"));
    if (commit(act, [&](const Design& d) { return design::moveItem(d, from, to); }))
        movedTo(same && to.item > from.item ? ItemIndex{to.place, to.item - 1} : to);
}

void CoilEdits::remove(ItemIndex item) {
    const auto* what = itemAt(*document_.design(), item);
    if (what == nullptr) return;
    if (!commit(tr("remove %1").arg(itemName(*what)), [&](const Design& d) { return design::removeItem(d, item); }))
        return;
    const int left = itemsIn(*document_.design(), item.place);
    movedTo({item.place, std::min(item.item, left - 1)});
}

void CoilEdits::split(ItemIndex section) {
    const auto* what = itemAt(*document_.design(), section);
    if (what == nullptr || what->section() == nullptr) return;
    commit(tr("split %1").arg(itemName(*what)), [&](const Design& d) { return design::splitSection(d, section); });
}

void CoilEdits::join(ItemIndex section) {
    const auto* what = itemAt(*document_.design(), section);
    if (what == nullptr || what->section() == nullptr) return;
    commit(tr("join %1 with the next").arg(itemName(*what)),
           [&](const Design& d) { return design::joinSection(d, section); });
}

void CoilEdits::swapHotEnd(ItemIndex section) {
    const auto* what = itemAt(*document_.design(), section);
    if (what == nullptr || what->section() == nullptr) return;
    const auto winding = what->section()->winding;
    commit(tr("swap the hot end of %1").arg(QString::fromStdString(winding)),
           [&](const Design& d) { return design::swapEnds(d, winding); });
}

void CoilEdits::insertInsulation(ItemIndex before) {
    design::Item item{design::Barrier{usualPly(*document_.design(), *document_.shop()), {}}};
    if (commit(tr("insert %1").arg(itemName(item)),
               [&](const Design& d) { return design::insertItem(d, before, item); }))
        movedTo(before);
}

void CoilEdits::insertShield(ItemIndex before) {
    design::Shield shield;
    shield.name = freeShieldName(*document_.design());
    design::Item item{shield};
    if (commit(tr("insert %1").arg(itemName(item)),
               [&](const Design& d) { return design::insertItem(d, before, item); }))
        movedTo(before);
}

void CoilEdits::tryMove(ItemIndex from, ItemIndex to) {
    try {
        document_.preview(design::moveItem(*document_.design(), from, to));
    } catch (const units::BadInput& bad) {
        document_.endPreview();
        emit message(words(bad));
    }
}

void CoilEdits::tryEdge(const Handle& handle, double value) {
    try {
        document_.preview(withEdge(*document_.design(), handle, value));
    } catch (const units::BadInput& bad) {
        document_.endPreview();
        emit message(words(bad));
    }
}

void CoilEdits::setEdge(const Handle& handle, double value) {
    commit(handleWords(*document_.design(), handle), [&](const Design& d) { return withEdge(d, handle, value); });
}

void CoilEdits::cancel() {
    document_.endPreview();
}

QString CoilEdits::turnsFault(ItemIndex section, const QString& text, bool step) {
    const auto* what = itemAt(*document_.design(), section);
    if (what == nullptr || what->section() == nullptr) return tr("This section is no longer there.");
    try {
        const double turns = units::read(units::Kind::Turns, text.toStdString());
        auto next = design::changed(*document_.design(), [&](Design& d) {
            auto& order = d.coil[static_cast<std::size_t>(section.place)].order;
            order[static_cast<std::size_t>(section.item)].section()->turns.value = turns;
        });
        if (step)
            document_.replace(std::move(next), tr("turns of %1").arg(itemName(*what)));
        else
            document_.preview(std::move(next));
    } catch (const units::BadInput& bad) {
        document_.endPreview();
        const auto& fault = bad.faults.front();
        return tr("Found %1; allowed is %2.").arg(bench::translated(fault.found), bench::translated(fault.allowed));
    }
    return {};
}

QString CoilEdits::tryTurns(ItemIndex section, const QString& text) {
    return turnsFault(section, text, false);
}
QString CoilEdits::setTurns(ItemIndex section, const QString& text) {
    return turnsFault(section, text, true);
}

bool CoilEdits::canJoin(ItemIndex index) const {
    const auto* what = itemAt(*document_.design(), index);
    if (what == nullptr || what->section() == nullptr) return false;
    for (int i = index.item + 1; i < itemsIn(*document_.design(), index.place); ++i)
        if (const auto* other = itemAt(*document_.design(), {index.place, i})->section())
            if (other->winding == what->section()->winding) return true;
    return false;
}

void CoilEdits::fill(QMenu& menu, std::optional<ItemIndex> item, std::optional<ItemIndex> before) {
    const auto add = [&](const QString& text, const QString& why, bool enabled, auto act) {
        auto* action = menu.addAction(text);
        action->setEnabled(enabled);
        action->setToolTip(why);
        connect(action, &QAction::triggered, this, act);
    };
    menu.setToolTipsVisible(true);
    const auto at = before.value_or(ItemIndex{});
    add(tr("Insert &insulation here"), tr("A sheet like the first one of this coil"), before.has_value(),
        [this, at] { insertInsulation(at); });
    add(tr("Insert &shield here"), tr("A Faraday shield of copper foil, its overlap insulated"), before.has_value(),
        [this, at] { insertShield(at); });
    const auto index = item.value_or(ItemIndex{});
    const auto* what = item ? itemAt(*document_.design(), index) : nullptr;
    const bool section = what != nullptr && what->section() != nullptr;
    menu.addSeparator();
    add(tr("S&plit section"), tr("Into two halves next to each other, for interleaving"), section,
        [this, index] { split(index); });
    add(tr("&Join with next"), tr("With the next section of the same winding; what lies between them is dropped"),
        section && canJoin(index), [this, index] { join(index); });
    add(tr("Swap &hot end"), tr("Exchanges start and finish of the whole winding"), section,
        [this, index] { swapHotEnd(index); });
    menu.addSeparator();
    add(tr("&Remove"), tr("Takes this item out of the coil"), what != nullptr, [this, index] { remove(index); });
}

}  // namespace cut
