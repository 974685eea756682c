// SPDX-License-Identifier: GPL-3.0-or-later
// A winding program, run and held against the design it is for.
#pragma once

#include <string>
#include <vector>

#include "design/design.h"
#include "replay/comparison.h"
#include "replay/run.h"

namespace winding {

/// What was found, all of it a value.
struct Proof {
    std::vector<std::string> lines;  ///< the program's text, where it is shown
    replay::Machine machine;
    replay::Run run;
    coil::CoilBuild build;
    replay::Expected expected;
    int leg = 1;
    double wire = 0;                  ///< all strands, m
    std::vector<std::string> faults;  ///< what the machine would not do, then what differs from the design
};

/// What was run on `machine`, held against the coil on `leg` of the design.
[[nodiscard]] Proof proven(replay::Run run, const replay::Machine& machine, const design::Design& design,
                           const catalog::Catalog& shop, int leg);

/// A text line by line, without the lines' ends.
[[nodiscard]] std::vector<std::string> linesOf(const std::string& text);

/// The machine's remarks in words, "line 12: …" where they have a line.
[[nodiscard]] std::vector<std::string> remarkWords(const replay::Run& run);

/// "12 min 30 s"
[[nodiscard]] std::string timeText(double seconds);
/// Blocks, steps, turns, stops, and the cycle with units a day, in two sentences without a line's end.
[[nodiscard]] std::vector<std::string> runWords(const replay::Run& run, const replay::Machine& machine);

/// The legs that carry a section, ascending.
[[nodiscard]] std::vector<int> woundLegs(const design::Design& design);

/// "as it is laid out", or what of it alone a run on this machine can show: the guide of some is the winder's hand.
[[nodiscard]] std::string provenWords(const replay::Machine& machine);

/// The line of the program that a fault speaks of: "line 12", else the main block of the step it names, else 0.
[[nodiscard]] int lineOf(const Proof& proof, const std::string& fault);

}  // namespace winding
