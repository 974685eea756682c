// SPDX-License-Identifier: GPL-3.0-or-later
// Causes found again: units with one fault done to them, tolerances, instruments' and the model's errors drawn. A
// hundredth here, a thousand with COILWRIGHT_FULL in the environment (target `full`).
#include "learn/cause.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <complex>
#include <iostream>
#include <numbers>
#include <set>

#include "analysis/in_threads.h"
#include "drawn.h"
#include "learn/terminal_reader.h"
#include "units/fault.h"

namespace cause_test {

using drawn::finder;
using drawn::Normals;
using learn::FaultKind;

bool holds(const std::vector<learn::Likely>& all, const learn::Fault& fault) {
    return std::any_of(all.begin(), all.end(), [&](const auto& one) { return one.words == fault.words; });
}

/// What became of many units.
struct Tally {
    int units = 0, inGroup = 0, first = 0, calledFaulty = 0, explained = 0, grouped = 0;
    std::map<std::string, std::pair<int, int>> kinds;  ///< of each: in the group, all
};

/// Kind, place and size even over what can be: a kind first, so that those with many places do not rule.
Tally faultyUnits(const learn::CauseFinder& finder, int count, std::uint64_t seed, bool faulty, bool model) {
    std::map<FaultKind, std::vector<const learn::Fault*>> kinds;
    for (const auto& fault : finder.faults())
        if ((fault.kind != FaultKind::None) == faulty) kinds[fault.kind].push_back(&fault);
    struct One {
        bool inGroup = false, first = false, faulty = false, explained = false;
        std::size_t group = 0;
        std::string kind;
    };
    std::vector<One> all(static_cast<std::size_t>(count));
    analysis::inThreads(all.size(), 0, {}, [&] {
        return [&](std::size_t k) {
            Normals normals(seed + 977 * k);
            auto kind = kinds.begin();
            std::advance(kind, static_cast<std::ptrdiff_t>(normals.below(kinds.size())));
            const auto& fault = *kind->second[normals.below(kind->second.size())];
            const double place = normals.even() * static_cast<double>(fault.sizes.size() - 1);
            const auto before = static_cast<std::size_t>(place);
            const double share = place - static_cast<double>(before);
            const double size = share > 0
                                    ? fault.sizes[before] + share * (fault.sizes[before + 1] - fault.sizes[before])
                                    : fault.sizes[before];
            const learn::Unit unit = fault.at(drawn::unitOf(finder.variation(), normals), size);
            const auto found = finder.find(finder.measuredOf(
                unit, [&] { return normals(); }, model));
            all[k] = {
                holds(found.group, fault), found.group.front().words == fault.words, found.faulty, found.explained,
                found.group.size(),        std::string(learn::word(fault.kind))};
            if (!all[k].inGroup)
                std::cout << "unit " << k << ": " << fault.words << ", "
                          << (fault.sizeWords ? fault.sizeWords(size) : "") << "\n"
                          << learn::findingWords(found);
        };
    });
    Tally tally;
    for (const auto& one : all) {
        ++tally.units;
        tally.inGroup += one.inGroup ? 1 : 0;
        tally.first += one.first ? 1 : 0;
        tally.calledFaulty += one.faulty ? 1 : 0;
        tally.explained += one.explained ? 1 : 0;
        tally.grouped += static_cast<int>(one.group);
        auto& of = tally.kinds[one.kind];
        of.first += one.inGroup ? 1 : 0;
        ++of.second;
    }
    std::cout << tally.units << " units: " << tally.inGroup << " in the first group, " << tally.first << " first, "
              << tally.calledFaulty << " called faulty, " << tally.explained << " explained, "
              << static_cast<double>(tally.grouped) / tally.units << " causes a group of " << finder.faults().size()
              << "\n";
    for (const auto& [kind, of] : tally.kinds)
        std::cout << "  " << kind << ": " << of.first << " of " << of.second << "\n";
    return tally;
}

class Causes : public testing::TestWithParam<const char*> {};

TEST_P(Causes, AThousandFaultyUnitsHaveTheirCauseInTheFirstGroup) {
    const auto& one = finder(GetParam());
    const Tally tally = faultyUnits(one, drawn::thousand(), 1, true, true);
    EXPECT_GE(tally.inGroup, 0.95 * tally.units);
    // A group that held everything would say nothing.
    EXPECT_LT(tally.grouped, 0.4 * tally.units * static_cast<double>(one.faults().size()));
}

TEST_P(Causes, AThousandGoodUnitsAreCalledSo) {
    // A twentieth of ten units is none of them; a hundred take a second or two.
    const Tally tally = faultyUnits(finder(GetParam()), std::max(100, drawn::thousand()), 500000, false, true);
    EXPECT_LE(tally.calledFaulty, 0.05 * tally.units);
}

INSTANTIATE_TEST_SUITE_P(Demos, Causes, testing::Values("microphone-input", "direct-box", "line-unit"));

/// Without any error every fault of the nominal unit, at every size, is the likeliest or cannot be told from what is.
TEST(Cause, OfANominalUnitsFaultIsFoundAtEverySize) {
    const auto& one = finder("microphone-input");
    std::set<FaultKind> kinds;
    for (const auto& fault : one.faults()) {
        kinds.insert(fault.kind);
        for (const double size : fault.sizes) {
            const auto found = one.find(one.readingsOf(fault.at(*one.variation().base, size)));
            EXPECT_TRUE(holds(found.group, fault) || holds(found.hidden, fault)) << fault.words << " " << size << "\n"
                                                                                 << learn::findingWords(found);
            EXPECT_TRUE(found.explained) << fault.words;
        }
    }
    EXPECT_EQ(kinds.size(), 10U);
}

/// One turn short-circuited by its own resistance: the winding's impedance beside N^2 R of that turn.
TEST(Cause, AShortedTurnLoadsTheWindingByItsOwnResistance) {
    const auto& made = plans::demo("microphone-input");
    const auto& one = finder("microphone-input");
    const auto& design = *one.variation().base;
    const auto* winding = design::winding(design, "S");
    std::vector<learn::Probe> probes(3);
    probes[0].kind = learn::ProbeKind::Impedance;
    probes[1].kind = learn::ProbeKind::ImpedanceAngle;
    probes[2].kind = learn::ProbeKind::Resistance;
    for (auto& probe : probes) {
        probe.a = "S";
        probe.b = "meter";
        probe.frequency = 1000;
        probe.ports = {{"meter", winding->start, winding->finish, nullptr}};
        probe.hookUp.name = "meter";
        probe.hookUp.ports.resize(1);
        probe.hookUp.ports[0].port = "meter";
        probe.hookUp.ports[0].role = design::Role::Drive;
    }
    const auto impedance = [&](const learn::Unit& unit) {
        const auto all = learn::readings(unit, probes, demos::shopCatalog());
        return std::polar(all[0], all[1] * std::numbers::pi / 180);
    };
    const learn::Unit good{one.variation().base, {}, {}, 0, {}};
    const double r = learn::readings(good, probes, demos::shopCatalog())[2];
    const double turns = design::seriesTurns(made.design, *design::winding(made.design, "S"));
    for (const auto& fault : one.faults()) {
        if (fault.kind != FaultKind::ShortedTurn || fault.words.find("S.a") == std::string::npos) continue;
        const std::complex<double> core = impedance(good) - r, turn = turns * r;  // N^2 (R / N)
        const std::complex<double> expected = r + core * turn / (core + turn);
        const auto found = impedance(fault.at(design, 1));
        EXPECT_NEAR(std::abs(found - expected) / std::abs(expected), 0, 0.02) << found << expected;
        EXPECT_GT(std::abs(impedance(good) - found) / std::abs(found), 0.1);
    }
}

/// Turns that are missing in the second winding are missing in the ratio, and in its resistance.
TEST(Cause, MissingTurnsAreMissingInTheRatio) {
    const auto& one = finder("microphone-input");
    const auto good = one.readingsOf({one.variation().base, {}, {}, 0, {}});
    for (const auto& fault : one.faults())
        if (fault.kind == FaultKind::WrongTurns && fault.words == "section S.a with too few turns") {
            const auto bad = one.readingsOf(fault.at(*one.variation().base, 210));
            EXPECT_NEAR(bad.at("ratio.P.S") / good.at("ratio.P.S"), 0.9, 2e-3);
            EXPECT_NEAR(bad.at("dcr.S") / good.at("dcr.S"), 0.9, 0.02);
        }
}

TEST(Cause, SwappedLeadsTurnTheRatiosSign) {
    const auto& one = finder("direct-box");
    auto readings = one.readingsOf({one.variation().base, {}, {}, 0, {}});
    EXPECT_GT(readings.at("ratio.P.S"), 0);
    readings.at("ratio.P.S") *= -1;
    const auto found = one.find(readings);
    EXPECT_TRUE(found.faulty);
    for (const auto& likely : found.group)
        EXPECT_TRUE(likely.kind == FaultKind::SwappedLeads || likely.kind == FaultKind::Reversed) << likely.words;
}

/// Two windings that face each other only through an open shield see its two capacitances in series.
TEST(Cause, AnOpenShieldReadsNothingAndIsAlone) {
    const auto& one = finder("direct-box");
    for (const auto& fault : one.faults()) {
        if (fault.kind != FaultKind::OpenShield) continue;
        const auto found = one.find(one.readingsOf(fault.at(*one.variation().base, 0)));
        ASSERT_EQ(found.group.size(), 1U) << learn::findingWords(found);
        EXPECT_EQ(found.group.front().words, fault.words);
        EXPECT_EQ(found.group.front().kind, FaultKind::OpenShield);
    }
}

/// With the ratio alone a shortage of turns in one winding is a surplus in the other; their resistances part them.
TEST(Cause, FewReadingsLeaveAGroupAndNameTheNextReading) {
    const auto& one = finder("direct-box");
    learn::Readings ratio{{"ratio.P.S", one.readingsOf({one.variation().base, {}, {}, 0, {}}).at("ratio.P.S") * 1.1}};
    const auto found = one.find(ratio);
    EXPECT_TRUE(found.faulty);
    EXPECT_GE(found.group.size(), 2U);
    ASSERT_TRUE(found.next);
    EXPECT_GE(found.next->parts, 2);
    EXPECT_NE(learn::findingWords(found).find("next reading that would part them: "), std::string::npos);
}

/// Readings of good units take the model's doubt away: then less of a fault shows.
TEST(Cause, GoodUnitsSharpenTheFinding) {
    const auto& one = finder("direct-box");
    Normals normals(7);
    std::vector<learn::Readings> good;
    for (int k = 0; k < 8; ++k)
        good.push_back(one.measuredOf(
            {std::make_shared<design::Design>(drawn::unitOf(one.variation(), normals)), {}, {}, 0, {}},
            [&] { return normals(); }, false));
    std::size_t without = 0, with = 0;
    for (const auto& fault : one.faults()) {
        const auto readings = one.readingsOf(fault.at(*one.variation().base, fault.sizes.back()));
        const auto sharp = one.find(readings, good);
        EXPECT_TRUE(holds(sharp.group, fault)) << fault.words << learn::findingWords(sharp);
        without += one.find(readings).group.size();
        with += sharp.group.size();
    }
    EXPECT_LE(with, without);
}

TEST(Cause, ReadingsThatNothingMakesAreSaidToBeUnexplained) {
    const auto& one = finder("direct-box");
    auto readings = one.readingsOf({one.variation().base, {}, {}, 0, {}});
    readings.at("dcr.P") *= 3;
    readings.at("dcr.S") /= 3;
    readings.at("gain_1kHz") += 9;
    const auto found = one.find(readings);
    EXPECT_TRUE(found.faulty);
    EXPECT_FALSE(found.explained);
    EXPECT_NE(learn::findingWords(found).find("not even the likeliest"), std::string::npos);
}

TEST(Cause, ReadingsOfAnotherPlanAreRefused) {
    const auto& one = finder("direct-box");
    try {
        (void)one.find({{"dcr.X", 1}});
        FAIL();
    } catch (const units::BadInput& bad) {
        EXPECT_STREQ(
            bad.what(),
            "readings: found none that the test plan of this design names; allowed is tests by the names in its "
            "limits: dcr.P, ratio.P.S.");
    }
    const auto found = one.find({{"dcr P", 1000}, {"dcr.X", 1}});
    EXPECT_EQ(found.used, 1U);
    EXPECT_EQ(found.unknown, std::vector<std::string>{"dcr.X"});
}

}  // namespace cause_test
