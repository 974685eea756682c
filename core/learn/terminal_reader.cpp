// SPDX-License-Identifier: GPL-3.0-or-later
#include "learn/terminal_reader.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numbers>

#include "analysis/figure_making.h"
#include "analysis/stages.h"
#include "design/edit.h"
#include "network/granularity.h"
#include "network/in_parallel.h"

namespace learn {

namespace {

constexpr double none = std::numeric_limits<double>::quiet_NaN();

/// A unit's fields, from which every hook-up is solved.
class Meter {
public:
    Meter(const Unit& unit, const catalog::Catalog& shop, const std::vector<int>& pieces)
        : unit_(unit), pipeline_(*unit.design, shop, nullptr, {}) {
        pipeline_.layOut();
        const auto& build = *pipeline_.stages().build;
        pipeline_.computeFields(pieces.size() == build.layers.size() ? pieces : network::coarsePieces(build));
        const analysis::DesignContext context{*unit.design, shop, pipeline_};
        std::vector<units::Figure> figures;
        analysis::addCoilFigures(context, figures);
        analysis::addCapacitanceFigures(context, figures);
        for (const auto& figure : figures) figures_[figure.name] = figure.value;
    }

    [[nodiscard]] double read(const Probe& probe) {
        switch (probe.kind) {
            case ProbeKind::Resistance:
                return resistance(probe.a);
            case ProbeKind::Capacitance:
                return capacitance(probe.a, probe.b);
            case ProbeKind::Ratio:
                return std::abs(output(probe, probe.frequency));
            case ProbeKind::Polarity:
                return output(probe, probe.frequency).real() < 0 ? -1 : 1;
            case ProbeKind::Inductance:
            case ProbeKind::Leakage:
                return impedance(probe, probe.frequency).imag() / (2 * std::numbers::pi * probe.frequency);
            case ProbeKind::Resonance:
                return resonance(probe);
            case ProbeKind::Gain:
                return level(probe, probe.frequency);
            case ProbeKind::Response:
                return level(probe, probe.frequency) - level(probe, probe.reference);
            case ProbeKind::Impedance:
                return std::abs(impedance(probe, probe.frequency));
            case ProbeKind::ImpedanceAngle:
                return std::arg(impedance(probe, probe.frequency)) * 180 / std::numbers::pi;
        }
        return none;
    }

private:
    [[nodiscard]] double figure(const std::string& name) const {
        const auto at = figures_.find(name);
        return at == figures_.end() ? 0 : at->second;
    }
    [[nodiscard]] double resistance(const std::string& winding) const {
        return figure("dcr." + winding) * (winding == unit_.shortedWinding ? 1 - unit_.shortedShare : 1);
    }
    [[nodiscard]] double between(const std::string& a, const std::string& b) const {
        return figure("capacitance." + a + "." + b) + figure("capacitance." + b + "." + a);
    }
    [[nodiscard]] double capacitance(const std::string& a, const std::string& b) const {
        const std::string& open = unit_.openShield;
        if (open.empty()) return between(a, b);
        if (a == open || b == open) return openLead;
        double all = 0;
        for (const auto& winding : unit_.design->windings) all += between(winding.name, open);
        for (const auto& foil : pipeline_.stages().build->foils)
            if (foil.name != open) all += between(foil.name, open);
        all += between("core", open);
        return between(a, b) + (all > 0 ? between(a, open) * between(b, open) / all : 0);
    }

    /// The network of a probe's hook-up, made once for all that share it.
    const network::Prepared& networkOf(const Probe& probe) {
        for (const auto& known : networks_)
            if (known.first.hookUp == probe.hookUp && known.first.ports == probe.ports) return known.second;
        design::Design connected = *unit_.design;
        connected.ports = probe.ports;
        design::HookUp hookUp = probe.hookUp;
        if (!unit_.openShield.empty()) design::forgetNode(hookUp, unit_.openShield);
        hookUp.straps.insert(hookUp.straps.end(), unit_.shorts.begin(), unit_.shorts.end());
        const auto& stages = pipeline_.stages();
        networks_.emplace_back(probe, network::Prepared(analysis::circuitOf(connected, hookUp, stages, stages.cut)));
        return networks_.back().second;
    }
    network::ComplexVector solved(const Probe& probe, double frequency) { return networkOf(probe).solve(frequency); }
    /// Voltage at the observed port under a unit EMF at the driven one.
    network::Complex output(const Probe& probe, double frequency) {
        const auto& network = networkOf(probe);
        const int from = network.circuit().portOfRole(design::Role::Drive);
        const int to = network.circuit().portOfRole(design::Role::Observe);
        if (from < 0 || to < 0) return none;
        return network.solve(frequency)(network.layout().voltage(from, to));
    }
    double level(const Probe& probe, double frequency) { return 20 * std::log10(std::abs(output(probe, frequency))); }
    /// At the probe's port; where it names none, at the driven one.
    network::Complex impedance(const Probe& probe, double frequency) {
        const auto& network = networkOf(probe);
        const auto& ports = network.circuit().ports;
        int port = network.circuit().portOfRole(design::Role::Drive);
        if (probe.kind == ProbeKind::Impedance || probe.kind == ProbeKind::ImpedanceAngle)
            for (std::size_t k = 0; k < ports.size(); ++k)
                if (ports[k].name == probe.b) port = static_cast<int>(k);
        if (port < 0) return none;
        return network.solve(frequency)(network.layout().impedance(port));
    }
    /// First frequency at which the angle passes 0 downward: steps of a twentieth of a decade, then by secants.
    double resonance(const Probe& probe) {
        constexpr double step = 1.122;
        constexpr int refinements = 4;
        const auto angle = [&](double f) { return std::arg(impedance(probe, f)); };
        double below = probe.frequency, before = angle(below);
        for (double f = below * step; f <= probe.until * step; f *= step) {
            double above = std::min(f, probe.until), after = angle(above);
            if (before > 0 && after <= 0) {
                for (int k = 0; k < refinements; ++k) {
                    const double share = std::clamp(before / (before - after), 0.02, 0.98);
                    const double middle = below * std::pow(above / below, share), there = angle(middle);
                    (there > 0 ? below : above) = middle;
                    (there > 0 ? before : after) = there;
                }
                return below * std::pow(above / below, before / (before - after));
            }
            below = above;
            before = after;
        }
        return probe.until;
    }

    const Unit& unit_;
    analysis::Pipeline pipeline_;
    std::map<std::string, double> figures_;
    std::vector<std::pair<Probe, network::Prepared>> networks_;
};

}  // namespace

std::vector<double> readings(const Unit& unit, const std::vector<Probe>& probes, const catalog::Catalog& shop,
                             const std::vector<int>& pieces) {
    const network::Alone alone;
    Meter meter(unit, shop, pieces);
    std::vector<double> all;
    all.reserve(probes.size());
    for (const Probe& probe : probes) all.push_back(meter.read(probe));
    return all;
}

std::vector<int> finePieces(const design::Design& design, const catalog::Catalog& shop) {
    analysis::Pipeline pipeline(design, shop, nullptr, {});
    pipeline.layOut();
    pipeline.computeFields();
    return pipeline.stages().cut.pieces;
}

}  // namespace learn
