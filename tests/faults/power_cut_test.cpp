// SPDX-License-Identifier: GPL-3.0-or-later
// A power cut at every moment of saving. The calls that saving makes are noted and played on a model of a disk that
// promises no more than POSIX does: what was written is on it once its file was flushed, before that all of it, a half
// or nothing; a name made, renamed or taken away is on it once its folder was flushed, before that any choice of them
// may be. In each state the old or the new is whole; once saving has returned, it is the new in all of them.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <memory>

#include "savings.h"
#include "system_calls.h"

namespace power_cut_test {

namespace fs = std::filesystem;
using calls::Call;
using calls::Kind;
using savings::Found;
using savings::Saving;

struct File {
    std::string written, safe;
    std::string link;  ///< not empty: a symbolic link
};
using FilePtr = std::shared_ptr<File>;
using Names = std::map<std::string, FilePtr>;  ///< a folder stands with null

/// A change of a folder's names.
struct Change {
    std::string folder;
    std::string gone, made;  ///< paths; "" none
    FilePtr file;
};

std::string folderOf(const std::string& path) {
    return path.substr(0, path.rfind('/'));
}

/// How much of what was not flushed is there.
enum class Loss { Nothing, Half, All };

class Disk {
public:
    explicit Disk(const std::string& folder) {
        for (const auto& entry : fs::recursive_directory_iterator(folder)) {
            if (entry.is_symlink()) {
                now_[entry.path()] = std::make_shared<File>(File{{}, {}, fs::read_symlink(entry.path())});
            } else if (entry.is_directory()) {
                now_[entry.path()] = nullptr;
            } else {
                std::ifstream file(entry.path(), std::ios::binary);
                const std::string text{std::istreambuf_iterator<char>(file), {}};
                now_[entry.path()] = std::make_shared<File>(File{text, text, {}});
            }
        }
        safe_ = now_;
    }

    void play(const Call& call) {
        switch (call.kind) {
            case Kind::Make:
                if (!now_.contains(call.path)) change({folderOf(call.path), "", call.path, std::make_shared<File>()});
                return;
            case Kind::Write:
                now_.at(call.path)->written += call.data;
                return;
            case Kind::Flush:
                now_.at(call.path)->safe = now_.at(call.path)->written;
                return;
            case Kind::Rename:
                change({folderOf(call.to), call.path, call.to, now_.at(call.path)});
                return;
            case Kind::Remove:
                change({folderOf(call.path), call.path, "", nullptr});
                return;
            case Kind::MakeFolder:
                change({folderOf(call.path), "", call.path, nullptr});
                return;
            case Kind::FlushFolder:
                flush(call.path);
                return;
            default:
                return;
        }
    }

    /// Every state that the disk may be found in.
    [[nodiscard]] std::vector<std::map<std::string, File>> states() const {
        std::vector<std::map<std::string, File>> all;
        for (std::size_t choice = 0; choice < std::size_t{1} << pending_.size(); ++choice) {
            Names names = safe_;
            for (std::size_t k = 0; k < pending_.size(); ++k)
                if ((choice >> k & 1) != 0) apply(pending_[k], names);
            for (const Loss loss : {Loss::Nothing, Loss::Half, Loss::All}) all.push_back(left(names, loss));
        }
        return all;
    }

private:
    static void apply(const Change& change, Names& names) {
        if (!change.gone.empty()) names.erase(change.gone);
        if (!change.made.empty()) names[change.made] = change.file;
    }
    void change(const Change& change) {
        apply(change, now_);
        pending_.push_back(change);
    }
    void flush(const std::string& folder) {
        std::vector<Change> later;
        for (const Change& change : pending_)
            if (change.folder == folder)
                apply(change, safe_);
            else
                later.push_back(change);
        pending_ = std::move(later);
    }
    /// What stands under each name; nothing in a folder that is not there itself.
    static std::map<std::string, File> left(const Names& names, Loss loss) {
        std::map<std::string, File> files;
        for (const auto& [path, file] : names) {
            if (file == nullptr) continue;
            File found = *file;
            if (loss == Loss::All) found.written = found.safe;
            if (loss == Loss::Half)
                found.written.resize(found.safe.size() + (found.written.size() - found.safe.size()) / 2);
            files[path] = found;
        }
        std::erase_if(files, [&](const auto& entry) {
            const std::string folder = folderOf(entry.first);
            return folder.ends_with(".revisions") && !names.contains(folder);
        });
        return files;
    }

    Names now_, safe_;
    std::vector<Change> pending_;
};

void putBack(const std::map<std::string, File>& files) {
    for (const auto& [path, file] : files) {
        fs::create_directories(folderOf(path));
        if (file.link.empty())
            std::ofstream(path, std::ios::binary) << file.written;
        else
            fs::create_symlink(file.link, path);
    }
}

class PowerCut : public testing::TestWithParam<Saving> {};

TEST_P(PowerCut, LeavesTheOldOrTheNewWhole) {
    const savings::Scratch scratch;
    GetParam().prepare(scratch.path());
    Disk disk(scratch.path());
    std::vector<Call> done;
    {
        const calls::Watch watch(scratch.path());
        GetParam().save(scratch.path());
        done = watch.done();
    }
    int seen = 0, fresh = 0;
    for (std::size_t k = 0; k <= done.size(); ++k) {
        if (k > 0) disk.play(done[k - 1]);
        for (const auto& state : disk.states()) {
            scratch.empty();
            putBack(state);
            Found found = Found::Torn;
            EXPECT_NO_THROW(found = GetParam().found(scratch.path()));
            EXPECT_NE(found, Found::Torn) << "cut after call " << k << " of " << done.size();
            if (k == done.size()) {
                EXPECT_EQ(found, Found::New) << "lost after it was called saved";
            }
            ++seen;
            fresh += found == Found::New ? 1 : 0;
        }
        ASSERT_FALSE(HasFailure()) << "at call " << k;
    }
    EXPECT_GT(seen, 3 * static_cast<int>(done.size()));
    EXPECT_GT(fresh, 0);
    EXPECT_LT(fresh, seen);
    RecordProperty("states", seen);
}

INSTANTIATE_TEST_SUITE_P(Savings, PowerCut, testing::ValuesIn(savings::all()),
                         [](const auto& of) { return of.param.name; });

}  // namespace power_cut_test
