// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/schema.h"

#include "exchange/schema_fields.h"
#include "exchange/winder.h"
#include "json/text.h"

namespace exchange {

using json::Value;

Value SchemaFields::number(const json::Allowed& allowed) {
    constexpr double any = std::numeric_limits<double>::max();
    Value schema = {{"type", allowed.wholeNumber ? "integer" : "number"}};
    if (!allowed.unit.empty()) schema["description"] = "in " + allowed.unit;
    if (double low = allowed.low; low > -any)
        schema[allowed.openLow ? "exclusiveMinimum" : "minimum"] = json::Writer::asValue(low);
    if (double high = allowed.high; high < any) schema["maximum"] = json::Writer::asValue(high);
    return schema;
}

Value SchemaFields::numberOr(const json::Allowed& allowed, Value more) const {
    Value plain = number(allowed);
    Value properties = {{"value", plain}};
    for (const auto& [key, schema] : more.items()) properties[key] = schema;
    const Value object = {{"type", "object"},
                          {"properties", properties},
                          {"required", Value::array({"value"})},
                          {"additionalProperties", false}};
    return {{"anyOf", Value::array({plain, object})}};
}

Value SchemaFields::own(const design::Item&) {
    const auto only = [](const char* key, Value schema) {
        return Value{{"type", "object"},
                     {"properties", {{key, std::move(schema)}}},
                     {"required", Value::array({key})},
                     {"additionalProperties", false}};
    };
    return {{"oneOf", Value::array({only("section", reference<design::Section>("section", definitions_)),
                                    only("barrier", reference<design::Barrier>("barrier", definitions_)),
                                    only("shield", reference<design::Shield>("shield", definitions_))})}};
}

namespace {

Value tuple(const char* description, Value items) {
    const std::size_t count = items.size();
    return {{"type", "array"},
            {"description", description},
            {"prefixItems", std::move(items)},
            {"minItems", count},
            {"maxItems", count}};
}

const Value someNumber = {{"type", "number"}};

}  // namespace

Value SchemaFields::own(const design::MaskPoint&) {
    const Value limit = {{"type", Value::array({"number", "null"})}};
    return tuple("[frequency in Hz, low, high]; null for no limit",
                 Value::array({Value{{"type", "number"}, {"exclusiveMinimum", 0}}, limit, limit}));
}

Value SchemaFields::own(const design::ImpedancePoint&) {
    return tuple("[frequency in Hz, real ohm, imaginary ohm]",
                 Value::array({Value{{"type", "number"}, {"exclusiveMinimum", 0}}, someNumber, someNumber}));
}

Value SchemaFields::own(const catalog::BhPoint&) {
    const Value positive = {{"type", "number"}, {"minimum", 0}};
    return tuple("[field in A/m, flux density in T]", Value::array({positive, positive}));
}

Value SchemaFields::own(const catalog::WidthUpTo&) {
    return tuple(
        "[up to this size, plus or minus this]",
        Value::array({Value{{"type", "number"}, {"exclusiveMinimum", 0}}, Value{{"type", "number"}, {"minimum", 0}}}));
}

Value SchemaFields::own(const catalog::StepChance&) {
    return tuple("[step, share of the units]",
                 Value::array({someNumber, Value{{"type", "number"}, {"minimum", 0}, {"maximum", 1}}}));
}

namespace {

Value head(const char* title, const char* description) {
    return {
        {"$schema", "https://json-schema.org/draft/2020-12/schema"}, {"title", title}, {"description", description}};
}

template <class Part>
Value storedCopies(const char* name, Value& definitions) {
    const Value copy = {{"type", "object"},
                        {"properties",
                         {{"digest", {{"type", "string"}, {"pattern", "^[0-9a-f]{64}$"}}},
                          {"entry", SchemaFields::reference<Part>(name, definitions)}}},
                        {"required", Value::array({"digest", "entry"})},
                        {"additionalProperties", false}};
    return {{"type", "object"}, {"additionalProperties", copy}};
}

template <class Part>
Value entriesOf(const char* name, Value& definitions) {
    const Value entries = {{"type", "object"},
                           {"additionalProperties", SchemaFields::reference<Part>(name, definitions)}};
    return {{"properties", {{"entries", entries}}}};
}

}  // namespace

std::string designSchema() {
    Value definitions = Value::object();
    const Value design = SchemaFields::record<design::Design>(definitions);
    const Value parts = {
        {"type", "object"},
        {"description", "copies of the catalog entries used, each with the SHA-256 of its canonical text"},
        {"properties",
         {{"sheets", storedCopies<catalog::Sheet>("sheet", definitions)},
          {"alloys", storedCopies<catalog::Alloy>("alloy", definitions)},
          {"wires", storedCopies<catalog::Wire>("wire", definitions)},
          {"bobbins", storedCopies<catalog::Bobbin>("bobbin", definitions)},
          {"insulation", storedCopies<catalog::Insulation>("insulation", definitions)},
          {"fittings", storedCopies<catalog::Fitting>("fitting", definitions)},
          {"sundries", storedCopies<catalog::Sundry>("sundry", definitions)}}},
        {"additionalProperties", false}};
    Value root =
        head("Coilwright design", "One audio transformer. Quantities in SI units; a key left out has its default.");
    root["type"] = "object";
    root["properties"] = {{"coilwright", {{"description", "format number"}, {"const", design::formatVersion}}}};
    for (const auto& [key, schema] : design["properties"].items()) root["properties"][key] = schema;
    root["properties"]["parts"] = parts;
    root["required"] = Value::array({"coilwright"});
    for (const Value& key : design["required"]) root["required"].push_back(key);
    root["$defs"] = definitions;
    return json::write(root);
}

std::string catalogSchema() {
    Value definitions = Value::object();
    const Value kinds = Value::array(
        {entriesOf<catalog::Sheet>("sheet", definitions), entriesOf<catalog::Alloy>("alloy", definitions),
         entriesOf<catalog::Wire>("wire", definitions), entriesOf<catalog::Bobbin>("bobbin", definitions),
         entriesOf<catalog::Insulation>("insulation", definitions), entriesOf<catalog::Fitting>("fitting", definitions),
         entriesOf<catalog::Sundry>("sundry", definitions),
         entriesOf<catalog::ShopTolerance>("shop_tolerance", definitions)});
    Value root = head(
        "Coilwright catalog file",
        "Parts of one kind; the file's name says which: sheets, alloys, wires, bobbins, insulation, fittings, sundries "
        "or tolerances.");
    root["type"] = "object";
    root["properties"] = {{"format", {{"const", 1}}},
                          {"note", {{"type", "string"}}},
                          {"sources", {{"type", "object"}, {"additionalProperties", {{"type", "string"}}}}},
                          {"entries", {{"type", "object"}}}};
    root["required"] = Value::array({"format", "entries"});
    root["additionalProperties"] = false;
    root["anyOf"] = kinds;
    root["$defs"] = definitions;
    return json::write(root);
}

std::string winderSchema() {
    Value definitions = Value::object();
    const Value winder = SchemaFields::record<Winder>(definitions);
    Value root =
        head("Coilwright winder",
             "A winding machine: axes and letters, limits, codes, stops. Lengths in m, spindle speeds in turns "
             "a minute; a key left out has its default.");
    root["type"] = "object";
    for (const char* key : {"properties", "required", "additionalProperties"}) root[key] = winder[key];
    return json::write(root);
}

}  // namespace exchange
