// SPDX-License-Identifier: GPL-3.0-or-later
// The choices a design makes out of a few, with their words in files.
#pragma once

#include <array>
#include <utility>

namespace design {

template <class Enum, std::size_t n>
using NameTable = std::array<std::pair<const char*, Enum>, n>;

/// Shell: one coil on the tongue, two windows.  TwoLeg: a coil on each leg, one window shared.
enum class CoreKind { Shell, TwoLeg };
constexpr NameTable<CoreKind, 2> names(CoreKind) {
    return {{{"shell", CoreKind::Shell}, {"two-leg", CoreKind::TwoLeg}}};
}

/// How sheets of several alloys follow each other in the stack.
enum class StackPattern { Blocks, Alternating };
constexpr NameTable<StackPattern, 2> names(StackPattern) {
    return {{{"blocks", StackPattern::Blocks}, {"alternating", StackPattern::Alternating}}};
}

enum class Joint { Interleaved, Butt };
constexpr NameTable<Joint, 2> names(Joint) {
    return {{{"interleaved", Joint::Interleaved}, {"butt", Joint::Butt}}};
}

/// How the turns of a section lie: in layers straight above each other, nested into the grooves, or wound wild.
enum class Lay { Layers, Nested, Random };
constexpr NameTable<Lay, 3> names(Lay) {
    return {{{"layers", Lay::Layers}, {"nested", Lay::Nested}, {"random", Lay::Random}}};
}

/// At which end of the chamber a section's first turn lies.
enum class End { Low, High };
constexpr NameTable<End, 2> names(End) {
    return {{{"low", End::Low}, {"high", End::High}}};
}

/// Whether layers go to and fro or every layer begins at the same end.
enum class Traverse { BackAndForth, SameSide };
constexpr NameTable<Traverse, 2> names(Traverse) {
    return {{{"back-and-forth", Traverse::BackAndForth}, {"same-side", Traverse::SameSide}}};
}

/// What a part-filled last layer does: keeps the pitch, or spreads over the width.
enum class LastLayer { Close, Spread };
constexpr NameTable<LastLayer, 2> names(LastLayer) {
    return {{{"close", LastLayer::Close}, {"spread", LastLayer::Spread}}};
}

/// How the sections of a winding are joined.
enum class Connection { Series, Parallel };
constexpr NameTable<Connection, 2> names(Connection) {
    return {{{"series", Connection::Series}, {"parallel", Connection::Parallel}}};
}

/// A Faraday shield is a foil whose overlap is insulated, or an open winding with one end earthed.
enum class ShieldForm { Foil, Winding };
constexpr NameTable<ShieldForm, 2> names(ShieldForm) {
    return {{{"foil", ShieldForm::Foil}, {"winding", ShieldForm::Winding}}};
}

/// What a hook-up does with a port: drives it, looks at it, or only terminates it.
enum class Role { Drive, Observe, Load };
constexpr NameTable<Role, 3> names(Role) {
    return {{{"drive", Role::Drive}, {"observe", Role::Observe}, {"load", Role::Load}}};
}

/// How a port's network stands to earth: its middle earthed, not at all, or its minus or plus side earthed.
enum class Earthing { Balanced, Floating, MinusEarthed, PlusEarthed };
constexpr NameTable<Earthing, 4> names(Earthing) {
    return {{{"balanced", Earthing::Balanced},
             {"floating", Earthing::Floating},
             {"minus-earthed", Earthing::MinusEarthed},
             {"plus-earthed", Earthing::PlusEarthed}}};
}

/// Whether a drive's EMF stands between the two terminals or on both alike (balanced ports only).
enum class Mode { Differential, Common };
constexpr NameTable<Mode, 2> names(Mode) {
    return {{{"differential", Mode::Differential}, {"common", Mode::Common}}};
}

/// Field of the turn's part outside the window: `Beyond`: tongue as one iron plane, open beyond; `Walled`: window
/// walls all round the turn.
enum class Ends { Beyond, Walled };
constexpr NameTable<Ends, 2> names(Ends) {
    return {{{"beyond", Ends::Beyond}, {"walled", Ends::Walled}}};
}

/// At which point a stated level is meant.
enum class LevelAt { Emf, Input, Output };
constexpr NameTable<LevelAt, 3> names(LevelAt) {
    return {{{"emf", LevelAt::Emf}, {"input", LevelAt::Input}, {"output", LevelAt::Output}}};
}

}  // namespace design
