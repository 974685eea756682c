// SPDX-License-Identifier: GPL-3.0-or-later
#include "learn/match.h"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>

#include "learn/numbers.h"
#include "learn/probe.h"
#include "measured/quantiles.h"
#include "spread/summary.h"

namespace learn {

namespace {

constexpr double commonShare = 0.8;    // of the variance that figures of one kind have together: our own rule
constexpr double leastFitting = 1e-3;  // probability below which a design is not the one
constexpr double leastParting = 2;     // standard deviations
constexpr double leastUncertainty = 1e-4;
constexpr std::size_t mostWindings = 6;  // 720 ways of calling them

/// A name taken apart: "leakage_10kHz", {"P", "S"}, "@normal".
struct Parts {
    std::string quantity;
    std::vector<std::string> ends;
    std::string hookUp;
};
Parts partsOf(const std::string& name) {
    auto all = units::nameParts(name);
    return {all.front(), {all.begin() + 1, all.end()}, name.substr(std::min(name.find('@'), name.size()))};
}
std::string nameOf(const Parts& parts) {
    std::string name = parts.quantity;
    for (const auto& end : parts.ends) name += "." + end;
    return name + parts.hookUp;
}

/// Quantities whose ends are windings.
bool isOfWindings(const std::string& quantity) {
    return quantity == "dcr" || quantity == "ratio" || quantity == "wire_length" || quantity == "copper_mass" ||
           quantity.starts_with("inductance") || quantity.starts_with("leakage");
}

/// What errs alike: "inductance" of "inductance_10Hz".
std::string kindOf(const std::string& quantity) {
    return quantity.substr(0, quantity.find('_'));
}

template <class Names>
std::set<std::string> windingsIn(const Names& names) {
    std::set<std::string> all;
    for (const auto& name : names)
        if (const Parts parts = partsOf(name); isOfWindings(parts.quantity))
            all.insert(parts.ends.begin(), parts.ends.end());
    return all;
}

class Matching {
public:
    Matching(const Known& design, const std::vector<spread::FigureRead>& readings) : readings_(readings) {
        for (const auto& figure : design.figures)
            if (std::isfinite(figure.value)) figures_[figure.name] = &figure;
    }

    /// The best way of calling the windings.
    Match best() const {
        std::vector<std::string> read, there;
        read.reserve(readings_.size());
        there.reserve(figures_.size());
        for (const auto& reading : readings_) read.push_back(reading.figure);
        for (const auto& [name, figure] : figures_) there.push_back(name);
        const auto from = windingsIn(read), to = windingsIn(there);
        std::vector<std::string> names(to.begin(), to.end());
        const bool many = from.size() > names.size() || names.size() > mostWindings;
        std::optional<Match> best;
        do {
            std::map<std::string, std::string> called;
            std::size_t k = 0;
            for (const auto& name : from) called[name] = many || k >= names.size() ? name : names[k++];
            Match one = under(called);
            if (!best || better(one, *best)) best = std::move(one);
        } while (!many && std::next_permutation(names.begin(), names.end()));
        return *best;
    }
    static bool better(const Match& a, const Match& b) {
        if (a.fits != b.fits) return a.fits;
        if (a.lacking.size() != b.lacking.size()) return a.lacking.size() < b.lacking.size();
        return a.distance < b.distance;
    }

private:
    /// The figure under its name, or a ratio under its inverse's.
    std::optional<units::Figure> figure(Parts parts) const {
        if (const auto at = figures_.find(nameOf(parts)); at != figures_.end()) return *at->second;
        if (parts.ends.size() != 2) return {};
        std::swap(parts.ends[0], parts.ends[1]);
        const auto at = figures_.find(nameOf(parts));
        if (at == figures_.end()) return {};
        units::Figure turned = *at->second;
        if (parts.quantity == "ratio") turned.value = 1 / turned.value;
        if (parts.quantity.starts_with("leakage")) {  // seen from the other winding: times the ratio squared
            const auto ratio = figure({"ratio", parts.ends, ""});
            if (!ratio) return {};
            turned.value *= ratio->value * ratio->value;
        }
        return turned;
    }
    Match under(const std::map<std::string, std::string>& called) const {
        Match match;
        std::vector<double> uncertainty, doubt;
        std::vector<std::string> kinds;
        for (const auto& reading : readings_) {
            Parts parts = partsOf(reading.figure);
            const std::string kind = kindOf(parts.quantity);
            if (isOfWindings(parts.quantity))
                for (auto& end : parts.ends) end = called.at(end);
            const auto there = figure(parts);
            if (!there) {
                match.lacking.push_back(reading.figure);
                continue;
            }
            const bool level = units::inDecibels(there->unit);
            const double given =
                reading.doubt > 0 ? reading.doubt : spread::measurementGuard(there->unit, reading.value);
            uncertainty.push_back(std::max(there->uncertainty, leastUncertainty) / coverage95);
            doubt.push_back((level ? given : given / std::abs(reading.value)) / coverage95);
            kinds.push_back(kind);
            const double ratio = reading.value / there->value;
            const double off = level       ? reading.value - there->value
                               : ratio > 0 ? std::log(ratio)
                                           : std::numeric_limits<double>::infinity();
            match.held.push_back({reading.figure, there->name, there->unit, reading.value, there->value, off});
        }
        for (const auto& [from, to] : called) match.names.emplace_back(from, to);
        weigh(match, uncertainty, doubt, kinds);
        return match;
    }
    /// Turns the differences into deviations, and sums them up.
    static void weigh(Match& match, const std::vector<double>& uncertainty, const std::vector<double>& doubt,
                      const std::vector<std::string>& kinds) {
        const auto n = static_cast<Eigen::Index>(match.held.size());
        if (n == 0) return;
        Matrix covariance = Matrix::Zero(n, n);
        Vector off(n);
        for (Eigen::Index i = 0; i < n; ++i) {
            const auto a = static_cast<std::size_t>(i);
            off(i) = match.held[a].deviations;
            for (Eigen::Index k = 0; k < n; ++k) {
                const auto b = static_cast<std::size_t>(k);
                if (kinds[a] == kinds[b]) covariance(i, k) = commonShare * uncertainty[a] * uncertainty[b];
            }
            covariance(i, i) = uncertainty[a] * uncertainty[a] + doubt[a] * doubt[a];
            match.held[a].deviations /= std::sqrt(covariance(i, i));
        }
        match.distance =
            off.allFinite() ? off.dot(covariance.llt().solve(off)) : std::numeric_limits<double>::infinity();
        match.probability = std::isfinite(match.distance)
                                ? 1 - measured::chiSquaredProbability(match.distance, static_cast<double>(n))
                                : 0;
        match.fits = match.probability >= leastFitting;
        std::stable_sort(match.held.begin(), match.held.end(),
                         [](const Held& a, const Held& b) { return std::abs(a.deviations) > std::abs(b.deviations); });
    }

    const std::vector<spread::FigureRead>& readings_;
    std::map<std::string, const units::Figure*> figures_;
};

}  // namespace

std::vector<Match> matched(const std::vector<Known>& designs, const std::vector<spread::FigureRead>& readings) {
    std::vector<Match> all;
    all.reserve(designs.size());
    for (std::size_t k = 0; k < designs.size(); ++k) {
        all.push_back(Matching(designs[k], readings).best());
        all.back().known = k;
    }
    std::stable_sort(all.begin(), all.end(), Matching::better);
    return all;
}

std::optional<PartingFigure> parting(const Known& first, const Known& second,
                                     const std::vector<spread::FigureRead>& readings) {
    std::optional<PartingFigure> best;
    for (const auto& a : first.figures) {
        const bool read =
            std::any_of(readings.begin(), readings.end(), [&](const auto& r) { return r.figure == a.name; });
        const auto b =
            std::find_if(second.figures.begin(), second.figures.end(), [&](const auto& f) { return f.name == a.name; });
        if (read || b == second.figures.end() || !std::isfinite(a.value) || !std::isfinite(b->value)) continue;
        const bool level = units::inDecibels(a.unit);
        if (!level && !(a.value > 0 && b->value > 0)) continue;
        const double guard = spread::measurementGuard(a.unit, a.value) / (level ? 1 : a.value);
        const double one = std::max(a.uncertainty, leastUncertainty),
                     other = std::max(b->uncertainty, leastUncertainty);
        const double apart = level ? a.value - b->value : std::log(a.value / b->value);
        const double deviations = std::abs(apart) / (std::sqrt(one * one + other * other + guard * guard) / coverage95);
        if (deviations < leastParting || (best && deviations <= best->deviations)) continue;
        best = PartingFigure{a.name, a.unit, a.value, b->value, deviations};
    }
    return best;
}

}  // namespace learn
