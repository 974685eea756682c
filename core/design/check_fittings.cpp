// SPDX-License-Identifier: GPL-3.0-or-later
// Fittings that do not go on, close a loop round iron, or cannot hold the unit; sundries of the wrong kind.
#include <algorithm>

#include "design/closed_loop.h"
#include "design/inspection.h"
#include "design/unit_size.h"
#include "json/enum_word.h"
#include "units/joined.h"

namespace design {

namespace {

using units::joined;

/// Whether the part goes on this core.
void checkSeat(const Inspection& in, const std::string& at, const catalog::Fitting& fitting) {
    const Core& core = in.design.core;
    if (!fitting.fits.empty() && !core.sheet.key.empty() && fitting.fits != core.sheet.key)
        in.fault(at, joined({"a part made for ", fitting.fits}),
                 joined({"one that fits ", core.sheet.key, ", or any sheet"}));
    if (fitting.stackHeight > 0 && core.height > fitting.stackHeight * (1 + 1e-9))
        in.fault(at, joined({"room for a stack of ", Inspection::length(fitting.stackHeight)}),
                 joined({"at least the closed height, ", Inspection::length(core.height)}));
}

/// A can or cup goes round core and coil; it is open where the pins are.
void checkRoomInside(const Inspection& in, const std::string& at, const catalog::Fitting& fitting) {
    const auto* sheet = in.part(in.design.core.sheet);
    if (!fitting.houses() || sheet == nullptr) return;
    const UnitSize unit = bareSize(in.design.core, *sheet);
    const auto room = [&](const char* what, double inside, double needed) {
        if (inside < needed - 1e-9)
            in.fault(at, joined({what, " inside of ", Inspection::length(inside)}),
                     joined({"at least that of core and coil, ", Inspection::length(needed)}));
    };
    room("a width", fitting.width - 2 * fitting.thickness, unit.x);
    room("a length", fitting.length - 2 * fitting.thickness, unit.y);
    room("a height", fitting.height - fitting.thickness, unit.z);
}

void checkLoops(const Inspection& in) {
    const auto& windings = in.design.windings;
    for (const ClosedLoop& loop : closedLoops(in.design, in.shop)) {
        std::string found = joined({loop.words, ", ", units::write(units::Kind::Resistance, loop.resistance)});
        if (!windings.empty()) {
            const double turns = std::abs(seriesTurns(in.design, windings.front()));
            if (turns > 0)
                found += joined({": a shorted turn, across ", windings.front().name, " as ",
                                 units::write(units::Kind::Resistance, loadOf(loop, turns))});
        }
        in.fault(Inspection::at("fittings", loop.fitting), std::move(found),
                 "a loop broken by a bush, a washer or a gap (\"insulated\": true), or a part that does not conduct");
    }
}

void checkSundry(const Inspection& in, const char* key, const catalog::PartRef<catalog::Sundry>& ref,
                 catalog::SundryForm form) {
    const auto* sundry = in.part(ref);
    if (sundry == nullptr || sundry->form == form) return;
    in.fault(joined({"/sundries/", key}),
             joined({Inspection::quoted(ref.key), ", a sundry of form ", json::wordOf(sundry->form)}),
             joined({"one of form ", json::wordOf(form)}));
}

/// A lead that is to be had in some colours alone.
void checkColours(const Inspection& in) {
    const auto* lead = in.part(in.design.sundries.lead);
    if (lead == nullptr || lead->colours.empty()) return;
    std::string known;
    for (const auto& colour : lead->colours) known += (known.empty() ? "" : ", ") + colour;
    const auto& terminals = in.design.terminals;
    for (std::size_t k = 0; k < terminals.size(); ++k) {
        const std::string& colour = terminals[k].leadColour;
        if (terminals[k].pin > 0 || colour.empty()) continue;
        if (std::find(lead->colours.begin(), lead->colours.end(), colour) == lead->colours.end())
            in.fault(Inspection::at("terminals", k, "lead_colour"), Inspection::quoted(colour),
                     joined({"a colour of the lead wire: ", known}));
    }
}

}  // namespace

void checkFittings(const Inspection& in) {
    const auto& fittings = in.design.fittings;
    for (std::size_t k = 0; k < fittings.size(); ++k) {
        const std::string at = Inspection::at("fittings", k, "fitting");
        if (fittings[k].fitting.empty()) in.fault(at, "nothing", "a fitting");
        const auto* fitting = in.part(fittings[k].fitting);
        if (fitting == nullptr) continue;
        checkSeat(in, at, *fitting);
        checkRoomInside(in, at, *fitting);
    }
    checkLoops(in);
    using catalog::SundryForm;
    const Sundries& sundries = in.design.sundries;
    checkSundry(in, "lead", sundries.lead, SundryForm::Lead);
    checkSundry(in, "sleeving", sundries.sleeving, SundryForm::Sleeving);
    checkSundry(in, "tape", sundries.tape, SundryForm::Tape);
    checkColours(in);
}

}  // namespace design
