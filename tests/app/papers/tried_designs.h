// SPDX-License-Identifier: GPL-3.0-or-later
// Designs that try the papers: 1 to 12 windings, taps, wires in one hand, two chambers, shields of both kinds, a mixed
// stack, parts named with three letters and with sixty, names in other scripts.
#pragma once

#include <string>
#include <vector>

#include "winding_cases.h"

namespace tried {

struct Tried {
    std::string name;
    design::Design design;
};

inline std::string terminal(design::Design& d, int pin, const std::string& colour = "") {
    design::Terminal t;
    t.name = "T" + std::to_string(d.terminals.size() + 1);
    t.pin = pin;
    t.leadColour = colour;
    if (pin == 0) t.leadLength = 0.12;
    d.terminals.push_back(t);
    return t.name;
}

inline design::Section section(const std::string& winding, double turns, const std::string& hand = "") {
    design::Section s;
    s.winding = winding;
    s.name = "a";
    s.turns = turns;
    s.hand = hand;
    return s;
}

inline design::Ply film() {
    design::Ply ply;
    ply.insulation.key = "polyester-film";
    ply.thickness = 5e-5;
    return ply;
}

/// So many windings on two chambers: the first is driven, every third has a tap, every fourth goes in one hand with the
/// one before; between them foil shields and shields of wire, by turns.
inline design::Design manyWindings(int count) {
    design::Design d = winding_cases::demo("line-unit");  // its stack is of two alloys
    d.name = std::to_string(count) + " windings";
    d.brief = {};
    d.conditions = {};
    d.filling.reset();
    d.bobbin.key = "EI66-2";
    d.terminals.clear();
    d.windings.clear();
    d.coil.assign(2, {});
    for (int chamber = 1; chamber <= 2; ++chamber) d.coil[static_cast<std::size_t>(chamber) - 1].chamber = chamber;
    static const char* const colours[] = {"red", "blue", "green", "yellow"};
    int pin = 1;
    const auto next = [&] {
        const bool lead = pin > 10;
        return terminal(d, lead ? 0 : pin++, lead ? colours[d.terminals.size() % 4] : "");
    };
    for (int k = 0; k < count; ++k) {
        design::Winding w;
        w.name = "W" + std::to_string(k + 1);
        w.wire.key = "AWG 38 single";
        w.start = next();
        w.finish = next();
        const double turns = 120 + 7 * k;
        if (k % 3 == 2) w.taps.push_back({60, next()});
        auto& order = d.coil[static_cast<std::size_t>(k / 2 % 2)].order;
        const bool bifilar = k % 4 == 3;
        if (bifilar) {
            std::get<design::Section>(order.back().what).hand = "pair" + std::to_string(k);
        } else if (!order.empty()) {
            order.push_back({design::Barrier{film(), nullptr}});
            if (k % 4 == 2) {
                design::Shield shield;
                shield.name = "shield " + std::to_string(k);
                if (k % 8 == 2) {
                    shield.form = design::ShieldForm::Winding;
                    shield.wire.key = "AWG 38 single";
                }
                order.push_back({shield});
                order.push_back({design::Barrier{film(), nullptr}});
            }
        }
        order.push_back({section(w.name, turns, bifilar ? "pair" + std::to_string(k) : "")});
        d.windings.push_back(w);
    }
    std::erase_if(d.coil, [](const design::Place& place) { return place.order.empty(); });
    const auto &in = d.windings.front(), &out = d.windings.back();
    d.ports = {{"in", in.start, in.finish, {}}};
    design::HookUp one;
    one.name = "plain";
    one.ports.resize(1);
    one.ports[0].port = "in";
    one.ports[0].role = design::Role::Drive;
    one.ports[0].through.emplace();
    one.ports[0].through->resistance = 600;
    // One winding alone is looked at where it is driven from, across a port of its own.
    d.ports.push_back({"out", out.start, out.finish, {}});
    one.ports.resize(2);
    one.ports[1].port = "out";
    one.ports[1].role = design::Role::Observe;
    d.hookUps = {one};
    return d;
}

inline std::vector<Tried> designs() {
    std::vector<Tried> all;
    for (const int count : {1, 2, 3, 4, 6, 8, 10, 12})
        all.push_back({"windings_" + std::to_string(count), manyWindings(count)});
    design::Design three = manyWindings(3);
    three.partNumber = "A1B";
    all.push_back({"three_letters", three});
    design::Design sixty = manyWindings(4);
    sixty.partNumber = "PART-" + std::string(55, 'W');
    sixty.name = "A name of sixty letters that a customer has thought of, and more";
    all.push_back({"sixty_letters", sixty});
    design::Design scripts = manyWindings(4);
    scripts.name = "Übertrager Ωμέγα Трансформатор 変圧器 محول";
    scripts.partNumber = "Ж-42-é";
    scripts.brief.customer = "Ćwikła & Γιάννης";
    scripts.brief.use = "микрофон → Eingang";
    all.push_back({"other_scripts", scripts});
    return all;
}

}  // namespace tried
