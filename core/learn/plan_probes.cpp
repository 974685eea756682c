// SPDX-License-Identifier: GPL-3.0-or-later
// From a test plan to its probes.
#include <algorithm>
#include <cmath>

#include "learn/reading_model.h"
#include "units/joined.h"
#include "units/text.h"

namespace learn {

using units::joined;

namespace {

/// A reading of polarity is wrong once in some hundred thousand units: two units away are five of these.
constexpr double polarityDoubt = 0.4;

design::PortUse portUse(const std::string& port, design::Role role) {
    design::PortUse use;
    use.port = port;
    use.role = role;
    return use;
}

class ProbeMaker {
public:
    ProbeMaker(const design::Design& design, const shop::PlanPrediction& prediction, const shop::TestPlan& plan,
               const design::Fixture& fixture)
        : design_(design), state_(prediction.states.back()), fixture_(fixture) {
        for (const auto& row : plan.stages.back().rows) rows_[row.name] = &row;
    }

    std::vector<Probe> make() {
        for (std::size_t k = 1; k < design_.windings.size(); ++k) addRatio(design_.windings[k]);
        for (const auto& winding : design_.windings)
            add(ProbeKind::Resistance, "dcr." + winding.name, units::Kind::Resistance, winding.name, {});
        for (const auto& winding : design_.windings) addInductance(winding);
        for (std::size_t a = 0; a < design_.windings.size(); ++a)
            for (std::size_t b = a + 1; b < design_.windings.size(); ++b)
                addLeakage(design_.windings[a], design_.windings[b]);
        addCapacitances();
        addResonance();
        addLevels();
        return std::move(all_);
    }

private:
    const shop::PlanRow* row(const std::string& name) const {
        const auto at = rows_.find(name);
        return at == rows_.end() ? nullptr : at->second;
    }
    const shop::Expected* expected(const std::string& name) const {
        const auto at = state_.figures.find(name);
        return at == state_.figures.end() ? nullptr : &at->second;
    }
    const design::Doubt& doubtOf(ProbeKind kind) const {
        const auto& doubts = fixture_.doubts;
        switch (kind) {
            case ProbeKind::Resistance:
                return doubts.resistance;
            case ProbeKind::Capacitance:
                return doubts.capacitance;
            case ProbeKind::Resonance:
                return doubts.frequency;
            case ProbeKind::Ratio:
                return doubts.ratio;
            default:
                return doubts.inductance;
        }
    }
    Probe& add(ProbeKind kind, const std::string& name, units::Kind unit, std::string a, std::string b) {
        Probe probe;
        probe.kind = kind;
        probe.name = name;
        probe.unit = unit;
        probe.a = std::move(a);
        probe.b = std::move(b);
        const auto* planned = row(name);
        probe.planned = planned != nullptr;
        probe.words = planned != nullptr ? planned->what : wordsOf(kind, probe);
        if (const auto* e = expected(name)) {
            probe.expected = e->value;
            probe.model = e->model / coverage95;
            probe.instrument = doubtOf(kind).at(e->value) / coverage95;
            if (kind == ProbeKind::Resistance)
                // The wire's temperature is known no better than this; copper's resistance goes with it.
                probe.instrument =
                    std::hypot(probe.instrument, 0.0039 * e->value * fixture_.doubts.temperature / coverage95);
        }
        all_.push_back(std::move(probe));
        return all_.back();
    }
    static std::string wordsOf(ProbeKind kind, const Probe& probe) {
        if (kind == ProbeKind::Capacitance) return joined({"Capacitance, ", probe.a, " to ", probe.b});
        if (kind == ProbeKind::Inductance) return joined({"Inductance, ", probe.a});
        return probe.name;
    }

    void addRatio(const design::Winding& other) {
        const auto& first = design_.windings.front();
        const std::string name = joined({"ratio.", first.name, ".", other.name});
        const auto reading = state_.ratios.find(other.name);
        if (row(name) == nullptr || reading == state_.ratios.end()) return;
        for (const ProbeKind kind : {ProbeKind::Ratio, ProbeKind::Polarity}) {
            Probe& probe = add(kind, name, units::Kind::Number, first.name, other.name);
            probe.frequency = reading->second.frequency;
            probe.hookUp = shop::ratioHookUp(first, other);
            probe.ports = shop::ratioPorts(first, other);
            const bool sign = kind == ProbeKind::Polarity;
            probe.instrument = sign ? polarityDoubt : fixture_.doubts.ratio.at(reading->second.value) / coverage95;
            probe.model = sign ? 0 : reading->second.doubt / coverage95;
        }
    }
    /// An impedance meter across a winding, all else open.
    void across(Probe& probe, const design::Winding& seen) const {
        probe.hookUp.name = "meter " + probe.name;
        probe.hookUp.ports = {portUse("meter", design::Role::Drive)};
        probe.ports = {{"meter", seen.start, seen.finish, nullptr}};
    }
    void addInductance(const design::Winding& winding) {
        for (const auto& [stem, frequency] :
             {std::pair{"inductance_10Hz.", 10.0}, std::pair{"inductance_1kHz.", 1000.0}}) {
            if (expected(stem + winding.name) == nullptr) continue;
            Probe& probe = add(ProbeKind::Inductance, stem + winding.name, units::Kind::Inductance, winding.name, {});
            if (!probe.planned) probe.words += joined({", ", units::writeExact(units::Kind::Frequency, frequency)});
            probe.frequency = frequency;
            across(probe, winding);
        }
    }
    void addLeakage(const design::Winding& seen, const design::Winding& shorted) {
        const std::string name = joined({"leakage_10kHz.", seen.name, ".", shorted.name});
        if (expected(name) == nullptr) return;
        Probe& probe = add(ProbeKind::Leakage, name, units::Kind::Inductance, seen.name, shorted.name);
        probe.frequency = 10e3;
        across(probe, seen);
        const auto& usual = state_.bench.design.hookUps.front();
        probe.hookUp.straps = usual.straps;
        probe.hookUp.straps.push_back({shorted.start, shorted.finish});
        probe.hookUp.earths = usual.earths;
    }
    void addCapacitances() {
        for (const auto& figure : state_.answer->figures) {
            const std::string stem = "capacitance.";
            if (!figure.name.starts_with(stem) || !std::isfinite(figure.value)) continue;
            for (const auto& winding : design_.windings)
                if (figure.name.starts_with(stem + winding.name + "."))
                    add(ProbeKind::Capacitance, figure.name, units::Kind::Capacitance, winding.name,
                        figure.name.substr(stem.size() + winding.name.size() + 1));
        }
    }
    void addResonance() {
        const auto* planned = row("resonance");
        if (planned == nullptr || !planned->expected || !state_.resonance) return;
        Probe& probe = add(ProbeKind::Resonance, "resonance", units::Kind::Frequency, {}, state_.bench.driven);
        probe.frequency = std::max(100.0, fixture_.generator.lowest);
        probe.until = fixture_.generator.highest;
        probe.hookUp = state_.bench.open;
        probe.ports = design_.ports;
        probe.instrument = fixture_.doubts.frequency.at(state_.resonance->value) / coverage95;
        probe.model = state_.resonance->model / coverage95;
    }
    void addLevels() {
        const auto& hookUps = state_.bench.design.hookUps;
        for (std::size_t k = 0; k < hookUps.size(); ++k) {
            const std::string name = "gain_1kHz" + shop::figureSuffix(state_.bench.design, k);
            if (row(name) == nullptr || expected(name) == nullptr) continue;
            Probe& probe = add(ProbeKind::Gain, name, units::Kind::Decibel, hookUps[k].name, {});
            probe.frequency = 1000;
            level(probe, hookUps[k]);
        }
        for (const auto& point : state_.response) {
            const std::string name = "response." + units::shortest(point.frequency);
            if (row(name) == nullptr) continue;
            Probe& probe = add(ProbeKind::Response, name, units::Kind::Decibel, hookUps.front().name, {});
            probe.frequency = point.frequency;
            probe.model = point.expected.model / coverage95;
            level(probe, hookUps.front());
        }
    }
    void level(Probe& probe, const design::HookUp& hookUp) const {
        probe.hookUp = hookUp;
        probe.ports = design_.ports;
        probe.instrument = fixture_.doubts.level / coverage95;
    }

    const design::Design& design_;
    const shop::BenchState& state_;
    const design::Fixture& fixture_;
    std::map<std::string, const shop::PlanRow*> rows_;
    std::vector<Probe> all_;
};

}  // namespace

std::vector<Probe> probesOf(const design::Design& design, const shop::PlanPrediction& prediction,
                            const shop::TestPlan& plan, const design::Fixture& fixture) {
    return ProbeMaker(design, prediction, plan, fixture).make();
}

}  // namespace learn
