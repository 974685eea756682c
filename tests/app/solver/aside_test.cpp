// SPDX-License-Identifier: GPL-3.0-or-later
#include "solver/aside.h"

#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QTest>
#include <chrono>
#include <stdexcept>
#include <thread>

namespace aside_test {

using namespace std::chrono_literals;

/// Gives `number` after 20 ms, sooner when stopped.
solver::Aside::Job slow(int number) {
    return [number](std::stop_token stop) -> std::any {
        for (int i = 0; i < 20 && !stop.stop_requested(); ++i) std::this_thread::sleep_for(1ms);
        return number;
    };
}

class AsideTest : public testing::Test {
protected:
    solver::Aside aside;
    std::vector<int> heard;
    solver::Aside::Done hear = [this](const std::any& result) { heard.push_back(std::any_cast<int>(result)); };
    void settle() {
        ASSERT_TRUE(QTest::qWaitFor([this] { return !aside.busy(); }, 2000));
    }
};

TEST_F(AsideTest, OnlyTheNewestOfSeveralIsTold) {
    for (int i = 1; i <= 5; ++i) aside.start(slow(i), hear);
    settle();
    EXPECT_EQ(heard, std::vector<int>{5});
    aside.start(slow(6), hear);
    settle();
    EXPECT_EQ(heard, (std::vector<int>{5, 6}));
}

TEST_F(AsideTest, AStoppedJobIsNotTold) {
    aside.start(slow(1), hear);
    aside.start(slow(2), hear);
    aside.stop();
    settle();
    EXPECT_TRUE(heard.empty());
}

TEST_F(AsideTest, AJobThatThrowsIsSaidInOneSentence) {
    QSignalSpy failures(&aside, &solver::Aside::failed);
    aside.start([](std::stop_token) -> std::any { throw std::runtime_error("broken"); }, hear);
    settle();
    EXPECT_EQ(failures.size(), 1);
    EXPECT_TRUE(heard.empty());
}

TEST_F(AsideTest, ResultsMayStartTheNext) {
    aside.start(slow(1), [this](const std::any&) { aside.start(slow(2), hear); });
    settle();
    EXPECT_EQ(heard, std::vector<int>{2});
}

}  // namespace aside_test
