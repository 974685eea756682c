// SPDX-License-Identifier: GPL-3.0-or-later
#include "solver/latest_wins.h"

#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QTest>
#include <atomic>
#include <chrono>
#include <thread>

namespace latest_wins_test {

using namespace std::chrono_literals;

design::DesignPtr named(int number) {
    auto design = std::make_shared<design::Design>();
    design->name = std::to_string(number);
    return design;
}

/// Takes about 10 ms, minding the stop token; the answer carries the design's name as its hook-up.
struct Slow {
    std::shared_ptr<std::atomic<int>> runs = std::make_shared<std::atomic<int>>(0);
    std::shared_ptr<std::atomic<int>> withPrevious = std::make_shared<std::atomic<int>>(0);

    analysis::AnswerPtr operator()(const design::Design& design, const catalog::Catalog&,
                                   const analysis::AnswerPtr& before, std::stop_token stop,
                                   const analysis::Question&) const {
        ++*runs;
        if (before) ++*withPrevious;
        auto answer = std::make_shared<analysis::Answer>();
        answer->hookUp = design.name;
        for (int i = 0; i < 10 && !stop.stop_requested(); ++i) std::this_thread::sleep_for(1ms);
        answer->stopped = stop.stop_requested();
        return answer;
    }
};

class LatestWinsTest : public testing::Test {
protected:
    Slow slow;
    solver::LatestWins solver{std::make_shared<const catalog::Catalog>(), slow};
    std::vector<std::string> heard;

    void SetUp() override {
        QObject::connect(&solver, &solver::LatestWins::answered,
                         [this](const analysis::AnswerPtr& answer, const design::DesignPtr& design) {
                             EXPECT_EQ(answer->hookUp, design->name);
                             EXPECT_FALSE(answer->stopped);
                             heard.push_back(design->name);
                         });
    }
};

TEST_F(LatestWinsTest, OneQuestionGetsItsAnswer) {
    solver.ask(named(1));
    EXPECT_TRUE(solver.busy());
    ASSERT_TRUE(QTest::qWaitFor([this] { return !solver.busy(); }, 2000));
    EXPECT_EQ(heard, std::vector<std::string>{"1"});
}

TEST_F(LatestWinsTest, OfTwentyQuestionsTheLastIsAnsweredAndFewAreComputed) {
    for (int i = 1; i <= 20; ++i) solver.ask(named(i));
    ASSERT_TRUE(QTest::qWaitFor([this] { return !solver.busy(); }, 2000));
    ASSERT_FALSE(heard.empty());
    EXPECT_EQ(heard.back(), "20");
    EXPECT_LE(slow.runs->load(), 3);
}

TEST_F(LatestWinsTest, QuestionsFasterThanAnswersDoNotStarveTheScreen) {
    for (int i = 1; i <= 60; ++i) {
        solver.ask(named(i));
        QTest::qWait(2);
    }
    const std::size_t during = heard.size();
    ASSERT_TRUE(QTest::qWaitFor([this] { return !solver.busy(); }, 2000));
    EXPECT_GE(during, 2U) << "an answer every second run, although every run is overtaken";
    EXPECT_EQ(heard.back(), "60");
}

TEST(LatestWins, WhatTakesVeryLongGivesWayToANewerQuestion) {
    const auto compute = [](const design::Design& design, const catalog::Catalog&, const analysis::AnswerPtr&,
                            std::stop_token stop, const analysis::Question&) -> analysis::AnswerPtr {
        auto answer = std::make_shared<analysis::Answer>();
        for (int i = 0; i < 20000 && design.name != "3" && !stop.stop_requested(); ++i)
            std::this_thread::sleep_for(1ms);
        answer->stopped = stop.stop_requested();
        return answer;
    };
    solver::LatestWins solver(std::make_shared<const catalog::Catalog>(), compute);
    std::vector<std::string> heard;
    QObject::connect(
        &solver, &solver::LatestWins::answered,
        [&](const analysis::AnswerPtr&, const design::DesignPtr& design) { heard.push_back(design->name); });
    solver.ask(named(1));
    solver.ask(named(2));  // stops the first
    QTest::qWait(100);
    solver.ask(named(3));  // must wait, for two are not stopped in a row, but not for twenty seconds
    ASSERT_TRUE(QTest::qWaitFor([&] { return !solver.busy(); }, 10000));
    EXPECT_EQ(heard, std::vector<std::string>{"3"});
}

TEST_F(LatestWinsTest, TheAnswerBeforeIsHandedOnForReuse) {
    solver.ask(named(1));
    ASSERT_TRUE(QTest::qWaitFor([this] { return !solver.busy(); }, 2000));
    EXPECT_EQ(slow.withPrevious->load(), 0);
    solver.ask(named(2));
    ASSERT_TRUE(QTest::qWaitFor([this] { return !solver.busy(); }, 2000));
    EXPECT_EQ(slow.withPrevious->load(), 1);
}

TEST_F(LatestWinsTest, TheEventLoopIsNotBlocked) {
    solver.ask(named(1));
    const auto start = std::chrono::steady_clock::now();
    QCoreApplication::processEvents();
    EXPECT_LT(std::chrono::steady_clock::now() - start, 8ms);
    EXPECT_TRUE(solver.busy());
    ASSERT_TRUE(QTest::qWaitFor([this] { return !solver.busy(); }, 2000));
}

TEST(LatestWins, AComputationThatThrowsIsSaidAndTheNextOneRuns) {
    const auto compute = [](const design::Design& design, const catalog::Catalog&, const analysis::AnswerPtr&,
                            std::stop_token, const analysis::Question&) -> analysis::AnswerPtr {
        if (design.name == "1") throw std::logic_error("a matrix without rank");
        return std::make_shared<analysis::Answer>();
    };
    solver::LatestWins solver(std::make_shared<const catalog::Catalog>(), compute);
    QString sentence;
    int answers = 0;
    QObject::connect(&solver, &solver::LatestWins::failed, [&](const QString& text) { sentence = text; });
    QObject::connect(&solver, &solver::LatestWins::answered, [&] { ++answers; });
    solver.ask(named(1));
    ASSERT_TRUE(QTest::qWaitFor([&] { return !solver.busy(); }, 2000));
    EXPECT_EQ(sentence, "The computation failed; the curves show the design before. (a matrix without rank)");
    solver.ask(named(2));
    ASSERT_TRUE(QTest::qWaitFor([&] { return !solver.busy(); }, 2000));
    EXPECT_EQ(answers, 1);
}

TEST(LatestWins, DestructionStopsTheRunningWork) {
    Slow slow;
    const auto start = std::chrono::steady_clock::now();
    {
        solver::LatestWins solver(std::make_shared<const catalog::Catalog>(), slow);
        solver.ask(named(1));
        solver.ask(named(2));
    }
    EXPECT_LT(std::chrono::steady_clock::now() - start, 500ms);
    EXPECT_LE(slow.runs->load(), 1);
}

}  // namespace latest_wins_test
