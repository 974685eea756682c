// SPDX-License-Identifier: GPL-3.0-or-later
// Revisions kept beside a design's file: reopened with their figures, never altered, checked before a repeat order.
#include "exchange/revision_store.h"

#include <gtest/gtest.h>
#include <sys/stat.h>

#include <cmath>
#include <filesystem>

#include "analysis/repeat_order.h"
#include "analysis/reproduction.h"
#include "design/edit.h"
#include "exchange/design_json.h"
#include "exchange/load_catalog.h"
#include "exchange/read_file.h"
#include "exchange/write_file.h"

namespace revision_store_test {

const std::string demo = COILWRIGHT_SOURCE_DIR "/demo-projects/microphone-input/microphone-input.coilwright";

const catalog::Catalog& shop() {
    static const catalog::Catalog all = exchange::loadCatalog({COILWRIGHT_SOURCE_DIR "/resources"});
    return all;
}

class RevisionStore : public testing::Test {
protected:
    RevisionStore() {
        std::filesystem::remove_all(folder);
        std::filesystem::create_directories(folder);
        exchange::writeFile(path, exchange::writeDesign(*start, shop()));
    }
    ~RevisionStore() override { std::filesystem::remove_all(folder); }

    static std::vector<units::Figure> figures(const design::Design& d, const catalog::Catalog& with = shop()) {
        return analysis::answer(d, with)->figures;
    }
    design::Register keep(const design::Design& d, const std::string& reason,
                          const std::vector<units::Figure>& with = {}) {
        return exchange::keepRevision(path, d, shop(), with, {"2026-11-25", reason, "test", ""});
    }
    static design::DesignPtr withTurns(const design::Design& d, double turns, const std::string& mark) {
        return design::changed(d, [&](design::Design& c) {
            c.coil[0].order[0].section()->turns = turns;
            c.revision = mark;
        });
    }
    [[nodiscard]] std::string inside(const std::string& name) const { return folder + "/unit.revisions/" + name; }

    std::string folder =
        testing::TempDir() + "revision_store_" + testing::UnitTest::GetInstance()->current_test_info()->name();
    std::string path = folder + "/unit.coilwright";
    design::DesignPtr start = exchange::readDesign(exchange::readFile(demo), demo, shop()).design;
};

TEST_F(RevisionStore, EachOpensAgainWithItsVeryDesignAndFigures) {
    EXPECT_TRUE(exchange::readRegister(path).revisions.empty());
    keep(*start, "first", figures(*start));
    const auto more = withTurns(*start, 200, "B");
    keep(*more, "more turns", figures(*more));
    const auto all = exchange::readRegister(path);
    ASSERT_EQ(all.revisions.size(), 2u);
    EXPECT_EQ(all.revisions[1].reason, "more turns");
    EXPECT_EQ(all.revisions[1].mark, "B");
    for (int number : {1, 2}) {
        const auto kept = exchange::openRevision(path, number, shop());
        EXPECT_EQ(exchange::digestOf(*kept.design, shop()), kept.entry.digest);
        ASSERT_GT(kept.figures.size(), 20u);
        const auto now = figures(*kept.design);
        ASSERT_EQ(now.size(), kept.figures.size());
        for (std::size_t i = 0; i < now.size(); ++i)
            EXPECT_TRUE(now[i].value == kept.figures[i].value || std::isnan(kept.figures[i].value))
                << now[i].name << ": bit by bit";
        EXPECT_TRUE(analysis::moved(kept.figures, now).empty());
    }
}

TEST_F(RevisionStore, ReproducesWithTheMaterialsStoredInItAlthoughTheCatalogMovedOn) {
    keep(*start, "first", figures(*start));
    catalog::Catalog later = shop();
    ASSERT_FALSE(start->windings[0].wire.key.empty());
    later.wires.erase(start->windings[0].wire.key);
    for (auto& [key, alloy] : later.alloys) alloy.initialPermeability = alloy.initialPermeability.value * 1.5;
    const auto kept = exchange::openRevision(path, 1, later);
    EXPECT_TRUE(analysis::moved(kept.figures, figures(*kept.design, later)).empty());
    const auto today = design::takeTodaysParts(*kept.design, later);
    const auto moved = analysis::moved(kept.figures, figures(*today, later));
    ASSERT_FALSE(moved.empty());
    const auto inductance = std::find_if(
        moved.begin(), moved.end(), [](const analysis::Moved& m) { return m.name.starts_with("inductance_10Hz"); });
    ASSERT_NE(inductance, moved.end());
    EXPECT_GT(inductance->share(), 0.01);
    EXPECT_NE(analysis::sentence(*inductance).find(" → "), std::string::npos);
    EXPECT_TRUE(
        std::none_of(moved.begin(), moved.end(), [](const analysis::Moved& m) { return m.name.starts_with("ratio"); }));
}

TEST_F(RevisionStore, AKeptFileIsReadOnlyAndAnAlterationIsFound) {
    keep(*start, "first");
    struct stat entry {};
    for (const char* name : {"1.coilwright", "1.figures.json"}) {
        ASSERT_EQ(::stat(inside(name).c_str(), &entry), 0);
        EXPECT_EQ(entry.st_mode & 0222, 0u) << name;
    }
    std::filesystem::remove(inside("1.coilwright"));
    exchange::writeFile(inside("1.coilwright"), exchange::writeDesign(*withTurns(*start, 7, "A"), shop()));
    try {
        (void)exchange::openRevision(path, 1, shop());
        FAIL() << "an altered revision was opened";
    } catch (const units::BadInput& bad) {
        EXPECT_NE(std::string(bad.what()).find("the file was altered"), std::string::npos) << bad.what();
    }
}

TEST_F(RevisionStore, WhatIsRefusedLeavesTheRegisterAsItWas) {
    auto all = keep(*start, "first");
    exchange::writeRegister(path, design::withStep(all, 1, {design::Issue::Sample, "2026-11-25", "", "", {}}));
    const std::string before = exchange::readFile(inside("register.json"));
    EXPECT_THROW(keep(*withTurns(*start, 200, start->revision), "under an issued mark"), units::BadInput);
    EXPECT_THROW(keep(*withTurns(*start, 200, "Z"), ""), units::BadInput);
    EXPECT_THROW((void)exchange::openRevision(path, 2, shop()), units::BadInput);
    EXPECT_EQ(exchange::readFile(inside("register.json")), before);
}

TEST_F(RevisionStore, ADamagedRegisterSaysWhere) {
    keep(*start, "first");
    exchange::writeFile(inside("register.json"), R"({"register": 2})");
    EXPECT_THROW((void)exchange::readRegister(path), units::BadInput);
    exchange::writeFile(inside("register.json"), R"({"register": 1, "revisions": [{"number": 1}]})");
    try {
        (void)exchange::readRegister(path);
        FAIL();
    } catch (const units::BadInput& bad) {
        EXPECT_NE(std::string(bad.what()).find("/revisions/0/date"), std::string::npos) << bad.what();
    }
}

TEST_F(RevisionStore, ARepeatOrderNamesWhatCannotBeHadAndRanksWhatStandsIn) {
    const auto stored = design::withStoredParts(*start, shop());
    const auto now = analysis::answer(*stored, shop());
    for (const analysis::Material& m : analysis::repeatOrder(*stored, shop(), now))
        EXPECT_EQ(m.supply, analysis::Supply::Current) << m.key;
    const std::string wire = start->windings.back().wire.key, alloy = start->core.stack[0].alloy.key;
    catalog::Catalog later = shop();
    later.wires.at(wire).standing = catalog::Standing::Retired;
    later.alloys.at(alloy).initialPermeability = later.alloys.at(alloy).initialPermeability.value * 0.7;
    bool wireSeen = false, alloySeen = false;
    for (const analysis::Material& m : analysis::repeatOrder(*stored, later, now)) {
        if (m.key == alloy) {
            alloySeen = true;
            EXPECT_EQ(m.supply, analysis::Supply::Replaced);
            EXPECT_FALSE(m.standIns.empty()) << "the same alloy with today's numbers stands in";
        }
        if (m.key != wire) continue;
        wireSeen = true;
        EXPECT_EQ(m.supply, analysis::Supply::Retired);
        ASSERT_FALSE(m.standIns.empty());
        for (std::size_t k = 0; k < m.standIns.size(); ++k) {
            EXPECT_NE(m.standIns[k].key, wire);
            EXPECT_LE(m.standIns[k > 0 ? k - 1 : 0].worst(), m.standIns[k].worst());
        }
        // The move of a promise is that of the answer with the stand-in.
        const auto& first = m.standIns.front();
        const auto then = analysis::answer(*first.design, later);
        for (const auto& move : first.moves)
            EXPECT_TRUE(std::any_of(then->promises.begin(), then->promises.end(),
                                    [&](const auto& p) { return p.text == move.text && p.standing == move.after; }));
    }
    EXPECT_TRUE(wireSeen && alloySeen);
}

}  // namespace revision_store_test
