// SPDX-License-Identifier: GPL-3.0-or-later
#include "seek/need.h"

#include <algorithm>
#include <cmath>
#include <deque>
#include <map>
#include <tuple>

#include "units/fault.h"

namespace seek {

namespace {

void refuseOddities(const design::Design& design, const std::string& file) {
    std::vector<units::Fault> faults;
    const auto fault = [&](const std::string& where, const std::string& found, const std::string& allowed) {
        faults.push_back({file + ": " + where, found, allowed});
    };
    if (design.brief.promises.empty() && design.brief.masks.empty())
        fault("/brief", "no promise and no mask", "at least one, to seek a design for");
    for (const auto& w : design.windings)
        if (w.connection == design::Connection::Parallel)
            fault("/windings", "winding " + w.name + " with its sections in parallel", "sections in series");
    for (const auto& place : design.coil)
        for (const auto& item : place.order) {
            if (const auto* s = item.section(); s != nullptr && (!s->start.empty() || !s->finish.empty()))
                fault("/coil", "section " + s->label() + " with a terminal of its own", "windings with two ends");
            if (const auto* s = item.shield(); s != nullptr && (s->form == design::ShieldForm::Winding || s->overEnds))
                fault("/coil", "shield " + s->name + ", which is no plain foil", "foils that lie flat");
        }
    if (!faults.empty()) throw units::BadInput(std::move(faults));
}

/// Nodes joined by straps, by their least name.
class Joined {
public:
    void join(const std::string& a, const std::string& b) { root_[least(a)] = least(b); }
    [[nodiscard]] std::string least(const std::string& node) const {
        std::string at = node;
        for (auto it = root_.find(at); it != root_.end() && it->second != at; it = root_.find(at)) at = it->second;
        return at;
    }

private:
    std::map<std::string, std::string> root_;
};

Joined strapped(const design::HookUp& hookUp) {
    Joined nodes;
    for (const auto& strap : hookUp.straps)
        for (std::size_t k = 1; k < strap.size(); ++k)
            if (nodes.least(strap[0]) != nodes.least(strap[k])) nodes.join(strap[k], strap[0]);
    return nodes;
}

void findSides(Need& need) {
    const auto& hookUp = need.frame.hookUps.front();
    Joined nodes = strapped(hookUp);
    for (const auto& w : need.windings)
        if (nodes.least(w.winding.start) != nodes.least(w.winding.finish))
            nodes.join(w.winding.start, w.winding.finish);
    std::vector<std::string> sides(1);
    for (const auto& use : hookUp.ports)
        if (use.role == design::Role::Drive)
            if (const auto* port = design::port(need.frame, use.port)) sides[0] = nodes.least(port->plus);
    for (auto& w : need.windings) {
        const auto root = nodes.least(w.winding.start);
        const auto at = std::find(sides.begin(), sides.end(), root);
        w.side = static_cast<int>(at - sides.begin());
        if (at == sides.end()) sides.push_back(root);
    }
    need.sides = static_cast<int>(sides.size());
}

}  // namespace

Need needOf(const design::Design& design, const std::string& file) {
    refuseOddities(design, file);
    Need need;
    need.frame = design;
    need.frame.core = {};
    need.frame.bobbin = {};
    need.frame.windings.clear();
    need.frame.coil.clear();
    need.frame.parts = {};
    double fewest = 0;
    for (const auto& w : design.windings) {
        const double turns = design::conductorTurns(design, w);
        WindingNeed asked{w, turns, 0};
        asked.winding.wire = {};
        asked.winding.foil = {};
        asked.winding.strands = 1;
        asked.winding.order.clear();
        for (auto& tap : asked.winding.taps) tap.turns = tap.turns / turns;
        if (need.windings.empty() || turns < fewest) {
            fewest = turns;
            need.fewest = need.windings.size();
        }
        need.windings.push_back(std::move(asked));
    }
    for (auto& w : need.windings) w.ratio /= fewest;
    for (const auto& place : design.coil)
        for (const auto& item : place.order)
            if (const auto* s = item.shield())
                need.shields.push_back({s->name, s->terminal, s->thickness, s->leadInductance});
    // Where the shields lay is no part of what is asked.
    std::sort(need.shields.begin(), need.shields.end(),
              [](const auto& a, const auto& b) { return std::tie(a.terminal, a.name) < std::tie(b.terminal, b.name); });
    findSides(need);
    return need;
}

double portRatio(const Need& need, const design::HookUp& hookUp, const std::string& name) {
    const auto* port = design::port(need.frame, name);
    if (port == nullptr) return 0;
    const Joined nodes = strapped(hookUp);
    std::map<std::string, double> reached{{nodes.least(port->minus), 0}};
    std::deque<std::string> next{nodes.least(port->minus)};
    while (!next.empty()) {
        const auto at = next.front();
        next.pop_front();
        const auto go = [&](const std::string& to, double turns) {
            const auto node = nodes.least(to);
            if (reached.emplace(node, reached[at] + turns).second) next.push_back(node);
        };
        for (const auto& w : need.windings) {
            if (nodes.least(w.winding.start) == at) go(w.winding.finish, w.ratio);
            if (nodes.least(w.winding.finish) == at) go(w.winding.start, -w.ratio);
            for (const auto& tap : w.winding.taps) {
                if (nodes.least(w.winding.start) == at) go(tap.terminal, w.ratio * tap.turns);
                if (nodes.least(tap.terminal) == at) go(w.winding.start, -w.ratio * tap.turns);
            }
        }
    }
    const auto plus = reached.find(nodes.least(port->plus));
    return plus == reached.end() ? 0 : std::abs(plus->second);
}

}  // namespace seek
