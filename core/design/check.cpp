// SPDX-License-Identifier: GPL-3.0-or-later
#include "design/check.h"

#include "design/inspection.h"

namespace design {

void Inspection::terminal(const std::string& pointer, const std::string& name) const {
    if (name.empty()) return;
    for (const Terminal& t : design.terminals)
        if (t.name == name) return;
    fault(pointer, quoted(name), "the name of a terminal in /terminals");
}

void Inspection::node(const std::string& pointer, const std::string& name) const {
    if (nodeOf(design, name).empty())
        fault(pointer, quoted(name), "the name of a terminal or a shield, \"core\" or \"earth\"");
}

std::vector<units::Fault> check(const Design& design, const catalog::Catalog& shop, const std::string& file) {
    std::vector<units::Fault> faults;
    const Inspection in{design, shop, file, faults};
    if (isTooMuch(in)) return faults;
    checkParts(in);
    checkCore(in);
    checkFittings(in);
    checkTerminals(in);
    checkWindings(in);
    checkCoil(in);
    checkPorts(in);
    checkHookUps(in);
    checkBrief(in);
    checkConditions(in);
    return faults;
}

}  // namespace design
