// SPDX-License-Identifier: GPL-3.0-or-later
// How much flux leaks from yoke to yoke of a two-leg core when the coils of its legs work against each other.
#pragma once

namespace field {

/// Outline of a two-leg core, m: legs and yokes of one width each, window w x h, stack depth.
struct TwoLegOutline {
    double leg = 0, yoke = 0, windowWidth = 0, windowHeight = 0, stack = 0;
    bool operator==(const TwoLegOutline&) const = default;
};

/// Inductance over mu0, m, of one turn's worth of ampere-turns on one leg against as many on the other, each spread as
/// a thin sheet over its leg's surface from yoke to yoke: all air round the core, the window too.
///
/// The core is a body of given magnetic potential: +-1/2 on the yokes, linear along the legs' surfaces; a layer of
/// charge on it makes that potential (first-kind integral equation, flat panels, an eighth of the surface; any text on
/// boundary elements). The field that the layer has inside the legs, leg x stack / h each, is taken off. Against finite
/// elements in space (tests/references/legs.json): within 3 %.
[[nodiscard]] double yokeToYoke(const TwoLegOutline& core);

}  // namespace field
