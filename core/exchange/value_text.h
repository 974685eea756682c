// SPDX-License-Identifier: GPL-3.0-or-later
// A JSON value that another room made, as text.
#pragma once

#include <string>

#include "json/value.h"

namespace exchange {

/// The canonical text of a value whose numbers are finite.
[[nodiscard]] std::string valueText(const json::Value& value);

}  // namespace exchange
