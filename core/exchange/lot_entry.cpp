// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/lot_entry.h"

#include <charconv>
#include <cmath>
#include <filesystem>

#include "exchange/lot_file.h"
#include "json/record.h"
#include "json/text.h"
#include "magnetics/lot_fit.h"
#include "magnetics/permeability.h"
#include "units/joined.h"
#include "units/text.h"

namespace exchange {

namespace {

constexpr int digits = 4, curveDigits = 6;

double rounded(double value, int to) {
    const std::string text = units::significant(value, to);
    double read = value;
    std::from_chars(text.data(), text.data() + text.size(), read);
    return read;
}

std::string percent(double share) {
    return units::significant(100 * share, 2) + " %";
}

/// The sources of one catalog file, each text once.
class SourceList {
public:
    void put(units::Datum& datum, const std::string& key, const std::string& text) {
        datum.value = rounded(datum.value, digits);
        datum.guaranteed = false;
        datum.source = key;
        all_[key] = text;
    }
    /// A number of the alloy that the lot is like: its source stays.
    void keep(units::Datum& datum) {
        if (datum.source.empty()) return;
        for (const auto& [key, text] : all_.items())
            if (text == datum.source) {
                datum.source = key;
                return;
            }
        const std::string key = "like-" + std::to_string(++kept_);
        all_[key] = datum.source;
        datum.source = key;
    }
    [[nodiscard]] const json::Value& all() const { return all_; }

private:
    json::Value all_ = json::Value::object();
    int kept_ = 0;
};

std::string residualWords(const MeasuredLot& lot, const std::string& file, const magnetics::LotFit& fit) {
    return units::joined(
        {"least squares over ", std::to_string(lot.points.size()), " points of ",
         std::filesystem::path(file).filename().string(), " from ", units::significant(lot.points.front().field, 3),
         " to ", units::significant(lot.points.back().field, 3), " A/m, residual ", percent(fit.residual),
         " of the flux density, at most ", percent(fit.worst), " at ", units::significant(fit.worstField, 3), " A/m"});
}

/// What makes the fit less certain, in words; "" if nothing does.
std::string doubts(const MeasuredLot& lot, const magnetics::LotFit& fit, const catalog::Alloy& like) {
    constexpr double near = 3;
    std::string why;
    const auto add = [&](const std::string& sentence) { why += (why.empty() ? "" : "; ") + sentence; };
    if (!fit.settled) add("the search for the least squares did not come to rest");
    if (fit.residual > 0.1) add("the law fits the points by more than a tenth: look at the table");
    if (lot.frequency > 0 && lot.thickness > 0) {
        const double corner = magnetics::eddyCorner(fit.law.initialPermeability.value, like.resistivity, lot.thickness);
        if (lot.frequency > corner / near)
            add(units::joined({"measured at ", units::significant(lot.frequency, 3),
                               " Hz, above a third of the sheet's eddy corner of ", units::significant(corner, 2),
                               " Hz: permeability reads low"}));
    }
    if (lot.points.back().flux < 0.8 * fit.law.saturation.value)
        add("not measured up to saturation: saturation and knee rest on the alloy that the lot is like");
    return why;
}

std::string entryOf(const std::string& key, const std::string& title, const MeasuredLot& lot, const std::string& file,
                    const magnetics::LotFit& fit, const catalog::Alloy& like) {
    catalog::Alloy alloy = magnetics::fittedAlloy(fit, lot.points, like, lot.remanence);
    const std::string residual = residualWords(lot, file, fit);
    const double inLoop = alloy.remanence;
    SourceList sources;
    const auto found = [&](units::Datum& datum, const char* name, const magnetics::Found& number) {
        sources.put(datum, units::joined({"lot-", name}),
                    units::joined({residual, "; standard uncertainty ", percent(number.uncertainty)}));
    };
    found(alloy.initialPermeability, "initial", fit.law.initialPermeability);
    found(alloy.rayleigh, "rayleigh", fit.law.rayleigh);
    found(alloy.saturation, "saturation", fit.law.saturation);
    found(alloy.coercivity, "coercivity", fit.law.coercivity);
    sources.put(alloy.maximumPermeability, "lot-curve", residual);
    if (lot.remanence > 0)
        sources.put(alloy.remanence, "lot-measured",
                    "measured on the lot, told in " + std::filesystem::path(file).filename().string());
    else if (inLoop > 0)
        sources.put(alloy.remanence, "lot-remanence",
                    "not measured: that of " + like.title + ", in the measure of the saturation");
    for (units::Datum* datum : {&alloy.resistivity, &alloy.density, &alloy.curieTemperature}) sources.keep(*datum);
    std::vector<catalog::BhPoint> curve;
    for (const auto& point : alloy.curve) {
        const catalog::BhPoint plain{rounded(point.field, curveDigits), rounded(point.flux, curveDigits)};
        if (curve.empty() || (plain.field > curve.back().field && plain.flux > curve.back().flux))
            curve.push_back(plain);
    }
    alloy.curve = std::move(curve);
    alloy.curveSource = "lot-curve";
    alloy.title = title;
    alloy.standing = catalog::Standing::Current;
    alloy.note = doubts(lot, fit, like);
    alloy.extra = nullptr;
    json::Value all = json::Value::object();
    all["format"] = catalog::newestFormat;
    all["sources"] = sources.all();
    all["entries"][key] = json::writeRecord(alloy);
    return json::write(all);
}

std::string tableOf(const MeasuredLot& lot, const magnetics::LotFit& fit) {
    std::string table = "field_A_per_m,flux_T,fit_T,deviation_percent\n";
    for (const auto& point : lot.points) {
        const double law = fit.law.flux(point.field);
        table +=
            units::joined({units::significant(point.field, 6), ",", units::significant(point.flux, 6), ",",
                           units::significant(law, 6), ",", units::significant(100 * (point.flux / law - 1), 3), "\n"});
    }
    return table;
}

std::string line(const char* what, const magnetics::Found& number, const char* unit) {
    return units::joined({what, "  ", units::significant(number.value, 4), unit[0] == '\0' ? "" : " ", unit, "  +-",
                          percent(number.uncertainty), "\n"});
}

}  // namespace

FittedLot fittedLot(std::string_view text, const std::string& file, const std::string& key, const std::string& title,
                    const catalog::Alloy& like) {
    const MeasuredLot lot = readLot(text, file);
    const magnetics::LotFit fit = magnetics::lotFit(lot.points, like, lot.coercivity);
    std::string words = line("initial permeability", fit.law.initialPermeability, "");
    words += line("Rayleigh coefficient", fit.law.rayleigh, "m/A");
    words += line("coercivity", fit.law.coercivity, "A/m");
    words += line("saturation", fit.law.saturation, "T");
    words += residualWords(lot, file, fit) + "\n";
    const std::string why = doubts(lot, fit, like);
    if (!why.empty()) words += why + "\n";
    return {entryOf(key, title, lot, file, fit, like), tableOf(lot, fit), words};
}

}  // namespace exchange
