// SPDX-License-Identifier: GPL-3.0-or-later
#include "spread/run.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <mutex>
#include <numbers>

#include "analysis/in_threads.h"

namespace spread {

using analysis::Standing;

std::vector<Drawn> drawnOf(const std::vector<Varying>& all) {
    std::vector<Drawn> drawn;
    drawn.reserve(all.size());
    for (const auto& v : all) drawn.push_back({v.name, v.law, v.lotShare, v.lot});
    return drawn;
}

Range partOf(std::uint64_t units, std::uint64_t k, std::uint64_t m) noexcept {
    const auto border = [&](std::uint64_t part) { return units / m * part + std::min(part, units % m); };
    return {border(k - 1), border(k)};
}

Study::Study(const design::Design& design, const catalog::Catalog& shop, const catalog::Tolerances& tolerances,
             Plan plan, const std::stop_token& stop)
    : plan_(std::move(plan)),
      variation_(variationOf(design, shop, tolerances)),
      alike_(*variation_.base, shop, plan_.wanted),
      draws_(drawnOf(variation_.all), plan_.seed, plan_.lotSize) {
    if (!plan_.exact) expand(stop);
}

/// Four designs for each number, up to two standard deviations to either side (or the ends of its law), the rest
/// nominal. Turns stay as they are: units with others are not expanded.
std::vector<analysis::Alike::Sides> Study::sides(UnitDesign& unit) {
    constexpr std::array<double, 4> places{-1, -0.5, 0.5, 1};
    const auto& all = variation_.all;
    const std::vector<double> nominal = nominals(variation_);
    std::vector<analysis::Alike::Sides> made(all.size());
    for (std::size_t k = 0; k < all.size(); ++k) {
        const auto kind = all[k].law.kind;
        const bool turns = kind == catalog::Law::Discrete;
        const bool ends = kind == catalog::Law::Uniform || kind == catalog::Law::Triangular;
        steps_.push_back(turns ? 1 : (ends ? std::numbers::sqrt3 : 2) * all[k].law.deviation(nominal[k]));
        for (std::size_t s = 0; s < places.size(); ++s) {
            auto values = nominal;
            if (!turns) values[k] += places[s] * steps_[k];
            made[k][s] = std::make_shared<const design::Design>(unit.with(values));
        }
    }
    return made;
}

/// Prepares expansion, and holds the first units of the run against themselves with fields of their own.
void Study::expand(const std::stop_token& stop) {
    constexpr std::uint64_t checked = 8;
    UnitDesign unit(variation_);
    if (!alike_.expand(sides(unit), stop)) {
        steps_.clear();
        return;
    }
    expansion_.worst.assign(columns().size(), 0);
    for (std::uint64_t k = 0; k < plan_.units && expansion_.units < checked && !stop.stop_requested(); ++k) {
        const auto values = valuesOf(k);
        if (!expanded(values)) continue;
        ++expansion_.units;
        expansion_.take(quickly(unit, values, {}), this->unit(values));
    }
}

void Expansion::take(const analysis::Found& quick, const analysis::Found& own) {
    for (std::size_t c = 0; c < worst.size(); ++c) {
        const double off = std::abs(quick.values[c] - own.values[c]);
        if (std::isnan(quick.values[c]) != std::isnan(own.values[c])) worst[c] = -1;
        if (worst[c] >= 0 && std::isfinite(off)) worst[c] = std::max(worst[c], off);
    }
}

std::vector<double> Study::valuesOf(std::uint64_t unit) const {
    auto values = draws_.deviates(unit);
    for (std::size_t k = 0; k < values.size(); ++k)
        values[k] = variation_.all[k].law.value(variation_.all[k].nominal, values[k]);
    return values;
}

/// Turns that are not the design's may change its layers.
bool Study::expanded(const std::vector<double>& values) const {
    if (steps_.empty()) return false;
    for (std::size_t k = 0; k < values.size(); ++k)
        if (variation_.all[k].law.kind == catalog::Law::Discrete && values[k] != variation_.all[k].nominal)
            return false;
    return true;
}

analysis::Found Study::quickly(UnitDesign& unit, const std::vector<double>& values, const std::stop_token& stop) const {
    std::vector<double> at(values.size());
    for (std::size_t k = 0; k < at.size(); ++k) at[k] = (values[k] - variation_.all[k].nominal) / steps_[k];
    return alike_.quickly(unit.with(values), at, stop);
}

namespace {

std::string lettersOf(const std::vector<Standing>& standings) {
    std::string letters;
    for (const Standing standing : standings)
        letters += standing == Standing::Unknown ? '-' : standing == Standing::Broken ? 'b' : 'k';
    return letters;
}

void count(std::vector<Bins>& bins, const std::vector<double>& levels) {
    for (std::size_t k = 0; k < levels.size(); ++k)
        if (std::isfinite(levels[k])) ++bins[k][std::llround(levels[k] / binWidth)];
}

}  // namespace

/// Units `from` up to before `to`, in one thread; their responses.
std::vector<std::vector<double>> Study::compute(std::uint64_t from, std::uint64_t to, UnitDesign& unit, Batch& batch,
                                                const std::stop_token& stop) const {
    std::vector<std::vector<double>> responses;
    responses.reserve(to - from);
    for (std::uint64_t k = from; k < to; ++k) {
        const auto values = valuesOf(k);
        analysis::Found found = expanded(values) ? quickly(unit, values, stop) : alike_.found(unit.with(values), stop);
        if (stop.stop_requested()) break;
        batch.values[k - batch.first] = std::move(found.values);
        batch.kept[k - batch.first] = lettersOf(found.standings);
        responses.push_back(std::move(found.response));
    }
    return responses;
}

Batch Study::run(std::uint64_t first, std::uint64_t last, const std::stop_token& stop, const Progress& progress,
                 unsigned threads) const {
    constexpr std::uint64_t handful = 4;  // units that a thread takes at a time
    Batch batch;
    batch.first = first;
    batch.last = last;
    batch.values.resize(last - first);
    batch.kept.resize(last - first);
    batch.response.resize(plan_.wanted.response.size());
    std::mutex sums;
    std::uint64_t done = 0;
    analysis::inThreads((last - first + handful - 1) / handful, threads, stop, [&] {
        return [&, unit = UnitDesign(variation_)](std::size_t piece) mutable {
            const std::uint64_t from = first + piece * handful, to = std::min(from + handful, last);
            const auto responses = compute(from, to, unit, batch, stop);
            const std::lock_guard lock(sums);
            for (const auto& levels : responses) count(batch.response, levels);
            done += to - from;
            if (progress && !stop.stop_requested()) progress(done);
        };
    });
    batch.stopped = stop.stop_requested();
    return batch;
}

analysis::Found Study::unit(const std::vector<double>& values) const {
    UnitDesign unit(variation_);
    return alike_.found(unit.with(values));
}

}  // namespace spread
