// SPDX-License-Identifier: GPL-3.0-or-later
// A core's loop in a linear network, step by step in time.
#pragma once

#include <map>
#include <memory>
#include <vector>

#include "analysis/rational_fit.h"
#include "magnetics/core_loop.h"

namespace analysis {

/// The network around a core at one frequency, without the core's static inductance but with its sheets' eddy currents.
struct AroundCore {
    std::complex<double> coreVoltage;   ///< of a turn, for 1 V of EMF
    std::complex<double> coreDrop;      ///< of that, for an ampere in one turn, ohm
    std::complex<double> output;        ///< at the observed port, for 1 V of EMF
    std::complex<double> outputDrop;    ///< of that, for an ampere in one turn, ohm
    std::complex<double> source;        ///< current out of the source for 1 V of EMF, A
    std::complex<double> sourceToCore;  ///< of that, more for an ampere in one turn
    double trust = 1;                   ///< weight of these numbers in a fit
    [[nodiscard]] std::vector<std::complex<double>> all() const {
        return {coreVoltage, coreDrop, output, outputDrop, source, sourceToCore};
    }
};

/// The same as partial fractions, good for times from some microseconds on.
class CoreNetwork {
public:
    /// `around` at rising frequencies, Hz; `area` of the core, m2, `path` m. Sixteen poles,
    /// twenty-four where those leave more than 0.5 %.
    CoreNetwork(const std::vector<double>& frequencies, const std::vector<AroundCore>& around, double area,
                double path);
    enum Function : std::size_t { CoreVoltage, CoreDrop, Output, OutputDrop, Source, SourceToCore };
    [[nodiscard]] const PartialFractions& fit() const noexcept { return fit_; }
    [[nodiscard]] double area() const noexcept { return area_; }
    [[nodiscard]] double path() const noexcept { return path_; }
    /// V of EMF that an ampere-turn is worth, greatest over greatest: a measure for tolerances.
    [[nodiscard]] double worth() const noexcept { return worth_; }

private:
    PartialFractions fit_;
    double area_, path_, worth_;
};

/// A core that knows its loop.
class LoopInTime {
public:
    LoopInTime(const magnetics::CoreLoop& loop, magnetics::CoreLoop::Memory memory)
        : loop_(&loop), memory_(std::move(memory)) {}
    /// Goes to an applied field; flux density, T.
    double rest(double field) { return loop_->follow(memory_, field).value; }
    /// Goes to B + weight H = wave.
    double follow(double wave, double weight) {
        memory_.steepness = 0;  // the weight changes from step to step: no guess from the last one
        return loop_->followWave(memory_, wave, weight).value;
    }
    [[nodiscard]] double field() const noexcept { return memory_.applied; }

private:
    const magnetics::CoreLoop* loop_;
    magnetics::CoreLoop::Memory memory_;
};

/// A core with the small-signal slope of one, T per A/m, in any field.
class LinearInTime {
public:
    explicit LinearInTime(double slope) : slope_(slope) {}
    double rest(double field) {
        field_ = field;
        return slope_ * field;
    }
    double follow(double wave, double weight) {
        field_ = wave / (slope_ + weight);
        return slope_ * field_;
    }
    [[nodiscard]] double field() const noexcept { return field_; }

private:
    double slope_, field_ = 0;
};

/// A network and its core driven with an EMF, from rest in a steady direct field:
///
///     A dB/dt = V * e - Z * i,   i = l (H - H_d),   output = O * e - P * i,   source current = S * e + T * i,
///
/// * convolution with the partial fractions above, exact for e and i straight within a step; B(H) the core's. For a
/// resistor that is the trapezoidal rule. Each step is one equation B + w H = c with w > 0, which always has its one
/// root. A step is halved until its halves say the same (1e-4 of the EMF that i is worth, 1e-5 of the flux), or until
/// the run has taken 64 steps a call on average: ringing sharper than that is not followed, and `hurried` says so. The
/// sheets' eddy field stays in the network as of small signal, as in `LargeSignal`. Convolution by recursion: any text
/// on transients in linear networks; arrangement derived.
template <class Core>
class CoreRun {
public:
    CoreRun(const CoreNetwork& network, Core core, double directField, double peakEmf);
    /// On by `duration`, s, while the EMF goes straight from one value to another; it may jump between calls.
    void go(double duration, double from, double to);
    [[nodiscard]] double flux() const noexcept { return flux_; }            ///< T
    [[nodiscard]] double field() const noexcept { return core_.field(); }   ///< N I / l, A/m, the direct field too
    [[nodiscard]] double current() const noexcept { return current_; }      ///< i, ampere-turns
    [[nodiscard]] double output() const noexcept;                           ///< V
    [[nodiscard]] double source() const noexcept;                           ///< A, without the direct current
    [[nodiscard]] bool hurried() const noexcept { return work_->hurried; }  ///< steps stayed longer than they should be

private:
    struct Pole {
        std::complex<double> byEmf, byCore;
    };
    using Steps = std::vector<StraightStep>;
    /// Shared with copies, which stay in one thread.
    struct Work {
        std::map<double, Steps> known;  // by duration
        long left = 8192;               // halvings
        bool hurried = false;
    };
    [[nodiscard]] const Steps& stepsOf(double duration) const;
    void step(const Steps& steps, double from, double to);
    void refine(double duration, double from, double to, int halvings, CoreRun whole);
    [[nodiscard]] double sum(CoreNetwork::Function ofEmf, double sign, CoreNetwork::Function ofCore) const noexcept;
    [[nodiscard]] bool near(const CoreRun& other) const noexcept;

    const CoreNetwork* network_;
    Core core_;
    double direct_, peakEmf_;
    double flux_ = 0, current_ = 0, greatestFlux_ = 0;
    std::vector<Pole> poles_;
    std::shared_ptr<Work> work_;
};

extern template class CoreRun<LoopInTime>;
extern template class CoreRun<LinearInTime>;

}  // namespace analysis
