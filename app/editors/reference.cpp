// SPDX-License-Identifier: GPL-3.0-or-later
// Which fields name something else in the design, and what can be named.
#include "analysis/answer.h"
#include "analysis/figure_names.h"
#include "editors/parts.h"

namespace editors {

namespace {

template <class Things>
QStringList namesOf(const Things& things) {
    QStringList all;
    for (const auto& thing : things) all << QString::fromStdString(thing.name);
    return all;
}

QStringList terminalNames(const design::Design& d) {
    return namesOf(d.terminals);
}

QStringList nodes(const design::Design& d) {
    QStringList all = terminalNames(d);
    for (const auto& place : d.coil)
        for (const auto& item : place.order)
            if (const auto* s = item.shield(); s != nullptr && !all.contains(QString::fromStdString(s->name)))
                all << QString::fromStdString(s->name);
    return all << QStringLiteral("core") << QStringLiteral("earth");
}

QStringList figures(const design::Design& d) {
    QStringList all;
    for (const auto& name : analysis::figureNames(d)) all << QString::fromStdString(name);
    return all;
}

QStringList traces(const design::Design&) {
    return namesOf(analysis::traceKinds());
}

}  // namespace

std::optional<Reference> referenceOf(const std::string& key) {
    if (key == "terminal" || key == "start" || key == "finish" || key == "centre_tap")
        return Reference{terminalNames, "the name of a terminal"};
    if (key == "plus" || key == "minus") return Reference{nodes, "the name of a terminal or shield, core or earth,"};
    if (key == "port") return Reference{[](const design::Design& d) { return namesOf(d.ports); }, "the name of a port"};
    if (key == "hook_up")
        return Reference{[](const design::Design& d) { return namesOf(d.hookUps); }, "the name of a hook-up"};
    if (key == "winding")
        return Reference{[](const design::Design& d) { return namesOf(d.windings); }, "the name of a winding"};
    if (key == "figure") return Reference{figures, "the name of a figure"};
    if (key == "trace") return Reference{traces, "the name of a trace"};
    return {};
}

}  // namespace editors
