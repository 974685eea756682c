// SPDX-License-Identifier: GPL-3.0-or-later
// How one alloy's sheets answer to a large field: initial curve and hysteresis loop.
#pragma once

#include "magnetics/plays.h"
#include "magnetics/stack.h"

namespace magnetics {

/// A place on a sheet's loop, and the slopes that make its own: of the flux against u, of u against g(H) along the
/// branch, of g(H) against H.
struct LoopPlace : CurvePlace {
    double byPlays = 0, along = 1, compressed = 1;
};

/// Static loop of an alloy's sheets:
///
///     B = A(u) + R(H),   u = plays[g(H)],   g(H) = a asinh(H / a)
///
/// plays as in `Plays`, A and R rising and without memory. From the demagnetised state it runs on the alloy's curve
/// (`fluxAtField`), minor loops close, no loop gains energy, and near rest it is Rayleigh's: B = mu0 (mu_i H + nu H^2)
/// from rest, (mu_i + nu H_m) H +- (nu / 2)(H_m^2 - H^2) between +-H_m (IEC 60050-221, 221-03-32, read). The slack of
/// the plays makes the coercivity. Remanence: where the curve's height at twice the coercivity would make it too
/// large, R takes the part of the flux that turns reversibly, R = B - B / (1 + (B / J)^4)^(1/4) on the initial curve;
/// where too small, a compresses the field. Both shapes are our own (no source). Without coercivity or curve there is
/// no loop: B = `fluxAtField`. Static: valid below the sheet's eddy corner.
class SheetLoop {
public:
    explicit SheetLoop(const StackBlock& block);
    /// Flux density, T, and dB/dH if the field were to go there directly; nothing moves.
    [[nodiscard]] LoopPlace at(const PlayMemory& memory, double field) const noexcept;
    void follow(PlayMemory& memory, double field) const;
    /// Goes to where  B + weight H = wave  to a tolerance, T (`weight` > 0, T per A/m), sought from a `field` near by,
    /// which is left there; the place there.
    LoopPlace followWave(PlayMemory& memory, double& field, double wave, double weight, double tolerance) const;
    [[nodiscard]] CurvePlace fromRest(double field) const noexcept { return at({}, field); }

    [[nodiscard]] double steepest() const noexcept;  ///< greatest B / H from rest, T per A/m
    [[nodiscard]] bool hysteretic() const noexcept { return hysteretic_; }
    /// Of the loop between +- the end of the curve; 0 without a loop.
    [[nodiscard]] double remanence() const noexcept { return remanence_; }
    /// What could not be met, in words; "" if all was.
    [[nodiscard]] const std::string& why() const noexcept { return why_; }

private:
    /// What a trial of the fit sets.
    struct Shape {
        double slack = 0;         ///< of the plays, in g's measure
        double compression = 0;   ///< 1 / a, m/A; 0: g = H
        double irreversible = 0;  ///< J, T; 0: all
    };
    struct Point {
        double field = 0, flux = 0, slope = 0;
    };
    void take(const Shape& shape);
    void fit(double coercivity, double remanence);
    [[nodiscard]] bool fitSlack(Shape& shape, double coercivity);
    [[nodiscard]] double falling(double field) const;
    [[nodiscard]] CurvePlace compressed(double field) const noexcept;
    [[nodiscard]] CurvePlace kept(double flux) const noexcept;

    std::vector<Point> points_;  ///< of the initial curve
    double ratio_ = 0;           ///< nu / mu_i, m/A
    Shape shape_;
    Plays plays_;
    OddCurve initial_;       ///< B(H) from rest
    OddCurve anhysteretic_;  ///< A(u)
    bool hysteretic_ = false;
    double remanence_ = 0;
    std::string why_;
};

}  // namespace magnetics
