// SPDX-License-Identifier: GPL-3.0-or-later
#include "units/fault.h"

#include <utility>

#include "units/characters.h"
#include "units/joined.h"

namespace units {

std::string sentence(const Fault& fault) {
    // On one line, and not longer than can be read: a name in a stranger's file may be as long as the file.
    constexpr std::size_t most = 600;  // bytes of each part
    return joined({oneLine(fault.place, most), ": found ", oneLine(fault.found, most), "; allowed is ",
                   oneLine(fault.allowed, most), "."});
}

void refuse(std::string place, std::string found, std::string allowed) {
    throw BadInput(Fault{std::move(place), std::move(found), std::move(allowed)});
}

}  // namespace units
