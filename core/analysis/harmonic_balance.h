// SPDX-License-Identifier: GPL-3.0-or-later
// The periodic state of a core with hysteresis in a linear network.
#pragma once

#include <complex>
#include <vector>

#include "magnetics/core_loop.h"

namespace analysis {

/// What the core is connected to. Coefficients X_k of  x(t) = sum_k X_k exp(j k w t),  X_-k the conjugate: half the
/// peak of harmonic k. The network holds  load_k B_k + H_k = drive_k  between mean flux density and applied field N I /
/// l; drive is 0 but for k = 1, and k = 0, where a direct field is given.
struct Surroundings {
    std::vector<std::complex<double>> load;  ///< A/m per T, of harmonics 0 … K; load[0] is 0
    std::complex<double> drive;              ///< A/m, of harmonic 1
    double direct = 0;                       ///< A/m
};

/// What the network asks for at harmonic k, A/m, and the size of all of it.
[[nodiscard]] inline std::complex<double> driveOf(const Surroundings& around, std::size_t k) {
    return k == 0 ? around.direct : k == 1 ? around.drive : 0;
}
[[nodiscard]] inline double driveOf(const Surroundings& around) {
    return std::abs(around.drive) + std::abs(around.direct);
}
/// Whether anything makes even harmonics.
[[nodiscard]] bool makesEven(const magnetics::CoreLoop::Memory& before, const Surroundings& around);
/// How far the network's equations may be off, as a share of the drive.
inline constexpr double settledShare = 1e-7;

/// One cycle in the steady state.
struct Cycle {
    std::vector<std::complex<double>> flux;   ///< T, of harmonics 0 … K
    std::vector<std::complex<double>> field;  ///< A/m, applied
    std::vector<std::complex<double>> wave;   ///< where the next search may start
    std::vector<double> fluxes, fields;       ///< over the cycle
    double drive = 0;                         ///< A/m, `driveOf`
    int rounds = 0;
    bool settled = false;  ///< the network's equations hold to 1e-7 of the drive
};

/// Harmonic balance: the network linear in the frequency domain, the core in time, at `samples` (a power of two) points
/// of a cycle that starts from `before` (periodic steady state after the largest excursion). The unknowns are harmonics
/// 0 … K of the wave B + c N I / l, which stays smooth in saturation, c = 1 / |load_1|; Newton's method with the core's
/// slope at each instant, and rank-one corrections (C. G. Broyden, Math. Comp. 19, 1965, from memory) for what
/// reversals remember. Harmonic balance in general: M. S. Nakhla and J. Vlach, IEEE Trans. Circuits Syst. 23, 1976
/// (from memory). Only odd harmonics are sought where nothing makes even ones. `start`: the wave of a neighbouring
/// cycle, or empty.
[[nodiscard]] Cycle steadyCycle(const magnetics::CoreLoop& core, const magnetics::CoreLoop::Memory& before,
                                const Surroundings& around, const std::vector<std::complex<double>>& start = {},
                                int samples = 128);

}  // namespace analysis
