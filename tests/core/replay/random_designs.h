// SPDX-License-Identifier: GPL-3.0-or-later
// Random valid designs for the machines: every lay, traverse and kind of conductor, in one to three chambers.
#pragma once

#include <random>

#include "winding_cases.h"

namespace winding_cases {

class RandomDesigns {
public:
    explicit RandomDesigns(unsigned seed) : dice_(seed) {}

    /// The next design that `design::check` finds no fault in, on one leg or two.
    design::Design next() {
        for (;;) {
            design::Design made = make();
            const auto faults = design::check(made, shop(), "random");
            if (faults.empty() && !tooHigh(made)) return made;
            if (faults.empty()) continue;
            ++refused;
            lastFault = units::sentence(faults.front());
        }
    }
    int refused = 0;
    std::string lastFault;

private:
    /// A coil more than twice as high as its room is valid, but nobody's coil, and beyond a machine's travel.
    static bool tooHigh(const design::Design& d) {
        const coil::CoilBuild build = coil::layOut(d, shop());
        for (const auto& chamber : build.fill)
            if (chamber.over > chamber.room.width()) return true;
        return false;
    }
    int pick(int low, int high) { return std::uniform_int_distribution<int>(low, high)(dice_); }
    double share() { return std::uniform_real_distribution<double>(0, 1)(dice_); }
    template <class List>
    auto& oneOf(List& list) {
        return list[static_cast<std::size_t>(pick(0, static_cast<int>(std::size(list)) - 1))];
    }

    design::Design make() {
        static const std::vector<design::Design> base = [] {
            std::vector<design::Design> all;
            for (const char* name : demos) all.push_back(demo(name));
            return all;
        }();
        design::Design d = oneOf(base);
        d.brief = {};
        d.conditions = {};
        twoLegs_ = share() < 0.2;
        std::string bobbin = d.bobbin.key;
        if (twoLegs_) {
            d.core.kind = design::CoreKind::TwoLeg;
            d.core.sheet.key = "UI30";
            d.core.height = 0.01;
            bobbin = "UI30-1";
        }
        const int chambers = pick(1, 3);
        d.bobbin.key = bobbin.substr(0, bobbin.rfind('-') + 1) + std::to_string(chambers);
        d.terminals.clear();
        d.windings.clear();
        d.coil.clear();
        for (int leg = 1; leg <= (twoLegs_ ? 2 : 1); ++leg)
            for (int chamber = 1; chamber <= chambers; ++chamber) {
                d.coil.emplace_back();
                d.coil.back().leg = leg;
                d.coil.back().chamber = chamber;
            }
        nextPin_ = 1;
        const int windings = pick(2, 4);
        for (int w = 0; w < windings; ++w) addWinding(d, std::string(1, static_cast<char>('A' + w)));
        connect(d);
        finish(d);
        return d;
    }

    /// A drive on the first winding, a look at the last.
    static void connect(design::Design& d) {
        const auto& in = d.windings.front();
        const auto& out = d.windings.back();
        d.ports = {{"in", in.start, in.finish, {}}, {"out", out.start, out.finish, {}}};
        design::HookUp one;
        one.name = "plain";
        one.ports.resize(2);
        one.ports[0].port = "in";
        one.ports[0].role = design::Role::Drive;
        one.ports[0].through.emplace();
        one.ports[0].through->resistance = 600;
        one.ports[1].port = "out";
        one.ports[1].role = design::Role::Observe;
        d.hookUps = {one};
    }

    std::string terminal(design::Design& d) {
        design::Terminal t;
        t.name = "T" + std::to_string(d.terminals.size() + 1);
        if (share() < 0.7 && nextPin_ <= 10)
            t.pin = nextPin_++;
        else
            t.leadLength = 0.05;
        d.terminals.push_back(t);
        return t.name;
    }

    void addWinding(design::Design& d, const std::string& name) {
        static const std::vector<std::string> wires{"AWG 23 single", "AWG 28 single", "AWG 32 single", "AWG 35 single",
                                                    "AWG 38 single", "AWG 39 single", "AWG 43 single", "AWG 44 single"};
        design::Winding w;
        w.name = name;
        if (share() < 0.1) {
            w.foil.emplace();
            w.foil->thickness = 5e-5;
            if (share() < 0.5) w.foil->width = 0.003;
        } else {
            w.wire.key = oneOf(wires);
            if (share() < 0.25) w.strands = pick(2, 4);
        }
        w.start = terminal(d);
        w.finish = terminal(d);
        const int sections = pick(1, 3);
        double turns = 0;
        for (int s = 0; s < sections; ++s) {
            const design::Section one = section(w, std::string(1, static_cast<char>('a' + s)));
            turns += one.turns;
            auto& order = oneOf(d.coil).order;
            order.push_back({one});
            // Bifilar: another winding of the same wire goes along.
            if (!w.foil && share() < 0.15 && w.strands == 1) along(d, w, one, order);
        }
        if (share() < 0.3 && turns >= 4) {
            const double halves = pick(2, static_cast<int>(2 * turns) - 2) / 2.0;
            w.taps.push_back({share() < 0.5 ? std::floor(halves) : halves, terminal(d)});
        }
        d.windings.push_back(w);
    }

    void along(design::Design& d, const design::Winding& first, design::Section one, std::vector<design::Item>& order) {
        design::Winding w = first;
        w.name = first.name + "2" + one.name;
        w.taps.clear();
        w.start = terminal(d);
        w.finish = terminal(d);
        std::get<design::Section>(order.back().what).hand = first.name + one.name;
        one.hand = first.name + one.name;
        one.winding = w.name;
        one.name = "a";
        if (share() < 0.3) one.turns = std::max(1.0, std::floor(one.turns * 0.7));
        order.push_back({one});
        d.windings.push_back(w);
    }

    design::Section section(const design::Winding& w, const std::string& name) {
        design::Section s;
        s.winding = w.name;
        s.name = name;
        s.turns = w.foil ? pick(1, 8) : share() < 0.8 ? pick(1, 400) : pick(400, 3000);
        if (!twoLegs_ && !w.foil && share() < 0.2) s.turns = s.turns + 0.5;
        const design::Lay lays[] = {design::Lay::Layers, design::Lay::Layers, design::Lay::Nested, design::Lay::Random};
        s.lay = w.foil ? design::Lay::Layers : oneOf(lays);
        s.starts = share() < 0.5 ? design::End::Low : design::End::High;
        s.traverse = share() < 0.7 ? design::Traverse::BackAndForth : design::Traverse::SameSide;
        s.lastLayer = share() < 0.7 ? design::LastLayer::Close : design::LastLayer::Spread;
        s.reversed = share() < 0.2;
        if (share() < 0.3) s.marginLow = 0.001 * share();
        if (share() < 0.3) s.marginHigh = 0.0015 * share();
        if (share() < 0.2) s.pitchFactor = 1 + 2 * share();
        if (share() < 0.2 && !w.foil) s.turnsPerLayer = pick(2, 40);
        if (share() < 0.6) s.interlayer = film(2.5e-5);
        return s;
    }
    static design::Ply film(double thickness) {
        design::Ply ply;
        ply.insulation.key = "polyester-film";
        ply.thickness = thickness;
        return ply;
    }

    /// Puts barriers and shields between the sections, and drops places that hold nothing.
    void finish(design::Design& d) {
        int shields = 0;
        for (auto& place : d.coil) {
            std::vector<design::Item> order;
            for (std::size_t i = 0; i < place.order.size(); ++i) {
                const auto* here = place.order[i].section();
                const auto* before = i > 0 ? place.order[i - 1].section() : nullptr;
                const bool inHand = before != nullptr && !here->hand.empty() && before->hand == here->hand;
                if (!inHand && share() < 0.5) order.push_back({design::Barrier{film(1e-4), nullptr}});
                if (!inHand && share() < 0.2) {
                    design::Shield shield;
                    shield.name = "shield " + std::to_string(++shields);
                    order.push_back({shield});
                }
                order.push_back(place.order[i]);
            }
            if (share() < 0.5 && !order.empty()) order.push_back({design::Barrier{film(1e-4), nullptr}});
            place.order = order;
        }
        std::erase_if(d.coil, [](const design::Place& place) { return place.order.empty(); });
    }

    std::mt19937 dice_;
    bool twoLegs_ = false;
    int nextPin_ = 1;
};

}  // namespace winding_cases
