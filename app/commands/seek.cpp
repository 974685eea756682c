// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright seek DESIGN [--keep N] [--to DIR] [--prices F.csv] [--hold WHAT,WHAT], or --damping flat|step, or
// --respin F
#include <optional>

#include "commands/arguments.h"
#include "commands/respin.h"
#include "commands/search_options.h"
#include "commands/seek_table.h"
#include "commands/verb.h"
#include "exchange/design_json.h"
#include "exchange/write_file.h"
#include "seek/damping.h"
#include "seek/search.h"
#include "units/fault.h"

namespace commands {

namespace {

seek::Held heldOf(const Arguments& arguments, const design::DesignPtr& design) {
    seek::Held held;
    const std::string text = arguments.option("--hold");
    if (!arguments.options.contains("--hold")) return held;
    held.from = design;
    for (std::size_t from = 0; from <= text.size();) {
        const std::size_t comma = std::min(text.find(',', from), text.size());
        const std::string word = text.substr(from, comma - from);
        if (word == "core")
            held.core = true;
        else if (word == "turns")
            held.turns = true;
        else if (word == "wires")
            held.wires = true;
        else if (word == "order")
            held.order = true;
        else if (word == "insulation")
            held.insulation = true;
        else
            refuse("--hold", '"' + word + '"', "core, turns, wires, order, insulation, with commas between");
        from = comma + 1;
    }
    if (held.insulation && !held.order)
        refuse("--hold", "insulation without the order that it lies in", "order beside insulation");
    return held;
}

/// Writes each candidate as a design; their paths.
std::vector<std::string> written(const seek::ShortList& list, const Opened& opened, const std::string& folder) {
    makeFolder(folder);
    std::vector<std::string> paths;
    paths.reserve(list.candidates.size());
    for (std::size_t k = 0; k < list.candidates.size(); ++k) {
        paths.push_back(folder + "/candidate-" + std::to_string(k + 1) + ".coilwright");
        exchange::writeFile(paths.back(), exchange::writeDesign(*list.candidates[k].design, opened.shop));
    }
    return paths;
}

std::string dampingFound(const Arguments& arguments, const Opened& opened) {
    const std::string aim = arguments.option("--damping");
    if (aim != "flat" && aim != "step") refuse("--damping", '"' + aim + '"', "flat or step");
    for (const char* other : {"--keep", "--prices", "--hold"})
        if (arguments.options.contains(other))
            refuse("--damping", std::string(other) + " beside it", "--hook-up and --to beside it");
    const std::string hookUp = knownHookUp(*opened.design, arguments.option("--hook-up"));
    const auto found = seek::damping(*opened.design, opened.shop, hookUp,
                                     aim == "flat" ? seek::DampingAim::Flat : seek::DampingAim::CleanStep);
    std::string path;
    if (found.resonant && arguments.options.contains("--to")) {
        makeFolder(arguments.option("--to"));
        path = arguments.option("--to") + "/damped.coilwright";
        const auto damped = seek::withDamping(*opened.design, found.hookUp, found.branch);
        exchange::writeFile(path, exchange::writeDesign(*damped, opened.shop));
    }
    return dampingTable(found, aim == "flat", path);
}

}  // namespace

std::string seekDesigns(const std::vector<std::string>& typed) {
    const Arguments arguments =
        sorted(typed, {{"DESIGN"}, {}, {"--keep", "--to", "--prices", "--hold", "--damping", "--hook-up", "--respin"}});
    const Opened opened = openDesign(arguments.operands.front());
    if (arguments.options.contains("--respin")) return respinFound(arguments, opened);
    if (arguments.options.contains("--damping")) return dampingFound(arguments, opened);
    if (arguments.options.contains("--hook-up"))
        refuse("--hook-up", "no damping to seek there", "it beside --damping flat or step");
    const auto prices = pricesOf(arguments);
    seek::Plan plan;
    plan.keep = keptOf(arguments, plan.keep);
    plan.held = heldOf(arguments, opened.design);
    plan.prices = prices ? &*prices : nullptr;
    const seek::Need need = seek::needOf(*opened.design, arguments.operands.front());
    const seek::ShortList list = seek::sought(need, opened.shop, plan, {}, toldOnATerminal("designs"));
    std::vector<std::string> paths;
    if (arguments.options.contains("--to")) paths = written(list, opened, arguments.option("--to"));
    return seekTable(need, list, plan, paths);
}

}  // namespace commands
