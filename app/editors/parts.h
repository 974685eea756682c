// SPDX-License-Identifier: GPL-3.0-or-later
// Parts made out of a design's own field tables: how a value is shown, typed and replaced.
#pragma once

#include <concepts>

#include "design/edit.h"
#include "editors/labels.h"
#include "editors/part.h"
#include "editors/where.h"
#include "units/kind.h"
#include "units/text.h"

namespace editors {

using Shop = std::shared_ptr<const catalog::Catalog>;

/// Throws units::BadInput, place "".
[[noreturn]] void refuse(const QString& found, const std::string& allowed);

/// A part without its reading and writing yet.
[[nodiscard]] Part namedPart(Part::Kind kind, const std::string& path, const std::string& key, const QString& owner);

/// How a number is typed: its kind (which may hang on the design), what it may be, and whether it may be left empty.
struct NumberRule {
    std::function<units::Kind(const design::Design&)> kind;
    json::Allowed allowed = {};
    bool mayBeEmpty = false;
};
/// What kind of quantity a field holds, by its unit in the field table and its key.
[[nodiscard]] units::Kind kindOf(const std::string& key, const json::Allowed& allowed);

/// Reading and putting of a number; `put` gets nothing where the field was left empty.
struct NumberAccess {
    std::function<std::optional<double>(const design::Design&)> read;
    std::function<void(design::Design&, std::optional<double>)> put;
};
[[nodiscard]] Part numberPart(Part named, NumberRule rule, NumberAccess access);

/// The number that a member holds, if any, and putting another in its place (a quantity keeps tolerance and note).
template <class T>
[[nodiscard]] NumberAccess accessTo(const Where<T>& where) {
    return {[where](const design::Design& d) -> std::optional<double> {
                const T* t = where.seen(d);
                if (t == nullptr) return {};
                if constexpr (std::is_same_v<T, units::Quantity>)
                    return t->value;
                else
                    return *t;
            },
            [where](design::Design& d, std::optional<double> value) {
                T* t = where.find(d);
                if (t == nullptr) refuse({}, "a part that is still there");
                if constexpr (std::is_same_v<T, units::Quantity>)
                    t->value = value.value_or(0);
                else if constexpr (std::is_same_v<T, std::optional<double>>)
                    *t = value;
                else
                    *t = static_cast<T>(value.value_or(0));
            }};
}

/// Free text: at most `most` characters that can be printed.
[[nodiscard]] Part textPart(Part named, const Where<std::string>& where, int most);
[[nodiscard]] Part flagPart(Part named, const Where<bool>& where);
/// Names with commas between.
[[nodiscard]] Part listPart(Part named, const Where<std::vector<std::string>>& where);
/// Groups of names: "2+3; 10+11".
[[nodiscard]] Part groupsPart(Part named, const Where<std::vector<std::vector<std::string>>>& where);

/// The names that a text may be, and what they are called in a sentence ("the name of a terminal").
struct Reference {
    std::function<QStringList(const design::Design&)> names;
    std::string what;
};
/// What a field of this key names, if it names something.
[[nodiscard]] std::optional<Reference> referenceOf(const std::string& key);
/// One of the names; nothing at all where the field need not be filled.
[[nodiscard]] Part referencePart(Part named, const Where<std::string>& where, const Reference& to, bool needed);

/// A name that everything follows when it is changed.
using Rename = std::function<design::DesignPtr(const design::Design&, const std::string& from, const std::string& to)>;
[[nodiscard]] Part namePart(Part named, const Where<std::string>& where, Rename rename);

/// A choice by words: reading the word of today, and putting another one, already known to be among them.
struct WordAccess {
    std::function<QString(const design::Design&)> read;
    std::function<void(design::Design&, const QString&)> put;
};
[[nodiscard]] Part wordPart(Part named, const QStringList& words, const WordAccess& access);

template <class Enum>
[[nodiscard]] Part enumPart(Part named, const Where<Enum>& where) {
    QStringList words;
    for (const auto& [word, value] : names(Enum{})) words << wordOf(word);
    return wordPart(std::move(named), words,
                    {[where](const design::Design& d) {
                         const Enum* e = where.seen(d);
                         for (const auto& [word, value] : names(Enum{}))
                             if (e != nullptr && value == *e) return wordOf(word);
                         return QString();
                     },
                     [where](design::Design& d, const QString& text) {
                         for (const auto& [word, value] : names(Enum{}))
                             if (Enum* e = where.find(d); e != nullptr && text == wordOf(word)) *e = value;
                     }});
}

/// Keys of the catalog as they stand in a list: wires by diameter, retired entries last and marked.
template <class Item>
[[nodiscard]] QStringList catalogChoices(const catalog::Catalog& shop) {
    std::vector<std::pair<std::string, const Item*>> all;
    for (const auto& [key, entry] : catalog::partsOf<Item>(shop)) all.emplace_back(key, &entry);
    std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) {
        const bool goneA = a.second->standing != catalog::Standing::Current;
        const bool goneB = b.second->standing != catalog::Standing::Current;
        if (goneA != goneB) return goneB;
        if constexpr (std::is_same_v<Item, catalog::Wire>)
            return a.second->bareDiameter.value < b.second->bareDiameter.value;
        else
            return false;
    });
    QStringList words;
    for (const auto& [key, entry] : all) words << catalogWord(key, entry->standing == catalog::Standing::Current);
    return words;
}

/// A catalog key; an inline entry shows as "own entry", a retired one says so.
template <class Item>
[[nodiscard]] Part catalogPart(Part named, const Where<catalog::PartRef<Item>>& where, const Shop& shop) {
    named.choices = [shop](const design::Design&) { return catalogChoices<Item>(*shop); };
    named.text = [where, shop](const design::Design& d) {
        const auto* ref = where.seen(d);
        if (ref == nullptr || ref->empty()) return QString();
        if (ref->own) return ownEntry();
        const auto& today = catalog::partsOf<Item>(*shop);
        const auto entry = today.find(ref->key);
        return catalogWord(ref->key, entry == today.end() || entry->second.standing == catalog::Standing::Current);
    };
    named.with = [where, shop](const design::Design& d, const QString& text) {
        return design::changed(d, [&](design::Design& copy) {
            auto* ref = where.find(copy);
            if (ref == nullptr) refuse(text, "a part that is still there");
            if (text == ownEntry() && ref->own) return;
            const std::string key = catalogKey(text);
            if (!catalog::partsOf<Item>(*shop).contains(key) && !catalog::partsOf<Item>(d.parts).contains(key))
                refuse(text, "an entry of the catalog: type any piece of its name to search the list");
            *ref = catalog::PartRef<Item>(key);
        });
    };
    return named;
}

/// Makes the part of one field of a record by its type: numbers, flags, choices, catalog entries, references, text.
template <class Record>
struct PartMaker {
    const Where<Record>& record;
    std::string key;
    QString owner;
    const Shop& shop;
    std::optional<Part> made = {};

    template <class T>
    void need(const char* name, T&, const json::Allowed& allowed = {}) {
        if (key == name) make<T>(allowed, true);
    }
    template <class T>
    void may(const char* name, T&, const json::Allowed& allowed = {}) {
        if (key == name) make<T>(allowed, false);
    }

private:
    template <class T>
    void make(const json::Allowed& allowed, bool needed) {
        const auto where = memberOf<T>(record, key);
        const auto named = [&](Part::Kind kind) { return namedPart(kind, where.path, key, owner); };
        if constexpr (std::is_same_v<T, bool>) {
            made = flagPart(named(Part::Kind::Flag), where);
        } else if constexpr (std::is_same_v<T, std::string>) {
            if (const auto reference = referenceOf(key))
                made = referencePart(named(Part::Kind::Choice), where, *reference, needed);
            else
                made = textPart(named(Part::Kind::Text), where, textRoom(key));
        } else if constexpr (std::is_enum_v<T>) {
            made = enumPart(named(Part::Kind::Choice), where);
        } else if constexpr (std::is_same_v<T, int>) {
            made = numberPart(named(Part::Kind::Number),
                              {[](const design::Design&) { return units::Kind::Count; }, allowed.whole()},
                              accessTo(where));
        } else if constexpr (std::is_same_v<T, units::Quantity> || std::is_same_v<T, double> ||
                             std::is_same_v<T, std::optional<double>>) {
            made = numberPart(named(Part::Kind::Number),
                              {[kind = kindOf(key, allowed)](const design::Design&) { return kind; }, allowed,
                               std::is_same_v<T, std::optional<double>>},
                              accessTo(where));
        } else if constexpr (std::is_same_v<T, std::vector<std::string>>) {
            made = listPart(named(Part::Kind::Text), where);
        } else if constexpr (std::is_same_v<T, std::vector<std::vector<std::string>>>) {
            made = groupsPart(named(Part::Kind::Text), where);
        } else if constexpr (requires(T t) { t.own; }) {
            made = catalogPart(named(Part::Kind::Choice), where, shop);
        }
    }
};

/// The part of the field `key`, which the record must have. `owner` names the record in acts: "section S1.a".
template <class Record>
[[nodiscard]] Part partOf(const Where<Record>& record, const std::string& key, const QString& owner, const Shop& shop) {
    PartMaker<Record> maker{record, key, owner, shop};
    Record any{};
    fields(maker, any);
    return std::move(maker.made).value();
}

}  // namespace editors
