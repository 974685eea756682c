// SPDX-License-Identifier: GPL-3.0-or-later
// One figure of a sample as it was measured.
#pragma once

#include <string>

namespace spread {

struct FigureRead {
    std::string figure;  ///< as in an answer: "inductance_10Hz.P", "low_3dB@parallel"
    double value = 0;    ///< in the figure's SI unit
    double doubt = 0;    ///< half width within which the true value lies with 95 %, in the same unit; 0: not told
    bool operator==(const FigureRead&) const = default;
};

}  // namespace spread
