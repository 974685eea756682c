// SPDX-License-Identifier: GPL-3.0-or-later
// A process killed (signal 9) at a random moment while it saves without a pause: the file is one of its two states,
// whole. A hundredth of the kills here, 500 with COILWRIGHT_FULL in the environment (target `full`).
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <random>

#include "exchange/write_file.h"
#include "savings.h"

namespace kill_saving_test {

/// Saves one design and then the other, until it is killed.
[[noreturn]] void saveForEver(const savings::Saving& saving, const std::string& folder) {
    while (true) {
        saving.save(folder);
        saving.prepare(folder);
    }
}

TEST(KillWhileSaving, LeavesAWholeFile) {
    const savings::Saving& saving = savings::all().front();
    const int kills = std::getenv("COILWRIGHT_FULL") != nullptr ? 500 : 5;
    std::mt19937 dice(3);
    int old = 0, fresh = 0, strays = 0;
    const savings::Scratch scratch;
    saving.prepare(scratch.path());
    for (int k = 0; k < kills; ++k) {
        const pid_t saver = ::fork();
        ASSERT_GE(saver, 0);
        if (saver == 0) saveForEver(saving, scratch.path());
        ::usleep(1000 + static_cast<useconds_t>(dice() % 20000));
        ASSERT_EQ(::kill(saver, SIGKILL), 0);
        int how = 0;
        ASSERT_EQ(::waitpid(saver, &how, 0), saver);
        ASSERT_TRUE(WIFSIGNALED(how)) << "it ended by itself";
        const savings::Found found = saving.found(scratch.path());
        ASSERT_NE(found, savings::Found::Torn) << "after " << k << " kills";
        ++(found == savings::Found::New ? fresh : old);
        for (const auto& entry : std::filesystem::directory_iterator(scratch.path()))
            if (entry.path().extension() != ".coilwright") {
                ++strays;
                std::filesystem::remove(entry.path());
            }
    }
    RecordProperty("old", old);
    RecordProperty("new", fresh);
    RecordProperty("stray", strays);
    EXPECT_EQ(old + fresh, kills);
}

}  // namespace kill_saving_test
