// SPDX-License-Identifier: GPL-3.0-or-later
// Windings between terminals, what each is to the customer, and what each terminal does.
#include <algorithm>
#include <cmath>

#include "shop/datasheet_parts.h"
#include "units/text.h"

namespace shop {

namespace {

bool isTerminal(const design::Design& design, const std::string& node) {
    return std::any_of(design.terminals.begin(), design.terminals.end(),
                       [&](const design::Terminal& t) { return t.name == node; });
}

/// A piece while its sections are being added.
struct Growing {
    Piece piece;
    double from = 0, length = 0, net = 0;  ///< turns: along the conductor, and with sign
    std::vector<std::pair<std::string, double>> marks;
};

Piece finished(const Growing& growing, const design::Winding& winding) {
    Piece piece = growing.piece;
    piece.inPhase = growing.net >= 0;
    auto marks = growing.marks;
    for (const design::Tap& tap : winding.taps)
        if (tap.turns > growing.from && tap.turns < growing.from + growing.length)
            marks.emplace_back(tap.terminal, tap.turns - growing.from);
    std::stable_sort(marks.begin(), marks.end(), [](const auto& a, const auto& b) { return a.second < b.second; });
    for (const auto& [terminal, turns] : marks) piece.taps.push_back({terminal, turns / growing.length});
    return piece;
}

/// Nodes that are one and the same from outside: joined by the hook-up's straps; `earthed` are those at earth.
class Joined {
public:
    Joined(const design::Design& design, const design::HookUp& hookUp) : design_(design) {
        for (const auto& strap : hookUp.straps)
            for (const std::string& node : strap) join(node, strap.front());
        for (const std::string& node : hookUp.earths) join(node, "earth");
    }
    [[nodiscard]] std::string of(const std::string& name) const {
        std::string node = design::nodeOf(design_, name);
        if (node.empty()) node = name;
        for (auto it = to_.find(node); it != to_.end(); it = to_.find(node)) node = it->second;
        return node;
    }
    [[nodiscard]] bool earthed(const std::string& name) const { return of(name) == of("earth"); }

private:
    void join(const std::string& a, const std::string& b) {
        const std::string one = of(a), other = of(b);
        if (one != other) to_[one] = other;
    }
    const design::Design& design_;
    std::map<std::string, std::string> to_;
};

/// Whether two pieces meet at a point that is not earth, or the piece touches the node.
bool touches(const Joined& joined, const Piece& piece, const std::string& node) {
    if (joined.earthed(node)) return false;
    return joined.of(piece.start) == joined.of(node) || joined.of(piece.finish) == joined.of(node);
}

/// Windings that a port reaches through straps and through each other, earth left out.
std::vector<std::string> reached(const Joined& joined, const std::vector<Piece>& pieces, const design::Port& port) {
    std::vector<std::string> nodes{port.plus, port.minus}, found;
    for (std::size_t k = 0; k < nodes.size(); ++k)
        for (const Piece& piece : pieces)
            if (touches(joined, piece, nodes[k]) &&
                std::find(found.begin(), found.end(), piece.winding) == found.end()) {
                found.push_back(piece.winding);
                for (const Piece& other : pieces)
                    if (other.winding == piece.winding) nodes.insert(nodes.end(), {other.start, other.finish});
            }
    return found;
}

/// "inner shield", "shield SH".
std::string shieldWords(const SchematicShield& shield, const Words& say) {
    return shield.name.find("shield") == std::string::npos ? say("shield %1", {shield.name}) : shield.name;
}

/// A usual colour in the paper's language; any other as it is called.
std::string colourWords(const std::string& colour, const Words& say) {
    for (const char* one :
         {"black", "brown", "red", "orange", "yellow", "green", "blue", "violet", "grey", "white", "pink", "turquoise"})
        if (colour == one) return say(one);
    return colour;
}

void number(std::map<std::string, WindingRole>& roles, const design::Design& design, const std::string& title) {
    int all = 0, count = 0;
    for (const auto& [name, role] : roles) all += role.title == title;
    if (all < 2) return;
    for (const design::Winding& winding : design.windings)
        if (WindingRole& role = roles[winding.name]; role.title == title) role.title += " " + std::to_string(++count);
}

}  // namespace

std::vector<Piece> piecesOf(const design::Design& design, const design::Winding& winding) {
    std::vector<Piece> pieces;
    std::optional<Growing> growing;
    double along = 0;
    const auto sections = design::sectionsOf(design, winding);
    const bool parallel = winding.connection == design::Connection::Parallel;
    for (std::size_t k = 0; k < sections.size(); ++k) {
        const design::Section& section = *sections[k];
        const design::SectionEnds ends = design::sectionEnds(design, section);
        if (parallel) {
            const auto same = [&](const Piece& p) { return p.start == ends.start && p.finish == ends.finish; };
            if (std::none_of(pieces.begin(), pieces.end(), same)) {
                const double turns = section.turns;
                const Growing one{
                    {winding.name, ends.start, ends.finish, true, {}}, 0, turns, section.reversed ? -turns : turns, {}};
                pieces.push_back(finished(one, winding));
            }
            continue;
        }
        if (!growing) growing = Growing{{winding.name, ends.start, {}, true, {}}, along, 0, 0, {}};
        growing->length += section.turns;
        growing->net += section.reversed ? -section.turns.value : section.turns.value;
        along += section.turns;
        const bool last = k + 1 == sections.size();
        const bool goesOn = !last && design::sectionEnds(design, *sections[k + 1]).start == ends.finish;
        if (goesOn && isTerminal(design, ends.finish)) growing->marks.emplace_back(ends.finish, growing->length);
        if (goesOn) continue;
        growing->piece.finish = ends.finish;
        pieces.push_back(finished(*growing, winding));
        growing.reset();
    }
    return pieces;
}

std::map<std::string, WindingRole> windingRoles(const design::Design& design, const design::HookUp& hookUp,
                                                const Words& say) {
    const Joined joined(design, hookUp);
    std::vector<Piece> pieces;
    for (const design::Winding& winding : design.windings)
        for (Piece& piece : piecesOf(design, winding)) pieces.push_back(std::move(piece));
    std::map<std::string, WindingRole> roles;
    const auto give = [&](const std::string& portName, bool driven) {
        const design::Port* port = design::port(design, portName);
        if (!port) return;
        for (const std::string& winding : reached(joined, pieces, *port))
            roles.try_emplace(winding, WindingRole{say(driven ? "primary" : "secondary"), port->name, driven});
    };
    for (const bool driven : {true, false})
        for (const design::PortUse& use : hookUp.ports)
            if ((use.role == design::Role::Drive) == driven) give(use.port, driven);
    for (const design::Port& port : design.ports) give(port.name, false);
    for (const design::Winding& winding : design.windings)
        roles.try_emplace(winding.name, WindingRole{say("winding"), "", false});
    for (const char* title : {"primary", "secondary", "winding"}) number(roles, design, say(title));
    return roles;
}

Schematic schematicOf(const design::Design& design, const design::HookUp& hookUp, const Words& say) {
    Schematic schematic;
    const auto roles = windingRoles(design, hookUp, say);
    for (const design::Winding& winding : design.windings) {
        const auto pieces = piecesOf(design, winding);
        const WindingRole& role = roles.at(winding.name);
        for (std::size_t k = 0; k < pieces.size(); ++k)
            schematic.windings.push_back(
                {pieces.size() > 1 ? say("%1 part %2", {role.title, std::to_string(k + 1)}) : role.title, role.port,
                 role.driven, pieces[k].start, pieces[k].finish, pieces[k].inPhase, pieces[k].taps});
    }
    for (const design::Place& place : design.coil)
        for (const design::Item& item : place.order)
            if (const design::Shield* s = item.shield())
                schematic.shields.push_back({s->name, s->terminal.empty() ? s->name : s->terminal});
    // Not in the order of the coil, which is nobody's matter outside.
    std::sort(schematic.shields.begin(), schematic.shields.end(),
              [](const auto& a, const auto& b) { return a.name < b.name; });
    const Joined joined(design, hookUp);
    const auto noteEarth = [&](const std::string& node) {
        if (joined.earthed(node) &&
            std::find(schematic.earthed.begin(), schematic.earthed.end(), node) == schematic.earthed.end())
            schematic.earthed.push_back(node);
    };
    for (const design::Terminal& terminal : design.terminals) noteEarth(terminal.name);
    for (const SchematicShield& shield : schematic.shields) noteEarth(shield.terminal);
    noteEarth("core");
    for (const design::HookUp& any : design.hookUps) {
        const auto hasCore = [](const std::vector<std::string>& nodes) {
            return std::find(nodes.begin(), nodes.end(), "core") != nodes.end();
        };
        schematic.coreReachable = schematic.coreReachable || hasCore(any.earths) ||
                                  std::any_of(any.straps.begin(), any.straps.end(), hasCore);
    }
    return schematic;
}

std::vector<PinoutRow> pinoutOf(const design::Design& design, const Schematic& schematic, const Manner& manner) {
    const Words& say = manner.say();
    std::vector<PinoutRow> rows;
    const auto add = [](PinoutRow& row, const std::string& words) {
        row.function += (row.function.empty() ? "" : ", ") + words;
    };
    for (const design::Terminal& terminal : design.terminals) {
        PinoutRow row{terminal.name, {}, {}, false};
        row.where = terminal.pin > 0 ? say("pin %1", {std::to_string(terminal.pin)})
                    : terminal.leadColour.empty() && terminal.leadLength <= 0 ? say("terminal")
                    : terminal.leadColour.empty()                             ? say("lead")
                                                  : say("%1 lead", {colourWords(terminal.leadColour, say)});
        if (terminal.pin == 0 && terminal.leadLength > 0)
            row.where += ", " + say.number(manner.in.exact(terminal.leadLength));
        for (const SchematicWinding& winding : schematic.windings) {
            if (winding.start == terminal.name) add(row, say("%1 start", {winding.title}));
            if (winding.finish == terminal.name) add(row, say("%1 finish", {winding.title}));
            row.dot = row.dot || (winding.dotAtStart ? winding.start : winding.finish) == terminal.name;
            for (const SchematicTap& tap : winding.taps)
                if (tap.terminal == terminal.name)
                    add(row,
                        say("%1 tap, %2 % from start", {winding.title, std::to_string(std::lround(100 * tap.share))}));
        }
        for (const SchematicShield& shield : schematic.shields)
            if (shield.terminal == terminal.name) add(row, shieldWords(shield, say));
        if (row.function.empty()) row.function = say("not connected");
        rows.push_back(std::move(row));
    }
    const auto listed = [&](const std::string& name) {
        return std::any_of(rows.begin(), rows.end(), [&](const PinoutRow& r) { return r.terminal == name; });
    };
    for (const SchematicShield& shield : schematic.shields)
        if (!listed(shield.terminal)) rows.push_back({shield.name, say("lead"), say("shield"), false});
    if (schematic.coreReachable && !listed("core")) rows.push_back({"core", say("core"), say("core earth"), false});
    return rows;
}

}  // namespace shop
