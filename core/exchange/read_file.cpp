// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/read_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <system_error>

#include "exchange/folder.h"
#include "json/text.h"
#include "units/fault.h"

namespace exchange {

namespace {

[[noreturn]] void fail(const std::string& path, std::string found) {
    units::refuse(path, std::move(found), "a readable file of at most 10 MB");
}

std::string reason(int error) {
    if (error == ENOENT) return "no such file";
    return "a file that cannot be read (" + std::generic_category().message(error) + ")";
}

}  // namespace

std::string readFile(const std::string& path) {
    // Without O_NONBLOCK a pipe that nobody writes to would be waited for.
    const int number = ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK);
    if (number < 0) fail(path, reason(errno));
    const Descriptor descriptor(number);
    struct stat entry {};
    if (::fstat(number, &entry) != 0) fail(path, reason(errno));
    if (S_ISDIR(entry.st_mode)) fail(path, "a folder");
    if (!S_ISREG(entry.st_mode)) fail(path, "something that is not a regular file");

    std::string text;
    std::array<char, 65536> part{};
    while (true) {
        const ssize_t count = ::read(number, part.data(), part.size());
        if (count < 0 && errno == EINTR) continue;
        if (count < 0) fail(path, reason(errno));
        if (count == 0) return text;
        text.append(part.data(), static_cast<std::size_t>(count));
        if (text.size() > json::maximumBytes) fail(path, "more than 10 MB");  // it may grow while it is read
    }
}

}  // namespace exchange
