// SPDX-License-Identifier: GPL-3.0-or-later
// A core that carries direct current, or did.
#pragma once

#include "magnetics/core_loop.h"

namespace magnetics {

/// A small alternating field about a steady one.
struct Incremental {
    double flux = 0;       ///< mean flux density where the steady field leaves the core, T
    double amplitude = 0;  ///< of the alternating part of N I / l, A/m
    double slope = 0;      ///< height of the minor loop over its width, T per A/m; times A / l: inductance of a turn, H
};

/// The closed minor loop of flux amplitude `swing` (T, > 0) about a steady applied field `direct` (A/m), reached from
/// `before`: to H + h, H - h and back, h such that the loop is 2 `swing` high. Without direct field the normal loop:
/// from rest the slope is mu0 (mu_i + nu h) in Rayleigh's law. With direct field the incremental permeability of C. R.
/// Hanna (J. AIEE 46, 1927, example read) and of IEC 60050-221, 221-03-07 (from memory). Static.
[[nodiscard]] Incremental incremental(const CoreLoop& core, const CoreLoop::Memory& before, double direct,
                                      double swing);

/// Mean flux density that is left, T, when N I / l has gone to `field` (A/m) from `before` and back to none. The
/// joints' air demagnetises: less remains than in the closed sheet.
[[nodiscard]] double remanence(const CoreLoop& core, CoreLoop::Memory& memory, double field);

/// Least peak of an alternation, A/m of N I / l, which, falling by `ratio` (< 1) a half cycle to nothing, leaves less
/// than a thousandth of `left` (T, what it finds), within two per cent. An alternation wipes out what is remembered of
/// fields up to its peak (plays and Preisach models alike; I. D. Mayergoyz, Mathematical Models of Hysteresis, 1991,
/// from memory), so this is at most the field that magnetised the core.
[[nodiscard]] double demagnetisingField(const CoreLoop& core, const CoreLoop::Memory& magnetised, double ratio = 0.9);

/// What an alternation from `peak` A/m, falling by `ratio` a half cycle, leaves, T.
[[nodiscard]] double afterSweep(const CoreLoop& core, CoreLoop::Memory memory, double peak, double ratio);

}  // namespace magnetics
