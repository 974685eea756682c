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
std::string conditionsOf(const design::Design& design, const design::HookUp& hookUp) {
    std::string words = "At " + units::writeExact(units::Kind::Temperature, design.conditions.temperature) +
                        ", hook-up “" + hookUp.name + "” (";
    // Ports with the same on them are named together.
    std::vector<std::pair<std::string, std::string>> ports;
    for (const design::PortUse& use : hookUp.ports) {
        if (const std::string what = portWords(use); ports.empty() || ports.back().second != what)
            ports.emplace_back(use.port, what);
        else
            ports.back().first += ", " + use.port;
    }
    for (std::size_t k = 0; k < ports.size(); ++k) words += (k ? "; " : "") + ports[k].first + ": " + ports[k].second;
    std::string level = units::writeExact(units::Kind::LevelDbu, design.brief.operatingLevel);
    if (level.starts_with("-")) level.replace(0, 1, "−");
    words += "). Levels at the " + levelPoint(design.brief.levelAt) + "; operating level " + level + ".";
    for (const design::DirectCurrent& current : design.conditions.directCurrents)
        words += " With " + units::writeExact(units::Kind::Current, current.current) + " direct current in the " +
                 windingRoles(design, hookUp).at(current.winding).title + ".";
    return words;
}

}  // namespace

Datasheet datasheet(const design::Design& design, const analysis::Answer& answer, const catalog::Catalog& shop,
                    const Issue& issue) {
    Datasheet sheet;
    const design::HookUp& hookUp = *design::hookUp(design, answer.hookUp);
    const auto roles = windingRoles(design, hookUp);
    sheet.title = design.name;
    sheet.partNumber = design.partNumber;
    sheet.revision = design.revision;
    sheet.date = issue.date;
    sheet.digest = issue.digest.substr(0, digestDigits);
    sheet.use = capital(design.brief.use);
    sheet.schematic = schematicOf(design, hookUp);
    sheet.pinout = pinoutOf(design, sheet.schematic);
    sheet.outline = outlineOf(design, shop);
    sheet.conditions = conditionsOf(design, hookUp);
    sheet.agreed = agreedLimits(design, roles);
    sheet.typical = typicalValues(design, answer, roles);
    sheet.charts = chartsOf(design, answer);
    sheet.notes = notesOf(design, hookUp, sheet);
    return sheet;
}

}  // namespace shop
