// SPDX-License-Identifier: GPL-3.0-or-later
// Curves read between their points.
#pragma once

#include <optional>
#include <vector>

namespace analysis {

/// The value at f > 0 by straight lines over the logarithm of `frequency`, which rises and has as many points as
/// `value`; nothing outside its ends.
[[nodiscard]] std::optional<double> between(const std::vector<double>& frequency, const std::vector<double>& value,
                                            double f) noexcept;

}  // namespace analysis
