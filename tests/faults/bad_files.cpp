// SPDX-License-Identifier: GPL-3.0-or-later
#include "bad_files.h"

#include <set>

#include "catalog/catalog.h"
#include "catalog/shop_tolerance.h"
#include "exchange/design_json.h"
#include "exchange/limits_file.h"
#include "exchange/lot_file.h"
#include "exchange/read_file.h"
#include "exchange/readings_file.h"
#include "exchange/winder.h"
#include "json/text.h"
#include "replay/run.h"
#include "shop/prices.h"
#include "shop/words.h"
#include "units/fault.h"

namespace bad_files {

namespace {

const std::string folder = COILWRIGHT_SOURCE_DIR "/tests/faults/";

std::string soundText(const std::string& name) {
    return exchange::readFile(folder + "sound/" + name);
}

void readDesign(const std::string& text, const std::string& file) {
    static_cast<void>(exchange::readDesign(text, file, {}));
}
void readCatalog(const std::string& text, const std::string& file) {
    static_cast<void>(catalog::load({{file, text}}));
}
void readBobbins(const std::string& text, const std::string& file) {
    static const std::string sheets = soundText("sheets.json");
    static_cast<void>(catalog::load({{"sheets.json", sheets}, {file, text}}));
}
/// Sheets come first: fittings say which they fit.
void readFittings(const std::string& text, const std::string& file) {
    readBobbins(text, file);
}
void readTolerances(const std::string& text, const std::string& file) {
    static_cast<void>(catalog::loadTolerances({{file, text}}));
}
void readWinder(const std::string& text, const std::string& file) {
    static_cast<void>(exchange::readWinder(text, file));
}
void readMachine(const std::string& text, const std::string& file) {
    static_cast<void>(replay::readMachine(text, file));
}
void readProgram(const std::string& text, const std::string& file) {
    static const replay::Machine machine = replay::readMachine(soundText("winder.json"), "winder.json");
    static_cast<void>(replay::run(replay::readProgram(text, file), machine));
}
void readPrices(const std::string& text, const std::string& file) {
    static_cast<void>(shop::readPrices(text, file));
}
void readWords(const std::string& text, const std::string& file) {
    static_cast<void>(shop::readWords(text, file));
}
void readLot(const std::string& text, const std::string& file) {
    static_cast<void>(exchange::readLot(text, file));
}

void readReadings(const std::string& text, const std::string& file) {
    static const std::vector<units::Figure> known{{"inductance_10Hz.P", 4.7, "H", 0, "", true, "", "", {}},
                                                  {"low_3dB", 5, "Hz", 0, "", true, "", "", {}},
                                                  {"gain_1kHz", 17, "dB", 0, "", true, "", "", {}}};
    static_cast<void>(exchange::readReadings(text, file, known));
}

void readLimits(const std::string& text, const std::string& file) {
    static_cast<void>(exchange::readLimits(text, file));
}

void list(const json::Value& value, const std::string& at, const std::string& kind, std::set<std::string>& known,
          std::vector<std::string>& all) {
    if (value.is_object())
        for (const auto& [key, inner] : value.items()) {
            if (known.insert(kind + "/" + key).second) all.push_back(at + "/" + key);
            list(inner, at + "/" + key, kind + "/" + key, known, all);
        }
    else if (value.is_array())
        for (std::size_t k = 0; k < value.size(); ++k)
            list(value[k], at + "/" + std::to_string(k), kind + "/*", known, all);
}

json::Value::json_pointer pointer(const std::string& key) {
    return json::Value::json_pointer(key);
}

}  // namespace

const std::vector<Kind>& kinds() {
    static const std::vector<Kind> all{
        {"design", "sample.coilwright", exchange::readFile(folder + "sample.coilwright"), readDesign},
        {"alloys", "alloys.json", soundText("alloys.json"), readCatalog},
        {"bobbins", "bobbins.json", soundText("bobbins.json"), readBobbins},
        {"insulation", "insulation.json", soundText("insulation.json"), readCatalog},
        {"fittings", "fittings.json", soundText("fittings.json"), readFittings},
        {"sundries", "sundries.json", soundText("sundries.json"), readCatalog},
        {"sheets", "sheets.json", soundText("sheets.json"), readCatalog},
        {"wires", "wires.json", soundText("wires.json"), readCatalog},
        {"tolerances", "tolerances.json", soundText("tolerances.json"), readTolerances},
        {"winder", "winder.json", soundText("winder.json"), readWinder},
        {"machine", "winder.json", soundText("winder.json"), readMachine},
        {"program", "program.iso", soundText("program.iso"), readProgram, false},
        {"prices", "prices.csv", soundText("prices.csv"), readPrices, false},
        {"words", "words.csv", soundText("words.csv"), readWords, false},
        {"lot", "lot.csv", soundText("lot.csv"), readLot, false},
        {"limits", "limits.csv", soundText("limits.csv"), readLimits, false},
        {"readings", "readings.csv", soundText("readings.csv"), readReadings, false}};
    return all;
}

std::vector<std::string> said(const Kind& kind, const std::string& text) {
    std::vector<std::string> sentences;
    try {
        kind.read(text, kind.file);
    } catch (const units::BadInput& bad) {
        for (const units::Fault& fault : bad.faults) sentences.push_back(units::sentence(fault));
    }
    return sentences;
}

std::vector<std::string> keys(const json::Value& root) {
    std::set<std::string> known;
    std::vector<std::string> all;
    list(root, "", "", known, all);
    return all;
}

std::string wrongType(const json::Value& sound, const std::string& key) {
    json::Value root = sound;
    json::Value& value = root[pointer(key)];
    value = value.is_boolean() ? json::Value(7) : json::Value(true);
    return json::write(root);
}

std::string without(const json::Value& sound, const std::string& key) {
    json::Value root = sound;
    root[pointer(key).parent_pointer()].erase(pointer(key).back());
    return json::write(root);
}

std::string doubled(const json::Value& sound, const std::string& key) {
    json::Value root = sound;
    const json::Value again = root[pointer(key)];
    // The members are a list, so that a key can be put there twice.
    root[pointer(key).parent_pointer()].get_ref<json::Value::object_t&>().push_back({pointer(key).back(), again});
    return root.dump();
}

}  // namespace bad_files
