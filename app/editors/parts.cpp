// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/parts.h"

#include "units/fault.h"
#include "units/text.h"

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

}  // namespace

void refuse(const QString& found, const std::string& allowed) {
    throw units::BadInput(units::Fault{"", '"' + found.toStdString() + '"', allowed});
}

units::Kind kindOf(const std::string& key, const json::Allowed& allowed) {
    if (key == "turns") return units::Kind::Turns;
    if (key == "share" || key == "stacking_factor") return units::Kind::Number;
    if (allowed.unit == "degree Celsius") return units::Kind::Temperature;
    return units::kindOfUnit(allowed.unit);
}

QString numberText(units::Kind kind, double value) {
    return QString::fromStdString(units::writeExact(kind, value));
}

double numberOf(units::Kind kind, const QString& text, const json::Allowed& allowed) {
    const double value = units::read(kind, text.toStdString());
    if (!allowed.holds(value)) refuse(text, allowed.words());
    return value;
}

Part namedPart(const std::string& key, const QString& owner) {
    Part part;
    part.label = labelOf(key);
    part.tip = tipOf(key);
    part.act = owner.isEmpty() ? part.label : part.label + QCoreApplication::translate("editors", " of ") + owner;
    return part;
}

Part textPart(const Find<std::string>& find, const std::string& key, const QString& owner) {
    Part part = namedPart(key, owner);
    part.text = [find](const design::Design& d) {
        const auto* t = seen(find, d);
        return t == nullptr ? QString() : QString::fromStdString(*t);
    };
    part.with = [find](const design::Design& d, const QString& text) {
        return design::changed(d, [&](design::Design& copy) {
            if (auto* t = find(copy)) *t = text.trimmed().toStdString();
        });
    };
    return part;
}

Part flagPart(const Find<bool>& find, const std::string& key, const QString& owner) {
    Part part = namedPart(key, owner);
    part.text = [find](const design::Design& d) {
        const auto* t = seen(find, d);
        return QString(t != nullptr && *t ? "true" : "false");
    };
    part.with = [find](const design::Design& d, const QString& text) {
        return design::changed(d, [&](design::Design& copy) {
            if (auto* t = find(copy)) *t = text == "true";
        });
    };
    return part;
}

Part listPart(const Find<std::vector<std::string>>& find, const std::string& key, const QString& owner) {
    Part part = namedPart(key, owner);
    part.text = [find](const design::Design& d) {
        const auto* t = seen(find, d);
        return t == nullptr ? QString() : joined(*t, ", ");
    };
    part.with = [find](const design::Design& d, const QString& text) {
        return design::changed(d, [&](design::Design& copy) {
            if (auto* t = find(copy)) *t = split(text, ',');
        });
    };
    return part;
}

Part groupsPart(const Find<std::vector<std::vector<std::string>>>& find, const std::string& key, const QString& owner) {
    Part part = namedPart(key, owner);
    part.text = [find](const design::Design& d) {
        const auto* t = seen(find, d);
        QStringList all;
        if (t != nullptr)
            for (const auto& group : *t) all << joined(group, "+");
        return all.join("; ");
    };
    part.with = [find](const design::Design& d, const QString& text) {
        return design::changed(d, [&](design::Design& copy) {
            auto* t = find(copy);
            if (t == nullptr) return;
            t->clear();
            for (const auto& group : split(text, ';')) t->push_back(split(QString::fromStdString(group), '+'));
        });
    };
    return part;
}

}  // namespace editors
