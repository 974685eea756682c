// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/folder.h"

#include <fcntl.h>
#include <sys/stat.h>

#include <cerrno>
#include <system_error>

#include "exchange/write_file.h"

namespace exchange {

std::string folderOf(const std::string& path) {
    const auto slash = path.rfind('/');
    if (slash == std::string::npos) return ".";
    return slash == 0 ? "/" : path.substr(0, slash);
}

void flushFolder(const std::string& what, const std::string& folder) {
    const Descriptor descriptor(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    if (descriptor.number() >= 0 && ::fsync(descriptor.number()) == 0) return;
    const int error = errno;
    if (error == EINVAL) return;  // some network folders cannot be flushed, and need not be
    throw WriteFailed(
        what + ", but its folder could not be flushed to the disk: " + std::generic_category().message(error) + ".");
}

void makeFolder(const std::string& path) {
    constexpr mode_t usual = 0777;  // less the process's mask
    struct stat entry {};
    if (::mkdir(path.c_str(), usual) != 0) {
        const int error = errno;
        if (error != EEXIST || ::stat(path.c_str(), &entry) != 0 || !S_ISDIR(entry.st_mode))
            throw WriteFailed("The folder " + path + " was not made: " + std::generic_category().message(error) + ".");
    }
    flushFolder("The folder " + path + " was made", folderOf(path));
}

}  // namespace exchange
