// SPDX-License-Identifier: GPL-3.0-or-later
// What the core's loop adds to a sine.
#pragma once

#include <array>
#include <memory>

#include "analysis/core_in_time.h"
#include "analysis/core_view.h"
#include "analysis/eddy_balance.h"
#include "analysis/harmonic_balance.h"
#include "analysis/stages.h"

namespace analysis {

inline constexpr int firstHarmonic = 2, lastHarmonic = 7;  ///< that are told one by one

/// A hook-up driven with a sine.
struct Driven {
    double emf = 0;                   ///< V rms
    double level = 0;                 ///< dBu of the fundamental where the brief counts levels
    double thd = 0;                   ///< share: root of the sum of squares of harmonics 2 to 15 over the fundamental
    std::array<double, 6> harmonics;  ///< 2 to 7, dB below (negative) the fundamental; -infinity: none
    double inductance = 0;            ///< of one turn, H: Re of flux over applied ampere-turns, fundamental
    Cycle cycle;
};

/// A hook-up with its core's loop. Harmonics are those of the voltage at the observed port (at the driven one where
/// none is observed): the drop of the distorted magnetising current over all that the core sees. In each core turn
///
///     j k w A B_k / Z(k w) + (l H_k - A B_k / Lambda(k w)) = s_k,   s_1 = V_core / Z(w),
///
/// Z the impedance at one turn with the linear core in place, V_core the core's voltage a turn in the linear network,
/// Lambda the core's small-signal inductance of a turn; the bracket is the current that the linear core does not ask
/// for, and Z's transfer makes the harmonics of it. H from B: by `EddyBalance`, the loop behind the sheets' eddy field.
/// Far below the sheets' corner (`eddiesFrom` of it), and below it where saturation is so deep that this does not
/// settle, the static loop, with Lambda(0): then the sheets' eddies stay in the network as of small signal, exact at
/// low level and classical loss at any.
class LargeSignal {
public:
    /// Sweeping: for many frequencies; else each is solved when asked for.
    LargeSignal(const design::Design& design, const Solved& solved, const Answer::Stages& stages, bool sweeping,
                const std::stop_token& stop = {}, LoopKind loop = LoopKind::BehindEddies);

    /// Everything linear at one frequency, for a source EMF of 1 V rms.
    struct Linear {
        double frequency = 0;
        Surroundings around;                        ///< `drive` for 1 V
        std::vector<CoreView::Seen> seen;           ///< of harmonics 1 … K, at k - 1
        double toLevel = 1;                         ///< V rms where the brief counts levels
        std::shared_ptr<const EddyBalance> eddies;  ///< null where the static loop serves
        std::vector<network::Complex> eddyLoad;     ///< instead of `around.load` behind the sheets' eddy field
        network::Complex toDriven, toObserved;
    };
    [[nodiscard]] Linear linear(double frequency) const;
    /// The steady state at a source EMF of `emf` V rms; `start` a neighbour or null. Not settled where it is not found,
    /// and at once when the stop token is set.
    [[nodiscard]] Driven at(const Linear& linear, double emf, const Cycle* start = nullptr) const;
    /// Source EMF, V rms, that makes a level where the brief counts levels, in the linear network.
    [[nodiscard]] static double emfForLevel(const Linear& linear, double dbu);
    [[nodiscard]] bool hasCore() const noexcept { return !stages_.core->blocks.empty() && stages_.core->area > 0; }
    /// The network without the core's static inductance, for stepping in time. Made anew at each call.
    [[nodiscard]] CoreNetwork inTime() const;
    /// From here on as with a demagnetised core and no direct current.
    void demagnetise();
    /// From this share of the least eddy corner of the stack's sheets on the loop lies behind their eddy field.
    static constexpr double eddiesFrom = 1.0 / 30;
    [[nodiscard]] LoopKind loop() const noexcept { return loop_; }
    /// Least eddy corner of the stack's sheets, Hz: above, a static loop is short.
    [[nodiscard]] double eddyCorner() const noexcept { return corner_; }
    /// Why results are less certain, "" if they are not.
    [[nodiscard]] std::string why() const;
    /// The network seen from the core: the driven port, and where harmonics are told.
    [[nodiscard]] int driven() const noexcept { return driven_; }
    [[nodiscard]] int observed() const noexcept { return observed_; }

private:
    [[nodiscard]] AroundCore around(double frequency) const;
    [[nodiscard]] network::Complex inductance(double frequency, bool behindEddies) const;
    [[nodiscard]] bool settleBehindEddies(const Linear& linear, double emf, const Cycle* start, Cycle& cycle) const;
    const Solved& solved_;
    const Answer::Stages& stages_;
    design::LevelAt levelAt_;
    CoreView view_;
    int driven_, observed_;
    double direct_ = 0;  // A/m
    magnetics::CoreLoop::Memory past_;
    double corner_ = 0;  // least eddy corner of the stack's sheets, Hz
    std::stop_token stop_;
    LoopKind loop_;
};

/// True where a hook-up has a drive that goes through its core.
[[nodiscard]] bool drivesCore(const Solved& solved);

/// Lowest level, dBu, at which distortion reaches a share, sought from `from` to `to` in steps of 6 dB and then by
/// straight lines in dB over dB; infinite if it stays below, `from` if it starts above.
[[nodiscard]] double levelOfDistortion(const LargeSignal& large, const LargeSignal::Linear& linear, double share,
                                       double from, double to);

}  // namespace analysis
