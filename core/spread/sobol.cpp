// SPDX-License-Identifier: GPL-3.0-or-later
#include "spread/sobol.h"

#include <algorithm>
#include <bit>
#include <cassert>

namespace spread {

Sobol::Sobol(std::size_t dimensions) : directions_(dimensions * width) {
    assert(dimensions <= sobolDimensions);
    for (std::size_t d = 0; d < dimensions; ++d) {
        const DirectionRow& row = directionRows[d];
        const auto degree = static_cast<std::size_t>(std::bit_width(row.polynomial)) - 1;
        std::uint32_t* v = directions_.data() + d * width;
        for (std::size_t i = 0; i < width; ++i) {
            if (degree == 0) {
                v[i] = 1U << (width - 1 - i);
            } else if (i < degree) {
                v[i] = row.first[i] << (width - 1 - i);
            } else {
                v[i] = v[i - degree] ^ (v[i - degree] >> degree);
                for (std::size_t k = 1; k < degree; ++k)
                    if ((row.polynomial >> (degree - k)) & 1U) v[i] ^= v[i - k];
            }
        }
    }
}

std::uint32_t Sobol::bits(std::uint64_t index, std::size_t dimension) const noexcept {
    const std::uint32_t* v = directions_.data() + dimension * width;
    std::uint32_t point = 0;
    auto gray = static_cast<std::uint32_t>(index ^ (index >> 1));
    for (; gray != 0; gray &= gray - 1) point ^= v[std::countr_zero(gray)];
    return point;
}

namespace {

std::uint64_t mixed(std::uint64_t x) noexcept {
    x += 0x9e3779b97f4a7c15;
    x = (x ^ (x >> 30)) * 0xbf58476d1ce4e5b9;
    x = (x ^ (x >> 27)) * 0x94d049bb133111eb;
    return x ^ (x >> 31);
}

}  // namespace

std::uint64_t scattered(std::uint64_t a, std::uint64_t b, std::uint64_t c) noexcept {
    return mixed(mixed(mixed(a) ^ b) ^ c);
}

EvenPoints::EvenPoints(std::uint64_t seed, std::size_t dimensions)
    : seed_(seed), sobol_(std::min(dimensions, sobolDimensions)) {
    constexpr std::uint64_t shifts = ~0ULL;  // no unit has this number
    shift_.reserve(dimensions);
    for (std::size_t d = 0; d < std::min(dimensions, sobolDimensions); ++d)
        shift_.push_back(static_cast<std::uint32_t>(scattered(seed, shifts, d) >> 32));
}

double EvenPoints::at(std::uint64_t index, std::size_t dimension) const noexcept {
    const std::uint32_t bits = dimension < shift_.size()
                                   ? sobol_.bits(index, dimension) ^ shift_[dimension]
                                   : static_cast<std::uint32_t>(scattered(seed_, index, dimension) >> 32);
    return (static_cast<double>(bits) + 0.5) * 0x1p-32;
}

}  // namespace spread
