// SPDX-License-Identifier: GPL-3.0-or-later
// Records written, asked for, copied, brought up from an older version, and files of other kinds refused untouched.
#include "records/store.h"

#include <gtest/gtest.h>

#include <fstream>

#include "made_units.h"
#include "records/schema.h"
#include "units/fault.h"

namespace store_test {

using records::Filter;
using records::Store;

std::string bytesOf(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

std::string sentenceOf(const std::string& path, bool create = false) {
    try {
        Store store(path, create);
    } catch (const units::BadInput& bad) {
        return bad.what();
    }
    return "opened";
}

class StoreTest : public testing::Test {
protected:
    made::Folder folder;
    std::string file = folder.in("u.records");
};

TEST_F(StoreTest, WhatWasAddedIsFoundAgainWhole) {
    const auto units = made::units(0, 30);
    EXPECT_EQ(Store(file, true).add(units, 7).added, 30U);
    Store store(file);
    EXPECT_EQ(store.find({}).size(), 30U);
    Filter one;
    one.serial = "S12";
    EXPECT_EQ(store.find(one), std::vector{units[12]});
    EXPECT_EQ(store.find({}, 5).size(), 5U);
    EXPECT_EQ(store.tests({}), (std::vector<std::pair<std::string, std::string>>{
                                   {"dcr P", "ohm"}, {"ratio", ""}, {"inductance P", "H"}, {"thd 20 Hz", "%"}}));
    const auto series = store.series("dcr P", {});
    ASSERT_EQ(series.values.size(), 30U);
    EXPECT_EQ(series.unit, "ohm");
    EXPECT_EQ(series.values[12], units[12].readings[0].value);
    EXPECT_EQ(series.serials[12], "S12");
}

TEST_F(StoreTest, RecordsAreNumberedNewestFirstAndReadOneByOne) {
    const auto units = made::units(0, 30);
    Store store(file, true);
    store.add(units);
    const auto numbers = store.numbers({});
    ASSERT_EQ(numbers.size(), units.size());
    for (std::size_t k = 0; k < numbers.size(); ++k) EXPECT_EQ(store.record(numbers[k]), units[units.size() - 1 - k]);
    Filter part;
    part.part = "T-2";
    const auto few = store.numbers(part);
    ASSERT_EQ(few.size(), 6U);
    EXPECT_EQ(store.record(few.front()), units[27]);
    EXPECT_EQ(store.record(few.back()), units[2]);
    EXPECT_THROW((void)store.record(1 << 20), records::RecordsFailed);
}

TEST_F(StoreTest, ARecordThatIsThereIsLeftAsItIs) {
    auto units = made::units(0, 10);
    Store store(file, true);
    store.add(units);
    units[3].verdict = "";
    units[4].stage = "return";
    units[4].symptom = "hum";
    units[4].finding = "shield open";
    const auto again = store.add(units);
    EXPECT_EQ(again.added, 1U);
    EXPECT_EQ(again.known, 9U);
    Filter returned;
    returned.stage = "return";
    ASSERT_EQ(store.find(returned).size(), 1U);
    EXPECT_EQ(store.find(returned)[0].finding, "shield open");
    EXPECT_EQ(store.count({}).units, 11U);
}

TEST_F(StoreTest, ATestKeepsItsUnit) {
    auto units = made::units(0, 2);
    Store store(file, true);
    store.add({units[0]});
    units[1].readings[0].unit = "V";
    try {
        store.add({units[1]});
        FAIL();
    } catch (const records::RecordsFailed& failed) {
        EXPECT_EQ(std::string(failed.what()), "The unit records " + file + " have dcr P in ohm, not in V.");
    }
    EXPECT_EQ(store.count({}).units, 1U) << "the batch is undone whole";
}

TEST_F(StoreTest, TextThatLooksLikeSqlIsText) {
    auto units = made::units(0, 1);
    units[0].serial = "'; DROP TABLE record; --";
    units[0].note = std::string("a\0b", 3);
    Store store(file, true);
    store.add(units);
    Filter same;
    same.serial = units[0].serial;
    EXPECT_EQ(store.find(same), units);
}

TEST_F(StoreTest, ACopyIsWholeAndOneFile) {
    Store store(file, true);
    store.add(made::units(0, 40));
    std::ofstream(folder.in("copy")) << "an older copy";
    store.backup(folder.in("copy"));
    store.add(made::units(40, 5));
    EXPECT_EQ(Store(folder.in("copy")).find({}), std::vector(store.find({}, 40)));
    store.backup(folder.in("copy"));
    EXPECT_EQ(Store(folder.in("copy")).count({}).units, 45U);
    EXPECT_THROW(store.backup(folder.in("none/copy")), records::RecordsFailed);
}

TEST_F(StoreTest, FilesOfOtherKindsAreRefusedUntouched) {
    const std::string allowed = "; allowed is a file of unit records, as units import makes it.";
    EXPECT_EQ(sentenceOf(file), file + ": found no such file" + allowed);
    EXPECT_FALSE(std::filesystem::exists(file));
    EXPECT_EQ(sentenceOf(folder.in(".")), folder.in(".") + ": found a folder" + allowed);
    std::ofstream(folder.in("text")) << "a text that is longer than the head of a database";
    for (const bool create : {false, true})
        EXPECT_EQ(sentenceOf(folder.in("text"), create),
                  folder.in("text") + ": found a file of another kind" + allowed);
    EXPECT_EQ(bytesOf(folder.in("text")), "a text that is longer than the head of a database");
    {
        records::Database other(folder.in("other"), true);
        other.run("CREATE TABLE record(id)");
    }
    const std::string before = bytesOf(folder.in("other"));
    for (const bool create : {false, true})
        EXPECT_EQ(sentenceOf(folder.in("other"), create),
                  folder.in("other") + ": found somebody else's database" + allowed);
    EXPECT_EQ(bytesOf(folder.in("other")), before);
    std::ofstream(folder.in("cut"), std::ios::binary) << bytesOf(folder.in("other")).substr(0, 300);
    EXPECT_ANY_THROW(Store(folder.in("cut"), true));
    EXPECT_EQ(bytesOf(folder.in("cut")).size(), 300U);
}

TEST_F(StoreTest, ANewerVersionIsRefusedAndAnOlderBroughtUp) {
    {
        records::Database newer(folder.in("newer"), true);
        newer.run(records::schemaOf(records::schemaVersion));
        newer.run("PRAGMA user_version = 99");
    }
    EXPECT_EQ(sentenceOf(folder.in("newer")),
              folder.in("newer") +
                  ": found unit records of version 99; allowed is version 1 to 2; open it with the "
                  "program that made it.");
    {
        records::Database older(file, true);
        older.run(records::schemaOf(1));
        older.run(
            "INSERT INTO record(part, revision, serial, stage, time, verdict, note)"
            " VALUES('T', 'A', 'S1', 'wound', '2026-01-01', 'fail', 'n')");
    }
    Store store(file);
    const auto found = store.find({});
    ASSERT_EQ(found.size(), 1U);
    EXPECT_EQ(found[0].note, "n");
    EXPECT_EQ(found[0].cause, "");
    EXPECT_EQ(store.add(made::units(0, 3)).added, 3U);
    records::Database now(file, false), fresh(folder.in("fresh"), true);
    fresh.run(records::schemaOf(records::schemaVersion));
    EXPECT_EQ(now.number("PRAGMA user_version"), records::schemaVersion);
    const auto tables = [](records::Database& of) {
        std::string all;
        auto rows = of.prepared("SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name");
        while (rows.step()) all += rows.text(0) + "\n";
        return all;
    };
    EXPECT_EQ(tables(now), tables(fresh));
}

TEST_F(StoreTest, OneReadsWhileAnotherWrites) {
    Store writer(file, true);
    writer.add(made::units(0, 10));
    Store reader(file);
    records::Database other(file, false);
    records::Transaction open(other);
    other.run("DELETE FROM record WHERE serial = 'S1'");
    EXPECT_EQ(reader.count({}).units, 10U) << "what is not committed is not seen, and nobody waits";
}

}  // namespace store_test
