// SPDX-License-Identifier: GPL-3.0-or-later
#include "field/capacitance.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "field/edge_window.h"
#include "field/wire_cell.h"

namespace capacitance_test {

using field::Body;
using field::Facing;

constexpr double mm = 1e-3;

Body layerBody(int i) {
    return {Body::Kind::Layer, i};
}
Body foilBody(int i) {
    return {Body::Kind::Foil, i};
}

/// A 10 x 20 mm window round a 12 x 12 mm tongue with a 1 mm bobbin; layers are added outward with 0.05 mm paper
/// between.
struct Coil {
    coil::CoilBuild build;
    double cursor = 1 * mm;

    Coil() {
        build.tongue = build.stack = 12 * mm;
        build.windowWidth = 10 * mm;
        build.windowHeight = 20 * mm;
        build.bobbinWall = 1 * mm;
        build.dielectrics.push_back({{0, 1 * mm, 0, 20 * mm}, 3.2, 0.01, 1, 0, true, "wall"});
        build.dielectrics.push_back({{1 * mm, 10 * mm, 0, 1 * mm}, 3.2, 0.01, 1, 0, true, "flange"});
        build.dielectrics.push_back({{1 * mm, 10 * mm, 19 * mm, 20 * mm}, 3.2, 0.01, 1, 0, true, "flange"});
    }

    double lengthAt(double x) const { return 4 * 12 * mm + 8 * mm + 2 * std::numbers::pi * (x - 1 * mm); }

    coil::Layer& addLayer(double y0 = 1 * mm, double y1 = 19 * mm) {
        coil::Layer l;
        l.conductor.bare = 0.1 * mm;
        l.conductor.overall = 0.12 * mm;
        l.conductor.enamelLoss = 0.02;
        l.pitch = 0.125 * mm;
        l.turns = (y1 - y0) / l.pitch;
        l.box = {cursor, cursor + l.conductor.overall, y0, y1};
        l.turnLength = lengthAt(l.box.middle());
        cursor = l.box.x1;
        build.layers.push_back(l);
        return build.layers.back();
    }
    void addPaper(double thickness = 0.05 * mm) {
        build.dielectrics.push_back({{cursor, cursor + thickness, 1 * mm, 19 * mm}, 3.0, 0.01, 1, 1, false, "paper"});
        cursor += thickness;
    }
    void addFoil() {
        coil::Foil f;
        f.conductor.foil = true;
        f.conductor.bare = f.conductor.overall = 0.04 * mm;
        f.box = {cursor, cursor + 0.04 * mm, 1 * mm, 19 * mm};
        f.turnLength = lengthAt(f.box.middle());
        cursor = f.box.x1;
        build.foils.push_back(f);
    }
};

std::vector<Facing> all(const field::CapacitanceResult& r, Body a, Body b, bool ends = false) {
    std::vector<Facing> found;
    for (const auto& f : r.facings)
        if (f.a == a && f.b == b && (f.y1 > f.y0) != ends) found.push_back(f);
    return found;
}

TEST(Capacitances, layersFaceAtTheTurnInTheMiddleOfTheGap) {
    Coil c;
    c.addLayer();
    c.addPaper();
    c.addLayer();
    const auto r = field::capacitances(c.build, false);
    const auto f = all(r, layerBody(0), layerBody(1));
    ASSERT_EQ(f.size(), 1u);
    field::RowCell cell;
    cell.bare = cell.otherBare = 0.1 * mm;
    cell.overall = cell.otherOverall = 0.12 * mm;
    cell.pitch = cell.otherPitch = 0.125 * mm;
    cell.sheet = 0.05 * mm;
    cell.distance = 0.17 * mm;
    const double length = (c.build.layers[0].turnLength + c.build.layers[1].turnLength) / 2;
    EXPECT_NEAR(f[0].total.real() / (field::rowCapacitance(cell).real() * length * 18 * mm), 1, 1e-6);
    EXPECT_NEAR(f[0].y0, 1 * mm, 1e-9);
    EXPECT_NEAR(f[0].y1, 19 * mm, 1e-9);
}

TEST(Capacitances, uncoveredPartLooksThrough) {
    Coil c;
    c.addLayer();
    c.addPaper();
    c.addLayer(12 * mm, 19 * mm);
    c.addPaper();
    c.addFoil();
    const auto r = field::capacitances(c.build, false);
    const auto covered = all(r, layerBody(0), layerBody(1)), open = all(r, layerBody(0), foilBody(0));
    ASSERT_EQ(covered.size(), 1u);
    ASSERT_EQ(open.size(), 1u);
    EXPECT_NEAR(covered[0].y0, 12 * mm, 1e-9);
    EXPECT_NEAR(open[0].y1, 12 * mm, 1e-9);
    EXPECT_NEAR(open[0].y0, 1 * mm, 1e-9);
    EXPECT_LT(open[0].total.real() / 11, covered[0].total.real() / 7);
    EXPECT_TRUE(all(r, layerBody(0), {}).empty());  // the foil hides the outer leg
    EXPECT_FALSE(all(r, foilBody(0), {}).empty());
    // Its inner end stands on the full layer beneath, which screens it from the far yoke.
    for (const auto& end : all(r, layerBody(1), {}, true)) EXPECT_GT(end.y0, 18 * mm);
}

/// A box shield: a foil inside, a winding with margins, a foil folded over its ends.
Coil boxed(bool folded) {
    Coil c;
    c.addFoil();
    c.addPaper();
    c.addLayer(3 * mm, 17 * mm);
    // A foil of one turn: plates all round.
    c.build.layers.back().conductor.foil = true;
    c.build.layers.back().box.x1 = c.build.layers.back().box.x0 + 2 * mm;
    c.build.layers.back().turnLength = c.lengthAt(c.build.layers.back().box.middle());
    c.cursor = c.build.layers.back().box.x1;
    c.addPaper();
    c.addFoil();
    if (folded) c.build.foils[1].foldedTo = c.build.foils[0].box.x1;
    return c;
}

TEST(Capacitances, aBoxShieldFacesTheEndsAllRound) {
    const auto c = boxed(true);
    const auto r = field::capacitances(c.build, false);
    EXPECT_TRUE(all(r, layerBody(0), {}, true).empty());  // no end sees the yokes
    const auto ends = all(r, layerBody(0), foilBody(1), true);
    ASSERT_EQ(ends.size(), 2u);
    // Parallel plates: the layer's share of the radius, 2 mm and half of both papers, 1.96 mm before the fold.
    const double plates = 8.8541878e-12 * 2.05 * mm * c.build.layers[0].turnLength / (1.96 * mm);
    for (const auto& end : ends) EXPECT_NEAR(end.total.real() / plates, 1, 1e-3);
    EXPECT_NEAR(ends[0].y0, 3 * mm, 1e-9);
    EXPECT_NEAR(ends[1].y0, 17 * mm, 1e-9);
}

TEST(Capacitances, aBoxShieldTakesTheYokesPart) {
    const auto open = field::capacitances(boxed(false).build, false),
               box = field::capacitances(boxed(true).build, false);
    const auto sum = [](const std::vector<Facing>& facings) {
        double total = 0;
        for (const auto& f : facings) total += f.total.real();
        return total;
    };
    EXPECT_GT(sum(all(open, layerBody(0), {}, true)), 0);
    EXPECT_EQ(sum(all(box, layerBody(0), {}, true)), 0);
    EXPECT_GT(sum(all(box, foilBody(1), {}, true)), 1.5 * sum(all(open, foilBody(1), {}, true)));
    // Along the radius nothing changed.
    EXPECT_EQ(sum(all(box, layerBody(0), foilBody(1))), sum(all(open, layerBody(0), foilBody(1))));
}

TEST(Capacitances, everyLayerFacesSomethingAndNothingIsNegative) {
    Coil c;
    for (int i = 0; i < 12; ++i) {
        c.addLayer(1 * mm, 19 * mm - i % 3 * 2 * mm);
        c.addPaper();
    }
    const auto r = field::capacitances(c.build, true);
    EXPECT_TRUE(r.valid);
    std::vector<int> seen(12);
    for (const auto& f : r.facings) {
        EXPECT_GT(f.total.real(), 0);
        EXPECT_LT(f.total.imag(), 0);
        EXPECT_GT(f.total.imag(), -0.02 * f.total.real());
        EXPECT_LE(f.y0, f.y1);
        if (f.a.kind == Body::Kind::Layer) ++seen[static_cast<std::size_t>(f.a.index)];
        if (f.b.kind == Body::Kind::Layer) ++seen[static_cast<std::size_t>(f.b.index)];
    }
    for (const int n : seen) EXPECT_GE(n, 2);
    for (const auto& f : field::capacitances(c.build, false).facings) EXPECT_EQ(f.total.imag(), 0);
}

TEST(Capacitances, endsStandAtTheWindowPartOfTheTurn) {
    Coil c;
    c.addFoil();
    const auto r = field::capacitances(c.build, false);
    const auto ends = all(r, foilBody(0), {}, true);
    ASSERT_EQ(ends.size(), 2u);
    EXPECT_NEAR(ends[0].total.real() / ends[1].total.real(), 1, 1e-9);  // a symmetric coil
    EXPECT_NEAR(ends[0].y0 + ends[1].y0, 20 * mm, 1e-9);
    const auto deeper = [&] {
        Coil d;
        d.build.stack *= 2;
        d.addFoil();
        return field::capacitances(d.build, false);
    }();
    EXPECT_NEAR(all(deeper, foilBody(0), {}, true)[0].total.real() / ends[0].total.real(), 2, 1e-9);
}

TEST(Capacitances, cornerFringeMeetsTheMapItComesFrom) {
    // dz/du = (a/pi) sqrt((u + 1)/(u - beta))/u maps the upper half plane on the bend; integrated along the inner wall.
    for (const double ratio : {0.1, 0.5, 1.0, 3.0}) {
        const double beta = ratio * ratio, far = 30;  // a = ratio, b = 1
        const auto length = [&](double from, double to) {
            constexpr int steps = 200000;
            const double h = (to - from) / steps;
            double sum = 0;
            for (int i = 0; i < steps; ++i) {
                const double t = std::exp(from + (i + 0.5) * h);
                sum += std::sqrt(std::abs(t - 1) / (t + beta)) * h;
            }
            return sum * ratio / std::numbers::pi;
        };
        const double flux = 2 * far / std::numbers::pi;
        const double plates = length(0, far) / ratio + length(-far, 0) / 1.0;
        EXPECT_NEAR(field::cornerFringe(ratio, 1), flux - plates, 2e-5) << ratio;
    }
    EXPECT_NEAR(field::cornerFringe(2, 2), 1 - 2 / std::numbers::pi * std::log(2.0), 1e-12);
}

TEST(Capacitances, sectionsInOneHandFaceTurnByTurn) {
    Coil c;
    c.addLayer().pitch = 0.25 * mm;
    c.cursor = c.build.layers[0].box.x0;
    c.addLayer().pitch = 0.25 * mm;
    c.addPaper();
    c.addFoil();
    const auto r = field::capacitances(c.build, false);
    const auto hand = all(r, layerBody(0), layerBody(1));
    ASSERT_EQ(hand.size(), 1u);
    const auto& l = c.build.layers[0];
    const double gap = field::turnCapacitance(0.1 * mm, 0.12 * mm, 0.125 * mm, 3.5, 1).real() * l.turnLength;
    EXPECT_NEAR(hand[0].total.real() / (gap * 2 * 18 / 0.25), 1, 1e-6);
    EXPECT_EQ(r.turnToTurn[0], 0.0);
    // Together they hold to the foil what one close layer does.
    Coil single;
    single.addLayer();
    single.addPaper();
    single.addFoil();
    const auto one = all(field::capacitances(single.build, false), layerBody(0), foilBody(0));
    const auto a = all(r, layerBody(0), foilBody(0)), b = all(r, layerBody(1), foilBody(0));
    ASSERT_EQ(a.size(), 1u);
    ASSERT_EQ(b.size(), 1u);
    EXPECT_NEAR((a[0].total + b[0].total).real() / one[0].total.real(), 1, 1e-9);
}

TEST(Capacitances, chambersCoupleThroughTheMiddleFlange) {
    Coil c;
    c.addLayer(1 * mm, 9.5 * mm);
    c.cursor = c.build.layers[0].box.x0;
    c.addLayer(10.5 * mm, 19 * mm).chamber = 2;
    c.build.dielectrics.push_back({{1 * mm, 10 * mm, 9.5 * mm, 10.5 * mm}, 3.2, 0, 1, 0, true, "middle flange"});
    const auto r = field::capacitances(c.build, false);
    const auto through = all(r, layerBody(0), layerBody(1), true);
    ASSERT_EQ(through.size(), 1u);
    EXPECT_NEAR(through[0].y0, 10 * mm, 1e-9);
    EXPECT_EQ(all(r, layerBody(0), {}, true).size(), 1u);  // its other end has the yoke
    // Between plates of the layers' height at the flange's thickness and at the distance of wire centres in air.
    const double area = 0.12 * mm * c.build.layers[0].turnLength * 8.8541878128e-12;
    EXPECT_LT(through[0].total.real(), area * 3.2 / (1 * mm) * 1.1);
    EXPECT_GT(through[0].total.real(), area / (1.125 * mm));
}

TEST(Capacitances, twoLegsFaceEachOtherOverOneStack) {
    Coil c;
    c.build.legs = 2;
    c.addFoil();
    auto other = c.build.foils[0];
    other.leg = 2;
    c.build.foils.push_back(other);
    const auto r = field::capacitances(c.build, false);
    const auto f = all(r, foilBody(0), foilBody(1));
    ASSERT_EQ(f.size(), 1u);
    const double gap = 10 * mm - 2 * 1.04 * mm;
    EXPECT_NEAR(f[0].total.real() / (8.8541878128e-12 * 18 * mm * 12 * mm / gap), 1, 1e-9);
}

TEST(Capacitances, fillingRaisesThemByLessThanItsPermittivity) {
    Coil c;
    c.addLayer();
    c.addPaper();
    c.addLayer();
    const auto dry = field::capacitances(c.build, false);
    c.build.fillPermittivity = 3.2;
    const auto filled = field::capacitances(c.build, false);
    ASSERT_EQ(dry.facings.size(), filled.facings.size());
    for (std::size_t i = 0; i < dry.facings.size(); ++i) {
        const double ratio = filled.facings[i].total.real() / dry.facings[i].total.real();
        EXPECT_GT(ratio, 1.0);
        EXPECT_LT(ratio, 3.2 * (1 + 1e-9));
    }
}

TEST(Capacitances, aWildSectionsEndIsAFaceAsWideAsItself) {
    const auto endOf = [](bool wild) {
        Coil c;
        if (wild)
            c.addLayer().random = true;
        else
            c.addFoil();
        auto& box = wild ? c.build.layers[0].box : c.build.foils[0].box;
        box.x1 = box.x0 + 3 * mm;
        const auto r = field::capacitances(c.build, false);
        return all(r, wild ? layerBody(0) : foilBody(0), {}, true).at(0).total.real();
    };
    EXPECT_LT(endOf(true), endOf(false));  // its wires lie further from the flange than a solid's face
    EXPECT_GT(endOf(true), 0.75 * endOf(false));
}

TEST(Capacitances, wildCoilsHaveASpreadAndOverfullOnesAreMarked) {
    Coil wild, even;
    for (Coil* c : {&wild, &even}) {
        c->addLayer();
        c->addLayer();
    }
    for (auto& layer : wild.build.layers) layer.random = true;
    const auto chance = field::capacitances(wild.build, false), sure = field::capacitances(even.build, false);
    EXPECT_TRUE(chance.valid);
    EXPECT_EQ(chance.spread, field::wildSpread);
    EXPECT_EQ(sure.spread, 0);
    // Strokes that half lie in each other's hollows are nearer than rows wire on wire, but not twice.
    const auto facing = [](const field::CapacitanceResult& r) {
        return all(r, layerBody(0), layerBody(1)).at(0).total.real();
    };
    EXPECT_GT(facing(chance), 1.1 * facing(sure));
    EXPECT_LT(facing(chance), 2 * facing(sure));
    Coil full;
    full.cursor = 9.95 * mm;
    full.addLayer();
    const auto r = field::capacitances(full.build, false);
    EXPECT_FALSE(r.valid);
    EXPECT_NE(r.why.find("beyond its window"), std::string::npos);
    EXPECT_TRUE(field::capacitances({}, true).facings.empty());
}

}  // namespace capacitance_test
