// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/search_options.h"

#include <unistd.h>

#include <iostream>

#include "exchange/read_file.h"
#include "units/fault.h"
#include "units/text.h"

namespace commands {

std::size_t keptOf(const Arguments& arguments, std::size_t usual) {
    constexpr double most = 50;
    const std::string text = arguments.option("--keep");
    if (text.empty()) return usual;
    double read = 0;
    if (text.find_first_not_of("0123456789") == std::string::npos) read = units::read(units::Kind::Number, text);
    if (!(read >= 1) || read > most) refuse("--keep", '"' + text + '"', "a whole number from 1 to 50");
    return static_cast<std::size_t>(read);
}

std::optional<shop::Prices> pricesOf(const Arguments& arguments) {
    const std::string file = arguments.option("--prices");
    if (file.empty()) return {};
    return shop::readPrices(exchange::readFile(file), file);
}

std::function<void(std::size_t)> toldOnATerminal(const std::string& what) {
    if (isatty(STDERR_FILENO) == 0) return {};
    return [what](std::size_t tried) { std::cerr << '\r' << tried << ' ' << what << " computed " << std::flush; };
}

}  // namespace commands
