// SPDX-License-Identifier: GPL-3.0-or-later
// Within what a production's curves lie.
#pragma once

#include "spread/run.h"

namespace spread {

/// One curve's band: at each place of its trace's axis the value below which 5 %, half and 95 % of the units lie; not a
/// number where fewer than half of them have one.
struct CurveBand {
    std::string curve;  ///< as `analysis::Curve::name`
    std::vector<double> low, middle, high;
    bool operator==(const CurveBand&) const = default;
};
struct TraceBand {
    std::string trace, hookUp;
    analysis::Axis axis;
    std::vector<double> at;  ///< Hz, or what `axis` says; rising
    std::vector<CurveBand> curves;
    bool operator==(const TraceBand&) const = default;
};
inline constexpr std::array<double, 2> bandShares{0.05, 0.95};

/// Bands of the named traces in one hook-up ("" the first), from the run's first `units` units, each with fields of its
/// own, drawn over the axis of `nominal`'s traces; `nominal` answers the study's design in that hook-up. Traces with an
/// axis in time or level are taken straight between their points. A trace that `nominal` lacks has no band. Stopped, it
/// is empty. `progress` is told the units done.
[[nodiscard]] std::vector<TraceBand> bands(const Study& study, const catalog::Catalog& shop,
                                           const analysis::Answer& nominal, const std::vector<std::string>& traces,
                                           std::uint64_t units, const std::stop_token& stop = {},
                                           const Study::Progress& progress = {}, unsigned threads = 0);

}  // namespace spread
