// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/fetch_list.h"

#include "shop/datasheet_parts.h"
#include "shop/sheet_words.h"
#include "units/joined.h"
#include "units/text.h"

namespace shop {

using units::joined;

namespace {

std::string mass(double kg) {
    return kg > 0 ? units::write(units::Kind::Mass, kg) : std::string("weight not known");
}

std::string titled(const ReelUse& use) {
    return use.title.empty() ? std::string() : ": " + use.title;
}

std::string metres(double length) {
    return fixed(length, length < 10 ? 2 : 1) + " m";
}

void addWires(const Materials& materials, const Lengths& in, std::vector<FetchRow>& rows) {
    std::vector<bool> done(materials.wires.size(), false);
    for (std::size_t k = 0; k < materials.wires.size(); ++k) {
        if (done[k]) continue;
        const WireUse& first = materials.wires[k];
        std::vector<std::string> names;
        double length = 0, all = 0;
        for (std::size_t j = k; j < materials.wires.size(); ++j) {
            const WireUse& use = materials.wires[j];
            if (use.key != first.key || use.title != first.title || use.bare != first.bare) continue;
            done[j] = true;
            names.push_back(use.strands > 1 ? joined({use.winding, " (", std::to_string(use.strands), " spools)"})
                                            : use.winding);
            length += use.bought;
            all += use.mass;
        }
        rows.push_back({joined({"Wire ", first.title, ", ", in.both(first.bare, 3), " bare, ",
                                in.both(first.overall, 3), " overall, for ", listedWords(names)}),
                        joined({metres(length), ", ", mass(all)})});
    }
}

}  // namespace

std::vector<FetchRow> fetchRows(const Materials& materials, const Lengths& in) {
    std::vector<FetchRow> rows{{"Bobbin " + materials.bobbinTitle, counted(materials.bobbins, "piece")}};
    addWires(materials, in, rows);
    for (const FoilUse& use : materials.foils)
        rows.push_back({joined({"Copper foil ", in.thin(use.thickness), " for ", use.name}),
                        joined({in.size(use.width), " x ", in.cut(use.length)})});
    for (const FilmUse& use : materials.films)
        rows.push_back({joined({use.title, ", ", in.thin(use.thickness)}),
                        joined({fixed(use.bought * 1e4, 0), " cm², ", counted(use.turns, "turn")})});
    for (const LeadUse& use : materials.leads)
        rows.push_back(
            {joined({"Lead ", use.terminal, use.colour.empty() ? "" : ", " + use.colour, titled(materials.lead)}),
             "cut " + in.cut(use.cut)});
    if (materials.sleeving.length > 0)
        rows.push_back({"Sleeving" + titled(materials.sleeving), in.cut(materials.sleeving.length)});
    if (materials.tape.length > 0) rows.push_back({"Tape" + titled(materials.tape), in.cut(materials.tape.length)});
    for (const SheetUse& use : materials.sheets)
        rows.push_back({joined({"Sheets ", materials.sheetTitle, ", ", use.title, ", ", in.size(use.thickness, 2)}),
                        joined({counted(use.count, "sheet"), ", ", mass(use.mass)})});
    for (const PieceUse& use : materials.pieces)
        rows.push_back({capital(use.form) + ": " + use.title, counted(use.count, "piece")});
    for (const CompoundUse& use : materials.compounds)
        rows.push_back({use.title, joined({fixed(use.volume * 1e6, 1), " cm³"})});
    return rows;
}

}  // namespace shop
