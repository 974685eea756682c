// SPDX-License-Identifier: GPL-3.0-or-later
// What an edit did: which figures moved, and by how much, in words.
#pragma once

#include <string>
#include <vector>

#include "analysis/answer.h"

namespace analysis {

/// One figure that is not what it was, at the digits that its uncertainty deserves.
struct Move {
    std::string figure;  ///< "leakage_10kHz.P.S"
    std::string what;    ///< "leakage P–S"
    std::string before;  ///< "119 µH"; "none" where it does not occur
    std::string now;
    std::string by;  ///< "−19 %"; of levels the difference, "+0.4 dB"; "" where there is nothing to take it from
    bool operator==(const Move&) const = default;
};

/// Figures that an arrangement of windings moves: leakage of each pair, input capacitance of each port, −3 dB points,
/// peak. In that order; of the shown hook-up; of pairs and ports the one that moved most first. A figure that reads the
/// same at its own digits has not moved. Two answers of different hook-ups share no figures of a hook-up.
[[nodiscard]] std::vector<Move> moves(const Answer& before, const Answer& now);

/// "leakage P–S 119 → 96 µH (−19 %), −3 dB high 71 → 84 kHz (+18 %)"; "no figure moved".
[[nodiscard]] std::string sentence(const std::vector<Move>& moves);

/// `after` less `before` in words: in per cent, of levels in dB with the digits that `uncertainty` deserves. "" where
/// either does not occur, or `before` is nothing.
[[nodiscard]] std::string difference(units::Kind kind, double before, double after, double uncertainty);

}  // namespace analysis
