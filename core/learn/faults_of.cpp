// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "design/edit.h"
#include "design/order_kept.h"
#include "learn/fault.h"
#include "units/joined.h"
#include "units/text.h"

namespace learn {

using design::Design;
using units::joined;

namespace {

std::string turnsWords(double turns) {
    return units::significant(std::round(turns), 4) + (std::round(turns) == 1 ? " turn" : " turns");
}

/// Replaces the unit's design by a changed copy.
template <class Change>
void change(Unit& unit, const Change& what) {
    unit.design = design::changed(*unit.design, what);
}

design::Section* sectionAt(Design& d, design::ItemIndex at) {
    return d.coil[static_cast<std::size_t>(at.place)].order[static_cast<std::size_t>(at.item)].section();
}

/// A section with where it stands.
struct Placed {
    design::ItemIndex at;
    const design::Section* section;
};

class FaultList {
public:
    FaultList(const Design& design, const catalog::Catalog& shop) : design_(design), shop_(shop) {
        for (std::size_t p = 0; p < design.coil.size(); ++p)
            for (std::size_t i = 0; i < design.coil[p].order.size(); ++i) {
                const design::ItemIndex at{static_cast<int>(p), static_cast<int>(i)};
                if (const auto* section = design.coil[p].order[i].section()) sections_.push_back({at, section});
                if (const auto* shield = design.coil[p].order[i].shield()) shields_.push_back({at, shield->name});
            }
    }

    std::vector<Fault> make() {
        all_.emplace_back().words = "no fault";
        for (const auto& one : sections_) addShort(one);
        addOrders();
        for (const auto& one : sections_) addReversed(one);
        for (const auto& winding : design_.windings) addSwapped(winding.name);
        addCore();
        for (const auto& [at, name] : shields_) addOpen(at, name);
        for (const auto& one : sections_) addTurns(one);
        for (std::size_t w = 0; w < design_.windings.size(); ++w) addWire(w);
        return std::move(all_);
    }

private:
    Fault& add(FaultKind kind, std::string words) {
        all_.emplace_back();
        all_.back().kind = kind;
        all_.back().words = std::move(words);
        return all_.back();
    }
    [[nodiscard]] const design::Winding& windingOf(const design::Section& section) const {
        return *design::winding(design_, section.winding);
    }

    void addShort(const Placed& one) {
        const auto& section = *one.section;
        const auto& winding = windingOf(section);
        if (winding.foil || winding.connection == design::Connection::Parallel || section.turns < 4) return;
        double before = 0;
        for (const auto* other : design::sectionsOf(design_, winding)) {
            if (other->name == section.name) break;
            before += other->turns;
        }
        const double turns = section.turns, all = design::conductorTurns(design_, winding);
        Fault& fault = add(FaultKind::ShortedTurn, "turns shorted in " + section.label());
        fault.sizes.clear();
        for (const double n : {1.0, 2.0, 5.0, 20.0})
            if (n <= turns / 4) fault.sizes.push_back(n);
        fault.sizeWords = turnsWords;
        fault.apply = [name = winding.name, middle = before + std::floor(turns / 2), all](Unit& unit, double size) {
            const double n = std::max(1.0, std::round(size));
            change(unit, [&](Design& d) {
                for (auto& w : d.windings) {
                    if (w.name != name) continue;
                    w.taps.push_back({middle, "short from", nullptr});
                    w.taps.push_back({middle + n, "short to", nullptr});
                    std::sort(w.taps.begin(), w.taps.end(),
                              [](const auto& a, const auto& b) { return a.turns < b.turns; });
                }
                for (const char* end : {"short from", "short to"}) d.terminals.emplace_back().name = end;
            });
            unit.shorts = {{"short from", "short to"}};
            unit.shortedWinding = name;
            unit.shortedShare = n / all;
        };
    }

    void addOrders() {
        constexpr std::size_t most = 15;
        std::size_t made = 0;
        for (std::size_t a = 0; a < sections_.size(); ++a)
            for (std::size_t b = a + 1; b < sections_.size() && made < most; ++b) {
                const auto &one = *sections_[a].section, &other = *sections_[b].section;
                if (one.winding == other.winding && one.turns == other.turns) continue;
                ++made;
                Fault& fault =
                    add(FaultKind::SectionOrder,
                        joined({"sections ", one.label(), " and ", other.label(), " in each other's place"}));
                fault.apply = [i = sections_[a].at, k = sections_[b].at](Unit& unit, double) {
                    const Design before = *unit.design;
                    change(unit, [&](Design& d) {
                        std::swap(*sectionAt(d, i), *sectionAt(d, k));
                        design::keepOrder(d, before, design::seriesOrder(before));
                    });
                };
            }
    }

    void addReversed(const Placed& one) {
        Fault& fault = add(FaultKind::Reversed, joined({"section ", one.section->label(), " wound the wrong way"}));
        fault.apply = [at = one.at](Unit& unit, double) {
            change(unit, [&](Design& d) { sectionAt(d, at)->reversed = !sectionAt(d, at)->reversed; });
        };
    }

    void addSwapped(const std::string& winding) {
        Fault& fault = add(FaultKind::SwappedLeads, joined({"start and finish of ", winding, " exchanged"}));
        fault.apply = [winding](Unit& unit, double) { unit.design = design::swapEnds(*unit.design, winding); };
    }

    void addCore() {
        const auto& core = design_.core;
        for (std::size_t k = 0; k < core.stack.size(); ++k) {
            const auto& part = core.stack[k];
            const double sheets = core.height * part.share * core.stackingFactor / part.thickness;
            if (!(sheets >= 2)) continue;
            Fault& fault = add(FaultKind::MissingSheets, joined({"sheets of ", part.alloy.key, " missing"}));
            fault.sizes.clear();
            for (const double share : {1 / sheets, 0.05, 0.1, 0.2, 0.35, 0.5})
                if (fault.sizes.empty() || share > fault.sizes.back()) fault.sizes.push_back(share);
            fault.sizeWords = [sheets](double share) {
                return joined({units::significant(std::round(share * sheets), 4), " of ",
                               units::significant(std::round(sheets), 4), " sheets"});
            };
            fault.apply = [k](Unit& unit, double missing) {
                change(unit, [&](Design& d) {
                    // The bobbin keeps the turns' length: what is missing is metal in the same height.
                    const double left = 1 - missing * d.core.stack[k].share;
                    d.core.stackingFactor.value *= left;
                    for (std::size_t p = 0; p < d.core.stack.size(); ++p)
                        d.core.stack[p].share.value *= (p == k ? 1 - missing : 1) / left;
                });
            };
        }
        Fault& fault = add(FaultKind::WideGap, "joint gap too wide");
        fault.sizes = {3e-6, 1e-5, 3e-5, 1e-4, 5e-4};
        fault.sizeWords = [](double gap) { return units::write(units::Kind::Length, gap, 2) + " more"; };
        fault.apply = [](Unit& unit, double gap) { change(unit, [&](Design& d) { d.core.gap.value += gap; }); };
    }

    void addOpen(design::ItemIndex at, const std::string& name) {
        Fault& fault = add(FaultKind::OpenShield, joined({"lead of ", name, " open"}));
        fault.apply = [at, name](Unit& unit, double) {
            change(unit, [&](Design& d) {
                d.coil[static_cast<std::size_t>(at.place)].order[static_cast<std::size_t>(at.item)].shield()->terminal =
                    "";
            });
            unit.openShield = name;
        };
    }

    void addTurns(const Placed& one) {
        const double turns = one.section->turns;
        for (const double sign : {-1.0, 1.0}) {
            if (turns < 4) continue;
            Fault& fault =
                add(FaultKind::WrongTurns,
                    joined({"section ", one.section->label(), " with ", sign < 0 ? "too few" : "too many", " turns"}));
            fault.sizes.clear();
            for (const double n : {1.0, 2.0, 5.0, 0.01 * turns, 0.03 * turns, 0.1 * turns, 0.25 * turns})
                if (fault.sizes.empty() || n > 1.2 * fault.sizes.back()) fault.sizes.push_back(n);
            fault.sizeWords = turnsWords;
            fault.apply = [at = one.at, sign](Unit& unit, double n) {
                change(unit, [&](Design& d) {
                    auto& of = sectionAt(d, at)->turns.value;
                    of = std::max(1.0, of + sign * std::round(n));
                });
            };
        }
    }

    /// Catalog wires by bare diameter from the winding's own outward, one way; no two within 3 %.
    std::vector<std::string> wiresBeside(double bare, bool thicker) const {
        constexpr double least = 1.04, most = 1.6, apart = 1.03;
        std::vector<std::pair<double, std::string>> found;
        for (const auto& [key, wire] : shop_.wires) {
            const double factor = thicker ? wire.bareDiameter / bare : bare / wire.bareDiameter;
            if (factor >= least && factor <= most && wire.standing == catalog::Standing::Current)
                found.emplace_back(factor, key);
        }
        std::sort(found.begin(), found.end());
        std::vector<std::string> keys;
        double last = 0;
        for (const auto& [factor, key] : found)
            if (factor > last * apart) {
                keys.push_back(key);
                last = factor;
            }
        return keys;
    }
    void addWire(std::size_t w) {
        constexpr std::size_t most = 4;
        const auto& winding = design_.windings[w];
        const auto* wire = winding.foil ? nullptr : design::part(design_, winding.wire, shop_);
        if (wire == nullptr) return;
        for (const bool thicker : {false, true}) {
            auto keys = wiresBeside(wire->bareDiameter, thicker);
            if (keys.empty()) continue;
            if (keys.size() > most) keys.resize(most);
            Fault& fault = add(FaultKind::WrongWire,
                               joined({"winding ", winding.name, " of ", thicker ? "thicker" : "thinner", " wire"}));
            fault.sizes.clear();
            for (std::size_t k = 0; k < keys.size(); ++k) fault.sizes.push_back(static_cast<double>(k));
            const auto keyAt = [keys](double size) {
                return keys[static_cast<std::size_t>(
                    std::clamp(std::round(size), 0.0, static_cast<double>(keys.size() - 1)))];
            };
            fault.sizeWords = keyAt;
            fault.apply = [w, thicker, keyAt, name = winding.name](Unit& unit, double size) {
                change(unit, [&](Design& d) {
                    d.windings[w].wire = catalog::PartRef<catalog::Wire>(keyAt(size));
                    if (!thicker) return;
                    for (auto& place : d.coil)
                        for (auto& item : place.order)
                            if (auto* section = item.section(); section != nullptr && section->winding == name)
                                section->turnsPerLayer = 0;
                });
            };
        }
    }

    const Design& design_;
    const catalog::Catalog& shop_;
    std::vector<Placed> sections_;
    std::vector<std::pair<design::ItemIndex, std::string>> shields_;
    std::vector<Fault> all_;
};

}  // namespace

std::vector<Fault> faultsOf(const Design& design, const catalog::Catalog& shop) {
    return FaultList(design, shop).make();
}

}  // namespace learn
