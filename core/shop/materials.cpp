// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/materials.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "catalog/sheet.h"
#include "coil/hand.h"
#include "coil/mean_turn.h"
#include "coil/wire_resistance.h"
#include "json/enum_word.h"
#include "shop/practice.h"
#include "shop/sheet_words.h"

namespace shop {

namespace {

using std::numbers::pi;

/// kg of enamelled wire of a length, m.
double enamelledMass(double length, double bare, double overall) {
    return coil::wireMass(length, bare) + length * pi / 4 * (overall * overall - bare * bare) * enamelDensity;
}

class Counting {
public:
    Counting(const design::Design& design, const coil::CoilBuild& build, const catalog::Catalog& shop)
        : design_(design), build_(build), shop_(shop) {}

    Materials all() {
        m_.sheetKey = design_.core.sheet.key;
        m_.sheetTitle = titleOf(design_, design_.core.sheet, shop_);
        m_.bobbinKey = design_.bobbin.key;
        m_.bobbinTitle = titleOf(design_, design_.bobbin, shop_);
        m_.bobbins = build_.legs;
        for (const auto& winding : design_.windings) add(winding);
        for (const auto& foil : build_.foils) add(foil);
        const auto items = coil::itemsOfDielectrics(design_, build_);
        for (std::size_t k = 0; k < items.size(); ++k)
            if (items[k].place >= 0) add(build_.dielectrics[k], items[k]);
        for (const auto& part : design_.core.stack) add(part);
        for (const auto& terminal : design_.terminals) add(terminal);
        addReels();
        for (const auto& use : design_.fittings) add(use);
        m_.solder = m_.joints * solderJoint * (1 + solderShare);
        if (design_.filling) add(*design_.filling);
        return std::move(m_);
    }

private:
    void add(const design::Winding& winding) {
        double turns = 0, length = 0;
        for (const auto& layer : build_.layers)
            if (layer.winding == winding.name) {
                turns += layer.turns;
                length += layer.turns * layer.turnLength;
            }
        const auto sections = static_cast<double>(design::sectionsOf(design_, winding).size());
        m_.sleeving.length += 2 * sections * sleevingEnd;
        if (winding.foil) return addFoil(winding, length + 2 * sections * foilEnd);
        for (const auto& lead : build_.leads)
            if (lead.winding == winding.name && lead.atPin) length += lead.length;
        WireUse use = wireUse(winding.name, winding.wire);
        use.strands = winding.strands;
        use.turns = turns;
        use.length = length * winding.strands;
        use.bought = (use.length + sections * winding.strands * wireStart) * (1 + wireWaste);
        use.mass = enamelledMass(use.bought, use.bare, use.overall);
        m_.wires.push_back(std::move(use));
    }
    WireUse wireUse(const std::string& name, const catalog::PartRef<catalog::Wire>& ref) const {
        WireUse use;
        use.winding = name;
        use.key = ref.key;
        use.title = titleOf(design_, ref, shop_);
        if (const auto* wire = design::part(design_, ref, shop_)) {
            use.bare = wire->bareDiameter;
            use.overall = wire->overallDiameter;
            use.overallMaximum = wire->overallMaximum > 0 ? wire->overallMaximum.value : use.overall;
        }
        return use;
    }
    void addFoil(const design::Winding& winding, double length) {
        double width = winding.foil->width;
        for (const auto& layer : build_.layers)
            if (layer.winding == winding.name) width = std::max(width, layer.box.height());
        const double thickness = winding.foil->thickness;
        m_.foils.push_back({winding.name, false, thickness, width, length,
                            thickness * width * length * foilDensity * (1 + wireWaste)});
    }
    void add(const coil::Foil& foil) {
        m_.joints += 1;  // its lead; the lead's other end is counted with its terminal
        const auto& shield = *design_.coil[static_cast<std::size_t>(foil.item.place)]
                                  .order[static_cast<std::size_t>(foil.item.item)]
                                  .shield();
        if (foil.winding) {
            WireUse use = wireUse(foil.name, shield.wire);
            use.turns = std::max(1.0, std::floor(foil.box.height() / use.overall + 1e-9));
            use.length = use.turns * foil.turnLength;
            use.bought = (use.length + wireStart) * (1 + wireWaste);
            use.mass = enamelledMass(use.bought, use.bare, use.overall);
            m_.wires.push_back(std::move(use));
            return;
        }
        const double thickness = foil.conductor.bare, length = foil.turnLength + shieldOverlap;
        m_.foils.push_back({foil.name, true, thickness, foil.box.height(), length,
                            thickness * foil.box.height() * length * foilDensity * (1 + wireWaste)});
    }
    void add(const coil::Dielectric& paper, const design::ItemIndex& at) {
        const auto& item = design_.coil[static_cast<std::size_t>(at.place)].order[static_cast<std::size_t>(at.item)];
        const design::Ply& ply = item.barrier() != nullptr ? item.barrier()->ply : *item.section()->interlayer;
        const auto* material = design::part(design_, ply.insulation, shop_);
        const double density = material != nullptr ? material->density.value : 0;
        const double wrap = wrapLength(build_, paper.box.middle());
        for (const StockTurns& stock : stockTurns(design_, ply, shop_)) {
            FilmUse& use = film(ply.insulation, stock.thickness);
            use.turns += stock.turns;
            const double area = (stock.turns * wrap + paperOverlap) * paper.box.height();
            use.area += area;
            use.bought += area * (1 + filmWaste);
            use.mass = use.bought * use.thickness * density;
        }
    }
    FilmUse& film(const catalog::PartRef<catalog::Insulation>& ref, double thickness) {
        const std::string title = titleOf(design_, ref, shop_);
        for (auto& use : m_.films)
            if (use.key == ref.key && use.title == title && use.thickness == thickness) return use;
        m_.films.push_back({ref.key, title, thickness, 0, 0, 0, 0});
        return m_.films.back();
    }
    void add(const design::StackPart& part) {
        SheetUse use;
        use.key = part.alloy.key;
        use.title = titleOf(design_, part.alloy, shop_);
        use.thickness = part.thickness;
        use.count = sheetCount(design_.core, part);
        use.height = design_.core.height * part.share;
        const auto* alloy = design::part(design_, part.alloy, shop_);
        const auto* sheet = design::part(design_, design_.core.sheet, shop_);
        if (alloy != nullptr && sheet != nullptr) {
            use.mass = use.count * sheetArea(*sheet) * use.thickness * alloy->density;
            use.brittle = alloy->family == catalog::AlloyFamily::NickelIron80 ||
                          alloy->family == catalog::AlloyFamily::NickelIron50 ||
                          alloy->family == catalog::AlloyFamily::CobaltIron;
        }
        m_.sheets.push_back(std::move(use));
    }
    void add(const design::Terminal& terminal) {
        ++m_.joints;
        if (terminal.pin > 0) return;
        m_.leads.push_back({terminal.name, terminal.leadColour, terminal.leadLength, terminal.leadLength + leadJoint});
        m_.lead.length += terminal.leadLength + leadJoint;
        m_.sleeving.length += sleevingEnd;
    }
    void name(ReelUse& use, const catalog::PartRef<catalog::Sundry>& ref) const {
        use.key = ref.key;
        use.title = titleOf(design_, ref, shop_);
        if (const auto* sundry = design::part(design_, ref, shop_)) use.mass = use.length * sundry->massPerMetre;
    }
    void addReels() {
        const auto& named = design_.sundries;
        if (const auto* tape = design::part(design_, named.tape, shop_)) m_.tape.length = tapeLength(*tape);
        name(m_.lead, named.lead);
        name(m_.sleeving, named.sleeving);
        name(m_.tape, named.tape);
    }
    /// A piece over the start and the finish of every section, and turns beside each other over every finished coil.
    double tapeLength(const catalog::Sundry& tape) const {
        double length = 0;
        for (const auto& winding : design_.windings)
            length += 2 * anchorTape * static_cast<double>(design::sectionsOf(design_, winding).size());
        for (const auto& fill : build_.fill) {
            const double beside = std::ceil(fill.room.height() / tape.width - 1e-9);
            length += beside * (outerTapeTurns * wrapLength(build_, fill.room.x0 + fill.build) + paperOverlap);
        }
        return length * (1 + filmWaste);
    }
    void add(const design::FittingUse& use) {
        PieceUse piece;
        piece.key = use.fitting.key;
        piece.title = titleOf(design_, use.fitting, shop_);
        piece.insulated = use.insulated;
        piece.count = use.count;
        if (const auto* fitting = design::part(design_, use.fitting, shop_)) {
            piece.form = json::wordOf(fitting->form);
            piece.conducts = fitting->conducts();
            piece.mass = use.count * fitting->mass;
        }
        m_.pieces.push_back(std::move(piece));
    }
    /// The room in the windows that neither bobbin nor coil takes.
    void add(const design::Filling& filling) {
        CompoundUse use;
        use.key = filling.compound.key;
        use.title = titleOf(design_, filling.compound, shop_);
        const auto* compound = design::part(design_, filling.compound, shop_);
        use.varnish = compound != nullptr && compound->form == catalog::InsulationForm::Varnish;
        for (const auto& fill : build_.fill) {
            const double turn = wrapLength(build_, fill.room.middle());
            use.volume += std::max(0.0, 1 - fill.areaShare) * fill.room.width() * fill.room.height() * turn;
        }
        if (compound != nullptr) use.mass = use.volume * compound->density;
        m_.compounds.push_back(std::move(use));
    }

    const design::Design& design_;
    const coil::CoilBuild& build_;
    const catalog::Catalog& shop_;
    Materials m_;
};

/// Turns of two thicknesses, and how far they are from what is asked.
struct Try {
    std::vector<StockTurns> turns;
    double sum = 0;
};
void better(Try& best, const Try& one, double asked) {
    const double a = std::abs(one.sum - asked), b = std::abs(best.sum - asked);
    if (best.turns.empty() || a < b - 1e-9 || (a < b + 1e-9 && one.sum > best.sum + 1e-9)) best = one;
}

/// The best of all ways to lay `n` turns of one stock thickness or two.
Try nearestOf(int n, const std::vector<double>& stock, double asked) {
    Try best;
    for (std::size_t a = 0; a < stock.size(); ++a) {
        better(best, {{{stock[a], n}}, stock[a] * n}, asked);
        for (std::size_t b = a + 1; b < stock.size(); ++b)
            for (int k = 1; k < n; ++k)
                better(best, {{{stock[a], k}, {stock[b], n - k}}, stock[a] * k + stock[b] * (n - k)}, asked);
    }
    return best;
}

}  // namespace

std::vector<StockTurns> stockTurns(double thickness, const std::vector<double>& stock) {
    constexpr double near = 0.10;
    constexpr int most = 40;
    if (stock.empty()) return {{thickness, 1}};
    Try best;
    for (int n = 1; n <= most; ++n) {
        better(best, nearestOf(n, stock, thickness), thickness);
        if (std::abs(best.sum - thickness) <= near * thickness + 1e-9) break;
    }
    std::sort(best.turns.begin(), best.turns.end(),
              [](const StockTurns& a, const StockTurns& b) { return a.thickness > b.thickness; });
    return best.turns;
}

std::vector<StockTurns> stockTurns(const design::Design& design, const design::Ply& ply, const catalog::Catalog& shop) {
    const auto* material = design::part(design, ply.insulation, shop);
    return stockTurns(ply.thickness, material != nullptr ? material->thicknesses : std::vector<double>{});
}

int sheetCount(const design::Core& core, const design::StackPart& part) {
    return static_cast<int>(std::lround(core.height * core.stackingFactor * part.share / part.thickness));
}

double sheetArea(const catalog::Sheet& sheet) {
    const int windows = sheet.cut == catalog::SheetCut::UI ? 1 : 2;
    return catalog::overallWidth(sheet) * catalog::overallHeight(sheet) - windows * catalog::windowArea(sheet);
}

double wrapLength(const coil::CoilBuild& build, double x) {
    return coil::turnLength(build.tongue, build.stack, build.bobbinWall + build.clearance, build.cornerRadius, x);
}

Materials materialsOf(const design::Design& design, const coil::CoilBuild& build, const catalog::Catalog& shop) {
    return Counting(design, build, shop).all();
}

}  // namespace shop
