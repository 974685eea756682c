// SPDX-License-Identifier: GPL-3.0-or-later
// Tolerances of a design typed into its form, by the keyboard, undone, and followed by what varies.
#include "exchange/load_catalog.h"
#include "forms_fixture.h"
#include "spread/varying.h"

namespace tolerance_form_test {

using Which = document::WholePart::Which;

class Tolerances : public Forms {
protected:
    Tolerances() {
        selection_.select(document::WholePart{Which::Tolerances});
        QTest::qWait(2);
    }
    ~Tolerances() override {
        pane_.parts().setFocus();
    }  // a field that loses the focus puts its text into the document
    [[nodiscard]] const std::optional<units::Tolerance>& stack() const {
        return document_.design()->core.height.tolerance;
    }
    static constexpr const char* width = "/core/height/plus_minus";
    static constexpr const char* law = "/core/height/distribution";
};

TEST_F(Tolerances, AShareOrALengthIsTypedAndUndone) {
    const auto before = document_.design();
    ASSERT_NE(fieldAt(width), nullptr);
    EXPECT_EQ(fieldAt(width)->typed(), "");
    type(fieldAt(width), "2 %");
    ASSERT_TRUE(stack().has_value());
    EXPECT_TRUE(stack()->relative);
    EXPECT_DOUBLE_EQ(stack()->plusMinus, 0.02);
    EXPECT_EQ(document_.undoText(), "within ± of height");
    type(fieldAt(width), "±0,3 mm");
    EXPECT_FALSE(stack()->relative);
    EXPECT_DOUBLE_EQ(stack()->plusMinus, 0.3e-3);
    EXPECT_EQ(fieldAt(width)->typed(), "0.3 mm");
    type(fieldAt(law), "uniform");
    EXPECT_EQ(stack()->distribution, "uniform");
    type(fieldAt(width), "");
    EXPECT_FALSE(stack().has_value());
    for (int k = 0; k < 4; ++k) document_.undo();
    EXPECT_EQ(*document_.design(), *before);
}

TEST_F(Tolerances, WhatIsNoToleranceIsRefused) {
    type(fieldAt(width), "100 %");
    EXPECT_EQ(fieldAt(width)->fault(), "Found \"100 %\"; allowed is a share from 0 % to below 100 %.");
    type(fieldAt(width), "-1 mm");
    EXPECT_EQ(fieldAt(width)->fault(), "Found \"-1 mm\"; allowed is a value of at least 0.");
    type(fieldAt(width), "");
    EXPECT_FALSE(fieldAt(width)->faulty());
    type(fieldAt(law), "uniform");
    EXPECT_EQ(fieldAt(law)->fault(),
              "Found \"uniform\"; allowed is a width first: without one the shop's tolerance holds.");
    EXPECT_FALSE(stack().has_value());
}

TEST_F(Tolerances, TheDesignsOwnRulesOverTheShops) {
    type(fieldAt(width), "3 %");
    type(fieldAt(law), "triangular");
    const auto own = spread::variationOf(*document_.design(), *demoShop(), {});
    ASSERT_EQ(own.all.size(), 1U);
    EXPECT_EQ(own.all[0].place, "/core/height");
    EXPECT_EQ(own.all[0].law.kind, catalog::Law::Triangular);
    EXPECT_DOUBLE_EQ(own.all[0].law.halfWidth, 0.03);
}

TEST_F(Tolerances, EveryFieldHasANameOfItsOwn) {
    QSet<QString> names;
    for (auto* f : pane_.fields()) {
        EXPECT_FALSE(names.contains(f->part().act)) << f->part().act.toStdString();
        names.insert(f->part().act);
    }
    EXPECT_GT(names.size(), 20);
}

}  // namespace tolerance_form_test
