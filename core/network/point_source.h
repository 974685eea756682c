// SPDX-License-Identifier: GPL-3.0-or-later
// A network's outputs at many frequencies for few factorisations.
#pragma once

#include <optional>
#include <stop_token>
#include <vector>

#include "network/reduced.h"

namespace network {

/// Points of a network from the space of some states where that reaches, else solved in full: then the space grows.
class PointSource {
public:
    /// Solves in full at `start` (two frequencies at least). Network and stop token must outlive this.
    PointSource(const Prepared& network, const std::vector<double>& start, const std::stop_token& stop);
    /// At each frequency; what it returns means nothing once a stop was asked for.
    [[nodiscard]] std::vector<Point> at(const std::vector<double>& frequencies);

private:
    [[nodiscard]] std::vector<Snapshot> snapshots(const std::vector<double>& frequencies) const;
    const Prepared& network_;
    const std::stop_token& stop_;
    std::vector<Snapshot> known_;
    std::optional<Reduced> reduced_;
};

}  // namespace network
