// SPDX-License-Identifier: GPL-3.0-or-later
// Which of the trials are shown. For the room's own sources.
#pragma once

#include "seek/trials.h"

namespace seek {

/// Places in `trials` of those worth showing, at most `keep`: of those that keep every promise the cheapest, the
/// smallest and the strongest, then those that none beats in cost, size and weakest margin at once, others first that
/// have another core or order than those taken. If none keeps all, the nearest to it, of each core and order one.
[[nodiscard]] std::vector<std::size_t> chosen(const std::vector<Trial>& trials, std::size_t keep);

/// What each gives up against the best of all in cost, size, distortion and margin.
void sayWhatIsGivenUp(std::vector<Candidate>& candidates);

}  // namespace seek
