// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/netlist.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "analysis/stages.h"
#include "exchange/hook_up_response.h"
#include "exchange/netlist_example.h"
#include "exchange/terminal_model.h"
#include "units/characters.h"
#include "units/joined.h"
#include "units/text.h"

namespace exchange {

namespace {

using network::Circuit;
using units::joined;
using units::shortest;

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
    UnitWriter(const Circuit& unit, const UnitLosses& losses, SpiceNames& names)
        : unit_(unit), losses_(losses), names_(names) {}

    std::string write(const std::vector<Pin>& pins) {
        text_ = ".subckt unit";
        for (const auto& pin : pins) text_ += " " + pin.outside;
        text_ += "\n";
        writeBranches();
        writeCouplings();
        writeCore();
        writeLoops();
        writeCapacitances();
        return text_ + ".ends unit\n";
    }

private:
    std::string node(Eigen::Index index) {
        return index == network::earth ? "0" : names_.of(unit_.nodes[static_cast<std::size_t>(index)]);
    }

    void writeBranches() {
        for (Eigen::Index k = 0; k < unit_.turns.size(); ++k) {
            const auto ends = unit_.windingBranches[static_cast<std::size_t>(k)];
            const std::string id = std::to_string(k);
            const std::string n = shortest(unit_.turns(k));
            text_ += joined({"r", id, " ", node(ends.from), " a", id, " ", shortest(unit_.resistance(k)), "\n"});
            text_ += joined({"l", id, " a", id, " b", id, " ", shortest(losses_.leakage(k, k)), "\n"});
            text_ += joined({"e", id, " b", id, " c", id, " flux 0 ", n, "\n"});
            text_ += joined({"v", id, " c", id, " ", node(ends.to), " 0\n"});
            text_ += joined({"f", id, " 0 flux v", id, " ", n, "\n"});
        }
    }

    void writeCouplings() {
        const auto& l = losses_.leakage;
        for (Eigen::Index i = 0; i < unit_.turns.size(); ++i)
            for (Eigen::Index k = i + 1; k < unit_.turns.size(); ++k)
                text_ += "k" + std::to_string(i) + "_" + std::to_string(k) + " l" + std::to_string(i) + " l" +
                         std::to_string(k) + " " + shortest(l(i, k) / std::sqrt(l(i, i) * l(k, k))) + "\n";
    }

    /// The core's one-turn impedance: L parallel R, in series from the flux node to earth.
    void writeCore() {
        std::string at = "flux";
        for (std::size_t s = 0; s < losses_.core.terms.size(); ++s) {
            const auto& term = losses_.core.terms[s];
            const std::string id = "m" + std::to_string(s);
            const std::string next = s + 1 < losses_.core.terms.size() ? "q" + std::to_string(s) : "0";
            text_ += joined({"l", id, " ", at, " ", next, " ", shortest(term.weight), "\n"});
            text_ += joined({"r", id, " ", at, " ", next, " ", shortest(term.weight / term.tau), "\n"});
            at = next;
        }
    }

    /// Eddy currents in wire: closed loops of R and L, coupled to the branches.
    void writeLoops() {
        constexpr double least = 1e-4;  // coupling that is worth an element
        for (std::size_t s = 0; s < losses_.loops.size(); ++s) {
            const auto& loop = losses_.loops[s];
            const std::string id = "w" + std::to_string(s);
            text_ += joined({"l", id, " ", id, " 0 1\nr", id, " ", id, " 0 ", shortest(1 / loop.tau), "\n"});
            for (Eigen::Index k = 0; k < unit_.turns.size(); ++k) {
                const double coupling = loop.shape(k) * std::sqrt(loop.weight / losses_.leakage(k, k));
                if (std::abs(coupling) > least)
                    text_ += joined({"k", id, "_", std::to_string(k), " l", id, " l", std::to_string(k), " ",
                                     shortest(coupling), "\n"});
            }
        }
    }

    void writeCapacitances() {
        const network::Matrix c = unit_.capacitance.real(), loss = -unit_.capacitance.imag();
        writeCapacitors("c", c + losses_.dielectric.constant * loss, 0);
        for (std::size_t t = 0; t < losses_.dielectric.terms.size(); ++t) {
            const auto& term = losses_.dielectric.terms[t];
            writeCapacitors("d" + std::to_string(t) + "_", term.weight * loss, term.tau);
        }
    }

    /// The node matrix as capacitors between nodes and to earth, each in series with a resistor if tau > 0.
    void writeCapacitors(const std::string& id, const network::Matrix& c, double tau) {
        constexpr double least = 1e-18;
        const auto put = [&](Eigen::Index i, Eigen::Index k, const std::string& end, double value) {
            if (std::abs(value) < least) return;
            const std::string name = id + std::to_string(i) + "_" + end;
            const std::string first = node(i), second = node(k);
            if (tau > 0)
                text_ += "c" + name + " " + first + " y" + name + " " + shortest(value) + "\nr" + name + " y" + name +
                         " " + second + " " + shortest(tau / value) + "\n";
            else
                text_ += name + " " + first + " " + second + " " + shortest(value) + "\n";
        };
        for (Eigen::Index i = 0; i < c.rows(); ++i) {
            put(i, network::earth, "e", c.row(i).sum());
            for (Eigen::Index k = i + 1; k < c.cols(); ++k) put(i, k, std::to_string(k), -c(i, k));
        }
    }

    const Circuit& unit_;
    const UnitLosses& losses_;
    SpiceNames& names_;
    std::string text_;
};

}  // namespace

std::string netlist(const design::Design& design, const analysis::Answer& answer) {
    const auto unit = analysis::unitCircuit(design, *answer.stages);
    SpiceNames names;
    std::vector<Pin> all;
    for (const auto& name : pins(design, unit)) all.push_back({name, names.of(name), name});
    const std::string examples = exampleCircuits(design, answer, all);
    const UnitLosses losses = unitLosses(unit, true);
    const ReachedPins reached = reachedPins(design, unit);
    const FittedUnit fitted(unit, losses, reached.nodes);
    const SolvedHookUps hookUps(design, answer, reached.names);
    std::string text = "* " + units::oneLine(design.name + " " + design.revision + ", hook-up " + answer.hookUp) + "\n";
    for (const auto& words : answer.assumptions) text += "* " + units::oneLine(words) + "\n";
    const auto share = [](double value) { return units::significant(100 * value, 2) + " %\n"; };
    text += "* fits from 10 Hz to 1 MHz: core within " + share(losses.core.residual);
    text += "* alternating-current impedance of the wire within " + share(losses.windingResidual);
    if (unit.capacitance.imag().cwiseAbs().maxCoeff() > 0)
        text += "* dielectric loss by relaxations: capacitance falls with frequency as its loss asks for\n";
    text += hookUps.words([&](double f) { return fitted.admittance(f); });
    return text + UnitWriter(unit, losses, names).write(all) + examples;
}

}  // namespace exchange
