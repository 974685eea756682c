// SPDX-License-Identifier: GPL-3.0-or-later
// What was typed wrong, and the keyboard's place, outlive the form.
#include "editors/wrong_texts.h"

#include "design/edit.h"
#include "editors/carried_path.h"
#include "forms_fixture.h"

namespace wrong_texts_test {

using document::WholePart;
using Which = WholePart::Which;

class WrongTexts : public Forms {
protected:
    void settle() { QTest::qWait(2); }
    template <class Change>
    void change(Change&& how) {
        document_.replace(design::changed(*document_.design(), how), "change");
        settle();
    }
};

TEST_F(WrongTexts, SurviveAnotherSelectionAndARebuiltForm) {
    selection_.select(WholePart{Which::Terminals});
    type(fieldAt("/terminals/3/pin"), "four");
    selection_.select(WholePart{Which::Core});
    EXPECT_EQ(fieldAt("/terminals/3/pin"), nullptr);
    selection_.select(WholePart{Which::Terminals});
    EXPECT_EQ(fieldAt("/terminals/3/pin")->typed(), "four");
    EXPECT_TRUE(fieldAt("/terminals/3/pin")->faulty());
    change([](design::Design& d) {
        d.terminals.emplace_back();
        d.terminals.back().name = "extra";
    });
    EXPECT_EQ(fieldAt("/terminals/3/pin")->typed(), "four");
    EXPECT_TRUE(fieldAt("/terminals/3/pin")->faulty());
}

TEST_F(WrongTexts, FollowTheirFieldWhenTheListChangesAroundThem) {
    selection_.select(WholePart{Which::Brief});
    type(fieldAt("/brief/promises/2/at_most"), "little");
    change([](design::Design& d) { d.brief.promises.erase(d.brief.promises.begin()); });
    EXPECT_EQ(fieldAt("/brief/promises/1/at_most")->typed(), "little") << "it is the second promise now";
    EXPECT_FALSE(fieldAt("/brief/promises/2/at_most")->faulty());
    document_.undo();
    settle();
    EXPECT_EQ(fieldAt("/brief/promises/2/at_most")->typed(), "little");
    change([](design::Design& d) { d.brief.promises.erase(d.brief.promises.begin() + 2); });
    EXPECT_EQ(pane_.wrongTexts().count(), 0) << "its promise is gone";
    EXPECT_EQ(fieldAt("/brief/promises/2/at_most")->typed(), "");
    document_.undo();
    settle();
    EXPECT_EQ(fieldAt("/brief/promises/2/at_most")->typed(), "little") << "and came back";
}

TEST_F(WrongTexts, FollowASectionThatMoves) {
    selection_.select(design::ItemIndex{0, 0});
    type(fieldAt("/coil/0/order/0/section/margin_low"), "wide");
    document_.replace(design::moveItem(*document_.design(), {0, 0}, {0, 5}), "move");
    settle();
    EXPECT_EQ(document_.design()->coil[0].order[4].section()->label(), "S1.a");
    selection_.select(design::ItemIndex{0, 4});
    EXPECT_EQ(fieldAt("/coil/0/order/4/section/margin_low")->typed(), "wide");
}

TEST_F(WrongTexts, GoWhenTheFieldIsPutRightRevertedOrTheDesignIsReplaced) {
    selection_.select(WholePart{Which::Core});
    type(fieldAt("/core/gap"), "none at all");
    EXPECT_EQ(pane_.wrongTexts().count(), 1);
    type(fieldAt("/core/gap"), "5 um");
    EXPECT_EQ(pane_.wrongTexts().count(), 0);
    type(fieldAt("/core/gap"), "none at all");
    QTest::keyClick(lineOf(fieldAt("/core/gap")), Qt::Key_Escape);
    EXPECT_EQ(pane_.wrongTexts().count(), 0);
    EXPECT_EQ(fieldAt("/core/gap")->typed(), "5 µm");
    type(fieldAt("/core/gap"), "none at all");
    type(fieldAt("/core/sheet"), "cardboard");
    document_.open(demo("splitter"), {});
    settle();
    EXPECT_EQ(pane_.wrongTexts().count(), 0);
    EXPECT_EQ(fieldAt("/core/gap")->typed(), "4 µm");
    EXPECT_EQ(fieldAt("/core/sheet")->typed(), "EI48");
    EXPECT_FALSE(fieldAt("/core/gap")->faulty());
}

TEST_F(WrongTexts, ThatHaveBecomeRightSayHowToBeTaken) {
    selection_.select(document::WindingPart{"P"});
    type(fieldAt("/windings/0/start"), "extra");
    EXPECT_TRUE(fieldAt("/windings/0/start")->faulty());
    change([](design::Design& d) {
        d.terminals.emplace_back();
        d.terminals.back().name = "extra";
    });
    selection_.select(WholePart{Which::Core});
    selection_.select(document::WindingPart{"P"});
    auto* start = fieldAt("/windings/0/start");
    EXPECT_EQ(start->typed(), "extra");
    EXPECT_EQ(document_.design()->windings[0].start, "1") << "nothing is taken by itself";
    EXPECT_EQ(start->fault(), "Not taken so far. By now it could be: Return takes it, Escape drops it.");
    QLineEdit* line = lineOf(start);
    line->setFocus();
    QTest::keyClick(line, Qt::Key_Return);
    EXPECT_EQ(document_.design()->windings[0].start, "extra");
    EXPECT_FALSE(start->faulty());
}

TEST_F(WrongTexts, AndWhatIsBeingTypedIsTakenWhenAnotherPartIsSelected) {
    selection_.select(WholePart{Which::Core});
    auto* gap = fieldAt("/core/gap");
    lineOf(gap)->setFocus();
    lineOf(gap)->selectAll();
    QTest::keyClicks(lineOf(gap), "6 um");
    selection_.select(WholePart{Which::Bobbin});
    EXPECT_NEAR(document_.design()->core.gap, 6e-6, 1e-15);
    EXPECT_EQ(document_.shown(), document_.design());
}

TEST_F(WrongTexts, ATickThatCannotBeTakenStaysWithItsReason) {
    editors::WrongTexts wrong;
    auto part = editors::flagPart(
        editors::namedPart(editors::Part::Kind::Flag, "/conditions/filled", "filled", "it"),
        editors::memberOf<bool>(
            editors::Where<design::Conditions>{[](design::Design& d) { return &d.conditions; }, "/conditions"},
            "filled"));
    editors::FaultLine line(nullptr);
    editors::CheckField field({document_, wrong}, part, &line, nullptr);
    field.show();
    QTest::keyClick(field.box(), Qt::Key_Space);
    EXPECT_FALSE(document_.design()->conditions.filled) << "the coil is dry";
    EXPECT_TRUE(field.box()->isChecked());
    EXPECT_EQ(field.fault(),
              "Found true; allowed is false, as there is no \"filling\" that the coil could be soaked in.");
    EXPECT_EQ(wrong.at("/conditions/filled"), "true");
    QTest::keyClick(field.box(), Qt::Key_Escape);
    EXPECT_FALSE(field.box()->isChecked());
    EXPECT_EQ(wrong.count(), 0);
}

TEST_F(WrongTexts, KeyboardAndCaretStayWhenTheFormIsBuiltAnew) {
    selection_.select(WholePart{Which::Terminals});
    auto* name = lineOf(fieldAt("/terminals/10/name"));
    name->setFocus();
    name->setCursorPosition(3);
    change([](design::Design& d) {
        d.terminals.emplace_back();
        d.terminals.back().name = "extra";
    });
    auto* now = lineOf(fieldAt("/terminals/10/name"));
    ASSERT_NE(now, name);
    EXPECT_TRUE(now->hasFocus());
    EXPECT_EQ(now->cursorPosition(), 3);
    now->setSelection(2, 4);
    change([](design::Design& d) { d.terminals.pop_back(); });
    now = lineOf(fieldAt("/terminals/10/name"));
    EXPECT_TRUE(now->hasFocus());
    EXPECT_EQ(now->selectionStart(), 2);
    EXPECT_EQ(now->selectedText().size(), 4);
}

TEST_F(WrongTexts, TabAfterARenameGoesOnFromTheSamePlace) {
    selection_.select(WholePart{Which::Terminals});
    auto* name = lineOf(fieldAt("/terminals/10/name"));
    name->setFocus();
    name->selectAll();
    QTest::keyClicks(name, "screen");
    QTest::keyClick(name, Qt::Key_Tab);
    settle();
    EXPECT_EQ(document_.design()->terminals[10].name, "screen");
    EXPECT_TRUE(lineOf(fieldAt("/terminals/10/pin"))->hasFocus());
}

TEST(CarriedPath, CountsFromTheEndThatStayed) {
    const auto d = demo("splitter");
    const auto shorter = design::changed(*d, [](design::Design& c) {
        c.brief.promises.erase(c.brief.promises.begin() + 1);
        c.brief.promises[0].atMost = 13;
    });
    EXPECT_EQ(editors::carriedPath(*d, *shorter, "/brief/promises/3/at_least"), "/brief/promises/2/at_least");
    EXPECT_EQ(editors::carriedPath(*d, *shorter, "/brief/promises/1/at_least"), std::nullopt);
    EXPECT_EQ(editors::carriedPath(*d, *shorter, "/core/gap"), "/core/gap");
    EXPECT_EQ(editors::carriedPath(*d, *d, "/windings/2/taps/0/turns"), "/windings/2/taps/0/turns");
    const auto renamed = design::changed(*d, [](design::Design& c) { c.terminals[1].leadColour = "red"; });
    EXPECT_EQ(editors::carriedPath(*d, *renamed, "/terminals/1/lead_colour"), "/terminals/1/lead_colour");
}

}  // namespace wrong_texts_test
