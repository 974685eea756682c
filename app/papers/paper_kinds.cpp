// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/paper_kinds.h"

#include "papers/bill.h"
#include "papers/datasheet.h"
#include "papers/form.h"
#include "papers/test_plan.h"
#include "papers/traveller.h"
#include "papers/winding_sheet.h"
#include "shop/lot_papers.h"
#include "shop/paper_content.h"
#include "units/fault.h"

namespace papers {

namespace {

/// A paper that is content and painter alone.
template <class Content>
Made both(const Content& content, const Source& source) {
    return {printed(content, source.format, source.text), shop::contentOf(content), {}};
}

Made datasheet(const Source& s) {
    const shop::Datasheet sheet = shop::datasheet(*s.design, *s.answer(), s.shop, s.issue);
    return {printed(sheet, s.format), shop::contentOf(sheet), {}};
}
shop::Bill billOf(const Source& s) {
    return shop::bill(*s.design, s.shop, s.issue, s.prices ? &*s.prices : nullptr, s.yield);
}
Made quotation(const Source& s) {
    const shop::Quotation quotation = shop::quotation(*s.design, billOf(s), *s.prices, s.issue, s.pricesFile);
    return {printed(shop::formOf(quotation), s.format, {}), shop::contentOf(quotation), {}};
}
Made windingSheet(const Source& s) {
    return both(shop::windingSheet(*s.design, s.shop, s.issue), s);
}
Made traveller(const Source& s) {
    return both(shop::traveller(*s.design, s.shop, s.issue), s);
}
Made bill(const Source& s) {
    const shop::Bill bill = billOf(s);
    Made made = both(bill, s);
    made.table = shop::billCsv(bill);
    return made;
}
Made testPlan(const Source& s) {
    const analysis::AnswerPtr answer = s.answer();
    const design::Fixture fixture = s.fixture();
    const auto prediction = shop::planPrediction(*s.design, answer, s.shop, s.tolerances(), fixture);
    const shop::TestPlan plan = shop::testPlan(*s.design, *answer, prediction, s.shop, fixture, s.issue);
    Made made = both(plan, s);
    made.table = shop::limitsCsv(plan);
    return made;
}
Made firstArticle(const Source& s) {
    return both(shop::firstArticle(*s.design, s.shop, s.issue), s);
}
Made deviationPermit(const Source& s) {
    return both(shop::deviationPermit(*s.design, *s.answer(), s.issue), s);
}
Made returnReport(const Source& s) {
    return both(shop::returnReport(*s.design, s.shop, s.issue), s);
}
shop::ChangeNotice noticeOf(const Source& s) {
    const analysis::AnswerPtr after = s.answer();
    SharedWork& shared = *s.shared;
    if (shared.before != s.before->design || shared.after != s.design)
        shared = {s.before->design, s.design, shop::answeredForNotice(*s.before->design, *after, s.shop)};
    const analysis::AnswerPtr& before = shared.beforeAnswer;
    return shop::changeNotice({*s.before->design, *before, s.before->digest}, {*s.design, *after, s.issue.digest},
                              s.shop, s.before->why, s.issue);
}
Made changeNotice(const Source& s) {
    return both(shop::insideForm(noticeOf(s)), s);
}
Made customerNotice(const Source& s) {
    const shop::Form form = shop::outsideForm(noticeOf(s));
    return {printed(form, s.format, {}), shop::contentOf(form), {}};
}

}  // namespace

const std::vector<PaperKind>& paperKinds() {
    static const std::vector<PaperKind> all{
        {"datasheet", "Datasheet", true, true, false, false, datasheet},
        {"quotation", "Quotation", true, true, false, true, quotation},
        {"winding-sheet", "Winding sheet", false, false, false, false, windingSheet},
        {"traveller", "Traveller", false, false, false, false, traveller},
        {"bill", "Bill of materials", false, false, false, false, bill},
        {"test-plan", "Test plan", false, false, false, false, testPlan},
        {"first-article", "First-article report", false, false, false, false, firstArticle},
        {"deviation-permit", "Deviation permit", false, false, false, false, deviationPermit},
        {"return-report", "Return report", false, false, false, false, returnReport},
        {"change-notice", "Change notice", false, false, true, false, changeNotice},
        {"customer-notice", "Change notice for the customer", true, true, true, false, customerNotice}};
    return all;
}

Made made(const PaperKind& kind, const Source& source) {
    const std::string place = kind.title;
    if (kind.priced && !source.prices) units::refuse(place, "no prices", "a price file beside it");
    if (kind.compares && !source.before) units::refuse(place, "no earlier revision", "one to compare with");
    if (!kind.translated && source.issue.manner.words)
        units::refuse(place, "language " + source.issue.manner.words->language(),
                      "English: papers of the shop are in English alone");
    return kind.make(source);
}

}  // namespace papers
