// SPDX-License-Identifier: GPL-3.0-or-later
// What is done after winding: soldering, tests before the core, lamination, varnish or potting, label, packing.
#pragma once

#include <string>
#include <vector>

#include "shop/lengths.h"
#include "shop/materials.h"

namespace shop {

/// One job of finishing, with what there is to do.
struct FinishingStep {
    std::string number;  ///< "F1"
    std::string title;
    std::vector<std::string> words;
    bool operator==(const FinishingStep&) const = default;
};

/// One block of the stack, from the board side up.
struct StackBlock {
    std::string alloy;
    double thickness = 0, height = 0;  ///< of a sheet; of the block closed, m
    int count = 0;
    double mass = 0;  ///< kg
    bool operator==(const StackBlock&) const = default;
};

struct Finishing {
    std::string outline;  ///< of a sheet, in mm
    std::vector<StackBlock> stack;
    double closedHeight = 0;  ///< m
    std::vector<FinishingStep> steps;
    std::vector<std::string> cautions;
    bool operator==(const Finishing&) const = default;
};

[[nodiscard]] Finishing finishing(const design::Design& design, const Materials& materials,
                                  const catalog::Catalog& shop, const Lengths& in = {});

/// What can hurt in this work, in plain words. Defers to local rules, safety sheets and licensed practice.
[[nodiscard]] std::vector<std::string> cautions();
/// Those of them that concern measuring a unit.
[[nodiscard]] std::vector<std::string> testCautions();

}  // namespace shop
