// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/build.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "coil/lead_outs.h"
#include "coil/wire_resistance.h"
#include "network/energy.h"
#include "network/extra_branches.h"
#include "network/lead_branches.h"
#include "network/nodes.h"
#include "network/port_networks.h"
#include "network/unequal_legs.h"

namespace network {

coil::CoilBuild refined(const coil::CoilBuild& build, const Pieces& pieces) {
    coil::CoilBuild fine = build;
    fine.layers.clear();
    for (std::size_t k = 0; k < build.layers.size(); ++k) {
        const int count = pieces[k];
        for (int j = 0; j < count; ++j) {
            coil::Layer piece = build.layers[k];
            const double step = piece.box.height() / count;
            const int place = piece.begins == design::End::Low ? j : count - 1 - j;
            piece.box.y1 = build.layers[k].box.y0 + step * (place + 1);
            piece.box.y0 = build.layers[k].box.y0 + step * place;
            piece.turns /= count;
            piece.oneSided /= count;
            piece.resistance20 /= count;
            if (j + 1 < count) piece.tapAfter.clear();
            fine.layers.push_back(piece);
        }
    }
    return fine;
}

namespace {

/// Walks through the layers and gives each piece its nodes.
class Assembler {
public:
    Assembler(const design::Design& design, const design::HookUp& hookUp, const Fields& fields)
        : design_(design), hookUp_(hookUp), fields_(fields), nodes_(design, hookUp) {}

    Circuit assemble() {
        connectLayers();
        nodes_.index("core");
        for (const auto& foil : fields_.build.foils) nodes_.index(foilNode(foil.name));
        addPorts(circuit_, nodes_, design_, hookUp_);
        fillBranches();
        circuit_.capacitance = ComplexMatrix::Zero(static_cast<Eigen::Index>(nodes_.names().size()),
                                                   static_cast<Eigen::Index>(nodes_.names().size()));
        fillCapacitance();
        circuit_.nodes = nodes_.names();
        return std::move(circuit_);
    }

private:
    /// The layers of a section follow each other from its start to its finish node.
    void connectLayers() {
        const auto& layers = fields_.build.layers;
        lines_.resize(layers.size());
        for (std::size_t k = 0; k < layers.size(); ++k) {
            const auto& layer = layers[k];
            const auto* section = design_.coil[static_cast<std::size_t>(layer.item.place)]
                                      .order[static_cast<std::size_t>(layer.item.item)]
                                      .section();
            const auto ends = design::sectionEnds(design_, *section);
            const auto last = lastLayerOf(layer.item);
            auto& at = reached_.try_emplace(layer.item, ends.start).first->second;
            const std::string own = layer.winding + "." + layer.section + "/" + std::to_string(k);
            const std::string end = k == last ? ends.finish : layer.tapAfter.empty() ? own : layer.tapAfter;
            connect(k, inside(layer, at), inside(layer, end), own);
            at = end;
        }
    }
    /// Where the coil side of a terminal's lead-out is; the terminal itself without one.
    std::string inside(const coil::Layer& layer, const std::string& node) const {
        return design_.assumptions.leadOuts ? coilSide(fields_.build, layer.winding, node) : node;
    }
    std::size_t lastLayerOf(const design::ItemIndex& item) const {
        std::size_t last = 0;
        for (std::size_t k = 0; k < fields_.build.layers.size(); ++k)
            if (fields_.build.layers[k].item == item) last = k;
        return last;
    }
    void connect(std::size_t k, const std::string& from, const std::string& to, const std::string& own) {
        const auto& layer = fields_.build.layers[k];
        const int count = fields_.pieces[k];
        auto& line = lines_[k];
        for (int j = 0; j <= count; ++j) {
            const int node = nodes_.index(j == 0 ? from : j == count ? to : own + ":" + std::to_string(j));
            const double along = layer.box.height() * j / count;
            line.y.push_back(layer.begins == design::End::Low ? layer.box.y0 + along : layer.box.y1 - along);
            line.node.push_back(node);
            if (j > 0) circuit_.windingBranches.push_back({line.node[static_cast<std::size_t>(j - 1)], node});
        }
        if (layer.begins == design::End::High) {
            std::reverse(line.y.begin(), line.y.end());
            std::reverse(line.node.begin(), line.node.end());
        }
    }

    void fillBranches() {
        const auto fine = refined(fields_.build, fields_.pieces);
        const auto count = static_cast<Eigen::Index>(fine.layers.size());
        const double warm = coil::resistanceFactor(design_.conditions.temperature);
        circuit_.resistivity = coil::copperResistivity20 * warm;
        circuit_.turns.resize(count);
        circuit_.resistance.resize(count);
        circuit_.bareDiameter.resize(count);
        for (Eigen::Index i = 0; i < count; ++i) {
            const auto& piece = fine.layers[static_cast<std::size_t>(i)];
            circuit_.turns(i) = piece.sense * piece.turns;
            circuit_.resistance(i) = piece.resistance20 * warm;
            // Without alternating-current resistance every wire is like foil: direct-current resistance at all
            // frequencies.
            circuit_.bareDiameter(i) = piece.conductor.foil || fields_.proximity == nullptr ? 0 : piece.conductor.bare;
            const auto w = std::find_if(design_.windings.begin(), design_.windings.end(),
                                        [&](const auto& winding) { return winding.name == piece.winding; });
            circuit_.sectionOf.push_back(piece.winding + "." + piece.section);
            circuit_.windingOf.push_back(static_cast<int>(w - design_.windings.begin()));
        }
        circuit_.leakage = fields_.foilEddies ? fields_.foilEddies->leakage : fields_.leakage.matrix;
        circuit_.core = fields_.core;
        if (fields_.proximity != nullptr) fillEddies(count);
        addHalfTurns(fine);
        if (const auto* foil = fields_.foilEddies) {
            ExtraBranches loops;
            loops.ends.assign(static_cast<std::size_t>(foil->resistance.size()), {});
            loops.resistance = warm * foil->resistance;
            loops.bareDiameter = Vector::Zero(foil->resistance.size());
            loops.inductance = foil->inductance;
            loops.mutual = foil->mutual;
            addBranches(circuit_, loops);
        }
        addShieldLeads();
        if (design_.assumptions.leadOuts) {
            const auto leads = leadBranches(fields_.build, nodes_, warm, fields_.proximity != nullptr);
            addBranches(circuit_, leads);
        }
    }

    /// Inductance of the wire from a shield to where it comes out, H.
    double shieldLead(const std::string& name) const {
        for (const auto& place : design_.coil)
            for (const auto& item : place.order)
                if (const auto* shield = item.shield(); shield != nullptr && shield->name == name)
                    return shield->leadInductance;
        return 0;
    }
    /// The shield itself, behind its lead where that has inductance.
    std::string foilNode(const std::string& name) const { return shieldLead(name) > 0 ? name + "/foil" : name; }

    /// A shield's lead: a branch without turns. Its resistance, 5 milliohm, is that of 25 mm of 0.3 mm wire.
    void addShieldLeads() {
        constexpr double leadResistance = 5e-3;
        ExtraBranches leads;
        std::vector<double> inductance;
        for (const auto& foil : fields_.build.foils)
            if (const double henry = shieldLead(foil.name); henry > 0) {
                leads.ends.push_back({nodes_.index(foilNode(foil.name)), nodes_.index(foil.name)});
                inductance.push_back(henry);
            }
        const auto count = static_cast<Eigen::Index>(inductance.size());
        leads.resistance = Vector::Constant(count, leadResistance);
        leads.bareDiameter = Vector::Zero(count);
        leads.inductance = Eigen::Map<const Vector>(inductance.data(), count).asDiagonal();
        addBranches(circuit_, leads);
    }

    void addHalfTurns(const coil::CoilBuild& fine) {
        Vector oneSided(static_cast<Eigen::Index>(fine.layers.size()));
        for (std::size_t k = 0; k < fine.layers.size(); ++k)
            oneSided(static_cast<Eigen::Index>(k)) = fine.layers[k].oneSided;
        if (oneSided.isZero() || fields_.core.outerPath <= 0) return;
        const auto second = secondFlux(magnetics::outerLoop(fields_.core), oneSided);
        circuit_.leakage += second.inductance;
        addBranches(circuit_, second.loops);
    }

    /// Each piece has its share of its layer's field.
    void fillEddies(Eigen::Index count) {
        std::vector<Eigen::Index> layerOf;
        for (std::size_t k = 0; k < fields_.pieces.size(); ++k)
            layerOf.insert(layerOf.end(), static_cast<std::size_t>(fields_.pieces[k]), static_cast<Eigen::Index>(k));
        Vector share(count);
        for (Eigen::Index i = 0; i < count; ++i)
            share(i) = 1.0 / fields_.pieces[static_cast<std::size_t>(layerOf[static_cast<std::size_t>(i)])];
        for (const auto& wire : fields_.proximity->ofWires)
            circuit_.eddies.push_back(
                {wire.bareDiameter, share.asDiagonal() * wire.form(layerOf, layerOf) * share.asDiagonal()});
    }

    VoltageLine lineOf(const field::Body& body) {
        using Kind = field::Body::Kind;
        if (body.kind == Kind::Layer) return lines_[static_cast<std::size_t>(body.index)];
        if (body.kind == Kind::Foil)
            return {{0}, {nodes_.index(foilNode(fields_.build.foils[static_cast<std::size_t>(body.index)].name))}};
        return {{0}, {nodes_.index("core")}};
    }

    void fillCapacitance() {
        auto& c = circuit_.capacitance;
        for (const auto& facing : fields_.capacitance.facings)
            addFacing(c, lineOf(facing.a), lineOf(facing.b), facing.y0, facing.y1, facing.total);
        std::size_t branch = 0;
        for (std::size_t k = 0; k < fields_.build.layers.size(); ++k) {
            const double turns = fields_.build.layers[k].turns;
            const Complex gap =
                k < fields_.capacitance.turnToTurn.size() ? fields_.capacitance.turnToTurn[k] : Complex(0);
            for (int j = 0; j < fields_.pieces[k]; ++j, ++branch) {
                // (N - 1) gaps in series over N turns, each across 1/N of the layer's voltage.
                if (turns <= 1) continue;
                const Complex across = gap * ((turns - 1) / (turns * turns)) * double(fields_.pieces[k]);
                addCapacitor(c, circuit_.windingBranches[branch].from, circuit_.windingBranches[branch].to, across);
            }
        }
        for (const auto& port : circuit_.ports) addCapacitor(c, port.plus, port.minus, port.acrossCapacitance);
        if (design_.assumptions.leadOuts)
            for (const auto& lead : fields_.build.leads)
                addCapacitor(c, nodes_.index(lead.terminal), nodes_.index("core"), coil::leadCapacitance * lead.length);
        addStray(c);
    }

    /// Keeps what hangs on nothing at a defined potential.
    void addStray(ComplexMatrix& c) {
        constexpr double unitToSurroundings = 1e-12;
        const int core = nodes_.index("core");
        bool anyEarth = core == earth;
        if (core != earth) addCapacitor(c, core, earth, unitToSurroundings);
        for (Eigen::Index i = 0; i < c.rows(); ++i)
            if (std::abs(c(i, i)) < 1e-16) addCapacitor(c, static_cast<int>(i), anyEarth ? earth : core, 1e-14);
    }

    const design::Design& design_;
    const design::HookUp& hookUp_;
    const Fields& fields_;
    Nodes nodes_;
    Circuit circuit_;
    std::vector<VoltageLine> lines_;
    std::map<design::ItemIndex, std::string> reached_;
};

}  // namespace

Circuit circuit(const design::Design& design, const design::HookUp& hookUp, const Fields& fields) {
    return Assembler(design, hookUp, fields).assemble();
}

}  // namespace network
