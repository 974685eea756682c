// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/scale.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace plots {

namespace {

constexpr double deepestDecibels = 80;

struct Extremes {
    double low = std::numeric_limits<double>::infinity();
    double high = -std::numeric_limits<double>::infinity();
    [[nodiscard]] bool empty() const { return !(low <= high); }
};

Extremes extremes(const analysis::Trace& trace, const std::vector<const analysis::Curve*>& curves, double from,
                  double to) {
    Extremes found;
    for (const analysis::Curve* curve : curves) {
        for (std::size_t i = 0; i < curve->y.size() && i < trace.frequency.size(); ++i) {
            const double y = curve->shown(curve->y[i]);
            if (trace.frequency[i] < from || trace.frequency[i] > to || !std::isfinite(y)) continue;
            if (curve->logarithmic && y <= 0) continue;
            found.low = std::min(found.low, y);
            found.high = std::max(found.high, y);
        }
    }
    return found;
}

double roundStep(double span) {
    const double decade = std::pow(10, std::floor(std::log10(span)));
    for (const double step : {0.1, 0.2, 0.5}) {
        if (span / (step * decade) <= 12) return step * decade;
    }
    return decade;
}

QCPRange linearRange(Extremes e, double step) {
    const double low = std::floor(e.low / step - 0.05) * step;
    double high = std::ceil(e.high / step + 0.05) * step;
    if (high <= low) high = low + step;
    return {low, high};
}

}  // namespace

QString tickText(double value, bool prefixed) {
    if (value == 0) return QStringLiteral("0");
    static constexpr std::array<const char*, 9> prefixes{"p", "n", "µ", "m", "", "k", "M", "G", "T"};
    const double size = std::abs(value);
    int step = prefixed ? static_cast<int>(std::floor(std::log10(size * 1.0000001) / 3)) : 0;
    step = std::clamp(step, -4, 4);
    QString text = QString::number(size / std::pow(1000, step), 'g', 4);
    if (value < 0) text.prepend(QChar(0x2212));
    if (step != 0) text += QChar(0x2009) + QString::fromUtf8(*(prefixes.begin() + (step + 4)));
    return text;
}

QString unitText(const std::string& unit) {
    if (unit == "ohm") return QStringLiteral("Ω");
    if (unit == "deg") return QStringLiteral("°");
    return QString::fromStdString(unit).replace(QLatin1String("/rtHz"), QStringLiteral("/√Hz"));
}

bool takesPrefix(const std::string& unit) {
    return !unit.empty() && unit != "deg" && unit != "%" && !unit.starts_with("dB");
}

double valueAt(const std::vector<double>& frequency, const analysis::Curve& curve, double f, bool logarithmic) {
    constexpr double none = std::numeric_limits<double>::quiet_NaN();
    if (frequency.empty() || curve.y.size() != frequency.size() || f < frequency.front() || f > frequency.back())
        return none;
    const auto after = std::lower_bound(frequency.begin(), frequency.end(), f);
    const auto i = static_cast<std::size_t>(after - frequency.begin());
    if (*after == f || i == 0) return curve.shown(curve.y[i]);
    const double low = frequency[i - 1], high = frequency[i];
    const double share = logarithmic ? std::log(f / low) / std::log(high / low) : (f - low) / (high - low);
    const double a = curve.shown(curve.y[i - 1]), b = curve.shown(curve.y[i]);
    if (curve.logarithmic && a > 0 && b > 0) return a * std::pow(b / a, share);
    return a + (b - a) * share;
}

QCPRange roundRange(const analysis::Trace& trace, const std::vector<const analysis::Curve*>& curves, double from,
                    double to) {
    Extremes e = extremes(trace, curves, from, to);
    if (e.empty()) return {curves.empty() || !curves.front()->logarithmic ? 0.0 : 1.0, 10.0};
    const analysis::Curve& first = *curves.front();
    if (first.logarithmic) {
        const double low = std::floor(std::log10(e.low) + 1e-9), high = std::ceil(std::log10(e.high) - 1e-9);
        return {std::pow(10, low), std::pow(10, high > low ? high : low + 1)};
    }
    if (first.unit == "deg") {
        QCPRange range = linearRange(e, 45);
        if (range.size() < 90) range.upper = range.lower + 90;
        return range;
    }
    if (first.unit.starts_with("dB")) {
        // Of a level against frequency the low end matters: there the core gives up.
        if (first.unit == "dBu")
            e.high = std::min(e.high, e.low + deepestDecibels);
        else
            e.low = std::max(e.low, e.high - deepestDecibels);
        const double span = e.high - e.low;
        return linearRange(e, span > 40 ? 10 : span > 15 ? 5 : span > 4 ? 2 : 1);
    }
    const double span = std::max(e.high - e.low, std::max(std::abs(e.high), 1e-12) * 1e-3);
    return linearRange(e, roundStep(span));
}

}  // namespace plots
