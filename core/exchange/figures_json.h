// SPDX-License-Identifier: GPL-3.0-or-later
// Figures as JSON, to be kept and read again.
#pragma once

#include <string>
#include <vector>

#include "json/value.h"
#include "units/figure.h"

namespace exchange {

/// One object a figure: name, value, unit, uncertainty, source, valid, why, hook_up, ports. What is not finite is null.
[[nodiscard]] json::Value figuresJson(const std::vector<units::Figure>& figures);
/// Reads them again; null becomes not-a-number. Throws units::BadInput with every fault; `file` names it.
[[nodiscard]] std::vector<units::Figure> readFigures(const json::Value& figures, const std::string& file);

}  // namespace exchange
