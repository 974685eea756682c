// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/schema.h"

#include <fcntl.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <system_error>

#include "units/fault.h"
#include "units/joined.h"

namespace records {

namespace {

/// Step k makes version k + 1 from version k.
constexpr std::array<const char*, schemaVersion> steps{
    // Records, readings by test, lots and initials. Readings lie by unit; `reading_of_test` holds a chart's values.
    "CREATE TABLE record(id INTEGER PRIMARY KEY, part TEXT NOT NULL, revision TEXT NOT NULL, serial TEXT NOT NULL,"
    " stage TEXT NOT NULL, time TEXT NOT NULL, verdict TEXT NOT NULL, note TEXT NOT NULL,"
    " UNIQUE(part, serial, stage, time));"
    "CREATE TABLE test(id INTEGER PRIMARY KEY, name TEXT NOT NULL, unit TEXT NOT NULL, UNIQUE(name));"
    "CREATE TABLE reading(record INTEGER NOT NULL REFERENCES record, test INTEGER NOT NULL REFERENCES test,"
    " value REAL NOT NULL, PRIMARY KEY(record, test)) WITHOUT ROWID;"
    "CREATE TABLE lot(record INTEGER NOT NULL REFERENCES record, what TEXT NOT NULL, name TEXT NOT NULL,"
    " PRIMARY KEY(record, what)) WITHOUT ROWID;"
    "CREATE TABLE initials(record INTEGER NOT NULL REFERENCES record, what TEXT NOT NULL, name TEXT NOT NULL,"
    " PRIMARY KEY(record, what)) WITHOUT ROWID;"
    "CREATE INDEX record_time ON record(part, time);"
    "CREATE INDEX record_serial ON record(serial);"
    "CREATE INDEX record_verdict ON record(verdict, part, time);"
    "CREATE INDEX lot_name ON lot(name);"
    "CREATE INDEX reading_of_test ON reading(test, record, value);",
    // Returns: what the customer saw, what was found, and why.
    "ALTER TABLE record ADD COLUMN symptom TEXT NOT NULL DEFAULT '';"
    "ALTER TABLE record ADD COLUMN finding TEXT NOT NULL DEFAULT '';"
    "ALTER TABLE record ADD COLUMN cause TEXT NOT NULL DEFAULT '';"
    "CREATE INDEX record_cause ON record(cause, part) WHERE cause <> '';"};

[[noreturn]] void refuse(const std::string& path, std::string found) {
    units::refuse(path, std::move(found), "a file of unit records, as units import makes it");
}

namespace fs = std::filesystem;

/// Looks at the head without SQLite, which would make or change a file. True if there is nothing yet.
bool isNew(const std::string& path, bool create) {
    std::error_code error;
    const auto status = fs::status(path, error);
    if (!fs::exists(status)) {
        if (create) return true;
        refuse(path, "no such file");
    }
    if (!fs::is_regular_file(status)) refuse(path, fs::is_directory(status) ? "a folder" : "no regular file");
    constexpr std::string_view head("SQLite format 3\0", 16);
    std::string found(head.size(), ' ');
    std::ifstream file(path, std::ios::binary);
    if (!file) refuse(path, "a file that cannot be read");
    file.read(found.data(), static_cast<std::streamsize>(found.size()));
    if (!file || found != head) refuse(path, "a file of another kind");
    return false;
}

/// Steps in one transaction; another program that comes at the same time waits and finds them done.
void upgrade(Database& database) {
    Transaction transaction(database);
    const std::int64_t from = database.number("PRAGMA user_version");
    for (auto k = from; k < schemaVersion; ++k) database.run(steps[static_cast<std::size_t>(k)]);
    database.run(units::joined({"PRAGMA application_id = ", std::to_string(applicationId),
                                "; PRAGMA user_version = ", std::to_string(schemaVersion)}));
    transaction.commit();
}

/// A new file is made beside its place and put there whole, never over another: two programs that make it at once, or
/// one that is killed, leave a sound one. If another was quicker, its file stays.
void make(const std::string& path) {
    const std::string part = units::joined({path, ".part-", std::to_string(::getpid())});
    {
        Database fresh(part, true);
        fresh.run("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL");
        upgrade(fresh);
    }
    const bool put = ::renameat2(AT_FDCWD, part.c_str(), AT_FDCWD, path.c_str(), RENAME_NOREPLACE) == 0;
    const int error = put ? 0 : errno;
    if (!put) std::remove(part.c_str());
    if (!put && error != EEXIST)
        throw RecordsFailed(units::joined(
            {"The unit records ", path, " cannot be made: ", std::generic_category().message(error), "."}));
}

}  // namespace

Database openRecords(const std::string& path, bool create) {
    if (isNew(path, create)) make(path);
    Database database(path, false);
    const std::int64_t version = database.number("PRAGMA user_version");
    if (database.number("PRAGMA application_id") != applicationId) refuse(path, "somebody else's database");
    if (version > schemaVersion || version < 1)
        units::refuse(
            path, units::joined({"unit records of version ", std::to_string(version)}),
            units::joined({"version 1 to ", std::to_string(schemaVersion), "; open it with the program that made it"}));
    // Readers go on while one writes; what was committed survives the program and, flushed, the machine.
    database.run("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON");
    if (version < schemaVersion) upgrade(database);
    return database;
}

std::string schemaOf(std::int64_t version) {
    std::string all;
    for (std::size_t k = 0; k < static_cast<std::size_t>(version); ++k) all += steps.at(k);
    return all + units::joined({"PRAGMA application_id = ", std::to_string(applicationId),
                                "; PRAGMA user_version = ", std::to_string(version), ";"});
}

}  // namespace records
