// SPDX-License-Identifier: GPL-3.0-or-later
// An alloy's curve found from points measured on a lot of its sheets.
#pragma once

#include <array>
#include <vector>

#include "catalog/alloy.h"

namespace magnetics {

/// A number that a fit found.
struct Found {
    double value = 0;
    double uncertainty = 0;  ///< standard, relative
};

/// Peak flux density against peak field of sheets driven to and fro from the demagnetised state, as a law of five
/// numbers:
///
///     B = mu0 H + J (x / (1 + x^p)^(1/p)),   x = mu0 (mu_i - 1) u / (w0 J),   u = U(H)
///
/// U, w0 of plays with the coercivity as slack and nu / mu_i as ratio (see `Plays`). Near rest it is Rayleigh's law,
/// mu0 (mu_i H + nu H^2) where mu_i is far above 1; the tips of loops lie on it. The knee's shape is our own (no
/// source).
struct LotLaw {
    Found initialPermeability;
    Found rayleigh;    ///< m/A
    Found coercivity;  ///< A/m
    Found saturation;  ///< T
    Found knee;        ///< p
    [[nodiscard]] double flux(double field) const;
    /// Greatest B / (mu0 H), sought from the field `low` to `high`.
    [[nodiscard]] double greatestPermeability(double low, double high) const;
};

/// How a law fits its points.
struct LotFit {
    LotLaw law;
    double residual = 0;    ///< root mean square of ln(B_measured / B_law)
    double worst = 0;       ///< greatest |B_measured / B_law - 1|
    double worstField = 0;  ///< A/m, there
    bool settled = false;   ///< the search came to rest
};

/// Least squares in ln B (Levenberg and Marquardt; J. J. More, 1978, from memory). Where the points say little, the law
/// stays near `like`, an alloy of the same kind: each number is held by its own with a spread of a factor 2 (mu_i,
/// coercivity, knee), 3 (nu) and of 5 % (saturation). A coercivity that was measured on the lot (`coercivity` > 0) is
/// held to 3 %. Uncertainties from the slopes at the end, with the points' own scatter (at least 0.1 %), over all
/// minima that are about as likely: coercivity and knee can stand in for each other. `points`: eight or more, H and B >
/// 0; `like` has permeability, coercivity and saturation.
[[nodiscard]] LotFit lotFit(const std::vector<catalog::BhPoint>& points, const catalog::Alloy& like,
                            double coercivity = 0);

/// The fitted law as an alloy: `like` with the found numbers, remanence (measured, or where 0 that of `like` in the
/// measure of the saturation), and a curve of some thirty points as far as the lot was measured.
[[nodiscard]] catalog::Alloy fittedAlloy(const LotFit& fit, const std::vector<catalog::BhPoint>& points,
                                         const catalog::Alloy& like, double remanence = 0);

}  // namespace magnetics
