// SPDX-License-Identifier: GPL-3.0-or-later
// Interleaving orders and places of shields, all that are worth trying.
#pragma once

#include <string>
#include <vector>

#include "seek/need.h"

namespace seek {

/// From the core outward.
struct Order {
    std::vector<std::size_t> sections;              ///< index of the winding
    std::vector<std::vector<std::size_t>> shields;  ///< indices of the shields just inside section k
    bool operator==(const Order&) const = default;
    /// In how many sections a winding is.
    [[nodiscard]] int sectionsOf(std::size_t winding) const;
};

/// Every order in which one winding (of several on the driven side) is in two or all are whole, two windings in up to
/// five sections in all, no two sections of a winding next to each other; windings alike of one side take turns in one
/// way only. Shields lie where sides face. One terminal to each side that is not driven: its shield faces that side,
/// where it can from the driven one. One terminal in all: a shield in each gap, or where there are fewer of them in
/// every choice of gaps; shields over are left out where no hook-up names them. Otherwise all lie in one gap, the first
/// nearest the driven side.
[[nodiscard]] std::vector<Order> ordersOf(const Need& need);

/// Throws units::BadInput if there is none.
void refuseNone(const std::vector<Order>& orders);

/// How the sections of a design with one place lie. Throws units::BadInput where there are more places.
[[nodiscard]] Order orderOf(const design::Design& design, const Need& need);

/// "P | foil | S | P"
[[nodiscard]] std::string orderWords(const Order& order, const Need& need);

}  // namespace seek
