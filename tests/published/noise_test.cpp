// SPDX-License-Identifier: GPL-3.0-or-later
// Thermal noise, noise figure, insertion loss and levels against worked values.
//
// Sources, by row:
//   N-290, N-293.15  sqrt(4 k T R) with k of the SI (2019); Johnson, Nyquist 1928 (derived)
//   N-LAV, N-1K      worked values in stored messages (seen)
//   N-NF*            F = 1 + (Rp + Rs/n^2)/Rg and with core loss or load (derived); Motchenbacher, Connelly 1993
//   (memory) N-IL*            20 log((Rg + RL + Rw)/(Rg + RL)) (derived) N-DB*, N-4, N-24, N-10  levels of line
//   practice (seen where the row says so)
#include "analysis/noise.h"

#include <gtest/gtest.h>

#include "lumped_circuit.h"
#include "units/text.h"

namespace noise_test {

using network::earth;

struct Row {
    double kelvin, ohm, density, microvolts, level;  // nV/rtHz, uV and dBu over 20 Hz to 20 kHz
};

TEST(PublishedNoise, Resistors) {  // rows N-290-* and N-293.15-*, all derived
    for (const auto& row : {Row{290, 150, 1.54994, 0.21909, -130.969}, Row{290, 200, 1.78972, 0.25298, -129.720},
                            Row{290, 600, 3.09989, 0.43817, -124.949}, Row{290, 1000, 4.00194, 0.56568, -122.730},
                            Row{290, 10000, 12.65525, 1.78883, -112.730}, Row{293.15, 150, 1.55834, 0.22027, -130.922},
                            Row{293.15, 200, 1.79942, 0.25435, -129.673}, Row{293.15, 1000, 4.02362, 0.56874, -122.683},
                            Row{293.15, 10000, 12.72379, 1.79852, -112.683}}) {
        const double density = analysis::thermalNoise(row.ohm, row.kelvin);
        const double band = density * std::sqrt(20e3 - 20);
        EXPECT_NEAR(density * 1e9, row.density, 1e-4 * row.density);
        EXPECT_NEAR(band * 1e6, row.microvolts, 1e-4 * row.microvolts);
        EXPECT_NEAR(units::dbuOfVolts(band), row.level, 0.002);
    }
}

TEST(PublishedNoise, WorkedValues) {
    // N-LAV seen: 150 ohm at room temperature, 1.568 nV/rtHz, -130.9 dBu; T is not stated, some 297 K.
    EXPECT_NEAR(20 * std::log10(analysis::thermalNoise(150, 297) / 1.568e-9), 0, 0.1);
    // N-1K seen: 1 kilohm over 10 kHz: 400 nV within 2 %.
    EXPECT_NEAR(analysis::thermalNoise(1000, 293.15) * 100, 400e-9, 8e-9);
}

/// Transformer 1:n on a very large core between Rg and an open output, with a resistor at the core if there is one.
double noiseFigure(double source, double primary, double secondary, double ratio, double coreLoss = 0,
                   const analysis::Amplifier& amplifier = {}) {
    auto c = lumped::circuit(3, 1e3);
    lumped::addWinding(c, 0, earth, 1, primary);
    lumped::addWinding(c, 1, earth, ratio, secondary);
    lumped::addWinding(c, 2, earth, 1, 0);
    lumped::addPort(c, "in", 0, design::Role::Drive, source);
    lumped::addPort(c, "out", 1, design::Role::Observe, 0);
    lumped::addPort(c, "core loss", 2, design::Role::Load, coreLoss);
    const network::Prepared network(c);
    const auto values = network.solve(1e3);
    const double density = analysis::outputNoise(values(network.layout().totalImpedance(1)), 290, amplifier);
    return analysis::noiseFigure(density, 290, source, std::abs(values(network.layout().voltage(0, 1))));
}

TEST(PublishedNoise, FigureOfATransformer) {
    EXPECT_NEAR(noiseFigure(150, 50, 2000, 10), 1.663314, 1e-6);        // N-NF1 derived
    EXPECT_NEAR(noiseFigure(200, 30, 1000, 5), 1.303338, 1e-6);         // N-NF2 derived
    EXPECT_NEAR(noiseFigure(150, 50, 2000, 10, 10e3), 1.757205, 1e-6);  // N-NF3 derived: core loss
}

/// Series resistance between a source and a load.
network::Prepared seriesPath(double source, double load, double winding) {
    auto c = lumped::circuit(2);
    lumped::addWinding(c, 0, 1, 0, winding);
    lumped::addPort(c, "in", 0, design::Role::Drive, source);
    lumped::addPort(c, "out", 1, design::Role::Observe, load);
    return network::Prepared(c);
}

TEST(PublishedNoise, LoadResistorCounts) {  // N-NF4 derived: 150 ohm, 70 ohm, 1.5 kilohm
    const auto network = seriesPath(150, 1500, 70);
    const auto values = network.solve(1e3);
    const double gain = std::abs(values(network.layout().voltage(0, 1)));
    const double density = analysis::outputNoise(values(network.layout().totalImpedance(1)), 290, {});
    EXPECT_NEAR(analysis::noiseFigure(density, 290, 150, gain), 2.257686, 1e-6);
}

TEST(PublishedNoise, AmplifierHasABestRatio) {  // rows N-OPT, N-OPT2 derived: 5 nV, 1 pA, 150 ohm
    const analysis::Amplifier amplifier{5e-9, 1e-12};
    EXPECT_NEAR(analysis::bestSource(amplifier), 5000, 1e-9);
    const double best = std::sqrt(analysis::bestSource(amplifier) / 150);
    EXPECT_NEAR(best, 5.773503, 1e-6);
    EXPECT_NEAR(noiseFigure(150, 0, 0, best, 0, amplifier), 2.106914, 2e-6);
    EXPECT_NEAR(noiseFigure(150, 0, 0, 10, 0, amplifier), 3.097699, 2e-6);
    EXPECT_NEAR(noiseFigure(150, 0, 0, 1, 0, amplifier), 10.575114, 2e-6);
    // F_min = 1 + e_n i_n / (2 k T0) whatever the source (Motchenbacher, Connelly 1993, memory).
    const double least = 10 * std::log10(1 + 5e-9 * 1e-12 / (2 * 1.380649e-23 * 290));
    EXPECT_NEAR(noiseFigure(150, 0, 0, best, 0, amplifier), least, 2e-6);
    EXPECT_NEAR(noiseFigure(40, 0, 0, std::sqrt(5000 / 40.0), 0, amplifier), least, 2e-6);
}

TEST(PublishedNoise, SourceAloneStandsAtTheReferenceTemperature) {  // derived from the definition
    // 150 ohm source, 150 ohm in series at 350 K: F = 1 + 350/290.
    const double density = analysis::outputNoise(300, 350, {});
    EXPECT_NEAR(analysis::noiseFigure(density, 350, 150, 1), 10 * std::log10(1 + 350.0 / 290), 1e-12);
}

TEST(PublishedNoise, AWeighting) {
    // Table of IEC 61672-1 at exact frequencies 1000 * 10^(n/10), dB to a tenth, in a stored copy (seen).
    struct Weight {
        int tenth;
        double level;
    };
    for (const auto& row : {Weight{-20, -70.4}, Weight{-17, -50.5}, Weight{-15, -39.4}, Weight{-12, -26.2},
                            Weight{-10, -19.1}, Weight{-7, -10.9}, Weight{-3, -3.2}, Weight{0, 0.0}, Weight{3, 1.2},
                            Weight{6, 1.0}, Weight{9, -1.1}, Weight{10, -2.5}, Weight{12, -6.6}, Weight{13, -9.3}})
        EXPECT_NEAR(20 * std::log10(analysis::aWeighting(1000 * std::pow(10.0, row.tenth / 10.0))), row.level, 0.051)
            << row.tenth;
}

TEST(PublishedNoise, BandOfWhiteAndOfRedNoise) {  // derived: integrals of 1 and of 1/f^2 over the band
    EXPECT_NEAR(analysis::bandNoise([](double) { return 1e-9; }, [](double) { return 1.0; }),
                1e-9 * std::sqrt(20e3 - 20), 2e-4 * 1e-9 * std::sqrt(20e3));
    EXPECT_NEAR(analysis::bandNoise([](double f) { return 1 / f; }, [](double) { return 1.0; }),
                std::sqrt(1 / 20.0 - 1 / 20e3), 2e-4 * std::sqrt(1 / 20.0));
}

TEST(PublishedLoss, WindingResistance) {  // rows N-IL*, all derived
    for (const auto& [source, load, winding, loss] :
         {std::tuple{600, 600, 60, 0.423786}, std::tuple{150, 1500, 70, 0.360890}, std::tuple{600, 600, 20, 0.143572},
          std::tuple{50, 600, 80, 1.008190}}) {
        const double with = lumped::decibel(lumped::transfer(seriesPath(source, load, winding), 1e3));
        const double without = lumped::decibel(lumped::transfer(seriesPath(source, load, 0), 1e3));
        EXPECT_NEAR(without - with, loss, 1e-6);
    }
}

TEST(PublishedLevel, DecibelsOfVolts) {
    EXPECT_NEAR(units::voltsOfDbu(0), 0.7745967, 1e-7);       // N-DBU seen
    EXPECT_NEAR(units::dbuOfVolts(1), 2.218487, 1e-6);        // N-DBV derived
    EXPECT_NEAR(units::voltsOfDbu(4), 1.227653, 1e-6);        // N-4 seen
    EXPECT_NEAR(units::voltsOfDbu(24), 12.276530, 1e-5);      // N-24 derived
    EXPECT_NEAR(units::dbuOfVolts(0.316228), -7.7815, 1e-4);  // N-10 seen
}

}  // namespace noise_test
