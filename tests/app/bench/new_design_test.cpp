// SPDX-License-Identifier: GPL-3.0-or-later
// From nothing to a design: blank kinds, drawn up anew from the brief, sought.
#include <gtest/gtest.h>

#include <QApplication>
#include <QFileDialog>
#include <QTest>
#include <QTimer>
#include <cmath>

#include "bench/seek_window.h"
#include "bench/start_page.h"
#include "design/edit.h"
#include "design/unsaid.h"
#include "opened_bench.h"

namespace new_design_test {

using opened_bench::resources;

class NewDesign : public opened_bench::OpenedBench {
protected:
    NewDesign() : OpenedBench("ribbon-step-up") {}

    void SetUp() override { showWindow(); }
    bench::SeekWindow* seekWindow() {
        window.actions()[bench::Act::Seek].trigger();
        return window.findChild<bench::SeekWindow*>();
    }
};

TEST_F(NewDesign, ByKeysAloneABlankDesignStandsOnTheBench) {
    QTest::keyClick(&window, Qt::Key_N, Qt::ControlModifier);
    ASSERT_NE(window.findChild<bench::StartPage*>(), nullptr);
    auto* first = qobject_cast<QAbstractButton*>(QApplication::focusWidget());
    ASSERT_NE(first, nullptr);
    EXPECT_EQ(first->text(), "Direct box");
    QTest::keyClick(first, Qt::Key_Tab);
    auto* second = qobject_cast<QAbstractButton*>(QApplication::focusWidget());
    ASSERT_NE(second, nullptr);
    QTest::keyClick(second, Qt::Key_Space);
    settle();
    const auto& design = *window.document().design();
    EXPECT_EQ(design.name, "Line input 1:1");
    EXPECT_TRUE(window.document().path().isEmpty());
    EXPECT_FALSE(window.document().canUndo());
    EXPECT_TRUE(window.message().contains(QString("yet: %1,").arg(design::unsaid(design).size())))
        << window.message().toStdString();
    ASSERT_TRUE(QTest::qWaitFor([&] { return window.answer() && window.answer()->figure("low_3dB"); }, 20000));
    EXPECT_TRUE(std::isfinite(window.answer()->figure("low_3dB")->value));
}

TEST_F(NewDesign, DrawingUpAnewIsOneActThatCanBeUndone) {
    const auto before = window.document().design();
    window.document().replace(design::changed(*before, [](design::Design& d) { d.brief.operatingLevel = -75; }),
                              "operating level");
    const auto louder = window.document().design();
    QTest::keyClick(&window, Qt::Key_N, Qt::ControlModifier | Qt::ShiftModifier);
    settle();
    const auto drawn = window.document().design();
    EXPECT_NE(*drawn, *louder);
    EXPECT_EQ(drawn->brief, louder->brief);
    EXPECT_EQ(window.document().undoText(), "drawn up anew");
    window.document().undo();
    EXPECT_EQ(*window.document().design(), *louder);
}

TEST_F(NewDesign, WhatIsInTheWayOfADrawingIsSaid) {
    window.document().replace(design::changed(*window.document().design(),
                                              [](design::Design& d) {
                                                  d.brief.size.length = 0.004;
                                                  d.brief.size.width = 0.004;
                                              }),
                              "size");
    const auto before = window.document().design();
    window.actions()[bench::Act::DrawUp].trigger();
    settle();
    EXPECT_EQ(window.document().design(), before);
    EXPECT_TRUE(window.message().contains("nothing in the catalog that could keep it"));
}

TEST_F(NewDesign, EnoughEndsASearchWithTheBestThatWasFound) {
    bench::SeekWindow* seek = seekWindow();
    ASSERT_NE(seek, nullptr);
    ASSERT_TRUE(QTest::qWaitForWindowActive(seek));
    const auto button = [&](const QString& text) {
        for (auto* b : seek->findChildren<QPushButton*>())
            if (b->text().remove('&') == text) return b;
        return static_cast<QPushButton*>(nullptr);
    };
    ASSERT_NE(button("Seek"), nullptr);
    EXPECT_FALSE(button("Take it up")->isEnabled());
    QTest::mouseClick(button("Seek"), Qt::LeftButton);
    const auto* state = seek->findChild<QLabel*>("seekState");
    ASSERT_NE(state, nullptr);
    // Some have been computed when it is told to stop.
    ASSERT_TRUE(
        QTest::qWaitFor([&] { return state->text().contains("computed") && !state->text().startsWith("0 "); }, 60000));
    QTest::mouseClick(button("Enough"), Qt::LeftButton);
    ASSERT_TRUE(QTest::qWaitFor([&] { return !seek->busy(); }, 60000));
    ASSERT_FALSE(seek->cards().isEmpty()) << state->text().toStdString();
    EXPECT_TRUE(seek->words().contains("turns of"));
    const auto before = window.document().design();
    QTest::mouseClick(button("Take it up"), Qt::LeftButton);
    EXPECT_NE(*window.document().design(), *before);
    EXPECT_EQ(window.document().design()->name, before->name);
    EXPECT_EQ(window.document().design()->brief, before->brief);
    EXPECT_EQ(window.document().undoText(), "candidate 1 taken up");
    window.document().undo();
    EXPECT_EQ(*window.document().design(), *before);
}

TEST_F(NewDesign, TheSearchTakesTheShopsPrices) {
    const std::string prices = resources + "/prices/example.csv";
    bench::SeekWindow* seek = seekWindow();
    ASSERT_NE(seek, nullptr);
    ASSERT_TRUE(QTest::qWaitForWindowActive(seek));
    const auto button = [&](const QString& text) {
        for (auto* b : seek->findChildren<QPushButton*>())
            if (b->text().remove('&') == text) return b;
        return static_cast<QPushButton*>(nullptr);
    };
    const auto* words = seek->findChild<QLabel*>("priceWords");
    const auto* state = seek->findChild<QLabel*>("seekState");
    ASSERT_NE(words, nullptr);
    EXPECT_TRUE(words->text().startsWith("No prices"));
    EXPECT_FALSE(button("No prices")->isEnabled());
    // The file is typed into the dialog.
    const auto typed = [&](const QString& path) {
        QTimer::singleShot(300, [path] {
            auto* dialog = qobject_cast<QFileDialog*>(QApplication::activeModalWidget());
            ASSERT_NE(dialog, nullptr);
            auto* line = dialog->findChild<QLineEdit*>();
            line->setFocus();
            line->selectAll();
            QTest::keyClicks(line, path);
            QTest::keyClick(line, Qt::Key_Return);
        });
        QTest::keyClick(button("Prices…"), Qt::Key_Space);
    };
    typed(QString::fromStdString(file));  // no price file: said, and nothing changes
    EXPECT_TRUE(state->text().contains("line 1")) << state->text().toStdString();
    EXPECT_TRUE(words->text().startsWith("No prices"));
    typed(QString::fromStdString(prices));
    EXPECT_TRUE(words->text().contains("example.csv")) << words->text().toStdString();
    EXPECT_TRUE(button("No prices")->isEnabled());
    QTest::mouseClick(button("Seek"), Qt::LeftButton);
    ASSERT_TRUE(
        QTest::qWaitFor([&] { return state->text().contains("computed") && !state->text().startsWith("0 "); }, 60000));
    QTest::mouseClick(button("Enough"), Qt::LeftButton);
    ASSERT_TRUE(QTest::qWaitFor([&] { return !seek->busy(); }, 60000));
    ASSERT_FALSE(seek->cards().isEmpty()) << state->text().toStdString();
    EXPECT_TRUE(seek->words().contains("each at 100")) << seek->words().toStdString();
    // The list's costs stay with the prices that it was made with.
    QTest::keyClick(button("No prices"), Qt::Key_Space);
    EXPECT_TRUE(words->text().startsWith("No prices"));
    EXPECT_TRUE(seek->words().contains("each at 100"));
}

TEST_F(NewDesign, AClosedSearchStops) {
    bench::SeekWindow* seek = seekWindow();
    ASSERT_NE(seek, nullptr);
    for (auto* b : seek->findChildren<QPushButton*>())
        if (b->text().remove('&') == "Seek") b->click();
    EXPECT_TRUE(seek->busy());
    delete seek;  // waits for what runs, and for nothing else
    settle();
    EXPECT_EQ(window.findChild<bench::SeekWindow*>(), nullptr);
}

}  // namespace new_design_test
