// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright cause DESIGN READINGS [--serial S] [--good F.csv] [--fixture F.json]
#include "learn/cause.h"
#include "commands/learned.h"
#include "commands/verb.h"
#include "units/joined.h"

namespace commands {

std::string likelyCause(const std::vector<std::string>& typed) {
    const Arguments arguments = sorted(typed, {{"DESIGN", "READINGS"}, {}, {"--serial", "--good", "--fixture"}});
    const auto units = readUnitsOf(arguments.operands[1], arguments.option("--serial"));
    std::vector<learn::Readings> good;
    if (const std::string file = arguments.option("--good"); !file.empty())
        for (const auto& unit : readUnitsOf(file, {})) good.push_back(unit.readings);
    const Opened opened = openDesign(arguments.operands[0]);
    const Planned planned = plannedFor(*opened.design, opened.shop, arguments);
    const learn::CauseFinder finder(*opened.design, planned.prediction, planned.plan, opened.shop,
                                    shopTolerances(places()), planned.fixture);
    std::string text;
    for (const auto& unit : units) {
        const auto finding = finder.find(unit.readings, good);
        text += units::joined({text.empty() ? "" : "\n", "unit ", unit.serial, ", ", std::to_string(finding.used),
                               " numbers compared\n", learn::findingWords(finding)});
    }
    return text;
}

}  // namespace commands
