// SPDX-License-Identifier: GPL-3.0-or-later
// What the customer needs, as a form.
#include <algorithm>

#include "analysis/figure_names.h"
#include "bench/language.h"
#include "design/unsaid.h"
#include "editors/form.h"
#include "editors/labels.h"

namespace editors {

namespace {

Where<std::vector<design::Promise>> promises() {
    return {[](design::Design& d) { return &d.brief.promises; }, "/brief/promises"};
}
Where<std::vector<design::Mask>> masks() {
    return {[](design::Design& d) { return &d.brief.masks; }, "/brief/masks"};
}

/// A limit in the unit of the figure that is promised.
Part limitPart(const Where<design::Promise>& promise, const char* key, const QString& owner) {
    const auto limit = memberOf<std::optional<double>>(promise, key);
    NumberRule rule;
    rule.mayBeEmpty = true;
    rule.kind = [promise](const design::Design& d) {
        const auto* p = promise.seen(d);
        return p == nullptr ? units::Kind::Number : analysis::kindOfFigure(p->figure);
    };
    return numberPart(namedPart(Part::Kind::Number, limit.path, key, owner), rule, accessTo(limit));
}

Part boundPart(const Where<design::Mask>& mask, const Where<design::MaskPoint>& point, bool low, const QString& owner) {
    NumberRule rule;
    rule.mayBeEmpty = true;
    rule.kind = [mask](const design::Design& d) {
        const auto* m = mask.seen(d);
        return m == nullptr ? units::Kind::Number : analysis::kindOfTrace(m->trace);
    };
    const Where<std::optional<double>> bound{[point, low](design::Design& d) {
                                                 auto* p = point.find(d);
                                                 return p == nullptr ? nullptr : low ? &p->low : &p->high;
                                             },
                                             point.path + (low ? "/1" : "/2")};
    return numberPart(namedPart(Part::Kind::Number, bound.path, low ? "mask_low" : "mask_high", owner), rule,
                      accessTo(bound));
}

Part frequencyPart(const Where<design::MaskPoint>& point, const QString& owner) {
    const Where<double> frequency{[point](design::Design& d) {
                                      auto* p = point.find(d);
                                      return p == nullptr ? nullptr : &p->frequency;
                                  },
                                  point.path + "/0"};
    return numberPart(namedPart(Part::Kind::Number, frequency.path, "frequency", owner),
                      {[](const design::Design&) { return units::Kind::Frequency; }, json::aboveUpTo(0, 1e12).in("Hz")},
                      accessTo(frequency));
}

Table pointsTable(const Where<design::Mask>& mask, const design::Mask& now, const QString& owner) {
    const auto points = memberOf<std::vector<design::MaskPoint>>(mask, "points");
    Table table{{tr("frequency"), tr("not below"), tr("not above")}, 3, {}};
    for (std::size_t k = 0; k < now.points.size(); ++k) {
        const auto point = itemOf(points, k);
        const QString corner = tr("corner %1 of %2").arg(k + 1).arg(owner);
        table.rows.push_back({{frequencyPart(point, corner), boundPart(mask, point, true, corner),
                               boundPart(mask, point, false, corner)},
                              removeFrom(points, k, tr("remove %1").arg(corner))});
    }
    return table;
}

}  // namespace

void writePromises(FormPen& pen) {
    const auto& all = pen.design.brief.promises;
    pen.heading(tr("Promises"));
    // Two lines a promise: what and how much, then where.
    Table table{{tr("figure"), tr("at least"), tr("at most"), tr("in hook-up"), tr("at port"), tr("note")}, 3, {}};
    for (std::size_t k = 0; k < all.size(); ++k) {
        const auto promise = itemOf(promises(), k);
        const QString owner = tr("promise %1").arg(k + 1);
        const auto part = [&](const char* key) { return partOf(promise, key, owner, pen.shop); };
        table.rows.push_back({{part("figure"), limitPart(promise, "at_least", owner),
                               limitPart(promise, "at_most", owner), part("hook_up"), part("port"), part("note")},
                              removeFrom(promises(), k, tr("remove %1").arg(owner))});
    }
    if (!all.empty()) pen.table(std::move(table));
    design::Promise fresh;
    fresh.figure = "high_3dB_first";
    fresh.atLeast = 20e3;
    pen.button(addTo(promises(), tr("Add a promise"), fresh, all.size(), "/figure"));
}

void writeMasks(FormPen& pen) {
    const auto& all = pen.design.brief.masks;
    pen.heading(tr("Masks"));
    design::Mask fresh;
    fresh.trace = "response";
    fresh.points = {{20, -1, 1}, {20e3, -1, 1}};
    pen.button(addTo(masks(), tr("Add a mask"), fresh, all.size(), "/trace"));
    for (std::size_t k = 0; k < all.size(); ++k) {
        const auto mask = itemOf(masks(), k);
        const QString owner = tr("mask %1").arg(k + 1);
        pen.fold(tr("Mask %1: limits on the %2").arg(k + 1).arg(bench::translated(all[k].trace)), mask.path, false, 2);
        pen.fields(mask, owner, {"trace", "hook_up"});
        pen.table(pointsTable(mask, all[k], owner));
        const auto points = memberOf<std::vector<design::MaskPoint>>(mask, "points");
        auto corner = all[k].points.empty() ? design::MaskPoint{1000, {}, {}} : all[k].points.back();
        Act add = addTo(points, tr("Add a corner"), corner, all[k].points.size(), "/0");
        add.name = tr("add a corner to %1").arg(owner);
        pen.button(std::move(add));
        pen.fields(mask, owner, {"note"});
        Act remove = removeFrom(masks(), k, tr("remove %1").arg(owner));
        remove.text = tr("Remove this mask");
        pen.button(std::move(remove));
    }
}

/// What the customer said on points that the design shows nowhere, and what is to be asked yet.
void writeSaid(FormPen& pen) {
    const auto& all = pen.design.brief.said;
    const Where<std::vector<design::Said>> said{[](design::Design& d) { return &d.brief.said; }, "/brief/said"};
    pen.heading(tr("What the customer said"));
    Table table{{tr("on"), tr("said")}, 2, {}};
    for (std::size_t k = 0; k < all.size(); ++k) {
        const auto one = itemOf(said, k);
        const QString owner = tr("what was said on %1").arg(bench::translated(all[k].subject));
        table.rows.push_back({{partOf(one, "subject", owner, pen.shop), partOf(one, "words", owner, pen.shop)},
                              removeFrom(said, k, tr("remove %1").arg(owner))});
    }
    if (!all.empty()) pen.table(std::move(table));
    const auto open = design::unsaid(pen.design);
    pen.fold(open.empty() ? tr("Nothing is left to ask") : tr("Still to ask: %1").arg(open.size()), "/brief/unsaid",
             true, 2);
    for (const auto& point : open) {
        const bool begun =
            std::any_of(all.begin(), all.end(), [&](const auto& s) { return s.subject == point.subject; });
        if (begun) continue;
        Act note = addTo(said, bench::translated(point.question), design::Said{point.subject, "", nullptr}, all.size(),
                         "/words");
        note.path = "/brief/said/ask/" + point.subject;
        note.name = tr("note what was said on %1").arg(bench::translated(point.subject));
        note.reason = bench::translated(point.why);
        pen.button(std::move(note));
    }
}

void writeBrief(FormPen& pen) {
    const Where<design::Brief> brief{[](design::Design& d) { return &d.brief; }, "/brief"};
    const QString owner = tr("the brief");
    pen.fields(wholeDesign(), tr("the design"), {"name"});
    pen.row(wholeDesign(), tr("the design"), {"part_number", "revision"});
    pen.heading(tr("Customer"));
    pen.fields(brief, owner, {"customer", "use", "isolation"});
    pen.row(brief, owner, {"operating_level_dBu", "level_at"});
    const auto criterion = memberOf<design::LevelCriterion>(brief, "maximum_level");
    pen.heading(tr("Maximum level: the lowest of"));
    pen.row(criterion, owner, {"saturation_knee", "distortion_percent"});
    pen.row(criterion, owner, {"source_level_dBu", "temperature_rise"});
    pen.heading(tr("Room"));
    const auto size = memberOf<design::Size>(brief, "size");
    Table room{{tr("length, at most"), tr("width, at most"), tr("height, at most")}, 3, {}};
    room.rows.push_back(
        {{partOf(size, "length", tr("the unit"), pen.shop), partOf(size, "width", tr("the unit"), pen.shop),
          partOf(size, "height", tr("the unit"), pen.shop)},
         {}});
    pen.table(std::move(room));
    writeSaid(pen);
    writePromises(pen);
    writeMasks(pen);
    pen.heading(tr("Notes"));
    Part note = partOf(brief, "note", owner, pen.shop);
    note.label = tr("on the brief");
    Part own = partOf(wholeDesign(), "note", tr("the design"), pen.shop);
    own.label = tr("on the design");
    pen.field(std::move(note));
    pen.field(std::move(own));
}

}  // namespace editors
