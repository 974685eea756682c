// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/datasheet.h"

#include "shop/datasheet_parts.h"
#include "units/text.h"

namespace shop {

namespace {

std::string levelPoint(design::LevelAt at) {
    switch (at) {
        case design::LevelAt::Emf:
            return "source EMF";
        case design::LevelAt::Input:
            return "input";
        case design::LevelAt::Output:
            break;
    }
    return "output";
}

/// Everything that the values depend on, in one sentence.
std::string conditionsOf(const design::Design& design, const design::HookUp& hookUp, const Words& say) {
    // Ports with the same on them are named together.
    std::vector<std::pair<std::string, std::string>> ports;
    for (const design::PortUse& use : hookUp.ports) {
        if (const std::string what = portWords(use, say); ports.empty() || ports.back().second != what)
            ports.emplace_back(use.port, what);
        else
            ports.back().first += ", " + use.port;
    }
    std::string connected;
    for (std::size_t k = 0; k < ports.size(); ++k)
        connected += (k ? "; " : "") + ports[k].first + ": " + ports[k].second;
    std::string level = units::writeExact(units::Kind::LevelDbu, design.brief.operatingLevel);
    if (level.starts_with("-")) level.replace(0, 1, "−");
    std::string words = say("At %1, hook-up “%2” (%3). Levels at the %4; operating level %5.",
                            {say.number(units::writeExact(units::Kind::Temperature, design.conditions.temperature)),
                             hookUp.name, connected, say(levelPoint(design.brief.levelAt)), say.number(level)});
    for (const design::DirectCurrent& current : design.conditions.directCurrents)
        words += " " + say("With %1 direct current in the %2.",
                           {say.number(units::writeExact(units::Kind::Current, current.current)),
                            windingRoles(design, hookUp, say).at(current.winding).title});
    return words;
}

}  // namespace

Datasheet datasheet(const design::Design& design, const analysis::Answer& answer, const catalog::Catalog& shop,
                    const Issue& issue) {
    Datasheet sheet;
    sheet.manner = issue.manner;
    const Words& say = issue.manner.say();
    const design::HookUp& hookUp = *design::hookUp(design, answer.hookUp);
    const auto roles = windingRoles(design, hookUp, say);
    sheet.title = design.name;
    sheet.partNumber = design.partNumber;
    sheet.revision = design.revision;
    sheet.date = issue.date;
    sheet.digest = issue.digest.substr(0, digestDigits);
    sheet.use = capital(design.brief.use);
    sheet.schematic = schematicOf(design, hookUp, say);
    sheet.pinout = pinoutOf(design, sheet.schematic, sheet.manner);
    sheet.outline = outlineOf(design, shop);
    sheet.conditions = conditionsOf(design, hookUp, say);
    sheet.agreed = agreedLimits(design, roles, sheet.manner);
    sheet.typical = typicalValues(design, answer, roles, say);
    sheet.charts = chartsOf(design, answer, say);
    sheet.notes = notesOf(design, hookUp, sheet);
    return sheet;
}

}  // namespace shop
