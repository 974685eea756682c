// SPDX-License-Identifier: GPL-3.0-or-later
// Which part of a design governs a figure: each quantity moved a little, the figure solved anew, the movements ranked.
#pragma once

#include <optional>

#include "analysis/answer.h"

namespace analysis {

/// One quantity of the design that can be moved, with the part it belongs to.
struct Lever {
    std::string words;                      ///< "turns of S.a", "insulation 3", "wire of P", "stack height"
    std::optional<design::ItemIndex> item;  ///< section, insulation or shield; else:
    std::string winding;                    ///< by name; "" with no item: the core
    design::DesignPtr more, less;           ///< the design with the quantity a `step` up and down
    double step = 0.01;                     ///< relative; turns move by whole ones
};

/// Everything of a checked design that moves continuously and is not nothing: turns of each section, thickness of each
/// insulation and interlayer paper, wire of each winding (bare and overall alike), stack height, gap, permeability
/// factor of each alloy. A change that `design::check` refuses is left out.
[[nodiscard]] std::vector<Lever> levers(const design::Design& design, const catalog::Catalog& shop);

/// How far a lever moves a figure.
struct Pull {
    Lever lever;
    double share = 0;  ///< for 1 % more: relative; of levels in dB
    bool operator<(const Pull& other) const noexcept;
};

/// All levers of a figure by how far they move it, the strongest first; those that do not move it are left out. The
/// figure is named as in `now` ("high_3dB_first", "gain_1kHz@bridged"). Central difference of two solves a lever,
/// fields taken from `now` where they are the same. Where a turn more begins another layer the step is part of the
/// result, as it would be on the bench. Empty if there is no such figure, or `stop` was set.
[[nodiscard]] std::vector<Pull> pulls(const design::Design& design, const catalog::Catalog& shop, const AnswerPtr& now,
                                      const std::string& figure, const std::stop_token& stop = {});

/// Where on a trace: of its first curve, as a mask limits it (a response re its value at 1 kHz).
struct Spot {
    std::string trace;
    double frequency = 0;  ///< Hz
};
/// The same for a spot of a trace over frequency of the hook-up that `now` shows.
[[nodiscard]] std::vector<Pull> pulls(const design::Design& design, const catalog::Catalog& shop, const AnswerPtr& now,
                                      const Spot& spot, const std::stop_token& stop = {});

/// "moved most by turns of S.a (1 % more: −1.9 %), insulation 3 (+0.8 %)"; at most `count`.
[[nodiscard]] std::string sentence(const std::vector<Pull>& pulls, units::Kind kind, std::size_t count = 3);

}  // namespace analysis
