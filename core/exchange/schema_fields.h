// SPDX-License-Identifier: GPL-3.0-or-later
// How each kind of field is said in JSON Schema; included by schema.cpp alone.
#pragma once

#include <string>
#include <utility>

#include "catalog/catalog.h"
#include "catalog/shop_tolerance.h"
#include "design/design.h"
#include "json/record.h"

namespace exchange {

/// Visits a table of fields and writes down what each may be. Parts of the catalog become definitions of their own.
class SchemaFields {
public:
    explicit SchemaFields(json::Value& definitions) : definitions_(definitions) {}

    template <class T>
    void need(const char* key, T& value, const json::Allowed& allowed = {}) {
        properties_[key] = of(value, allowed);
        required_.push_back(key);
    }
    template <class T>
    void may(const char* key, T& value, const json::Allowed& allowed = {}) {
        json::Value& property = properties_[key] = of(value, allowed);
        const json::Value usual = json::Writer::asValue(value);
        if (usual.is_boolean() || usual.is_number() || (usual.is_string() && !usual.get<std::string>().empty()))
            property["default"] = usual;
    }

    /// The schema of a whole record.
    template <class T>
    [[nodiscard]] static json::Value record(json::Value& definitions) {
        T fresh{};
        SchemaFields inside(definitions);
        using json::fields;  // that of a tolerance, which is not in the namespace of its type
        fields(inside, fresh);
        return inside.object(!json::detail::KeepsExtra<T>);
    }
    [[nodiscard]] json::Value object(bool closed) const {
        json::Value schema = {{"type", "object"}, {"properties", properties_}};
        if (!required_.empty()) schema["required"] = required_;
        if (closed) schema["additionalProperties"] = false;
        return schema;
    }
    /// A reference to the definition `name`, which is made of record `T` when it is asked for first.
    template <class T>
    [[nodiscard]] static json::Value reference(const char* name, json::Value& definitions) {
        if (!definitions.contains(name)) {
            definitions[name] = nullptr;  // keeps its place while it is made
            json::Value made = record<T>(definitions);
            definitions[name] = std::move(made);
        }
        return {{"$ref", std::string("#/$defs/") + name}};
    }

private:
    template <class T>
    [[nodiscard]] json::Value of(T& value, const json::Allowed& allowed);
    [[nodiscard]] static json::Value number(const json::Allowed& allowed);
    /// A number by itself, or as "value" of an object that says more about it.
    [[nodiscard]] json::Value numberOr(const json::Allowed& allowed, json::Value more) const;

    [[nodiscard]] static const char* nameOf(const catalog::PartRef<catalog::Sheet>&) { return "sheet"; }
    [[nodiscard]] static const char* nameOf(const catalog::PartRef<catalog::Alloy>&) { return "alloy"; }
    [[nodiscard]] static const char* nameOf(const catalog::PartRef<catalog::Wire>&) { return "wire"; }
    [[nodiscard]] static const char* nameOf(const catalog::PartRef<catalog::Bobbin>&) { return "bobbin"; }
    [[nodiscard]] static const char* nameOf(const catalog::PartRef<catalog::Insulation>&) { return "insulation"; }
    [[nodiscard]] static const char* nameOf(const catalog::PartRef<catalog::Fitting>&) { return "fitting"; }
    [[nodiscard]] static const char* nameOf(const catalog::PartRef<catalog::Sundry>&) { return "sundry"; }

    template <class Part>
    [[nodiscard]] json::Value own(const catalog::PartRef<Part>& ref) {
        const json::Value key = {{"type", "string"}, {"minLength", 1}};
        return {{"description", "a key of the catalog, or an entry of its own"},
                {"anyOf", json::Value::array({key, reference<Part>(nameOf(ref), definitions_)})}};
    }
    [[nodiscard]] json::Value own(const design::Item&);
    [[nodiscard]] json::Value own(const design::MaskPoint&);
    [[nodiscard]] json::Value own(const design::ImpedancePoint&);
    [[nodiscard]] json::Value own(const catalog::BhPoint&);
    [[nodiscard]] json::Value own(const catalog::WidthUpTo&);
    [[nodiscard]] json::Value own(const catalog::StepChance&);

    json::Value& definitions_;
    json::Value properties_ = json::Value::object();
    json::Value required_ = json::Value::array();
};

template <class T>
json::Value SchemaFields::of(T& value, const json::Allowed& allowed) {
    using namespace json::detail;
    if constexpr (SelfReading<T>) {
        return own(value);
    } else if constexpr (std::is_same_v<T, bool>) {
        return {{"type", "boolean"}};
    } else if constexpr (std::is_same_v<T, std::string>) {
        return {{"type", "string"}};
    } else if constexpr (std::is_same_v<T, json::Value>) {
        return json::Value::object();
    } else if constexpr (std::is_enum_v<T>) {
        json::Value words = json::Value::array();
        for (const auto& [name, item] : names(T{})) words.push_back(name);
        return {{"enum", words}};
    } else if constexpr (std::is_same_v<T, double>) {
        return number(allowed);
    } else if constexpr (std::is_integral_v<T>) {
        return number(allowed.whole());
    } else if constexpr (std::is_same_v<T, units::Quantity>) {
        return numberOr(allowed, {{"tolerance", reference<units::Tolerance>("tolerance", definitions_)},
                                  {"note", {{"type", "string"}}}});
    } else if constexpr (std::is_same_v<T, units::Datum>) {
        return numberOr(allowed, {{"source", {{"type", "string"}}}, {"guaranteed", {{"type", "boolean"}}}});
    } else if constexpr (IsVector<T>::value) {
        typename T::value_type item{};
        return {{"type", "array"}, {"items", of(item, allowed)}};
    } else if constexpr (IsOptional<T>::value) {
        typename T::value_type inner{};
        return of(inner, allowed);
    } else {
        return record<T>(definitions_);
    }
}

}  // namespace exchange
