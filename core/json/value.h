// SPDX-License-Identifier: GPL-3.0-or-later
// The JSON value used everywhere: keys keep their order.
#pragma once

#include <nlohmann/json.hpp>

namespace json {
using Value = nlohmann::ordered_json;
}
