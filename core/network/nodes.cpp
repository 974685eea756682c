// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/nodes.h"

#include "network/circuit.h"

namespace network {

namespace {
const std::string earthName = "earth";
}

Nodes::Nodes(const design::Design& design, const design::HookUp& hookUp) {
    for (const auto& place : design.coil)
        for (const auto& item : place.order)
            if (const auto* shield = item.shield(); shield != nullptr && !shield->terminal.empty())
                join(shield->name, shield->terminal);
    for (const auto& strap : hookUp.straps)
        for (std::size_t i = 1; i < strap.size(); ++i) join(strap[0], strap[i]);
    for (const auto& name : hookUp.earths) join(earthName, name);
    for (const auto& use : hookUp.ports)
        if (const auto* port = design::port(design, use.port)) {
            if (use.earthing == design::Earthing::MinusEarthed) join(earthName, port->minus);
            if (use.earthing == design::Earthing::PlusEarthed) join(earthName, port->plus);
        }
}

std::string Nodes::root(const std::string& name) {
    auto at = parent_.find(name);
    if (at == parent_.end()) return name;
    const std::string top = root(at->second);
    at->second = top;
    return top;
}

void Nodes::join(const std::string& a, const std::string& b) {
    const auto ra = root(a), rb = root(b);
    if (ra == rb) return;
    if (rb == earthName)
        parent_[ra] = rb;
    else
        parent_[rb] = ra;
}

int Nodes::index(const std::string& name) {
    const auto top = root(name);
    if (top == earthName) return earth;
    const auto [at, fresh] = index_.try_emplace(top, static_cast<int>(names_.size()));
    if (fresh) names_.push_back(top);
    return at->second;
}

}  // namespace network
