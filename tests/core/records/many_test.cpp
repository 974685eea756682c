// SPDX-License-Identifier: GPL-3.0-or-later
// Many records: every filter gives what a walk over all of them gives. Times are told, not judged.
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>

#include "made_units.h"
#include "records/store.h"

namespace many_test {

class Timed {
public:
    explicit Timed(const char* what) : what_(what), from_(std::chrono::steady_clock::now()) {}
    ~Timed() {
        const std::chrono::duration<double, std::milli> took = std::chrono::steady_clock::now() - from_;
        std::printf("  %s: %.1f ms\n", what_, took.count());
    }
    Timed(const Timed&) = delete;
    Timed& operator=(const Timed&) = delete;

private:
    const char* what_;
    std::chrono::steady_clock::time_point from_;
};

TEST(Many, FiltersAgreeWithAWalkOverAllRecords) {
    const int count = made::full() ? 100000 : 1000;
    const made::Folder folder;
    const auto units = made::units(0, count);
    {
        const Timed timed("import");
        EXPECT_EQ(records::Store(folder.in("u.records"), true).add(units).added, units.size());
    }
    std::optional<records::Store> store;
    {
        const Timed timed("opening");
        store.emplace(folder.in("u.records"));
    }
    const auto walked = [&](const auto& meant) {
        return static_cast<std::size_t>(std::count_if(units.begin(), units.end(), meant));
    };
    const auto expectCount = [&](const char* what, const records::Filter& filter, const auto& meant) {
        const Timed timed(what);
        EXPECT_EQ(store->count(filter).units, walked(meant)) << what;
    };
    records::Filter failed, day, lot, caused;
    failed.part = "T-3";
    failed.verdict = "fail";
    day.part = "T-1";
    day.from = "2026-01-02";
    day.before = "2026-01-03";
    lot.lot = "L1";
    caused.cause = "gap";
    expectCount("failures of a part", failed, [](const auto& u) { return u.part == "T-3" && u.verdict == "fail"; });
    expectCount("a part's day", day,
                [&](const auto& u) { return u.part == "T-1" && u.time >= day.from && u.time < day.before; });
    expectCount("a lot", lot, [](const auto& u) { return u.lots[0].name == "L1"; });
    expectCount("a cause", caused, [](const auto& u) { return u.cause == "gap"; });
    {
        const Timed timed("all by verdict");
        EXPECT_EQ(store->count({}).failed, walked([](const auto& u) { return u.verdict == "fail"; }));
    }
    {
        const Timed timed("one serial with its readings");
        records::Filter serial;
        serial.serial = "S777";
        EXPECT_EQ(store->find(serial), std::vector{units[777]});
    }
    {
        const Timed timed("the first thousand of a part, with readings");
        records::Filter part;
        part.part = "T-2";
        EXPECT_EQ(store->find(part).size(), std::min<std::size_t>(1000, units.size() / 5));
    }
    records::Filter part;
    part.part = "T-2";
    {
        const Timed timed("a part's chart");
        EXPECT_EQ(store->series("inductance P", part).values.size(), units.size() / 5);
    }
    {
        const Timed timed("a chart of all");
        EXPECT_EQ(store->series("inductance P", {}).values.size(), units.size());
    }
    {
        const Timed timed("numbers of all, newest first");
        EXPECT_EQ(store->numbers({}).size(), units.size());
    }
    {
        const Timed timed("tests and causes of a part");
        EXPECT_EQ(store->tests(part).size(), 4U);
        EXPECT_LE(store->causes(part).size(), 2U);
    }
}

}  // namespace many_test
