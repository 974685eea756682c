// SPDX-License-Identifier: GPL-3.0-or-later
// The whole stack in a large field: its alloys' loops side by side, with joints.
#pragma once

#include "magnetics/sheet_loop.h"

namespace magnetics {

/// What the joints of one alloy's sheets take of N I / l, A/m, against the flux density in the sheets: an odd curve.
///
/// A gap takes g B / (mu0 l). Of interleaved joints g is the small-signal value; there every second sheet ends at a
/// break of total length b, and its flux passes through the neighbours over a length s, beside what crosses the break:
///
///     B = (B_n(H_n) + mu0 s H_n / b) / 2,   drop s H_n,
///
/// B_n the neighbours' curve from rest. Neighbours carry twice the flux and reach their knee near half the saturation
/// (common practice, no source); beyond, the break rules: 2 b / mu0 per tesla. What of g the bridge does not explain is
/// taken as linear.
class JointDrop {
public:
    JointDrop() = default;  ///< no joints
    JointDrop(const CoreModel& core, const StackBlock& block);
    [[nodiscard]] CurvePlace at(double flux) const noexcept;

private:
    double linear_ = 0;  ///< A/m per T
    OddCurve bridge_;
};

/// The stack's mean flux density against the applied field N I / l: blocks of sheets are parallel paths that share the
/// applied field, each with its own joints in series,  H_k + drop_k(B_k) = N I / l,  B = sum share_k B_k(H_k). Static:
/// valid below the sheets' eddy corner.
class CoreLoop {
public:
    explicit CoreLoop(const CoreModel& core);
    /// The same stack without loops: every alloy on its curve from rest.
    [[nodiscard]] static CoreLoop anhysteretic(const CoreModel& core);

    /// Where the stack stands; as made by `atRest`: demagnetised.
    struct Memory {
        std::vector<PlayMemory> blocks;
        std::vector<double> fields;  ///< H_k, A/m
        double applied = 0;          ///< N I / l, A/m
        double wave = 0;             ///< the last one followed, with its slope against the field: a first guess
        double steepness = 0;
    };
    [[nodiscard]] Memory atRest() const;
    /// Goes to an applied field; mean flux density, T, and its slope there.
    CurvePlace follow(Memory& memory, double applied) const;
    /// Goes to where  B + weight N I / l = wave  (T; `weight` > 0, T per A/m); mean flux density and its slope.
    CurvePlace followWave(Memory& memory, double wave, double weight) const;

    [[nodiscard]] double initialSlope() const noexcept;  ///< dB / d(N I / l) at rest, T per A/m
    [[nodiscard]] bool hysteretic() const noexcept;
    [[nodiscard]] const std::string& why() const noexcept { return why_; }

    /// The sheets of one alloy.
    struct Block {
        double share;
        double eddy;  ///< (d / 2)^2 / rho, A/m per T/s: what flux that rises evenly across a sheet takes of field
        SheetLoop loop;
        JointDrop joint;
    };
    [[nodiscard]] const std::vector<Block>& blocks() const noexcept { return blocks_; }

private:
    struct Trial;
    CoreLoop() = default;
    [[nodiscard]] static CoreLoop made(const CoreModel& core, bool withLoops);
    [[nodiscard]] Trial trial(const Block& block, const PlayMemory& memory, double field) const;
    [[nodiscard]] double fieldAlone(const Memory& memory, double wave, double weight) const;
    [[nodiscard]] double appliedTogether(Memory& memory, double wave, double weight) const;
    [[nodiscard]] double fieldIn(std::size_t block, const Memory& memory, double applied) const;
    std::vector<Block> blocks_;
    std::string why_;
};

/// Energy that a closed path of (N I / l, B) turns into heat, J/m3: the loop's area, integral of H dB (trapezoid).
[[nodiscard]] double loopArea(const std::vector<double>& field, const std::vector<double>& flux) noexcept;

}  // namespace magnetics
