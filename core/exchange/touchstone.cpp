// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/touchstone.h"

#include <algorithm>
#include <charconv>

#include "analysis/stages.h"
#include "exchange/terminal_pins.h"
#include "units/characters.h"
#include "units/fault.h"
#include "units/text.h"

namespace exchange {

namespace {

constexpr double reference = 50, fileLowest = 10, fileHighest = 1e6;
constexpr int points = 201;

/// The hook-up with 50 ohm alone at each port of the file.
struct Measured {
    design::Design design;
    design::HookUp hookUp;
    std::vector<std::string> words;  ///< each port's for people
};

void addPort(Measured& to, const design::Port& port, const design::PortUse& use, const std::string& words) {
    to.design.ports.push_back(port);
    to.design.ports.back().name = std::to_string(to.words.size() + 1);
    design::PortUse bare;
    bare.port = to.design.ports.back().name;
    bare.role = use.role;
    bare.earthing = use.earthing == design::Earthing::Balanced ? design::Earthing::Floating : use.earthing;
    bare.through = design::Branch{reference, 0, 0};
    to.hookUp.ports.push_back(bare);
    to.words.push_back(units::oneLine(words));
}

Measured measured(const design::Design& design, const design::HookUp& hookUp) {
    Measured made{design, hookUp, {}};
    made.design.ports.clear();
    made.hookUp.ports.clear();
    for (const auto& use : hookUp.ports) {
        const auto* port = design::port(design, use.port);
        if (port == nullptr) continue;  // `check` has said so
        if (use.earthing == design::Earthing::Balanced)
            for (const auto& end : {port->plus, port->minus})
                addPort(made, {"", end, "earth", {}}, use, port->name + ": " + end + " against earth");
        else
            addPort(made, *port, use, port->name + ": " + port->plus + " against " + port->minus);
    }
    return made;
}

/// Scattering parameters at f, row i column j of S_ij.
network::ComplexMatrix scattering(const network::Prepared& network, double frequency) {
    const auto values = network.solve(frequency);
    const auto where = network.layout();
    network::ComplexMatrix s(where.ports, where.ports);
    for (int j = 0; j < where.ports; ++j)
        for (int i = 0; i < where.ports; ++i) s(i, j) = 2.0 * values(where.voltage(j, i)) - (i == j ? 1.0 : 0.0);
    return s;
}

std::string dataLines(const network::ComplexMatrix& s, double frequency) {
    std::string text = units::shortest(frequency);
    const auto pair = [&](Eigen::Index i, Eigen::Index k) {
        text += " " + units::shortest(s(i, k).real()) + " " + units::shortest(s(i, k).imag());
    };
    if (s.rows() == 2) {
        for (const auto& [i, k] : {std::pair{0, 0}, {1, 0}, {0, 1}, {1, 1}}) pair(i, k);
        return text + "\n";
    }
    for (Eigen::Index i = 0; i < s.rows(); ++i) {
        for (Eigen::Index k = 0; k < s.cols(); ++k) {
            if (k > 0 && k % 4 == 0) text += "\n";
            pair(i, k);
        }
        text += "\n";
    }
    return text;
}

/// True for version 2.0.
bool versionOf(const std::string& name, const Measured& unit) {
    const auto dot = name.rfind('.');
    std::string ending = dot == std::string::npos ? "" : name.substr(dot + 1);
    std::transform(ending.begin(), ending.end(), ending.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    if (ending == "ts") return true;
    int ports = 0;
    if (ending.size() >= 3 && ending.front() == 's' && ending.back() == 'p') {
        const auto* end = ending.data() + ending.size() - 1;
        if (const auto read = std::from_chars(ending.data() + 1, end, ports); read.ptr != end) ports = 0;
    }
    if (ports == static_cast<int>(unit.words.size())) return false;
    std::string list;
    for (const auto& words : unit.words) list += (list.empty() ? "" : "; ") + words;
    const std::string count = std::to_string(unit.words.size());
    units::refuse(
        name, ports > 0 ? "an ending for " + std::to_string(ports) + (ports == 1 ? " port" : " ports") : "its ending",
        ".s" + count + "p, as hook-up " + unit.hookUp.name + " has " + count + (count == "1" ? " port (" : " ports (") +
            list + "), or .ts");
}

std::string head(const Measured& unit, bool second) {
    std::string text;
    const std::string count = std::to_string(unit.words.size());
    const std::string options = second ? "# Hz S RI\n" : "# Hz S RI R " + units::shortest(reference) + "\n";
    if (second) {
        text += "[Version] 2.0\n" + options + "[Number of Ports] " + count + "\n";
        if (unit.words.size() == 2) text += "[Two-Port Data Order] 21_12\n";
        text += "[Number of Frequencies] " + std::to_string(points) + "\n[Reference]";
        for (std::size_t k = 0; k < unit.words.size(); ++k) text += " " + units::shortest(reference);
        text += "\n[Matrix Format] Full\n";
    }
    text += outsideTitle(unit.design, "! ") + "! hook-up " + units::oneLine(unit.hookUp.name) + "\n";
    for (std::size_t k = 0; k < unit.words.size(); ++k)
        text += "! port " + std::to_string(k + 1) + ", " + unit.words[k] + "\n";
    return text + (second ? "[Network Data]\n" : options);
}

}  // namespace

std::string touchstone(const design::Design& design, const analysis::Answer& answer, const std::string& fileName) {
    const auto& stages = *answer.stages;
    const Measured unit = measured(design, stages.solved.at(answer.hookUp)->hookUp);
    const bool second = versionOf(fileName, unit);
    const network::Prepared network(analysis::circuitOf(unit.design, unit.hookUp, stages, stages.cut));
    std::string text = head(unit, second);
    for (const double f : analysis::logarithmicGrid(fileLowest, fileHighest, points))
        text += dataLines(scattering(network, f), f);
    return text + (second ? "[End]\n" : "");
}

}  // namespace exchange
