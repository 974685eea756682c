// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/fitting_step.h"

#include <algorithm>

#include "shop/sheet_words.h"
#include "units/joined.h"
#include "units/text.h"

namespace shop {

using units::joined;

namespace {

std::string pieceWords(const PieceUse& use) {
    std::string words = joined({counted(use.count, use.form), ": ", use.title});
    if (use.mass > 0) words += ", " + units::write(units::Kind::Mass, use.mass);
    words += ". Lot: ____________";
    if (use.insulated && use.conducts)
        words += use.form == "bolt" ? ". In a bush and with a washer that insulate it from sheets and frame."
                                    : ". With a bush, washer or gap that breaks its loop.";
    return words;
}

}  // namespace

FinishingStep fittingStep(const Materials& materials) {
    FinishingStep step{"", fittingTitle, {}};
    const auto& pieces = materials.pieces;
    if (pieces.empty()) return step;
    const auto any = [&](const auto& is) { return std::any_of(pieces.begin(), pieces.end(), is); };
    for (const PieceUse& use : pieces) step.words.push_back(pieceWords(use));
    if (any([](const PieceUse& use) { return use.insulated && use.conducts; }))
        step.words.emplace_back(
            "Ohmmeter between every insulated part and the core: open. A part that touches closes a shorted turn.");
    if (any([](const PieceUse& use) { return use.conducts; }))
        step.words.emplace_back(
            "Measure the inductance of the first winding before and after: a loop round a leg takes it away.");
    if (any([](const PieceUse& use) { return use.form == "bolt" || use.form == "clamp" || use.form == "frame"; }))
        step.words.emplace_back(
            "Tighten by hand until the sheets are silent, no further: pressure costs permeability.");
    if (any([](const PieceUse& use) { return use.form == "can"; }))
        step.words.emplace_back(
            "Can: no blow, no bend, no drill after its anneal. Lid tight all round, leads through their own hole.");
    if (any([](const PieceUse& use) { return use.form == "cup"; }))
        step.words.emplace_back("Cup: unit centred in it, pins up and level, before it is filled.");
    return step;
}

}  // namespace shop
