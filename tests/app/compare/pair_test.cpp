// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QMenu>
#include <QSignalSpy>
#include <QSplitter>
#include <QtTest/QTest>
#include <cmath>

#include "commands/verb.h"
#include "compare/pair_window.h"

namespace pair_test {

const std::string stepUp = COILWRIGHT_SOURCE_DIR "/tests/references/open_1_shielded_step_up.coilwright";

struct Two {
    commands::Opened a = commands::openDesign(stepUp);
    design::DesignPtr b = [this] {
        auto more = std::make_shared<design::Design>(*a.design);
        for (design::Item& item : more->coil.front().order)
            if (design::Section* s = item.section(); s && s->winding == "P") s->turns = 240;
        return more;
    }();
};

TEST(PairLines, FiguresOfBothStandBesideEachOther) {
    const Two two;
    const auto a = analysis::answer(*two.a.design, two.a.shop), b = analysis::answer(*two.b, two.a.shop);
    const auto pairs = compare::paired(*a, *b);
    ASSERT_EQ(pairs.size(), a->figures.size());
    const auto ratio =
        std::find_if(pairs.begin(), pairs.end(), [](const auto& p) { return p.any().name == "ratio.P.S"; });
    ASSERT_NE(ratio, pairs.end());
    // 1080/240 less 1080/216 is -0.5, a tenth of 5.
    EXPECT_EQ(compare::differenceText(*ratio), "−0.50, −10 %");
}

TEST(PairLines, EqualFiguresDifferByNothing) {
    units::Figure one;
    one.value = 3;
    one.unit = "dB";
    units::Figure other = one;
    EXPECT_EQ(compare::differenceText({&one, &other}), "0");
    other.value = 3.25;
    EXPECT_EQ(compare::differenceText({&one, &other}), "+0.25 dB");
    other.value = 3.001;
    EXPECT_EQ(compare::differenceText({&one, &other}), "below 0.01 dB");
    other.value = std::nan("");
    EXPECT_EQ(compare::differenceText({&one, &other}), "");
    EXPECT_EQ(compare::differenceText({&one, nullptr}), "");
}

TEST(PairLines, TheDifferenceOfResponsesIsTakenPointByPoint) {
    const Two two;
    const auto a = analysis::answer(*two.a.design, two.a.shop), b = analysis::answer(*two.b, two.a.shop);
    const auto trace = compare::differenceTrace(*a, *b, "response");
    ASSERT_TRUE(trace);
    ASSERT_FALSE(trace->curves.empty());
    for (const std::size_t k : {0u, 300u, 599u})
        EXPECT_DOUBLE_EQ(trace->curves[0].y[k],
                         b->trace("response")->curves[0].y[k] - a->trace("response")->curves[0].y[k]);
    EXPECT_EQ(compare::differenceTrace(*a, *b, "no such trace"), nullptr);
}

TEST(PairWindowTest, ShowsBothCutsTheirDifferencesAndTheirCurves) {
    const Two two;
    compare::PairWindow window(two.a.design, two.b, std::make_shared<catalog::Catalog>(two.a.shop));
    QSignalSpy shown(&window, &compare::PairWindow::shown);
    window.resize(1280, 800);
    window.show();
    ASSERT_TRUE(shown.count() > 0 || shown.wait(10000));
    EXPECT_EQ(window.differences(), QStringList{"P.a turns: 216 → 240"});
    EXPECT_GT(window.figures().rowCount(), 10);
    EXPECT_TRUE(window.overlay().plot().holding());
    ASSERT_TRUE(window.difference().plot().trace());
    EXPECT_EQ(window.difference().plot().shownCurves(), QStringList{"response"});
    // Each cut has ink of its own, and they are not the same picture.
    const auto cuts = window.findChildren<compare::StillCut*>();
    ASSERT_EQ(cuts.size(), 2);
    EXPECT_NE(cuts[0]->grab().toImage(), cuts[1]->grab().toImage());
}

TEST(PairWindowTest, TheSameDesignTwiceIsSaidToBeTheSame) {
    const Two two;
    compare::PairWindow window(two.a.design, two.a.design, std::make_shared<catalog::Catalog>(two.a.shop));
    EXPECT_EQ(window.differences(), QStringList{"The designs are the same."});
}

TEST(PairWindowTest, APartOfBIsAskedForAndAFollows) {
    const Two two;
    compare::PairWindow window(two.a.design, two.b, std::make_shared<catalog::Catalog>(two.a.shop));
    QSignalSpy asked(&window, &compare::PairWindow::portionAsked);
    const QList<QAction*> offered = window.taking().menu()->actions();
    ASSERT_EQ(offered.size(), 2);
    EXPECT_EQ(offered[0]->text(), "section P.a");
    offered[0]->trigger();
    ASSERT_TRUE(asked.count() > 0 || asked.wait(1000));
    const auto portion = asked.front().front().value<design::Portion>();
    QSignalSpy shown(&window, &compare::PairWindow::shown);
    window.setFirst(design::withPortion(*two.a.design, *two.b, portion));
    EXPECT_EQ(window.differences(), QStringList{"The designs are the same."});
    EXPECT_FALSE(window.taking().isEnabled());
    ASSERT_TRUE(shown.count() > 0 || shown.wait(10000));
    const auto& curve = window.difference().plot().trace()->curves[0].y;
    for (const double off : curve) EXPECT_EQ(off, 0);
}

TEST(PairWindowTest, OneCursorStandsInBothPlots) {
    const Two two;
    compare::PairWindow window(two.a.design, two.b, std::make_shared<catalog::Catalog>(two.a.shop));
    QSignalSpy shown(&window, &compare::PairWindow::shown);
    window.show();
    ASSERT_TRUE(shown.count() > 0 || shown.wait(10000));
    const QString before = window.difference().readoutText();
    emit window.overlay().plot().cursorAsked(1000);
    EXPECT_NE(window.difference().readoutText(), before);
}

TEST(PairWindowTest, EverythingIsNamedForThoseWhoDoNotSeeIt) {
    const Two two;
    compare::PairWindow window(two.a.design, two.b, std::make_shared<catalog::Catalog>(two.a.shop));
    QSignalSpy shown(&window, &compare::PairWindow::shown);
    ASSERT_TRUE(shown.count() > 0 || shown.wait(10000));
    for (const QWidget* widget : window.findChildren<QWidget*>()) {
        const bool reached = (widget->focusPolicy() & Qt::TabFocus) && !widget->focusProxy();
        EXPECT_TRUE(!reached || !widget->accessibleName().isEmpty()) << widget->metaObject()->className();
    }
}

}  // namespace pair_test
