// SPDX-License-Identifier: GPL-3.0-or-later
#include "cut/section_geometry.h"

#include <gtest/gtest.h>

#include "coil_on_screen.h"
#include "cut/frame.h"
#include "cut/labels.h"
#include "design/check.h"

namespace section_geometry_test {

using cut::Shape;
using design::ItemIndex;
using document::WholePart;

class SectionGeometry : public testing::Test {
protected:
    design::Design design = cut_test::stepUp();
    catalog::Catalog shop;
    coil::CoilBuild build = coil::layOut(design, shop);
    std::vector<Shape> shapes = cut::shapesOf(build, design);

    const Shape& shape(int item, int place = 0) const { return *cut::shapeOf(shapes, {place, item}); }
    document::Selected at(double x, double y) const { return cut::hit(build, shapes, x, y, 1e-5); }
};

TEST_F(SectionGeometry, TheDesignsOfTheseTestsHaveNoFaults) {
    for (const int chambers : {1, 2})
        for (const auto& fault : design::check(cut_test::stepUp(chambers), shop, "test"))
            ADD_FAILURE() << units::sentence(fault);
}

TEST_F(SectionGeometry, EveryItemHasOneShapeAndTheyFollowEachOtherOutward) {
    ASSERT_EQ(shapes.size(), 7u);
    double outside = 0.001;  // bobbin wall
    for (const auto& s : shapes) {
        EXPECT_GE(s.box.x0, outside - 1e-12) << s.name;
        EXPECT_GT(s.box.x1, s.box.x0) << s.name;
        outside = s.box.x1;
    }
    EXPECT_EQ(shape(1).kind, Shape::Kind::Barrier);
    EXPECT_EQ(shape(2).name, "SH");
    EXPECT_EQ(shape(4).name, "S.a");
}

TEST_F(SectionGeometry, SectionAddsUpItsLayers) {
    double turns = 0, resistance = 0;
    int layers = 0;
    for (const auto& layer : build.layers)
        if (layer.item == ItemIndex{0, 4}) {
            turns += layer.turns;
            resistance += layer.resistance20;
            layers = layer.number;
        }
    EXPECT_DOUBLE_EQ(turns, 1200);
    EXPECT_DOUBLE_EQ(shape(4).turns, turns);
    EXPECT_DOUBLE_EQ(shape(4).resistance20, resistance);
    EXPECT_EQ(shape(4).layers, layers);
    EXPECT_GT(layers, 1);
}

TEST_F(SectionGeometry, PointFindsSectionBobbinCoreOrNothing) {
    const auto& s = shape(4).box;
    EXPECT_EQ(at(s.middle(), 0.009), document::Selected(ItemIndex{0, 4}));
    EXPECT_EQ(at(0.0005, 0.009), document::Selected(WholePart{WholePart::Which::Bobbin}));
    EXPECT_EQ(at(-0.0005, 0.009), document::Selected(WholePart{WholePart::Which::Core}));
    EXPECT_EQ(at(0.0059, 0.009), document::Selected());
}

TEST_F(SectionGeometry, ThinShieldCanBePointedAt) {
    const auto& shield = shape(2).box;
    EXPECT_EQ(cut::hit(build, shapes, shield.x1 + 3e-5, 0.009, 5e-5), document::Selected(ItemIndex{0, 2}));
    EXPECT_NE(cut::hit(build, shapes, shield.x1 + 3e-5, 0.009, 1e-6), document::Selected(ItemIndex{0, 2}));
}

TEST_F(SectionGeometry, LandingLiesBeforeTheFirstItemFartherOut) {
    const auto before = cut::landingAt(build, design, shapes, shape(4).box.x0 + 1e-6, 0.009);
    ASSERT_TRUE(before);
    EXPECT_EQ(before->before, (ItemIndex{0, 4}));
    EXPECT_DOUBLE_EQ(before->x, shape(4).box.x0);
    const auto innermost = cut::landingAt(build, design, shapes, 0.001, 0.009);
    EXPECT_EQ(innermost->before, (ItemIndex{0, 0}));
    const auto outside = cut::landingAt(build, design, shapes, 0.0058, 0.009);
    EXPECT_EQ(outside->before, (ItemIndex{0, 7}));
    EXPECT_DOUBLE_EQ(outside->x, shape(6).box.x1);
}

TEST_F(SectionGeometry, EmptyChamberTakesADrop) {
    design = cut_test::stepUp(2);
    build = coil::layOut(design, shop);
    shapes = cut::shapesOf(build, design);
    EXPECT_EQ(cut::landingAt(build, design, shapes, 0.002, 0.014)->before, (ItemIndex{1, 0}));
    EXPECT_EQ(cut::landingAt(build, design, shapes, 0.0011, 0.004)->before, (ItemIndex{0, 0}));
}

TEST_F(SectionGeometry, RightLegIsTheMirrorOfTheLeft) {
    design.core = cut_test::coreOf(true);
    auto second = design.coil.front();
    second.leg = 2;
    for (auto& item : second.order)
        if (auto* s = item.section()) s->name += "2";
    second.order[2].shield()->name = "SH2";
    design.coil.push_back(second);
    build = coil::layOut(design, shop);
    shapes = cut::shapesOf(build, design);
    ASSERT_EQ(shapes.size(), 14u);
    for (int i = 0; i < 7; ++i) {
        EXPECT_NEAR(shape(i).box.x0, build.windowWidth - shape(i, 1).box.x1, 1e-12);
        EXPECT_NEAR(shape(i).box.x1, build.windowWidth - shape(i, 1).box.x0, 1e-12);
    }
    // As drawn, the outermost item of the left leg stands next to the outermost of the right one.
    EXPECT_EQ(cut::beside(design, {0, 6}, +1), (ItemIndex{1, 6}));
    EXPECT_EQ(cut::beside(design, {1, 6}, +1), (ItemIndex{1, 5}));
    EXPECT_EQ(cut::landingAt(build, design, shapes, build.windowWidth - 0.001, 0.009)->before, (ItemIndex{1, 0}));
}

TEST_F(SectionGeometry, OvershootIsWhatTheBuildSays) {
    EXPECT_TRUE(cut::overshoots(build).empty());
    design.coil[0].order[4].section()->turns = 9000;
    build = coil::layOut(design, shop);
    const auto beyond = cut::overshoots(build);
    ASSERT_EQ(beyond.size(), 1u);
    EXPECT_NEAR(beyond[0].box.width(), build.fill[0].over, 1e-12);
    EXPECT_NEAR(beyond[0].box.x0, build.windowWidth, 1e-12);
    EXPECT_GT(cut::extent(build).x1, build.windowWidth + build.fill[0].over - 1e-9);
}

TEST_F(SectionGeometry, BuildOfAnotherDesignGivesNoWrongShapes) {
    auto other = design;
    std::swap(other.coil[0].order[0], other.coil[0].order[4]);
    int sections = 0;
    for (const auto& s : cut::shapesOf(build, other)) {
        if (s.kind != Shape::Kind::Section) continue;
        ++sections;
        EXPECT_EQ(s.name, "P.b");
    }
    EXPECT_EQ(sections, 1);
}

TEST(CutFrame, FittedFrameCentresAndZoomKeepsThePoint) {
    const auto frame = cut::fitted({0, 0.01, 0, 0.02}, {0, 0, 400, 400});
    EXPECT_DOUBLE_EQ(frame.scale, 20000);
    EXPECT_EQ(frame.rect({0, 0.01, 0, 0.02}), QRectF(100, 0, 200, 400));
    const auto closer = frame.zoomed(3, {150, 70});
    EXPECT_NEAR(closer.x(150), frame.x(150), 1e-12);
    EXPECT_NEAR(closer.y(70), frame.y(70), 1e-12);
}

TEST(CutFrame, RulerStepsAreOneTwoFive) {
    EXPECT_NEAR(cut::rulerStep(1000, 50), 0.05, 1e-12);
    EXPECT_NEAR(cut::rulerStep(1000, 51), 0.1, 1e-12);
    EXPECT_NEAR(cut::rulerStep(30000, 50), 0.002, 1e-12);
}

TEST(CutLabels, LedOutLinesCrossNoLabel) {
    const QFontMetricsF metrics{QFont()};
    std::vector<cut::LabelWish> wishes;
    for (int i = 0; i < 24; ++i)
        wishes.push_back(
            {QStringLiteral("S.%1 1200").arg(i), QRectF(50 + 5 * i, 100, 4, 300), i % 3 == 0, 0, i % 4 == 0});
    auto labels = cut::placeLabels(wishes, metrics, 2000);
    cut::settle(labels, 100, 400);
    ASSERT_EQ(labels.size(), wishes.size());
    for (const auto& a : labels) {
        ASSERT_EQ(a.where, cut::Label::Where::LedOut);
        for (const auto& b : labels) {
            if (&a == &b) continue;
            EXPECT_FALSE(a.box.intersects(b.box)) << a.text.toStdString() << " on " << b.text.toStdString();
            const double shelf = a.below ? a.box.top() : a.box.bottom();
            const QRectF line = QRectF(QPointF(a.x - 0.1, a.start), QPointF(a.x + 0.1, shelf)).normalized();
            EXPECT_FALSE(line.intersects(b.box)) << a.text.toStdString() << " through " << b.text.toStdString();
        }
    }
}

TEST(CutLabels, WideBodiesHoldTheirLabelNarrowOnesTurnIt) {
    const QFontMetricsF metrics{QFont()};
    const auto labels = cut::placeLabels(
        {{"S.a 1200", {0, 0, 200, 300}, false, 0, false}, {"S.b 1200", {200, 0, 30, 300}, false, 0, false}}, metrics,
        1000);
    EXPECT_EQ(labels[0].where, cut::Label::Where::Inside);
    EXPECT_EQ(labels[1].where, cut::Label::Where::Turned);
}

}  // namespace section_geometry_test
