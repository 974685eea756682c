// SPDX-License-Identifier: GPL-3.0-or-later
// Shapes of response at both ends of the band against closed forms, solved by the network that designs are solved by.
//
// Sources, by row:
//   F-R, F-dB  |V/Vmid| = 1/sqrt(1 + (R/wL)^2), phase lead atan(R/wL) (derived); universal curve of Terman, Radio
//              Engineers' Handbook, 1943 (memory)
//   F-EX1,3    the same with source and load in parallel (derived)
//   H-*        |A| = 1/sqrt((1-x^2)^2 + (x/Q)^2), f0 = 1/2pi sqrt(LC), Q = sqrt(L/C)/R (derived); Terman, Lee (memory)
#include <gtest/gtest.h>

#include <array>

#include "analysis/figure_making.h"
#include "lumped_circuit.h"

namespace response_test {

using lumped::decibel;
using lumped::transfer;
using network::earth;

constexpr double pi = std::numbers::pi;

/// A winding of `inductance` on the core across a source of resistance R.
network::Prepared lowEnd(double resistance, double inductance, double load = 0) {
    constexpr double turns = 100;
    auto c = lumped::circuit(1, inductance / (turns * turns));
    lumped::addWinding(c, 0, earth, turns, 0);
    lumped::addPort(c, "in", 0, design::Role::Drive, resistance);
    lumped::addPort(c, "out", 0, design::Role::Observe, load);
    return network::Prepared(c);
}

/// Leakage in series with source resistance and winding, capacitance across the output.
network::Prepared highEnd(double resistance, double inductance, double capacitance, double load = 0) {
    auto c = lumped::circuit(2);
    lumped::addWinding(c, 0, 1, 0, 0, inductance);
    c.capacitance(1, 1) += capacitance;
    lumped::addPort(c, "in", 0, design::Role::Drive, resistance);
    lumped::addPort(c, "out", 1, design::Role::Observe, load);
    return network::Prepared(c);
}

struct LowRow {
    double ratio, loss, lead;
};

TEST(PublishedResponse, LowEnd) {  // F-R0.1 to F-R20, all derived
    constexpr double resistance = 150, inductance = 1;
    const auto network = lowEnd(resistance, inductance);
    for (const auto& row : {LowRow{0.1, -20.04321, 84.2894}, LowRow{0.5, -6.98970, 63.4349}, LowRow{1, -3.01030, 45.0},
                            LowRow{2, -0.96910, 26.5651}, LowRow{5, -0.17033, 11.3099}, LowRow{10, -0.04321, 5.7106},
                            LowRow{20, -0.01084, 2.8624}}) {
        const auto value = transfer(network, row.ratio * resistance / (2 * pi * inductance));
        EXPECT_NEAR(decibel(value), row.loss, 1e-5) << row.ratio;
        EXPECT_NEAR(std::arg(value) * 180 / pi, row.lead, 1e-4) << row.ratio;  // printed to 1e-4 degree
    }
}

TEST(PublishedResponse, FrequencyOfAGivenLoss) {  // F-dB0.1, 0.5, 1, 3, all derived
    constexpr double resistance = 600, inductance = 10;
    const auto network = lowEnd(resistance, inductance);
    const auto level = [&](double f) { return decibel(transfer(network, f)); };
    for (const auto& [loss, ratio] :
         {std::pair{0.1, 6.552203}, std::pair{0.5, 2.862775}, std::pair{1.0, 1.965227}, std::pair{3.0, 1.002377}}) {
        const auto found = analysis::firstFall(level, 1000, 0.1, -loss);
        ASSERT_TRUE(found.found);
        EXPECT_NEAR(found.frequency / (resistance / (2 * pi * inductance)), ratio, 1e-6 * ratio);
    }
}

TEST(PublishedResponse, SourceAndLoadInParallel) {
    // F-EX1 derived: 1.085147 H for -3 dB at 20 Hz between 150 and 1500 ohm.
    auto network = lowEnd(150, 1.085147, 1500);
    const double middle = decibel(transfer(network, 1e5));
    EXPECT_NEAR(middle, 20 * std::log10(1500.0 / 1650), 1e-6);
    EXPECT_NEAR(decibel(transfer(network, 20)) - middle, -3.0103, 1e-5);
    // F-EX3 derived from a stored formula: 150 ohm, 1:10 into 15 kilohm (150 ohm seen from the source), 1 H.
    network = lowEnd(150, 1, 150);
    const auto level = [&](double f) { return decibel(transfer(network, f)); };
    const auto low = analysis::firstFall(level, 1000, 0.1, level(1e5) + 10 * std::log10(0.5));
    EXPECT_NEAR(low.frequency, 11.9366, 1e-5 * 11.9366 + 5e-5);
}

struct HighRow {
    double q;
    std::array<double, 8> level;
};

TEST(PublishedResponse, HighEnd) {  // H-Q0.5 to H-Q3, all derived
    constexpr double inductance = 5e-3, capacitance = 1e-9;
    const double natural = 1 / (2 * pi * std::sqrt(inductance * capacitance));
    constexpr std::array<double, 8> x{0.25, 0.5, 0.8, 1, 1.25, 1.5, 2, 4};
    for (const auto& row : {
             HighRow{0.5, {-0.5266, -1.9382, -4.2969, -6.0206, -8.1733, -10.2377, -13.9794, -24.6090}},
             HighRow{0.577350, {-0.2792, -1.1810, -3.1167, -4.7712, -6.9931, -9.1973, -13.2222, -24.3616}},
             HighRow{0.8, {0.1030, 0.2085, -0.5292, -1.9382, -4.4056, -7.0570, -11.8327, -23.9794}},
             HighRow{1, {0.2622, 0.9018, 1.1373, 0.0000, -2.7391, -5.8121, -11.1394, -23.8202}},
             HighRow{1.5, {0.4254, 1.7159, 3.8295, 3.5218, -0.0469, -4.0866, -10.3253, -23.6570}},
             HighRow{2, {0.4840, 2.0412, 5.3820, 6.0206, 1.5056, -3.2736, -10.0000, -23.5984}},
             HighRow{3, {0.5264, 2.2894, 6.9743, 9.5424, 3.0979, -2.5828, -9.7518, -23.5560}},
         }) {
        const auto network = highEnd(std::sqrt(inductance / capacitance) / row.q, inductance, capacitance);
        for (std::size_t k = 0; k < x.size(); ++k)
            EXPECT_NEAR(decibel(transfer(network, x[k] * natural)), row.level[k], 1e-4) << row.q << " " << x[k];
    }
}

TEST(PublishedResponse, PeakAndWhereItStands) {  // H-PK0.8, 1, 1.5, 3, all derived
    constexpr double inductance = 5e-3, capacitance = 1e-9;
    const double natural = 1 / (2 * pi * std::sqrt(inductance * capacitance));
    for (const auto& [q, peak, x] : {std::tuple{0.8, 0.21295, 0.467707}, std::tuple{1.0, 1.24939, 0.707107},
                                     std::tuple{1.5, 4.03335, 0.881917}, std::tuple{3.0, 9.66477, 0.971825}}) {
        const auto network = highEnd(std::sqrt(inductance / capacitance) / q, inductance, capacitance);
        const auto level = [&](double f) { return decibel(transfer(network, f)); };
        const auto found = analysis::firstMaximum(level, 3000, 1e6, 1e-3);
        ASSERT_TRUE(found.found) << q;
        EXPECT_NEAR(level(found.frequency), peak, 1e-5) << q;
        EXPECT_NEAR(found.frequency / natural, x, 1e-5 * x) << q;
    }
}

TEST(PublishedResponse, UpperHalfPowerFrequency) {  // H-F3-0.5, 0.577, 0.707, 1, 2, all derived
    constexpr double inductance = 5e-3, capacitance = 1e-9;
    const double natural = 1 / (2 * pi * std::sqrt(inductance * capacitance));
    for (const auto& [q, x] :
         {std::pair{0.5, 0.643594}, std::pair{1 / std::sqrt(3.0), 0.786151}, std::pair{1 / std::sqrt(2.0), 1.0},
          std::pair{1.0, 1.272020}, std::pair{2.0, 1.484509}}) {
        const auto network = highEnd(std::sqrt(inductance / capacitance) / q, inductance, capacitance);
        const auto level = [&](double f) { return decibel(transfer(network, f)); };
        const auto found = analysis::firstFall(level, 1000, 1e6, 10 * std::log10(0.5));
        ASSERT_TRUE(found.found) << q;
        EXPECT_NEAR(found.frequency / natural, x, 1e-6) << q;
    }
}

TEST(PublishedResponse, WorkedExamples) {
    // H-EX1 derived: 0.2 H, 150 pF: f0 29 057.584 Hz, characteristic 36 514.837 ohm: there 0 dB and a quarter turn.
    auto value = transfer(highEnd(36514.837, 0.20, 150e-12), 29057.584);
    EXPECT_NEAR(decibel(value), 0, 1e-5);
    EXPECT_NEAR(std::arg(value), -pi / 2, 1e-6);
    // H-EX2 derived: 51 639.8 ohm for Q = 0.7071: half power at f0.
    value = transfer(highEnd(51639.8, 0.20, 150e-12), 29057.584);
    EXPECT_NEAR(decibel(value), -3.0103, 1e-4);
}

TEST(PublishedResponse, LoadedHighEnd) {  // H-RL2 derived: 600 ohm, 10 kilohm, 5 mH, 1 nF
    const auto network = highEnd(600, 5e-3, 1e-9, 10e3);
    const double middle = std::abs(transfer(network, 0.1));
    EXPECT_NEAR(middle, 0.943396, 1e-6);
    const auto atNatural = transfer(network, 73280.439);
    EXPECT_NEAR(std::abs(atNatural) / middle, 2.092884, 2e-6);
    EXPECT_NEAR(std::arg(atNatural), -pi / 2, 1e-5);
}

}  // namespace response_test
