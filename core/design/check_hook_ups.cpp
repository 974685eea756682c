// SPDX-License-Identifier: GPL-3.0-or-later
// Faults of ports and hook-ups.
#include <map>
#include <set>

#include "design/inspection.h"

namespace design {

namespace {

void checkStraps(const Inspection& in, const HookUp& h, const std::string& at) {
    std::map<std::string, std::size_t> strapped;
    for (std::size_t i = 0; i < h.straps.size(); ++i) {
        const std::string here = at + Inspection::at("straps", i);
        if (h.straps[i].size() < 2) in.fault(here, "fewer than two nodes", "at least two nodes to join");
        for (std::size_t j = 0; j < h.straps[i].size(); ++j) {
            const std::string& name = h.straps[i][j];
            const std::string node = here + "/" + std::to_string(j);
            in.node(node, name);
            const auto [before, fresh] = strapped.emplace(nodeOf(in.design, name), i);
            if (fresh || before->first.empty()) continue;
            if (before->second == i)
                in.fault(node, Inspection::quoted(name) + " a second time", "each node once in a strap");
            else
                in.fault(
                    node,
                    Inspection::quoted(name) + ", which is in strap " + std::to_string(before->second + 1) + " too",
                    "each node in one strap only: write one list for all that is joined");
        }
    }
}

void checkEarths(const Inspection& in, const HookUp& h, const std::string& at) {
    std::set<std::string> seen;
    for (std::size_t i = 0; i < h.earths.size(); ++i) {
        const std::string here = at + Inspection::at("earths", i);
        in.node(here, h.earths[i]);
        if (!seen.insert(h.earths[i]).second)
            in.fault(here, Inspection::quoted(h.earths[i]) + " a second time", "each node once");
    }
}

void checkUse(const Inspection& in, const PortUse& u, const std::string& at) {
    if (!port(in.design, u.port)) in.fault(at + "/port", Inspection::quoted(u.port), "the name of a port in /ports");
    if (u.through && !u.table.empty()) in.fault(at + "/table", "a table and a \"through\"", "one of the two");
    if (u.role == Role::Drive && !u.through && u.table.empty())
        in.fault(at + "/through", "nothing",
                 "the source's impedance, of 0 ohm at the least: an open port is not driven");
    if (u.role != Role::Observe && (u.amplifierVoltageNoise > 0 || u.amplifierCurrentNoise > 0))
        in.fault(at + (u.amplifierVoltageNoise > 0 ? "/amplifier_voltage_noise" : "/amplifier_current_noise"),
                 "an amplifier's noise on a port that is not observed", "an amplifier at the observed port alone");
    for (std::size_t i = 1; i < u.table.size(); ++i)
        if (u.table[i].frequency <= u.table[i - 1].frequency)
            in.fault(at + Inspection::at("table", i), units::shortest(u.table[i].frequency) + " Hz",
                     "a frequency above the one before, " + units::shortest(u.table[i - 1].frequency) + " Hz");
    if (u.mode == Mode::Common && u.role != Role::Drive)
        in.fault(at + "/mode", "\"common\" on a port that is not driven", "\"common\" on the driven port");
    else if (u.mode == Mode::Common && u.earthing != Earthing::Balanced)
        in.fault(at + "/mode", "\"common\" on a port that is not balanced",
                 "\"common\" with \"earthing\": \"balanced\"");
}

void checkRole(const Inspection& in, const HookUp& h, const std::string& at, Role role, const std::string& word) {
    const auto has = std::count_if(h.ports.begin(), h.ports.end(), [&](const PortUse& u) { return u.role == role; });
    if (has != 1)
        in.fault(at + "/ports", std::to_string(has) + " ports with role " + Inspection::quoted(word),
                 "one port with role " + Inspection::quoted(word));
}

void checkHookUp(const Inspection& in, std::size_t i) {
    const HookUp& h = in.design.hookUps[i];
    const std::string at = Inspection::at("hook_ups", i);
    checkStraps(in, h, at);
    checkEarths(in, h, at);
    std::set<std::string> used;
    for (std::size_t j = 0; j < h.ports.size(); ++j) {
        const std::string here = at + Inspection::at("ports", j);
        checkUse(in, h.ports[j], here);
        if (!used.insert(h.ports[j].port).second)
            in.fault(here + "/port", Inspection::quoted(h.ports[j].port) + " a second time",
                     "each port once in a hook-up");
    }
    checkRole(in, h, at, Role::Drive, "drive");
    checkRole(in, h, at, Role::Observe, "observe");
}

}  // namespace

void checkPorts(const Inspection& in) {
    const auto& ports = in.design.ports;
    if (ports.empty()) in.fault("/ports", "an empty list", "at least one port");
    in.names("/ports", ports, "port");
    for (std::size_t i = 0; i < ports.size(); ++i) {
        in.node(Inspection::at("ports", i, "plus"), ports[i].plus);
        in.node(Inspection::at("ports", i, "minus"), ports[i].minus);
        const std::string plus = nodeOf(in.design, ports[i].plus);
        if (!plus.empty() && plus == nodeOf(in.design, ports[i].minus))
            in.fault(Inspection::at("ports", i, "minus"),
                     Inspection::quoted(ports[i].minus) + ", which is also its plus",
                     "another node than its plus: a port has two ends");
    }
}

void checkHookUps(const Inspection& in) {
    if (in.design.hookUps.empty()) in.fault("/hook_ups", "an empty list", "at least one hook-up");
    in.names("/hook_ups", in.design.hookUps, "hook-up");
    for (std::size_t i = 0; i < in.design.hookUps.size(); ++i) checkHookUp(in, i);
}

}  // namespace design
