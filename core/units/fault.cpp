// SPDX-License-Identifier: GPL-3.0-or-later
#include "units/fault.h"

namespace units {

std::string sentence(const Fault& fault) {
    return fault.place + ": found " + fault.found + "; allowed is " + fault.allowed + ".";
}

}  // namespace units
