// SPDX-License-Identifier: GPL-3.0-or-later
// Skin and proximity effect against tabulated values: Dowell's factor (form seen in an open reference article; values
// derived), Kelvin's round wire (classical; derived), skin depth of copper (form and rounded values seen; digits
// derived).
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <ostream>

#include "field/winding_loss.h"

namespace winding_loss_test {

constexpr double copper = 1.7241e-8;

struct Dowell {
    const char* row;
    double x;
    double factor[5];  ///< of 1, 2, 3, 5, 10 layers
};
void PrintTo(const Dowell& r, std::ostream* out) {
    *out << r.row;
}

class PublishedDowell : public testing::TestWithParam<Dowell> {};

TEST_P(PublishedDowell, FactorOfOneToTenLayers) {
    const int layers[] = {1, 2, 3, 5, 10};
    for (int i = 0; i < 5; ++i) {
        const double expected = GetParam().factor[i];
        EXPECT_NEAR(field::dowellFactor(GetParam().x, layers[i]), expected, 1e-5 * expected) << layers[i];
    }
}

INSTANTIATE_TEST_SUITE_P(Rows, PublishedDowell,
                         testing::Values(Dowell{"R-D0.5", 0.5, {1.00554, 1.02632, 1.06096, 1.17179, 1.69131}},
                                         Dowell{"R-D0.75", 0.75, {1.02779, 1.13193, 1.30548, 1.86087, 4.46426}},
                                         Dowell{"R-D1", 1, {1.08564, 1.40601, 1.93996, 3.64862, 11.65796}},
                                         Dowell{"R-D1.5", 1.5, {1.37809, 2.77931, 5.11467, 12.58783, 47.61824}},
                                         Dowell{"R-D2", 2, {1.89781, 5.14649, 10.56096, 27.88727, 109.10434}},
                                         Dowell{"R-D3", 3, {3.01014, 9.53830, 20.41858, 55.23546, 218.43960}}));

TEST(PublishedDowell, SeriesAtSmallDepth) {  // R-SER (derived): exact 1.017741, series 1.017742
    EXPECT_NEAR(field::dowellFactor(0.2, 10), 1.017741, 1e-6);
    EXPECT_NEAR(1 + (5 * 100 - 1) * std::pow(0.2, 4) / 45, 1.017742, 1e-6);
}

struct Winding {
    const char* row;
    double bare, pitch, frequency, x;
    int layers[4];
    double factor[4];
};
void PrintTo(const Winding& r, std::ostream* out) {
    *out << r.row;
}

class PublishedWinding : public testing::TestWithParam<Winding> {};

TEST_P(PublishedWinding, DowellsFactorOfAWireAtItsPitch) {
    const auto& r = GetParam();
    const double side = r.bare * std::sqrt(std::numbers::pi / 4);
    const double x = side * std::sqrt(side / r.pitch) / field::skinDepth(r.frequency, copper);
    EXPECT_NEAR(x, r.x, 1e-5 * r.x);
    for (int i = 0; i < 4 && r.layers[i] > 0; ++i)
        EXPECT_NEAR(field::dowellFactor(x, r.layers[i]), r.factor[i], 1e-5 * r.factor[i]) << r.layers[i];
}

INSTANTIATE_TEST_SUITE_P(
    Rows, PublishedWinding,
    testing::Values(
        Winding{"R-W1", 0.2e-3, 0.226e-3, 20e3, 0.335909, {1, 5, 10, 20}, {1.001131, 1.035065, 1.141108, 1.565280}},
        Winding{"R-W2", 0.5e-3, 0.566e-3, 100e3, 1.876130, {1, 3, 6, 0}, {1.75612, 9.10826, 33.92170, 0}}));

struct Kelvin {
    const char* row;
    double ratio, factor;
};
void PrintTo(const Kelvin& r, std::ostream* out) {
    *out << r.row;
}

class PublishedRoundWire : public testing::TestWithParam<Kelvin> {};

TEST_P(PublishedRoundWire, ResistanceFactorOfAnIsolatedWire) {
    EXPECT_NEAR(field::roundWireImpedanceFactor(GetParam().ratio).real(), GetParam().factor, 1e-6 * GetParam().factor);
}

INSTANTIATE_TEST_SUITE_P(Rows, PublishedRoundWire,
                         testing::Values(Kelvin{"R-B1", 1, 1.001301}, Kelvin{"R-B3", 3, 1.097328},
                                         Kelvin{"R-B4", 4, 1.264643}, Kelvin{"R-B6", 6, 1.768132},
                                         Kelvin{"R-B10", 10, 2.768108}));

struct Depth {
    const char* row;
    double frequency, millimetres;
};
void PrintTo(const Depth& r, std::ostream* out) {
    *out << r.row;
}

class PublishedSkinDepth : public testing::TestWithParam<Depth> {};

TEST_P(PublishedSkinDepth, OfCopperAt20Degrees) {
    EXPECT_NEAR(field::skinDepth(GetParam().frequency, copper) * 1e3, GetParam().millimetres,
                5e-7 + 1e-6 * GetParam().millimetres);
}

INSTANTIATE_TEST_SUITE_P(Rows, PublishedSkinDepth,
                         testing::Values(Depth{"R-S50", 50, 9.345797}, Depth{"R-S60", 60, 8.531507},
                                         Depth{"R-S1000", 1e3, 2.089784}, Depth{"R-S10000", 1e4, 0.660848},
                                         Depth{"R-S100000", 1e5, 0.208978}, Depth{"R-S1e+06", 1e6, 0.066085}));

}  // namespace winding_loss_test
