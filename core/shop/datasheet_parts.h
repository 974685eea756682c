// SPDX-License-Identifier: GPL-3.0-or-later
// The parts that a datasheet is made of. For the room's own sources.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "shop/datasheet.h"

namespace shop {

/// A winding or a part of one that begins and ends at terminals.
struct Piece {
    std::string winding;
    std::string start, finish;
    bool inPhase = true;  ///< start carries the dot
    std::vector<SchematicTap> taps;
};
[[nodiscard]] std::vector<Piece> piecesOf(const design::Design& design, const design::Winding& winding);

/// What a winding is to the customer, by winding name.
struct WindingRole {
    std::string title;  ///< "primary", "secondary 2"
    std::string port;
    bool driven = false;
};
[[nodiscard]] std::map<std::string, WindingRole> windingRoles(const design::Design& design,
                                                              const design::HookUp& hookUp, const Words& say = {});

[[nodiscard]] Schematic schematicOf(const design::Design& design, const design::HookUp& hookUp, const Words& say = {});
[[nodiscard]] std::vector<PinoutRow> pinoutOf(const design::Design& design, const Schematic& schematic,
                                              const Manner& manner);
[[nodiscard]] Outline outlineOf(const design::Design& design, const catalog::Catalog& shop);
[[nodiscard]] std::vector<ValueRow> agreedLimits(const design::Design& design,
                                                 const std::map<std::string, WindingRole>& roles, const Manner& manner);
/// One promise, or mask on the response, of the brief as a customer reads it; without words where he does not.
[[nodiscard]] ValueRow promiseRow(const design::Design& design, int index,
                                  const std::map<std::string, WindingRole>& roles, const Manner& manner);
[[nodiscard]] ValueRow maskRow(const design::Design& design, int index, const Manner& manner);
[[nodiscard]] std::vector<ValueRow> typicalValues(const design::Design& design, const analysis::Answer& answer,
                                                  const std::map<std::string, WindingRole>& roles, const Words& say);
[[nodiscard]] std::vector<Chart> chartsOf(const design::Design& design, const analysis::Answer& answer,
                                          const Words& say);
/// What hangs on a port, in words: "150 Ω source, balanced".
[[nodiscard]] std::string portWords(const design::PortUse& use, const Words& say);
[[nodiscard]] std::vector<std::pair<std::string, std::vector<std::string>>> notesOf(const design::Design& design,
                                                                                    const design::HookUp& hookUp,
                                                                                    const Datasheet& sheet);
/// A figure in the words of the sheet, "Leakage inductance, 10 kHz, P to S"; its name where the sheet has none.
[[nodiscard]] std::string figureWords(const std::string& figure);
/// `text` with a capital letter in front.
[[nodiscard]] std::string capital(std::string text);

}  // namespace shop
