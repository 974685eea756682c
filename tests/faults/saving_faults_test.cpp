// SPDX-License-Identifier: GPL-3.0-or-later
// Saving while system calls fail: each call in turn with each reason, and many at random. Afterwards the old or the new
// is whole, what went wrong is told, and nothing that is not there was called saved. A hundredth of the random ones
// here, all with COILWRIGHT_FULL in the environment (target `full`).
#include <gtest/gtest.h>

#include <array>
#include <cerrno>
#include <cstdlib>
#include <filesystem>
#include <random>

#include "savings.h"
#include "system_calls.h"

namespace saving_faults_test {

using savings::Found;
using savings::Saving;

constexpr std::array<int, 6> reasons{EIO, ENOSPC, EROFS, EDQUOT, EACCES, EINTR};

class SavingFaults : public testing::TestWithParam<Saving> {
protected:
    /// Saves under `fate`; what was told, "" for "saved". Checks that the old or the new is whole.
    std::string saveUnder(const std::function<calls::Fate(const calls::Call&)>& fate) {
        scratch_.empty();
        GetParam().prepare(scratch_.path());
        std::string told;
        {
            const calls::Watch watch(scratch_.path(), fate);
            try {
                GetParam().save(scratch_.path());
            } catch (const std::exception& failure) {
                told = failure.what();
                EXPECT_FALSE(told.empty());
            }
            asked_ = watch.asked();
        }
        Found found = Found::Torn;
        EXPECT_NO_THROW(found = GetParam().found(scratch_.path())) << "after: " << told;
        EXPECT_NE(found, Found::Torn) << "after: " << told;
        if (told.empty())
            EXPECT_EQ(found, Found::New) << "called saved";
        else
            EXPECT_NE(told.find(scratch_.path()), std::string::npos) << told;
        return told;
    }
    /// Files that are neither the design nor of its revisions.
    [[nodiscard]] int strays() const {
        int count = 0;
        for (const auto& entry : std::filesystem::recursive_directory_iterator(scratch_.path())) {
            const std::string end = entry.path().extension();
            if (!entry.is_directory() && end != ".coilwright" && end != ".json") ++count;
        }
        return count;
    }
    savings::Scratch scratch_;
    int asked_ = 0;
};

TEST_P(SavingFaults, EveryCallFailsOnceWithEveryReason) {
    for (const int reason : reasons) {
        int failing = 0, told = 0;
        for (;; ++failing) {
            int left = failing;
            bool reached = false;
            bool removing = false;
            const std::string said = saveUnder([&](const calls::Call& call) {
                if (left-- != 0) return calls::Fate{};
                reached = true;
                removing = call.kind == calls::Kind::Remove;
                return calls::Fate{reason, false};
            });
            if (!removing) {
                EXPECT_EQ(strays(), 0) << said;
            }
            if (!reached) break;
            told += said.empty() ? 0 : 1;
        }
        EXPECT_GE(failing, 10) << "too few calls to be saving";
        EXPECT_GE(told, reason == EINTR ? 3 : 7) << std::generic_category().message(reason);
    }
}

TEST_P(SavingFaults, RandomFaults) {
    const int rounds = std::getenv("COILWRIGHT_FULL") != nullptr ? 10000 : 100;
    std::mt19937 dice(11);
    int refused = 0, saved = 0;
    for (int round = 0; round < rounds; ++round) {
        const double chance = std::uniform_real_distribution<>(0.0, 0.2)(dice);
        const auto fate = [&](const calls::Call&) {
            std::uniform_real_distribution<> share(0, 1);
            calls::Fate drawn;
            if (share(dice) < chance) drawn.error = reasons[dice() % reasons.size()];
            drawn.shortened = share(dice) < chance;
            return drawn;
        };
        ++(saveUnder(fate).empty() ? saved : refused);
        if (HasFailure()) {
            ADD_FAILURE() << "in round " << round;
            break;
        }
    }
    EXPECT_GT(refused, rounds / 10);
    EXPECT_GT(saved, 0);
    RecordProperty("refused", refused);
    RecordProperty("saved", saved);
}

INSTANTIATE_TEST_SUITE_P(Savings, SavingFaults, testing::ValuesIn(savings::all()),
                         [](const auto& of) { return of.param.name; });

}  // namespace saving_faults_test
