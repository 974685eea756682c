// SPDX-License-Identifier: GPL-3.0-or-later
// Axis ranges that look right, tick labels, and reading between the points of a curve.
#pragma once

#include <qcustomplot.h>

#include <QString>
#include <string>
#include <vector>

#include "analysis/answer.h"

namespace plots {

inline constexpr double frequencyLow = 1;     ///< Hz, what a plot shows at first
inline constexpr double frequencyHigh = 1e6;  ///< Hz

/// "1 k", "2.5 M", "−40": at most four digits and a prefix; prefixes only for units that take them.
[[nodiscard]] QString tickText(double value, bool prefixed);

/// The unit for people: "Ω" for "ohm", "°" for "deg".
[[nodiscard]] QString unitText(const std::string& unit);
/// Whether numbers of this unit are written with k, M, µ (not dB, dBu, deg, %, or pure numbers).
[[nodiscard]] bool takesPrefix(const std::string& unit);

/// The value at `f`, between the points straight on a logarithmic frequency axis, or a plain one where `logarithmic`
/// is false (and a logarithmic value axis where the curve has one), at most what is known; NaN outside.
[[nodiscard]] double valueAt(const std::vector<double>& frequency, const analysis::Curve& curve, double f,
                             bool logarithmic = true);

/// A range with round ends that holds the curves' finite values between `from` and `to` Hz: whole decades when
/// logarithmic, multiples of 45 degrees, at most 80 dB below the highest (maximum levels: above
/// the lowest), else of 1, 2 or 5.
[[nodiscard]] QCPRange roundRange(const analysis::Trace& trace, const std::vector<const analysis::Curve*>& curves,
                                  double from, double to);

/// Logarithmic ticks, with prefixes or without.
class PrefixedLogTicker : public QCPAxisTickerLog {
public:
    explicit PrefixedLogTicker(bool prefixed = true) : prefixed_(prefixed) {}

protected:
    QString getTickLabel(double tick, const QLocale&, QChar, int) override { return tickText(tick, prefixed_); }

private:
    bool prefixed_;
};
/// Linear ticks, with prefixes or without.
class PlainTicker : public QCPAxisTicker {
public:
    explicit PlainTicker(bool prefixed) : prefixed_(prefixed) {}

protected:
    QString getTickLabel(double tick, const QLocale&, QChar, int) override { return tickText(tick, prefixed_); }

private:
    bool prefixed_;
};
/// Ticks at multiples of 45, 90 or 180 degrees.
class DegreeTicker : public PlainTicker {
public:
    DegreeTicker() : PlainTicker(false) {}

protected:
    double getTickStep(const QCPRange& range) override {
        return range.size() > 720   ? 180
               : range.size() > 200 ? 90
               : range.size() > 90  ? 45
                                    : QCPAxisTicker::getTickStep(range);
    }
};

}  // namespace plots
