// SPDX-License-Identifier: GPL-3.0-or-later
#include "plots/result_words.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <array>
#include <cmath>

#include "analysis/most_rejection.h"
#include "bench/language.h"
#include "plots/scale.h"
#include "units/text.h"

namespace plots {

namespace {

QString tr(const char* text) {
    return QCoreApplication::translate("plots", text);
}

struct Telling {
    const char* trace;
    const char* quantity;
    const char* words;
};
// Which figures say most about a trace, in the order they are read.
constexpr std::array<Telling, 9> tellings{{
    {"response", "high_3dB_first", "−3 dB high"},
    {"response", "low_3dB", "−3 dB low"},
    {"response", "peak_level", "peak"},
    {"response", "gain_1kHz", "level at 1 kHz"},
    {"impedance", "impedance_20Hz", "at 20 Hz"},
    {"impedance", "impedance_1kHz", "at 1 kHz"},
    {"impedance", "impedance_20kHz", "at 20 kHz"},
    {"headroom", "maximum_level_20Hz", "maximum level at 20 Hz"},
    {"headroom", "headroom_20Hz", "headroom at 20 Hz"},
}};

QString extremesOf(const analysis::Trace& trace, const analysis::Curve& curve) {
    std::size_t low = 0, high = 0;
    bool any = false;
    for (std::size_t i = 0; i < curve.y.size(); ++i) {
        if (!std::isfinite(curve.y[i])) continue;
        if (!any || curve.y[i] < curve.y[low]) low = i;
        if (!any || curve.y[i] > curve.y[high]) high = i;
        any = true;
    }
    if (!any) return {};
    const auto at = [&](std::size_t i) {
        return tr("%1 at %2")
            .arg(valueText(curve, curve.y[i]),
                 QString::fromStdString(units::write(trace.axis.kind, trace.frequency[i], 3)));
    };
    return tr("%1 from %2 to %3").arg(bench::translated(curve.label), at(low), at(high));
}

QString farthest(const analysis::Trace& held, const analysis::Trace& now, const std::string& name,
                 const QCPRange& band) {
    const analysis::Curve* before = held.curve(name);
    const analysis::Curve* after = now.curve(name);
    if (!before || !after) return {};
    double most = 0, where = 0;
    bool found = false;
    for (std::size_t i = 0; i < after->y.size(); ++i) {
        const double f = now.frequency[i];
        if (!band.contains(f)) continue;
        const double a = valueAt(held.frequency, *before, f, now.axis.logarithmic), b = after->shown(after->y[i]);
        if (!std::isfinite(a) || !std::isfinite(b)) continue;
        const double apart = after->logarithmic ? (a > 0 ? b / a - 1 : 0) : b - a;
        if (std::abs(apart) > std::abs(most)) {
            most = apart;
            where = f;
            found = true;
        }
    }
    if (!found) return {};
    const QString size = shownNumber(after->logarithmic ? units::write(units::Kind::Share, most, 2)
                                                        : units::write(after->kind, most, 2));
    return tr("%1: at most %2 apart, at %3")
        .arg(bench::translated(after->label), size, QString::fromStdString(units::write(now.axis.kind, where, 2)));
}

/// Figures speak of a trace's first curve; they say nothing where another one is shown.
bool firstShown(const analysis::Trace& trace, const std::vector<std::string>& curves) {
    return !trace.curves.empty() && std::find(curves.begin(), curves.end(), trace.curves.front().name) != curves.end();
}

}  // namespace

QString shownNumber(const std::string& text) {
    QString shown = QString::fromStdString(text);
    if (shown.startsWith(QLatin1Char('-'))) shown[0] = QChar(0x2212);
    return shown;
}

QString valueText(const analysis::Curve& curve, double value) {
    if (!std::isfinite(value)) return QStringLiteral("–");
    const QString number = shownNumber(units::write(curve.kind, curve.shown(value), 3));
    const bool bare = curve.kind == units::Kind::Number && !curve.unit.empty();
    const QString whole = bare ? number + QLatin1Char(' ') + QString::fromStdString(curve.unit) : number;
    return value >= curve.knownTo ? tr("over %1").arg(whole) : whole;
}

const units::Figure* figureOf(const analysis::Answer& answer, std::string_view quantity) {
    for (const units::Figure& figure : answer.figures) {
        const std::string& name = figure.name;
        if (!name.starts_with(quantity)) continue;
        const bool whole =
            name.size() == quantity.size() || name[quantity.size()] == '.' || name[quantity.size()] == '@';
        if (whole && (figure.hookUp.empty() || figure.hookUp == answer.hookUp)) return &figure;
    }
    return nullptr;
}

QString written(const units::Figure& figure) {
    if (!std::isfinite(figure.value)) return std::isinf(figure.value) ? tr("none in the band") : tr("not known");
    if (analysis::isOverMost(figure))
        return tr("over %1").arg(shownNumber(units::write(units::Kind::Decibel, figure.value, 2)));
    return shownNumber(units::writeWithUncertainty(units::kindOfUnit(figure.unit), figure.value, figure.uncertainty));
}

QString uncertaintyText(const units::Figure& figure) {
    if (figure.uncertainty <= 0 || !std::isfinite(figure.uncertainty) || !std::isfinite(figure.value)) return {};
    const std::string size = figure.unit.starts_with("dB") ? units::significant(figure.uncertainty, 1) + " dB"
                                                           : units::write(units::Kind::Share, figure.uncertainty, 1);
    return QStringLiteral("± ") + QString::fromStdString(size);
}

QString change(const QString& before, const QString& now) {
    const qsizetype a = before.lastIndexOf(' '), b = now.lastIndexOf(' ');
    const bool sameUnit = a > 0 && b > 0 && before.mid(a) == now.mid(b);
    return (sameUnit ? before.left(a) : before) + QStringLiteral(" → ") + now;
}

namespace {

/// A figure that is there and finite; else null.
const units::Figure* finite(const analysis::Answer& answer, const char* quantity) {
    const units::Figure* figure = figureOf(answer, quantity);
    return figure && std::isfinite(figure->value) ? figure : nullptr;
}

QStringList tellingsOf(const analysis::Answer& answer, const std::string& trace) {
    QStringList parts;
    if (trace != "response") {
        for (const Telling& telling : tellings)
            if (trace == telling.trace)
                if (const auto* figure = finite(answer, telling.quantity))
                    parts << tr("%1 %2").arg(written(*figure), tr(telling.words));
        return parts;
    }
    const auto *low = finite(answer, "low_3dB"), *high = finite(answer, "high_3dB_first");
    if (low && high) parts << tr("−3 dB at %1 and %2").arg(written(*low), written(*high));
    const auto *level = finite(answer, "peak_level"), *at = finite(answer, "peak_frequency");
    if (level && at) parts << tr("peak %1 at %2").arg(written(*level), written(*at));
    return parts;
}

}  // namespace

QString summary(const analysis::Answer& answer, const analysis::Trace& trace, const std::vector<std::string>& curves) {
    QStringList parts;
    if (firstShown(trace, curves)) parts = tellingsOf(answer, trace.name);
    if (parts.isEmpty())
        for (const std::string& name : curves)
            if (const analysis::Curve* curve = trace.curve(name))
                if (const QString words = extremesOf(trace, *curve); !words.isEmpty()) parts << words;
    if (parts.isEmpty())
        return trace.why.empty() ? tr("nothing to show") : tr("nothing to show: %1").arg(bench::translated(trace.why));
    return parts.join(QStringLiteral(", "));
}

QString difference(const analysis::Answer& held, const analysis::Answer& now, const std::string& trace,
                   const std::vector<std::string>& curves, const QCPRange& band) {
    QStringList parts;
    const analysis::Trace* shown = now.trace(trace);
    const bool firstCurveShown = shown && firstShown(*shown, curves);
    for (const Telling& telling : tellings) {
        if (!firstCurveShown || trace != telling.trace || parts.size() == 3) continue;
        const units::Figure* a = figureOf(held, telling.quantity);
        const units::Figure* b = figureOf(now, telling.quantity);
        if (!a || !b) continue;
        const QString before = written(*a), after = written(*b);
        if (before != after) parts << tr("%1: %2").arg(tr(telling.words), change(before, after));
    }
    const analysis::Trace* before = held.trace(trace);
    const analysis::Trace* after = now.trace(trace);
    if (parts.isEmpty() && before && after)
        for (const std::string& name : curves)
            if (const QString words = farthest(*before, *after, name, band); !words.isEmpty()) parts << words;
    return parts.isEmpty() ? tr("same as the held trace") : parts.join(QStringLiteral(" · "));
}

}  // namespace plots
