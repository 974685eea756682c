// SPDX-License-Identifier: GPL-3.0-or-later
#include "records/database.h"

#include <sqlite3.h>

#include <utility>

#include "units/joined.h"

namespace records {

namespace {

constexpr int patience = 10000;  // ms

}  // namespace

Database::Database(std::string path, bool create) : path_(std::move(path)) {
    const int flags = SQLITE_OPEN_READWRITE | SQLITE_OPEN_NOMUTEX | (create ? SQLITE_OPEN_CREATE : 0);
    const int code = sqlite3_open_v2(path_.c_str(), &handle_, flags, nullptr);
    if (code != SQLITE_OK) {
        const std::string reason = handle_ != nullptr ? sqlite3_errmsg(handle_) : sqlite3_errstr(code);
        sqlite3_close(handle_);
        handle_ = nullptr;
        throw RecordsFailed(units::joined({"The unit records ", path_, " cannot be opened: ", reason, "."}));
    }
    sqlite3_busy_timeout(handle_, patience);
}

Database::~Database() {
    sqlite3_close(handle_);
}

Database::Database(Database&& other) noexcept
    : path_(std::move(other.path_)), handle_(std::exchange(other.handle_, nullptr)) {}

void Database::fail(int code) const {
    const std::string reason = code == SQLITE_BUSY   ? "another program is writing them"
                               : code == SQLITE_FULL ? "no room is left"
                                                     : sqlite3_errmsg(handle_);
    throw RecordsFailed(units::joined({"The unit records ", path_, " cannot be used: ", reason, "."}));
}

void Database::run(const std::string& statements) {
    if (const int code = sqlite3_exec(handle_, statements.c_str(), nullptr, nullptr, nullptr); code != SQLITE_OK)
        fail(code);
}

Statement Database::prepared(std::string_view statement) {
    return {*this, statement};
}

std::int64_t Database::number(std::string_view query) {
    Statement statement(*this, query);
    return statement.step() ? statement.integer(0) : 0;
}

std::int64_t Database::lastRow() const noexcept {
    return sqlite3_last_insert_rowid(handle_);
}

std::int64_t Database::changes() const noexcept {
    return sqlite3_changes64(handle_);
}

Statement::Statement(Database& database, std::string_view text) : database_(&database) {
    const int code =
        sqlite3_prepare_v2(database.handle(), text.data(), static_cast<int>(text.size()), &handle_, nullptr);
    if (code != SQLITE_OK) database.fail(code);
}

Statement::~Statement() {
    sqlite3_finalize(handle_);
}

Statement::Statement(Statement&& other) noexcept
    : database_(other.database_), handle_(std::exchange(other.handle_, nullptr)) {}

Statement& Statement::bind(int place, std::string_view text) {
    // An empty view may have no address, which SQLite would take for NULL.
    const char* data = text.empty() ? "" : text.data();
    const int code = sqlite3_bind_text64(handle_, place, data, text.size(), SQLITE_TRANSIENT, SQLITE_UTF8);
    if (code != SQLITE_OK) database_->fail(code);
    return *this;
}

Statement& Statement::bind(int place, double value) {
    if (const int code = sqlite3_bind_double(handle_, place, value); code != SQLITE_OK) database_->fail(code);
    return *this;
}

Statement& Statement::bind(int place, std::int64_t value) {
    if (const int code = sqlite3_bind_int64(handle_, place, value); code != SQLITE_OK) database_->fail(code);
    return *this;
}

bool Statement::step() {
    const int code = sqlite3_step(handle_);
    if (code != SQLITE_ROW && code != SQLITE_DONE) {
        sqlite3_reset(handle_);
        database_->fail(code);
    }
    return code == SQLITE_ROW;
}

void Statement::done() {
    while (step()) {
    }
    reset();
}

void Statement::reset() noexcept {
    sqlite3_reset(handle_);
}

std::string Statement::text(int column) const {
    const auto* bytes = reinterpret_cast<const char*>(sqlite3_column_text(handle_, column));
    if (bytes == nullptr) return {};
    return {bytes, static_cast<std::size_t>(sqlite3_column_bytes(handle_, column))};
}

double Statement::real(int column) const noexcept {
    return sqlite3_column_double(handle_, column);
}

std::int64_t Statement::integer(int column) const noexcept {
    return sqlite3_column_int64(handle_, column);
}

Transaction::~Transaction() {
    if (database_ != nullptr) sqlite3_exec(database_->handle(), "ROLLBACK", nullptr, nullptr, nullptr);
}

void Transaction::commit() {
    database_->run("COMMIT");
    database_ = nullptr;
}

}  // namespace records
