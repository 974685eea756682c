// SPDX-License-Identifier: GPL-3.0-or-later
// The system calls that saving makes, led through this program: noted, and made to fail as a test asks. A definition in
// a program goes before the C library's, also for the calls that the C++ library makes.
#pragma once

#include <functional>
#include <map>
#include <string>
#include <vector>

namespace calls {

enum class Kind { Look, Open, Make, Read, Write, Flush, FlushFolder, Close, Rename, Remove, MakeFolder, Permissions };

/// A call that concerns something in the watched folder.
struct Call {
    Kind kind = Kind::Look;
    std::string path;
    std::string to;    ///< of a rename
    std::string data;  ///< of a write: what was written
};

/// What a call is told: to fail with an error number, to write less than it was given, or neither.
struct Fate {
    int error = 0;
    bool shortened = false;
};

/// While it lives, calls that concern paths in `folder` ask `fate` before they are made, and are noted if they succeed.
/// One at a time.
class Watch {
public:
    explicit Watch(std::string folder, std::function<Fate(const Call&)> fate = {});
    Watch(const Watch&) = delete;
    Watch& operator=(const Watch&) = delete;
    ~Watch();

    [[nodiscard]] const std::vector<Call>& done() const { return done_; }
    [[nodiscard]] int asked() const { return asked_; }  ///< calls, those that failed too

    // For the calls themselves.
    [[nodiscard]] bool concerns(const std::string& path) const;
    [[nodiscard]] const std::string* pathOf(int number) const;
    [[nodiscard]] Fate ask(const Call& call);
    void note(Call call);
    void opened(int number, std::string path) { open_[number] = std::move(path); }
    void closed(int number) { open_.erase(number); }

private:
    std::string folder_;
    std::function<Fate(const Call&)> fate_;
    std::vector<Call> done_;
    std::map<int, std::string> open_;
    int asked_ = 0;
};

}  // namespace calls
