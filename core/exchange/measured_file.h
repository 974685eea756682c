// SPDX-License-Identifier: GPL-3.0-or-later
// A measured file of any form that is known, as curves of a hook-up.
#pragma once

#include <string>
#include <string_view>

#include "design/hook_up.h"
#include "exchange/measured_table.h"

namespace exchange {

/// By its name: .s1p, .s2p, … and .ts are Touchstone, everything else a table.
[[nodiscard]] bool isTouchstone(const std::string& path);

/// A Touchstone file put into the hook-up, with the impedance at the port of that name ("" the driven one), or a table
/// read as guessed with what is wished. Throws units::BadInput.
[[nodiscard]] MeasuredTable readMeasuredFile(std::string_view text, const std::string& path,
                                             const design::HookUp& hookUp, const std::string& impedanceAt,
                                             const PickingWish& wish);

}  // namespace exchange
