// SPDX-License-Identifier: GPL-3.0-or-later
// Folders that what is saved lies in.
#pragma once

#include <unistd.h>

#include <string>

namespace exchange {

/// An open file that closes itself; `close` reports what the system says on closing.
class Descriptor {
public:
    explicit Descriptor(int number) : number_(number) {}
    Descriptor(const Descriptor&) = delete;
    Descriptor& operator=(const Descriptor&) = delete;
    ~Descriptor() { close(); }
    [[nodiscard]] int number() const { return number_; }
    int close() {
        const int result = number_ < 0 ? 0 : ::close(number_);
        number_ = -1;
        return result;
    }

private:
    int number_;
};

/// The folder of a path; "." where it names none.
[[nodiscard]] std::string folderOf(const std::string& path);

/// Flushes a folder to the disk, so that what was made or renamed in it stays. `what` was done in it, "The file X was
/// written": the WriteFailed that is thrown where the system cannot begins so.
void flushFolder(const std::string& what, const std::string& folder);

/// Makes a folder in one that is there, if it is not there yet, and flushes the latter: what is written into a folder
/// that a power cut takes away is lost. Throws WriteFailed.
void makeFolder(const std::string& path);

}  // namespace exchange
