// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/design_json.h"

#include <algorithm>
#include <utility>

#include "design/check.h"
#include "design/edit.h"
#include "design/walk.h"
#include "exchange/migrate.h"
#include "exchange/stored_parts.h"
#include "json/amount.h"
#include "json/digest.h"
#include "json/text.h"
#include "units/joined.h"
#include "units/most_faults.h"

namespace exchange {

namespace {

constexpr const char* formatKey = "coilwright";

/// The format number; throws where there is none that this program can read.
int formatOf(const json::Value& root, const std::string& file) {
    if (!root.is_object()) units::refuse(file, json::foundWords(root), "a design: an object in curly brackets");
    const std::string place = file + ": /" + formatKey;
    const auto number = root.find(formatKey);
    if (number == root.end())
        units::refuse(place, "nothing", "the format number that every design file begins with, as 1");
    const json::Allowed whole = json::within(1, 1e6).whole();
    if (!number->is_number() || !whole.holds(number->get<double>()))
        units::refuse(place, json::foundWords(*number), "the format number, a whole number of at least 1");
    const int format = static_cast<int>(number->get<double>());
    if (format > design::formatVersion)
        units::refuse(place, "format " + std::to_string(format),
                      "format " + std::to_string(design::formatVersion) +
                          " or older: this file was written by a newer Coilwright");
    return format;
}

/// Lists the keys that were kept without being known.
struct UnknownKeys {
    const std::string& file;
    std::vector<std::string>& notes;

    template <class T>
    void record(const std::string& at, T& record) {
        if constexpr (json::detail::KeepsExtra<T>) list(at, record.extra);
    }
    template <class T>
    void operator()(const std::string&, T&, const json::Allowed&) {}
    template <class Part>
    void operator()(const std::string& at, catalog::PartRef<Part>& ref, const json::Allowed&) {
        if (ref.own) list(at, ref.own->extra);
    }
    template <class Part>
    void stored(const std::string& kind, const std::map<std::string, Part>& parts) {
        for (const auto& [key, part] : parts) list(units::joined({"/parts/", kind, "/", key, "/entry"}), part.extra);
    }
    void list(const std::string& at, const json::Value& extra) {
        if (!extra.is_object()) return;
        for (const auto& [key, what] : extra.items())
            notes.push_back(units::joined({file, ": ", at, "/", key, ": this key is not known; it is kept as it is."}));
    }
};

/// Adds what the rules find to what the fields found. Not where a whole list or a copied entry could not be read, as
/// every reference to it would be called unknown; and not at a place that already has its fault.
void addRuleFaults(const design::Design& d, const catalog::Catalog& shop, const std::string& file,
                   std::vector<units::Fault>& faults) {
    if (faults.size() > units::mostFaults) return;  // each that follows is held against all of them
    const std::vector<units::Fault> known = faults;
    const auto atTop = [&](const units::Fault& f) {
        return f.place.rfind('/') == file.size() + 2 || f.place.starts_with(file + ": /parts/");
    };
    if (std::any_of(known.begin(), known.end(), atTop)) return;
    const auto within = [](const std::string& inner, const std::string& outer) {
        return inner.compare(0, outer.size(), outer) == 0 &&
               (inner.size() == outer.size() || inner[outer.size()] == '/');
    };
    for (units::Fault& found : design::check(d, shop, file)) {
        const auto told = [&](const units::Fault& f) {
            return within(f.place, found.place) || within(found.place, f.place);
        };
        if (std::none_of(known.begin(), known.end(), told)) faults.push_back(std::move(found));
    }
}

void noteUnknownKeys(const design::Design& d, const std::string& file, std::vector<std::string>& notes) {
    UnknownKeys keys{file, notes};
    design::walk(d, keys);
    keys.stored("sheets", d.parts.sheets);
    keys.stored("alloys", d.parts.alloys);
    keys.stored("wires", d.parts.wires);
    keys.stored("bobbins", d.parts.bobbins);
    keys.stored("insulation", d.parts.insulation);
    keys.stored("fittings", d.parts.fittings);
    keys.stored("sundries", d.parts.sundries);
}

}  // namespace

Opened readDesign(std::string_view text, const std::string& file, const catalog::Catalog& shop) {
    json::Value root = json::read(text, file);
    json::limitAmount(root, file);
    Opened opened;
    const int format = formatOf(root, file);
    root = migrate(std::move(root), format, design::formatVersion, migrationSteps(), opened.notes);
    std::vector<units::Fault> faults;
    json::Value parts = json::Value::object();
    if (const auto stored = root.find("parts"); stored != root.end()) parts = *stored;
    root.erase(formatKey);
    root.erase("parts");
    auto design = std::make_shared<design::Design>(json::readRecord<design::Design>(root, file, "", faults));
    design->parts = readParts(parts, file, faults);
    addRuleFaults(*design, shop, file, faults);
    if (!faults.empty()) throw units::BadInput(std::move(faults));
    noteUnknownKeys(*design, file, opened.notes);
    opened.design = std::move(design);
    return opened;
}

std::string writeDesign(const design::Design& design, const catalog::Catalog& shop) {
    const design::DesignPtr complete = design::withStoredParts(design, shop);
    json::Value root = json::Value::object();
    root[formatKey] = design::formatVersion;
    const json::Value record = json::writeRecord(*complete);
    for (const auto& [key, value] : record.items()) root[key] = value;
    if (json::Value parts = writeParts(complete->parts); !parts.empty()) root["parts"] = std::move(parts);
    return json::write(root);
}

std::string digestOf(const design::Design& design, const catalog::Catalog& shop) {
    return json::digest(writeDesign(design, shop));
}

}  // namespace exchange
