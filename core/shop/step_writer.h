// SPDX-License-Identifier: GPL-3.0-or-later
// Puts the items of a coil into the words of a winding sheet. For the room's own sources.
#pragma once

#include <map>
#include <string>

#include "coil/hand.h"
#include "shop/lengths.h"
#include "shop/winding_sheet.h"

namespace shop {

class StepWriter {
public:
    StepWriter(const design::Design& design, const coil::CoilBuild& build, const catalog::Catalog& shop,
               const Lengths& in);

    /// To be called in winding order: a check of a whole winding stands in the step that completes it.
    [[nodiscard]] WindingStep barrier(const design::ItemIndex& at, const design::Barrier& barrier) const;
    [[nodiscard]] WindingStep shield(const design::ItemIndex& at, const design::Shield& shield) const;
    [[nodiscard]] WindingStep hand(const design::ItemIndex& at, const coil::Hand& hand);

private:
    [[nodiscard]] WindingStep begun(const design::ItemIndex& at, StepKind kind, const std::string& title) const;
    [[nodiscard]] std::string wireWords(const coil::HandWire& wire) const;
    [[nodiscard]] std::string layWords(const coil::Hand& hand) const;
    [[nodiscard]] std::string roomWords(const design::ItemIndex& at, double low, double high) const;
    [[nodiscard]] std::string plyWords(const design::Ply& ply, double width, double from, double to) const;
    [[nodiscard]] std::string endWords(const coil::HandWire& wire, bool start) const;
    [[nodiscard]] std::string innerEndWords(const coil::HandWire& wire, bool start) const;
    [[nodiscard]] std::string terminalWords(const design::Terminal& terminal, const coil::HandWire& wire,
                                            bool atLow) const;
    [[nodiscard]] std::string leadWords(const std::string& terminal) const;
    [[nodiscard]] std::string tapWords(const design::Section& section, const std::string& name) const;
    [[nodiscard]] bool acrossFrom(int pin, bool atLow) const;
    void addLayers(const coil::Hand& hand, WindingStep& step) const;
    void addActions(const coil::Hand& hand, WindingStep& step) const;
    void addChecks(const coil::HandWire& wire, WindingStep& step);
    [[nodiscard]] double chamberWidth(const design::ItemIndex& at) const;

    const design::Design& design_;
    const coil::CoilBuild& build_;
    const catalog::Catalog& shop_;
    Lengths in_;
    const catalog::Bobbin* bobbin_;
    std::map<std::string, int> sequence_;  ///< of every section, by its label
    std::map<std::string, int> wound_;     ///< sections of a winding that are done
};

}  // namespace shop
