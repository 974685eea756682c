// SPDX-License-Identifier: GPL-3.0-or-later
// The published numbers that a Sobol sequence is made from.
#pragma once

#include <array>
#include <cstddef>

namespace spread {

inline constexpr std::size_t sobolDimensions = 161;

/// One dimension: its primitive polynomial over GF(2), highest power in the highest bit, and the first odd numbers m_i,
/// as many as the polynomial's degree (the first dimension, without a polynomial: all m_i are 1).
struct DirectionRow {
    unsigned polynomial;
    std::array<unsigned, 10> first;
};
extern const std::array<DirectionRow, sobolDimensions> directionRows;

}  // namespace spread
