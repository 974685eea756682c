// SPDX-License-Identifier: GPL-3.0-or-later
// What forms do besides taking a number: names, conductors, hot ends, lists, units of promises.
#include <QApplication>
#include <QClipboard>

#include "design/edit.h"
#include "forms_fixture.h"

namespace form_edit_test {

using document::WholePart;
using Which = WholePart::Which;

class FormEdits : public Forms {
protected:
    editors::ChoiceField* choice(const std::string& path) { return qobject_cast<editors::ChoiceField*>(fieldAt(path)); }
    void settle() { QTest::qWait(2); }
};

TEST_F(FormEdits, AWindingIsRenamedWithAllThatNamesItAndStaysSelected) {
    const auto before = document_.design();
    selection_.select(document::WindingPart{"P"});
    type(field("name"), "primary");
    settle();
    EXPECT_EQ(document_.undoText(), "name of winding P");
    EXPECT_EQ(document_.design()->windings[0].name, "primary");
    EXPECT_EQ(document_.design()->coil[0].order[4].section()->winding, "primary");
    EXPECT_EQ(selection_.selected(), document::Selected(document::WindingPart{"primary"}));
    EXPECT_EQ(field("name")->typed(), "primary");
    EXPECT_EQ(pane_.parts().currentText(), "winding primary");
    type(field("name"), "S1");
    EXPECT_EQ(field("name")->fault(), "Found \"S1\"; allowed is a name that no other winding has.");
    EXPECT_EQ(field("name")->typed(), "S1");
    document_.undo();
    settle();
    EXPECT_EQ(*document_.design(), *before);
    EXPECT_EQ(selection_.selected(), document::Selected(document::WindingPart{"P"}));
}

TEST_F(FormEdits, SectionsShieldsTerminalsPortsAndHookUpsAreRenamedToo) {
    const auto rename = [&](const document::Selected& part, const std::string& path, const QString& to) {
        selection_.select(part);
        settle();
        auto* f = fieldAt(path);
        ASSERT_NE(f, nullptr) << path;
        type(f, to);
        EXPECT_FALSE(f->faulty()) << f->fault().toStdString();
        settle();
    };
    rename(design::ItemIndex{0, 0}, "/coil/0/order/0/section/name", "inner");
    rename(design::ItemIndex{0, 2}, "/coil/0/order/2/shield/name", "screen 1");
    rename(WholePart{Which::Terminals}, "/terminals/0/name", "red");
    rename(WholePart{Which::Terminals}, "/ports/1/name", "desk");
    rename(WholePart{Which::HookUps}, "/hook_ups/1/name", "shorted");
    const auto& d = *document_.design();
    EXPECT_EQ(d.coil[0].order[0].section()->name, "inner");
    EXPECT_EQ(d.hookUps[0].earths[0], "screen 1");
    EXPECT_EQ(d.windings[0].start, "red");
    EXPECT_EQ(d.ports[0].plus, "red");
    EXPECT_EQ(d.hookUps[2].ports[1].port, "desk");
    EXPECT_EQ(d.brief.promises[6].hookUp, "shorted");
}

TEST_F(FormEdits, AConductorIsWireOrFoil) {
    const auto before = document_.design();
    selection_.select(document::WindingPart{"S1"});
    type(anyField("conductor"), "copper foil");
    settle();
    EXPECT_TRUE(document_.design()->windings[1].foil.has_value());
    EXPECT_TRUE(document_.design()->windings[1].wire.empty());
    ASSERT_NE(field("thickness"), nullptr);
    EXPECT_EQ(anyField("wire"), nullptr);
    type(field("thickness"), "0.1 mm");
    EXPECT_NEAR(document_.design()->windings[1].foil->thickness, 1e-4, 1e-12);
    settle();
    type(anyField("conductor"), "enam");
    settle();
    EXPECT_FALSE(document_.design()->windings[1].foil.has_value());
    EXPECT_EQ(document_.design()->windings[1].wire.key, "AWG 32 single") << "as its neighbours";
    for (int n = 0; n < 3; ++n) document_.undo();
    EXPECT_EQ(*document_.design(), *before);
}

TEST_F(FormEdits, TheOtherEndIsMadeHotByAButtonThatSaysWhatItDoes) {
    document_.replace(
        design::changed(*document_.design(), [](design::Design& d) { d.hookUps[0].earths.push_back("4"); }), "earth");
    selection_.select(document::WindingPart{"S1"});
    auto* hot = button("Make the other end hot");
    ASSERT_NE(hot, nullptr);
    EXPECT_TRUE(hot->isEnabled());
    EXPECT_EQ(hot->accessibleDescription(),
              "In “all loaded”, what ties 4 to earth and shields goes to 3, and back: the signal at the hot end turns "
              "round; resistance and leakage stay.");
    QTest::mouseClick(hot, Qt::LeftButton);
    EXPECT_EQ(document_.design()->hookUps[0].earths.back(), "3");
    EXPECT_EQ(document_.undoText(), "other end of port console 1 hot in “all loaded”");
    settle();
    selection_.select(document::WindingPart{"P"});
    hot = button("Make the other end hot");
    ASSERT_NE(hot, nullptr);
    EXPECT_FALSE(hot->isEnabled());
    EXPECT_EQ(hot->accessibleDescription(), "Neither end is tied to earth, core or a shield in any hook-up.");
}

TEST_F(FormEdits, AWindingIsAddedAndTakenOutByButtons) {
    const auto before = document_.design();
    selection_.select(document::WindingPart{"S1"});
    QTest::mouseClick(button("Add a winding"), Qt::LeftButton);
    settle();
    EXPECT_EQ(document_.design()->windings.size(), before->windings.size() + 1);
    EXPECT_EQ(document_.undoText(), "add a winding");
    EXPECT_EQ(pane_.parts().currentText(), "winding S") << "the new one is at hand";
    EXPECT_EQ(anyField("turns")->typed(), "290");
    QTest::mouseClick(button("Remove this winding"), Qt::LeftButton);
    settle();
    EXPECT_EQ(*document_.design(), *before);
    EXPECT_EQ(pane_.parts().currentText(), "winding P");
    EXPECT_FALSE(button("Remove this winding")->isEnabled());
    EXPECT_EQ(button("Remove this winding")->accessibleDescription(),
              "A hook-up is driven through it: drive another port there first.");
}

TEST_F(FormEdits, APromiseIsInTheUnitOfItsFigure) {
    selection_.select(WholePart{Which::Brief});
    auto* least = fieldAt("/brief/promises/1/at_least");
    ASSERT_NE(least, nullptr);
    EXPECT_EQ(least->typed(), "60 kHz");
    type(least, "0.05 MHz");
    EXPECT_EQ(document_.design()->brief.promises[1].atLeast, 5e4);
    type(least, "3 dB");
    EXPECT_TRUE(least->faulty());
    QTest::keyClick(lineOf(least), Qt::Key_Escape);
    type(fieldAt("/brief/promises/1/figure"), "dcr.P");
    settle();
    EXPECT_EQ(document_.design()->brief.promises[1].figure, "dcr.P");
    EXPECT_EQ(fieldAt("/brief/promises/1/at_least")->typed(), "50 kΩ");
    EXPECT_EQ(fieldAt("/brief/promises/3/at_least")->typed(), "35 dB");
    auto* most = fieldAt("/brief/promises/1/at_most");
    type(most, "60k");
    type(fieldAt("/brief/promises/1/at_least"), "");
    EXPECT_FALSE(document_.design()->brief.promises[1].atLeast.has_value()) << "an empty limit is none";
}

TEST_F(FormEdits, AMaskIsATableOfCorners) {
    selection_.select(WholePart{Which::Brief});
    EXPECT_EQ(fieldAt("/brief/masks/0/points/1/0")->typed(), "20 kHz");
    EXPECT_EQ(fieldAt("/brief/masks/0/points/1/1")->typed(), "-0.5 dB");
    type(fieldAt("/brief/masks/0/points/1/1"), "-1");
    type(fieldAt("/brief/masks/0/points/1/2"), "");
    const auto& corner = document_.design()->brief.masks[0].points[1];
    EXPECT_EQ(corner.low, -1.0);
    EXPECT_FALSE(corner.high.has_value());
    QTest::mouseClick(button("Add a corner"), Qt::LeftButton);
    settle();
    EXPECT_EQ(document_.design()->brief.masks[0].points.size(), 3U);
    auto* frequency = fieldAt("/brief/masks/0/points/2/0");
    ASSERT_NE(frequency, nullptr);
    EXPECT_TRUE(lineOf(frequency)->hasFocus()) << "the new corner has the keyboard";
    type(frequency, "10k");
    EXPECT_EQ(frequency->fault(), "Found 10000 Hz; allowed is a frequency not below the one before, 20000 Hz.");
}

TEST_F(FormEdits, AMeasuredImpedanceIsATable) {
    selection_.select(WholePart{Which::HookUps});
    const std::string use = "/hook_ups/0/ports/0";
    type(fieldAt(use + "/hanging"), "impedance table");
    settle();
    ASSERT_EQ(document_.design()->hookUps[0].ports[0].table.size(), 2U);
    EXPECT_EQ(document_.design()->hookUps[0].ports[0].table[0].real, 150);
    type(fieldAt(use + "/table/1/2"), "35 ohm");
    EXPECT_EQ(document_.design()->hookUps[0].ports[0].table[1].imaginary, 35);
    type(fieldAt(use + "/table/1/0"), "10 Hz");
    EXPECT_TRUE(fieldAt(use + "/table/1/0")->faulty());
    QTest::keyClick(lineOf(fieldAt(use + "/table/1/0")), Qt::Key_Escape);
    type(fieldAt(use + "/hanging"), "nothing: open");
    EXPECT_TRUE(fieldAt(use + "/hanging")->faulty()) << "an open port is not driven";
    QTest::keyClick(lineOf(fieldAt(use + "/hanging")), Qt::Key_Escape);
    type(fieldAt(use + "/hanging"), "parts in series");
    EXPECT_EQ(document_.design()->hookUps[0].ports[0].through->resistance.value, 150);
}

TEST_F(FormEdits, APortThatIsDrivenOrObservedChangesRolesWithTheOneThatWas) {
    selection_.select(WholePart{Which::HookUps});
    const auto roles = [&] {
        std::vector<design::Role> all;
        for (const auto& use : document_.design()->hookUps[0].ports) all.push_back(use.role);
        return all;
    };
    using design::Role;
    type(fieldAt("/hook_ups/0/ports/2/role"), "observed");
    EXPECT_EQ(roles(), (std::vector{Role::Drive, Role::Load, Role::Observe, Role::Load}));
    settle();
    type(fieldAt("/hook_ups/0/ports/2/role"), "driven");
    EXPECT_EQ(roles(), (std::vector{Role::Observe, Role::Load, Role::Drive, Role::Load}));
    settle();
    type(fieldAt("/hook_ups/0/ports/2/role"), "only terminated");
    EXPECT_TRUE(fieldAt("/hook_ups/0/ports/2/role")->faulty()) << "something must be driven";
}

TEST_F(FormEdits, WiresAreListedByDiameter) {
    selection_.select(document::WindingPart{"P"});
    auto* wire = choice("/windings/0/wire");
    ASSERT_NE(wire, nullptr);
    ASSERT_GT(wire->box()->count(), 50);
    double before = 0;
    for (int i = 0; i < wire->box()->count(); ++i) {
        const auto& entry = demoShop()->wires.at(editors::catalogKey(wire->box()->itemText(i)));
        EXPECT_GE(entry.bareDiameter.value, before) << wire->box()->itemText(i).toStdString();
        before = entry.bareDiameter.value;
    }
}

TEST(CatalogChoices, RetiredEntriesStandLastAndMarkedAndCanStillBeChosen) {
    auto shop = std::make_shared<catalog::Catalog>(*demoShop());
    shop->wires.at("AWG 32 single").standing = catalog::Standing::Retired;
    document::Document document(shop, demo("splitter"));
    document::Selection selection;
    editors::FormPane pane(document, selection);
    pane.show();
    selection.select(document::WindingPart{"P"});
    auto* wire = qobject_cast<editors::ChoiceField*>(pane.view().control("/windings/0/wire"));
    ASSERT_NE(wire, nullptr);
    EXPECT_EQ(wire->box()->itemText(wire->box()->count() - 1), "AWG 32 single · retired");
    EXPECT_EQ(wire->typed(), "AWG 32 single · retired") << "the design says that its wire is no longer to be had";
    QLineEdit* line = wire->box()->lineEdit();
    for (const char* word : {"AWG 33 single", "AWG 32 single · retired"}) {
        line->setFocus();
        line->selectAll();
        QApplication::clipboard()->setText(QString::fromUtf8(word));
        QTest::keyClick(line, Qt::Key_V, Qt::ControlModifier);
        QTest::keyClick(line, Qt::Key_Return);
        EXPECT_FALSE(wire->faulty()) << wire->fault().toStdString();
        EXPECT_EQ(document.design()->windings[0].wire.key, std::string(word).substr(0, 13));
    }
}

TEST_F(FormEdits, AButtonThatCannotSaysWhyBesideItself) {
    selection_.select(WholePart{Which::Terminals});
    const auto before = document_.design();
    auto* remove = qobject_cast<QAbstractButton*>(pane_.view().control("/terminals/0/remove"));
    ASSERT_NE(remove, nullptr);
    EXPECT_EQ(remove->accessibleName(), "remove terminal 1");
    QTest::mouseClick(remove, Qt::LeftButton);
    EXPECT_EQ(document_.design(), before) << "winding P starts there";
    EXPECT_TRUE(fieldAt("/terminals/0/name")->faultLine()->sentence().startsWith("Not done: found \"1\"; allowed is"));
}

TEST_F(FormEdits, NumbersThatFollowStandBesideTheWindingAndTheSection) {
    const auto said = [&] {
        QStringList all;
        for (auto* label : pane_.view().findChildren<QLabel*>())
            if (label->isVisible() && label->text().contains(" · ")) all << label->text();
        return all.join("|").toStdString();
    };
    selection_.select(document::WindingPart{"P"});
    pane_.showAnswer(analysis::answer(*document_.design(), *demoShop()));
    // Two sections of two layers of AWG 32: 2 (2 x 0.2235 mm + 0.025 mm) = 0.944 mm.
    EXPECT_EQ(said(),
              "DCR 13.2 Ω · 24.6 m of conductor · 4 layers in all · 2 sections · build 0.944 mm · fills 9.58 % of the "
              "window");
    selection_.select(design::ItemIndex{0, 0});
    EXPECT_TRUE(said().find("mean turn") != std::string::npos) << said();
    selection_.select(WholePart{Which::Core});
    EXPECT_EQ(said(), "");
}

}  // namespace form_edit_test
