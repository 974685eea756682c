// SPDX-License-Identifier: GPL-3.0-or-later
// SQLite's calls, with owners that close and statements that throw.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>

struct sqlite3;
struct sqlite3_stmt;

namespace records {

/// The records could not be read or written; `what()` is one sentence that names the file and the reason.
class RecordsFailed : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

class Statement;

/// One open database file.
class Database {
public:
    /// Opens the file, made if `create` and there is none. Waits up to ten seconds for another program's writing.
    Database(std::string path, bool create);
    ~Database();
    Database(Database&& other) noexcept;
    Database(const Database&) = delete;
    Database& operator=(const Database&) = delete;
    Database& operator=(Database&&) = delete;

    void run(const std::string& statements);
    [[nodiscard]] Statement prepared(std::string_view statement);
    [[nodiscard]] std::int64_t number(std::string_view query);  ///< the first column of its first row
    [[nodiscard]] std::int64_t lastRow() const noexcept;
    [[nodiscard]] std::int64_t changes() const noexcept;  ///< rows that the last statement wrote
    [[nodiscard]] const std::string& path() const noexcept { return path_; }
    [[nodiscard]] sqlite3* handle() noexcept { return handle_; }
    [[noreturn]] void fail(int code) const;

private:
    std::string path_;
    sqlite3* handle_ = nullptr;
};

/// A prepared statement; places are counted from 1, columns from 0.
class Statement {
public:
    Statement(Database& database, std::string_view text);
    ~Statement();
    Statement(Statement&& other) noexcept;
    Statement(const Statement&) = delete;
    Statement& operator=(const Statement&) = delete;
    Statement& operator=(Statement&&) = delete;

    Statement& bind(int place, std::string_view text);
    Statement& bind(int place, double value);
    Statement& bind(int place, std::int64_t value);
    /// True while there is a row; throws RecordsFailed.
    [[nodiscard]] bool step();
    /// Runs to its end and is ready to be bound again.
    void done();
    void reset() noexcept;
    [[nodiscard]] std::string text(int column) const;
    [[nodiscard]] double real(int column) const noexcept;
    [[nodiscard]] std::int64_t integer(int column) const noexcept;

private:
    Database* database_;
    sqlite3_stmt* handle_ = nullptr;
};

/// What is written within is there whole or not at all: undone unless `commit` was reached. Begins as a writer, so that
/// two programs wait for each other instead of failing half way.
class Transaction {
public:
    explicit Transaction(Database& database) : database_(&database) { database.run("BEGIN IMMEDIATE"); }
    ~Transaction();
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;
    void commit();

private:
    Database* database_;
};

}  // namespace records
