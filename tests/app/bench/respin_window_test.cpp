// SPDX-License-Identifier: GPL-3.0-or-later
// A sample whose readings break a promise is brought back in the window, by keys alone.
#include "bench/respin_window.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QLineEdit>
#include <QTemporaryDir>
#include <QTest>

#include "exchange/readings_file.h"
#include "opened_bench.h"

namespace respin_window_test {

const std::string read = "inductance_10Hz.P";

class SampleSpunAgain : public opened_bench::OpenedBench {
protected:
    SampleSpunAgain() : OpenedBench("microphone-input") {}
    bench::RespinWindow* respin = nullptr;

    void SetUp() override {
        showWindow();
        QTest::keyClick(&window, Qt::Key_F, Qt::ControlModifier | Qt::ShiftModifier);
        respin = window.findChild<bench::RespinWindow*>();
        ASSERT_NE(respin, nullptr);
        ASSERT_TRUE(QTest::qWaitForWindowActive(respin));
    }
    bench::ReadingsModel& model() { return respin->readings().model(); }
    int rowOf(const std::string& figure) {
        for (std::size_t row = 0; row < model().figures().size(); ++row)
            if (model().figures()[row].name == figure) return static_cast<int>(row);
        return -1;
    }
    /// Goes to the cell and types.
    void type(int row, int column, const QString& text) {
        respin->readings().setFocus();
        respin->readings().setCurrentIndex(model().index(row, column));
        QTest::keyClick(&respin->readings(), Qt::Key_F2);
        auto* line = respin->readings().findChild<QLineEdit*>();
        ASSERT_NE(line, nullptr);
        line->selectAll();
        QTest::keyClick(line, Qt::Key_Delete);
        QTest::keyClicks(line, text);
        QTest::keyClick(line, Qt::Key_Return);
        QTest::qWait(10);
    }
    QPushButton& button(const QString& text) {
        for (auto* b : respin->findChildren<QPushButton*>())
            if (b->text().remove('&') == text) return *b;
        throw std::runtime_error("no button " + text.toStdString());
    }
    void seek() {
        QTest::keyClick(&button("Seek"), Qt::Key_Space);
        ASSERT_TRUE(respin->busy());
        EXPECT_EQ(button("Stop").isEnabled(), true);
        ASSERT_TRUE(QTest::qWaitFor([this] { return !respin->busy(); }, 120000));
        QTest::qWait(10);
    }
};

TEST_F(SampleSpunAgain, ALowInductanceIsBroughtBackByTheSmallestChange) {
    EXPECT_FALSE(button("Seek").isEnabled());
    const int row = rowOf(read);
    ASSERT_GE(row, 0);
    type(row, bench::ReadingsModel::Read, "2.9 H");
    type(row, bench::ReadingsModel::Doubt, "2 %");
    const auto readings = model().readings();
    ASSERT_EQ(readings.size(), 1u);
    EXPECT_NEAR(readings[0].value, 2.9, 1e-12);
    EXPECT_NEAR(readings[0].doubt, 0.058, 1e-12);
    seek();
    ASSERT_FALSE(respin->cards().isEmpty()) << respin->state().toStdString();
    EXPECT_TRUE(respin->state().startsWith("Changes that bring every promise back")) << respin->state().toStdString();
    EXPECT_TRUE(respin->words().contains("It breaks")) << respin->words().toStdString();
    EXPECT_TRUE(respin->words().contains("read 2.90 H")) << respin->words().toStdString();
    EXPECT_TRUE(respin->words().contains("alters ")) << respin->words().toStdString();
    QTest::keyClick(&button("Take it up"), Qt::Key_Space);
    EXPECT_NE(*window.document().design(), *design);
    EXPECT_TRUE(window.document().undoText().startsWith("spun again")) << window.document().undoText().toStdString();
    // What was taken up is what the card shows.
    EXPECT_EQ(*window.document().design(), *respin->cards().constFirst()->design());
    window.document().undo();
    EXPECT_EQ(*window.document().design(), *design);
}

TEST_F(SampleSpunAgain, WhatIsNoReadingIsSaidAndChangesNothing) {
    const int row = rowOf(read);
    type(row, bench::ReadingsModel::Read, "2.9 kg");
    EXPECT_TRUE(model().readings().empty());
    EXPECT_TRUE(respin->state().contains("inductance_10Hz.P")) << respin->state().toStdString();
    EXPECT_TRUE(respin->state().contains("2.9 kg")) << respin->state().toStdString();
    type(row, bench::ReadingsModel::Read, "3,1 H");
    ASSERT_EQ(model().readings().size(), 1u);
    EXPECT_NEAR(model().readings()[0].value, 3.1, 1e-12);
    type(row, bench::ReadingsModel::Doubt, "0");
    EXPECT_EQ(model().readings()[0].doubt, 0);
    EXPECT_TRUE(respin->state().contains("doubt")) << respin->state().toStdString();
    type(row, bench::ReadingsModel::Read, "");
    EXPECT_TRUE(model().readings().empty());
    type(row, bench::ReadingsModel::Read, "3 H");
    respin->readings().setCurrentIndex(model().index(row, bench::ReadingsModel::Read));
    QTest::keyClick(&respin->readings(), Qt::Key_Delete);
    EXPECT_TRUE(model().readings().empty());
    respin->takeReadings(QString::fromStdString(file));
    EXPECT_TRUE(respin->state().contains("line 1")) << respin->state().toStdString();
    EXPECT_TRUE(model().readings().empty());
}

TEST_F(SampleSpunAgain, ReadingsAreKeptInAFileAndTakenFromIt) {
    QTemporaryDir folder;
    const QString path = folder.filePath("sample.csv");
    const auto& figures = model().figures();
    for (std::size_t k = 0; k < figures.size(); k += 7)
        model().setData(model().index(static_cast<int>(k), bench::ReadingsModel::Read),
                        model().index(static_cast<int>(k), bench::ReadingsModel::Designed).data(), Qt::EditRole);
    type(rowOf(read), bench::ReadingsModel::Read, "3.05 H");
    type(rowOf(read), bench::ReadingsModel::Doubt, "20 mH");
    const auto before = model().readings();
    ASSERT_GT(before.size(), 5u);
    respin->keepReadings(path);
    EXPECT_EQ(exchange::readReadings(exchange::readFile(path.toStdString()), "F", figures), before);
    model().take({});
    EXPECT_TRUE(model().readings().empty());
    respin->takeReadings(path);
    EXPECT_EQ(model().readings(), before);
    respin->keepReadings("/nowhere/at/all.csv");
    EXPECT_TRUE(respin->state().contains("/nowhere/at/all.csv")) << respin->state().toStdString();
}

TEST_F(SampleSpunAgain, AUnitAsDesignedNeedsNoChange) {
    const int row = rowOf(read);
    type(row, bench::ReadingsModel::Read, model().index(row, bench::ReadingsModel::Designed).data().toString());
    seek();
    EXPECT_TRUE(respin->state().startsWith("The sample keeps every promise")) << respin->state().toStdString();
    EXPECT_TRUE(respin->cards().isEmpty());
    EXPECT_FALSE(button("Take it up").isEnabled());
}

}  // namespace respin_window_test
