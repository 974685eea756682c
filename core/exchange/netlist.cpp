// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/netlist.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "analysis/stages.h"
#include "magnetics/permeability.h"
#include "network/nodes.h"
#include "units/fault.h"
#include "units/text.h"

namespace exchange {

namespace {

using network::Circuit;

std::string number(double value) {
    return units::shortest(value);
}

/// SPICE names: letters, digits and underscores; different names stay different.
class SpiceNames {
public:
    std::string of(const std::string& name) {
        if (const auto known = made_.find(name); known != made_.end()) return known->second;
        std::string plain = "n_";
        for (const char c : name)
            plain += std::isalnum(static_cast<unsigned char>(c)) != 0
                         ? static_cast<char>(std::tolower(static_cast<unsigned char>(c)))
                         : '_';
        while (std::any_of(made_.begin(), made_.end(), [&](const auto& m) { return m.second == plain; })) plain += "_";
        return made_[name] = plain;
    }

private:
    std::map<std::string, std::string> made_;
};

/// Nodes that are reached from outside, in the order of pins: terminals that a winding uses, shields, core.
std::vector<std::string> pins(const design::Design& design, const Circuit& unit) {
    std::vector<std::string> all;
    const auto add = [&](const std::string& name) {
        const bool used = std::find(unit.nodes.begin(), unit.nodes.end(), name) != unit.nodes.end();
        if (used && std::find(all.begin(), all.end(), name) == all.end()) all.push_back(name);
    };
    for (const auto& terminal : design.terminals) add(terminal.name);
    for (const auto& node : unit.nodes)
        if (node.find('/') == std::string::npos && node.find('>') == std::string::npos) add(node);
    return all;
}

class UnitWriter {
public:
    UnitWriter(const Circuit& unit, SpiceNames& names) : unit_(unit), names_(names) {}

    std::string write(const std::vector<std::string>& pinNames) {
        text_ = ".subckt unit";
        for (const auto& pin : pinNames) text_ += " " + names_.of(pin);
        text_ += "\n";
        findGauge();
        writeBranches();
        writeCouplings();
        writeCore();
        writeCapacitances();
        return text_ + ".ends unit\n";
    }

private:
    std::string node(int index) {
        return index == network::earth ? "0" : names_.of(unit_.nodes[static_cast<std::size_t>(index)]);
    }
    double inductance(Eigen::Index i, Eigen::Index k) const {
        return unit_.leakage(i, k) + gauge_ * unit_.turns(i) * unit_.turns(k);
    }

    void findGauge() {
        for (Eigen::Index i = 0; i < unit_.turns.size(); ++i)
            for (Eigen::Index k = 0; k < unit_.turns.size(); ++k)
                gauge_ = std::max(gauge_, std::abs(unit_.leakage(i, k) / (unit_.turns(i) * unit_.turns(k))));
        gauge_ *= 4;
    }

    void writeBranches() {
        for (Eigen::Index k = 0; k < unit_.turns.size(); ++k) {
            const auto ends = unit_.windingBranches[static_cast<std::size_t>(k)];
            const std::string id = std::to_string(k);
            const std::string n = number(unit_.turns(k));
            text_ += "r" + id + " " + node(ends.from) + " a" + id + " " + number(unit_.resistance(k)) + "\n";
            text_ += "l" + id + " a" + id + " b" + id + " " + number(inductance(k, k)) + "\n";
            text_ += "e" + id + " b" + id + " c" + id + " flux 0 " + n + "\n";
            text_ += "v" + id + " c" + id + " " + node(ends.to) + " 0\n";
            text_ += "f" + id + " 0 flux v" + id + " " + n + "\n";
        }
    }

    void writeCouplings() {
        for (Eigen::Index i = 0; i < unit_.turns.size(); ++i)
            for (Eigen::Index k = i + 1; k < unit_.turns.size(); ++k)
                text_ += "k" + std::to_string(i) + "_" + std::to_string(k) + " l" + std::to_string(i) + " l" +
                         std::to_string(k) + " " +
                         number(inductance(i, k) / std::sqrt(inductance(i, i) * inductance(k, k))) + "\n";
    }

    /// The blocks' one-turn impedances stand in series from the flux node to earth, and give back the gauge.
    void writeCore() {
        const auto& core = unit_.core;
        const double scale = magnetics::mu0 * core.area / core.pathLength;
        text_ += "lgauge flux m0 " + number(-gauge_) + "\n";
        for (std::size_t b = 0; b < core.blocks.size(); ++b) {
            const auto& block = core.blocks[b];
            const std::string top = "m" + std::to_string(b);
            const std::string bottom = b + 1 < core.blocks.size() ? "m" + std::to_string(b + 1) : "0";
            const double whole = scale * block.share * block.initialPermeability;
            // t^2 = jw tau of the sheet.
            const double tau = magnetics::mu0 * block.initialPermeability * block.thickness * block.thickness /
                               (4 * block.resistivity);
            if (core.gap > 0)
                text_ += "lgap" + std::to_string(b) + " " + top + " " + bottom + " " +
                         number(scale * block.share * core.pathLength / core.gap) + "\n";
            const int stages =
                12 + static_cast<int>(std::ceil(std::sqrt(2 * 3.14159265358979 * analysis::highestFrequency * tau)));
            std::string at = top;
            for (int s = 0; s < stages; ++s) {
                const std::string id = std::to_string(b) + "_" + std::to_string(s), next = "q" + id;
                text_ += "lm" + id + " " + at + " " + bottom + " " + number(whole / (4 * s + 1)) + "\n";
                text_ += "rm" + id + " " + at + " " + (s + 1 < stages ? next : bottom) + " " +
                         number((4 * s + 3) * whole / tau) + "\n";
                at = next;
            }
        }
    }

    void writeCapacitances() {
        const network::Matrix c = unit_.capacitance.real();
        for (Eigen::Index i = 0; i < c.rows(); ++i) {
            const double toEarth = c.row(i).sum();
            if (std::abs(toEarth) > 1e-18)
                text_ += "c" + std::to_string(i) + "_e " + node(static_cast<int>(i)) + " 0 " + number(toEarth) + "\n";
            for (Eigen::Index k = i + 1; k < c.cols(); ++k)
                if (std::abs(c(i, k)) > 1e-18)
                    text_ += "c" + std::to_string(i) + "_" + std::to_string(k) + " " + node(static_cast<int>(i)) + " " +
                             node(static_cast<int>(k)) + " " + number(-c(i, k)) + "\n";
        }
    }

    const Circuit& unit_;
    SpiceNames& names_;
    double gauge_ = 0;  // H per turn squared
    std::string text_;
};

/// Series R, L, C and EMF from one node to another.
std::string seriesBranch(const std::string& id, const std::string& from, const std::string& to,
                         const network::LumpedBranch& branch, double emf) {
    std::string text, at = from;
    int joint = 0;
    const auto element = [&](const std::string& letter, double value, bool last) {
        const std::string next = last ? to : id + "_" + std::to_string(++joint);
        text += letter + id + " " + at + " " + next + " " + number(value) + "\n";
        at = next;
    };
    const auto& e = branch.element;
    // The EMF raises `to` above `from`.
    const std::string raised = id + "_s";
    text += "v" + id + " " + raised + " " + at + " dc 0 ac " + number(emf) + "\n";
    at = raised;
    const bool inductor = e.inductance > 0, capacitor = e.capacitance > 0;
    element("r", std::max(1e-9, branch.share * e.resistance), !inductor && !capacitor);
    if (inductor) element("l", branch.share * e.inductance, !capacitor);
    if (capacitor) element("c", e.capacitance / branch.share, true);
    return text;
}

std::string exampleCircuit(const design::Design& design, const design::HookUp& hookUp, const Circuit& circuit,
                           const std::vector<std::string>& pinNames, SpiceNames& names) {
    network::Nodes nodes(design, hookUp);
    const auto outside = [&](const std::string& pin) {
        const int index = nodes.index(pin);
        return index == network::earth ? std::string("0")
                                       : "x_" + names.of(nodes.names()[static_cast<std::size_t>(index)]);
    };
    const auto named = [&](int index) {
        return index == network::earth ? std::string("0")
                                       : "x_" + names.of(circuit.nodes[static_cast<std::size_t>(index)]);
    };
    std::string text = "x1";
    for (const auto& pin : pinNames) text += " " + outside(pin);
    text += " unit\n";
    for (std::size_t p = 0; p < circuit.ports.size(); ++p) {
        const auto& port = circuit.ports[p];
        const bool driven = static_cast<int>(p) == circuit.portOfRole(design::Role::Drive);
        for (std::size_t t = 0; t < port.through.size(); ++t) {
            const auto& branch = circuit.lumped[static_cast<std::size_t>(port.through[t])];
            text += seriesBranch("p" + std::to_string(p) + "t" + std::to_string(t), named(branch.ends.from),
                                 named(branch.ends.to), branch, driven ? port.emfShare[t] : 0);
        }
        for (std::size_t a = 0; a < port.across.size(); ++a) {
            const auto& branch = circuit.lumped[static_cast<std::size_t>(port.across[a])];
            text += seriesBranch("p" + std::to_string(p) + "a" + std::to_string(a), named(branch.ends.from),
                                 named(branch.ends.to), branch, 0);
        }
        if (port.acrossCapacitance > 0)
            text += "cp" + std::to_string(p) + " " + named(port.plus) + " " + named(port.minus) + " " +
                    number(port.acrossCapacitance) + "\n";
    }
    const int observed = circuit.portOfRole(design::Role::Observe);
    if (observed < 0) return text + ".end\n";
    const auto& port = circuit.ports[static_cast<std::size_t>(observed)];
    const auto voltage = [&](int index) {
        return index == network::earth ? std::string("0") : "v(" + named(index) + ")";
    };
    return text + ".control\nset wr_singlescale\nset numdgt=12\nac dec 40 10 1meg\nlet level = db(" +
           voltage(port.plus) + "-" + voltage(port.minus) + ")\nwrdata response.txt level\nquit 0\n.endc\n.end\n";
}

}  // namespace

std::string netlist(const design::Design& design, const analysis::Answer& answer) {
    const auto& stages = *answer.stages;
    const auto& solved = *stages.solved.at(answer.hookUp);
    for (const auto& branch : solved.network.circuit().lumped)
        if (!branch.table.empty())
            throw units::BadInput(
                {"hook-up " + answer.hookUp, "a port with an impedance table", "ports with R, L and C for a netlist"});
    const auto unit = analysis::unitCircuit(design, stages);
    SpiceNames names;
    const auto pinNames = pins(design, unit);
    std::string text = "* " + design.name + " " + design.revision + ", hook-up " + answer.hookUp + "\n";
    for (const auto& words : answer.assumptions) text += "* " + words + "\n";
    text += "* alternating-current resistance of the wire and dielectric loss are left out\n";
    text += UnitWriter(unit, names).write(pinNames);
    return text + exampleCircuit(design, solved.hookUp, solved.network.circuit(), pinNames, names);
}

}  // namespace exchange
