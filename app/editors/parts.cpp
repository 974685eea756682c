// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/parts.h"

#include <utility>

#include "editors/labels.h"
#include "units/fault.h"

namespace editors {

namespace {

QString joined(const std::vector<std::string>& names, const QString& between) {
    QStringList all;
    for (const auto& name : names) all << QString::fromStdString(name);
    return all.join(between);
}

std::vector<std::string> split(const QString& text, QChar between) {
    std::vector<std::string> all;
    for (const auto& piece : text.split(between, Qt::SkipEmptyParts))
        if (!piece.trimmed().isEmpty()) all.push_back(piece.trimmed().toStdString());
    return all;
}

/// "from 0 mm to 500 mm": limits as the field itself would show them.
std::string limitWords(units::Kind kind, const json::Allowed& allowed) {
    constexpr double any = std::numeric_limits<double>::max();
    const auto word = [&](double value) { return units::writeExact(kind, value); };
    std::string text = allowed.wholeNumber ? "a whole number" : "a value";
    if (allowed.low > -any) text += (allowed.openLow ? " above " : " from ") + word(allowed.low);
    if (allowed.high < any) text += (allowed.low > -any && !allowed.openLow ? " to " : " up to ") + word(allowed.high);
    return text;
}

double numberOf(units::Kind kind, const QString& text, const json::Allowed& allowed) {
    const double value = units::read(kind, text.toStdString());
    if (!allowed.holds(value)) refuse(text, limitWords(kind, allowed));
    return value;
}

QString plain(const QString& text, int most) {
    QString kept = text.trimmed();
    if (kept.size() > most)
        refuse(kept.left(20) + QStringLiteral("…"),
               "at most " + std::to_string(most) + " characters, not " + std::to_string(kept.size()));
    for (const QChar c : std::as_const(kept))
        if (!c.isPrint()) refuse(kept.left(20), "letters, digits and signs that can be printed");
    return kept;
}

constexpr int nameRoom = 80;

}  // namespace

void refuse(const QString& found, const std::string& allowed) {
    units::refuse("", '"' + found.toStdString() + '"', allowed);
}

units::Kind kindOf(const std::string& key, const json::Allowed& allowed) {
    if (key == "turns") return units::Kind::Turns;
    if (key == "share" || key == "stacking_factor") return units::Kind::Number;
    if (allowed.unit == "degree Celsius") return units::Kind::Temperature;
    return units::kindOfUnit(allowed.unit);
}

Part namedPart(Part::Kind kind, const std::string& path, const std::string& key, const QString& owner) {
    Part part;
    part.path = path;
    part.kind = kind;
    part.label = labelOf(key);
    part.tip = tipOf(key);
    part.hint = hintOf(key);
    part.act = owner.isEmpty() ? part.label : tr("%1 of %2").arg(part.label, owner);
    return part;
}

Part numberPart(Part named, NumberRule rule, NumberAccess access) {
    named.text = [rule, access](const design::Design& d) {
        const auto value = access.read(d);
        return value ? QString::fromStdString(units::writeExact(rule.kind(d), *value)) : QString();
    };
    named.with = [rule, access](const design::Design& d, const QString& text) {
        return design::changed(d, [&](design::Design& copy) {
            if (rule.mayBeEmpty && text.trimmed().isEmpty()) return access.put(copy, {});
            access.put(copy, numberOf(rule.kind(d), text, rule.allowed));
        });
    };
    named.stepped = [rule, access](const design::Design& d, int steps, double factor) {
        const units::Kind kind = rule.kind(d);
        const double next = units::stepped(kind, access.read(d).value_or(0), steps, factor);
        return QString::fromStdString(units::writeExact(kind, next));
    };
    return named;
}

Part textPart(Part named, const Where<std::string>& where, int most) {
    named.text = [where](const design::Design& d) {
        const auto* t = where.seen(d);
        return t == nullptr ? QString() : QString::fromStdString(*t);
    };
    named.with = [where, most](const design::Design& d, const QString& text) {
        const std::string kept = plain(text, most).toStdString();
        return design::changed(d, [&](design::Design& copy) {
            if (auto* t = where.find(copy)) *t = kept;
        });
    };
    return named;
}

Part flagPart(Part named, const Where<bool>& where) {
    named.text = [where](const design::Design& d) {
        const auto* t = where.seen(d);
        return QString(t != nullptr && *t ? "true" : "false");
    };
    named.with = [where](const design::Design& d, const QString& text) {
        return design::changed(d, [&](design::Design& copy) {
            if (auto* t = where.find(copy)) *t = text == "true";
        });
    };
    return named;
}

Part listPart(Part named, const Where<std::vector<std::string>>& where) {
    named.text = [where](const design::Design& d) {
        const auto* t = where.seen(d);
        return t == nullptr ? QString() : joined(*t, ", ");
    };
    named.with = [where](const design::Design& d, const QString& text) {
        return design::changed(d, [&](design::Design& copy) {
            if (auto* t = where.find(copy)) *t = split(text, ',');
        });
    };
    return named;
}

Part groupsPart(Part named, const Where<std::vector<std::vector<std::string>>>& where) {
    named.text = [where](const design::Design& d) {
        const auto* t = where.seen(d);
        QStringList all;
        if (t != nullptr)
            for (const auto& group : *t) all << joined(group, "+");
        return all.join("; ");
    };
    named.with = [where](const design::Design& d, const QString& text) {
        return design::changed(d, [&](design::Design& copy) {
            auto* t = where.find(copy);
            if (t == nullptr) return;
            t->clear();
            for (const auto& group : split(text, ';')) t->push_back(split(QString::fromStdString(group), '+'));
        });
    };
    return named;
}

Part referencePart(Part named, const Where<std::string>& where, const Reference& to, bool needed) {
    named.choices = [to, needed](const design::Design& d) {
        QStringList all = to.names(d);
        if (!needed) all.prepend(QString());
        return all;
    };
    named.text = [where](const design::Design& d) {
        const auto* t = where.seen(d);
        return t == nullptr ? QString() : QString::fromStdString(*t);
    };
    named.with = [where, to, needed](const design::Design& d, const QString& text) {
        const QString name = text.trimmed();
        const bool nothing = name.isEmpty() && !needed;
        if (!nothing && !to.names(d).contains(name)) refuse(name, to.what + " out of the list");
        return design::changed(d, [&](design::Design& copy) {
            if (auto* t = where.find(copy)) *t = name.toStdString();
        });
    };
    return named;
}

Part namePart(Part named, const Where<std::string>& where, Rename rename) {
    Part part = textPart(std::move(named), where, nameRoom);
    part.with = [where, rename = std::move(rename)](const design::Design& d, const QString& text) {
        const std::string* now = where.seen(d);
        if (now == nullptr) refuse(text, "a part that is still there");
        return rename(d, *now, plain(text, nameRoom).toStdString());
    };
    return part;
}

Part wordPart(Part named, const QStringList& words, const WordAccess& access) {
    named.choices = [words](const design::Design&) { return words; };
    named.text = access.read;
    named.with = [words, put = access.put](const design::Design& d, const QString& text) {
        const auto at = std::find_if(words.begin(), words.end(), [word = text.trimmed()](const QString& w) {
            return w.compare(word, Qt::CaseInsensitive) == 0;
        });
        if (at == words.end()) refuse(text, "one of " + words.join(", ").toStdString());
        return design::changed(d, [&](design::Design& copy) { put(copy, *at); });
    };
    return named;
}

}  // namespace editors
