// SPDX-License-Identifier: GPL-3.0-or-later
// The periodic state of a core whose loops lie behind the eddy fields of its sheets.
#pragma once

#include "analysis/harmonic_balance.h"

namespace analysis {

struct PlacedSheets;

/// As `steadyCycle`, but that the field is not even across the sheets: at every place of a `magnetics::SheetGrid` in
/// every alloy's sheets the static loop follows the field there, and the field is driven out by the currents that the
/// changing flux makes in the sheet:
///
///     sum_j K_ij H_j + ((d / 2)^2 / rho) w_i dB_i/dt = 0        within,
///     H_surface + drop(B_mean) = N I / l,   load B + N I / l = drive        at the surface,
///
/// drop the joints' (`magnetics::JointDrop`), B the stack's mean. So `around.load` is of everything but the core; its
/// eddies are not in it. Waves  B_i + c H_i,  c = 1 / (|load_1| + w (d / 2)^2 / (2 rho)),  are sought as there.
/// Diffusion through a sheet in which flux density follows a loop: J. Lammeraner and M. Stafl, Eddy Currents, 1966
/// (from memory). Valid for insulated sheets far wider than thick; loss of moving domain walls beyond the loop's and
/// the classical one is not in it (measured nickel-iron lies lower above the corner).
class EddyBalance {
public:
    /// `frequency`, Hz, chooses the grids. `core` must outlive this.
    EddyBalance(const magnetics::CoreLoop& core, double frequency, int samples = 128);
    /// The same with a grid of `places` in each alloy's sheets.
    EddyBalance(const magnetics::CoreLoop& core, double frequency, int samples, int places);
    ~EddyBalance();
    EddyBalance(EddyBalance&&) noexcept;
    EddyBalance& operator=(EddyBalance&&) = delete;
    EddyBalance(const EddyBalance&) = delete;
    EddyBalance& operator=(const EddyBalance&) = delete;
    /// `start`: a neighbour at the same frequency, or null. Sought to 1e-7 of the drive, settled to 5e-6. Where
    /// saturation is so deep that a sheet's field has fronts between the grid's places it may not settle.
    [[nodiscard]] Cycle steadyCycle(const magnetics::CoreLoop::Memory& before, const Surroundings& around,
                                    const Cycle* start = nullptr) const;

private:
    [[nodiscard]] Cycle reached(const magnetics::CoreLoop::Memory& before, const Surroundings& around,
                                const Cycle* start, int steps) const;
    const magnetics::CoreLoop& core_;
    std::vector<PlacedSheets> sheets_;
    double angular_;
    int samples_;
};

}  // namespace analysis
