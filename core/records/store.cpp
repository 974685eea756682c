// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/store.h"

#include <algorithm>

#include "records/schema.h"
#include "units/joined.h"

namespace records {

namespace {

/// The conditions of a filter as SQL, and what is bound to them in that order.
struct Condition {
    std::string sql = "1";
    std::vector<std::string> bound;
    explicit Condition(const Filter& f) {
        const auto where = [&](std::string_view condition, const std::string& value) {
            if (value.empty()) return;
            sql += units::joined({" AND ", condition});
            bound.push_back(value);
        };
        where("r.part = ?", f.part);
        where("r.revision = ?", f.revision);
        where("r.serial = ?", f.serial);
        where("r.stage = ?", f.stage);
        where("r.verdict = ?", f.verdict);
        where("r.cause = ?", f.cause);
        where("r.time >= ?", f.from);
        where("r.time < ?", f.before);
        where("r.id IN (SELECT record FROM lot WHERE name = ?)", f.lot);
    }
    int bind(Statement& statement, int place = 1) const {
        for (const auto& value : bound) statement.bind(place++, std::string_view(value));
        return place;
    }
};

constexpr std::string_view columns =
    "r.id, r.part, r.revision, r.serial, r.stage, r.time, r.verdict, r.symptom, r.finding, r.cause, r.note";

UnitRecord recordOf(const Statement& row) {
    UnitRecord unit;
    int column = 1;
    for (auto* field : {&unit.part, &unit.revision, &unit.serial, &unit.stage, &unit.time, &unit.verdict, &unit.symptom,
                        &unit.finding, &unit.cause, &unit.note})
        *field = row.text(column++);
    return unit;
}

}  // namespace

Store::Store(const std::string& path, bool create) : database_(openRecords(path, create)) {}

std::int64_t Store::testId(const std::string& name, const std::string& unit) {
    auto known = tests_.find(name);
    if (known == tests_.end()) {
        auto find = database_.prepared("SELECT id, unit FROM test WHERE name = ?");
        find.bind(1, std::string_view(name));
        if (find.step()) {
            known = tests_.emplace(name, std::pair{find.integer(0), find.text(1)}).first;
        } else {
            auto insert = database_.prepared("INSERT INTO test(name, unit) VALUES(?, ?)");
            insert.bind(1, std::string_view(name)).bind(2, std::string_view(unit)).done();
            known = tests_.emplace(name, std::pair{database_.lastRow(), unit}).first;
        }
    }
    const auto& [id, stored] = known->second;
    if (stored != unit)
        throw RecordsFailed(units::joined(
            {"The unit records ", database_.path(), " have ", name, " in ", stored, ", not in ", unit, "."}));
    return id;
}

bool Store::addOne(const UnitRecord& unit) {
    auto insert = database_.prepared(
        "INSERT INTO record(part, revision, serial, stage, time, verdict, symptom, finding, cause, note)"
        " VALUES(?, ?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING");
    int place = 1;
    for (const auto* field : {&unit.part, &unit.revision, &unit.serial, &unit.stage, &unit.time, &unit.verdict,
                              &unit.symptom, &unit.finding, &unit.cause, &unit.note})
        insert.bind(place++, std::string_view(*field));
    insert.done();
    if (database_.changes() == 0) return false;
    const std::int64_t id = database_.lastRow();
    const auto addNamed = [&](std::string_view table, const std::vector<Named>& all) {
        if (all.empty()) return;
        auto add = database_.prepared(
            units::joined({"INSERT OR REPLACE INTO ", table, "(record, what, name) VALUES(?, ?, ?)"}));
        for (const Named& one : all)
            add.bind(1, id).bind(2, std::string_view(one.what)).bind(3, std::string_view(one.name)).done();
    };
    addNamed("lot", unit.lots);
    addNamed("initials", unit.initials);
    auto add = database_.prepared("INSERT OR REPLACE INTO reading(record, test, value) VALUES(?, ?, ?)");
    for (const Reading& reading : unit.readings)
        add.bind(1, id).bind(2, testId(reading.test, reading.unit)).bind(3, reading.value).done();
    return true;
}

Store::Added Store::add(const std::vector<UnitRecord>& units, std::size_t batch,
                        const std::function<void(std::size_t)>& committed) {
    Added all;
    for (std::size_t from = 0; from < units.size(); from += batch) {
        Transaction transaction(database_);
        tests_.clear();  // of a batch that was undone, or other programs' meanwhile
        const std::size_t to = std::min(units.size(), from + batch);
        for (std::size_t k = from; k < to; ++k) ++(addOne(units[k]) ? all.added : all.known);
        transaction.commit();
        if (committed) committed(to);
    }
    return all;
}

void Store::readParts(std::int64_t id, UnitRecord& into) {
    for (auto [table, to] : {std::pair{"lot", &into.lots}, std::pair{"initials", &into.initials}}) {
        auto rows =
            database_.prepared(units::joined({"SELECT what, name FROM ", table, " WHERE record = ? ORDER BY what"}));
        rows.bind(1, id);
        while (rows.step()) to->push_back({rows.text(0), rows.text(1)});
    }
    auto rows = database_.prepared(
        "SELECT t.name, t.unit, g.value FROM reading g JOIN test t ON t.id = g.test WHERE g.record = ? ORDER BY t.id");
    rows.bind(1, id);
    while (rows.step()) into.readings.push_back({rows.text(0), rows.text(1), rows.real(2)});
}

std::vector<UnitRecord> Store::find(const Filter& filter, std::size_t limit) {
    const Condition condition(filter);
    auto rows = database_.prepared(
        units::joined({"SELECT ", columns, " FROM record r WHERE ", condition.sql, " ORDER BY r.time, r.id LIMIT ?"}));
    const int next = condition.bind(rows);
    rows.bind(next, static_cast<std::int64_t>(limit));
    std::vector<UnitRecord> found;
    while (rows.step()) {
        found.push_back(recordOf(rows));
        readParts(rows.integer(0), found.back());
    }
    return found;
}

std::vector<std::int64_t> Store::numbers(const Filter& filter) {
    const Condition condition(filter);
    auto rows = database_.prepared(
        units::joined({"SELECT r.id FROM record r WHERE ", condition.sql, " ORDER BY r.time DESC, r.id DESC"}));
    condition.bind(rows);
    std::vector<std::int64_t> all;
    while (rows.step()) all.push_back(rows.integer(0));
    return all;
}

UnitRecord Store::record(std::int64_t number) {
    auto row = database_.prepared(units::joined({"SELECT ", columns, " FROM record r WHERE r.id = ?"}));
    row.bind(1, number);
    if (!row.step())
        throw RecordsFailed(
            units::joined({"The unit records ", database_.path(), " have no record ", std::to_string(number), "."}));
    UnitRecord unit = recordOf(row);
    readParts(number, unit);
    return unit;
}

Counts Store::count(const Filter& filter) {
    const Condition condition(filter);
    auto rows = database_.prepared(
        units::joined({"SELECT r.verdict, count(*) FROM record r WHERE ", condition.sql, " GROUP BY r.verdict"}));
    condition.bind(rows);
    Counts counts;
    while (rows.step()) {
        const auto units = static_cast<std::size_t>(rows.integer(1));
        counts.units += units;
        if (rows.text(0) == "pass") counts.passed += units;
        if (rows.text(0) == "fail") counts.failed += units;
    }
    return counts;
}

std::vector<std::pair<std::string, std::string>> Store::tests(const Filter& filter) {
    const Condition condition(filter);
    // A test is looked for among the records meant until one is found, not counted.
    auto rows = database_.prepared(
        units::joined({"SELECT t.name, t.unit FROM test t WHERE EXISTS(SELECT 1 FROM record r JOIN reading g ON"
                       " g.record = r.id AND g.test = t.id WHERE ",
                       condition.sql, ") ORDER BY t.id"}));
    condition.bind(rows);
    std::vector<std::pair<std::string, std::string>> all;
    while (rows.step()) all.emplace_back(rows.text(0), rows.text(1));
    return all;
}

Series Store::series(const std::string& test, const Filter& filter) {
    const Condition condition(filter);
    auto rows = database_.prepared(
        units::joined({"SELECT r.serial, r.time, g.value, t.unit FROM record r JOIN reading g ON g.record = r.id JOIN"
                       " test t ON t.id = g.test WHERE ",
                       condition.sql, " AND t.name = ? ORDER BY r.time, r.id"}));
    const int next = condition.bind(rows);
    rows.bind(next, std::string_view(test));
    Series series;
    while (rows.step()) {
        series.serials.push_back(rows.text(0));
        series.times.push_back(rows.text(1));
        series.values.push_back(rows.real(2));
        series.unit = rows.text(3);
    }
    return series;
}

std::vector<std::pair<std::string, std::size_t>> Store::causes(const Filter& filter) {
    Filter failed = filter;
    failed.verdict = "fail";
    const Condition condition(failed);
    auto rows = database_.prepared(
        units::joined({"SELECT r.cause, count(*) FROM record r WHERE ", condition.sql, " GROUP BY r.cause"}));
    condition.bind(rows);
    std::vector<std::pair<std::string, std::size_t>> all;
    while (rows.step()) all.emplace_back(rows.text(0), static_cast<std::size_t>(rows.integer(1)));
    return all;
}

}  // namespace records
