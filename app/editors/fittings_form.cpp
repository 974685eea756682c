// SPDX-License-Identifier: GPL-3.0-or-later
// Fittings, and what is cut off reels, as a form.
#include "editors/form.h"
#include "editors/labels.h"

namespace editors {

namespace {

/// A sundry of one form; nothing at all where the shop's own will do.
Part sundryPart(const FormPen& pen, const char* key, catalog::SundryForm form) {
    const auto sundries = memberOf<design::Sundries>(wholeDesign(), "sundries");
    Part part = partOf(sundries, key, tr("the design"), pen.shop);
    part.choices = [shop = pen.shop, form](const design::Design&) {
        QStringList all{QString()};
        for (const QString& word : catalogChoices<catalog::Sundry>(*shop))
            if (shop->sundries.at(catalogKey(word)).form == form) all << word;
        return all;
    };
    const auto where = memberOf<catalog::PartRef<catalog::Sundry>>(sundries, key);
    part.with = [where, usual = part.with](const design::Design& d, const QString& text) {
        if (!text.trimmed().isEmpty()) return usual(d, text);
        return design::changed(d, [&](design::Design& copy) {
            if (auto* ref = where.find(copy)) *ref = {};
        });
    };
    return part;
}

/// What is most often put on first: a frame for the design's sheet, else any fitting.
design::FittingUse freshFitting(const FormPen& pen) {
    design::FittingUse fresh;
    for (const auto& [key, entry] : pen.shop->fittings) {
        const bool fits = !entry.fits.empty() && entry.fits == pen.design.core.sheet.key;
        if (fresh.fitting.empty() || (fits && entry.form == catalog::FittingForm::Frame)) fresh.fitting = key;
    }
    return fresh;
}

}  // namespace

void writeFittings(FormPen& pen) {
    const auto fittings = memberOf<std::vector<design::FittingUse>>(wholeDesign(), "fittings");
    const auto& all = pen.design.fittings;
    pen.heading(tr("Frame, clamps, bolts, can"));
    Table table{{tr("fitting"), tr("how many"), tr("insulated")}, 3, {}};
    for (std::size_t k = 0; k < all.size(); ++k) {
        const auto one = itemOf(fittings, k);
        const QString owner = tr("fitting %1").arg(k + 1);
        const auto cell = [&](const char* key) { return partOf(one, key, owner, pen.shop); };
        table.rows.push_back(
            {{cell("fitting"), cell("count"), cell("insulated")}, removeFrom(fittings, k, tr("remove %1").arg(owner))});
    }
    if (!all.empty()) pen.table(std::move(table));
    const design::FittingUse fresh = freshFitting(pen);
    Act add = addTo(fittings, tr("Add a fitting"), fresh, all.size(), "/fitting");
    add.enabled = !fresh.fitting.empty();
    add.reason = add.enabled ? tr("Metal that closes a loop round a leg is a shorted turn: it is refused.")
                             : tr("The catalog has no fittings.");
    pen.button(std::move(add));
    pen.heading(tr("Off the reel"));
    using catalog::SundryForm;
    pen.row({sundryPart(pen, "lead", SundryForm::Lead), sundryPart(pen, "sleeving", SundryForm::Sleeving),
             sundryPart(pen, "tape", SundryForm::Tape)});
}

}  // namespace editors
