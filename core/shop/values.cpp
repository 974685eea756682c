// SPDX-License-Identifier: GPL-3.0-or-later
// What was agreed with the customer, and what the unit is predicted to do.
#include <algorithm>
#include <cmath>
#include <set>

#include "analysis/figure_names.h"
#include "analysis/most_rejection.h"
#include "shop/curve_value.h"
#include "shop/datasheet_parts.h"
#include "units/text.h"

namespace shop {

namespace {

/// A quantity that a customer may see, in the words of the sheet. What is not listed is not printed.
struct Known {
    const char* quantity;
    const char* words;
};
constexpr Known known[] = {{"ratio", "Ratio"},
                           {"gain_1kHz", "Gain re source EMF, 1 kHz"},
                           {"insertion_loss", "Insertion loss, 1 kHz"},
                           {"low_3dB", "−3 dB, low"},
                           {"high_3dB_first", "−3 dB, high"},
                           {"high_3dB_smoothed", "−3 dB, high, smoothed"},
                           {"peak_frequency", "Peak, frequency"},
                           {"peak_level", "Peak, re 1 kHz"},
                           {"impedance_20Hz", "Impedance, 20 Hz"},
                           {"impedance_1kHz", "Impedance, 1 kHz"},
                           {"impedance_20kHz", "Impedance, 20 kHz"},
                           {"input_capacitance", "Input capacitance"},
                           {"maximum_level_20Hz", "Maximum level, 20 Hz"},
                           {"headroom_20Hz", "Headroom, 20 Hz"},
                           {"noise_figure_1kHz", "Noise figure, 1 kHz"},
                           {"output_noise_20kHz", "Output noise, 20 kHz wide"},
                           {"output_noise_A", "Output noise, A-weighted"},
                           {"rejection_1kHz", "Common-mode rejection, 1 kHz"},
                           {"rejection_20kHz", "Common-mode rejection, 20 kHz"},
                           {"rejection_10ohm_1kHz", "Rejection, 10 Ω unequal, 1 kHz"},
                           {"rejection_10ohm_20kHz", "Rejection, 10 Ω unequal, 20 kHz"},
                           {"output_balance_1kHz", "Output balance, 1 kHz"},
                           {"inductance_10Hz", "Inductance, 10 Hz"},
                           {"inductance_1kHz", "Inductance, 1 kHz"},
                           {"leakage_10kHz", "Leakage inductance, 10 kHz"},
                           {"capacitance", "Capacitance"},
                           {"dcr", "DC resistance"}};

const char* wordsOf(const std::string& quantity) {
    for (const Known& one : known)
        if (quantity == one.quantity) return one.words;
    return nullptr;
}

/// The rest of a figure's name: windings by what they are, everything else as it is called.
std::string named(const std::vector<std::string>& parts, const std::map<std::string, WindingRole>& roles,
                  const Words& say) {
    std::string all;
    for (std::size_t k = 1; k < parts.size(); ++k) {
        const auto role = roles.find(parts[k]);
        const std::string& name = role == roles.end() ? parts[k] : role->second.title;
        all = all.empty() ? name : say("%1 to %2", {all, name});
    }
    return all;
}

std::string minus(std::string text) {
    if (text.starts_with("-")) text.replace(0, 1, "−");
    return text;
}

std::string valueText(const units::Figure& figure, const Words& say) {
    if (analysis::isOverMost(figure))
        return say("over %1", {say.number(units::write(units::Kind::Decibel, figure.value, 2))});
    if (std::isfinite(figure.value))
        return say.number(
            minus(units::writeWithUncertainty(units::kindOfUnit(figure.unit), figure.value, figure.uncertainty)));
    return figure.unit == "Hz" ? say("beyond 0.1 Hz to 1 MHz") : say("not known");
}

/// "1 : 5.00", three digits so that it stays a ratio.
std::string ratioText(double ratio, const Words& say) {
    const auto digits = [&](double value) { return say.number(units::write(units::Kind::Number, value, 3)); };
    const double size = std::abs(ratio);
    if (!(size > 0)) return say("none");
    return size >= 1 ? "1 : " + digits(size) : digits(1 / size) + " : 1";
}

/// Collects rows in the order in which a customer's engineer asks.
struct Rows {
    const design::Design& design;
    const analysis::Answer& answer;
    const std::map<std::string, WindingRole>& roles;
    const Words& say;
    std::vector<ValueRow> rows = {};

    [[nodiscard]] bool shown(const units::Figure& figure) const {
        return figure.hookUp.empty() || figure.hookUp == answer.hookUp;
    }
    void add(const std::string& quantity) {
        for (const units::Figure& figure : answer.figures) {
            const auto parts = units::nameParts(figure.name);
            if (parts.front() != quantity || !shown(figure)) continue;
            if (!std::isfinite(figure.value) && figure.unit != "Hz") continue;
            const std::string text = quantity == "ratio" ? ratioText(figure.value, say) : valueText(figure, say);
            std::string where = named(parts, roles, say);
            // Among several outputs the observed one is named too.
            if (where.empty() && design.ports.size() > 2 && (quantity == "gain_1kHz" || quantity == "insertion_loss"))
                where = figure.ports.empty() ? "" : figure.ports.back();
            if (quantity == "inductance_10Hz" && !roles.at(parts.back()).driven) continue;
            rows.push_back({say(wordsOf(quantity)), where, text, !figure.valid});
        }
    }
    /// Response at the ends of the audio band.
    void addBandEnds() {
        const analysis::Trace* trace = answer.trace("response");
        if (!trace || trace->curves.empty() || trace->curves.front().y.size() != trace->frequency.size()) return;
        const double reference = valueAt(*trace, trace->curves.front(), 1000);
        for (const double f : {20.0, 20000.0}) {
            const double level = valueAt(*trace, trace->curves.front(), f) - reference;
            if (!std::isfinite(level)) continue;
            const bool outside = !trace->valid || f < trace->validFrom || (trace->validTo > 0 && f > trace->validTo);
            const double digits = std::abs(level) < 1 ? 100 : 10;
            const double rounded = std::round(level * digits) / digits;
            rows.push_back({say("Response, %1", {units::writeExact(units::Kind::Frequency, f)}), say("re 1 kHz"),
                            say.number(minus(units::writeExact(units::Kind::Decibel, rounded == 0 ? 0.0 : rounded))),
                            outside});
        }
    }
    void addPeak() {
        const auto of = [&](const char* quantity) -> const units::Figure* {
            for (const units::Figure& figure : answer.figures)
                if (figure.name == quantity && shown(figure) && std::isfinite(figure.value)) return &figure;
            return nullptr;
        };
        const units::Figure *frequency = of("peak_frequency"), *level = of("peak_level");
        constexpr double worthTelling = 0.1;  // dB
        if (!frequency || !level || level->value < worthTelling) return;
        rows.push_back({say("Peak"), say("at %1", {valueText(*frequency, say)}), valueText(*level, say),
                        !frequency->valid || !level->valid});
    }
    /// Impedances of a port in one row; with many ports at 1 kHz only, the rest is in the curves.
    void addImpedances() {
        if (design.ports.size() > 2) return add("impedance_1kHz");
        for (const design::Port& port : design.ports) {
            std::string values;
            bool doubtful = false;
            for (const char* quantity : {"impedance_20Hz.", "impedance_1kHz.", "impedance_20kHz."})
                for (const units::Figure& figure : answer.figures)
                    if (figure.name.substr(0, figure.name.find('@')) == quantity + port.name && shown(figure)) {
                        values += (values.empty() ? "" : " · ") + valueText(figure, say);
                        doubtful = doubtful || !figure.valid;
                    }
            if (!values.empty())
                rows.push_back({say("Impedance, 20 Hz · 1 kHz · 20 kHz"), port.name, values, doubtful});
        }
    }
    /// Gain in the hook-ups that are not shown.
    void addOtherHookUps() {
        for (const units::Figure& figure : answer.figures) {
            const auto parts = units::nameParts(figure.name);
            if (parts.front() != "gain_1kHz" || shown(figure)) continue;
            const design::HookUp* hookUp = design::hookUp(design, figure.hookUp);
            const bool common = hookUp && std::any_of(hookUp->ports.begin(), hookUp->ports.end(), [](const auto& use) {
                                    return use.role == design::Role::Drive && use.mode == design::Mode::Common;
                                });
            if (common) continue;  // an unbalance follows from tolerances, which a prediction does not know
            if (parts.size() == 1)
                rows.push_back({say(wordsOf("gain_1kHz")), figure.hookUp, valueText(figure, say), !figure.valid});
        }
    }
};

std::string limitText(const design::Promise& promise, units::Kind kind, const Words& say) {
    const auto text = [&](double value) { return say.number(minus(units::writeExact(kind, value))); };
    std::string words;
    if (promise.atLeast) words = say("at least %1", {text(*promise.atLeast)});
    if (promise.atMost) words += (words.empty() ? "" : ", ") + say("at most %1", {text(*promise.atMost)});
    return words;
}

std::string signedDecibels(double value, const Words& say) {
    const std::string text = say.number(minus(units::writeExact(units::Kind::Decibel, value)));
    return value > 0 && !text.starts_with("+") ? "+" + text : text;
}

/// Neighbours that say the same of several things become one row.
std::vector<ValueRow> merged(const std::vector<ValueRow>& rows) {
    constexpr std::size_t longest = 60;
    std::vector<ValueRow> all;
    for (const ValueRow& row : rows) {
        ValueRow* last = all.empty() ? nullptr : &all.back();
        if (last && !row.condition.empty() && !last->condition.empty() && last->what == row.what &&
            last->value == row.value && last->doubtful == row.doubtful &&
            last->condition.size() + row.condition.size() < longest)
            last->condition += ", " + row.condition;
        else
            all.push_back(row);
    }
    return all;
}

std::string corner(const design::MaskPoint& point, const Words& say) {
    const auto text = [&](double value) { return signedDecibels(value, say); };
    const std::string at = units::writeExact(units::Kind::Frequency, point.frequency) + ": ";
    if (point.low && point.high) return at + say("%1 to %2", {text(*point.low), text(*point.high)});
    return at + (point.low    ? say("at least %1", {text(*point.low)})
                 : point.high ? say("at most %1", {text(*point.high)})
                              : say("free"));
}

/// A row for each corner of the masks on the response.
void addMasks(const design::Brief& brief, const Words& say, std::vector<ValueRow>& rows) {
    for (const design::Mask& mask : brief.masks) {
        if (mask.trace != "response") continue;
        for (const design::MaskPoint& point : mask.points)
            if (point.low || point.high) rows.push_back({say("Response"), say("re 1 kHz"), corner(point, say), false});
    }
}

void addSize(const design::Brief& brief, const Manner& manner, std::vector<ValueRow>& rows) {
    const Words& say = manner.say();
    if (brief.size.length > 0 || brief.size.width > 0 || brief.size.height > 0) {
        std::string size;
        for (const double side : {brief.size.length.value, brief.size.width.value, brief.size.height.value})
            size += (size.empty() ? "" : " × ") + (side > 0 ? say.number(manner.in.exact(side)) : say("free"));
        rows.push_back({say("Size"), say("length × width × height"), say("at most %1", {size}), false});
    }
}

}  // namespace

std::string figureWords(const std::string& figure) {
    const auto parts = units::nameParts(figure);
    const char* words = wordsOf(parts.front());
    if (words == nullptr) return figure;
    std::string all = words;
    for (std::size_t k = 1; k < parts.size(); ++k) all += (k == 1 ? ", " : " to ") + parts[k];
    return all;
}

std::string capital(std::string text) {
    if (!text.empty() && text.front() >= 'a' && text.front() <= 'z')
        text.front() = static_cast<char>(text.front() - 'a' + 'A');
    return text;
}

ValueRow promiseRow(const design::Design& design, int index, const std::map<std::string, WindingRole>& roles,
                    const Manner& manner) {
    const Words& say = manner.say();
    const design::Promise& promise = design.brief.promises[static_cast<std::size_t>(index)];
    const auto parts = units::nameParts(promise.figure);
    const char* words = wordsOf(parts.front());
    if (!words) return {};
    std::string where = named(parts, roles, say);
    if (!promise.port.empty()) where += (where.empty() ? "" : ", ") + promise.port;
    if (!promise.hookUp.empty() && promise.hookUp != design.hookUps.front().name)
        where += (where.empty() ? "" : ", ") + promise.hookUp;
    return {say(words), where, limitText(promise, analysis::kindOfFigure(parts.front()), say), false};
}

ValueRow maskRow(const design::Design& design, int index, const Manner& manner) {
    const Words& say = manner.say();
    const design::Mask& mask = design.brief.masks[static_cast<std::size_t>(index)];
    if (mask.trace != "response") return {};
    std::string corners;
    for (const design::MaskPoint& point : mask.points)
        if (point.low || point.high) corners += (corners.empty() ? "" : "; ") + corner(point, say);
    return {say("Response"), say("re 1 kHz"), corners, false};
}

std::vector<ValueRow> agreedLimits(const design::Design& design, const std::map<std::string, WindingRole>& roles,
                                   const Manner& manner) {
    std::vector<ValueRow> rows;
    const auto& brief = design.brief;
    for (std::size_t k = 0; k < brief.promises.size(); ++k)
        if (ValueRow row = promiseRow(design, static_cast<int>(k), roles, manner); !row.what.empty())
            rows.push_back(std::move(row));
    addMasks(brief, manner.say(), rows);
    addSize(brief, manner, rows);
    if (!brief.isolation.empty()) rows.push_back({manner.say()("Isolation"), "", brief.isolation, false});
    return rows;
}

std::vector<ValueRow> typicalValues(const design::Design& design, const analysis::Answer& answer,
                                    const std::map<std::string, WindingRole>& roles, const Words& say) {
    Rows rows{design, answer, roles, say};
    for (const char* quantity : {"ratio", "gain_1kHz", "insertion_loss"}) rows.add(quantity);
    rows.addBandEnds();
    for (const char* quantity : {"low_3dB", "high_3dB_first"}) rows.add(quantity);
    rows.addPeak();
    rows.addImpedances();
    for (const char* quantity :
         {"maximum_level_20Hz", "headroom_20Hz", "noise_figure_1kHz", "dcr", "inductance_10Hz", "input_capacitance"})
        rows.add(quantity);
    // A prediction knows of no tolerances, so what they rule is told only to who asked for it.
    std::set<std::string> asked;
    for (const design::Promise& promise : design.brief.promises) {
        const std::string quantity = units::nameParts(promise.figure).front();
        if (analysis::isRejection(quantity) && wordsOf(quantity) && asked.insert(quantity).second) rows.add(quantity);
    }
    rows.addOtherHookUps();
    return merged(rows.rows);
}

}  // namespace shop
