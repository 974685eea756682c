// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright begin KIND F.coilwright: a blank design; coilwright ask DESIGN: what the customer has not said yet.
#include "commands/arguments.h"
#include "commands/places.h"
#include "commands/verb.h"
#include "design/unsaid.h"
#include "exchange/design_json.h"
#include "exchange/load_enquiries.h"
#include "exchange/write_file.h"
#include "seek/first_design.h"
#include "units/fault.h"
#include "units/joined.h"

namespace commands {

namespace {

const design::Enquiry& kindOf(const std::map<std::string, design::Enquiry>& kinds, const std::string& key) {
    const auto found = kinds.find(key);
    if (found != kinds.end()) return found->second;
    std::string allowed;
    for (const auto& [name, kind] : kinds) allowed += (allowed.empty() ? "" : ", ") + name;
    refuse("begin", '"' + key + '"', "one of " + allowed);
}

}  // namespace

std::string begin(const std::vector<std::string>& typed) {
    const Places where = places();
    const auto kinds = exchange::loadEnquiries(resourceFolders(where));
    if (typed.empty()) {
        std::string text;
        for (const auto& [key, kind] : kinds) text += units::joined({key, ": ", kind.title, "\n"});
        return text;
    }
    const Arguments arguments = sorted(typed, {{"KIND", "F.coilwright"}, {}, {}});
    const auto& kind = kindOf(kinds, arguments.operands[0]);
    const catalog::Catalog shop = shopCatalog(where);
    const auto first = seek::firstDesign(seek::needOf(seek::sketchOf(kind), arguments.operands[0]), shop);
    exchange::writeFile(arguments.operands[1], exchange::writeDesign(*first, shop));
    return units::joined({arguments.operands[1], ": ", first->name,
                          "; points to ask the customer yet: ", std::to_string(design::unsaid(*first).size()), "\n"});
}

std::string askCustomer(const std::vector<std::string>& typed) {
    const Arguments arguments = sorted(typed, {{"DESIGN"}, {"--open"}, {}});
    const Opened opened = openDesign(arguments.operands[0]);
    std::string text;
    for (const auto& point : design::points(*opened.design)) {
        if (!point.said.empty() && arguments.flags.contains("--open")) continue;
        const std::string answer = point.said.empty() ? "still to ask; it decides " + point.why : point.said;
        text += units::joined({point.subject, ": ", point.question, "\n    ", answer, "\n"});
    }
    return text.empty() ? "Nothing is left to ask.\n" : text;
}

}  // namespace commands
