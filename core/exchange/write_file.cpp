// SPDX-License-Identifier: GPL-3.0-or-later
#include "exchange/write_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <optional>
#include <random>
#include <system_error>
#include <utility>

#include "exchange/folder.h"
#include "units/joined.h"

namespace exchange {

namespace {

constexpr mode_t newFileMode = 0644, permissionBits = 07777;

std::string reason(int error) {
    return std::generic_category().message(error);
}

[[noreturn]] void fail(const std::string& path, int error) {
    throw WriteFailed("The file " + path + " was not written: " + reason(error) + ".");
}

/// A temporary file's name, removed when it goes out of sight unless it was kept.
class Temporary {
public:
    explicit Temporary(std::string name) : name_(std::move(name)) {}
    Temporary(const Temporary&) = delete;
    Temporary& operator=(const Temporary&) = delete;
    ~Temporary() {
        if (!kept_) ::unlink(name_.c_str());
    }
    void keep() { kept_ = true; }
    [[nodiscard]] const std::string& name() const { return name_; }

private:
    std::string name_;
    bool kept_ = false;
};

/// Where `path` leads through symbolic links, also where nothing stands there yet.
std::string linkTarget(const std::string& path) {
    constexpr int mostLinks = 40;
    std::string target = path;
    for (int hop = 0; hop < mostLinks; ++hop) {
        struct stat entry {};
        if (::lstat(target.c_str(), &entry) != 0) {
            if (errno == ENOENT) return target;
            fail(path, errno);  // it may be a link, which a rename would replace
        }
        if (!S_ISLNK(entry.st_mode)) return target;
        std::array<char, 4096> text{};
        const ssize_t length = ::readlink(target.c_str(), text.data(), text.size());
        if (length < 0) fail(path, errno);
        if (static_cast<std::size_t>(length) == text.size()) fail(path, ENAMETOOLONG);
        const std::string link(text.data(), static_cast<std::size_t>(length));
        target = link.starts_with('/') ? link : units::joined({folderOf(target), "/", link});
    }
    fail(path, ELOOP);
}

/// Permissions and owner of the file that is to be replaced; nothing if there is none.
std::optional<struct stat> oldFile(const std::string& path, const std::string& target) {
    struct stat entry {};
    if (::stat(target.c_str(), &entry) != 0) {
        if (errno == ENOENT) return {};
        fail(path, errno);
    }
    if (S_ISDIR(entry.st_mode)) fail(path, EISDIR);
    if (!S_ISREG(entry.st_mode)) throw WriteFailed("The file " + path + " was not written: it is not a regular file.");
    if (::access(target.c_str(), W_OK) != 0) fail(path, errno);  // renaming would pass over a write protection
    return entry;
}

std::string temporaryName(const std::string& target, std::random_device& chance) {
    constexpr std::string_view letters = "abcdefghijklmnopqrstuvwxyz0123456789";
    constexpr std::size_t longest = 200, randomLetters = 6;  // a file name may have 255 bytes
    const std::string folder = folderOf(target);
    const auto slash = target.rfind('/');
    std::string name =
        folder + "/" + (slash == std::string::npos ? target : target.substr(slash + 1)).substr(0, longest);
    name += '.';
    std::uniform_int_distribution<std::size_t> pick(0, letters.size() - 1);
    for (std::size_t i = 0; i < randomLetters; ++i) name += letters[pick(chance)];
    return name;
}

std::pair<int, std::string> openTemporary(const std::string& path, const std::string& target, mode_t mode) {
    constexpr int attempts = 100;
    std::random_device chance;
    for (int attempt = 0; attempt < attempts; ++attempt) {
        std::string name = temporaryName(target, chance);
        const int number = ::open(name.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode);
        if (number >= 0) return {number, std::move(name)};
        if (errno != EEXIST && errno != EINTR) fail(path, errno);
    }
    fail(path, EEXIST);
}

void writeAll(const std::string& path, int number, std::string_view content) {
    while (!content.empty()) {
        const ssize_t written = ::write(number, content.data(), content.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) fail(path, errno);
        if (written == 0) fail(path, ENOSPC);
        content.remove_prefix(static_cast<std::size_t>(written));
    }
}

void keepPermissions(const std::string& path, int number, const struct stat& old) {
    // Giving a file away is allowed to few; the permissions matter more, and changing the owner may clear some.
    if (::fchown(number, old.st_uid, old.st_gid) != 0 && errno != EPERM && errno != EINVAL) fail(path, errno);
    if (::fchmod(number, old.st_mode & permissionBits) != 0) fail(path, errno);
}

}  // namespace

void writeFile(const std::string& path, std::string_view content) {
    const std::string target = linkTarget(path);
    const auto old = oldFile(path, target);
    auto [number, name] = openTemporary(path, target, old ? old->st_mode & 0600 : newFileMode);
    Descriptor descriptor(number);
    Temporary temporary(std::move(name));
    if (old) keepPermissions(path, descriptor.number(), *old);
    writeAll(path, descriptor.number(), content);
    if (::fdatasync(descriptor.number()) != 0) fail(path, errno);
    if (descriptor.close() != 0) fail(path, errno);
    if (::rename(temporary.name().c_str(), target.c_str()) != 0) fail(path, errno);
    temporary.keep();
    flushFolder("The file " + path + " was written", folderOf(target));
}

}  // namespace exchange
