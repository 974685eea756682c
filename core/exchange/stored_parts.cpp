// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/stored_parts.h"

#include "json/digest.h"
#include "json/record.h"
#include "json/text.h"
#include "units/joined.h"

namespace exchange {

namespace {

struct StoredEntry {
    std::string digest;
    json::Value entry;
};
template <class Visitor>
void fields(Visitor& visit, StoredEntry& s) {
    visit.need("digest", s.digest);
    visit.need("entry", s.entry);
}

std::string digestOfEntry(const json::Value& entry) {
    return json::digest(json::write(entry));
}

/// Reads and writes the kinds of parts one after another.
struct Kinds {
    template <class Each>
    static void visit(catalog::Catalog& c, const Each& each) {
        each("sheets", c.sheets);
        each("alloys", c.alloys);
        each("wires", c.wires);
        each("bobbins", c.bobbins);
        each("insulation", c.insulation);
        each("fittings", c.fittings);
        each("sundries", c.sundries);
    }
};

template <class Part>
void readKind(json::Reader& reader, const char* kind, std::map<std::string, Part>& to, const std::string& file,
              std::vector<units::Fault>& faults) {
    std::map<std::string, json::Value> entries;
    reader.may(kind, entries);
    for (const auto& [key, stored] : entries) {
        const std::string pointer = units::joined({"/parts/", kind, "/", key}),
                          place = units::joined({file, ": ", pointer});
        if (!stored.is_object()) {
            faults.push_back({place, json::foundWords(stored), "an object in curly brackets"});
            continue;
        }
        const auto copy = json::readRecord<StoredEntry>(stored, file, pointer, faults);
        if (!copy.entry.is_object()) {
            if (stored.contains("entry"))
                faults.push_back({place + "/entry", json::foundWords(copy.entry), "an object in curly brackets"});
            continue;
        }
        const std::string digest = digestOfEntry(copy.entry);
        if (const auto told = stored.find("digest"); told != stored.end() && told->is_string() && copy.digest != digest)
            faults.push_back(
                {place + "/digest", units::joined({"\"", copy.digest, "\""}),
                 "\"" + digest + "\", which is the digest of the entry beside it: the copy was changed by hand"});
        to[key] = json::readRecord<Part>(copy.entry, file, pointer + "/entry", faults);
    }
}

}  // namespace

catalog::Catalog readParts(const json::Value& parts, const std::string& file, std::vector<units::Fault>& faults) {
    catalog::Catalog read;
    if (!parts.is_object()) {
        faults.push_back({file + ": /parts", json::foundWords(parts), "an object in curly brackets"});
        return read;
    }
    json::Reader reader(parts, file, "/parts", faults);
    Kinds::visit(read, [&](const char* kind, auto& to) { readKind(reader, kind, to, file, faults); });
    const json::Value rest = reader.unknownKeys();
    for (const auto& [key, what] : rest.items()) reader.fault(key, &what, "no such key here");
    return read;
}

json::Value writeParts(const catalog::Catalog& parts) {
    json::Value all = json::Value::object();
    catalog::Catalog copy = parts;
    Kinds::visit(copy, [&](const char* kind, const auto& entries) {
        for (const auto& [key, part] : entries) {
            StoredEntry stored;
            stored.entry = json::writeRecord(part);
            stored.digest = digestOfEntry(stored.entry);
            all[kind][key] = json::writeRecord(stored);
        }
    });
    return all;
}

}  // namespace exchange
