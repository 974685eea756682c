// SPDX-License-Identifier: GPL-3.0-or-later
// An import killed at a random moment loses no unit that it had told of, and two imports at once lose none.
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <thread>

#include "made_units.h"
#include "records/database.h"
#include "records/store.h"

namespace kill_test {

struct Import {
    pid_t process = 0;
    FILE* told = nullptr;
};

Import started(const std::string& file, int from, int count, int batch) {
    int ends[2];
    EXPECT_EQ(pipe(ends), 0);
    const std::string words[3] = {std::to_string(from), std::to_string(count), std::to_string(batch)};
    const pid_t process = fork();
    if (process == 0) {
        dup2(ends[1], 1);
        close(ends[0]);
        close(ends[1]);
        execl(COILWRIGHT_IMPORTING, "importing", file.c_str(), words[0].c_str(), words[1].c_str(), words[2].c_str(),
              static_cast<char*>(nullptr));
        _exit(127);
    }
    close(ends[1]);
    return {process, fdopen(ends[0], "r")};
}

/// What the import told last, until its end.
int lastTold(const Import& import) {
    int last = 0;
    char line[64];
    while (std::fgets(line, sizeof line, import.told) != nullptr)
        if (std::string(line).ends_with('\n')) last = std::atoi(line);
    std::fclose(import.told);
    return last;
}

int statusOf(const Import& import) {
    int status = 0;
    EXPECT_EQ(waitpid(import.process, &status, 0), import.process);
    return status;
}

TEST(Killed, ImportLosesNoCommittedUnit) {
    constexpr int units = 4000, batch = 20;
    const int rounds = made::full() ? 50 : 2;
    std::mt19937 random(17);
    int cut = 0;
    for (int round = 0; round < rounds; ++round) {
        const made::Folder folder;
        const std::string file = folder.in("u.records");
        const Import import = started(file, 0, units, batch);
        std::this_thread::sleep_for(std::chrono::milliseconds(20 + random() % 400));
        EXPECT_EQ(kill(import.process, SIGKILL), 0);
        const int told = lastTold(import);
        statusOf(import);
        cut += told > 0 && told < units ? 1 : 0;
        records::Store store(file, true);  // killed before there was a file, it is made now
        const auto found = store.count({}).units;
        EXPECT_GE(found, static_cast<std::size_t>(told)) << "round " << round;
        EXPECT_EQ(found % batch, 0U) << "a batch is there whole or not at all";
        records::Database database(file, false);
        auto check = database.prepared("PRAGMA integrity_check");
        ASSERT_TRUE(check.step());
        EXPECT_EQ(check.text(0), "ok");
        EXPECT_EQ(database.number("SELECT count(*) FROM reading"), static_cast<std::int64_t>(4 * found));
        const auto wanted = made::units(0, units);
        records::Filter last;
        if (told > 0) {
            last.serial = wanted[static_cast<std::size_t>(told - 1)].serial;
            EXPECT_EQ(store.find(last), std::vector{wanted[static_cast<std::size_t>(told - 1)]});
        }
    }
    if (made::full()) {
        EXPECT_GT(cut, 10) << "kills must hit imports at work";
    }
}

TEST(Killed, TwoImportsAtOnceLoseNothing) {
    const made::Folder folder;
    const std::string file = folder.in("u.records");
    constexpr int units = 600;
    const Import one = started(file, 0, units, 10), other = started(file, units, units, 10);
    EXPECT_EQ(lastTold(one), units);
    EXPECT_EQ(lastTold(other), units);
    EXPECT_EQ(statusOf(one), 0);
    EXPECT_EQ(statusOf(other), 0);
    records::Store store(file);
    EXPECT_EQ(store.count({}).units, static_cast<std::size_t>(2 * units));
    EXPECT_EQ(store.series("dcr P", {}).values.size(), static_cast<std::size_t>(2 * units));
}

}  // namespace kill_test
