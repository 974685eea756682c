// SPDX-License-Identifier: GPL-3.0-or-later
// Tolerances that the design itself holds: what has none varies as the shop's do.
#include <algorithm>
#include <array>

#include "design/walk.h"
#include "editors/form.h"
#include "spread/quantities.h"
#include "units/text.h"

namespace editors {

namespace {

using units::Quantity;
using units::Tolerance;

/// What is worth a tolerance, by its key in files; anything else stands here only while it has one.
constexpr std::array usual{"height",     "stacking_factor", "gap",          "permeability_factor",
                           "thickness",  "turns",           "layer_factor", "resistance_factor",
                           "resistance", "capacitance",     "temperature"};

std::string lastOf(const std::string& path) {
    return path.substr(path.rfind('/') + 1);
}

/// Finds the quantity at one place; fields ask often, so nothing else is kept.
struct QuantityFinder {
    std::string path;
    Quantity* found = nullptr;
    template <class T>
    void record(const std::string&, T&) {}
    template <class T>
    void operator()(const std::string& at, T& value, const json::Allowed&) {
        if constexpr (std::is_same_v<T, Quantity>)
            if (at == path) found = &value;
    }
};

Where<Quantity> quantityAt(const std::string& path) {
    return {[path](design::Design& d) {
                QuantityFinder finder{path};
                design::Walk<QuantityFinder>("", finder).step("", d, {});
                return finder.found;
            },
            path};
}

/// A share where the text says "%", else in the quantity's own unit.
std::optional<Tolerance> toleranceOf(const QString& typed, units::Kind kind, const std::optional<Tolerance>& before) {
    if (typed.trimmed().isEmpty()) return {};
    Tolerance read = before.value_or(Tolerance{});
    read.relative = typed.contains('%');
    QString text = typed;
    text.remove(QStringLiteral("±"));
    read.plusMinus = units::read(read.relative ? units::Kind::Share : kind, text.trimmed().toStdString());
    if (read.plusMinus < 0 || (read.relative && read.plusMinus >= 1))
        refuse(typed, read.relative ? "a share from 0 % to below 100 %" : "a value of at least 0");
    return read;
}

std::string widthWords(const Tolerance& t, units::Kind kind) {
    return units::writeExact(t.relative ? units::Kind::Share : kind, t.plusMinus);
}

Part widthPart(const Where<Quantity>& where, units::Kind kind, const QString& name) {
    Part part = namedPart(Part::Kind::Text, where.path + "/plus_minus", "plus_minus", name);
    part.text = [where, kind](const design::Design& d) {
        const Quantity* q = where.seen(d);
        return q && q->tolerance ? QString::fromStdString(widthWords(*q->tolerance, kind)) : QString();
    };
    part.with = [where, kind](const design::Design& d, const QString& typed) {
        return design::changed(d, [&](design::Design& copy) {
            Quantity* q = where.find(copy);
            if (q == nullptr) refuse(typed, "a part that is still there");
            q->tolerance = toleranceOf(typed, kind, q->tolerance);
        });
    };
    return part;
}

/// Law of the spread; only where a width is given is there one.
Part lawPart(const Where<Quantity>& where, const QString& name) {
    constexpr std::array laws{"normal", "uniform", "lognormal", "triangular"};
    QStringList words;
    for (const char* law : laws) words << wordOf(law);
    return wordPart(namedPart(Part::Kind::Choice, where.path + "/distribution", "distribution", name), words,
                    {[where](const design::Design& d) {
                         const Quantity* q = where.seen(d);
                         if (q == nullptr || !q->tolerance) return QString();
                         return wordOf(q->tolerance->distribution.empty() ? "normal" : q->tolerance->distribution);
                     },
                     [where, laws](design::Design& d, const QString& typed) {
                         Quantity* q = where.find(d);
                         if (q == nullptr || !q->tolerance)
                             refuse(typed, "a width first: without one the shop's tolerance holds");
                         for (const char* law : laws)
                             if (wordOf(law) == typed) q->tolerance->distribution = law;
                     }});
}

/// What a quantity belongs to: "section P.a", or empty for the core's own.
QString ownerOf(const design::Design& d, const std::string& path) {
    const auto number = [&](const char* after) {
        const auto at = path.find(after);
        return at == std::string::npos ? std::size_t{0} : std::stoul(path.substr(at + std::string(after).size()));
    };
    if (path.starts_with("/windings/")) return tr("winding %1").arg(text(d.windings[number("/windings/")].name));
    if (path.starts_with("/core/stack/")) return tr("sheets %1 of the stack").arg(number("/core/stack/") + 1);
    if (path.starts_with("/core/cans/")) return tr("screen can %1").arg(number("/core/cans/") + 1);
    if (path.starts_with("/hook_ups/")) {
        const auto& hookUp = d.hookUps[number("/hook_ups/")];
        const auto port = path.find("/ports/") == std::string::npos ? hookUp.ports.size() : number("/ports/");
        return port < hookUp.ports.size() ? tr("port %1 in %2").arg(text(hookUp.ports[port].port), text(hookUp.name))
                                          : tr("hook-up %1").arg(text(hookUp.name));
    }
    if (!path.starts_with("/coil/")) return {};
    const auto& item = d.coil[number("/coil/")].order[number("/order/")];
    if (const auto* section = item.section()) return tr("section %1").arg(text(section->label()));
    if (const auto* shield = item.shield()) return tr("shield %1").arg(text(shield->name));
    return tr("insulation %1").arg(number("/order/") + 1);
}

}  // namespace

void writeTolerances(FormPen& pen) {
    pen.heading(tr("Tolerances of this design"));
    design::Design copy = pen.design;
    for (const auto& [path, at] : spread::quantitiesOf(copy).found) {
        const std::string key = lastOf(path);
        const bool worth = std::find(usual.begin(), usual.end(), key) != usual.end() && at.quantity->value != 0 &&
                           !path.starts_with("/brief");
        if (!worth && !at.quantity->tolerance) continue;
        const QString owner = ownerOf(pen.design, path), label = labelOf(key);
        const QString name = owner.isEmpty() ? label : tr("%1 of %2").arg(label, owner);
        const auto where = quantityAt(path);
        pen.heading(name, 2);
        pen.row({widthPart(where, kindOf(key, at.allowed), name), lawPart(where, name)});
    }
}

}  // namespace editors
