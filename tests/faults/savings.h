// SPDX-License-Identifier: GPL-3.0-or-later
// What the program saves, each with how it is begun, done, and found again.
#pragma once

#include <functional>
#include <ostream>
#include <string>
#include <vector>

namespace savings {

/// What is found in a folder after a saving that may have been broken off.
enum class Found { Old, New, Torn };

struct Saving {
    std::string name;
    std::function<void(const std::string& folder)> prepare;  ///< the state before
    std::function<void(const std::string& folder)> save;     ///< throws if it cannot
    std::function<Found(const std::string& folder)> found;
};

/// Its name alone, in the name of a test.
inline void PrintTo(const Saving& saving, std::ostream* out) {
    *out << saving.name;
}

/// A design over an older one, a first design, one behind a symbolic link, a first and a second revision, a step noted
/// in the register of revisions.
[[nodiscard]] const std::vector<Saving>& all();

/// An empty folder of its own that is gone with it.
class Scratch {
public:
    Scratch();
    Scratch(const Scratch&) = delete;
    Scratch& operator=(const Scratch&) = delete;
    ~Scratch();
    void empty() const;
    [[nodiscard]] const std::string& path() const { return path_; }

private:
    std::string path_;
};

}  // namespace savings
