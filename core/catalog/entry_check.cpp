// SPDX-License-Identifier: GPL-3.0-or-later
#include "catalog/entry_check.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

#include "units/text.h"

namespace catalog {

namespace {

using units::shortest;
using Faults = std::vector<units::Fault>;

constexpr double mu0 = 4e-7 * std::numbers::pi;

std::string words(const BhPoint& point) {
    std::string text = "[";
    text += shortest(point.field);
    text += ", ";
    text += shortest(point.flux);
    return text += "]";
}

void checkCurve(const Alloy& alloy, const std::string& place, Faults& faults) {
    const auto& curve = alloy.curve;
    if (curve.empty()) return;
    if (curve.front() != BhPoint{}) faults.push_back({place + "/curve/0", words(curve.front()), "[0, 0]"});
    if (curve.size() < 2) faults.push_back({place + "/curve", "one point", "two points or more"});
    for (std::size_t i = 1; i < curve.size(); ++i) {
        const std::string here = place + "/curve/" + std::to_string(i);
        if (curve[i].field <= curve[i - 1].field || curve[i].flux <= curve[i - 1].flux)
            faults.push_back(
                {here, words(curve[i]), "more than " + words(curve[i - 1]) + " in field and in flux density"});
        const double most = alloy.saturation + mu0 * curve[i].field;
        constexpr double rounding = 1.001;  // points carry four digits
        if (alloy.saturation > 0 && curve[i].flux > most * rounding)
            faults.push_back(
                {here, words(curve[i]), "at most the saturation plus that of air, " + shortest(most) + " T"});
    }
}

}  // namespace

void check(const Sheet& sheet, const std::string& place, Faults& faults) {
    if (sheet.pathLength <= 0) return;
    const bool twoLegs = sheet.cut == SheetCut::UI;
    const double inner = 2 * (sheet.windowWidth + sheet.windowHeight);
    const double leg = twoLegs ? sheet.tongue.value : sheet.tongue / 2;
    const double outer = inner + 2 * (leg + sheet.outerLeg) + 4 * sheet.yoke;
    if (sheet.pathLength < inner || sheet.pathLength > outer)
        faults.push_back({place + "/path_length", shortest(sheet.pathLength),
                          "from " + shortest(inner) + " (round the window) to " + shortest(outer) +
                              " m (round the outline), or 0 for the mid-line rule"});
}

void check(const Alloy& alloy, const std::string& place, Faults& faults) {
    checkCurve(alloy, place, faults);
    if (alloy.maximumPermeability > 0 && alloy.maximumPermeability < alloy.initialPermeability)
        faults.push_back({place + "/maximum_permeability", shortest(alloy.maximumPermeability),
                          "at least the initial permeability, " + shortest(alloy.initialPermeability)});
    if (alloy.saturation > 0 && alloy.remanence > alloy.saturation)
        faults.push_back({place + "/remanence", shortest(alloy.remanence),
                          "at most the saturation, " + shortest(alloy.saturation) + " T"});
}

void check(const Wire& wire, const std::string& place, Faults& faults) {
    const auto atLeast = [&](const char* key, double value, double least, const char* what) {
        if (value < least)
            faults.push_back(
                {place + key, shortest(value), std::string("at least ") + what + ", " + shortest(least) + " m"});
    };
    atLeast("/overall_diameter", wire.overallDiameter, wire.bareDiameter, "the bare diameter");
    if (wire.overallMinimum > 0) {
        atLeast("/overall_minimum", wire.overallMinimum, wire.bareDiameter, "the bare diameter");
        atLeast("/overall_diameter", wire.overallDiameter, wire.overallMinimum, "the smallest overall diameter");
    }
    if (wire.overallMaximum > 0) {
        atLeast("/overall_maximum", wire.overallMaximum, wire.overallDiameter, "the overall diameter");
        atLeast("/overall_maximum", wire.overallMaximum, wire.overallMinimum, "the smallest overall diameter");
    }
}

void check(const Bobbin& bobbin, const std::string& place, Faults& faults) {
    if (bobbin.chambers.empty()) faults.push_back({place + "/chambers", "an empty list", "at least one chamber"});
    for (std::size_t i = 0; i < bobbin.chambers.size(); ++i) {
        const Chamber& chamber = bobbin.chambers[i];
        const std::string here = place + "/chambers/" + std::to_string(i);
        if (chamber.high <= chamber.low)
            faults.push_back(
                {here + "/high", shortest(chamber.high), "more than the low end, " + shortest(chamber.low) + " m"});
        if (i > 0 && chamber.low < bobbin.chambers[i - 1].high)
            faults.push_back(
                {here + "/low", shortest(chamber.low),
                 "at least the high end of the chamber before, " + shortest(bobbin.chambers[i - 1].high) + " m"});
    }
    std::set<int> numbers;
    for (std::size_t i = 0; i < bobbin.pins.size(); ++i) {
        const Pin& pin = bobbin.pins[i];
        const std::string here = place + "/pins/" + std::to_string(i);
        if (!numbers.insert(pin.number).second)
            faults.push_back({here + "/number", std::to_string(pin.number), "a pin number that no other pin has"});
        if (!pin.row.empty() && pin.row != "low" && pin.row != "high")
            faults.push_back({here + "/row", "\"" + pin.row + "\"", "\"low\" or \"high\""});
    }
}

void check(const Insulation& insulation, const std::string& place, Faults& faults) {
    const bool sheet = insulation.form == InsulationForm::Film || insulation.form == InsulationForm::Paper;
    if (sheet && insulation.thicknesses.empty())
        faults.push_back({place + "/thicknesses", "nothing", "at least one stock thickness in m for a film or paper"});
}

void check(const Fitting& fitting, const std::string& place, Faults& faults) {
    const double least = std::min<double>({fitting.width, fitting.length, fitting.height});
    if (fitting.houses() && 2 * fitting.thickness >= least)
        faults.push_back({place + "/thickness", shortest(fitting.thickness),
                          "less than half of its smallest size, " + shortest(least) + " m: the unit stands inside"});
    if (fitting.form == FittingForm::Bolt && fitting.round != Round::Nothing)
        faults.push_back({place + "/round", "a bolt that goes round by itself",
                          "\"nothing\": what bolts close with other parts is found where a design uses them"});
    const bool bridges = fitting.form == FittingForm::Frame || fitting.form == FittingForm::Clamp;
    if (fitting.conducts() && (bridges || fitting.round != Round::Nothing) && !(fitting.strip > 0))
        faults.push_back({place + "/strip", shortest(fitting.strip),
                          "more than 0 m for metal that may close a loop round iron: its resistance is computed"});
}

void check(const Sundry& sundry, const std::string& place, Faults& faults) {
    const auto above = [&](const char* key, double value, double least, const std::string& words) {
        if (value <= least)
            faults.push_back({place + key, shortest(value), "more than " + shortest(least) + " m, " + words});
    };
    if (sundry.form == SundryForm::Lead) {
        if (!(sundry.copper > 0))
            faults.push_back({place + "/copper", shortest(sundry.copper), "more than 0 m2 of copper in a lead"});
        const double bare = 2 * std::sqrt(sundry.copper / std::numbers::pi);
        above("/diameter", sundry.diameter, std::ceil(bare * 1e6) / 1e6, "which its copper takes");
    } else if (sundry.form == SundryForm::Sleeving) {
        above("/bore", sundry.bore, 0, "of sleeving");
        above("/diameter", sundry.diameter, sundry.bore, "its bore");
    } else {
        above("/width", sundry.width, 0, "of tape");
        above("/thickness", sundry.thickness, 0, "of tape");
    }
}

namespace {

void checkKey(const std::string& place, Faults& faults) {
    const std::string key = place.substr(place.find_last_of('/') + 1);
    if (std::find(toleranceKeys.begin(), toleranceKeys.end(), key) != toleranceKeys.end()) return;
    std::string known;
    for (const char* one : toleranceKeys) known += (known.empty() ? "" : ", ") + std::string(one);
    faults.push_back({place, "\"" + key + "\"", "one of " + known});
}

void checkSteps(const ShopTolerance& tolerance, const std::string& place, Faults& faults) {
    const bool discrete = tolerance.law == Law::Discrete;
    if (discrete == tolerance.steps.empty())
        faults.push_back({place + "/steps", discrete ? "nothing" : "a list of steps",
                          discrete ? "at least one [step, share] for a discrete distribution"
                                   : "nothing where the distribution is not discrete"});
    double shares = 0;
    for (const StepChance& step : tolerance.steps) shares += step.share;
    if (shares > 1 + 1e-12)
        faults.push_back(
            {place + "/steps", "shares that add up to " + shortest(shares), "shares that add up to at most 1"});
    if (discrete && tolerance.lotShare > 0)
        faults.push_back({place + "/lot_share", shortest(tolerance.lotShare), "0 for a discrete distribution"});
}

}  // namespace

void check(const ShopTolerance& tolerance, const std::string& place, Faults& faults) {
    checkKey(place, faults);
    checkSteps(tolerance, place, faults);
    for (std::size_t i = 1; i < tolerance.widths.size(); ++i)
        if (tolerance.widths[i].upTo <= tolerance.widths[i - 1].upTo)
            faults.push_back({place + "/widths/" + std::to_string(i), shortest(tolerance.widths[i].upTo),
                              "a size above the one before, " + shortest(tolerance.widths[i - 1].upTo)});
}

}  // namespace catalog
