// SPDX-License-Identifier: GPL-3.0-or-later
#include "seek/draft.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <set>

#include "coil/coil_build.h"
#include "design/check.h"

namespace seek {

namespace {

constexpr double outerBarrier = 0.1e-3;  // m, over the last section

double stocked(double thickness, const std::vector<double>& stock) {
    if (stock.empty()) return thickness;
    return *std::min_element(stock.begin(), stock.end(), [&](double a, double b) {
        return std::abs(std::log(a / thickness)) < std::abs(std::log(b / thickness));
    });
}

double barrierOf(double thickness) {
    constexpr double step = 25e-6;
    return std::max(2.0, std::round(thickness / step)) * step;
}

/// Wire and strands of one winding.
struct Choice {
    std::string wire;
    int strands = 1;
};

/// Sections that one winding is wound in, and the room for them.
struct Room {
    double width = 0, height = 0;  ///< m
    double interlayer = 0;         ///< m
    std::vector<double> turns;     ///< of each section
};

std::optional<Choice> thickestThatFits(const Room& room, const Stock& stock, const catalog::Catalog& shop) {
    constexpr int mostStrands = 6;
    constexpr double thickStrand = 0.2e-3;  // thinner ones are not taken several in hand
    std::optional<Choice> best;
    double copper = 0;
    for (const auto& key : stock.wires) {
        const auto& wire = shop.wires.at(key);
        for (int strands = 1; strands <= mostStrands && (strands == 1 || wire.bareDiameter >= thickStrand); ++strands) {
            const double area = strands * wire.bareDiameter * wire.bareDiameter;
            if (area <= copper) continue;
            const double perLayer = std::floor(room.width / (wire.overallDiameter * strands));
            if (perLayer < 1) break;
            double height = 0;
            for (const double turns : room.turns) {
                const double layers = std::ceil(turns / perLayer);
                height += layers * wire.overallDiameter + (layers - 1) * room.interlayer;
            }
            if (height > room.height) break;
            best = Choice{key, strands};
            copper = area;
        }
    }
    return best;
}

std::vector<double> splitTurns(double turns, int sections) {
    std::vector<double> all;
    for (int k = sections; k > 0; --k) {
        all.push_back(std::floor(turns / k));
        turns -= all.back();
    }
    return all;
}

/// Makes one draft.
class Drawing {
public:
    Drawing(const Bench& bench, const CoreChoice& core, const Order& order, const Sizes& sizes)
        : bench_(bench), choice_(core), order_(order), sizes_(sizes), design_(bench.need.frame) {
        sizes_.barrier = barrierOf(sizes.barrier);
        if (!bench.stock.film.empty())
            sizes_.interlayer = stocked(sizes.interlayer, bench.shop.insulation.at(bench.stock.film).thicknesses);
    }

    design::DesignPtr made() {
        design_.core = choice_.core;
        design_.bobbin = choice_.bobbin;
        if (bench_.held.from) design_.parts = bench_.held.from->parts;
        bobbin_ = design::part(design_, design_.bobbin, bench_.shop);
        sheet_ = design::part(design_, design_.core.sheet, bench_.shop);
        if (bobbin_ == nullptr || sheet_ == nullptr || bobbin_->chambers.empty()) return {};
        placePins();
        if (!addWindings()) return {};
        if (bench_.held.order)
            takeHeldOrder();
        else
            addOrder();
        return fits() ? std::make_shared<const design::Design>(std::move(design_)) : nullptr;
    }

private:
    void placePins() {
        std::set<int> has, used;
        for (const auto& pin : bobbin_->pins) has.insert(pin.number);
        for (const auto& t : design_.terminals)
            if (has.contains(t.pin)) used.insert(t.pin);
        for (auto& t : design_.terminals) {
            if (t.pin == 0 || has.contains(t.pin)) continue;
            const auto free = std::find_if(has.begin(), has.end(), [&](int pin) { return !used.contains(pin); });
            t.pin = free == has.end() ? 0 : *free;
            if (t.pin != 0) used.insert(t.pin);
        }
    }

    [[nodiscard]] double turnsOf(const WindingNeed& w) const {
        if (bench_.held.turns) return design::conductorTurns(*bench_.held.from, heldWinding(w));
        return std::max(1.0, std::round(std::round(sizes_.turns) * w.ratio));
    }
    [[nodiscard]] const design::Winding& heldWinding(const WindingNeed& w) const {
        return *design::winding(*bench_.held.from, w.winding.name);
    }

    /// Radial room for wire, m: the window less bobbin, insulation and shields.
    [[nodiscard]] double wireRoom() const {
        double room = (sheet_->windowWidth - bobbin_->wall - bobbin_->clearance) * sizes_.fill - outerBarrier;
        for (std::size_t k = 1; k < order_.sections.size(); ++k) {
            room -= sizes_.barrier * static_cast<double>(1 + order_.shields[k].size());
            for (const auto s : order_.shields[k]) room -= bench_.need.shields[s].thickness;
        }
        return room;
    }

    bool addWindings() {
        const auto& windings = bench_.need.windings;
        double driven = 0, others = 0;
        for (const auto& w : windings) (w.side == 0 ? driven : others) += w.ratio;
        const double room = wireRoom();
        const auto& chamber = bobbin_->chambers.front();
        for (std::size_t k = 0; k < windings.size(); ++k) {
            design::Winding winding = windings[k].winding;
            const double turns = turnsOf(windings[k]);
            for (auto& tap : winding.taps) tap.turns = std::max(1.0, std::round(tap.turns * turns));
            if (bench_.held.wires) {
                winding.wire = heldWinding(windings[k]).wire;
                winding.foil = heldWinding(windings[k]).foil;
                winding.strands = heldWinding(windings[k]).strands;
            } else {
                const bool front = windings[k].side == 0;
                const double side = others <= 0 ? 1 : front ? sizes_.drivenShare : 1 - sizes_.drivenShare;
                const Room own{chamber.high - chamber.low, room * side * windings[k].ratio / (front ? driven : others),
                               sizes_.interlayer, splitTurns(turns, order_.sectionsOf(k))};
                const auto wire = thickestThatFits(own, bench_.stock, bench_.shop);
                if (!wire) return false;
                winding.wire = wire->wire;
                winding.strands = wire->strands;
            }
            design_.windings.push_back(std::move(winding));
        }
        return true;
    }

    [[nodiscard]] design::Item barrier(double thickness) const {
        design::Barrier b;
        b.ply.insulation = bench_.stock.tape;
        b.ply.thickness = thickness;
        return {b};
    }

    void addOrder() {
        const auto& need = bench_.need;
        std::vector<std::vector<double>> turns;
        turns.reserve(need.windings.size());
        for (std::size_t w = 0; w < need.windings.size(); ++w)
            turns.push_back(splitTurns(turnsOf(need.windings[w]), order_.sectionsOf(w)));
        std::vector<std::size_t> next(need.windings.size(), 0);
        design::Place place;
        for (std::size_t k = 0; k < order_.sections.size(); ++k) {
            for (const auto s : order_.shields[k]) {
                place.order.push_back(barrier(sizes_.barrier));
                design::Shield shield;
                shield.name = need.shields[s].name;
                shield.terminal = need.shields[s].terminal;
                shield.thickness = need.shields[s].thickness;
                shield.leadInductance = need.shields[s].leadInductance;
                place.order.push_back({shield});
            }
            if (k > 0) place.order.push_back(barrier(sizes_.barrier));
            const std::size_t w = order_.sections[k];
            design::Section section;
            section.winding = need.windings[w].winding.name;
            section.name = std::string(1, static_cast<char>('a' + next[w]));
            section.turns = turns[w][next[w]++];
            section.interlayer.emplace();
            section.interlayer->insulation = bench_.stock.film;
            section.interlayer->thickness = sizes_.interlayer;
            place.order.push_back({section});
        }
        place.order.push_back(barrier(outerBarrier));
        design_.coil = {std::move(place)};
    }

    /// The held coil, its turns in the same shares, its insulation as thick as asked.
    void takeHeldOrder() {
        const auto& from = *bench_.held.from;
        design_.coil = from.coil;
        std::vector<double> left;
        left.reserve(bench_.need.windings.size());
        for (const auto& w : bench_.need.windings) left.push_back(turnsOf(w));
        for (std::size_t k = 0; k < design_.windings.size(); ++k) design_.windings[k].order = from.windings[k].order;
        for (auto& place : design_.coil)
            for (auto& item : place.order) {
                if (auto* b = item.barrier(); b != nullptr && !bench_.held.insulation)
                    b->ply.thickness = sizes_.barrier;
                auto* s = item.section();
                if (s == nullptr) continue;
                if (s->interlayer && !bench_.held.insulation) s->interlayer->thickness = sizes_.interlayer;
                if (bench_.held.turns) continue;
                const auto w = static_cast<std::size_t>(
                    std::find_if(from.windings.begin(), from.windings.end(),
                                 [&](const auto& winding) { return winding.name == s->winding; }) -
                    from.windings.begin());
                const double whole = design::conductorTurns(from, from.windings[w]);
                const double before = s->turns;
                s->turns = std::max(1.0, std::round(turnsOf(bench_.need.windings[w]) * before / whole));
                left[w] -= s->turns;
                // The last section takes what rounding left over.
                if (isLast(design_, *s)) s->turns = std::max(1.0, s->turns + left[w]);
            }
    }
    static bool isLast(const design::Design& d, const design::Section& section) {
        const design::Section* last = nullptr;
        for (const auto& place : d.coil)
            for (const auto& item : place.order)
                if (const auto* s = item.section(); s != nullptr && s->winding == section.winding) last = s;
        return last == &section;
    }

    [[nodiscard]] bool fits() const {
        if (!design::check(design_, bench_.shop, "draft").empty()) return false;
        const auto build = coil::layOut(design_, bench_.shop);
        return std::all_of(build.fill.begin(), build.fill.end(), [](const coil::ChamberFill& f) {
            return f.over <= 0 && f.problems.empty() && f.buildMaximum <= f.room.width();
        });
    }

    const Bench& bench_;
    const CoreChoice& choice_;
    const Order& order_;
    Sizes sizes_;
    design::Design design_;
    const catalog::Bobbin* bobbin_ = nullptr;
    const catalog::Sheet* sheet_ = nullptr;
};

}  // namespace

Sizes sizesAt(const CoreChoice& core, double overLeast) {
    Sizes sizes;
    sizes.turns = std::max(1.0, std::ceil(std::min(core.leastTurns * overLeast, core.mostTurns)));
    return sizes;
}

design::DesignPtr drawn(const Bench& bench, const CoreChoice& core, const Order& order, const Sizes& sizes) {
    return Drawing(bench, core, order, sizes).made();
}

}  // namespace seek
