// SPDX-License-Identifier: GPL-3.0-or-later
// A measured curve held against a computed one.
#pragma once

#include <optional>

#include "analysis/answer.h"
#include "design/hook_up.h"
#include "measured/measured_curve.h"

namespace measured {

/// The trace that a kind of curve is held against, and its column: "impedance" and "source_side_ohm".
struct Counterpart {
    std::string trace, curve;
};
/// `port`: of impedance, the port's name; "" the source side. Of the rest it is not used.
[[nodiscard]] Counterpart counterpart(CurveKind kind, const std::string& port);

/// How columns of impedance call a port of the hook-up: "source_side" where it is driven, "load_side" where it is
/// observed, else by its name; nothing where the hook-up has no such port.
[[nodiscard]] std::optional<std::string> sideOf(const design::HookUp& hookUp, const std::string& port);

/// Measured less predicted: dB, degrees within +-180; impedance, distortion and noise as 20 log10 of their ratio, dB.
struct Comparison {
    CurveKind kind = CurveKind::Response;
    std::string trace, curve;  ///< what it was held against
    std::vector<double> frequency, measured, predicted, difference;
    std::vector<bool> valid;              ///< within the trace's valid band
    std::optional<double> relativeTo;     ///< Hz: both curves less their own value there
    std::size_t outside = 0, inside = 0;  ///< measured frequencies that the trace does not reach; those counted below
    // Of the frequencies within the valid band:
    double largest = 0;  ///< the difference of largest size, with its sign
    double where = 0;    ///< Hz, of the largest
    double mean = 0, rms = 0;
};

/// Straight lines over log f between the trace's points; of quantities above 0 whose difference is a ratio, lines of
/// their logarithm. Frequencies outside the trace are left out. `relativeTo`, Hz, for a response whose level was not
/// measured against the source's EMF: both curves are told from their own value there. Throws units::BadInput, place
/// the curve's name: no such column in the trace, nothing measured that the trace reaches, or `relativeTo` outside
/// either curve.
[[nodiscard]] Comparison comparison(const MeasuredCurve& curve, const analysis::Trace& trace, const std::string& column,
                                    std::optional<double> relativeTo = {});

/// The same against the curve of an answer that it belongs to (`counterpart`), impedance at that side. Throws as well,
/// place `file`, where the answer's hook-up has no such curve.
[[nodiscard]] Comparison comparison(const MeasuredCurve& curve, const analysis::Answer& answer, const std::string& side,
                                    std::optional<double> relativeTo, const std::string& file);

/// "frequency_Hz", then of each "response_measured_dB,response_predicted_dB,response_difference_dB,response_valid", and
/// a line for each frequency of the first.
[[nodiscard]] std::string comparisonCsv(const std::vector<Comparison>& comparisons);
/// Some lines for people: how many points, largest difference and where, mean, rms.
[[nodiscard]] std::string comparisonWords(const Comparison& comparison);

}  // namespace measured
