// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/change_notice.h"

#include <algorithm>
#include <cmath>

#include "analysis/figure_names.h"
#include "analysis/promise.h"
#include "analysis/reproduction.h"
#include "design/difference.h"
#include "shop/datasheet_parts.h"
#include "units/text.h"

namespace shop {

namespace {

/// A promise of either brief with the words that a customer reads, found again in the other by them.
struct Stated {
    std::string what, value, standing;
};

/// Every promise and mask whose words the datasheet has: what a customer was told, and nothing else.
std::vector<Stated> statedOf(const RevisionAnswered& revision, const Manner& manner) {
    const auto roles = windingRoles(revision.design, revision.design.hookUps.front(), manner.say());
    const auto states = analysis::statesInOrder(revision.design, revision.answer);
    std::vector<Stated> all;
    for (const analysis::PromiseState& state : states) {
        const ValueRow row = state.mask ? maskRow(revision.design, state.index, manner)
                                        : promiseRow(revision.design, state.index, roles, manner);
        if (row.what.empty()) continue;
        std::string what = row.what;
        for (const std::string* more : {&row.condition, &row.value})
            if (!more->empty()) what += ", " + *more;
        const bool known = state.standing != analysis::Standing::Unknown && std::isfinite(state.now);
        const units::Kind kind = state.mask && state.figure == "response" ? units::Kind::Decibel : state.kind;
        std::string value = known ? manner.say().number(units::write(kind, state.now)) : "–";
        if (value.starts_with("-")) value.replace(0, 1, "−");
        all.push_back({std::move(what), std::move(value), manner.say()(analysis::word(state.standing))});
    }
    return all;
}

std::vector<MovedPromise> movedPromises(const RevisionAnswered& before, const RevisionAnswered& after,
                                        const Manner& manner) {
    std::vector<MovedPromise> all;
    for (const Stated& now : statedOf(after, manner)) all.push_back({now.what, "–", now.value, "", now.standing});
    for (const Stated& old : statedOf(before, manner)) {
        const auto same = std::find_if(all.begin(), all.end(),
                                       [&](const MovedPromise& p) { return p.what == old.what && p.stood.empty(); });
        if (same == all.end()) {
            all.push_back({old.what, old.value, "–", old.standing, ""});
        } else {
            same->before = old.value;
            same->stood = old.standing;
        }
    }
    return all;
}

/// Every difference of terminals and sizes that the two datasheets show.
std::vector<std::string> outsideDifferences(const design::Design& before, const design::Design& after,
                                            const catalog::Catalog& shop, const Manner& manner) {
    const Words& say = manner.say();
    std::vector<std::string> lines;
    const auto pinout = [&](const design::Design& design) {
        return pinoutOf(design, schematicOf(design, design.hookUps.front(), say), manner);
    };
    const auto words = [](const PinoutRow& row) { return row.where + ", " + row.function + (row.dot ? " •" : ""); };
    const auto old = pinout(before), now = pinout(after);
    const auto in = [](const std::vector<PinoutRow>& rows, const std::string& terminal) {
        return std::find_if(rows.begin(), rows.end(), [&](const PinoutRow& r) { return r.terminal == terminal; });
    };
    for (const PinoutRow& row : now) {
        const auto was = in(old, row.terminal);
        if (was == old.end())
            lines.push_back(say("New terminal %1: %2", {row.terminal, words(row)}));
        else if (words(*was) != words(row))
            lines.push_back(say("Terminal %1: %2 → %3", {row.terminal, words(*was), words(row)}));
    }
    for (const PinoutRow& row : old)
        if (in(now, row.terminal) == now.end())
            lines.push_back(say("Terminal %1 is no more: %2", {row.terminal, words(row)}));
    const Outline a = outlineOf(before, shop), b = outlineOf(after, shop);
    const auto size = [&](const char* what, double was, double is) {
        const std::string first = manner.in.size(was), second = manner.in.size(is);
        if (first != second) lines.push_back(say("%1: %2 → %3", {say(what), say.number(first), say.number(second)}));
    };
    size("width over all", a.width, b.width);
    size("length over all", a.length, b.length);
    size("height over all", a.height, b.height);
    size("pitch of the pins", a.pitch, b.pitch);
    size("distance of the rows of pins", a.rowDistance, b.rowDistance);
    return lines;
}

FormPart headPart(const ChangeNotice& n) {
    const Words& say = n.head.manner.say();
    FormPart part{say("From which revision to which"), {}, {}, {}, {}};
    if (!n.customer.empty()) part.facts.emplace_back(say("for"), n.customer);
    part.facts.emplace_back(say("unit"), n.head.title);
    if (!n.head.partNumber.empty()) part.facts.emplace_back(say("part"), n.head.partNumber);
    const std::string dated = n.oldDate.empty() ? "" : say(", of %1", {n.oldDate});
    part.facts.emplace_back(say("until now"), say("revision %1%2, digest %3", {n.oldRevision, dated, n.oldDigest}));
    part.facts.emplace_back(say("from now on"), say("revision %1%2, digest %3",
                                                    {n.head.revision, say(", of %1", {n.head.date}), n.digest}));
    return part;
}

FormPart promisesPart(const ChangeNotice& n) {
    const Words& say = n.head.manner.say();
    FormPart part{say("What was promised"), {}, {}, {}, {}};
    if (n.promises.empty()) {
        part.words = {say("No limits are agreed.")};
        return part;
    }
    part.words = {say("Values are predicted from the design for a unit at the middle of its tolerances.")};
    part.columns = {
        {say("limit"), 0, false}, {say("was"), 30, true}, {say("is"), 30, true}, {say("standing"), 40, false}};
    for (const MovedPromise& p : n.promises) {
        const std::string standing = p.stood.empty()       ? say("new: %1", {p.stands})
                                     : p.stands.empty()    ? say("no longer promised")
                                     : p.stood == p.stands ? p.stands
                                                           : say("%1 → %2", {p.stood, p.stands});
        part.rows.push_back({{p.what, p.before, p.after, standing}});
    }
    return part;
}

FormPart outsidePart(const ChangeNotice& n) {
    const Words& say = n.head.manner.say();
    FormPart part{say("Terminals and sizes"), n.outside, {}, {}, {}};
    if (part.words.empty()) part.words = {say("As before.")};
    return part;
}

}  // namespace

analysis::AnswerPtr answeredForNotice(const design::Design& before, const analysis::Answer& after,
                                      const catalog::Catalog& shop) {
    // Nothing of the later revision may stand in its place: what is slow is not carried over but left out.
    auto stages = std::make_shared<analysis::Answer>(after);
    stages->figures.clear();
    stages->traces.clear();
    stages->hookUp = before.hookUps.front().name;
    analysis::Question question;
    question.quick = before.brief.masks.empty();
    return analysis::answer(before, shop, stages, {}, question);
}

ChangeNotice changeNotice(const RevisionAnswered& before, const RevisionAnswered& after, const catalog::Catalog& shop,
                          const ChangeWhy& why, const Issue& issue) {
    constexpr double worthTelling = 1e-3;
    ChangeNotice n;
    n.head = paperHead(issue.manner.say()("Change notice"), after.design, issue);
    n.customer = after.design.brief.customer;
    n.oldRevision = before.design.revision;
    n.oldDate = why.oldDate;
    n.oldDigest = before.digest.substr(0, digestDigits);
    n.digest = after.digest.substr(0, digestDigits);
    n.reason = why.reason;
    n.notice = why.notice;
    n.differences = design::differences(before.design, after.design);
    n.outside = outsideDifferences(before.design, after.design, shop, issue.manner);
    n.promises = movedPromises(before, after, issue.manner);
    for (const analysis::Moved& one : analysis::moved(before.answer.figures, after.answer.figures, worthTelling))
        n.figures.push_back(analysis::sentence(one));
    return n;
}

Form insideForm(const ChangeNotice& n) {
    Form form{n.head, false, {headPart(n)}};
    form.parts.push_back({"Why", {}, {{"reason", n.reason}, {"told to the customer", n.notice}}, {}, {}});
    FormPart design{"What differs in the design", n.differences, {}, {}, {}};
    if (design.words.empty()) design.words = {"Nothing: the designs are the same."};
    form.parts.push_back(std::move(design));
    form.parts.push_back(outsidePart(n));
    form.parts.push_back(promisesPart(n));
    FormPart figures{"Figures that move by 0.1 % or more", n.figures, {}, {}, {}};
    if (figures.words.empty()) figures.words = {"None."};
    form.parts.push_back(std::move(figures));
    form.parts.push_back(
        {"What follows",
         {},
         {{"stock and work in hand", ""},
          {"papers and winding programs withdrawn", ""},
          {"tooling and fixtures", ""},
          {"first lot", ""},
          {"first article", ""}},
         {{"approved by", 0, false}, {"name", 60, false}, {"date", 36, false}},
         {{{"winding", "", ""}}, {{"test", "", ""}}, {{"the one who answers for the design", "", ""}}}});
    return form;
}

Form outsideForm(const ChangeNotice& n) {
    const Words& say = n.head.manner.say();
    Form form{n.head, true, {headPart(n)}};
    FormPart why{say("What changes"), {}, {}, {}, {}};
    why.words = {n.notice.empty() ? say("The unit is built otherwise; what is seen of it from outside is told below.")
                                  : n.notice};
    form.parts.push_back(std::move(why));
    form.parts.push_back(outsidePart(n));
    form.parts.push_back(promisesPart(n));
    form.parts.push_back(
        {say("Your answer"),
         {say("Units of the new revision are delivered only after you agree, unless agreed otherwise.")},
         {{say("agreed, not agreed"), ""}, {say("from date code"), ""}, {say("name, date"), ""}},
         {},
         {}});
    return form;
}

}  // namespace shop
