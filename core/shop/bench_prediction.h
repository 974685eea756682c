// SPDX-License-Identifier: GPL-3.0-or-later
// What is expected of readings in the fixture: nominal values, and how far units and the method may differ.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "analysis/answer.h"
#include "catalog/shop_tolerance.h"
#include "shop/bench.h"
#include "shop/test_window.h"

namespace shop {

/// What is to be predicted.
struct BenchQuestion {
    std::vector<double> response;    ///< Hz, rising; of the first hook-up, re 1 kHz
    std::vector<double> distortion;  ///< Hz
    double level = 0;                ///< of the generator's EMF for them, dBu
};

/// A level or distortion at one frequency.
struct AtFrequency {
    double frequency = 0;
    Expected expected;  ///< dB re 1 kHz, or of the harmonics re the fundamental
};

/// What a voltmeter reads of a winding with the first one driven and all else open.
struct RatioReading {
    double frequency = 0;  ///< Hz, of those tried the one at which least comes off the ratio of turns
    double value = 0;      ///< voltage over voltage
    double doubt = 0;      ///< of it, as a share: what comes off, times the doubt of the inductance
    double turns = 0;      ///< the ratio of turns
};

/// One state of the unit, laminated or filled, in the fixture.
struct BenchState {
    Bench bench;
    analysis::AnswerPtr answer;
    std::map<std::string, Expected> figures;  ///< those of `answer` that have a value, by name
    std::vector<AtFrequency> response, distortion;
    std::optional<Expected> resonance;           ///< Hz, of the driven port with all else open
    std::map<std::string, RatioReading> ratios;  ///< by winding, but the first
};

/// Half widths that hold 99 % of units, by figure, response point and frequency of distortion.
struct BenchSpread {
    std::map<std::string, double> figures;  ///< in the figure's unit
    std::vector<double> response;           ///< dB
    std::vector<double> distortion;         ///< dB
};

/// Half width of 99 % of units that vary by the normal law, in standard deviations.
inline constexpr double coverage = 2.576;

/// What varies from unit to unit on the bench: a shop's tolerances without mistakes in turns, sources, loads and
/// temperature.
[[nodiscard]] catalog::Tolerances benchTolerances(catalog::Tolerances tolerances);

/// Tolerance analysis of a unit on the bench: each number that varies alone, one standard deviation to either side
/// (`spread::UnitDesign`), half of what that changes; the root of the squares of all, those of one lot together (law of
/// propagation with correlated numbers, JCGM 100:2008, 5.2; first order) times `coverage`. Layers are cut as the base
/// unit's are, so that a unit does not differ by its cut. What the fixture replaces (source, load) does not vary;
/// temperature is corrected for; mistakes in turns are what the tests are to find.
/// `previous` as below.
[[nodiscard]] BenchSpread benchSpread(const Bench& bench, const catalog::Catalog& shop,
                                      const catalog::Tolerances& tolerances, const BenchQuestion& question,
                                      const analysis::AnswerPtr& previous);

/// Nominal values with the spread around them. Response: the model's doubt is what the curve changes when it is moved
/// along the frequency by the relative doubt of its nearer band edge. Resonance: half of the doubts of inductance and
/// capacitance. `previous`: any answer to the same unit, to take its fields from.
[[nodiscard]] BenchState benchState(Bench bench, const catalog::Catalog& shop, const BenchSpread& spread,
                                    const BenchQuestion& question, const analysis::AnswerPtr& previous);

/// A design with one hook-up shown, besides its first, from which winding figures are read. What is slow and not read
/// here, traces through the core's loop, is left to `previous`.
struct HookUpAnswer {
    design::Design design;
    analysis::AnswerPtr answer;
};
[[nodiscard]] HookUpAnswer hookUpAnswer(const design::Design& design, const design::HookUp& hookUp,
                                        const catalog::Catalog& shop, const analysis::AnswerPtr& previous,
                                        const std::vector<double>& frequencies = {});
/// The first winding driven by a voltage, the other read, both starts and the core earthed; its ports.
[[nodiscard]] design::HookUp ratioHookUp(const design::Winding& first, const design::Winding& other);
[[nodiscard]] std::vector<design::Port> ratioPorts(const design::Winding& first, const design::Winding& other);
/// Of every winding but the first, in a state that has its figures.
[[nodiscard]] std::map<std::string, RatioReading> ratioReadings(const BenchState& state, const catalog::Catalog& shop);
/// What the figures of the k-th of the bench's hook-ups are called behind their own name.
[[nodiscard]] std::string figureSuffix(const design::Design& bench, std::size_t hookUp);

}  // namespace shop
