// SPDX-License-Identifier: GPL-3.0-or-later
#include "coil/mean_turn.h"

#include <numbers>

namespace coil {

double turnLength(double tongue, double stack, double wallAndClearance, double cornerRadius, double x) noexcept {
    return 2 * (tongue + stack) + 8 * wallAndClearance - 8 * cornerRadius +
           2 * std::numbers::pi * (cornerRadius + x - wallAndClearance);
}

}  // namespace coil
