// SPDX-License-Identifier: GPL-3.0-or-later
#include "design/rename.h"

#include <gtest/gtest.h>

#include "design/check.h"
#include "design/edit.h"
#include "sample_design.h"
#include "units/fault.h"

namespace design {
namespace rename_test {

/// Everything that can name a part names one.
Design full() {
    Design d = sampleDesign();
    d.terminals.emplace_back();
    d.terminals.back().name = "tap";
    d.windings[1].taps.emplace_back();
    d.windings[1].taps[0].turns = 50;
    d.windings[1].taps[0].terminal = "tap";
    d.windings[0].order = {"b", "a"};
    d.windings[1].order = {"a", "b"};
    d.coil[0].order[0].section()->start = "1";
    d.conditions.directCurrents.emplace_back();
    d.conditions.directCurrents[0].winding = "P";
    d.hookUps.push_back(d.hookUps[0]);
    d.hookUps[1].name = "other";
    const auto promise = [&](const char* figure, const char* hookUp, const char* port) {
        Promise p;
        p.figure = figure;
        p.hookUp = hookUp;
        p.port = port;
        p.atMost = 1e6;
        d.brief.promises.push_back(p);
    };
    promise("ratio.P.S", "", "");
    promise("capacitance.P.SH", "", "");
    promise("dcr.P", "other", "");
    promise("impedance_1kHz.input", "", "");
    promise("impedance_1kHz", "normal", "input");
    d.brief.masks.emplace_back();
    d.brief.masks[0].trace = "response";
    d.brief.masks[0].hookUp = "other";
    d.brief.masks[0].points = {{20, -1, 1}, {2e4, -1, 1}};
    return d;
}

void expectSound(const Design& d) {
    for (const auto& fault : check(d, sampleShop(), "s")) ADD_FAILURE() << units::sentence(fault);
}

TEST(Rename, TheSampleItselfIsSound) {
    expectSound(full());
}

TEST(Rename, AWindingTakesItsSectionsCurrentsAndFiguresAlong) {
    const DesignPtr d = renameWinding(full(), "P", "primary");
    expectSound(*d);
    EXPECT_EQ(d->windings[0].name, "primary");
    EXPECT_EQ(d->coil[0].order[0].section()->label(), "primary.a");
    EXPECT_EQ(d->coil[0].order[5].section()->label(), "primary.b");
    EXPECT_EQ(d->conditions.directCurrents[0].winding, "primary");
    EXPECT_EQ(d->brief.promises[0].figure, "ratio.primary.S");
    EXPECT_EQ(d->brief.promises[1].figure, "capacitance.primary.SH");
    EXPECT_EQ(d->brief.promises[2].figure, "dcr.primary");
    EXPECT_EQ(renameWinding(full(), "S", "out")->brief.promises[0].figure, "ratio.P.out");
}

TEST(Rename, AWindingNamedLikeAPortLeavesThePortsFiguresAlone) {
    const DesignPtr d = renameWinding(*renamePort(full(), "input", "P"), "P", "primary");
    expectSound(*d);
    EXPECT_EQ(d->brief.promises[3].figure, "impedance_1kHz.P");
    EXPECT_EQ(d->brief.promises[4].port, "P");
    EXPECT_EQ(d->brief.promises[2].figure, "dcr.primary");
}

TEST(Rename, ASectionStaysInItsWindingsOrder) {
    const DesignPtr d = renameSection(full(), "P", "a", "inner");
    expectSound(*d);
    EXPECT_EQ(d->windings[0].order, (std::vector<std::string>{"b", "inner"}));
    EXPECT_EQ(d->windings[1].order, (std::vector<std::string>{"a", "b"}));
    EXPECT_EQ(d->coil[0].order[0].section()->name, "inner");
    EXPECT_EQ(d->coil[0].order[4].section()->name, "a") << "a section of another winding";
}

TEST(Rename, AShieldStaysStrappedAndPromised) {
    const DesignPtr d = renameShield(full(), "SH", "foil 1");
    expectSound(*d);
    EXPECT_EQ(d->coil[0].order[2].shield()->name, "foil 1");
    EXPECT_EQ(d->hookUps[0].straps[0], (std::vector<std::string>{"foil 1", "4"}));
    EXPECT_EQ(d->brief.promises[1].figure, "capacitance.P.foil 1");
}

TEST(Rename, AShieldNamedAsItsTerminalLeavesTheTerminalItsName) {
    Design d = full();
    d.terminals.emplace_back();
    d.terminals.back().name = "SH";
    d.coil[0].order[2].shield()->terminal = "SH";
    expectSound(d);
    const DesignPtr renamed = renameShield(d, "SH", "foil");
    expectSound(*renamed);
    EXPECT_EQ(renamed->hookUps[0].straps[0][0], "SH") << "the node is the terminal";
    const DesignPtr terminal = renameTerminal(d, "SH", "lug");
    expectSound(*terminal);
    EXPECT_EQ(terminal->coil[0].order[2].shield()->name, "SH");
    EXPECT_EQ(terminal->coil[0].order[2].shield()->terminal, "lug");
}

TEST(Rename, ATerminalIsFollowedByEverythingSolderedToIt) {
    const DesignPtr d = renameTerminal(full(), "1", "red");
    expectSound(*d);
    EXPECT_EQ(d->windings[0].start, "red");
    EXPECT_EQ(d->coil[0].order[0].section()->start, "red");
    EXPECT_EQ(d->ports[0].plus, "red");
    const DesignPtr four = renameTerminal(full(), "4", "black");
    expectSound(*four);
    EXPECT_EQ(four->windings[1].finish, "black");
    EXPECT_EQ(four->ports[1].minus, "black");
    EXPECT_EQ(four->hookUps[0].straps[0][1], "black");
    EXPECT_EQ(four->hookUps[1].earths[1], "black");
    EXPECT_EQ(renameTerminal(full(), "tap", "centre")->windings[1].taps[0].terminal, "centre");
}

TEST(Rename, APortIsFollowedByHookUpsAndPromises) {
    const DesignPtr d = renamePort(full(), "input", "microphone");
    expectSound(*d);
    EXPECT_EQ(d->hookUps[1].ports[0].port, "microphone");
    EXPECT_EQ(d->brief.promises[3].figure, "impedance_1kHz.microphone");
    EXPECT_EQ(d->brief.promises[4].port, "microphone");
}

TEST(Rename, AHookUpIsFollowedByPromisesAndMasks) {
    const DesignPtr d = renameHookUp(full(), "other", "shorted");
    expectSound(*d);
    EXPECT_EQ(d->brief.promises[2].hookUp, "shorted");
    EXPECT_EQ(d->brief.masks[0].hookUp, "shorted");
    EXPECT_EQ(renameHookUp(full(), "normal", "usual")->brief.promises[4].hookUp, "usual");
}

TEST(Rename, BackAgainIsTheSameDesign) {
    const Design d = full();
    EXPECT_EQ(*renameWinding(*renameWinding(d, "P", "x"), "x", "P"), d);
    EXPECT_EQ(*renameSection(*renameSection(d, "S", "b", "x"), "S", "x", "b"), d);
    EXPECT_EQ(*renameShield(*renameShield(d, "SH", "x"), "x", "SH"), d);
    EXPECT_EQ(*renameTerminal(*renameTerminal(d, "4", "x"), "x", "4"), d);
    EXPECT_EQ(*renamePort(*renamePort(d, "input", "x"), "x", "input"), d);
    EXPECT_EQ(*renameHookUp(*renameHookUp(d, "other", "x"), "x", "other"), d);
    EXPECT_EQ(*renameWinding(d, "P", "P"), d);
}

template <class Act>
std::string refusal(Act&& act) {
    try {
        act();
    } catch (const units::BadInput& bad) {
        return bad.faults.at(0).found + " / " + bad.faults.at(0).allowed;
    }
    return "taken";
}

TEST(Rename, ANameInUseIsRefused) {
    const Design d = full();
    EXPECT_EQ(refusal([&] { (void)renameWinding(d, "P", "S"); }), "\"S\" / a name that no other winding has");
    EXPECT_EQ(refusal([&] { (void)renameSection(d, "P", "a", "b"); }),
              "\"b\" / a name that no other section of winding P has");
    EXPECT_EQ(refusal([&] { (void)renameTerminal(d, "1", "2"); }),
              "\"2\" / a name that no other terminal or shield has");
    EXPECT_EQ(refusal([&] { (void)renameTerminal(d, "1", "SH"); }),
              "\"SH\" / a name that no other terminal or shield has");
    EXPECT_EQ(refusal([&] { (void)renamePort(d, "input", "output"); }), "\"output\" / a name that no other port has");
    EXPECT_EQ(refusal([&] { (void)renameHookUp(d, "other", "normal"); }),
              "\"normal\" / a name that no other hook-up has");
    EXPECT_EQ(refusal([&] { (void)renameHookUp(d, "other", ""); }), "\"\" / a name of at least one character");
    const DesignPtr two = insertItem(d, {0, 0}, shieldItem("SX"));
    EXPECT_EQ(refusal([&] { (void)renameShield(*two, "SX", "SH"); }), "\"SH\" / a name that no other shield has");
}

}  // namespace rename_test
}  // namespace design
