// SPDX-License-Identifier: GPL-3.0-or-later
#include "network/point_source.h"

#include "network/in_parallel.h"

namespace network {

PointSource::PointSource(const Prepared& network, const std::vector<double>& start, const std::stop_token& stop)
    : network_(network), stop_(stop), known_(snapshots(start)) {
    if (!stop_.stop_requested()) reduced_.emplace(network_, known_);
}

std::vector<Snapshot> PointSource::snapshots(const std::vector<double>& frequencies) const {
    std::vector<Snapshot> all(frequencies.size());
    inParallel(all.size(), [&](std::size_t k) {
        if (!stop_.stop_requested()) all[k] = network_.snapshot(frequencies[k]);
    });
    return all;
}

std::vector<Point> PointSource::at(const std::vector<double>& frequencies) {
    constexpr std::size_t few = 2;  // are not worth a new space
    std::vector<Point> points(frequencies.size());
    if (stop_.stop_requested()) return points;
    inParallel(frequencies.size(), [&](std::size_t k) {
        if (stop_.stop_requested() || !reduced_->worthwhile()) return;
        if (auto point = reduced_->point(frequencies[k])) points[k] = std::move(*point);
    });
    std::vector<double> missed;
    std::vector<std::size_t> places;
    for (std::size_t k = 0; k < points.size(); ++k)
        if (points[k].frequency == 0) {
            missed.push_back(frequencies[k]);
            places.push_back(k);
        }
    const std::vector<Snapshot> solved = snapshots(missed);
    if (stop_.stop_requested()) return points;
    for (std::size_t k = 0; k < solved.size(); ++k)
        points[places[k]] = pointOf(network_.circuit(), network_.reading(), solved[k]);
    if (!reduced_->worthwhile() || solved.size() <= few) return points;
    known_.insert(known_.end(), solved.begin(), solved.end());
    reduced_.emplace(network_, known_);
    return points;
}

}  // namespace network
