// SPDX-License-Identifier: GPL-3.0-or-later
// Lines of papers that a change alters: neither fewer nor more.
#include "shop/altered_lines.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "demos.h"
#include "design/edit.h"
#include "shop/paper_content.h"

namespace altered_lines_test {

using demos::demo;
using demos::shopCatalog;

std::vector<std::string> textsOf(const design::Design& d) {
    std::vector<std::string> all;
    for (const auto& line : shop::linesOf(shop::windingSheet(d, shopCatalog(), {})))
        all.push_back(line.place + line.words);
    for (const auto& line : shop::linesOf(shop::bill(d, shopCatalog(), {}, nullptr)))
        all.push_back(line.place + line.words);
    std::sort(all.begin(), all.end());
    return all;
}

/// The lines of one design with what is altered put in place are those of the other.
void expectWhole(const design::Design& a, const design::Design& b) {
    auto lines = textsOf(a);
    for (const auto& line : shop::alteredLines(a, b, shopCatalog(), nullptr)) {
        if (!line.before.empty()) {
            const auto at = std::find(lines.begin(), lines.end(), line.place + line.before);
            ASSERT_NE(at, lines.end()) << line.before;
            lines.erase(at);
        }
        if (!line.after.empty()) lines.push_back(line.place + line.after);
    }
    std::sort(lines.begin(), lines.end());
    EXPECT_EQ(lines, textsOf(b));
}

TEST(AlteredLines, OfTheSameDesignThereAreNone) {
    EXPECT_TRUE(shop::alteredLines(demo("line-unit"), demo("line-unit"), shopCatalog(), nullptr).empty());
}

TEST(AlteredLines, AreWholeWhateverIsChanged) {
    const auto before = demo("ribbon-step-up");
    const auto thicker =
        design::changed(before, [](design::Design& d) { d.coil[0].order[1].barrier()->ply.thickness.value = 0.12e-3; });
    const auto more =
        design::changed(before, [](design::Design& d) { d.coil[0].order[4].section()->turns.value = 17; });
    expectWhole(before, *thicker);
    expectWhole(before, *more);
    expectWhole(before, *design::removeItem(before, {0, 1}));
}

TEST(AlteredLines, OneTurnMoreStandsInItsStepAlone) {
    const auto before = demo("ribbon-step-up");
    ASSERT_EQ(before.coil[0].order[4].section()->turns.value, 16);
    const auto after =
        design::changed(before, [](design::Design& d) { d.coil[0].order[4].section()->turns.value = 17; });
    const auto lines = shop::alteredLines(before, *after, shopCatalog(), nullptr);
    std::set<std::string> steps;
    bool counted = false;
    for (const auto& line : lines) {
        if (line.place.find("step") != std::string::npos) steps.insert(line.place);
        counted =
            counted || (line.before.find("16") != std::string::npos && line.after.find("17") != std::string::npos);
    }
    // Steps outside the changed one may tell of resistances of longer turns; none inside may.
    EXPECT_TRUE(counted);
    const auto sheet = shop::windingSheet(before, shopCatalog(), {});
    const auto at = std::find_if(sheet.steps.begin(), sheet.steps.end(),
                                 [](const auto& s) { return s.kind == shop::StepKind::Wire && s.turns == 16.0; });
    ASSERT_NE(at, sheet.steps.end());
    EXPECT_TRUE(steps.contains("winding sheet, step " + at->number));
    for (auto step = sheet.steps.begin(); step != at; ++step)
        EXPECT_FALSE(steps.contains("winding sheet, step " + step->number)) << step->title;
}

}  // namespace altered_lines_test
