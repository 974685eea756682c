// SPDX-License-Identifier: GPL-3.0-or-later
#include "analysis/core_in_time.h"

#include <algorithm>
#include <cmath>

namespace analysis {

namespace {

constexpr int mostHalvings = 12;
constexpr long halvingsOfACall = 32;  // on average; a jump takes more, what follows less
constexpr double fluxTolerance = 1e-5, emfTolerance = 1e-4;

double twiceReal(const std::complex<double>& pole, const std::complex<double>& value) {
    return (pole.imag() == 0 ? 1 : 2) * value.real();
}

}  // namespace

CoreNetwork::CoreNetwork(const std::vector<double>& frequencies, const std::vector<AroundCore>& around, double area,
                         double path)
    : area_(area), path_(path), worth_(0) {
    constexpr double close = 5e-3;
    std::vector<std::vector<std::complex<double>>> values(around.front().all().size());
    std::vector<double> greatest(values.size(), 0), trust;
    for (const AroundCore& at : around) {
        const auto all = at.all();
        trust.push_back(at.trust);
        for (std::size_t i = 0; i < all.size(); ++i) {
            values[i].push_back(all[i]);
            greatest[i] = std::max(greatest[i], std::abs(all[i]));
        }
    }
    for (const int order : {16, 24}) {
        PartialFractions tried = partialFractions(frequencies, values, order, trust);
        if (fit_.poles.empty() || tried.error < fit_.error) fit_ = std::move(tried);
        if (fit_.error < close) break;
    }
    worth_ = greatest[CoreVoltage] > 0 ? greatest[CoreDrop] / greatest[CoreVoltage] : 0;
}

template <class Core>
CoreRun<Core>::CoreRun(const CoreNetwork& network, Core core, double directField, double peakEmf)
    : network_(&network),
      core_(std::move(core)),
      direct_(directField),
      peakEmf_(peakEmf),
      flux_(core_.rest(directField)),
      poles_(network.fit().poles.size()),
      work_(std::make_shared<Work>()) {}

template <class Core>
void CoreRun<Core>::step(const Steps& steps, double from, double to) {
    const PartialFractions& fit = network_->fit();
    const auto& voltage = fit.residue[CoreNetwork::CoreVoltage];
    const auto& drop = fit.residue[CoreNetwork::CoreDrop];
    // What is gathered of the core's voltage, V s, but for the current at the end; and of that for an ampere-turn.
    double gathered = 0, atEnd = 0;
    for (std::size_t k = 0; k < poles_.size(); ++k) {
        const StraightStep& s = steps[k];
        const Pole& y = poles_[k];
        const auto emf = s.gathered * y.byEmf + s.gatheredStart * from + s.gatheredEnd * to;
        const auto core = s.gathered * y.byCore + s.gatheredStart * current_;
        gathered += twiceReal(fit.poles[k], voltage[k] * emf - drop[k] * core);
        atEnd += twiceReal(fit.poles[k], drop[k] * s.gatheredEnd);
    }
    // In a step far shorter than anything in the band the fit says nothing of the sign.
    const double weight = std::max(atEnd, 1e-12 * network_->worth()) * network_->path() / network_->area();
    flux_ = core_.follow(flux_ + gathered / network_->area() + weight * direct_, weight);
    const double current = network_->path() * (core_.field() - direct_);
    for (std::size_t k = 0; k < poles_.size(); ++k) {
        const StraightStep& s = steps[k];
        poles_[k].byEmf = s.stay * poles_[k].byEmf + s.start * from + s.end * to;
        poles_[k].byCore = s.stay * poles_[k].byCore + s.start * current_ + s.end * current;
    }
    current_ = current;
    greatestFlux_ = std::max(greatestFlux_, std::abs(flux_));
}

template <class Core>
bool CoreRun<Core>::near(const CoreRun& other) const noexcept {
    return std::abs(flux_ - other.flux_) <= fluxTolerance * greatestFlux_ &&
           std::abs(current_ - other.current_) * network_->worth() <= emfTolerance * peakEmf_;
}

template <class Core>
const typename CoreRun<Core>::Steps& CoreRun<Core>::stepsOf(double duration) const {
    Steps& steps = work_->known[duration];
    if (steps.empty())
        for (const auto& pole : network_->fit().poles) steps.emplace_back(pole, duration);
    return steps;
}

/// Goes on in halves; `whole` is where one step leads.
template <class Core>
void CoreRun<Core>::refine(double duration, double from, double to, int halvings, CoreRun whole) {
    const double half = duration / 2, middle = (from + to) / 2;
    const Steps& steps = stepsOf(half);
    CoreRun first = *this;
    first.step(steps, from, middle);
    CoreRun second = first;
    second.step(steps, middle, to);
    const bool close = second.near(whole);
    work_->hurried = work_->hurried || (!close && work_->left <= 0);
    if (halvings == 0 || close || work_->left-- <= 0) {
        *this = std::move(second);
        return;
    }
    refine(half, from, middle, halvings - 1, std::move(first));
    CoreRun end = *this;
    end.step(steps, middle, to);
    refine(half, middle, to, halvings - 1, std::move(end));
}

template <class Core>
void CoreRun<Core>::go(double duration, double from, double to) {
    work_->left += halvingsOfACall;
    CoreRun whole = *this;
    whole.step(stepsOf(duration), from, to);
    refine(duration, from, to, mostHalvings, std::move(whole));
}

template <class Core>
double CoreRun<Core>::sum(CoreNetwork::Function ofEmf, double sign, CoreNetwork::Function ofCore) const noexcept {
    const PartialFractions& fit = network_->fit();
    double sum = 0;
    for (std::size_t k = 0; k < poles_.size(); ++k)
        sum += twiceReal(fit.poles[k],
                         fit.residue[ofEmf][k] * poles_[k].byEmf + sign * fit.residue[ofCore][k] * poles_[k].byCore);
    return sum;
}

template <class Core>
double CoreRun<Core>::output() const noexcept {
    return sum(CoreNetwork::Output, -1, CoreNetwork::OutputDrop);
}

template <class Core>
double CoreRun<Core>::source() const noexcept {
    return sum(CoreNetwork::Source, 1, CoreNetwork::SourceToCore);
}

template class CoreRun<LoopInTime>;
template class CoreRun<LinearInTime>;

}  // namespace analysis
