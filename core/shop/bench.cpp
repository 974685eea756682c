// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/bench.h"

#include <algorithm>
#include <set>

#include "shop/sheet_words.h"
#include "units/joined.h"
#include "units/text.h"

namespace shop {

using design::Branch;
using design::PortUse;
using design::Role;
using units::joined;

namespace {

std::string ohms(double value) {
    return units::write(units::Kind::Resistance, value);
}
std::string farads(double value) {
    return units::write(units::Kind::Capacitance, value);
}

Branch resistor(double ohm) {
    Branch b;
    b.resistance = ohm;
    return b;
}
Branch capacitor(double farad) {
    Branch b;
    b.capacitance = farad;
    return b;
}

bool isResistor(const Branch& b) {
    return !(b.inductance > 0) && !(b.capacitance > 0);
}
bool isCapacitor(const Branch& b) {
    return !(b.resistance > 0) && !(b.inductance > 0) && b.capacitance > 0;
}

/// Makes one port's use on the bench, and tells how.
class PortMaker {
public:
    PortMaker(const design::Fixture& fixture, const PortUse& wanted) : fixture_(fixture), wanted_(wanted) {
        made_.port = wanted.port;
        made_.role = wanted.role;
        made_.earthing = wanted.earthing;
        made_.mode = wanted.mode;
    }
    PortUse made() {
        if (wanted_.role == Role::Drive)
            drive();
        else
            load();
        return made_;
    }
    [[nodiscard]] const std::string& words() const { return words_; }
    [[nodiscard]] const std::vector<std::string>& differences() const { return differs_; }

private:
    void differ(const std::string& sentence) { differs_.push_back(joined({"Port ", wanted_.port, ": ", sentence})); }

    void drive() {
        const double own = fixture_.generator.resistance;
        double through = own;
        words_ = joined({"generator, ", ohms(own)});
        const bool plain = wanted_.through && isResistor(*wanted_.through);
        const double rest = plain ? wanted_.through->resistance - own : 0;
        if (plain && rest > 0 && fixture_.plugIns.haveResistor(rest)) {
            through += rest;
            words_ += joined({", with ", ohms(rest), " plugged in series"});
            if (made_.earthing == design::Earthing::Balanced) words_ += ", half of it in each leg";
        } else if (!plain || rest != 0) {
            differ(joined({"the customer's source is not made, the generator drives with its own ", ohms(own), "."}));
        }
        made_.through = resistor(through);
        if (!wanted_.across.empty()) differ("what lies across the customer's source is not fitted.");
    }

    /// The resistance that the customer's load has besides `own` of the instrument, which may be none.
    void plugResistance(std::optional<double> own) {
        const bool plain = wanted_.through && isResistor(*wanted_.through);
        if (!wanted_.through && wanted_.table.empty()) {
            if (own) differ(joined({"open at the customer's, the analyser's ", ohms(*own), " here."}));
            return;
        }
        const double wanted = plain ? wanted_.through->resistance.value : 0;
        if (plain && own && wanted == *own) return;
        const bool possible = plain && wanted > 0 && (!own || wanted < *own);
        const double plugged = !possible ? 0 : own ? 1 / (1 / wanted - 1 / *own) : wanted;
        if (possible && fixture_.plugIns.haveResistor(plugged)) {
            if (own)
                made_.across.push_back(resistor(plugged));
            else
                made_.through = resistor(plugged);
            words_ += joined({own ? ", " : "", ohms(plugged), " plugged across"});
            return;
        }
        if (!own)
            differ("only loaded at the customer's: the fixture has no such load, it stays OPEN here.");
        else
            differ(joined({"the customer's load is not made, the analyser's ", ohms(*own), " stands for it."}));
    }

    /// Capacitances from terminal to terminal beyond `own`, and networks across.
    void plugAcross(double own) {
        double wanted = 0;
        for (const Branch& b : wanted_.across) {
            if (isCapacitor(b)) {
                wanted += b.capacitance;
            } else if (!(b.inductance > 0) && (!(b.resistance > 0) || fixture_.plugIns.haveResistor(b.resistance)) &&
                       (!(b.capacitance > 0) || fixture_.plugIns.haveCapacitor(b.capacitance))) {
                made_.across.push_back(b);
                words_ += joined({", ", ohms(b.resistance), b.capacitance > 0 ? " and " + farads(b.capacitance) : "",
                                  " in series plugged across"});
            } else {
                differ("a network across it at the customer's is not fitted.");
            }
        }
        if (own > 0) made_.across.push_back(capacitor(own));
        if (wanted > own && fixture_.plugIns.haveCapacitor(wanted - own)) {
            made_.across.push_back(capacitor(wanted - own));
            words_ += joined({", ", farads(wanted - own), " plugged across"});
        } else if (wanted != own) {
            differ(joined({farads(wanted), " at the customer's, ", farads(own), " of cable and instrument here."}));
        }
    }

    void load() {
        if (wanted_.role == Role::Observe) {
            const auto& analyser = fixture_.analyser;
            made_.through = resistor(analyser.resistance);
            words_ = joined({"analyser, ", ohms(analyser.resistance), " and ",
                             farads(analyser.capacitance + analyser.cable), " with its cable"});
            plugResistance(analyser.resistance);
            plugAcross(analyser.capacitance + analyser.cable);
            return;
        }
        plugResistance(std::nullopt);
        if (made_.through) plugAcross(0);
        if (words_.empty()) words_ = "open";
    }

    const design::Fixture& fixture_;
    const PortUse& wanted_;
    PortUse made_;
    std::string words_;
    std::vector<std::string> differs_;
};

std::string earthWords(const design::HookUp& hookUp) {
    std::string words;
    for (const auto& strap : hookUp.straps) words += joined({"; join ", listedWords(strap)});
    if (!hookUp.earths.empty()) words += joined({"; earth ", listedWords(hookUp.earths)});
    return words;
}

std::string earthingWords(design::Earthing earthing, const design::Port& port) {
    switch (earthing) {
        case design::Earthing::Balanced:
            return ", its middle earthed";
        case design::Earthing::MinusEarthed:
            return joined({", ", port.minus, " earthed"});
        case design::Earthing::PlusEarthed:
            return joined({", ", port.plus, " earthed"});
        case design::Earthing::Floating:
            break;
    }
    return ", not earthed";
}

/// Makes one hook-up, and says how.
design::HookUp benched(const design::Design& design, const design::HookUp& wanted, const design::Fixture& fixture,
                       BenchHookUp& told) {
    design::HookUp made = wanted;
    made.ports.clear();
    told.name = wanted.name;
    std::set<std::string> used;
    for (const PortUse& use : wanted.ports) {
        PortMaker maker(fixture, use);
        made.ports.push_back(maker.made());
        told.differences.insert(told.differences.end(), maker.differences().begin(), maker.differences().end());
        used.insert(use.port);
        told.ports[use.port] = maker.words();
        if (const auto* port = design::port(design, use.port))
            told.words += joined({told.words.empty() ? "" : "; ", port->name, " (", port->plus, " +, ", port->minus,
                                  " −): ", maker.words(), earthingWords(use.earthing, *port)});
    }
    for (const design::Port& port : design.ports)
        if (!used.contains(port.name)) told.words += joined({"; ", port.name, ": open"});
    told.words += earthWords(wanted) + ".";
    return made;
}

bool promisedIn(const design::Design& design, const std::string& hookUp) {
    const auto names = [&](const auto& one) { return one.hookUp == hookUp; };
    return std::any_of(design.brief.promises.begin(), design.brief.promises.end(), names) ||
           std::any_of(design.brief.masks.begin(), design.brief.masks.end(), names);
}

std::string portOf(const design::HookUp& hookUp, Role role) {
    for (const PortUse& use : hookUp.ports)
        if (use.role == role) return use.port;
    return {};
}

}  // namespace

const BenchHookUp& Bench::hookUp(const std::string& name) const {
    const auto at = std::find_if(hookUps.begin(), hookUps.end(), [&](const auto& h) { return h.name == name; });
    return at == hookUps.end() ? hookUps.front() : *at;
}

Bench benchOf(const design::Design& design, const design::Fixture& fixture, bool filled) {
    Bench bench;
    bench.design = design;
    bench.design.hookUps.clear();
    bench.design.brief.promises.clear();
    bench.design.brief.masks.clear();
    bench.design.brief.levelAt = design::LevelAt::Emf;
    bench.design.conditions.filled = filled && design.filling.has_value();
    bench.design.conditions.directCurrents.clear();
    bench.design.conditions.phantom.reset();
    const design::HookUp& first = design.hookUps.front();
    for (const design::HookUp& hookUp : design.hookUps) {
        if (&hookUp != &first && !promisedIn(design, hookUp.name)) continue;
        bench.hookUps.emplace_back();
        bench.design.hookUps.push_back(benched(design, hookUp, fixture, bench.hookUps.back()));
    }
    bench.driven = portOf(first, Role::Drive);
    bench.observed = portOf(first, Role::Observe);
    bench.open.name = "impedance meter of the bench";
    bench.open.straps = first.straps;
    bench.open.earths = first.earths;
    if (!bench.driven.empty()) {
        PortUse meter;
        meter.port = bench.driven;
        meter.role = Role::Drive;
        if (fixture.analyser.cable > 0) meter.across.push_back(capacitor(fixture.analyser.cable));
        bench.open.ports.push_back(std::move(meter));
    }
    return bench;
}

}  // namespace shop
