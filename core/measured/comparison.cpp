// SPDX-License-Identifier: GPL-3.0-or-later
#include "measured/comparison.h"

#include <algorithm>
#include <cmath>

#include "analysis/between.h"
#include "units/csv_cell.h"
#include "units/fault.h"
#include "units/joined.h"
#include "units/text.h"

namespace measured {

namespace {

bool isAngle(CurveKind kind) {
    return kind == CurveKind::Phase || kind == CurveKind::ImpedanceAngle;
}

/// Whether the difference is told as a ratio in dB.
bool isRatio(CurveKind kind) {
    return kind == CurveKind::Impedance || kind == CurveKind::Distortion || kind == CurveKind::Noise;
}

double logarithm(double value) {
    return value > 0 ? 20 * std::log10(value) : std::nan("");
}

/// Values whose difference is meant: dB or degrees.
std::vector<double> scale(CurveKind kind, const std::vector<double>& values) {
    std::vector<double> scaled = values;
    if (isRatio(kind)) std::transform(scaled.begin(), scaled.end(), scaled.begin(), logarithm);
    return scaled;
}

double back(CurveKind kind, double scaled) {
    return isRatio(kind) ? std::pow(10, scaled / 20) : scaled;
}

double differenceOf(CurveKind kind, double measured, double predicted) {
    const double difference = measured - predicted;
    return isAngle(kind) ? std::remainder(difference, 360) : difference;
}

[[noreturn]] void refuse(const MeasuredCurve& curve, std::string found, std::string allowed) {
    units::refuse(curve.name, std::move(found), std::move(allowed));
}

std::string hertz(double f) {
    return units::write(units::Kind::Frequency, f, 4);
}

std::string range(const std::vector<double>& frequency) {
    if (frequency.empty()) return "nothing";
    return units::joined({hertz(frequency.front()), " to ", hertz(frequency.back())});
}

double levelAt(const MeasuredCurve& curve, const std::vector<double>& frequency, const std::vector<double>& scaled,
               double f) {
    const auto value = analysis::between(frequency, scaled, f);
    if (!value || !std::isfinite(*value)) refuse(curve, "told from " + hertz(f), range(frequency));
    return *value;
}

void sumUp(Comparison& c) {
    double sum = 0, squares = 0;
    for (std::size_t k = 0; k < c.frequency.size(); ++k) {
        if (!c.valid[k] || !std::isfinite(c.difference[k])) continue;
        ++c.inside;
        sum += c.difference[k];
        squares += c.difference[k] * c.difference[k];
        if (c.inside > 1 && std::abs(c.difference[k]) <= std::abs(c.largest)) continue;
        c.largest = c.difference[k];
        c.where = c.frequency[k];
    }
    if (c.inside == 0) return;
    c.mean = sum / static_cast<double>(c.inside);
    c.rms = std::sqrt(squares / static_cast<double>(c.inside));
}

std::string_view differenceUnit(CurveKind kind) {
    return isAngle(kind) ? "deg" : "dB";
}

std::string cellsAt(const Comparison& c, double f) {
    const auto at = std::lower_bound(c.frequency.begin(), c.frequency.end(), f);
    if (at == c.frequency.end() || *at != f) return ",,,,";
    const auto k = static_cast<std::size_t>(at - c.frequency.begin());
    return units::joined({",", units::csvCell(c.measured[k]), ",", units::csvCell(c.predicted[k]), ",",
                          units::csvCell(c.difference[k]), ",", c.valid[k] ? "yes" : "no"});
}

}  // namespace

Counterpart counterpart(CurveKind kind, const std::string& port) {
    const std::string side = port.empty() ? "source_side" : port;
    switch (kind) {
        case CurveKind::Response:
            return {"response", "magnitude_dB"};
        case CurveKind::Phase:
            return {"response", "phase_deg"};
        case CurveKind::Impedance:
            return {"impedance", side + "_ohm"};
        case CurveKind::ImpedanceAngle:
            return {"impedance", side + "_deg"};
        case CurveKind::Distortion:
            return {"distortion", "thd_percent"};
        case CurveKind::Noise:
            return {"noise", "output_V_per_rtHz"};
    }
    return {};
}

std::optional<std::string> sideOf(const design::HookUp& hookUp, const std::string& port) {
    for (const auto& use : hookUp.ports)
        if (use.port == port)
            return use.role == design::Role::Drive     ? "source_side"
                   : use.role == design::Role::Observe ? "load_side"
                                                       : port;
    return {};
}

Comparison comparison(const MeasuredCurve& curve, const analysis::Trace& trace, const std::string& column,
                      std::optional<double> relativeTo) {
    const analysis::Curve* predicted = trace.curve(column);
    if (predicted == nullptr || predicted->y.size() != trace.frequency.size() || !trace.axis.isFrequency()) {
        std::string all;
        for (const auto& one : trace.curves) all += (all.empty() ? "" : ", ") + one.name;
        refuse(curve, "no column \"" + column + "\" in " + trace.title, "one over frequency: " + all);
    }
    Comparison c;
    c.kind = curve.kind;
    c.trace = trace.name;
    c.curve = column;
    c.relativeTo = relativeTo;
    const std::vector<double> measuredScale = scale(curve.kind, curve.value),
                              predictedScale = scale(curve.kind, predicted->y);
    double measuredZero = 0, predictedZero = 0;
    if (relativeTo) {
        measuredZero = levelAt(curve, curve.frequency, measuredScale, *relativeTo);
        predictedZero = levelAt(curve, trace.frequency, predictedScale, *relativeTo);
    }
    for (std::size_t k = 0; k < curve.frequency.size(); ++k) {
        const double f = curve.frequency[k];
        const auto level = analysis::between(trace.frequency, predictedScale, f);
        if (!level) {
            ++c.outside;
            continue;
        }
        c.frequency.push_back(f);
        c.measured.push_back(back(curve.kind, measuredScale[k] - measuredZero));
        c.predicted.push_back(back(curve.kind, *level - predictedZero));
        c.difference.push_back(differenceOf(curve.kind, measuredScale[k] - measuredZero, *level - predictedZero));
        c.valid.push_back(trace.valid && f >= trace.validFrom && (trace.validTo <= 0 || f <= trace.validTo));
    }
    if (c.frequency.empty()) refuse(curve, range(curve.frequency), "frequencies within " + range(trace.frequency));
    sumUp(c);
    return c;
}

Comparison comparison(const MeasuredCurve& curve, const analysis::Answer& answer, const std::string& side,
                      std::optional<double> relativeTo, const std::string& file) {
    const auto to = counterpart(curve.kind, side);
    const analysis::Trace* trace = answer.trace(to.trace);
    if (trace == nullptr)
        units::refuse(file, units::joined({"a curve of ", word(curve.kind)}),
                      units::joined({"what the hook-up ", answer.hookUp, " has"}));
    return comparison(curve, *trace, to.curve, relativeTo);
}

std::string comparisonCsv(const std::vector<Comparison>& comparisons) {
    std::string text = "frequency_Hz";
    for (const Comparison& c : comparisons) {
        std::string name(word(c.kind));
        std::replace(name.begin(), name.end(), ' ', '_');
        // Told from one frequency, impedance and the like are shares of their value there.
        const std::string_view one = c.relativeTo && isRatio(c.kind) ? "ratio" : unit(c.kind);
        text += units::joined({",", name, "_measured_", one, ",", name, "_predicted_", one, ",", name, "_difference_",
                               differenceUnit(c.kind), ",", name, "_valid"});
    }
    text += "\n";
    if (comparisons.empty()) return text;
    for (const double f : comparisons.front().frequency) {
        text += units::shortest(f);
        for (const Comparison& c : comparisons) text += cellsAt(c, f);
        text += "\n";
    }
    return text;
}

std::string comparisonWords(const Comparison& c) {
    const auto amount = [&](double value) {
        return units::joined({units::significant(value, 3), " ", differenceUnit(c.kind)});
    };
    std::string text =
        units::joined({word(c.kind), " against ", c.trace, " ", c.curve, ": ", std::to_string(c.inside), " of ",
                       std::to_string(c.frequency.size() + c.outside), " points compared, ", range(c.frequency), "\n"});
    if (c.relativeTo) text += units::joined({"  both told from their value at ", hertz(*c.relativeTo), "\n"});
    if (c.outside > 0) text += units::joined({"  ", std::to_string(c.outside), " outside what was computed\n"});
    if (c.inside == 0) return text + "  none within the band where the computation is valid\n";
    return text + units::joined({"  largest difference ", amount(c.largest), " at ", hertz(c.where), "\n  mean ",
                                 amount(c.mean), ", rms ", amount(c.rms), "\n"});
}

}  // namespace measured
