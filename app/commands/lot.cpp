// SPDX-License-Identifier: GPL-3.0-or-later
// coilwright lot F.csv --from ALLOY --name NAME --to F.json [--table F.csv]
#include "commands/arguments.h"
#include "commands/verb.h"
#include "exchange/lot_entry.h"
#include "exchange/read_file.h"
#include "exchange/write_file.h"
#include "units/fault.h"
#include "units/joined.h"

namespace commands {

namespace {

/// "Lot 42, 80 % nickel" as a key: "lot-42-80-nickel".
std::string keyOf(const std::string& name) {
    std::string key;
    for (const char c : name) {
        const bool plain = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
        if (plain || (c >= 'A' && c <= 'Z'))
            key += plain ? c : static_cast<char>(c - 'A' + 'a');
        else if (!key.empty() && key.back() != '-')
            key += '-';
    }
    while (!key.empty() && key.back() == '-') key.pop_back();
    return key;
}

std::string needed(const Arguments& arguments, const std::string& option, const std::string& what) {
    std::string value = arguments.option(option);
    if (value.empty()) refuse(option, "nothing", what);
    return value;
}

/// The alloy that the lot is like; with what the fit leans on.
const catalog::Alloy& likeOf(const catalog::Catalog& shop, const std::string& key) {
    const auto found = shop.alloys.find(key);
    if (found == shop.alloys.end()) {
        std::string all;
        for (const auto& entry : shop.alloys) all += units::joined({all.empty() ? "" : ", ", entry.first});
        refuse("--from", '"' + key + '"', "an alloy of the catalog: " + all);
    }
    const catalog::Alloy& like = found->second;
    if (like.coercivity <= 0 || like.saturation <= 0)
        refuse("--from", '"' + key + '"', "an alloy whose coercivity and saturation are known");
    return like;
}

}  // namespace

std::string lot(const std::vector<std::string>& typed) {
    const Arguments arguments = sorted(typed, {{"FILE"}, {}, {"--from", "--name", "--to", "--table"}});
    const std::string& file = arguments.operands.front();
    const std::string name = needed(arguments, "--name", "a name for the lot, as \"Lot 42\"");
    const std::string to = needed(arguments, "--to", "a file for the alloy's entry");
    const std::string from = needed(arguments, "--from", "the key of an alloy that the lot is like");
    const std::string key = keyOf(name);
    if (key.empty()) refuse("--name", '"' + name + '"', "a name with letters or digits");
    const catalog::Catalog shop = shopCatalog(places());
    const catalog::Alloy& like = likeOf(shop, from);
    const exchange::FittedLot fitted = exchange::fittedLot(exchange::readFile(file), file, key, name, like);
    exchange::writeFile(to, fitted.entry);
    std::string text = units::joined({key, " in ", to, "\n"});
    const std::string table = arguments.option("--table");
    if (!table.empty()) {
        exchange::writeFile(table, fitted.table);
        text += units::joined({"points and fit in ", table, "\n"});
    }
    return text + fitted.words;
}

}  // namespace commands
