// SPDX-License-Identifier: GPL-3.0-or-later
#include "learn/fault.h"

namespace learn {

std::string_view word(FaultKind kind) noexcept {
    switch (kind) {
        case FaultKind::None:
            return "no fault";
        case FaultKind::ShortedTurn:
            return "shorted turn";
        case FaultKind::SectionOrder:
            return "wrong section order";
        case FaultKind::Reversed:
            return "reversed section";
        case FaultKind::SwappedLeads:
            return "swapped leads";
        case FaultKind::MissingSheets:
            return "missing sheets";
        case FaultKind::WideGap:
            return "wide joint gap";
        case FaultKind::OpenShield:
            return "open shield";
        case FaultKind::WrongTurns:
            return "wrong turns";
        case FaultKind::WrongWire:
            return "wrong wire";
    }
    return "";
}

Unit Fault::at(const design::Design& unit, double size) const {
    Unit made{std::make_shared<design::Design>(unit), {}, {}, 0, {}};
    if (apply) apply(made, size);
    return made;
}

}  // namespace learn
