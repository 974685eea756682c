// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/schema.h"

#include <array>
#include <filesystem>
#include <fstream>

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
    throw units::BadInput(units::Fault{path, std::move(found), "a file of unit records, as units import makes it"});
}

/// Looks at the head without SQLite, which would make or change a file.
void checkFile(const std::string& path, bool create) {
    namespace fs = std::filesystem;
    std::error_code error;
    const auto status = fs::status(path, error);
    if (!fs::exists(status)) {
        if (create) return;
        refuse(path, "no such file");
    }
    if (!fs::is_regular_file(status)) refuse(path, fs::is_directory(status) ? "a folder" : "no regular file");
    if (fs::file_size(path, error) == 0 && create) return;
    constexpr std::string_view head("SQLite format 3\0", 16);
    std::string found(head.size(), ' ');
    std::ifstream file(path, std::ios::binary);
    if (!file) refuse(path, "a file that cannot be read");
    file.read(found.data(), static_cast<std::streamsize>(found.size()));
    if (!file || found != head) refuse(path, "a file of another kind");
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

}  // namespace

Database openRecords(const std::string& path, bool create) {
    checkFile(path, create);
    Database database(path, create);
    const std::int64_t id = database.number("PRAGMA application_id"), version = database.number("PRAGMA user_version");
    const bool blank = id == 0 && version == 0 && database.number("SELECT count(*) FROM sqlite_schema") == 0;
    if (!blank && id != applicationId) refuse(path, "somebody else's database");
    if (blank && !create) refuse(path, "an empty database");
    if (version > schemaVersion || version < 0)
        throw units::BadInput(units::Fault{path, units::joined({"unit records of version ", std::to_string(version)}),
                                           units::joined({"version 1 to ", std::to_string(schemaVersion),
                                                          "; open it with the program that made it"})});
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
