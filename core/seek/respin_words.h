// SPDX-License-Identifier: GPL-3.0-or-later
// A re-spin in words.
#pragma once

#include <string>
#include <vector>

#include "seek/respin.h"

namespace seek {

/// "−3 dB low (normal): at most 20 Hz: 24.1 Hz, broken"
[[nodiscard]] std::string promiseWords(const analysis::PromiseState& promise);
/// "turns: turns of P"
[[nodiscard]] std::string headWords(const Respin& respin);
/// Every difference, what the `broken` promises come to, the weakest one, and each line of paper that is altered, a
/// line each; those of paper are indented.
[[nodiscard]] std::vector<std::string> respinWords(const Respin& respin,
                                                   const std::vector<analysis::PromiseState>& broken);

}  // namespace seek
