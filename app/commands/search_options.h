// SPDX-License-Identifier: GPL-3.0-or-later
// What every kind of search takes from the command line, and tells on the way.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>

#include "commands/arguments.h"
#include "shop/prices.h"

namespace commands {

/// How many are to be kept; `usual` unless --keep says otherwise. Throws units::BadInput.
[[nodiscard]] std::size_t keptOf(const Arguments& arguments, std::size_t usual);
/// The shop's prices after --prices, or nothing. Throws units::BadInput.
[[nodiscard]] std::optional<shop::Prices> pricesOf(const Arguments& arguments);
/// How far a search is, for someone who waits before a terminal; nothing where standard error goes elsewhere. `what` is
/// counted: "designs".
[[nodiscard]] std::function<void(std::size_t)> toldOnATerminal(const std::string& what);

}  // namespace commands
