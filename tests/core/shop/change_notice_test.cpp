// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop/change_notice.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "demos.h"
#include "shop/lot_papers.h"

namespace change_notice_test {

using demos::demo;
using demos::shopCatalog;

struct Change {
    design::Design old = demo("microphone-input"), next = old;
    shop::ChangeNotice notice(const shop::ChangeWhy& why = {"2025-01-31", "more inductance", "a higher stack"}) {
        const auto before = analysis::answer(old, shopCatalog()), after = analysis::answer(next, shopCatalog());
        return shop::changeNotice({old, *before, std::string(64, 'a')}, {next, *after, std::string(64, 'b')},
                                  shopCatalog(), why, {"2026-03-14", std::string(64, 'b'), {}});
    }
};
std::string wordsOf(const shop::Form& form) {
    std::string all;
    for (const auto& part : form.parts) {
        all += part.heading + "\n";
        for (const auto& words : part.words) all += words + "\n";
        for (const auto& fact : part.facts) all += fact.what + ": " + fact.words + "\n";
        for (const auto& row : part.rows)
            for (const auto& cell : row.cells) all += cell + "\n";
    }
    return all;
}

TEST(ChangeNotice, OfTheSameDesignSaysThatNothingDiffers) {
    Change change;
    const auto n = change.notice();
    EXPECT_TRUE(n.differences.empty());
    EXPECT_TRUE(n.outside.empty());
    EXPECT_TRUE(n.figures.empty());
    EXPECT_FALSE(n.promises.empty());
    for (const auto& promise : n.promises) {
        EXPECT_EQ(promise.before, promise.after) << promise.what;
        EXPECT_EQ(promise.stood, promise.stands) << promise.what;
    }
    EXPECT_NE(wordsOf(shop::insideForm(n)).find("Nothing: the designs are the same."), std::string::npos);
}

TEST(ChangeNotice, ReadsOfTheEarlierRevisionWhatAWholeAnswerSays) {
    for (const char* name : {"microphone-input", "splitter"}) {
        Change change{demo(name), demo(name)};
        change.old.core.height = 0.9 * change.old.core.height;
        if (change.old.hookUps.size() > 1) std::swap(change.old.hookUps[0], change.old.hookUps[1]);
        for (const bool masked : {true, false}) {
            if (!masked) change.old.brief.masks.clear();
            const auto whole = analysis::answer(change.old, shopCatalog()),
                       after = analysis::answer(change.next, shopCatalog()),
                       lean = shop::answeredForNotice(change.old, *after, shopCatalog());
            const auto notice = [&](const analysis::AnswerPtr& before) {
                return shop::changeNotice({change.old, *before, std::string(64, 'a')},
                                          {change.next, *after, std::string(64, 'b')}, shopCatalog(), {},
                                          {"2026-03-14", std::string(64, 'b'), {}});
            };
            const auto a = notice(whole), b = notice(lean);
            EXPECT_FALSE(a.figures.empty());
            EXPECT_EQ(a.figures, b.figures) << name;
            EXPECT_TRUE(a.promises == b.promises) << name;
            EXPECT_TRUE(a == b) << name;
        }
    }
}

TEST(ChangeNotice, TellsTheShopAllAndTheCustomerWhatIsSeenFromOutside) {
    Change change;
    change.next.revision = "C";
    auto& section = std::get<design::Section>(
        std::find_if(change.next.coil.front().order.begin(), change.next.coil.front().order.end(),
                     [](const design::Item& item) { return item.section() != nullptr; })
            ->what);
    section.turns = section.turns + 17;
    change.next.core.height = change.next.core.height + 0.002;
    const auto n = change.notice();
    EXPECT_GE(n.differences.size(), 2u);
    EXPECT_GT(n.figures.size(), 5u);
    ASSERT_EQ(n.outside.size(), 1u);
    EXPECT_TRUE(n.outside.front().starts_with("height over all: ")) << n.outside.front();
    EXPECT_TRUE(std::any_of(n.promises.begin(), n.promises.end(), [](const auto& p) { return p.before != p.after; }));
    const std::string inside = wordsOf(shop::insideForm(n)), outside = wordsOf(shop::outsideForm(n));
    for (const auto& line : n.differences) {
        EXPECT_NE(inside.find(line), std::string::npos) << line;
        if (line.find("revision") == std::string::npos) {
            EXPECT_EQ(outside.find(line), std::string::npos) << line;
        }
    }
    for (const char* word : {"more inductance", " turns", "stack height", "nickel"})
        EXPECT_EQ(outside.find(word), std::string::npos) << word;
    EXPECT_NE(inside.find("more inductance"), std::string::npos);
    EXPECT_NE(outside.find("a higher stack"), std::string::npos);
    EXPECT_NE(outside.find(n.outside.front()), std::string::npos);
    EXPECT_TRUE(shop::outsideForm(n).outside);
    EXPECT_FALSE(shop::insideForm(n).outside);
}

TEST(ChangeNotice, NamesPromisesThatCameAndWent) {
    Change change;
    ASSERT_GE(change.next.brief.promises.size(), 2u);
    const std::size_t count = change.notice().promises.size();
    change.next.brief.promises.erase(change.next.brief.promises.begin());
    const auto n = change.notice();
    EXPECT_EQ(n.promises.size(), count);
    EXPECT_EQ(std::count_if(n.promises.begin(), n.promises.end(), [](const auto& p) { return p.stands.empty(); }), 1);
    std::swap(change.old, change.next);
    const auto back = change.notice();
    EXPECT_EQ(std::count_if(back.promises.begin(), back.promises.end(), [](const auto& p) { return p.stood.empty(); }),
              1);
}

TEST(ChangeNotice, NamesTerminalsThatMoved) {
    Change change;
    change.next.terminals.front().leadColour = "pink";
    change.next.terminals.front().pin = 0;
    change.next.terminals.front().leadLength = 0.1;
    const auto n = change.notice();
    ASSERT_FALSE(n.outside.empty());
    EXPECT_NE(n.outside.front().find("pink lead, 0.1 m"), 0u);
    EXPECT_TRUE(n.outside.front().starts_with("Terminal " + change.next.terminals.front().name + ": "));
}

TEST(LotPapers, AskForEverythingThatTheWindingSheetExpects) {
    const design::Design design = demo("splitter");
    const shop::Issue issue{"2026-03-14", std::string(64, 'a'), {}};
    const auto sheet = shop::windingSheet(design, shopCatalog(), issue);
    const std::string article = wordsOf(shop::firstArticle(design, shopCatalog(), issue));
    std::size_t checks = 0;
    for (const auto& step : sheet.steps)
        for (const auto& check : step.checks) {
            ++checks;
            EXPECT_NE(article.find("Step " + step.number + ", " + check.between), std::string::npos);
        }
    EXPECT_GT(checks, 3u);
    for (const auto& block : sheet.finishing.stack)
        EXPECT_NE(article.find(std::to_string(block.count) + " sheets"), std::string::npos);
    const std::string back = wordsOf(shop::returnReport(design, shopCatalog(), issue));
    for (const auto& winding : design.windings)
        EXPECT_NE(back.find("Resistance of " + winding.name + ","), std::string::npos);
    const auto answer = analysis::answer(design, shopCatalog());
    const shop::Form permit = shop::deviationPermit(design, *answer, issue);
    EXPECT_EQ(permit.parts[1].rows.size(), design.brief.promises.size() + design.brief.masks.size());
    EXPECT_FALSE(permit.outside);
}

}  // namespace change_notice_test
