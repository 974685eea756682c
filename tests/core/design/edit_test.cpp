// SPDX-License-Identifier: GPL-3.0-or-later
#include "design/edit.h"

#include <gtest/gtest.h>

#include "sample_design.h"

namespace design {
namespace edit_test {

/// The items of the first chamber as words.
std::string order(const Design& d, std::size_t place = 0) {
    std::string words;
    for (const Item& item : d.coil[place].order)
        words += (words.empty() ? "" : " ") + (item.section()  ? item.section()->label()
                                               : item.shield() ? item.shield()->name
                                                               : "-");
    return words;
}

std::vector<std::string> series(const Design& d, const std::string& name) {
    std::vector<std::string> all;
    for (const Section* s : sectionsOf(d, *winding(d, name))) all.push_back(s->name);
    return all;
}

using Names = std::vector<std::string>;

TEST(MoveItem, KeepsTheSeriesOrderByWritingItDown) {
    const Design d = sampleDesign();
    const DesignPtr moved = moveItem(d, {0, 5}, {0, 0});
    EXPECT_EQ(order(*moved), "P.b P.a - SH - S.a");
    EXPECT_EQ(moved->windings[0].order, (Names{"a", "b"}));
    EXPECT_EQ(series(*moved, "P"), (Names{"a", "b"}));
    EXPECT_TRUE(moved->windings[1].order.empty());
    EXPECT_EQ(d, sampleDesign());
}

TEST(MoveItem, BackAgainLeavesNoTrace) {
    const Design d = sampleDesign();
    const DesignPtr moved = moveItem(*moveItem(d, {0, 5}, {0, 0}), {0, 0}, {0, 6});
    EXPECT_EQ(*moved, d);
}

TEST(MoveItem, NextToItselfChangesNothing) {
    const Design d = sampleDesign();
    for (int i = 0; i < 6; ++i) {
        EXPECT_EQ(*moveItem(d, {0, i}, {0, i}), d);
        EXPECT_EQ(*moveItem(d, {0, i}, {0, i + 1}), d);
    }
}

TEST(MoveItem, GoesToAnotherChamberAndToTheOutside) {
    const DesignPtr moved = moveItem(sampleDesign(), {0, 4}, {1, 1});
    EXPECT_EQ(order(*moved), "P.a - SH - P.b");
    EXPECT_EQ(order(*moved, 1), "S.b S.a");
    EXPECT_EQ(series(*moved, "S"), (Names{"a", "b"}));
}

TEST(MoveItem, FromOrToNowhereChangesNothing) {
    const Design d = sampleDesign();
    EXPECT_EQ(*moveItem(d, {0, 6}, {0, 0}), d);
    EXPECT_EQ(*moveItem(d, {0, 0}, {0, 7}), d);
    EXPECT_EQ(*moveItem(d, {2, 0}, {0, 0}), d);
    EXPECT_EQ(*moveItem(d, {0, -1}, {0, 0}), d);
}

TEST(StepItem, StepsAndStopsAtTheEnds) {
    const Design d = sampleDesign();
    EXPECT_EQ(order(*stepItem(d, {0, 4}, 1)), "P.a - SH - P.b S.a");
    EXPECT_EQ(order(*stepItem(d, {0, 4}, -1)), "P.a - SH S.a - P.b");
    EXPECT_EQ(*stepItem(d, {0, 5}, 1), d);
    EXPECT_EQ(*stepItem(d, {0, 0}, -1), d);
}

TEST(SplitSection, SharesOutTheTurnsInSeries) {
    Design d = sampleDesign();
    d.coil[0].order[0].section()->turns = 60.5;
    d.coil[0].order[0].section()->start = "3";
    d.coil[0].order[0].section()->finish = "4";
    const DesignPtr split = splitSection(d, {0, 0});
    EXPECT_EQ(order(*split), "P.a P.c - SH - S.a P.b");
    EXPECT_EQ(section(*split, "P", "a")->turns.value, 30);
    EXPECT_EQ(section(*split, "P", "c")->turns.value, 30.5);
    EXPECT_EQ(series(*split, "P"), (Names{"a", "c", "b"}));
    EXPECT_EQ(section(*split, "P", "a")->start, "3");
    EXPECT_EQ(section(*split, "P", "a")->finish, "");
    EXPECT_EQ(section(*split, "P", "c")->start, "");
    EXPECT_EQ(section(*split, "P", "c")->finish, "4");
}

TEST(SplitSection, KeepsAnOrderOtherThanTheCoils) {
    Design d = sampleDesign();
    d.windings[0].order = {"b", "a"};
    EXPECT_EQ(splitSection(d, {0, 5})->windings[0].order, (Names{"b", "c", "a"}));
}

TEST(SplitSection, LeavesWhatCannotBeSplit) {
    Design d = sampleDesign();
    EXPECT_EQ(*splitSection(d, {0, 1}), d);  // a barrier
    d.coil[0].order[0].section()->turns = 1.5;
    EXPECT_EQ(*splitSection(d, {0, 0}), d);
    d.coil[0].order[0].section()->turns = 60;
    d.windings[0].connection = Connection::Parallel;
    EXPECT_EQ(*splitSection(d, {0, 0}), d);
}

TEST(JoinSection, UndoesASplit) {
    const Design d = sampleDesign();
    EXPECT_EQ(*joinSection(*splitSection(d, {0, 0}), {0, 0}), d);
}

TEST(JoinSection, DropsTheBarriersBetween) {
    const DesignPtr split = splitSection(sampleDesign(), {0, 4});
    const DesignPtr apart = insertItem(*split, {0, 5}, barrierItem(2e-5));
    EXPECT_EQ(order(*apart), "P.a - SH - S.a - S.c P.b");
    EXPECT_EQ(*joinSection(*apart, {0, 4}), sampleDesign());
}

TEST(JoinSection, LeavesWhatDoesNotFollow) {
    const Design d = sampleDesign();
    EXPECT_EQ(*joinSection(d, {0, 0}), d);  // a shield and another winding between
    const DesignPtr split = splitSection(d, {0, 0});
    EXPECT_EQ(*joinSection(*changed(*split, [](Design& c) { c.coil[0].order[1].section()->reversed = true; }), {0, 0}),
              *changed(*split, [](Design& c) { c.coil[0].order[1].section()->reversed = true; }));
    const DesignPtr tapped = changed(*split, [](Design& c) { c.coil[0].order[0].section()->finish = "3"; });
    EXPECT_EQ(*joinSection(*tapped, {0, 0}), *tapped);
}

TEST(InsertItem, PutsANewSectionLastInAnExplicitOrder) {
    Design d = sampleDesign();
    d.windings[0].order = {"b", "a"};
    EXPECT_EQ(insertItem(d, {0, 0}, sectionItem("P", "c", 5))->windings[0].order, (Names{"b", "a", "c"}));
    d.windings[0].order.clear();
    EXPECT_EQ(series(*insertItem(d, {0, 0}, sectionItem("P", "c", 5)), "P"), (Names{"c", "a", "b"}));
}

TEST(RemoveItem, TakesASectionOutOfItsOrderAndAShieldOutOfHookUps) {
    Design d = sampleDesign();
    d.windings[0].order = {"b", "a"};
    EXPECT_TRUE(removeItem(d, {0, 0})->windings[0].order.empty());
    const DesignPtr bare = removeItem(d, {0, 2});
    EXPECT_EQ(order(*bare), "P.a - - S.a P.b");
    EXPECT_TRUE(bare->hookUps[0].straps.empty());  // a strap of one node joins nothing
    EXPECT_EQ(bare->hookUps[0].earths, (Names{"core", "4"}));
}

TEST(SwapEnds, ChangesTerminalsOnlyAndTwiceIsNothing) {
    Design d = sampleDesign();
    d.coil[0].order[0].section()->start = "1";
    const DesignPtr swapped = swapEnds(d, "P");
    EXPECT_EQ(swapped->windings[0].start, "2");
    EXPECT_EQ(swapped->windings[0].finish, "1");
    EXPECT_EQ(section(*swapped, "P", "a")->start, "2");
    EXPECT_EQ(swapped->windings[1], d.windings[1]);
    EXPECT_EQ(*swapEnds(*swapped, "P"), d);
}

TEST(StoredParts, HoldWhatIsUsedAndRuleUntilTodaysAreTaken) {
    catalog::Catalog shop = sampleShop();
    shop.wires["other"] = shop.wires["wire"];
    const DesignPtr stored = withStoredParts(sampleDesign(), shop);
    EXPECT_EQ(stored->parts, sampleShop());  // "other" is not used
    shop.wires["wire"].overallDiameter = 1.3e-4;
    EXPECT_EQ(part(*stored, stored->windings[0].wire, shop)->overallDiameter.value, 1.2e-4);
    EXPECT_EQ(*withStoredParts(*stored, shop), *stored);
    const DesignPtr today = takeTodaysParts(*stored, shop);
    EXPECT_EQ(part(*today, today->windings[0].wire, shop)->overallDiameter.value, 1.3e-4);
    const DesignPtr gone = takeTodaysParts(*stored, {});  // entries that the shop has no more stay as they are
    EXPECT_EQ(*gone, *stored);
}

}  // namespace edit_test
}  // namespace design
