// SPDX-License-Identifier: GPL-3.0-or-later
// How a value follows a standard normal deviate.
#pragma once

#include <vector>

#include "catalog/shop_tolerance.h"

namespace spread {

/// A distribution about a nominal value.
struct Law {
    catalog::Law kind = catalog::Law::Normal;
    double halfWidth = 0;  ///< as `catalog::ShopTolerance::plusMinus`
    bool relative = true;
    std::vector<catalog::StepChance> steps;  ///< rising; Discrete alone
    bool operator==(const Law&) const = default;

    /// The value at a deviate z: quantile of this law at the share below z. Normal: sigma is half of the half width.
    [[nodiscard]] double value(double nominal, double z) const noexcept;
    /// The deviate from the nominal in units of its standard deviation, mean 0 and variance 1 over all z: z itself for
    /// normal and lognormal laws. Standard deviations of uniform and triangular laws: half width over root 3, root 6.
    [[nodiscard]] double standard(double z) const noexcept;
    /// Standard deviation of the value; lognormal: nominal times that of the logarithm.
    [[nodiscard]] double deviation(double nominal) const noexcept;

private:
    [[nodiscard]] double step(double z) const noexcept;
};

/// Rising, with what is left to 1 at step 0.
[[nodiscard]] std::vector<catalog::StepChance> wholeSteps(std::vector<catalog::StepChance> steps);

}  // namespace spread
