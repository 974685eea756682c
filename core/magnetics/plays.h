// SPDX-License-Identifier: GPL-3.0-or-later
// Hysteresis as a continuum of friction elements ("plays") that follow an input with slack.
#pragma once

#include <vector>

#include "magnetics/monotone_curve.h"

namespace magnetics {

/// A share w0 that follows at once and plays of slack radius r with weight density w(r) = c exp(-(r/rho)^2):
///
///     u = w0 v + integral_0^infinity w(r) p_r[v] dr,   w0 + integral w dr = 1,
///     p_r = min(v + r, max(v - r, p_r before))
///
/// (play operator, M. A. Krasnoselskii and A. V. Pokrovskii, Systems with Hysteresis, 1983, from memory; plays and
/// Rayleigh's law: Review of Play and Preisach Models, Materials 16 (2023) 2422, abstract seen). From rest u = U(v),
/// U'' = w; after a reversal at (v1, u1)  u = u1 +- 2 U(|v - v1| / 2)  until the branch before closes: reversal points
/// are remembered and wiped out exactly, no play is stored. Weights are positive, so every loop runs the lossy way
/// round. Near rest w is constant: Rayleigh's law exactly, the shape of the tail is our own (no source).
class Plays {
public:
    Plays() = default;  ///< none: u = v
    /// Plays with mean slack integral w r dr = `slack` (the half-width of a wide loop in v) and c / (2 w0) = `ratio`:
    /// in Rayleigh's law ratio = nu / mu_i. Both > 0. Then rho = sqrt(2 slack / c) and w0 = s^2 with
    /// s^2 + sqrt(pi slack ratio) s = 1.
    Plays(double slack, double ratio) noexcept;
    /// U and U' at v >= 0.
    [[nodiscard]] CurvePlace fromRest(double v) const noexcept;
    [[nodiscard]] double direct() const noexcept { return direct_; }  ///< w0

private:
    double direct_ = 1;
    double density_ = 0;  ///< c
    double range_ = 1;    ///< rho
};

/// Where plays stand: the reversals not yet wiped out, alternately to both sides and shrinking, and the place now.
/// As made: at rest, demagnetised.
struct PlayMemory {
    struct Reversal {
        double v = 0;
        double u = 0;
        int mark = -1;
    };
    std::vector<Reversal> reversals;
    double v = 0;
    double u = 0;
    int mark = -1;  ///< whoever leads the plays may number where they stand: a reversal here keeps it
};

/// u and du/dv if v were to go there directly; nothing moves.
[[nodiscard]] CurvePlace lookAhead(const Plays& plays, const PlayMemory& memory, double v) noexcept;
/// Goes there.
void follow(const Plays& plays, PlayMemory& memory, double v);

}  // namespace magnetics
