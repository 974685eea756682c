// SPDX-License-Identifier: GPL-3.0-or-later
// What a design rests on that a customer must say, and whether it was said.
#pragma once

#include <string>
#include <vector>

#include "design/design.h"

namespace design {

/// One point of the check-list.
struct Point {
    std::string subject;   ///< "climate"; what `Said::subject` names
    std::string question;  ///< to the customer
    std::string why;       ///< what hangs on the answer
    std::string said;      ///< what the design shows or the customer said; empty: open
};

/// Every point in the order of asking (the list is common practice, no source). A point is answered by what the brief,
/// the first hook-up and the conditions show, or by words in `brief.said` under its subject, which rule.
[[nodiscard]] std::vector<Point> points(const Design& design);

/// Those that are open.
[[nodiscard]] std::vector<Point> unsaid(const Design& design);

}  // namespace design
