// SPDX-License-Identifier: GPL-3.0-or-later
#include "catalog/catalog.h"

#include <string_view>

#include "catalog/entry_check.h"
#include "catalog/shop_tolerance.h"
#include "catalog/source_text.h"
#include "json/amount.h"
#include "json/text.h"
#include "units/joined.h"

namespace catalog {

namespace {

using Faults = std::vector<units::Fault>;

/// What is read so far, and which file each "fits" came from.
struct Shelf {
    Catalog parts;
    Tolerances tolerances;
    std::map<std::string, std::string> fittedFiles;  // by kind and key
    Faults faults;
};

bool readFormat(const json::Value& file, const std::string& name, Faults& faults) {
    const auto format = file.find("format");
    const auto allowed = json::within(1, newestFormat).whole();
    if (format != file.end() && format->is_number() && format->get<double>() > newestFormat) {
        faults.push_back({name + ": /format", json::foundWords(*format),
                          std::to_string(newestFormat) + ", the newest format that this program reads"});
        return false;
    }
    if (format != file.end() && format->is_number() && allowed.holds(format->get<double>())) return true;
    faults.push_back({name + ": /format", format == file.end() ? "nothing" : json::foundWords(*format),
                      "the whole number " + std::to_string(newestFormat)});
    return false;
}

Sources readSources(const json::Value& file, const std::string& name, Faults& faults) {
    Sources sources;
    const auto found = file.find("sources");
    if (found == file.end()) return sources;
    json::Reader reader(file, name, "", faults);
    reader.value(*found, "sources", sources, {});
    for (const auto& [key, text] : sources)
        if (text.empty())
            faults.push_back(
                {units::joined({name, ": /sources/", key}), "an empty text", "where the number comes from"});
    return sources;
}

template <class Part>
void readEntries(const json::Value& file, const std::string& name, std::map<std::string, Part>& shelf, Faults& faults) {
    const Sources sources = readSources(file, name, faults);
    const auto entries = file.find("entries");
    if (entries == file.end() || !entries->is_object()) {
        faults.push_back({name + ": /entries", entries == file.end() ? "nothing" : json::foundWords(*entries),
                          "an object in curly brackets"});
        return;
    }
    for (const auto& [key, value] : entries->items()) {
        const std::string place = units::joined({name, ": /entries/", key});
        if (key.empty() || !value.is_object()) {
            faults.push_back({place, key.empty() ? "an empty key" : json::foundWords(value),
                              key.empty() ? "a name for the entry" : "an object in curly brackets"});
            continue;
        }
        const std::size_t before = faults.size();
        Part part = json::readRecord<Part>(value, name, "/entries/" + key, faults);
        if (faults.size() == before) check(part, place, faults);  // checks across fields need every field
        SourceText resolve(sources, place, faults);
        fields(resolve, part);
        shelf[key] = std::move(part);
    }
}

void readFile(const CatalogFile& file, Shelf& shelf) {
    const json::Value value = json::read(file.text, file.name);
    json::limitAmount(value, file.name);
    if (!value.is_object()) {
        shelf.faults.push_back({file.name + ": /", json::foundWords(value), "an object in curly brackets"});
        return;
    }
    if (!readFormat(value, file.name, shelf.faults)) return;
    for (const auto& [key, what] : value.items())
        if (key != "format" && key != "note" && key != "sources" && key != "entries")
            shelf.faults.push_back({file.name + ": /" + key, json::foundWords(what),
                                    "one of \"format\", \"note\", \"sources\", \"entries\""});
    std::string_view stem = file.name;
    if (const auto slash = stem.find_last_of("/\\"); slash != stem.npos) stem.remove_prefix(slash + 1);
    stem = stem.substr(0, stem.find('.'));
    const auto fitted = [&](const std::string& kind) {
        if (const auto entries = value.find("entries"); entries != value.end() && entries->is_object())
            for (const auto& [key, what] : entries->items())
                shelf.fittedFiles[units::joined({kind, "/", key})] = file.name;
    };
    if (stem == "sheets")
        readEntries(value, file.name, shelf.parts.sheets, shelf.faults);
    else if (stem == "alloys")
        readEntries(value, file.name, shelf.parts.alloys, shelf.faults);
    else if (stem == "wires")
        readEntries(value, file.name, shelf.parts.wires, shelf.faults);
    else if (stem == "insulation")
        readEntries(value, file.name, shelf.parts.insulation, shelf.faults);
    else if (stem == "sundries")
        readEntries(value, file.name, shelf.parts.sundries, shelf.faults);
    else if (stem == "tolerances")
        readEntries(value, file.name, shelf.tolerances, shelf.faults);
    else if (stem == "bobbins") {
        readEntries(value, file.name, shelf.parts.bobbins, shelf.faults);
        fitted("bobbins");
    } else if (stem == "fittings") {
        readEntries(value, file.name, shelf.parts.fittings, shelf.faults);
        fitted("fittings");
    } else {
        shelf.faults.push_back({file.name, "a file of unknown kind",
                                "alloys.json, bobbins.json, fittings.json, insulation.json, sheets.json, "
                                "sundries.json, tolerances.json or wires.json"});
    }
}

template <class Part>
void checkFits(const std::string& kind, const std::map<std::string, Part>& parts, Shelf& shelf) {
    for (const auto& [key, part] : parts)
        if (!part.fits.empty() && !shelf.parts.sheets.contains(part.fits))
            shelf.faults.push_back(
                {units::joined({shelf.fittedFiles[units::joined({kind, "/", key})], ": /entries/", key, "/fits"}),
                 units::joined({"\"", part.fits, "\""}), "the key of a sheet, or nothing"});
}

}  // namespace

namespace {

Shelf readAll(const std::vector<CatalogFile>& files) {
    Shelf shelf;
    for (const CatalogFile& file : files) {
        try {
            readFile(file, shelf);
        } catch (const units::BadInput& bad) {
            shelf.faults.insert(shelf.faults.end(), bad.faults.begin(), bad.faults.end());
        }
    }
    return shelf;
}

}  // namespace

Catalog load(const std::vector<CatalogFile>& files) {
    Shelf shelf = readAll(files);
    if (shelf.faults.empty()) {  // a sheet that could not be read would be missed by all that fits it
        checkFits("bobbins", shelf.parts.bobbins, shelf);
        checkFits("fittings", shelf.parts.fittings, shelf);
    }
    if (!shelf.faults.empty()) throw units::BadInput(std::move(shelf.faults));
    return std::move(shelf.parts);
}

Tolerances loadTolerances(const std::vector<CatalogFile>& files) {
    Shelf shelf = readAll(files);
    if (!shelf.faults.empty()) throw units::BadInput(std::move(shelf.faults));
    return std::move(shelf.tolerances);
}

}  // namespace catalog
