// SPDX-License-Identifier: GPL-3.0-or-later
#include "learn/cause.h"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>

#include "analysis/in_threads.h"
#include "learn/evidence.h"
#include "learn/reading_model.h"
#include "learn/terminal_reader.h"
#include "units/fault.h"
#include "units/joined.h"

namespace learn {

namespace {

constexpr FaultDoubt faultDoubt{0.05, 0.04};  // our own rule
constexpr double groupShare = 0.98;           // of probability that the first group holds
constexpr double goodShare = 0.5;             // of units that have no fault, before anything is read
constexpr double unseen = 6;                  // of squared distance: a fault that fits no worse than this may be there
constexpr double partingLeast = 2;            // standard deviations that a further reading must tell
constexpr double upsetting = 1;               // neper: a fault that moves a reading so far has a spread of its own
constexpr double unexplained = 3.719;         // standard deviations of a normal law beyond which 1e-4 lie

/// The rows of a vector that are picked.
Vector picked(const Vector& all, const std::vector<Eigen::Index>& rows) {
    Vector some(static_cast<Eigen::Index>(rows.size()));
    for (std::size_t k = 0; k < rows.size(); ++k) some(static_cast<Eigen::Index>(k)) = all(rows[k]);
    return some;
}
Matrix picked(const Matrix& all, const std::vector<Eigen::Index>& rows, const std::vector<Eigen::Index>& columns) {
    Matrix some(static_cast<Eigen::Index>(rows.size()), static_cast<Eigen::Index>(columns.size()));
    for (std::size_t k = 0; k < rows.size(); ++k)
        for (std::size_t l = 0; l < columns.size(); ++l)
            some(static_cast<Eigen::Index>(k), static_cast<Eigen::Index>(l)) = all(rows[k], columns[l]);
    return some;
}

/// Whether chi-squared of so many degrees of freedom exceeds q once in ten thousand (E. B. Wilson and M. M. Hilferty,
/// 1931: its cube root is about normal; from memory).
bool isTooFar(double q, std::size_t freedom) {
    const double n = static_cast<double>(freedom), width = 2 / (9 * n);
    return std::cbrt(q / n) > 1 - width + unexplained * std::sqrt(width);
}

/// One finding in the making.
struct Sought {
    std::vector<Eigen::Index> read, missing;  ///< probes
    Vector values;                            ///< of those read
    Vector shift;                             ///< of every probe's nominal by what good units read
    Matrix covariance;                        ///< of every probe, without what a fault adds
};

/// A place on a fault's path.
struct Place {
    std::size_t before = 0;
    double share = 0;  ///< of the way to the next
    template <class T>
    [[nodiscard]] T between(const std::vector<T>& all) const {
        if (share <= 0) return all[before];
        return all[before] + share * (all[before + 1] - all[before]);
    }
};
Place placeOn(double place, std::size_t count) {
    Place at;
    at.before = std::min(static_cast<std::size_t>(place), count - 1);
    at.share = at.before + 1 < count ? place - static_cast<double>(at.before) : 0;
    return at;
}

}  // namespace

struct CauseFinder::Known {
    const catalog::Catalog& shop;
    ReadingModel model;
    std::vector<Fault> faults;
    std::vector<std::vector<Vector>> paths;  // in the probes' scales, a fault and a size each
    std::vector<double> prior;               // of each fault
    Matrix spread;
    std::vector<std::optional<Matrix>> spreads;  // of units with a fault that upsets everything

    [[nodiscard]] Vector instruments() const {
        Vector all(static_cast<Eigen::Index>(model.probes.size()));
        for (Eigen::Index k = 0; k < all.size(); ++k) all(k) = model.probes[static_cast<std::size_t>(k)].instrument;
        return all;
    }
    [[nodiscard]] Vector models() const {
        Vector all(static_cast<Eigen::Index>(model.probes.size()));
        for (Eigen::Index k = 0; k < all.size(); ++k) all(k) = model.probes[static_cast<std::size_t>(k)].model;
        return all;
    }
    [[nodiscard]] Vector scale(const std::vector<double>& values) const {
        auto told = values;
        for (std::size_t k = 0; k < told.size(); ++k)
            if (model.probes[k].kind == ProbeKind::Polarity)
                told[k] *= model.nominal[k];  // against what the plan states
        return scaledOf(model.probes, told);
    }
    void compute();
    void share();
    [[nodiscard]] bool upsets(std::size_t fault) const;
    [[nodiscard]] Matrix spreadWith(const Fault& fault) const;
    /// Fills in group and others; returns what the group's faults read, every probe.
    [[nodiscard]] std::vector<Vector> judge(const Sought& sought, Finding& finding) const;
    void deviate(const Sought& sought, Finding& finding) const;
    void seekNext(const Sought& sought, const std::vector<Vector>& group, Finding& finding) const;
};

/// Every fault at every size.
void CauseFinder::Known::compute() {
    std::vector<std::pair<std::size_t, std::size_t>> all;
    paths.resize(faults.size());
    for (std::size_t f = 0; f < faults.size(); ++f) {
        paths[f].resize(faults[f].sizes.size());
        for (std::size_t s = 0; s < faults[f].sizes.size(); ++s) all.emplace_back(f, s);
    }
    analysis::inThreads(all.size(), 0, {}, [&] {
        return [&](std::size_t k) {
            const auto [f, s] = all[k];
            const Unit unit = faults[f].at(*model.variation.base, faults[f].sizes[s]);
            paths[f][s] = scale(readings(unit, model.probes, shop));
        };
    });
    // What cannot be computed (a coil with no room for its wire) is not looked for.
    for (std::size_t f = faults.size(); f-- > 0;) {
        std::size_t good = 0;
        while (good < paths[f].size() && paths[f][good].allFinite()) ++good;
        paths[f].resize(good);
        faults[f].sizes.resize(good);
        if (good > 0) continue;
        paths.erase(paths.begin() + static_cast<std::ptrdiff_t>(f));
        faults.erase(faults.begin() + static_cast<std::ptrdiff_t>(f));
    }
}

/// Whether a fault without a size moves some reading by more than `upsetting`.
bool CauseFinder::Known::upsets(std::size_t fault) const {
    if (faults[fault].kind == FaultKind::None || paths[fault].size() != 1) return false;
    for (std::size_t k = 0; k < model.probes.size(); ++k) {
        const auto row = static_cast<Eigen::Index>(k);
        const bool sign = model.probes[k].kind == ProbeKind::Polarity;
        if (!sign && std::abs(paths[fault].front()(row) - model.scaled(row)) > upsetting) return true;
    }
    return false;
}

Matrix CauseFinder::Known::spreadWith(const Fault& fault) const {
    const auto read = [&](spread::UnitDesign& unit, const std::vector<double>& values) {
        return scale(readings(fault.at(unit.with(values), fault.sizes.front()), model.probes, shop));
    };
    const Matrix slopes = slopesOfAll(model.variation, read);
    return slopes * slopes.transpose();
}

void CauseFinder::Known::share() {
    std::map<FaultKind, double> places;
    for (const auto& fault : faults) places[fault.kind] += 1;
    const double kinds = std::max(1.0, static_cast<double>(places.size()) - 1);
    for (const auto& fault : faults)
        prior.push_back(fault.kind == FaultKind::None ? goodShare : (1 - goodShare) / kinds / places.at(fault.kind));
}

CauseFinder::CauseFinder(const design::Design& design, const shop::PlanPrediction& prediction,
                         const shop::TestPlan& plan, const catalog::Catalog& shop,
                         const catalog::Tolerances& tolerances, const design::Fixture& fixture) {
    auto known = std::make_unique<Known>(
        Known{shop, readingModel(design, prediction, plan, shop, tolerances, fixture), {}, {}, {}, {}, {}});
    known->model.scaled = known->scale(known->model.nominal);
    known->faults = faultsOf(*known->model.variation.base, shop);
    known->compute();
    known->share();
    known->spread = known->model.spread();
    known->spreads.resize(known->faults.size());
    for (std::size_t f = 0; f < known->faults.size(); ++f)
        if (known->upsets(f)) known->spreads[f] = known->spreadWith(known->faults[f]);
    known_ = std::move(known);
}

CauseFinder::~CauseFinder() = default;

const std::vector<Fault>& CauseFinder::faults() const noexcept {
    return known_->faults;
}

const spread::Variation& CauseFinder::variation() const noexcept {
    return known_->model.variation;
}

Readings CauseFinder::measuredOf(const Unit& unit, const std::function<double()>& deviate, bool model) const {
    const auto& probes = known_->model.probes;
    const Vector exact = known_->scale(readings(unit, probes, known_->shop));
    Readings all;
    std::map<std::string, double> signs;
    for (std::size_t k = 0; k < probes.size(); ++k) {
        const Probe& probe = probes[k];
        if (probe.kind == ProbeKind::Polarity) {
            signs[probe.name] = exact(static_cast<Eigen::Index>(k)) < 0 ? -1 : 1;
            continue;
        }
        double value = exact(static_cast<Eigen::Index>(k)) + probe.instrument * deviate();
        if (model) value += probe.model * deviate();
        if (std::isfinite(value)) all[probe.name] = unscaled(probe, value);
    }
    for (const auto& [name, sign] : signs)
        if (const auto at = all.find(name); at != all.end()) at->second *= sign;
    return all;
}

Readings CauseFinder::readingsOf(const Unit& unit) const {
    return measuredOf(
        unit, [] { return 0.0; }, false);
}

namespace {

/// Moves the nominal to good units, and says how uncertain it is then.
void takeGood(const std::vector<std::vector<double>>& good, const Vector& nominal, const Matrix& units,
              const Vector& models, Sought& sought) {
    const Eigen::Index count = nominal.size();
    sought.shift = Vector::Zero(count);
    Vector counts = Vector::Zero(count);
    for (const auto& one : good)
        for (Eigen::Index k = 0; k < count; ++k)
            if (const double value = one[static_cast<std::size_t>(k)]; std::isfinite(value)) {
                sought.shift(k) += value - nominal(k);
                counts(k) += 1;
            }
    sought.covariance = units;
    for (Eigen::Index k = 0; k < count; ++k) {
        if (counts(k) > 0) sought.shift(k) /= counts(k);
        if (!(counts(k) > 0)) sought.covariance(k, k) += models(k) * models(k);
    }
    for (Eigen::Index k = 0; k < count; ++k)
        for (Eigen::Index l = 0; l < count; ++l)
            if (counts(k) > 0 && counts(l) > 0) sought.covariance(k, l) += units(k, l) / std::max(counts(k), counts(l));
}

/// How far the faults of a group would read apart by one more probe: the greatest difference of two of them over the
/// standard deviation that is left of it once the others are read.
double parting(const std::vector<Vector>& group, const Sought& sought, Eigen::Index probe) {
    const Eigen::LLT<Matrix> factor(picked(sought.covariance, sought.read, sought.read));
    const Vector with = picked(sought.covariance, sought.read, {probe}).col(0);
    const Vector weights = factor.solve(with);
    const double left = sought.covariance(probe, probe) - with.dot(weights);
    double most = 0;
    for (std::size_t a = 0; a < group.size(); ++a)
        for (std::size_t b = a + 1; b < group.size(); ++b) {
            const Vector apart = group[a] - group[b];
            const double here = apart(probe) - weights.dot(picked(apart, sought.read));
            most = std::max(most, std::abs(here) / std::sqrt(std::max(left, 1e-12)));
        }
    return most;
}

}  // namespace

Finding CauseFinder::find(const Readings& readings, const std::vector<Readings>& good) const {
    const auto& model = known_->model;
    Finding finding;
    const auto values = scaledReadings(model.probes, readings, &finding.unknown);
    Sought sought;
    for (std::size_t k = 0; k < values.size(); ++k)
        (std::isfinite(values[k]) ? sought.read : sought.missing).push_back(static_cast<Eigen::Index>(k));
    if (sought.read.empty())
        units::refuse("readings", "none that the test plan of this design names",
                      "tests by the names in its limits: dcr.P, ratio.P.S");
    sought.values.resize(static_cast<Eigen::Index>(sought.read.size()));
    for (std::size_t k = 0; k < sought.read.size(); ++k)
        sought.values(static_cast<Eigen::Index>(k)) = values[static_cast<std::size_t>(sought.read[k])];
    finding.used = sought.read.size();
    std::vector<std::vector<double>> goodValues;
    goodValues.reserve(good.size());
    for (const auto& one : good) goodValues.push_back(scaledReadings(model.probes, one));
    Matrix units = known_->spread;
    units.diagonal() += known_->instruments().cwiseAbs2();
    takeGood(goodValues, model.scaled, units, known_->models(), sought);
    const std::vector<Vector> group = known_->judge(sought, finding);
    known_->deviate(sought, finding);
    if (group.size() > 1) known_->seekNext(sought, group, finding);
    return finding;
}

std::vector<Vector> CauseFinder::Known::judge(const Sought& sought, Finding& finding) const {
    const Vector none = picked(Vector(model.scaled + sought.shift), sought.read);
    const Matrix base = picked(sought.covariance, sought.read, sought.read);
    std::vector<Evidence> found;
    std::vector<double> logs;
    for (std::size_t f = 0; f < faults.size(); ++f) {
        Path path;
        for (const auto& at : paths[f]) path.at.push_back(picked(Vector(at + sought.shift), sought.read));
        Matrix own = base;
        if (spreads[f]) own += picked(Matrix(*spreads[f] - spread), sought.read, sought.read);
        found.push_back(evidence(sought.values, path, none, own, faultDoubt));
        logs.push_back(found.back().logarithm + std::log(prior[f]));
    }
    const double most = *std::max_element(logs.begin(), logs.end());
    double sum = 0;
    for (const double one : logs) sum += std::exp(one - most);
    std::vector<std::size_t> order(logs.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return logs[a] > logs[b]; });
    double reached = 0;
    std::vector<Vector> group;
    for (const std::size_t f : order) {
        const Place at = placeOn(found[f].place, paths[f].size());
        Likely one{faults[f].kind,
                   faults[f].words,
                   {},
                   std::exp(logs[f] - most) / sum,
                   std::sqrt(std::max(0.0, found[f].least))};
        if (faults[f].sizeWords) one.size = "about " + faults[f].sizeWords(at.between(faults[f].sizes));
        if (one.kind == FaultKind::None) finding.faulty = one.probability < goodShare;
        const bool first = reached < groupShare;
        reached += one.probability;
        if (first) group.push_back(at.between(paths[f]) + sought.shift);
        (first ? finding.group : finding.others).push_back(std::move(one));
    }
    if (!finding.faulty)
        for (const auto& one : finding.others)
            if (one.distance * one.distance < found.front().least + unseen) finding.hidden.push_back(one);
    finding.explained = !isTooFar(found[order.front()].least, sought.read.size());
    return group;
}

void CauseFinder::Known::deviate(const Sought& sought, Finding& finding) const {
    for (std::size_t k = 0; k < sought.read.size(); ++k) {
        const auto row = sought.read[k];
        const Probe& probe = model.probes[static_cast<std::size_t>(row)];
        const double value = sought.values(static_cast<Eigen::Index>(k)), none = model.scaled(row) + sought.shift(row);
        if (probe.kind == ProbeKind::Polarity && value > 0) continue;
        finding.deviations.push_back({probe.name, probe.words, probe.unit, unscaled(probe, value),
                                      unscaled(probe, none), (value - none) / std::sqrt(sought.covariance(row, row))});
    }
    std::stable_sort(finding.deviations.begin(), finding.deviations.end(),
                     [](const auto& a, const auto& b) { return std::abs(a.deviations) > std::abs(b.deviations); });
}

void CauseFinder::Known::seekNext(const Sought& sought, const std::vector<Vector>& group, Finding& finding) const {
    for (const auto row : sought.missing) {
        const Probe& probe = model.probes[static_cast<std::size_t>(row)];
        const double parts = parting(group, sought, row);
        if (parts >= partingLeast && (!finding.next || parts > finding.next->parts))
            finding.next = NextReading{probe.words, parts, probe.planned};
    }
}

}  // namespace learn
