// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/winding.h"

#include <algorithm>

#include "coil/coil_build.h"
#include "commands/arguments.h"
#include "commands/places.h"
#include "exchange/step_table.h"
#include "exchange/winding_program.h"
#include "exchange/write_file.h"
#include "units/fault.h"
#include "winding/proof.h"

namespace commands {

exchange::OpenedWinder openWinder(const std::string& nameOrPath) {
    return exchange::openWinder(nameOrPath, resourceFolders(places()));
}

int legOf(const design::Design& design, const std::string& option, const std::string& usual) {
    const std::vector<int> wound = winding::woundLegs(design);
    const auto isWound = [&](const std::string& text) {
        return std::any_of(wound.begin(), wound.end(), [&](int leg) { return text == std::to_string(leg); });
    };
    const bool second = wound.size() == 1 && wound.front() == 2;
    if (!option.empty()) {
        if (isWound(option)) return option == "2" ? 2 : 1;
        refuse("--leg", '"' + option + '"',
               wound.size() == 2 ? "1 or 2"
               : second          ? "2, the leg that is wound"
                                 : "1, the leg that is wound");
    }
    if (isWound(usual)) return usual == "2" ? 2 : 1;
    if (wound.size() == 2)
        refuse("--leg", "nothing, and two legs are wound", "--leg 1 or --leg 2, a program for each coil");
    return second ? 2 : 1;
}

std::string writeWinding(const design::Design& design, const catalog::Catalog& shop, const std::string& program,
                         const std::string& table, const std::string& winder, const std::string& leg) {
    const exchange::Winder machine = openWinder(winder).winder;
    const exchange::WindingPlan plan =
        exchange::windingPlan(design, coil::layOut(design, shop), shop, machine, legOf(design, leg, ""));
    std::string written;
    if (!program.empty()) {
        exchange::writeFile(program, exchange::windingProgram(plan, machine));
        written += program + '\n';
    }
    if (!table.empty()) {
        exchange::writeFile(table, exchange::stepTable(plan, machine));
        written += table + '\n';
    }
    return written;
}

}  // namespace commands
