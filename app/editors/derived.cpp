// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/derived.h"

#include <QStringList>
#include <map>
#include <set>

#include "editors/labels.h"
#include "units/text.h"

namespace editors {

namespace {

QString say(units::Kind kind, double value) {
    return QString::fromStdString(units::write(kind, value));
}

/// What lies in the window of one winding.
struct Wound {
    std::set<design::ItemIndex> sections;
    int layers = 0;
    double area = 0, build = 0, room = 0;
};

Wound woundOf(const coil::CoilBuild& build, const std::string& winding) {
    Wound all;
    std::map<design::ItemIndex, std::pair<double, double>> extents;
    for (const auto& layer : build.layers) {
        if (layer.winding != winding) continue;
        all.sections.insert(layer.item);
        ++all.layers;
        all.area += layer.box.width() * layer.box.height();
        auto [extent, fresh] = extents.try_emplace(layer.item, layer.box.x0, layer.box.x1);
        extent->second = {std::min(extent->second.first, layer.box.x0), std::max(extent->second.second, layer.box.x1)};
    }
    for (const auto& [item, extent] : extents) all.build += extent.second - extent.first;
    for (const auto& chamber : build.fill) all.room += chamber.room.width() * chamber.room.height();
    return all;
}

}  // namespace

QString derivedOf(const analysis::Answer& answer, const std::string& winding) {
    if (!answer.build) return {};
    const Wound wound = woundOf(*answer.build, winding);
    if (wound.layers == 0) return {};
    QStringList all;
    if (const auto* dcr = answer.figure("dcr." + winding))
        all << tr("DCR %1").arg(say(units::Kind::Resistance, dcr->value));
    if (const auto* wire = answer.figure("wire_length." + winding))
        all << tr("%1 of conductor").arg(say(units::Kind::Length, wire->value));
    all << (wound.layers == 1 ? tr("1 layer") : tr("%1 layers in all").arg(wound.layers));
    if (wound.sections.size() > 1) all << tr("%1 sections").arg(wound.sections.size());
    all << tr("build %1").arg(say(units::Kind::Length, wound.build));
    if (wound.room > 0) all << tr("fills %1 of the window").arg(say(units::Kind::Share, wound.area / wound.room));
    return all.join(QStringLiteral(" · "));
}

QString derivedOf(const analysis::Answer& answer, const design::ItemIndex& item) {
    if (!answer.build) return {};
    int layers = 0;
    double low = 1e9, high = 0, resistance = 0, length = 0, turns = 0, most = 0, last = 0;
    bool random = false;
    for (const auto& layer : answer.build->layers) {
        if (layer.item != item) continue;
        ++layers;
        low = std::min(low, layer.box.x0);
        high = std::max(high, layer.box.x1);
        resistance += layer.resistance20;
        length += layer.turns * layer.turnLength;
        turns += layer.turns;
        most = std::max(most, layer.turns);
        last = layer.turns;
        random = random || layer.random;
    }
    if (layers == 0) return {};
    const QString how = random        ? tr("wound wild")
                        : layers == 1 ? tr("1 layer of %1 turns").arg(last)
                                      : tr("%1 layers of %2 turns, the last %3").arg(layers).arg(most).arg(last);
    return how + " · " + tr("build") + ' ' + say(units::Kind::Length, high - low) + " · " + tr("mean turn") + ' ' +
           say(units::Kind::Length, length / turns) + " · " + say(units::Kind::Resistance, resistance) + ' ' +
           tr("at 20 °C");
}

}  // namespace editors
