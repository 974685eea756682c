// SPDX-License-Identifier: GPL-3.0-or-later
// What is timed: the reference coils, the demo designs, and coils of many layers made from one of them.
#pragma once

#include <string>
#include <vector>

#include "catalog/catalog.h"
#include "design/design.h"

namespace benchmarks {

struct Subject {
    std::string name;
    design::DesignPtr design;
};

/// The shipped catalog, read once.
[[nodiscard]] const catalog::Catalog& shop();

/// Every .coilwright file of demo-projects, sorted by path.
[[nodiscard]] std::vector<Subject> demoDesigns();
/// Every .coilwright file of tests/references, the demo designs, then coils of 16, 24, 32, 64 and 128 layers.
[[nodiscard]] std::vector<Subject> subjects();

/// The design with `by` turns more in its first section.
[[nodiscard]] design::DesignPtr withTurns(const design::Design& design, double by);

}  // namespace benchmarks
