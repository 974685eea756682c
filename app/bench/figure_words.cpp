// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/figure_words.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <QStringList>
#include <array>
#include <utility>

#include "bench/language.h"
#include "shop/datasheet_parts.h"
#include "units/figure.h"

namespace bench {

namespace {

/// Quantities that no outside paper prints, so that the datasheet has no words for them.
constexpr std::array unprinted{
    std::pair{"best_ratio_factor", QT_TRANSLATE_NOOP("core", "Best ratio for noise, factor")},
    std::pair{"build", QT_TRANSLATE_NOOP("core", "Build")},
    std::pair{"copper_mass", QT_TRANSLATE_NOOP("core", "Copper mass")},
    std::pair{"demagnetising_level", QT_TRANSLATE_NOOP("core", "Demagnetising level, 20 Hz")},
    std::pair{"fill", QT_TRANSLATE_NOOP("core", "Fill")},
    std::pair{"hum_1uT_50Hz", QT_TRANSLATE_NOOP("core", "Hum in 1 µT, 50 Hz")},
    std::pair{"hum_cancelled", QT_TRANSLATE_NOOP("core", "Hum cancelled by the two coils")},
    std::pair{"inductance_20Hz_direct", QT_TRANSLATE_NOOP("core", "Inductance, 20 Hz, with direct current")},
    std::pair{"inductance_after_short", QT_TRANSLATE_NOOP("core", "Inductance after a shorted leg")},
    std::pair{"outer_height", QT_TRANSLATE_NOOP("core", "Outer height")},
    std::pair{"outer_length", QT_TRANSLATE_NOOP("core", "Outer length")},
    std::pair{"outer_width", QT_TRANSLATE_NOOP("core", "Outer width")},
    std::pair{"phantom_current", QT_TRANSLATE_NOOP("core", "Direct current from phantom supply")},
    std::pair{"phantom_short_current", QT_TRANSLATE_NOOP("core", "Direct current, one leg shorted")},
    std::pair{"remanence_after_short", QT_TRANSLATE_NOOP("core", "Remanence after a shorted leg")},
    std::pair{"screening_50Hz", QT_TRANSLATE_NOOP("core", "Screening by the cans, 50 Hz")},
    std::pair{"second_harmonic_20Hz", QT_TRANSLATE_NOOP("core", "Second harmonic, 20 Hz")},
    std::pair{"wire_length", QT_TRANSLATE_NOOP("core", "Wire length")},
};

/// English; the key itself where there are none.
std::string quantityWords(const std::string& quantity) {
    for (const auto& [key, words] : unprinted)
        if (quantity == key) return words;
    return shop::figureWords(quantity);
}

}  // namespace

QString figureText(const std::string& figure) {
    const auto parts = units::nameParts(figure);
    const std::string &quantity = parts.front(), words = quantityWords(quantity);
    if (words == quantity) return QString::fromStdString(figure).section(QLatin1Char('@'), 0, 0);
    QString text = translated(words);
    if (parts.size() == 1) return text;
    QStringList of;
    for (std::size_t k = 1; k < parts.size(); ++k) of << QString::fromStdString(parts[k]);
    if (quantity == "capacitance")
        for (QString& electrode : of)  // the core is one, and no winding may be called so
            if (electrode == QStringLiteral("core")) electrode = translated("core");
    text += QStringLiteral(", ");
    if (of.size() != 2) return text + of.join(QStringLiteral(", "));
    return text + translated("%1 to %2").arg(of.front(), of.back());
}

QString promiseText(const std::string& text) {
    static const QRegularExpression key(
        QStringLiteral("(?<![\\w.])[a-z][A-Za-z0-9]*(?:_[A-Za-z0-9]+)*(?:\\.[^\\s.:,;()@]+)*"));
    const QString whole = QString::fromStdString(text);
    QString named;
    qsizetype from = 0;
    auto each = key.globalMatch(whole);
    while (each.hasNext()) {
        const auto found = each.next();
        named += whole.mid(from, found.capturedStart() - from) + figureText(found.captured().toStdString());
        from = found.capturedEnd();
    }
    return translated((named + whole.mid(from)).toStdString());
}

QString columnText(const analysis::Column& column) {
    if (column.promise < 0) return figureText(column.name);
    const QString text = promiseText(column.text);
    return column.mask ? translated("%1, margin").arg(text) : text;
}

}  // namespace bench
