// SPDX-License-Identifier: GPL-3.0-or-later
// One editable value of a design: how its text is read out of a design and put into one.
#pragma once

#include <QString>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "design/design.h"
#include "editors/where.h"
#include "units/kind.h"

namespace editors {

/// What one field is bound to.
struct Part {
    QString what;                     ///< "turns"
    std::string place;                ///< where it stands in a file: "/coil/0/order/2/section/turns"
    std::optional<units::Kind> kind;  ///< of a number
    bool anyText = false;             ///< whatever is typed is right: a note, a customer's name
    QString whenEmpty;                ///< what an empty field means: "as many as fit"
    std::function<QString(const design::Design&)> owner;  ///< "P.a"; may be empty
    /// The text of the value; nothing if this design has no such part.
    std::function<std::optional<std::string>(const design::Design&)> text;
    /// A design with the value that `text` says. Throws units::BadInput for a text that says none.
    std::function<design::DesignPtr(const design::Design&, const std::string& text)> with;

    /// "turns of P.a": the name of the act, and of its field for those who hear the screen.
    [[nodiscard]] QString act(const design::Design& d) const;
};

/// Whether an empty field is a value too, and which one.
enum class Empty { Refused, Zero, None };

[[nodiscard]] Part numberPart(const Where<units::Quantity>& where, units::Kind kind, const QString& what,
                              Empty empty = Empty::Refused, const QString& whenEmpty = {});
[[nodiscard]] Part numberPart(const Where<double>& where, units::Kind kind, const QString& what);
[[nodiscard]] Part numberPart(const Where<std::optional<double>>& where,
                              std::function<units::Kind(const design::Design&)> kind, const QString& what,
                              const QString& whenEmpty);
[[nodiscard]] Part countPart(const Where<int>& where, const QString& what, Empty empty = Empty::Refused,
                             const QString& whenEmpty = {});
[[nodiscard]] Part textPart(const Where<std::string>& where, const QString& what);
/// A name of something in the design: an unknown one is a fault that the design's own check words.
[[nodiscard]] Part namePart(const Where<std::string>& where, const QString& what, const QString& whenEmpty = {});
[[nodiscard]] Part flagPart(const Where<bool>& where, const QString& what);  ///< "yes" or "no"
/// Names with commas between: "gnd, core, SH".
[[nodiscard]] Part namesPart(const Where<std::vector<std::string>>& where, const QString& what,
                             const QString& whenEmpty = {});

/// A choice out of few, under its word in files.
template <class Enum>
[[nodiscard]] Part choicePart(const Where<Enum>& where, const QString& what) {
    Part part{what, where.place(), {}, false, {}, where.owner(), {}, {}};
    part.text = [where](const design::Design& d) -> std::optional<std::string> {
        const Enum* value = where.at(d);
        if (!value) return std::nullopt;
        for (const auto& [word, named] : names(Enum{}))
            if (named == *value) return word;
        return std::nullopt;
    };
    part.with = [where](const design::Design& d, const std::string& text) {
        auto copy = std::make_shared<design::Design>(d);
        for (const auto& [word, named] : names(Enum{}))
            if (Enum* value = where.at(*copy); value && text == word) *value = named;
        return design::DesignPtr(copy);
    };
    return part;
}

/// A catalog entry by key; an entry that stands in the design itself goes by its title.
template <class Entry>
[[nodiscard]] Part keyPart(const Where<catalog::PartRef<Entry>>& where, const QString& what,
                           const QString& whenEmpty = {}) {
    const auto words = [](const catalog::PartRef<Entry>& ref) {
        if (!ref.own) return ref.key;
        return ref.own->title.empty() ? std::string("own part") : ref.own->title;
    };
    Part part{what, where.place(), {}, false, whenEmpty, where.owner(), {}, {}};
    part.text = [where, words](const design::Design& d) -> std::optional<std::string> {
        const auto* ref = where.at(d);
        return ref ? std::optional(words(*ref)) : std::nullopt;
    };
    part.with = [where, words](const design::Design& d, const std::string& text) {
        auto copy = std::make_shared<design::Design>(d);
        if (auto* ref = where.at(*copy); ref && words(*ref) != text) *ref = catalog::PartRef<Entry>(text);
        return design::DesignPtr(copy);
    };
    return part;
}

/// The fault's sentence as it stands beneath a field: what was found and what is allowed there. A fault at another
/// place than `place` says so.
[[nodiscard]] QString sentenceBeside(const std::vector<units::Fault>& faults, const std::string& place);

/// Throws units::BadInput if the number at `place` of `d` lies outside what files allow there.
void refuseOutOfRange(const design::Design& d, const std::string& place);

}  // namespace editors
