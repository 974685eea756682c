// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/netlist_example.h"

#include <algorithm>
#include <map>

#include "analysis/stages.h"
#include "network/nodes.h"
#include "units/characters.h"
#include "units/fault.h"
#include "units/text.h"

namespace exchange {

namespace {

using network::Circuit;

/// Series R, L, C and EMF from one node to another.
std::string seriesBranch(const std::string& id, const std::string& from, const std::string& to,
                         const network::LumpedBranch& branch, double emf) {
    std::string text, at = from;
    int joint = 0;
    const auto element = [&](const std::string& letter, double value, bool last) {
        const std::string next = last ? to : id + "_" + std::to_string(++joint);
        text += letter + id + " " + at + " " + next + " " + units::shortest(value) + "\n";
        at = next;
    };
    const auto& e = branch.element;
    // The EMF raises `to` above `from`.
    const std::string raised = id + "_s";
    text += "v" + id + " " + raised + " " + at + " dc 0 ac " + units::shortest(emf) + "\n";
    at = raised;
    const bool inductor = e.inductance > 0, capacitor = e.capacitance > 0;
    element("r", std::max(1e-9, branch.share * e.resistance), !inductor && !capacitor);
    if (inductor) element("l", branch.share * e.inductance, !capacitor);
    if (capacitor) element("c", e.capacitance / branch.share, true);
    return text;
}

/// One hook-up's circuit.
class Example {
public:
    Example(const design::Design& design, const design::HookUp& hookUp, const Circuit& circuit,
            const std::vector<Pin>& pins)
        : circuit_(circuit) {
        network::Nodes nodes(design, hookUp);
        text_ = "x1";
        for (const auto& pin : pins) {
            const int index = nodes.index(pin.node);
            if (index == network::earth) {
                text_ += " 0";
                continue;
            }
            const auto& root = nodes.names()[static_cast<std::size_t>(index)];
            text_ += " " + names_.try_emplace(root, "x_" + pin.outside).first->second;
        }
        text_ += " unit\n";
    }

    std::string write() {
        for (std::size_t p = 0; p < circuit_.ports.size(); ++p) writePort(p);
        const int observed = circuit_.portOfRole(design::Role::Observe);
        if (observed < 0) return text_ + ".end\n";
        const auto& port = circuit_.ports[static_cast<std::size_t>(observed)];
        const auto voltage = [&](int index) {
            return index == network::earth ? std::string("0") : "v(" + node(index) + ")";
        };
        return text_ + ".control\nset wr_singlescale\nset numdgt=12\nac dec 40 10 1meg\nlet level = db(" +
               voltage(port.plus) + "-" + voltage(port.minus) + ")\nwrdata response.txt level\nquit 0\n.endc\n.end\n";
    }

private:
    std::string node(int index) {
        if (index == network::earth) return "0";
        const auto& root = circuit_.nodes[static_cast<std::size_t>(index)];
        return names_.try_emplace(root, "x_free_" + std::to_string(index)).first->second;
    }

    void writePort(std::size_t p) {
        const auto& port = circuit_.ports[p];
        const bool driven = static_cast<int>(p) == circuit_.portOfRole(design::Role::Drive);
        text_ += "* port " + units::oneLine(port.name) + "\n";
        const auto branches = [&](const std::vector<int>& all, const std::string& letter) {
            for (std::size_t t = 0; t < all.size(); ++t) {
                const auto& branch = circuit_.lumped[static_cast<std::size_t>(all[t])];
                text_ += seriesBranch("p" + std::to_string(p) + letter + std::to_string(t), node(branch.ends.from),
                                      node(branch.ends.to), branch, driven && letter == "t" ? port.emfShare[t] : 0);
            }
        };
        branches(port.through, "t");
        branches(port.across, "a");
        if (port.acrossCapacitance > 0)
            text_ += "cp" + std::to_string(p) + " " + node(port.plus) + " " + node(port.minus) + " " +
                     units::shortest(port.acrossCapacitance) + "\n";
    }

    const Circuit& circuit_;
    std::map<std::string, std::string> names_;  ///< by root of the joined nodes
    std::string text_;
};

bool hasTable(const Circuit& circuit) {
    return std::any_of(circuit.lumped.begin(), circuit.lumped.end(),
                       [](const auto& branch) { return !branch.table.empty(); });
}

std::string asComment(const std::string& text) {
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        const auto end = text.find('\n', at);
        out += "* " + text.substr(at, end - at) + "\n";
        at = end + 1;
    }
    return out;
}

}  // namespace

std::string exampleCircuits(const design::Design& design, const analysis::Answer& answer,
                            const std::vector<Pin>& pins) {
    const auto& stages = *answer.stages;
    std::string active, others;
    for (const auto& hookUp : design.hookUps) {
        const bool asked = hookUp.name == answer.hookUp;
        const Circuit circuit = analysis::circuitOf(design, hookUp, stages, stages.cut);
        if (!hasTable(circuit)) {
            const std::string text = Example(design, hookUp, circuit, pins).write();
            (asked ? active : others) += "* hook-up " + units::oneLine(hookUp.name) + "\n" +
                                         (asked ? text : asComment(text.substr(0, text.rfind(".end"))));
        } else if (asked) {
            units::refuse("hook-up " + answer.hookUp, "a port with an impedance table",
                          "ports with R, L and C for a netlist");
        } else {
            others += "* hook-up " + units::oneLine(hookUp.name) +
                      ": a port has an impedance table, which is no element of SPICE\n";
        }
    }
    const std::string note = others.empty() ? "" : "* The other hook-ups, to be used instead of the circuit below:\n";
    return note + others + active;
}

}  // namespace exchange
