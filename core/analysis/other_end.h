// SPDX-License-Identifier: GPL-3.0-or-later
// What earthing the other end of a winding would do: often the largest change of all, since it decides which layer
// carries signal against its neighbours.
#pragma once

#include "analysis/change.h"

namespace analysis {

/// The design with one winding the other way round to earth.
struct OtherEnd {
    std::string words;  ///< "7 earthed instead of 6 (amplifier)", "S the other way round"
    design::DesignPtr design;
};

/// Every winding of a hook-up ("": the first) that has one end at earth. Where a port earths it, the port earths its
/// other terminal; where an earth of the hook-up does, the winding's start and finish change places, if nothing else is
/// joined to its live end. Balanced and floating windings have no other end.
[[nodiscard]] std::vector<OtherEnd> otherEnds(const design::Design& design, const std::string& hookUp);

/// What each of them would move.
struct OtherEndEffect {
    std::string words;
    std::vector<Move> moves;
};

/// Each solved anew, with the fields taken from `now`, which must be the design's answer to that hook-up. Empty if
/// `stop` was set meanwhile.
[[nodiscard]] std::vector<OtherEndEffect> otherEndEffects(const design::Design& design, const catalog::Catalog& shop,
                                                          const AnswerPtr& now, const std::stop_token& stop = {});

}  // namespace analysis
