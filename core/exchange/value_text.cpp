// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/value_text.h"

#include "json/text.h"

namespace exchange {

std::string valueText(const json::Value& value) {
    return json::write(value);
}

}  // namespace exchange
