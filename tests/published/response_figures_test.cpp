// SPDX-License-Identifier: GPL-3.0-or-later
// The figures and curves that a designer reads, made by the program from textbook circuits.
//
// Sources, by row:
//   F-R, H-Q, H-PK, H-F3  closed forms as in response_test.cpp (derived)
//   N-IL                  20 log((Rg + RL + Rw)/(Rg + RL)) (derived)
#include <gtest/gtest.h>

#include "analysis/figure_making.h"
#include "analysis/trace_making.h"
#include "lumped_circuit.h"
#include "network/nodes.h"
#include "network/port_networks.h"
#include "small_transformer.h"

namespace response_figures_test {

using network::Circuit;
using network::earth;

constexpr double pi = std::numbers::pi;

/// What the program makes from a circuit, without a coil behind it.
class Read {
public:
    explicit Read(Circuit circuit) : solved_(design_.hookUps.front(), std::move(circuit)) {}
    double figure(analysis::HookUpFamily family, const std::string& name) const {
        std::vector<units::Figure> figures;
        family(analysis::HookUpContext{design_, solved_, stages_, ""}, figures);
        for (const auto& f : figures)
            if (f.name == name) return f.value;
        return std::numeric_limits<double>::quiet_NaN();
    }
    analysis::Trace response(const std::vector<double>& frequencies) const {
        return *analysis::responseTrace({design_, solved_, stages_, frequencies});
    }

private:
    static analysis::Answer::Stages someStages() {
        analysis::Answer::Stages s;
        s.design = std::make_shared<design::Design>(small::transformer());
        s.build = std::make_shared<coil::CoilBuild>();
        s.cut.leakage = std::make_shared<field::LeakageResult>();
        s.capacitance = std::make_shared<field::CapacitanceResult>();
        s.core = std::make_shared<magnetics::CoreModel>();
        return s;
    }
    design::Design design_ = small::transformer();
    analysis::Answer::Stages stages_ = someStages();
    analysis::Solved solved_;
};

/// Source resistance R and inductance L in the port's own network, capacitance at the observed node: a filter of f0, Q.
Circuit secondOrder(double natural, double q) {
    constexpr double inductance = 5e-3;
    const double capacitance = 1 / (4 * pi * pi * natural * natural * inductance);
    auto c = lumped::circuit(1);
    lumped::addPort(c, "in", 0, design::Role::Drive, std::sqrt(inductance / capacitance) / q);
    c.lumped[0].element.inductance = inductance;
    c.capacitance(0, 0) += capacitance;
    lumped::addPort(c, "out", 0, design::Role::Observe, 0);
    return c;
}

TEST(PublishedResponseFigures, UpperHalfPowerAndPeak) {
    constexpr double natural = 400e3;
    // Figures are re 1 kHz, where the filter is off by up to 10 log(1 + (1/Q^2 - 2) x^2) = 0.00006 dB already.
    for (const auto& [q, x] :
         {std::pair{0.5, 0.643594}, std::pair{1 / std::sqrt(3.0), 0.786151}, std::pair{1 / std::sqrt(2.0), 1.0},
          std::pair{1.0, 1.272020}, std::pair{2.0, 1.484509}})  // H-F3-0.5 to H-F3-2, derived
        EXPECT_NEAR(Read(secondOrder(natural, q)).figure(analysis::addBandFigures, "high_3dB_first") / natural, x,
                    2e-5 * x)
            << q;
    for (const auto& [q, peak, x] : {std::tuple{0.8, 0.21295, 0.467707}, std::tuple{1.0, 1.24939, 0.707107},
                                     std::tuple{1.5, 4.03335, 0.881917}, std::tuple{3.0, 9.66477, 0.971825}}) {
        const Read read(secondOrder(natural, q));  // H-PK0.8 to H-PK3, derived
        EXPECT_NEAR(read.figure(analysis::addBandFigures, "peak_level"), peak, 7e-5) << q;
        EXPECT_NEAR(read.figure(analysis::addBandFigures, "peak_frequency") / natural, x, 1e-5 * x) << q;
    }
}

TEST(PublishedResponseFigures, LowerHalfPower) {  // F-R1 derived: R = wL at -3.0103 dB
    constexpr double resistance = 600, inductance = 10, corner = resistance / (2 * pi * inductance);
    auto c = lumped::circuit(1, inductance);
    lumped::addWinding(c, 0, earth, 1, 0);
    lumped::addPort(c, "in", 0, design::Role::Drive, resistance);
    lumped::addPort(c, "out", 0, design::Role::Observe, 0);
    // Re 1 kHz, where 1/sqrt(1 + (corner/1000)^2) is 0.0004 dB down.
    EXPECT_NEAR(Read(c).figure(analysis::addBandFigures, "low_3dB") / corner, 1, 2e-4);
}

TEST(PublishedResponseFigures, CurveOfTheHighEnd) {  // H-Q0.5, 1, 2, derived: dB; phase -atan2(x/Q, 1 - x^2)
    constexpr double natural = 50e3;
    const std::vector<double> x{0.25, 0.5, 0.8, 1, 1.25, 1.5, 2, 4};
    std::vector<double> frequencies;
    for (const double r : x) frequencies.push_back(r * natural);
    for (const auto& [q, levels] :
         {std::pair{0.5, std::vector{-0.5266, -1.9382, -4.2969, -6.0206, -8.1733, -10.2377, -13.9794, -24.6090}},
          std::pair{1.0, std::vector{0.2622, 0.9018, 1.1373, 0.0, -2.7391, -5.8121, -11.1394, -23.8202}},
          std::pair{2.0, std::vector{0.4840, 2.0412, 5.3820, 6.0206, 1.5056, -3.2736, -10.0, -23.5984}}}) {
        const auto trace = Read(secondOrder(natural, q)).response(frequencies);
        for (std::size_t k = 0; k < x.size(); ++k) {
            EXPECT_NEAR(trace.curve("magnitude_dB")->y[k], levels[k], 1e-4) << q << " " << x[k];
            EXPECT_NEAR(trace.curve("phase_deg")->y[k], -std::atan2(x[k] / q, 1 - x[k] * x[k]) * 180 / pi, 1e-4);
        }
        // Group delay at f0 is 2 Q / w0, from the slope of that phase (derived).
        EXPECT_NEAR(trace.curve("group_delay_s")->y[3] * 2 * pi * natural / (2 * q), 1, 1e-5);
    }
}

TEST(PublishedResponseFigures, InsertionLossOfCopper) {  // N-IL*, derived
    for (const auto& [source, load, winding, loss] :
         {std::tuple{600, 600, 60, 0.423786}, std::tuple{150, 1500, 70, 0.360890}, std::tuple{600, 600, 20, 0.143572},
          std::tuple{50, 600, 80, 1.008190}}) {
        auto c = lumped::circuit(2, 1e6);
        lumped::addWinding(c, 0, earth, 1, winding);
        lumped::addWinding(c, 1, earth, 1, 0);
        lumped::addPort(c, "in", 0, design::Role::Drive, source);
        lumped::addPort(c, "out", 1, design::Role::Observe, load);
        EXPECT_NEAR(Read(c).figure(analysis::addLevelFigures, "insertion_loss"), loss, 1e-6);
    }
}

TEST(PublishedResponseFigures, BalancedSourceIsTheSameSource) {  // F-R0.5, 1, 2, derived, from the port as it is stated
    constexpr double resistance = 150, inductance = 1;
    auto d = small::transformer();
    auto& hookUp = d.hookUps.front();
    hookUp.earths.clear();
    hookUp.ports.resize(1);
    hookUp.ports[0].earthing = design::Earthing::Balanced;
    hookUp.ports[0].through->resistance = resistance;
    network::Nodes nodes(d, hookUp);
    auto c = lumped::circuit(2, inductance);
    lumped::addWinding(c, nodes.index("1"), nodes.index("2"), 1, 0);
    network::addPorts(c, nodes, d, hookUp);
    const network::Prepared network(c);
    for (const auto& [ratio, loss] : {std::pair{0.5, -6.98970}, std::pair{1.0, -3.01030}, std::pair{2.0, -0.96910}}) {
        const auto values = network.solve(ratio * resistance / (2 * pi * inductance));
        EXPECT_NEAR(lumped::decibel(values(network.layout().voltage(0, 0))), loss, 1e-5);
    }
}

TEST(PublishedResponseFigures, NoiseOfAResistor) {
    // N-293.15-150 and -1000 (derived): 20 degrees, 20 Hz to 20 kHz, -130.922 and -122.683 dBu; the band is 20 kHz less
    // 20 Hz. An ideal core and no load: the noise of the source alone. By definition it counts at 290 K in both terms
    // of the noise figure, whatever the design's temperature: 0 dB.
    for (const auto& [resistance, level] : {std::pair{150.0, -130.922}, std::pair{1000.0, -122.683}}) {
        auto c = lumped::circuit(1, 1e6);
        lumped::addWinding(c, 0, earth, 1, 0);
        lumped::addPort(c, "in", 0, design::Role::Drive, resistance);
        lumped::addPort(c, "out", 0, design::Role::Observe, 0);
        const Read read(c);
        EXPECT_NEAR(read.figure(analysis::addNoiseFigures, "output_noise_20kHz"), level, 0.002);
        EXPECT_NEAR(read.figure(analysis::addNoiseFigures, "noise_figure_1kHz"), 0, 1e-9);
    }
}

}  // namespace response_figures_test
