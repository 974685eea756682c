// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/part_words.h"

#include <QStringList>
#include <algorithm>
#include <charconv>
#include <cmath>

#include "bench/figure_words.h"
#include "bench/language.h"
#include "editors/labels.h"
#include "plots/result_words.h"
#include "spread/spread_words.h"
#include "units/text.h"

namespace bench {

using document::Selected;
using document::WholePart;

namespace {

/// The steps of a JSON pointer.
std::vector<std::string_view> stepsOf(std::string_view pointer) {
    std::vector<std::string_view> steps;
    while (!pointer.empty()) {
        pointer.remove_prefix(1);
        const auto end = std::min(pointer.find('/'), pointer.size());
        steps.push_back(pointer.substr(0, end));
        pointer.remove_prefix(end);
    }
    return steps;
}
int indexIn(std::string_view step) {
    int value = -1;
    std::from_chars(step.data(), step.data() + step.size(), value);
    return value;
}

/// Whether a stored part is what an item is made of.
bool madeOf(const spread::Varying& v, const design::Design& design, const design::ItemIndex& at) {
    const auto& item = design.coil[static_cast<std::size_t>(at.place)].order[static_cast<std::size_t>(at.item)];
    const auto starts = [&](const char* shelf, const std::string& key) {
        return !key.empty() && v.place.starts_with(std::string(shelf) + key + "/");
    };
    if (const auto* barrier = item.barrier()) return starts("/parts/insulation/", barrier->ply.insulation.key);
    const auto* section = item.section();
    if (section == nullptr) return false;
    if (section->interlayer && starts("/parts/insulation/", section->interlayer->insulation.key)) return true;
    for (std::size_t w = 0; w < design.windings.size(); ++w)
        if (design.windings[w].name == section->winding)
            return starts("/parts/wires/", design.windings[w].wire.key) ||
                   v.place.starts_with("/windings/" + std::to_string(w) + "/");
    return false;
}

bool belongs(const spread::Varying& v, const design::Design& design, const Selected& part) {
    const Selected own = partOf(v, design);
    if (own == part) return true;
    const auto* item = std::get_if<design::ItemIndex>(&part);
    return item != nullptr && madeOf(v, design, *item);
}

QString signedWords(const analysis::Column& column, double value) {
    const QString words = plots::shownNumber(spread::differenceWords(column, value));
    return value > 0 && !words.startsWith(QLatin1Char('+')) ? QLatin1Char('+') + words : words;
}

/// One effect on one promise, and how great it is beside that promise's whole spread.
struct Effect {
    QString words;
    double weight = 0;
};

}  // namespace

Selected partOf(const spread::Varying& varying, const design::Design& design) {
    const auto steps = stepsOf(varying.place);
    if (steps.size() > 3 && steps[0] == "coil") return design::ItemIndex{indexIn(steps[1]), indexIn(steps[3])};
    if (steps.size() > 1 && steps[0] == "windings") {
        const auto w = static_cast<std::size_t>(indexIn(steps[1]));
        return w < design.windings.size() ? Selected(document::WindingPart{design.windings[w].name}) : Selected();
    }
    if (steps.size() > 2 && steps[0] == "parts" && steps[1] == "wires")
        for (const auto& winding : design.windings)
            if (varying.place.starts_with("/parts/wires/" + winding.wire.key + "/"))
                return document::WindingPart{winding.name};
    if (steps.empty()) return {};
    if (steps[0] == "core") return WholePart{WholePart::Which::Core};
    if (steps[0] == "hook_ups") return WholePart{WholePart::Which::HookUps};
    if (steps[0] == "conditions") return WholePart{WholePart::Which::Conditions};
    return {};
}

QString slopeWords(const SpreadFound& found, std::size_t column, const spread::Slope& slope) {
    const auto& c = found.head.columns[column];
    const auto& v = found.head.varying[slope.varying];
    if (!std::isfinite(slope.effect))
        return translated("%1 does not occur where %2 is one standard deviation off.")
            .arg(columnText(c), translated(v.name));
    constexpr int digits = 3;
    const QString unit = c.unit.empty() ? QString() : QLatin1Char(' ') + editors::text(c.unit);
    return translated("%1, one standard deviation more: %2 on %3 (derivative %4%5 for one SI unit more). %6.")
        .arg(translated(v.name), signedWords(c, slope.effect), columnText(c),
             plots::shownNumber(units::significant(slope.derivative, digits)), unit,
             translated(spread::varyingWords(v)));
}

QString effectsOf(const SpreadFound& found, const Selected& part, int lines) {
    if (found.slopes.empty() || !found.study) return {};
    const auto& design = *found.study->variation().base;
    std::vector<Effect> effects;
    for (std::size_t c = 0; c < found.slopes.size(); ++c) {
        const auto& column = found.head.columns[c];
        if (column.promise < 0) continue;
        const double whole = found.summary.columns[c].deviation;
        for (const auto& slope : found.slopes[c]) {  // the first of this part moves it most
            if (!std::isfinite(slope.effect) || slope.effect == 0) continue;
            const auto& v = found.head.varying[slope.varying];
            if (!belongs(v, design, part)) continue;
            effects.push_back({translated("%1: %2 on %3")
                                   .arg(translated(v.name), signedWords(column, slope.effect), columnText(column)),
                               whole > 0 ? std::abs(slope.effect) / whole : 0});
            break;
        }
    }
    std::stable_sort(effects.begin(), effects.end(), [](const auto& a, const auto& b) { return a.weight > b.weight; });
    if (effects.empty()) return {};
    QStringList words{translated("One standard deviation more")};
    for (const auto& effect : effects)
        if (words.size() <= lines) words << effect.words;
    return words.join(QLatin1Char('\n'));
}

}  // namespace bench
