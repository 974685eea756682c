// SPDX-License-Identifier: GPL-3.0-or-later
#include "editors/derived.h"

#include <QCoreApplication>

#include "units/text.h"

namespace editors {

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
    const auto say = [](units::Kind kind, double value) { return QString::fromStdString(units::write(kind, value)); };
    const QString how = random        ? QCoreApplication::translate("editors", "wound wild")
                        : layers == 1 ? QCoreApplication::translate("editors", "1 layer of %1 turns").arg(last)
                                      : QCoreApplication::translate("editors", "%1 layers of %2 turns, the last %3")
                                            .arg(layers)
                                            .arg(most)
                                            .arg(last);
    return how + " · " + QCoreApplication::translate("editors", "build") + ' ' + say(units::Kind::Length, high - low) +
           " · " + QCoreApplication::translate("editors", "mean turn") + ' ' +
           say(units::Kind::Length, length / turns) + " · " + say(units::Kind::Resistance, resistance) + ' ' +
           QCoreApplication::translate("editors", "at 20 °C");
}

}  // namespace editors
