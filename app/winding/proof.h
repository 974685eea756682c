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
    std::string file;                ///< what sentences call the program
    std::vector<std::string> lines;  ///< the program's text
    replay::Machine machine;
    replay::Run run;
    coil::CoilBuild build;
    replay::Expected expected;
    int leg = 1;
    double wire = 0;                  ///< all strands, m
    std::vector<std::string> faults;  ///< what the machine would not do, then what differs from the design
};

/// Runs `text` on the machine that `winder` describes and compares it with the coil on `leg` of the design. Throws
/// units::BadInput for a text that is no program, a machine that is none, or a word that the machine does not know.
[[nodiscard]] Proof proven(const std::string& text, const std::string& file, const std::string& winder,
                           const std::string& winderFile, const design::Design& design, const catalog::Catalog& shop,
                           int leg);

/// The machine's remarks in words, "line 12: …" where they have a line.
[[nodiscard]] std::vector<std::string> remarkWords(const replay::Run& run);

/// "12 min 30 s"
[[nodiscard]] std::string timeText(double seconds);
/// Blocks, steps, turns, stops, and the cycle with units a day, in two sentences without a line's end.
[[nodiscard]] std::vector<std::string> runWords(const replay::Run& run, const replay::Machine& machine);

/// The legs that carry a section, ascending.
[[nodiscard]] std::vector<int> woundLegs(const design::Design& design);

/// The line of the program that a fault speaks of: "line 12", else the main block of the step it names, else 0.
[[nodiscard]] int lineOf(const Proof& proof, const std::string& fault);

}  // namespace winding
