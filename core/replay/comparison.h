// SPDX-License-Identifier: GPL-3.0-or-later
// A program that was run, beside the design it is for: differences in words.
#pragma once

#include <string>
#include <vector>

#include "replay/expected.h"
#include "replay/run.h"

namespace replay {

struct Comparison {
    std::vector<std::string> differences;  ///< a sentence each; empty: the program winds the design
    double wire = 0;                       ///< wound, all strands, m
};

/// Compares step by step: turns exactly; the sense; every layer's turns; the guide within half a pitch of the wire's
/// middle at each block's ends; stops and wrapped pins; the wire's speed; flanges and pins in the guide's way.
[[nodiscard]] Comparison compare(const Run& run, const Expected& expected, const Machine& machine);

/// Where the guide would run against a flange or a pin, a sentence each.
[[nodiscard]] std::vector<std::string> collisions(const Run& run, const Surroundings& around, const Machine& machine);

}  // namespace replay
