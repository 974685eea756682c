// SPDX-License-Identifier: GPL-3.0-or-later
// Typed parts made out of a design's own field tables: where a value lives, how it is shown, how it is replaced.
#pragma once

#include <QCoreApplication>
#include <algorithm>
#include <concepts>

#include "design/design.h"
#include "design/edit.h"
#include "editors/field.h"
#include "editors/labels.h"
#include "json/record.h"
#include "units/kind.h"
#include "units/text.h"

namespace editors {

/// Finds a value in a design; null if it is not there (any more). Only reads when given a shared design.
template <class T>
using Find = std::function<T*(design::Design&)>;

/// The value in a design that is not to be changed.
template <class T>
[[nodiscard]] const T* seen(const Find<T>& find, const design::Design& d) {
    return find(const_cast<design::Design&>(d));  // NOLINT: finding reads only
}

/// Walks a record's fields until the one of this key and type.
template <class T>
struct MemberFinder {
    std::string key;
    T* found = nullptr;
    template <class U>
    void need(const char* name, U& member, const json::Allowed& = {}) {
        if constexpr (std::is_same_v<T, U>)
            if (key == name) found = &member;
    }
    template <class U>
    void may(const char* name, U& member, const json::Allowed& = {}) {
        need(name, member);
    }
};
template <class T, class Record>
[[nodiscard]] Find<T> memberOf(const Find<Record>& record, const std::string& key) {
    return [record, key](design::Design& d) -> T* {
        Record* r = record(d);
        if (r == nullptr) return nullptr;
        MemberFinder<T> finder{key};
        fields(finder, *r);
        return finder.found;
    };
}

/// What kind of quantity a field holds, by its unit in the field table and its key.
[[nodiscard]] units::Kind kindOf(const std::string& key, const json::Allowed& allowed);
/// Text of a number as a person would type it; and back, checked against what is allowed (throws units::BadInput).
[[nodiscard]] QString numberText(units::Kind kind, double value);
[[nodiscard]] double numberOf(units::Kind kind, const QString& text, const json::Allowed& allowed);
/// Throws units::BadInput, place "".
[[noreturn]] void refuse(const QString& found, const std::string& allowed);

/// A part without its reading and writing yet.
[[nodiscard]] Part namedPart(const std::string& key, const QString& owner);

/// The number that a member holds, if any, and putting another in its place (a quantity keeps tolerance and note).
[[nodiscard]] inline std::optional<double> numberIn(const units::Quantity& member) {
    return member.value;
}
[[nodiscard]] inline std::optional<double> numberIn(double member) {
    return member;
}
[[nodiscard]] inline std::optional<double> numberIn(int member) {
    return member;
}
[[nodiscard]] inline std::optional<double> numberIn(const std::optional<double>& member) {
    return member;
}
inline void putNumber(units::Quantity& member, double value) {
    member.value = value;
}
inline void putNumber(double& member, double value) {
    member = value;
}
inline void putNumber(int& member, double value) {
    member = static_cast<int>(value);
}
inline void putNumber(std::optional<double>& member, double value) {
    member = value;
}

/// Kind and limits of a number's text: an int member is a count.
struct NumberRule {
    units::Kind kind = units::Kind::Number;
    json::Allowed allowed;
};
template <class T>
[[nodiscard]] NumberRule ruleFor(const std::string& key, const json::Allowed& allowed) {
    if (std::is_same_v<T, int>) return {units::Kind::Count, allowed.whole()};
    return {kindOf(key, allowed), allowed};
}

/// A number: Quantity (tolerance and note are kept), double, int, or an optional double (empty text: none).
template <class T>
[[nodiscard]] Part numberPart(const Find<T>& find, const std::string& key, const QString& owner,
                              const json::Allowed& allowed) {
    Part part = namedPart(key, owner);
    const NumberRule rule = ruleFor<T>(key, allowed);
    part.text = [find, rule](const design::Design& d) {
        const T* t = seen(find, d);
        const auto value = t == nullptr ? std::nullopt : numberIn(*t);
        return value ? numberText(rule.kind, *value) : QString();
    };
    part.with = [find, rule](const design::Design& d, const QString& text) {
        return design::changed(d, [&](design::Design& copy) {
            T* t = find(copy);
            if (t == nullptr) refuse(text, "a part that is still there");
            if constexpr (std::is_same_v<T, std::optional<double>>)
                if (text.trimmed().isEmpty()) return t->reset();
            putNumber(*t, numberOf(rule.kind, text, rule.allowed));
        });
    };
    part.stepped = [find, rule](const design::Design& d, int steps, double factor) {
        const T* t = seen(find, d);
        if (t == nullptr) return QString();
        return numberText(rule.kind, units::stepped(rule.kind, numberIn(*t).value_or(0), steps, factor));
    };
    return part;
}

template <class Enum>
[[nodiscard]] Part enumPart(const Find<Enum>& find, const std::string& key, const QString& owner) {
    Part part = namedPart(key, owner);
    part.choices = [] {
        QStringList all;
        for (const auto& [word, value] : names(Enum{})) all << word;
        return all;
    };
    part.text = [find](const design::Design& d) {
        const Enum* e = seen(find, d);
        for (const auto& [word, value] : names(Enum{}))
            if (e != nullptr && value == *e) return QString(word);
        return QString();
    };
    part.with = [find](const design::Design& d, const QString& text) {
        return design::changed(d, [&](design::Design& copy) {
            for (const auto& [word, value] : names(Enum{}))
                if (Enum* e = find(copy); e != nullptr && text == word) *e = value;
        });
    };
    return part;
}

/// A catalog key; an inline entry shows as "own entry".
template <class Item>
[[nodiscard]] Part catalogPart(const Find<catalog::PartRef<Item>>& find, const std::string& key, const QString& owner,
                               const std::shared_ptr<const catalog::Catalog>& shop) {
    Part part = namedPart(key, owner);
    part.choices = [shop] {
        QStringList all;
        for (const auto& [name, entry] : catalog::partsOf<Item>(*shop))
            if (entry.standing == catalog::Standing::Current) all << QString::fromStdString(name);
        return all;
    };
    part.text = [find](const design::Design& d) {
        const auto* ref = seen(find, d);
        if (ref == nullptr) return QString();
        return ref->own ? QStringLiteral("own entry") : QString::fromStdString(ref->key);
    };
    part.with = [find](const design::Design& d, const QString& text) {
        return design::changed(d, [&](design::Design& copy) {
            auto* ref = find(copy);
            if (ref != nullptr && text != "own entry") *ref = catalog::PartRef<Item>(text.toStdString());
        });
    };
    return part;
}

[[nodiscard]] Part textPart(const Find<std::string>& find, const std::string& key, const QString& owner);
[[nodiscard]] Part flagPart(const Find<bool>& find, const std::string& key, const QString& owner);
/// Names with commas between.
[[nodiscard]] Part listPart(const Find<std::vector<std::string>>& find, const std::string& key, const QString& owner);
/// Groups of names: "2+3; 10+11".
[[nodiscard]] Part groupsPart(const Find<std::vector<std::vector<std::string>>>& find, const std::string& key,
                              const QString& owner);

}  // namespace editors
