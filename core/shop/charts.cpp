// SPDX-License-Identifier: GPL-3.0-or-later
// The curves that a customer sees.
#include <algorithm>
#include <cmath>
#include <limits>

#include "shop/datasheet_parts.h"

namespace shop {

namespace {

Chart started(const analysis::Trace& trace, const std::string& title) {
    Chart chart;
    chart.title = title;
    chart.frequency = trace.frequency;
    chart.validFrom = trace.validFrom;
    chart.validTo = trace.validTo;
    chart.valid = trace.valid;
    return chart;
}

/// A curve's label: plain words where it is one of those, else the name of a port or hook-up.
std::string labelOf(const analysis::Curve& curve, const Words& say) {
    for (const char* plain : {"response", "phase", "impedance", "maximum level", "distortion", "rejection",
                              "source side", "load side", "with 10 ohm in one leg"})
        if (curve.label == plain) return say(plain);
    return curve.label;
}

/// Lines of a unit; those whose curve has a name of its own in front ("monitor_phase_deg") are left out if `first`.
void addLines(Chart& chart, const analysis::Trace& trace, const std::string& unit, bool right, bool first,
              const Words& say) {
    for (const analysis::Curve& curve : trace.curves) {
        if (curve.unit != unit || curve.y.size() != trace.frequency.size()) continue;
        ChartLine line{labelOf(curve, say), right, curve.y};
        for (double& y : line.y) y = curve.shown(y);
        chart.lines.push_back(std::move(line));
        if (first) return;
    }
}

std::vector<design::MaskPoint> maskOf(const design::Design& design, const analysis::Trace& trace, double reference) {
    std::vector<design::MaskPoint> points;
    for (const design::Mask& mask : design.brief.masks) {
        const std::string& hookUp = mask.hookUp.empty() ? design.hookUps.front().name : mask.hookUp;
        if (mask.trace != "response" || hookUp != trace.hookUp) continue;
        if (!points.empty()) points.push_back({});  // parts two masks
        for (design::MaskPoint point : mask.points) {
            if (point.low) *point.low += reference;
            if (point.high) *point.high += reference;
            points.push_back(point);
        }
    }
    return points;
}

double at1kHz(const analysis::Trace& trace, const analysis::Curve& curve) {
    for (std::size_t k = 0; k < trace.frequency.size() && k < curve.y.size(); ++k)
        if (trace.frequency[k] >= 1000) return std::isfinite(curve.y[k]) ? curve.y[k] : 0;
    return 0;
}

}  // namespace

std::vector<Chart> chartsOf(const design::Design& design, const analysis::Answer& answer, const Words& say) {
    std::vector<Chart> charts;
    if (const analysis::Trace* trace = answer.trace("response"); trace && !trace->curves.empty()) {
        Chart chart = started(*trace, say("Response"));
        chart.left = {say("level re source EMF"), "dB", false, false};
        chart.right = {say("phase"), "°", false, false};
        addLines(chart, *trace, "dB", false, false, say);
        addLines(chart, *trace, "deg", true, true, say);
        chart.mask = maskOf(design, *trace, at1kHz(*trace, trace->curves.front()));
        charts.push_back(std::move(chart));
    }
    if (const analysis::Trace* trace = answer.trace("impedance")) {
        Chart chart = started(*trace, say("Impedance, all else connected"));
        chart.left = {say("impedance"), "Ω", true, true};
        addLines(chart, *trace, "ohm", false, false, say);
        charts.push_back(std::move(chart));
    }
    if (const analysis::Trace* trace = answer.trace("headroom")) {
        Chart chart = started(*trace, say("Maximum level and headroom"));
        chart.left = {say("maximum level"), "dBu", false, false};
        chart.right = {say("headroom"), "dB", false, false};
        chart.rightOffset = design.brief.operatingLevel.value;
        addLines(chart, *trace, "dBu", false, true, say);
        charts.push_back(std::move(chart));
    }
    if (const analysis::Trace* trace = answer.trace("distortion"); trace && trace->axis.isFrequency()) {
        Chart chart = started(*trace, say("Distortion at the operating level (within 6 dB)"));
        chart.left = {say("distortion"), "%", true, false};
        addLines(chart, *trace, "%", false, true, say);
        // Less than a part in a million is nobody's to measure, nor the model's to know.
        constexpr double least = 1e-4;
        for (ChartLine& line : chart.lines)
            for (double& y : line.y)
                if (y < least) y = std::numeric_limits<double>::quiet_NaN();
        charts.push_back(std::move(chart));
    }
    if (const analysis::Trace* trace = answer.trace("balance")) {
        Chart chart = started(*trace, say("Common-mode rejection (known to 80 dB)"));
        chart.left = {say("rejection"), "dB", false, false};
        addLines(chart, *trace, "dB", false, false, say);
        charts.push_back(std::move(chart));
    }
    for (Chart& chart : charts)
        std::erase_if(chart.lines, [](const ChartLine& line) {
            return std::none_of(line.y.begin(), line.y.end(), [](double y) { return std::isfinite(y); });
        });
    std::erase_if(charts, [](const Chart& chart) { return chart.lines.empty(); });
    return charts;
}

}  // namespace shop
