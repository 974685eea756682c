// SPDX-License-Identifier: GPL-3.0-or-later
#include "cut/item_words.h"

#include <QStringList>

#include "bench/language.h"
#include "units/text.h"

namespace cut {

namespace {

QString text(const std::string& s) {
    return QString::fromStdString(s);
}

QString turnsWords(double turns) {
    return text(units::writeExact(units::Kind::Turns, turns));
}

QString quantityWords(units::Kind kind, double value) {
    return text(units::write(kind, value, 3));
}

QString sectionTip(const Shape& shape, const design::Design& design) {
    QStringList lines;
    lines << bench::translated("%1: %2 turns").arg(text(shape.name), turnsWords(shape.turns));
    if (shape.random) {
        lines << bench::translated("random-wound");
    } else {
        lines << bench::translated("%1 %2, at most %3 turns a layer")
                     .arg(shape.layers)
                     .arg(shape.layers == 1 ? bench::translated("layer") : bench::translated("layers"),
                          turnsWords(shape.turnsPerLayer));
    }
    lines << bench::translated("build %1, wound width %2")
                 .arg(lengthWords(shape.box.width()), lengthWords(shape.box.height()));
    lines << bench::translated("mean turn %1").arg(lengthWords(shape.meanTurn));
    lines << bench::translated("DCR %1 at 20 °C").arg(quantityWords(units::Kind::Resistance, shape.resistance20));
    if (const auto* winding = design::winding(design, shape.winding); winding != nullptr && winding->strands > 1)
        lines << bench::translated("%1 wires in hand").arg(winding->strands);
    return lines.join(QLatin1Char('\n'));
}

}  // namespace

QString lengthWords(double metres, int digits) {
    return text(units::write(units::Kind::Length, metres, digits));
}

QString itemName(const design::Item& item) {
    if (const auto* section = item.section()) return text(section->label());
    if (const auto* shield = item.shield()) return bench::translated("shield %1").arg(text(shield->name));
    return bench::translated("insulation %1")
        .arg(text(units::writeExact(units::Kind::Length, item.barrier()->ply.thickness)));
}

QString itemLabel(const design::Item& item) {
    if (const auto* section = item.section())
        return text(section->label()) + QLatin1Char(' ') + turnsWords(section->turns);
    if (const auto* shield = item.shield()) return text(shield->name);
    return text(units::writeExact(units::Kind::Length, item.barrier()->ply.thickness));
}

QString itemSentence(const design::Design& design, design::ItemIndex index) {
    const auto* item = itemAt(design, index);
    if (item == nullptr) return {};
    const auto& place = design.coil[static_cast<std::size_t>(index.place)];
    QString what;
    if (const auto* section = item->section())
        what = bench::translated("section %1, %2 turns").arg(text(section->label()), turnsWords(section->turns));
    else if (const auto* shield = item->shield())
        what = bench::translated("Faraday shield %1").arg(text(shield->name));
    else
        what = itemName(*item);
    if (design.coil.size() > 1) what += bench::translated(", leg %1 chamber %2").arg(place.leg).arg(place.chamber);
    return what +
           bench::translated(", item %1 of %2 from the core outward").arg(index.item + 1).arg(place.order.size());
}

QString itemTip(const Shape& shape, const design::Design& design) {
    if (shape.kind == Shape::Kind::Section) return sectionTip(shape, design);
    if (shape.kind == Shape::Kind::Shield)
        return bench::translated("shield %1\nthickness %2, width %3\nmean turn %4%5")
            .arg(text(shape.name), lengthWords(shape.box.width()), lengthWords(shape.box.height()),
                 lengthWords(shape.meanTurn),
                 shape.isFolded() ? bench::translated("\nfolded over both ends") : QString());
    return bench::translated("insulation: %1\nthickness %2").arg(text(shape.name), lengthWords(shape.box.width()));
}

QString coilSentence(const design::Design& design) {
    QStringList places;
    for (const auto& place : design.coil) {
        QStringList items{bench::translated("core")};
        for (const auto& item : place.order) items << (item.barrier() != nullptr ? itemName(item) : itemLabel(item));
        QString words = items.join(QStringLiteral(", "));
        if (design.coil.size() > 1)
            words.prepend(bench::translated("leg %1 chamber %2: ").arg(place.leg).arg(place.chamber));
        places << words;
    }
    return bench::translated("From the core outward: ") + places.join(QStringLiteral("; ")) + QLatin1Char('.');
}

}  // namespace cut
