// SPDX-License-Identifier: GPL-3.0-or-later
// Our solution against an independent circuit solver on the exported netlist.
#include "exchange/netlist.h"

#include "ngspice.h"
#include "units/fault.h"

namespace netlist_test {

class NetlistOf : public testing::TestWithParam<std::string> {};

/// Every hook-up with the fits that have no exact counterpart switched off on both sides.
TEST_P(NetlistOf, NgspiceAgreesFrom10HzTo1MHzInEveryHookUp) {
    auto d = ngspice::opened(GetParam());
    d.assumptions.proximity = false;
    d.assumptions.dielectricLoss = false;
    for (const auto& hookUp : d.hookUps) {
        const auto off = ngspice::against(d, hookUp.name, d.name + hookUp.name, exchange::netlist);
        EXPECT_EQ(off.points, 201U) << hookUp.name;
        EXPECT_LT(off.level, 0.02) << hookUp.name;
        EXPECT_LT(off.angle, 0.2) << hookUp.name;
    }
}

/// Skin and proximity effect of every wire, with the inner inductance that falls with them. The file tells how near.
TEST_P(NetlistOf, EddyCurrentsInWireAreInIt) {
    auto d = ngspice::opened(GetParam());
    d.assumptions.proximity = true;
    d.assumptions.dielectricLoss = false;
    const auto& hookUp = d.hookUps.front().name;
    const auto [off, said] = ngspice::againstAndTold(d, hookUp, d.name + "eddy", exchange::netlist);
    EXPECT_EQ(off.points, 201U);
    EXPECT_LT(off.level, std::max(0.02, 1.05 * said.level));
    EXPECT_LT(off.angle, std::max(0.2, 1.05 * said.angle));
    for (const char* thin : {"open_1", "open_2", "open_3", "microphone", "splitter"})
        if (GetParam().find(thin) != std::string::npos) {
            EXPECT_LT(off.level, 0.02);
            EXPECT_LT(off.angle, 0.2);
        }
}

INSTANTIATE_TEST_SUITE_P(Designs, NetlistOf, testing::ValuesIn(ngspice::designs()),
                         [](const auto& tried) { return ngspice::testName(tried.param); });

/// A loss factor that does not change with frequency has no circuit; the file says how near its fit comes.
TEST(Netlist, DielectricLossIsAsNearAsTheFileSays) {
    const auto d = ngspice::opened("demo-projects/direct-box/direct-box.coilwright");
    const auto [off, said] = ngspice::againstAndTold(d, "normal", "dielectric", exchange::netlist);
    EXPECT_GT(said.level, 0);
    EXPECT_LT(off.level, 1.05 * said.level) << "the file's figure has two digits";
    EXPECT_LT(off.level, 2.5);  // at 1 MHz alone, beside a null at -67 dB
    EXPECT_LT(off.levelOutsideNulls, 0.7);
}

TEST(Netlist, EveryHookUpHasItsCircuitAndOneIsActive) {
    const auto d = ngspice::opened("demo-projects/splitter/splitter.coilwright");
    const auto answer = analysis::answer(d, ngspice::shop(), nullptr, {}, {"one console only", {}, true});
    const auto text = exchange::netlist(d, *answer);
    for (const auto& hookUp : d.hookUps) {
        const bool asked = hookUp.name == "one console only";
        EXPECT_EQ(text.find("\n* hook-up " + hookUp.name + "\nx1 ") != std::string::npos, asked) << hookUp.name;
        EXPECT_EQ(text.find("\n* hook-up " + hookUp.name + "\n* x1 ") != std::string::npos, !asked) << hookUp.name;
    }
    EXPECT_TRUE(text.ends_with("quit 0\n.endc\n.end\n"));
}

TEST(Netlist, ImpedanceTableIsRefusedInWords) {
    auto d = ngspice::opened("tests/references/open_2_interleaved_line.coilwright");
    auto& use = d.hookUps.front().ports.front();
    use.through.reset();
    use.table = {{10, 600, 0}, {1e6, 600, 10}};
    const auto answer = analysis::answer(d, {});
    try {
        (void)exchange::netlist(d, *answer);
        FAIL() << "an impedance table has no SPICE element";
    } catch (const units::BadInput& bad) {
        EXPECT_EQ(std::string(bad.what()),
                  "hook-up " + d.hookUps.front().name +
                      ": found a port with an impedance table; allowed is ports with R, L and C for a netlist.");
    }
}

}  // namespace netlist_test
