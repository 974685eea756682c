// SPDX-License-Identifier: GPL-3.0-or-later
#include "system_calls.h"

#include <dlfcn.h>
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdarg>
#include <cstdio>
#include <utility>

namespace calls {

namespace {

Watch* watching = nullptr;

template <class Function>
Function real(Function, const char* name) {
    return reinterpret_cast<Function>(::dlsym(RTLD_NEXT, name));
}

/// The call at a path, or through an open file; its own work is not watched again.
template <class Act>
auto led(Watch* watch, Call call, const Act& act) {
    if (watch == nullptr) return act(false);
    watching = nullptr;
    const Fate fate = watch->ask(call);
    if (fate.error != 0) {
        watching = watch;
        errno = fate.error;
        return decltype(act(false))(-1);
    }
    const auto result = act(fate.shortened);
    const int error = errno;
    if (result >= 0) {
        if (call.kind == Kind::Write) call.data.resize(static_cast<std::size_t>(result));
        watch->note(std::move(call));
    }
    watching = watch;
    errno = error;
    return result;
}

Watch* watchOf(const char* path) {
    return watching != nullptr && watching->concerns(path) ? watching : nullptr;
}
std::pair<Watch*, std::string> watchOf(int number) {
    const std::string* path = watching == nullptr ? nullptr : watching->pathOf(number);
    return path != nullptr ? std::pair{watching, *path} : std::pair<Watch*, std::string>{};
}

}  // namespace

Watch::Watch(std::string folder, std::function<Fate(const Call&)> fate)
    : folder_(std::move(folder)), fate_(std::move(fate)) {
    watching = this;
}

Watch::~Watch() {
    watching = nullptr;
}

bool Watch::concerns(const std::string& path) const {
    return path.starts_with(folder_);
}

const std::string* Watch::pathOf(int number) const {
    const auto at = open_.find(number);
    return at == open_.end() ? nullptr : &at->second;
}

Fate Watch::ask(const Call& call) {
    ++asked_;
    return fate_ ? fate_(call) : Fate{};
}

void Watch::note(Call call) {
    done_.push_back(std::move(call));
}

}  // namespace calls

using calls::Kind;

extern "C" {

int open(const char* path, int flags, ...) {
    va_list more;
    va_start(more, flags);
    const auto mode = (flags & O_CREAT) != 0 ? va_arg(more, mode_t) : mode_t{0};
    va_end(more);
    static const auto next = calls::real(&open, "open");
    calls::Watch* watch = calls::watchOf(path);
    const int number = calls::led(watch, {(flags & O_CREAT) != 0 ? Kind::Make : Kind::Open, path, {}, {}},
                                  [&](bool) { return next(path, flags, mode); });
    if (watch != nullptr && number >= 0) watch->opened(number, path);
    return number;
}

ssize_t read(int number, void* data, size_t size) {
    static const auto next = calls::real(&read, "read");
    const auto [watch, path] = calls::watchOf(number);
    return calls::led(watch, {Kind::Read, path, {}, {}}, [&](bool) { return next(number, data, size); });
}

ssize_t write(int number, const void* data, size_t size) {
    static const auto next = calls::real(&write, "write");
    const auto [watch, path] = calls::watchOf(number);
    std::string text;
    if (watch != nullptr) text.assign(static_cast<const char*>(data), size);
    return calls::led(watch, {Kind::Write, path, {}, std::move(text)},
                      [&](bool shortened) { return next(number, data, shortened && size > 1 ? size / 2 : size); });
}

int fdatasync(int number) {
    static const auto next = calls::real(&fdatasync, "fdatasync");
    const auto [watch, path] = calls::watchOf(number);
    return calls::led(watch, {Kind::Flush, path, {}, {}}, [&](bool) { return next(number); });
}

int fsync(int number) {
    static const auto next = calls::real(&fsync, "fsync");
    const auto [watch, path] = calls::watchOf(number);
    struct stat entry {};
    const bool folder = watch != nullptr && ::fstat(number, &entry) == 0 && S_ISDIR(entry.st_mode);
    return calls::led(watch, {folder ? Kind::FlushFolder : Kind::Flush, path, {}, {}},
                      [&](bool) { return next(number); });
}

int close(int number) {
    static const auto next = calls::real(&close, "close");
    const auto [watch, path] = calls::watchOf(number);
    const int result = calls::led(watch, {Kind::Close, path, {}, {}}, [&](bool) { return next(number); });
    if (watch != nullptr) {
        // A descriptor is gone also where closing it reports an error.
        const int error = errno;
        if (result != 0) next(number);
        watch->closed(number);
        errno = error;
    }
    return result;
}

int rename(const char* from, const char* to) noexcept {
    static const auto next = calls::real(&rename, "rename");
    return calls::led(calls::watchOf(from), {Kind::Rename, from, to, {}}, [&](bool) { return next(from, to); });
}

int unlink(const char* path) noexcept {
    static const auto next = calls::real(&unlink, "unlink");
    return calls::led(calls::watchOf(path), {Kind::Remove, path, {}, {}}, [&](bool) { return next(path); });
}

int remove(const char* path) noexcept {
    static const auto next = calls::real(static_cast<int (*)(const char*)>(&remove), "remove");
    return calls::led(calls::watchOf(path), {Kind::Remove, path, {}, {}}, [&](bool) { return next(path); });
}

int mkdir(const char* path, mode_t mode) noexcept {
    static const auto next = calls::real(&mkdir, "mkdir");
    return calls::led(calls::watchOf(path), {Kind::MakeFolder, path, {}, {}}, [&](bool) { return next(path, mode); });
}

int chmod(const char* path, mode_t mode) noexcept {
    static const auto next = calls::real(&chmod, "chmod");
    return calls::led(calls::watchOf(path), {Kind::Permissions, path, {}, {}}, [&](bool) { return next(path, mode); });
}

int fchmod(int number, mode_t mode) noexcept {
    static const auto next = calls::real(&fchmod, "fchmod");
    const auto [watch, path] = calls::watchOf(number);
    return calls::led(watch, {Kind::Permissions, path, {}, {}}, [&](bool) { return next(number, mode); });
}

int fchown(int number, uid_t user, gid_t group) noexcept {
    static const auto next = calls::real(&fchown, "fchown");
    const auto [watch, path] = calls::watchOf(number);
    return calls::led(watch, {Kind::Permissions, path, {}, {}}, [&](bool) { return next(number, user, group); });
}

int stat(const char* path, struct stat* entry) noexcept {
    static const auto next = calls::real(static_cast<int (*)(const char*, struct stat*)>(&stat), "stat");
    return calls::led(calls::watchOf(path), {Kind::Look, path, {}, {}}, [&](bool) { return next(path, entry); });
}

int lstat(const char* path, struct stat* entry) noexcept {
    static const auto next = calls::real(&lstat, "lstat");
    return calls::led(calls::watchOf(path), {Kind::Look, path, {}, {}}, [&](bool) { return next(path, entry); });
}

int access(const char* path, int mode) noexcept {
    static const auto next = calls::real(&access, "access");
    return calls::led(calls::watchOf(path), {Kind::Look, path, {}, {}}, [&](bool) { return next(path, mode); });
}

ssize_t readlink(const char* path, char* text, size_t size) noexcept {
    static const auto next = calls::real(&readlink, "readlink");
    return calls::led(calls::watchOf(path), {Kind::Look, path, {}, {}}, [&](bool) { return next(path, text, size); });
}
}
