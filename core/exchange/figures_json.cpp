// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/figures_json.h"

#include <cmath>
#include <limits>

#include "json/record.h"
#include "units/joined.h"

namespace exchange {

namespace {

json::Value asJson(const units::Figure& figure) {
    const auto number = [](double value) { return std::isfinite(value) ? json::Value(value) : json::Value(); };
    json::Value one;
    one["name"] = figure.name;
    one["value"] = number(figure.value);
    one["unit"] = figure.unit;
    one["uncertainty"] = number(figure.uncertainty);
    one["source"] = figure.source;
    one["valid"] = figure.valid && std::isfinite(figure.value);
    one["why"] = figure.why;
    one["hook_up"] = figure.hookUp;
    one["ports"] = figure.ports;
    return one;
}

/// What of a stored figure is read back; the rest is for people.
struct Stored {
    std::string name, unit, hookUp;
    std::optional<double> value;
    json::Value extra;
};
template <class Visitor>
void fields(Visitor& visit, Stored& s) {
    visit.need("name", s.name);
    visit.need("value", s.value);
    visit.may("unit", s.unit);
    visit.may("hook_up", s.hookUp);
}

}  // namespace

json::Value figuresJson(const std::vector<units::Figure>& figures) {
    json::Value all = json::Value::array();
    for (const units::Figure& figure : figures) all.push_back(asJson(figure));
    return all;
}

std::vector<units::Figure> readFigures(const json::Value& figures, const std::string& file) {
    if (!figures.is_array()) units::refuse(file + ": /figures", json::foundWords(figures), "a list of figures");
    std::vector<units::Fault> faults;
    std::vector<units::Figure> all;
    all.reserve(figures.size());
    for (std::size_t i = 0; i < figures.size(); ++i) {
        const std::string place = "/figures/" + std::to_string(i);
        if (!figures[i].is_object()) {
            faults.push_back(
                {units::joined({file, ": ", place}), json::foundWords(figures[i]), "an object in curly brackets"});
            continue;
        }
        const auto stored = json::readRecord<Stored>(figures[i], file, place, faults);
        units::Figure figure;
        figure.name = stored.name;
        figure.unit = stored.unit;
        figure.hookUp = stored.hookUp;
        figure.value = stored.value.value_or(std::numeric_limits<double>::quiet_NaN());
        all.push_back(std::move(figure));
    }
    if (!faults.empty()) throw units::BadInput(std::move(faults));
    return all;
}

}  // namespace exchange
