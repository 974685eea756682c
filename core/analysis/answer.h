// SPDX-License-Identifier: GPL-3.0-or-later
// The door: a design in, every figure and trace out.
#pragma once

#include <array>
#include <limits>
#include <map>
#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "catalog/catalog.h"
#include "coil/coil_build.h"
#include "design/design.h"
#include "units/figure.h"
#include "units/kind.h"

namespace analysis {

/// The core's loop in traces: as if the field were even across its sheets, which is soon there and short above their
/// eddy corner, or behind their eddy field.
enum class LoopKind { Static, BehindEddies };

/// What is asked besides the design. Defaults: first hook-up, 600 points from 0.1 Hz to 1 MHz, logarithmic.
struct Question {
    std::string hookUp;               ///< "" the first
    std::vector<double> frequencies;  ///< Hz, rising; empty: the usual grid
    bool everyHookUp = true;          ///< figures and promises of the other hook-ups too (traces only of `hookUp`)
    /// Other hook-ups' figures and traces through the core's loop may be the previous answer's, for once: to show an
    /// edit's curves first. Then `Answer::carried` is true, and the same is to be asked again in full.
    bool quick = false;
    /// Static with `quick`: traces that lie behind the sheets' eddy field are made with the static loop meanwhile.
    LoopKind loop = LoopKind::BehindEddies;
    bool operator==(const Question&) const = default;
};
/// Logarithmic grid, both ends included.
[[nodiscard]] std::vector<double> logarithmicGrid(double from, double to, int points);

/// One curve: a value for each of its trace's frequencies.
struct Curve {
    std::string name;   ///< column name in CSV: "magnitude_dB"
    std::string label;  ///< for people: "response", "phase"
    units::Kind kind = units::Kind::Number;
    std::string unit;  ///< "dB", "deg", "s", "ohm", "dBu"
    std::vector<double> y;
    bool logarithmic = false;        ///< shown on a logarithmic axis
    std::vector<std::string> words;  ///< instead of y where the column is text ("limit"); then y is empty
    /// What is above is computed and not known: shown as over this.
    double knownTo = std::numeric_limits<double>::infinity();
    /// A value as it is shown: at most what is known.
    [[nodiscard]] double shown(double value) const { return value > knownTo ? knownTo : value; }
};

/// What the curves of a trace run over.
struct Axis {
    std::string name = "frequency_Hz";  ///< column name in CSV
    std::string label = "frequency";    ///< for people
    units::Kind kind = units::Kind::Frequency;
    std::string unit = "Hz";
    bool logarithmic = true;
    bool operator==(const Axis&) const = default;
    [[nodiscard]] bool isFrequency() const { return kind == units::Kind::Frequency; }
};

/// One family of curves, over frequency unless `axis` says otherwise, as it goes into one CSV file and one plot.
struct Trace {
    std::string name;   ///< "response", "impedance", "headroom": file name and plot choice
    std::string title;  ///< for people
    std::string hookUp;
    std::vector<std::string> ports;
    Axis axis;
    std::vector<double> frequency;  ///< Hz, or what `axis` says; rising
    std::vector<Curve> curves;
    double validFrom = 0;  ///< outside this band curves are drawn dashed (frequencies alone)
    double validTo = 0;
    bool valid = true;  ///< false: the whole trace is outside validity
    std::string why;
    std::string source;  ///< how it is computed
    [[nodiscard]] const Curve* curve(std::string_view curveName) const;
};

/// How the design stands to one line of the brief.
enum class Standing { Kept, Thin, Broken, Unknown };
[[nodiscard]] std::string_view word(Standing standing) noexcept;  ///< "kept", "thin", "broken", "not computed"
struct PromiseState {
    int index = 0;  ///< into brief.promises, or (mask) brief.masks
    bool mask = false;
    std::string text;  ///< "−3 dB high (normal): at least 60 kHz"
    double limit = 0;
    double now = 0;          ///< mask: the value at the tightest frequency
    double margin = 0;       ///< in the figure's unit, positive when kept; for dB in dB
    double marginShare = 0;  ///< relative to the limit (dB: margin / 1 dB)
    units::Kind kind = units::Kind::Number;
    Standing standing = Standing::Unknown;
    std::string figure;
    double frequency = 0;  ///< mask: where it is tightest
    std::string why;       ///< if not computed or not valid
};

/// A stage of the pipeline, for tests that count what ran.
enum class Stage { Build, Leakage, Capacitance, Proximity, Core, Pieces, Solve, Figures, Traces };

/// Everything computed from one design. Immutable; stages whose inputs did not change are shared with the previous
/// answer.
struct Answer {
    std::shared_ptr<const coil::CoilBuild> build;
    std::vector<units::Figure> figures;  ///< in the order they are shown
    std::vector<std::shared_ptr<const Trace>> traces;
    std::vector<PromiseState> promises;    ///< broken first
    std::vector<std::string> assumptions;  ///< in words, as named with every result
    std::vector<Stage> ran;                ///< stages that this call computed (not taken from previous)
    std::string hookUp;
    /// Some figures or traces are still the previous answer's, or of the static loop (`Question`).
    bool carried = false;
    LoopKind loop = LoopKind::BehindEddies;  ///< as asked
    bool stopped = false;                    ///< the stop token was set: figures and traces are empty
    struct Stages;                           ///< keys and shared stage results; private to analysis
    std::shared_ptr<const Stages> stages;
    [[nodiscard]] const units::Figure* figure(std::string_view name) const;
    [[nodiscard]] const Trace* trace(std::string_view name) const;
    [[nodiscard]] std::shared_ptr<const Trace> sharedTrace(std::string_view name) const;
};
using AnswerPtr = std::shared_ptr<const Answer>;

/// Computes the answer to a checked design. `previous` may be null; a stage whose key is unchanged is taken from it.
/// Keeps nothing itself. Polls `stop` between stages and every few frequencies.
[[nodiscard]] AnswerPtr answer(const design::Design& design, const catalog::Catalog& shop,
                               const AnswerPtr& previous = {}, std::stop_token stop = {},
                               const Question& question = {});

/// Distortion of the hook-up that an answer shows, at one frequency and level.
struct DistortionRow {
    double frequency = 0;             ///< Hz
    double level = 0;                 ///< dBu of the fundamental where the brief counts levels
    double thd = 0;                   ///< share; not a number where no steady state was found
    std::array<double, 6> harmonics;  ///< 2 to 7, dB re the fundamental; -infinity: none
};
/// Every frequency at every level; `levels` in dBu as the linear network makes them. Empty where nothing drives the
/// core. Right to +-6 dB unless the alloy's loop was measured.
[[nodiscard]] std::vector<DistortionRow> distortionTable(const design::Design& design, const Answer& answer,
                                                         const std::vector<double>& frequencies,
                                                         const std::vector<double>& levels,
                                                         const std::stop_token& stop = {},
                                                         LoopKind loop = LoopKind::BehindEddies);

/// What can be plotted, in the order of choice: name and title of each kind of trace, and of what kind its first curve
/// is, which a mask limits.
struct TraceKind {
    std::string name;
    std::string title;
    units::Kind kind = units::Kind::Number;
};
[[nodiscard]] const std::vector<TraceKind>& traceKinds();

}  // namespace analysis
