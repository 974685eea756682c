// SPDX-License-Identifier: GPL-3.0-or-later
// Evenly spread points: any one of them from its number alone.
#pragma once

#include <cstdint>
#include <vector>

#include "spread/sobol_numbers.h"

namespace spread {

/// Sobol's sequence in Gray-code order with 32 bits (I. M. Sobol, 1967; I. A. Antonov and V. M. Saleev, 1979: from
/// memory), direction numbers of Joe and Kuo (2008).
class Sobol {
public:
    /// Up to `sobolDimensions`.
    explicit Sobol(std::size_t dimensions);
    /// Point `index`, coordinate `dimension` as a fraction of 2^32; index below 2^32.
    [[nodiscard]] std::uint32_t bits(std::uint64_t index, std::size_t dimension) const noexcept;

private:
    static constexpr std::size_t width = 32;
    std::vector<std::uint32_t> directions_;  // width a dimension
};

/// A number that looks random, the same for the same three: splitmix's finaliser (S. Vigna, from memory) thrice.
[[nodiscard]] std::uint64_t scattered(std::uint64_t a, std::uint64_t b, std::uint64_t c) noexcept;

/// Points in the open unit cube that depend on seed and number alone. Sobol's points are shifted by the digits of one
/// number a dimension (a digital shift keeps their evenness); dimensions beyond the table are random.
class EvenPoints {
public:
    EvenPoints(std::uint64_t seed, std::size_t dimensions);
    [[nodiscard]] double at(std::uint64_t index, std::size_t dimension) const noexcept;

private:
    std::uint64_t seed_;
    Sobol sobol_;
    std::vector<std::uint32_t> shift_;
};

}  // namespace spread
