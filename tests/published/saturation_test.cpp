// SPDX-License-Identifier: GPL-3.0-or-later
// Flux, voltage and the saturation knee against printed and derived values.
#include "magnetics/saturation.h"

#include <gtest/gtest.h>

#include <cmath>
#include <ostream>

#include "magnetics/permeability.h"

namespace saturation_test {

void expectRelative(double found, double expected, double tolerance) {
    EXPECT_NEAR(found, expected, tolerance * std::abs(expected));
}

TEST(PublishedFlux, ConstantOfASine) {  // F-444: 2 pi / sqrt 2, V = 4.44 f N A B (standard); derived
    EXPECT_NEAR(magnetics::voltageAtFlux(1, 1, 1, 1), 4.442883, 5e-7);
}

TEST(PublishedFlux, VoltageForAFluxDensity) {  // F-B1, derived
    expectRelative(magnetics::voltageAtFlux(20, 1000, 1e-4, 0.8), 7.108613, 1e-6);
}

TEST(PublishedFlux, FluxDensityAtFourDbu) {  // F-B2: +4 dBu = 1.2277 V, derived
    expectRelative(magnetics::fluxAtVoltage(1.2277, 20, 1000, 0.5e-4), 0.276330, 1e-5);
}

TEST(PublishedFlux, FluxDensityAtTwentyFourDbu) {  // F-B3, derived
    expectRelative(magnetics::fluxAtVoltage(12.277, 20, 2000, 1e-4), 0.690824, 1e-5);
}

/// Row: initial permeability and saturation of an alloy by R. M. Bozorth, Ferromagnetism (1951), appendix (memory), and
/// the knee of the arctan shape through them, its root found independently (derived).
struct Alloy {
    const char* row;
    double permeability, saturation, knee;
};
void PrintTo(const Alloy& r, std::ostream* out) {
    *out << r.row;
}

class PublishedSaturation : public testing::TestWithParam<Alloy> {
protected:
    static magnetics::StackBlock block() {
        magnetics::StackBlock sheets;
        sheets.initialPermeability = GetParam().permeability;
        sheets.saturation = GetParam().saturation;
        return sheets;
    }
    static magnetics::CoreModel core() {
        magnetics::CoreModel model;
        model.area = 1e-4;
        model.pathLength = 0.1;
        model.blocks = {block()};
        return model;
    }
};

TEST_P(PublishedSaturation, StartsWithTheInitialPermeability) {
    const double field = 1e-4;
    expectRelative(magnetics::fluxAtField(block(), field) / (magnetics::mu0 * field), GetParam().permeability, 1e-6);
}

TEST_P(PublishedSaturation, PolarisationEndsAtTheSaturation) {
    const double field = 1e8;
    expectRelative(magnetics::fluxAtField(block(), field) - magnetics::mu0 * field, GetParam().saturation, 1e-4);
}

TEST_P(PublishedSaturation, KneeOfTheClosedCore) {
    expectRelative(magnetics::kneeFlux(core()), GetParam().knee, 2e-9);
}

INSTANTIATE_TEST_SUITE_P(Rows, PublishedSaturation,
                         testing::Values(Alloy{"M-B1, 4 % Mo 79 % Ni", 20000, 0.87, 0.793359352},
                                         Alloy{"M-B2, 5 % Mo 79 % Ni", 100000, 0.79, 0.720250489},
                                         Alloy{"M-B3, 45 % Ni", 2500, 1.6, 1.461826648},
                                         Alloy{"M-B3, 50 % Ni", 4000, 1.6, 1.460636174},
                                         Alloy{"M-B4, 49 % Co 2 % V", 800, 2.4, 2.202910408},
                                         Alloy{"M-B5, grain-oriented 3 % Si", 1500, 2.0, 1.829934391}));

TEST(PublishedFlux, GapLowersTheFluxOfLinearSheets) {
    // F-G2, F-G3, F-G4 (derived, as in gap_test.cpp), by way of the magnetization curve: B / (mu0 N I / l).
    for (const auto& [permeability, gap, path, effective] :
         {std::tuple{50000.0, 25e-6, 0.1, 3703.7037}, std::tuple{20000.0, 10e-6, 0.1, 6666.6667},
          std::tuple{10000.0, 50e-6, 0.12, 1935.4839}}) {
        magnetics::CoreModel core;
        core.area = 1e-4;
        core.pathLength = path;
        core.gap = gap;
        magnetics::StackBlock sheets;
        sheets.initialPermeability = permeability;
        core.blocks = {sheets};
        expectRelative(magnetics::meanFlux(core, 10) / (magnetics::mu0 * 10), effective, 1e-7);
    }
}

}  // namespace saturation_test
