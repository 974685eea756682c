// SPDX-License-Identifier: GPL-3.0-or-later
// Taking over a part of another design.
#pragma once

#include <string>
#include <vector>

#include "design/design.h"

namespace design {

/// What can be taken over whole. `Copies`: of catalog entries that both designs carry with different content.
enum class Share {
    Brief,
    Core,
    Bobbin,
    Terminals,
    Winding,
    Section,
    Shield,
    Coil,
    Filling,
    Fittings,
    Ports,
    HookUp,
    Conditions,
    Assumptions,
    Copies
};
struct Portion {
    Share share = Share::Core;
    std::string name;  ///< of a winding, section ("P.a"), shield or hook-up; else ""
    bool operator==(const Portion&) const = default;
    [[nodiscard]] std::string words() const;  ///< "winding P", "the core"
};

/// Every portion in which `from` differs from `into`, in the order a design is thought. Sections and shields stand
/// alone where both have one of that name with other fields; the coil where anything of it differs.
[[nodiscard]] std::vector<Portion> differingPortions(const Design& into, const Design& from);

/// `into` with that portion of `from`, and with the copies of catalog entries that `from` has and `into` has not. A
/// winding or hook-up that `from` has not is taken away. The result may have faults (a section of a winding that is not
/// there): `check` tells.
[[nodiscard]] DesignPtr withPortion(const Design& into, const Design& from, const Portion& portion);

}  // namespace design
