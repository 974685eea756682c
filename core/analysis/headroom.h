// SPDX-License-Identifier: GPL-3.0-or-later
// How much level a hook-up takes, and what ends it.
#pragma once

#include <optional>

#include "analysis/distortion.h"
#include "analysis/stages.h"

namespace analysis {

/// Level at which a criterion is reached, at the point that the brief names.
struct MaximumLevel {
    double dbu = 0;              ///< infinite: no limit known
    const char* limit = "none";  ///< which criterion rules: "core saturation", "distortion", "source", "heating"
};

/// Level of the sine at f at which the core's peak flux density reaches the stack's saturation knee. The core's own
/// voltage is used, so source and winding resistance have had their share: V_turn = (2 pi/sqrt 2) f A B (Faraday),
/// referred to the source EMF, the driven or the observed terminals by the network. Direct currents shift the working
/// point. Computed with the small-signal network: optimistic by the inductance lost near the knee.
[[nodiscard]] double kneeLevel(const design::Design& design, const Solved& solved, const Answer::Stages& stages,
                               double kneeFlux, double frequency);

/// Flux density of the knee for this hook-up with its direct currents, T.
[[nodiscard]] double designKneeFlux(const design::Design& design, const Solved& solved, const Answer::Stages& stages);

/// The brief's criterion in one hook-up: the lowest of saturation knee, distortion (harmonic balance), the source's
/// greatest EMF, and heating, as far as they are asked for.
class LevelLimits {
public:
    /// `large` may be null where distortion is not asked for. Levels by distortion are made anew for each frequency,
    /// or, with `from` < `to`, at a few between which their distance to the knee runs straight in dB over log f.
    LevelLimits(const design::Design& design, const Solved& solved, const Answer::Stages& stages,
                const LargeSignal* large, double from = 0, double to = 0);
    [[nodiscard]] MaximumLevel at(double frequency) const;
    /// How the limits in force are computed.
    [[nodiscard]] std::string source() const;

private:
    struct Offset {
        double logFrequency = 0;
        double db = 0;  ///< of the level by distortion over that of the knee
    };
    [[nodiscard]] double distortionLevel(double frequency, double knee) const;
    [[nodiscard]] double distortionNear(double frequency, double knee) const;
    [[nodiscard]] double heatingEmf(double frequency) const;

    const design::Design& design_;
    const Solved& solved_;
    const Answer::Stages& stages_;
    const LargeSignal* large_;
    double kneeFlux_ = 0;
    double powerAllowed_ = 0;  // W, by alternating current
    std::vector<Offset> offsets_;
};

/// Loss that warms a unit of a surface, m2, by `rise` K:  rise = 450 (P / A)^0.826, W per cm2 (W. T. McLyman,
/// Transformer and Inductor Design Handbook, from memory). Natural convection, some 0.01 to 0.1 W/cm2.
[[nodiscard]] double lossForRise(double rise, double surface) noexcept;
/// Outer surface of stack and coil, m2: the stack's box and what the coils stand out of it on two sides.
[[nodiscard]] double surfaceOf(const coil::CoilBuild& build) noexcept;

/// True where the brief's maximum level needs the core's loop.
[[nodiscard]] bool asksForDistortion(const design::Design& design);

}  // namespace analysis
