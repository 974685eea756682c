// SPDX-License-Identifier: GPL-3.0-or-later
#include "seek/first_design.h"

#include <algorithm>
#include <cmath>

#include "coil/coil_build.h"
#include "coil/wire_resistance.h"
#include "magnetics/stack.h"
#include "seek/draft.h"
#include "units/text.h"

namespace seek {

namespace {

/// "1:5", "12:1", "1:1+1"
std::string ratioWords(const design::Enquiry& e) {
    const auto plain = [](double value) { return units::shortest(std::round(100 * value) / 100); };
    std::string words = e.ratio >= 1 ? "1:" + plain(e.ratio) : plain(1 / e.ratio) + ":1";
    for (std::size_t k = 1; k < e.outputs.size(); ++k) words += e.ratio >= 1 ? "+" + plain(e.ratio) : "+1";
    return words;
}

/// Adds what one side has: pins, a winding between them, a port, and what hangs on it.
class Sketch {
public:
    design::Design design;

    std::string pin() {
        design::Terminal terminal;
        terminal.name = std::to_string(++pins_);
        terminal.pin = pins_;
        design.terminals.push_back(terminal);
        return terminal.name;
    }

    void side(const design::Termination& end, const std::string& winding, design::Role role) {
        design::Winding w;
        w.name = winding;
        w.start = pin();
        w.finish = pin();
        design::Port port;
        port.name = end.port;
        port.plus = w.finish;
        port.minus = w.start;
        design::PortUse use;
        use.port = end.port;
        use.role = role;
        use.earthing = end.earthing;
        use.through.emplace();
        use.through->resistance = end.resistance;
        if (end.capacitance > 0) {
            use.across.emplace_back();
            use.across.back().capacitance = end.capacitance;
        }
        design.windings.push_back(std::move(w));
        design.ports.push_back(std::move(port));
        design.hookUps.front().ports.push_back(std::move(use));
    }

    /// One shield has a pin; several have leads, since pins are for windings.
    void shield(const std::string& name, bool lead) {
        design::Shield shield;
        shield.name = name;
        if (lead) {
            design::Terminal terminal;
            terminal.name = name + " lead";
            terminal.leadLength = 0.15;
            design.terminals.push_back(terminal);
            shield.terminal = terminal.name;
        } else {
            shield.terminal = pin();
        }
        design.hookUps.front().earths.push_back(shield.terminal);
        design.coil.front().order.push_back({shield});
    }

    void section(const std::string& winding, double turns) {
        design::Section section;
        section.winding = winding;
        section.name = "a";
        section.turns = turns;
        design.coil.front().order.push_back({section});
    }

private:
    int pins_ = 0;
};

/// Terminations with the copper of a design in series. Windings of a side share its current by their turns, in series
/// and in parallel alike: referred to one turn their resistances lie side by side.
Terminations withCopper(Terminations at, const Need& need, const coil::CoilBuild& build, double temperature) {
    double driven = 0, others = 0;  // S, referred to the winding with the fewest turns
    for (const auto& w : need.windings) {
        double resistance = 0;
        for (const auto& layer : build.layers)
            if (layer.winding == w.winding.name) resistance += layer.resistance20;
        if (resistance > 0) (w.side == 0 ? driven : others) += w.ratio * w.ratio / resistance;
    }
    const double warm = coil::resistanceFactor(temperature);
    if (driven > 0) at.source += warm / driven;
    if (others > 0 && at.load > 0) at.load = 1 / (1 / at.load + warm / others);
    return at;
}

struct Drawn {
    design::DesignPtr design;
    bool keeps = false;  ///< low end and level, its copper counted
};

/// Draws one core with more and more turns, until its copper too is made up for or it holds no more.
Drawn keeping(const Bench& bench, const CoreChoice& core, const Order& order) {
    constexpr int rounds = 5;
    constexpr double over = 1.05;
    const Terminations bare = terminationsOf(bench.need);
    Sizes sizes = sizesAt(core, usualTurns);
    Drawn last;
    for (int k = 0; k < rounds && sizes.turns <= core.mostTurns; ++k) {
        auto design = drawn(bench, core, order, sizes);
        if (!design) break;
        last.design = design;
        const auto at = withCopper(bare, bench.need, coil::layOut(*design, bench.shop), design->conditions.temperature);
        const double least = leastTurns(bench.need, at, magnetics::coreModel(*design, bench.shop));
        last.keeps = sizes.turns >= over * least;
        if (last.keeps) break;
        sizes.turns = std::ceil(std::max(over * least, 1.1 * sizes.turns));
    }
    return last;
}

}  // namespace

design::Design sketchOf(const design::Enquiry& enquiry) {
    Sketch sketch;
    auto& d = sketch.design;
    d.name = enquiry.title + " " + ratioWords(enquiry);
    d.brief.use = enquiry.use;
    d.brief.operatingLevel = enquiry.level;
    d.brief.promises = enquiry.promises;
    d.coil.emplace_back();
    d.hookUps.emplace_back();
    d.hookUps.front().name = "normal";
    constexpr double unit = 1000;  // turns; only their ratio counts
    const bool several = enquiry.outputs.size() > 1;
    sketch.side(enquiry.source, "P", design::Role::Drive);
    sketch.section("P", unit);
    for (std::size_t k = 0; k < enquiry.outputs.size(); ++k) {
        const std::string number = several ? std::to_string(k + 1) : "";
        sketch.shield(several ? "foil " + number : "foil", several);
        sketch.side(enquiry.outputs[k], "S" + number, k == 0 ? design::Role::Observe : design::Role::Load);
        sketch.section("S" + number, unit * enquiry.ratio);
    }
    d.hookUps.front().earths.emplace_back("core");
    return std::move(d);
}

design::DesignPtr firstDesign(const Need& need, const catalog::Catalog& shop) {
    const Bench bench{need, shop, stockOf(shop, nullptr), {}};
    const auto orders = ordersOf(need);
    refuseNone(orders);
    auto cores = coreChoices(need, bench.stock, shop, nullptr);
    const auto room = [](const CoreChoice& c) { return c.mostTurns / c.leastTurns; };
    constexpr double enoughRoom = 2;
    std::stable_sort(cores.begin(), cores.end(), [&](const CoreChoice& a, const CoreChoice& b) {
        const bool one = room(a) >= enoughRoom, other = room(b) >= enoughRoom;
        return one != other ? one : !one && room(a) > room(b);
    });
    design::DesignPtr any;
    for (const auto& core : cores) {
        const Drawn drawing = keeping(bench, core, orders.front());
        if (drawing.keeps) return drawing.design;
        if (!any) any = drawing.design;
    }
    if (!any) refuseForWantOfACore();
    return any;
}

}  // namespace seek
