// SPDX-License-Identifier: GPL-3.0-or-later
#include "seek/core_choice.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <tuple>

#include "coil/wire_resistance.h"
#include "design/unit_size.h"
#include "magnetics/saturation.h"
#include "magnetics/stack.h"
#include "shop/materials.h"
#include "units/fault.h"
#include "units/text.h"

namespace seek {

namespace {

using std::numbers::pi;

constexpr double reference = 1000;      // Hz
constexpr double copperShare = 0.5;     // of a window, the most that round wire with paper reaches
constexpr double copperDensity = 8890;  // kg/m3, as IEC 60028
constexpr double mostTurnsEver = 1e5;

double resistive(const design::Branch& branch) {
    return branch.capacitance > 0 || branch.resistance <= 0 ? 0 : 1 / branch.resistance;
}

/// Conductance across a port at low frequencies.
double loadOf(const design::PortUse& use) {
    double sum = 0;
    if (use.role != design::Role::Drive && use.through) sum += resistive(*use.through);
    if (use.role != design::Role::Drive && !use.table.empty()) sum += 1 / std::max(1e-3, use.table.front().real);
    for (const auto& branch : use.across) sum += resistive(branch);
    return sum;
}

double between(double thickness, double at01, double at02, double at035) {
    constexpr double a = 0.1e-3, b = 0.2e-3, c = 0.35e-3;
    if (thickness <= b) return at01 + (at02 - at01) * std::max(0.0, thickness - a) / (b - a);
    return at02 + (at035 - at02) * std::min(1.0, (thickness - b) / (c - b));
}

/// The number in "headroom_20Hz", Hz; 0: none.
double frequencyIn(const std::string& figure) {
    const auto from = figure.rfind('_');
    if (from == std::string::npos || !figure.ends_with("Hz")) return 0;
    try {
        return units::read(units::Kind::Frequency, figure.substr(from + 1));
    } catch (const units::BadInput&) {
        return 0;
    }
}

bool ofFirstHookUp(const Need& need, const std::string& hookUp) {
    return hookUp.empty() || hookUp == need.frame.hookUps.front().name;
}

/// Turns below which one core cannot keep the brief.
class LeastTurns {
public:
    LeastTurns(const Need& need, const Terminations& at, const magnetics::CoreModel& core)
        : need_(need), at_(at), core_(core) {}

    [[nodiscard]] double found() {
        constexpr double halfPower = 0.70795;  // -3 dB
        for (const auto& mask : need_.frame.brief.masks) {
            if (mask.trace != "response" || !ofFirstHookUp(need_, mask.hookUp)) continue;
            for (const auto& point : mask.points)
                if (point.low && *point.low < 0 && point.frequency < reference)
                    take(turnsForLevel(core_, at_, point.frequency, std::pow(10, *point.low / 20)));
        }
        for (const auto& promise : need_.frame.brief.promises) {
            if (!ofFirstHookUp(need_, promise.hookUp)) continue;
            const auto& name = promise.figure;
            if (name == "low_3dB" && promise.atMost) take(turnsForLevel(core_, at_, *promise.atMost, halfPower));
            if (name.starts_with("headroom_") && promise.atLeast)
                takeLevel(frequencyIn(name), need_.frame.brief.operatingLevel + *promise.atLeast);
            if (name.starts_with("maximum_level_") && promise.atLeast) takeLevel(frequencyIn(name), *promise.atLeast);
        }
        return least_;
    }

private:
    void take(double turns) { least_ = std::max(least_, turns); }
    /// Faraday: V = 2 pi f N A B / sqrt 2 at the core's knee, if the core has one to be kept from.
    void takeLevel(double frequency, double level) {
        if (frequency <= 0 || !need_.frame.brief.maximumLevel.knee) return;
        if (knee_ <= 0) knee_ = magnetics::kneeFlux(core_);
        const double volts = units::voltsOfDbu(level);
        const auto where = need_.frame.brief.levelAt;
        const double atCore = where == design::LevelAt::Output  ? volts / at_.observedTurns
                              : where == design::LevelAt::Input ? volts / at_.drivenTurns
                                                                : volts / at_.drivenTurns / (1 + at_.source * at_.load);
        take(std::numbers::sqrt2 * atCore / (2 * pi * frequency * core_.area * knee_));
    }
    const Need& need_;
    const Terminations& at_;
    const magnetics::CoreModel& core_;
    double least_ = 1, knee_ = 0;
};

/// Turns above which copper in half of the window takes more than is promised.
double mostTurns(const Need& need, const Terminations& at, double window, double meanTurn) {
    double most = mostTurnsEver;
    const double temperature = need.frame.conditions.temperature;
    const double one = coil::conductorResistance(meanTurn, window * copperShare, temperature);
    for (const auto& promise : need.frame.brief.promises) {
        if (!promise.atMost || !ofFirstHookUp(need, promise.hookUp)) continue;
        for (const auto& w : need.windings)
            if (promise.figure == "dcr." + w.winding.name)
                most = std::min(most, std::sqrt(*promise.atMost / one) / w.ratio);
        if (promise.figure == "insertion_loss" && at.load > 0) {
            // Both sides with half of the copper each: four times the resistance of one with all of it.
            const double lost = (std::pow(10, *promise.atMost / 20) - 1) * (at.source + 1 / at.load);
            most = std::min(most, std::sqrt(std::max(0.0, lost) / (4 * one)));
        }
    }
    return most;
}

bool largeEnough(const design::Size& size, const catalog::Sheet& sheet, double height) {
    design::Core core;
    core.height = height;
    const auto is = design::footprint(design::bareSize(core, sheet)), may = design::footprint(size);
    return is.length <= may.length && is.width <= may.width && is.height <= may.height;
}

bool pinsEnough(const Need& need, const catalog::Bobbin& bobbin) {
    const auto asked = std::count_if(need.frame.terminals.begin(), need.frame.terminals.end(),
                                     [](const auto& t) { return t.pin != 0; });
    return asked <= static_cast<std::ptrdiff_t>(bobbin.pins.size());
}

double priceOf(const std::string& alloy, const shop::Prices* prices) {
    if (prices == nullptr) return 1;
    const auto it = prices->parts.find(alloy);
    return it == prices->parts.end() ? 1 : it->second.value;
}

/// One or two alloys, each with its share.
std::vector<std::vector<std::string>> mixesOf(const Stock& stock, const catalog::Catalog& shop) {
    constexpr double far = 10;
    std::vector<std::vector<std::string>> all;
    for (const auto& a : stock.alloys) all.push_back({a});
    for (const auto& a : stock.alloys)
        for (const auto& b : stock.alloys)
            if (shop.alloys.at(a).initialPermeability >= far * shop.alloys.at(b).initialPermeability &&
                shop.alloys.at(a).saturation < shop.alloys.at(b).saturation)
                all.push_back({a, b});
    return all;
}

design::Core coreOf(const std::string& sheet, const std::vector<std::string>& mix, double thickness, double height) {
    design::Core core;
    core.sheet = sheet;
    core.height = height;
    core.gap = between(thickness, 3e-6, 4e-6, 6e-6);
    core.stackingFactor = between(thickness, 0.86, 0.90, 0.92);
    for (const auto& alloy : mix) {
        design::StackPart part;
        part.alloy = alloy;
        part.thickness = thickness;
        part.share = 1.0 / static_cast<double>(mix.size());
        core.stack.push_back(std::move(part));
    }
    return core;
}

/// Of one bobbin's cores those that no other has fewer turns and less cost than, the fewest turns first, at most
/// `most` of them spread over the rest.
std::vector<CoreChoice> unbeaten(std::vector<CoreChoice> all, std::size_t most) {
    std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) {
        return std::tie(a.leastTurns, a.estimate) < std::tie(b.leastTurns, b.estimate);
    });
    std::vector<CoreChoice> kept;
    for (auto& choice : all)
        if (kept.empty() || choice.estimate < kept.back().estimate) kept.push_back(std::move(choice));
    if (kept.size() <= most) return kept;
    std::vector<CoreChoice> some;
    for (std::size_t k = 0; k < most; ++k) some.push_back(std::move(kept[k * (kept.size() - 1) / (most - 1)]));
    return some;
}

}  // namespace

double leastTurns(const Need& need, const Terminations& at, const magnetics::CoreModel& core) {
    return LeastTurns(need, at, core).found();
}

Terminations terminationsOf(const Need& need) {
    Terminations at;
    const auto& hookUp = need.frame.hookUps.front();
    for (const auto& use : hookUp.ports) {
        const double turns = portRatio(need, hookUp, use.port);
        if (turns <= 0) continue;
        at.load += loadOf(use) * turns * turns;
        if (use.role == design::Role::Observe) at.observedTurns = turns;
        if (use.role != design::Role::Drive) continue;
        at.drivenTurns = turns;
        at.source = (use.through         ? use.through->resistance.value
                     : use.table.empty() ? 0
                                         : use.table.front().real) /
                    (turns * turns);
    }
    return at;
}

double turnsForLevel(const magnetics::CoreModel& core, const Terminations& at, double frequency, double share) {
    const double resistance = at.source / (1 + at.source * at.load);
    const auto one = [&](double f) { return std::complex<double>(0, 2 * pi * f) * magnetics::turnInductance(core, f); };
    const auto low = one(frequency), middle = one(reference);
    const auto level = [&](double turns) {
        const auto at1 = turns * turns * low, at2 = turns * turns * middle;
        return std::abs(at1 / (at1 + resistance)) / std::abs(at2 / (at2 + resistance));
    };
    double few = 0, many = mostTurnsEver;
    if (level(many) < share) return many;
    constexpr int halvings = 40;
    for (int k = 0; k < halvings; ++k) {
        const double half = (few + many) / 2;
        (half > 0 && level(half) >= share ? many : few) = half;
    }
    return many;
}

std::vector<CoreChoice> coreChoices(const Need& need, const Stock& stock, const catalog::Catalog& shop,
                                    const shop::Prices* prices) {
    const Terminations at = terminationsOf(need);
    const auto mixes = mixesOf(stock, shop);
    std::vector<CoreChoice> all;
    for (const auto& key : stock.bobbins) {
        const auto& bobbin = shop.bobbins.at(key);
        const auto& sheet = shop.sheets.at(bobbin.fits);
        const double height = bobbin.stackHeight > 0 ? bobbin.stackHeight.value : sheet.tongue.value;
        if (!largeEnough(need.frame.brief.size, sheet, height) || !pinsEnough(need, bobbin)) continue;
        const double window = catalog::windowArea(sheet);
        const double meanTurn = 2 * (sheet.tongue + height) + pi * sheet.windowWidth;
        const double most = mostTurns(need, at, window, meanTurn);
        std::vector<CoreChoice> here;
        for (const auto& mix : mixes)
            for (const double thickness : sheet.thicknesses) {
                CoreChoice choice{coreOf(bobbin.fits, mix, thickness, height), key, 1, most, 0};
                design::Design probe;
                probe.core = choice.core;
                choice.leastTurns = leastTurns(need, at, magnetics::coreModel(probe, shop));
                if (choice.leastTurns > most) continue;
                for (const auto& part : choice.core.stack)
                    choice.estimate += shop::sheetArea(sheet) * height * choice.core.stackingFactor * part.share *
                                       shop.alloys.at(part.alloy.key).density * priceOf(part.alloy.key, prices);
                constexpr double copperPrice = 35;  // a kg against priced sheets; only orders the trials
                choice.estimate +=
                    copperShare * window * meanTurn * copperDensity * (prices == nullptr ? 1 : copperPrice);
                here.push_back(std::move(choice));
            }
        constexpr std::size_t ofOneBobbin = 4;
        for (auto& choice : unbeaten(std::move(here), ofOneBobbin)) all.push_back(std::move(choice));
    }
    std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.estimate < b.estimate; });
    return all;
}

void refuseForWantOfACore() {
    units::refuse("brief", "nothing in the catalog that could keep it",
                  "a larger size, a lower level or band, or less loss");
}

}  // namespace seek
