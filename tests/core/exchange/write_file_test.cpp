// SPDX-License-Identifier: GPL-3.0-or-later
// Saving under faults. The linker leads every system call of the writer through the functions below (see
// CMakeLists.txt), so that the first, second, third … call fails in turn; a real limit on file size and a real full
// device come too.
#include "exchange/write_file.h"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/mount.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdarg>
#include <filesystem>

#include "exchange/read_file.h"
#include "json/text.h"
#include "units/fault.h"

namespace {

int failingCall = -1;  // counts down to the call that fails; below 0: none
int failure = EIO;
bool shortWrites = false;

bool failsNow() {
    if (failingCall < 0 || failingCall-- > 0) return false;
    errno = failure;
    return true;
}

}  // namespace

extern "C" {
int __real_open(const char* path, int flags, ...);
ssize_t __real_write(int number, const void* data, size_t size);
int __real_fdatasync(int number);
int __real_fsync(int number);
int __real_close(int number);
int __real_rename(const char* from, const char* to);
int __real_fchmod(int number, mode_t mode);
int __real_fchown(int number, uid_t user, gid_t group);

int __wrap_open(const char* path, int flags, ...);
int __wrap_open(const char* path, int flags, ...) {
    va_list more;
    va_start(more, flags);
    const auto mode = (flags & O_CREAT) != 0 ? va_arg(more, mode_t) : mode_t{0};
    va_end(more);
    return failsNow() ? -1 : __real_open(path, flags, mode);
}
ssize_t __wrap_write(int number, const void* data, size_t size);
ssize_t __wrap_write(int number, const void* data, size_t size) {
    if (failsNow()) return -1;
    return __real_write(number, data, shortWrites && size > 1000 ? 1000 : size);
}
int __wrap_fdatasync(int number);
int __wrap_fdatasync(int number) {
    return failsNow() ? -1 : __real_fdatasync(number);
}
int __wrap_fsync(int number);
int __wrap_fsync(int number) {
    return failsNow() ? -1 : __real_fsync(number);
}
int __wrap_close(int number);
int __wrap_close(int number) {
    const bool fails = failsNow();
    const int result = __real_close(number);
    if (fails) errno = failure;
    return fails ? -1 : result;
}
int __wrap_rename(const char* from, const char* to);
int __wrap_rename(const char* from, const char* to) {
    return failsNow() ? -1 : __real_rename(from, to);
}
int __wrap_fchmod(int number, mode_t mode);
int __wrap_fchmod(int number, mode_t mode) {
    return failsNow() ? -1 : __real_fchmod(number, mode);
}
int __wrap_fchown(int number, uid_t user, gid_t group);
int __wrap_fchown(int number, uid_t user, gid_t group) {
    return failsNow() ? -1 : __real_fchown(number, user, group);
}
}

namespace {

namespace fs = std::filesystem;

class WriteFile : public testing::Test {
protected:
    void SetUp() override {
        std::string pattern = fs::temp_directory_path() / "coilwright-write-XXXXXX";
        folder_ = ::mkdtemp(pattern.data());
        path_ = folder_ + "/d.coilwright";
    }
    void TearDown() override {
        failingCall = -1;
        failure = EIO;
        shortWrites = false;
        fs::remove_all(folder_);
    }
    [[nodiscard]] std::size_t entries() const {
        return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder_), fs::directory_iterator()));
    }
    [[nodiscard]] static std::string refusal(const std::string& path, std::string_view content) {
        try {
            exchange::writeFile(path, content);
            return "was written";
        } catch (const exchange::WriteFailed& failed) {
            return failed.what();
        }
    }
    [[nodiscard]] static mode_t modeOf(const std::string& path) {
        struct stat entry {};
        EXPECT_EQ(::stat(path.c_str(), &entry), 0);
        return entry.st_mode & 07777;
    }
    std::string folder_, path_;
};

TEST_F(WriteFile, WritesAndReplaces) {
    exchange::writeFile(path_, "first\n");
    EXPECT_EQ(exchange::readFile(path_), "first\n");
    exchange::writeFile(path_, std::string("second\0\n", 8));
    EXPECT_EQ(exchange::readFile(path_), std::string("second\0\n", 8));
    exchange::writeFile(path_, "");
    EXPECT_EQ(exchange::readFile(path_), "");
    EXPECT_EQ(entries(), 1u);
}

TEST_F(WriteFile, WritesInParts) {
    shortWrites = true;
    const std::string content(123456, 'x');
    exchange::writeFile(path_, content);
    EXPECT_EQ(exchange::readFile(path_), content);
}

TEST_F(WriteFile, WritesIntoTheWorkingFolder) {
    const fs::path before = fs::current_path();
    fs::current_path(folder_);
    exchange::writeFile("plain", "x");
    fs::current_path(before);
    EXPECT_EQ(exchange::readFile(folder_ + "/plain"), "x");
}

TEST_F(WriteFile, KeepsPermissionsAndGivesUsualOnes) {
    const mode_t mask = ::umask(027);
    exchange::writeFile(path_, "new");
    EXPECT_EQ(modeOf(path_), 0640u);
    ::chmod(path_.c_str(), 0666);
    exchange::writeFile(path_, "replaced");
    EXPECT_EQ(modeOf(path_), 0666u);
    ::umask(mask);
}

TEST_F(WriteFile, FollowsSymbolicLinks) {
    fs::create_directory(folder_ + "/real");
    fs::create_symlink("real/a", folder_ + "/one");
    fs::create_symlink(folder_ + "/one", folder_ + "/two");
    exchange::writeFile(folder_ + "/two", "through a link that leads nowhere yet");
    exchange::writeFile(folder_ + "/two", "through links");
    EXPECT_EQ(exchange::readFile(folder_ + "/real/a"), "through links");
    EXPECT_TRUE(fs::is_symlink(folder_ + "/one"));
    EXPECT_TRUE(fs::is_symlink(folder_ + "/two"));
    fs::create_symlink("round", folder_ + "/round");
    EXPECT_EQ(refusal(folder_ + "/round", "x"),
              "The file " + folder_ + "/round was not written: Too many levels of symbolic links.");
}

TEST_F(WriteFile, EveryCallThatFailsLeavesTheOldOrTheNewFileWhole) {
    const std::string kept(5000, 'o'), fresh(5000, 'n');
    shortWrites = true;
    int refused = 0;
    for (const int error : {EIO, ENOSPC, EROFS, EDQUOT}) {
        int silent = 0;
        for (int call = 0;; ++call) {
            exchange::writeFile(path_, kept);
            failure = error;
            failingCall = call;
            const std::string sentence = refusal(path_, fresh);
            const bool reached = failingCall < 0;
            failingCall = -1;
            const std::string after = exchange::readFile(path_);
            EXPECT_EQ(entries(), 1u) << call;
            if (!reached) {
                EXPECT_EQ(sentence, "was written");
                EXPECT_EQ(silent, 1);
                EXPECT_GE(call, 12);  // open, fchown, fchmod, five writes, fdatasync, close, rename, open, fsync
                break;
            }
            const std::string reason = std::generic_category().message(error) + ".";
            if (after == fresh) {
                if (sentence == "was written") {  // only closing the folder failed: nothing is lost
                    ++silent;
                    continue;
                }
                EXPECT_EQ(sentence, "The file " + path_ +
                                        " was written, but its folder could not be flushed to the disk: " + reason);
            } else {
                EXPECT_EQ(after, kept) << call;
                EXPECT_EQ(sentence, "The file " + path_ + " was not written: " + reason);
            }
            ++refused;
        }
    }
    EXPECT_GE(refused, 4 * 12);
}

TEST_F(WriteFile, AnInterruptedWriteGoesOn) {
    exchange::writeFile(path_, "old");
    failure = EINTR;
    failingCall = 3;  // after open, fchown, fchmod
    EXPECT_EQ(refusal(path_, "new"), "was written");
    EXPECT_EQ(exchange::readFile(path_), "new");
}

TEST_F(WriteFile, AFileSizeLimitLeavesTheOldFile) {
    exchange::writeFile(path_, "old");
    struct rlimit before {};
    ASSERT_EQ(::getrlimit(RLIMIT_FSIZE, &before), 0);
    const auto handler = ::signal(SIGXFSZ, SIG_IGN);
    const struct rlimit tight { 50000, before.rlim_max };
    ASSERT_EQ(::setrlimit(RLIMIT_FSIZE, &tight), 0);
    const std::string sentence = refusal(path_, std::string(200000, 'x'));
    ASSERT_EQ(::setrlimit(RLIMIT_FSIZE, &before), 0);
    ::signal(SIGXFSZ, handler);
    EXPECT_EQ(sentence, "The file " + path_ + " was not written: File too large.");
    EXPECT_EQ(exchange::readFile(path_), "old");
    EXPECT_EQ(entries(), 1u);
}

TEST_F(WriteFile, AFullDiskLeavesTheOldFile) {
    const std::string disk = folder_ + "/disk";
    fs::create_directory(disk);
    if (::mount("none", disk.c_str(), "tmpfs", 0, "size=256k") != 0) GTEST_SKIP() << "mounting is not permitted here";
    const std::string path = disk + "/d.coilwright";
    exchange::writeFile(path, "old");
    EXPECT_EQ(refusal(path, std::string(1'000'000, 'x')),
              "The file " + path + " was not written: No space left on device.");
    EXPECT_EQ(exchange::readFile(path), "old");
    EXPECT_EQ(std::distance(fs::directory_iterator(disk), fs::directory_iterator()), 1);
    EXPECT_EQ(::mount("none", disk.c_str(), nullptr, MS_REMOUNT | MS_RDONLY, nullptr), 0);
    EXPECT_EQ(refusal(path, "new"), "The file " + path + " was not written: Read-only file system.");
    EXPECT_EQ(exchange::readFile(path), "old");
    EXPECT_EQ(::umount(disk.c_str()), 0);
}

TEST_F(WriteFile, RefusesWhatIsNoPlaceForAFile) {
    exchange::writeFile(path_, "old");
    const std::string name = "The file " + folder_;
    EXPECT_EQ(refusal(folder_, "x"), name + " was not written: Is a directory.");
    EXPECT_EQ(refusal(folder_ + "/none/a", "x"), name + "/none/a was not written: No such file or directory.");
    EXPECT_EQ(refusal(path_ + "/a", "x"), name + "/d.coilwright/a was not written: Not a directory.");
    EXPECT_EQ(refusal("", "x"), "The file  was not written: No such file or directory.");
    EXPECT_EQ(refusal("/dev/full", "x"), "The file /dev/full was not written: it is not a regular file.");
    const std::string longName = folder_ + "/" + std::string(256, 'n');
    EXPECT_EQ(refusal(longName, "x"), "The file " + longName + " was not written: File name too long.");
    exchange::writeFile(folder_ + "/" + std::string(255, 'n'), "the longest name there is");
    EXPECT_EQ(exchange::readFile(path_), "old");
}

std::string readRefusal(const std::string& path) {
    try {
        return "was read: " + exchange::readFile(path);
    } catch (const units::BadInput& bad) {
        return bad.what();
    }
}

TEST_F(WriteFile, ReadingRefusesWhatIsNoFile) {
    const std::string allowed = "; allowed is a readable file of at most 10 MB.";
    EXPECT_EQ(readRefusal(path_), path_ + ": found no such file" + allowed);
    EXPECT_EQ(readRefusal(folder_), folder_ + ": found a folder" + allowed);
    EXPECT_EQ(readRefusal("/dev/zero"), "/dev/zero: found something that is not a regular file" + allowed);
    ASSERT_EQ(::mkfifo((folder_ + "/pipe").c_str(), 0600), 0);
    EXPECT_EQ(readRefusal(folder_ + "/pipe"), folder_ + "/pipe: found something that is not a regular file" + allowed);
    exchange::writeFile(path_, std::string(json::maximumBytes, 'x'));
    EXPECT_EQ(exchange::readFile(path_).size(), json::maximumBytes);
    exchange::writeFile(path_, std::string(json::maximumBytes + 1, 'x'));
    EXPECT_EQ(readRefusal(path_), path_ + ": found more than 10 MB" + allowed);
    EXPECT_EQ(readRefusal(path_ + "/a"), path_ + "/a: found a file that cannot be read (Not a directory)" + allowed);
    failingCall = 0;
    failure = EACCES;
    EXPECT_EQ(readRefusal(path_), path_ + ": found a file that cannot be read (Permission denied)" + allowed);
}

}  // namespace
