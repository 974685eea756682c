// SPDX-License-Identifier: GPL-3.0-or-later
// A whole copy of the records while others write: SQLite's online backup into a file beside the target, then renamed.
#include <fcntl.h>
#include <sqlite3.h>
#include <unistd.h>

#include <cstdio>

#include "records/store.h"
#include "units/joined.h"

namespace records {

namespace {

/// A file that goes unless it was put in its place.
class Part {
public:
    explicit Part(std::string path) : path_(std::move(path)) {}
    ~Part() { std::remove(path_.c_str()); }
    Part(const Part&) = delete;
    Part& operator=(const Part&) = delete;
    [[nodiscard]] const std::string& path() const { return path_; }

private:
    std::string path_;
};

bool flushed(const std::string& path) {
    const int file = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
    if (file < 0) return false;
    const bool done = ::fsync(file) == 0;
    ::close(file);
    return done;
}

std::string folderOf(const std::string& path) {
    const auto slash = path.rfind('/');
    return slash == std::string::npos ? "." : path.substr(0, slash + 1);
}

}  // namespace

void Store::backup(const std::string& path) {
    const Part part(units::joined({path, ".part-", std::to_string(::getpid())}));
    {
        Database copy(part.path(), true);
        sqlite3_backup* run = sqlite3_backup_init(copy.handle(), "main", database_.handle(), "main");
        if (run == nullptr) copy.fail(sqlite3_errcode(copy.handle()));
        const int code = sqlite3_backup_step(run, -1);
        sqlite3_backup_finish(run);
        if (code != SQLITE_DONE) copy.fail(code);
        copy.run("PRAGMA journal_mode = DELETE");  // one file, with nothing beside it
    }
    if (!flushed(part.path()) || std::rename(part.path().c_str(), path.c_str()) != 0 || !flushed(folderOf(path)))
        throw RecordsFailed(units::joined({"The copy ", path, " was not written whole; the older one stays."}));
}

}  // namespace records
