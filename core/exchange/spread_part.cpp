// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/spread_part.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "exchange/spread_fields.h"
#include "json/digest.h"
#include "json/text.h"
#include "units/joined.h"

namespace exchange {

using json::Value;
using spread::Batch;
using units::joined;
using units::refuse;

namespace {

constexpr int format = 1;
constexpr const char* spreadKey = "coilwright_spread";

Value valuesOf(const Batch& batch) {
    Value all = Value::array();
    for (const auto& unit : batch.values) {
        Value row = Value::array();
        for (const double v : unit) row.push_back(std::isfinite(v) ? Value(v) : Value());
        all.push_back(std::move(row));
    }
    return all;
}

Value responseOf(const Batch& batch) {
    Value all = Value::array();
    for (const auto& bins : batch.response) {
        Value one = Value::array();
        for (const auto& [bin, units] : bins) one.push_back(Value::array({bin, units}));
        all.push_back(std::move(one));
    }
    return all;
}

/// The member of that name; throws where there is none of that kind.
const Value& member(const Value& all, const char* key, bool (Value::*is)() const noexcept, const std::string& file,
                    const char* allowed) {
    const auto found = all.find(key);
    if (found == all.end() || !((*found).*is)())
        refuse(joined({file, ": /", key}), found == all.end() ? "nothing" : json::foundWords(*found), allowed);
    return *found;
}

std::uint64_t counted(const Value& value, const std::string& place, std::uint64_t least, std::uint64_t most) {
    if (value.is_number_integer() && value >= least && value <= most) return value.get<std::uint64_t>();
    refuse(place, json::foundWords(value),
           joined({"a whole number from ", std::to_string(least), " to ", std::to_string(most)}));
}

std::vector<double> rowOf(const Value& row, std::size_t columns, const std::string& place) {
    if (!row.is_array() || row.size() != columns)
        refuse(place, json::foundWords(row), joined({"a list of ", std::to_string(columns), " numbers"}));
    std::vector<double> values;
    values.reserve(columns);
    for (const Value& one : row) {
        if (!one.is_number() && !one.is_null()) refuse(place, json::foundWords(one), "numbers, or null for none");
        values.push_back(one.is_null() ? std::numeric_limits<double>::quiet_NaN() : one.get<double>());
    }
    return values;
}

void readUnits(const Value& all, const std::string& file, const spread::Head& head, Batch& batch) {
    const std::size_t units = batch.last - batch.first, columns = head.columns.size();
    const Value& values = member(all, "values", &Value::is_array, file, "a list of units");
    const Value& kept = member(all, "kept", &Value::is_array, file, "a list of units");
    for (const auto& [key, list] : {std::pair{"values", &values}, {"kept", &kept}})
        if (list->size() != units)
            refuse(joined({file, ": /", key}), std::to_string(list->size()) + " units",
                   std::to_string(units) + " units, as the part has");
    for (std::size_t k = 0; k < units; ++k) {
        batch.values.push_back(rowOf(values[k], columns, joined({file, ": /values/", std::to_string(k)})));
        const auto& letters = kept[k];
        const bool sound = letters.is_string() && letters.get_ref<const std::string&>().size() == columns &&
                           letters.get_ref<const std::string&>().find_first_not_of("kb-") == std::string::npos;
        if (!sound)
            refuse(joined({file, ": /kept/", std::to_string(k)}), json::foundWords(letters),
                   "a letter k, b or - for each column");
        batch.kept.push_back(letters.get<std::string>());
    }
}

void readResponse(const Value& all, const std::string& file, const spread::Head& head, Batch& batch) {
    const Value& response = member(all, "response", &Value::is_array, file, "a list of frequencies");
    if (response.size() != head.frequencies.size())
        refuse(file + ": /response", std::to_string(response.size()) + " frequencies",
               std::to_string(head.frequencies.size()) + ", as the head has");
    for (std::size_t f = 0; f < response.size(); ++f) {
        batch.response.emplace_back();
        for (const Value& pair : response[f]) {
            if (!pair.is_array() || pair.size() != 2 || !pair[0].is_number_integer() || !pair[1].is_number_unsigned())
                refuse(joined({file, ": /response/", std::to_string(f)}), json::foundWords(pair),
                       "[bin of 0.01 dB, number of units]");
            batch.response.back()[pair[0].get<std::int64_t>()] += pair[1].get<std::uint64_t>();
        }
    }
}

}  // namespace

std::string writeSpreadPart(const SpreadPart& part) {
    Value all;
    all[spreadKey] = format;
    all["head"] = json::writeRecord(part.head);
    all["part"] = Value::array({part.number, part.parts});
    all["values"] = valuesOf(part.batch);
    all["kept"] = part.batch.kept;
    all["response"] = responseOf(part.batch);
    all["sum"] = json::digest(all.dump());
    std::string text = all.dump() + "\n";
    if (text.size() > json::maximumBytes)
        refuse("command line: --part",
               joined({std::to_string(part.batch.values.size()), " units in one part, more than 10 MB of text"}),
               "a division into more parts");
    return text;
}

SpreadPart readSpreadPart(std::string_view text, const std::string& file) {
    Value all = json::read(text, file);
    if (!all.is_object()) refuse(file + ": /", json::foundWords(all), "a part of a spread, as `spread --to` writes it");
    const auto known = all.find(spreadKey);
    if (known == all.end() || *known != format)
        refuse(joined({file, ": /", spreadKey}), known == all.end() ? "nothing" : json::foundWords(*known),
               "1: a part of a spread, as `spread --to` writes it");
    const std::string sum = member(all, "sum", &Value::is_string, file, "the file's own digest").get<std::string>();
    all.erase("sum");
    if (json::digest(all.dump()) != sum)
        refuse(file + ": /sum", "a digest of something else", "the file as it was written");
    SpreadPart part;
    std::vector<units::Fault> faults;
    part.head = json::readRecord<spread::Head>(member(all, "head", &Value::is_object, file, "what all parts share"),
                                               file, "/head", faults);
    if (faults.empty() &&
        (part.head.atLeast.size() != part.head.columns.size() || part.head.atMost.size() != part.head.columns.size()))
        faults.push_back({file + ": /head/at_least", "limits of other columns", "one for each column, or null"});
    if (!faults.empty()) throw units::BadInput(std::move(faults));
    const Value& which = member(all, "part", &Value::is_array, file, "[K, M]: part K of M");
    if (which.size() != 2) refuse(file + ": /part", json::foundWords(which), "[K, M]: part K of M");
    part.parts = counted(which[1], file + ": /part/1", 1, part.head.units);
    part.number = counted(which[0], file + ": /part/0", 1, part.parts);
    const auto range = spread::partOf(part.head.units, part.number, part.parts);
    part.batch.first = range.first;
    part.batch.last = range.last;
    readUnits(all, file, part.head, part.batch);
    readResponse(all, file, part.head, part.batch);
    return part;
}

namespace {

/// What two heads differ in first, told of the second and of the first.
std::pair<std::string, std::string> difference(const spread::Head& one, const spread::Head& other) {
    const auto number = [](const char* what, std::uint64_t n) { return joined({what, std::to_string(n)}); };
    if (one.design != other.design || one.designDigest != other.designDigest)
        return {"a part of the design \"" + other.design + "\", digest " + other.designDigest.substr(0, 12),
                "\"" + one.design + "\", digest " + one.designDigest.substr(0, 12)};
    if (one.program != other.program) return {"a part made by " + other.program, one.program};
    if (one.seed != other.seed) return {number("seed ", other.seed), number("seed ", one.seed)};
    if (one.units != other.units)
        return {number("a run of units: ", other.units), number("a run of units: ", one.units)};
    if (one.lotSize != other.lotSize) return {number("lots of ", other.lotSize), number("lots of ", one.lotSize)};
    return {"other tolerances, figures or frequencies", "the same"};
}

std::string missingWords(const std::vector<char>& there) {
    std::string words;
    for (std::size_t k = 0; k < there.size(); ++k)
        if (there[k] == 0) words += (words.empty() ? "" : ", ") + std::to_string(k + 1);
    return words;
}

}  // namespace

std::vector<Batch> gatheredParts(std::vector<SpreadPart> parts, const std::vector<std::string>& files) {
    const SpreadPart& first = parts.front();
    std::vector<char> there(first.parts, 0);
    std::vector<Batch> batches(first.parts);
    const spread::Head head = first.head;
    const std::uint64_t division = first.parts;
    for (std::size_t k = 0; k < parts.size(); ++k) {
        SpreadPart& part = parts[k];
        if (!(part.head == head)) {
            auto [found, allowed] = difference(head, part.head);
            refuse(files[k], std::move(found), allowed + ", as in " + files.front());
        }
        if (part.parts != division)
            refuse(files[k], joined({"a division into ", std::to_string(part.parts), " parts"}),
                   joined({std::to_string(division), " parts, as in ", files.front()}));
        char& seen = there[part.number - 1];
        if (seen != 0)
            refuse(files[k], joined({"part ", std::to_string(part.number), " of ", std::to_string(division), " again"}),
                   "each part once");
        seen = 1;
        batches[part.number - 1] = std::move(part.batch);
    }
    if (const std::string missing = missingWords(there); !missing.empty())
        refuse("gather", joined({std::to_string(parts.size()), " of ", std::to_string(division), " parts"}),
               joined({"all of them; missing: ", missing}));
    return batches;
}

}  // namespace exchange
