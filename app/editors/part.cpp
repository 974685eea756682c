// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/part.h"

#include <QObject>
#include <cmath>

#include "design/edit.h"
#include "design/walk.h"
#include "units/text.h"

namespace editors {

namespace {

using design::Design;
using design::DesignPtr;

std::string trimmed(const std::string& text) {
    return QString::fromStdString(text).trimmed().toStdString();
}

/// The bounds that files put on the number at one place.
struct Bounds {
    std::string place;
    std::optional<units::Fault> fault = {};

    template <class T>
    void record(const std::string&, T&) {}
    template <class T>
    void operator()(const std::string& at, T& value, const json::Allowed& allowed) {
        if (at != place) return;
        if constexpr (std::is_convertible_v<T, double> && !std::is_same_v<T, bool> && !std::is_enum_v<T>) {
            const auto number = static_cast<double>(value);
            if (!allowed.holds(number)) fault = {at, units::shortest(number), allowed.words()};
        }
    }
};

double readNumber(units::Kind kind, const std::string& text) {
    const double value = units::read(kind, text);
    if (kind == units::Kind::Count && std::abs(value) > 1e9)
        throw units::BadInput({"", "\"" + text + "\"", "a whole number up to 1000000000"});
    return value;
}

bool isZero(const units::Quantity& value) {
    return value.value == 0;
}
bool isZero(int value) {
    return value == 0;
}
bool isZero(double value) {
    return value == 0;
}

void assign(units::Quantity& to, double value) {
    to.value = value;
}
void assign(double& to, double value) {
    to = value;
}
void assign(int& to, double value) {
    to = static_cast<int>(std::lround(value));
}

template <class Number>
Part anyNumber(const Where<Number>& where, units::Kind kind, const QString& what, Empty empty,
               const QString& whenEmpty) {
    Part part{what, where.place(), kind, false, whenEmpty, where.owner(), {}, {}};
    part.text = [=](const Design& d) -> std::optional<std::string> {
        const Number* value = where.at(d);
        if (!value) return std::nullopt;
        if (empty == Empty::Zero && isZero(*value)) return "";
        return units::writeExact(kind, static_cast<double>(*value));
    };
    part.with = [=](const Design& d, const std::string& text) -> DesignPtr {
        const bool nothing = empty == Empty::Zero && trimmed(text).empty();
        const double value = nothing ? 0 : readNumber(kind, text);
        auto next = design::changed(d, [&](Design& copy) {
            if (Number* to = where.at(copy)) assign(*to, value);
        });
        refuseOutOfRange(*next, where.place());
        return next;
    };
    return part;
}

QString placeWords(std::string place) {
    if (const auto colon = place.find(": /"); colon != std::string::npos) place = place.substr(colon + 2);
    QStringList words;
    for (const QString& step : QString::fromStdString(place).split('/', Qt::SkipEmptyParts)) {
        bool number = false;
        const int index = step.toInt(&number);
        words += number ? QString::number(index + 1) : QString(step).replace('_', ' ').replace("hook ups", "hook-ups");
    }
    return words.join(' ');
}

}  // namespace

QString Part::act(const Design& d) const {
    const QString whose = owner ? owner(d) : QString();
    return whose.isEmpty() ? what : QObject::tr("%1 of %2").arg(what, whose);
}

Part numberPart(const Where<units::Quantity>& where, units::Kind kind, const QString& what, Empty empty,
                const QString& whenEmpty) {
    return anyNumber(where, kind, what, empty, whenEmpty);
}

Part numberPart(const Where<double>& where, units::Kind kind, const QString& what) {
    return anyNumber(where, kind, what, Empty::Refused, {});
}

Part countPart(const Where<int>& where, const QString& what, Empty empty, const QString& whenEmpty) {
    return anyNumber(where, units::Kind::Count, what, empty, whenEmpty);
}

Part numberPart(const Where<std::optional<double>>& where, std::function<units::Kind(const Design&)> kind,
                const QString& what, const QString& whenEmpty) {
    Part part{what, where.place(), {}, false, whenEmpty, where.owner(), {}, {}};
    part.text = [=](const Design& d) -> std::optional<std::string> {
        const std::optional<double>* value = where.at(d);
        if (!value) return std::nullopt;
        return *value ? units::writeExact(kind(d), **value) : "";
    };
    part.with = [=](const Design& d, const std::string& text) -> DesignPtr {
        std::optional<double> value;
        if (!trimmed(text).empty()) value = readNumber(kind(d), text);
        return design::changed(d, [&](Design& copy) {
            if (std::optional<double>* to = where.at(copy)) *to = value;
        });
    };
    return part;
}

Part namePart(const Where<std::string>& where, const QString& what, const QString& whenEmpty) {
    Part part{what, where.place(), {}, false, whenEmpty, where.owner(), {}, {}};
    part.text = [where](const Design& d) -> std::optional<std::string> {
        const std::string* value = where.at(d);
        return value ? std::optional(*value) : std::nullopt;
    };
    part.with = [where](const Design& d, const std::string& text) -> DesignPtr {
        return design::changed(d, [&](Design& copy) {
            if (std::string* to = where.at(copy)) *to = trimmed(text);
        });
    };
    return part;
}

Part textPart(const Where<std::string>& where, const QString& what) {
    Part part = namePart(where, what);
    part.anyText = true;
    return part;
}

Part flagPart(const Where<bool>& where, const QString& what) {
    Part part{what, where.place(), {}, false, {}, where.owner(), {}, {}};
    part.text = [where](const Design& d) -> std::optional<std::string> {
        const bool* value = where.at(d);
        return value ? std::optional<std::string>(*value ? "yes" : "no") : std::nullopt;
    };
    part.with = [where](const Design& d, const std::string& text) -> DesignPtr {
        return design::changed(d, [&](Design& copy) {
            if (bool* to = where.at(copy)) *to = text == "yes";
        });
    };
    return part;
}

Part namesPart(const Where<std::vector<std::string>>& where, const QString& what, const QString& whenEmpty) {
    Part part{what, where.place(), {}, false, whenEmpty, where.owner(), {}, {}};
    part.text = [where](const Design& d) -> std::optional<std::string> {
        const auto* list = where.at(d);
        if (!list) return std::nullopt;
        std::string text;
        for (const std::string& name : *list) text += (text.empty() ? "" : ", ") + name;
        return text;
    };
    part.with = [where](const Design& d, const std::string& text) -> DesignPtr {
        std::vector<std::string> list;
        for (const QString& name : QString::fromStdString(text).split(',', Qt::SkipEmptyParts))
            if (!name.trimmed().isEmpty()) list.push_back(name.trimmed().toStdString());
        return design::changed(d, [&](Design& copy) {
            if (auto* to = where.at(copy)) *to = list;
        });
    };
    return part;
}

QString sentenceBeside(const std::vector<units::Fault>& faults, const std::string& place) {
    const auto ours = [&](const units::Fault& f) {
        return f.place.empty() || f.place == place || f.place.ends_with(": " + place) ||
               f.place.find(": " + place + "/") != std::string::npos;
    };
    for (const units::Fault& f : faults)
        if (ours(f))
            return QObject::tr("Found %1; allowed is %2.")
                .arg(QString::fromStdString(f.found), QString::fromStdString(f.allowed));
    const units::Fault& f = faults.at(0);
    return QObject::tr("With it, %1 would be %2; allowed is %3.")
        .arg(placeWords(f.place), QString::fromStdString(f.found), QString::fromStdString(f.allowed));
}

void refuseOutOfRange(const Design& d, const std::string& place) {
    Bounds bounds{place};
    design::walk(d, bounds);
    if (bounds.fault) throw units::BadInput(*bounds.fault);
}

}  // namespace editors
