// SPDX-License-Identifier: GPL-3.0-or-later
// The edit that changes which end of a port is at earth.
#include <algorithm>
#include <set>

#include "design/edit.h"

namespace design {

namespace {

using Strap = std::vector<std::string>;

/// Nodes that a winding ends at or is tapped at: those stay where they are soldered.
std::set<std::string> windingEnds(const Design& d) {
    std::set<std::string> ends;
    for (const Winding& w : d.windings) {
        ends.insert({w.start, w.finish});
        for (const Tap& t : w.taps) ends.insert(t.terminal);
    }
    for (const Place& place : d.coil)
        for (const Item& item : place.order)
            if (const Section* s = item.section()) ends.insert({s->start, s->finish});
    return ends;
}

/// Takes what a port's ends are tied to from one end to the other.
class Turned {
public:
    Turned(const Design& d, const Port& port)
        : design_(d), port_(port), ends_(windingEnds(d)), plus_(nodeOf(d, port.plus)), minus_(nodeOf(d, port.minus)) {}

    void earths(HookUp& h) const {
        // A strapped neighbour that is earthed earths the end as well.
        for (std::string& name : h.earths) {
            const bool plus = joined(h, name, plus_), minus = joined(h, name, minus_);
            if (plus != minus) name = plus ? port_.minus : port_.plus;
        }
        std::set<std::string> seen;
        std::erase_if(h.earths, [&](const auto& name) { return !seen.insert(name).second; });
    }
    void straps(std::vector<Strap>& straps) const {
        std::vector<Strap> moved;
        for (Strap& strap : straps)
            if (Strap over = takenOff(strap, straps); !over.empty()) moved.push_back(std::move(over));
        for (const Strap& over : moved) {
            const std::string end = nodeOf(design_, over.front());
            const auto there = std::find_if(straps.begin(), straps.end(), [&](auto& s) { return holds(s, end); });
            if (there == straps.end())
                straps.push_back(over);
            else
                there->insert(there->end(), over.begin() + 1, over.end());
        }
        std::erase_if(straps, [](const Strap& strap) { return strap.size() < 2; });
    }

private:
    /// What of a strap goes over to the port's other end, named first; empty where nothing does, or where the strap
    /// itself changed its end.
    [[nodiscard]] Strap takenOff(Strap& strap, const std::vector<Strap>& all) const {
        const bool plus = holds(strap, plus_);
        if (plus == holds(strap, minus_)) return {};
        Strap over{plus ? port_.minus : port_.plus};
        for (const auto& name : strap)
            if (!wound(name)) over.push_back(name);
        if (over.size() == 1) return {};
        if (over.size() == strap.size() && alone(all, plus ? minus_ : plus_)) {
            for (auto& name : strap)
                if (wound(name)) name = over.front();
            return {};
        }
        std::erase_if(strap, [&](const auto& name) { return !wound(name); });
        return over;
    }
    [[nodiscard]] bool wound(const std::string& name) const { return ends_.contains(nodeOf(design_, name)); }
    [[nodiscard]] bool holds(const Strap& strap, const std::string& node) const {
        return std::any_of(strap.begin(), strap.end(), [&](const auto& name) { return nodeOf(design_, name) == node; });
    }
    [[nodiscard]] bool joined(const HookUp& h, const std::string& name, const std::string& node) const {
        const std::string self = nodeOf(design_, name);
        return self == node || (wound(name) && std::any_of(h.straps.begin(), h.straps.end(), [&](const Strap& s) {
                                    return holds(s, self) && holds(s, node);
                                }));
    }
    /// No strap holds the node together with another wound one.
    [[nodiscard]] bool alone(const std::vector<Strap>& straps, const std::string& node) const {
        return std::none_of(straps.begin(), straps.end(), [&](const Strap& s) {
            return holds(s, node) && std::count_if(s.begin(), s.end(), [&](auto& n) { return wound(n); }) > 1;
        });
    }

    const Design& design_;
    const Port& port_;
    std::set<std::string> ends_;
    std::string plus_, minus_;
};

}  // namespace

DesignPtr otherEndHot(const Design& d, const std::string& hookUpName, const std::string& portName) {
    return changed(d, [&](Design& copy) {
        const Port* p = port(d, portName);
        const auto found = std::find_if(copy.hookUps.begin(), copy.hookUps.end(),
                                        [&](const HookUp& h) { return h.name == hookUpName; });
        if (!p || found == copy.hookUps.end()) return;
        const Turned turned(d, *p);
        turned.earths(*found);
        turned.straps(found->straps);
        for (PortUse& u : found->ports) {
            if (u.port != portName) continue;
            if (u.earthing == Earthing::MinusEarthed)
                u.earthing = Earthing::PlusEarthed;
            else if (u.earthing == Earthing::PlusEarthed)
                u.earthing = Earthing::MinusEarthed;
        }
    });
}

}  // namespace design
