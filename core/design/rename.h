// SPDX-License-Identifier: GPL-3.0-or-later
// Renaming: everything that names a part goes on naming it.
#pragma once

#include <string>

#include "design/design.h"

namespace design {

// Each returns the design with the part called `to` and every reference to it carried along: sections, electrical
// order, direct currents, ends and taps, ports, straps, earths, and the figures, ports and hook-ups that promises and
// masks name. A part of that name must exist; renaming to the same name changes nothing. Throws units::BadInput, place
// "", where `to` is empty or another part already has it; what else a name must not be is said by `check`.

[[nodiscard]] DesignPtr renameWinding(const Design& d, const std::string& from, const std::string& to);
[[nodiscard]] DesignPtr renameSection(const Design& d, const std::string& winding, const std::string& from,
                                      const std::string& to);
/// A shield's name is a node of hook-ups: it must also differ from every terminal's, unless it comes out there.
[[nodiscard]] DesignPtr renameShield(const Design& d, const std::string& from, const std::string& to);
[[nodiscard]] DesignPtr renameTerminal(const Design& d, const std::string& from, const std::string& to);
[[nodiscard]] DesignPtr renamePort(const Design& d, const std::string& from, const std::string& to);
[[nodiscard]] DesignPtr renameHookUp(const Design& d, const std::string& from, const std::string& to);

}  // namespace design
