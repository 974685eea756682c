// SPDX-License-Identifier: GPL-3.0-or-later
// How the unit is to be connected and handled, in words.
#include <algorithm>

#include "shop/datasheet_parts.h"
#include "units/text.h"

namespace shop {

namespace {

std::string branchWords(const design::Branch& branch, const Words& say) {
    std::string words;
    const auto add = [&](units::Kind kind, double value) {
        if (value > 0) words += (words.empty() ? "" : " + ") + say.number(units::writeExact(kind, value));
    };
    add(units::Kind::Resistance, branch.resistance);
    add(units::Kind::Inductance, branch.inductance);
    add(units::Kind::Capacitance, branch.capacitance);
    return words.empty() ? say("short circuit") : words;
}

std::string earthingWords(design::Earthing earthing) {
    switch (earthing) {
        case design::Earthing::Balanced:
            return "balanced";
        case design::Earthing::MinusEarthed:
            return "minus side earthed";
        case design::Earthing::PlusEarthed:
            return "plus side earthed";
        case design::Earthing::Floating:
            break;
    }
    return "";
}

std::string listed(const std::vector<std::string>& names, const Words& say) {
    std::string all;
    for (std::size_t k = 0; k < names.size(); ++k)
        all = k == 0 ? names[k] : k + 1 == names.size() ? say("%1 and %2", {all, names[k]}) : all + ", " + names[k];
    return all;
}

std::vector<std::string> connecting(const design::Design& design, const design::HookUp& hookUp,
                                    const Datasheet& sheet) {
    const Words& say = sheet.manner.say();
    std::vector<std::string> notes;
    for (const design::PortUse& use : hookUp.ports)
        if (const design::Port* port = design::port(design, use.port))
            notes.push_back(
                say("%1: %2 (+) and %3 (−), %4.", {capital(port->name), port->plus, port->minus, portWords(use, say)}));
    for (const auto& strap : hookUp.straps) notes.push_back(say("Join %1.", {listed(strap, say)}));
    const auto& schematic = sheet.schematic;
    if (!schematic.earthed.empty()) notes.push_back(say("Earth %1, at one point.", {listed(schematic.earthed, say)}));
    std::vector<std::string> loose;
    for (const SchematicShield& shield : schematic.shields)
        if (std::find(schematic.earthed.begin(), schematic.earthed.end(), shield.terminal) == schematic.earthed.end())
            loose.push_back(shield.terminal == shield.name ? shield.name : shield.terminal + " (" + shield.name + ")");
    if (!loose.empty())
        notes.push_back(say(loose.size() > 1 ? "Shields work only when connected: %1 go to the earth or screen of the "
                                               "side that each serves. Never leave one open."
                                             : "A shield works only when connected: %1 goes to the earth or screen of "
                                               "the side that it serves. Never leave it open.",
                            {listed(loose, say)}));
    if (schematic.coreReachable &&
        std::find(schematic.earthed.begin(), schematic.earthed.end(), "core") == schematic.earthed.end())
        notes.push_back(say("Connect the core to earth or to the screen."));
    std::vector<std::string> damped;
    for (const design::PortUse& use : hookUp.ports)
        if (!use.across.empty()) damped.push_back(use.port);
    if (!damped.empty())
        notes.push_back(
            say("What stands across %1 damps the peak above the band: values and curves are with it, and "
                "without it the response rises there.",
                {listed(damped, say)}));
    notes.push_back(
        say("Stray capacitance of cables adds to the load and lowers the upper band edge: keep leads on the "
            "high-impedance side short."));
    notes.push_back(
        say("Phantom supply: feed it through matched resistors to both ends or to a centre tap, so that the "
            "currents cancel in the core. Unbalanced direct current lowers inductance and maximum level. "
            "Switch the supply with the following stage muted."));
    return notes;
}

std::vector<std::string> handling(const Datasheet& sheet) {
    const Words& say = sheet.manner.say();
    std::vector<std::string> notes{
        say("Measure winding resistance with a small current, and demagnetise the core afterwards: a magnetised core "
            "raises distortion at low frequencies."),
        say("Do not drop, bend or clamp the core: shock and pressure lower its inductance."),
        say("Keep away from mains transformers and motors, or rotate the unit for least hum.")};
    if (!sheet.outline.pins.empty())
        notes.push_back(say("Solder the pins quickly and without side load; they stand in plastic."));
    notes.push_back(
        say("Use and store it dry, without condensation, away from heat and sun. Winding resistance rises by "
            "0.39 % a kelvin."));
    return notes;
}

}  // namespace

std::string portWords(const design::PortUse& use, const Words& say) {
    const bool drive = use.role == design::Role::Drive;
    std::string words;
    if (use.through)
        words = say(drive ? "%1 source" : "%1 load", {branchWords(*use.through, say)});
    else if (!use.table.empty())
        words = say(drive ? "source by a table of impedance" : "load by a table of impedance");
    else
        words = say(drive ? "driven without series impedance" : "open");
    for (const design::Branch& across : use.across) words += ", " + say("%1 across", {branchWords(across, say)});
    if (const std::string earthing = earthingWords(use.earthing); !earthing.empty()) words += ", " + say(earthing);
    if (use.mode == design::Mode::Common) words += ", " + say("driven on both sides alike");
    return words;
}

std::vector<std::pair<std::string, std::vector<std::string>>> notesOf(const design::Design& design,
                                                                      const design::HookUp& hookUp,
                                                                      const Datasheet& sheet) {
    const Words& say = sheet.manner.say();
    std::vector<std::string> values{
        say("Typical values and curves are predicted from the design for a unit at the middle "
            "of its tolerances; they are not limits.") +
        " " + say(sheet.agreed.empty() ? "No limits are agreed." : "The limits are those agreed, on page 1.")};
    const bool doubtful =
        std::any_of(sheet.typical.begin(), sheet.typical.end(), [](const ValueRow& row) { return row.doubtful; }) ||
        std::any_of(sheet.charts.begin(), sheet.charts.end(),
                    [](const Chart& chart) { return !chart.valid || chart.validFrom > 0 || chart.validTo > 0; });
    if (doubtful)
        values.push_back(
            say("Values marked † and dotted parts of curves lie outside the range in which the prediction "
                "is known to hold."));
    return {{say("Connecting"), connecting(design, hookUp, sheet)},
            {say("Handling"), handling(sheet)},
            {say("Values"), values},
            {say("Safety"),
             {say("Not for mains isolation or protective separation unless designed and approved for it.")}}};
}

}  // namespace shop
