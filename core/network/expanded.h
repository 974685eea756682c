// SPDX-License-Identifier: GPL-3.0-or-later
// A network as a function of numbers that it is made from: many alike for the work of few.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "network/solve.h"

namespace network {

/// The terms of a network and what its ports read, as functions of numbers x_k, each 0 at the nominal: for each number
/// by itself, on either side, the parabola through the nominal and the two networks given for that side,
///
///     T(x) = T(0) + sum_k (4 h - w) |x_k| + (2 w - 4 h) x_k^2,   h = T(+-1/2) - T(0),  w = T(+-1) - T(0),
///
/// so that a number may turn sharply at the nominal, as where layers touch and then leave each other;
/// in a space that the states of all given networks span: all loops, and of the rest as many directions, greatest
/// singular value first (any text on model order reduction), as keep every output of the nominal at all `frequencies`,
/// and of the networks at x = +-1 at the highest, within `accuracy`. Products of two numbers are left out.
class Expanded {
public:
    using Sides = std::array<Prepared, 4>;  ///< at x = -1, -1/2, 1/2 and 1
    /// Nothing if the networks are not alike term by term: then x reaches where layers or wires change places.
    [[nodiscard]] static std::optional<Expanded> of(const Prepared& nominal, const std::vector<Sides>& sides,
                                                    const std::vector<double>& frequencies);

    /// The network at x. `circuit` is its own: core, ports, lumped branches and resistivity are read, its matrices are
    /// not. `bareDiameters`: of each term that has one, in the order of the nominal's terms.
    [[nodiscard]] Prepared at(const std::vector<double>& x, Circuit circuit,
                              const std::vector<double>& bareDiameters) const;
    [[nodiscard]] const Terms& kinds() const noexcept { return kinds_; }  ///< without matrices
    [[nodiscard]] Eigen::Index size() const noexcept { return size_; }

    static constexpr double accuracy = 3e-3;  ///< relative, or of `Sweep::floor`

private:
    Expanded() = default;
    Terms kinds_;
    Eigen::Index size_ = 0, ports_ = 0;
    ComplexMatrix lumped_, turns_;     // in the space
    Vector base_;                      // terms one below another, then charges and injected, real and imaginary
    std::vector<std::size_t> active_;  // numbers that move anything
    Matrix linear_, square_;           // two columns each: below, above
};

}  // namespace network
