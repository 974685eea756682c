// SPDX-License-Identifier: GPL-3.0-or-later
// Start page, keys, wrong fields told in the title, and what governs a promise. Pictures of them are left in the build
// folder, to be looked at.
#include <gtest/gtest.h>

#include <QDir>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QPushButton>
#include <QTableWidget>
#include <QTest>
#include <set>

#include "analysis/lever.h"
#include "bench/bench_window.h"
#include "bench/design_card.h"
#include "bench/key_list.h"
#include "bench/start_page.h"
#include "commands/places.h"
#include "editors/form_pane.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"

namespace manners_test {

const std::string stepUp = COILWRIGHT_SOURCE_DIR "/tests/references/open_1_shielded_step_up.coilwright";

void picture(QWidget& of, const QString& name) {
    const QString folder = COILWRIGHT_BUILD_DIR "/pictures";
    ASSERT_TRUE(QDir().mkpath(folder));
    ASSERT_TRUE(of.grab().save(folder + QLatin1Char('/') + name + QStringLiteral(".png")));
}

class MannersTest : public testing::Test {
protected:
    commands::Places where = commands::places();
    std::shared_ptr<const catalog::Catalog> shop =
        std::make_shared<const catalog::Catalog>(commands::shopCatalog(where));
    bench::BenchWindow window{shop, exchange::readDesign(exchange::readFile(stepUp), stepUp, *shop).design,
                              commands::demoDesigns(where)};

    void SetUp() override {
        window.show();
        settle();
    }
    void settle() {
        ASSERT_TRUE(QTest::qWaitFor([this] { return !window.computing() && !window.ranking(); }, 20000));
    }
};

TEST_F(MannersTest, TheStartPageOffersEveryDemoAndOpensOne) {
    window.showStart();
    QTest::qWait(1);
    const auto cards = window.findChildren<bench::DesignCard*>();
    ASSERT_EQ(cards.size(), 5);
    for (const auto* card : cards) {
        EXPECT_FALSE(card->accessibleName().isEmpty());
        EXPECT_FALSE(card->accessibleDescription().isEmpty());
        EXPECT_GE(card->width(), card->sizeHint().width());
        EXPECT_GE(card->height(), card->sizeHint().height());
    }
    picture(window, "start_page");
    const std::string name = cards.front()->text().toStdString();
    QTest::keyClick(cards.front(), Qt::Key_Space);
    settle();
    EXPECT_EQ(window.document().design()->name, name);
    EXPECT_TRUE(window.plotGrid().isVisible());
}

TEST_F(MannersTest, LanguagesAreOfferedOnceWhenTheirMenuIsOpened) {
    bench::BenchWindow other{shop, window.document().design(), {}, commands::resourceFolders(where)};
    other.show();
    QMenu& menu = other.actions().languageMenu();
    const auto names = [&] {
        QStringList all;
        for (const QAction* action : menu.actions()) all << action->text();
        return all;
    };
    const QStringList ours{"As the &desktop", "English"}, every = QStringList(ours) << "Deutsch";
    EXPECT_EQ(names(), ours);
    for (int time = 0; time < 2; ++time) {
        menu.popup({});
        EXPECT_EQ(names(), every);
        menu.close();
    }
}

TEST_F(MannersTest, EscapeLeavesTheStartPageForTheDesignThatIsOpen) {
    window.showStart();
    EXPECT_FALSE(window.plotGrid().isVisible());
    QTest::keyClick(window.findChild<bench::StartPage*>(), Qt::Key_Escape);
    EXPECT_TRUE(window.plotGrid().isVisible());
    EXPECT_EQ(window.document().design()->name,
              exchange::readDesign(exchange::readFile(stepUp), stepUp, *shop).design->name);
}

TEST_F(MannersTest, TheKeyListHoldsEveryShortcutOnceAndF1OpensIt) {
    const auto lines = bench::keyLines(window.actions());
    std::set<QString> seen;
    for (const auto& line : lines) {
        EXPECT_TRUE(seen.insert(line.where + line.key).second) << line.where.toStdString() << line.key.toStdString();
        EXPECT_FALSE(line.does.isEmpty()) << line.key.toStdString();
    }
    for (const QAction* action : window.actions().all())
        if (!action->shortcut().isEmpty()) {
            EXPECT_TRUE(seen.contains("window" + action->shortcut().toString(QKeySequence::NativeText)));
        }
    window.actions()[bench::Act::Keys].trigger();
    auto* list = window.findChild<bench::KeyList*>();
    ASSERT_NE(list, nullptr);
    EXPECT_FALSE(list->isModal());
    EXPECT_EQ(list->findChild<QTableWidget*>()->rowCount(), static_cast<int>(lines.size()));
    EXPECT_EQ(window.actions()[bench::Act::Keys].shortcuts(),
              (QList<QKeySequence>{QKeySequence("F1"), QKeySequence("?")}));
    picture(*list, "keys");
}

TEST_F(MannersTest, AWrongFieldIsToldInTitleAndStatusUntilItIsRight) {
    window.selection().select(design::ItemIndex{0, 0});
    QTest::qWait(1);
    QLineEdit* turns = nullptr;
    for (auto* field : window.findChild<editors::FormPane*>()->fields())
        if (field->part().label == "turns") turns = field->findChild<QLineEdit*>();
    ASSERT_NE(turns, nullptr);
    const auto told = [this] {
        bool status = false;
        for (const auto* label : window.findChildren<QLabel*>())
            status = status || (label->isVisible() &&
                                label->text() == "A field holds something wrong: curves are of the last good design.");
        return std::pair(status, window.windowTitle().contains("a field is wrong"));
    };
    EXPECT_EQ(told(), std::pair(false, false));
    turns->setFocus();
    turns->selectAll();
    QTest::keyClicks(turns, "many");
    EXPECT_EQ(told(), std::pair(true, true));
    picture(window, "wrong_field");
    turns->selectAll();
    QTest::keyClicks(turns, "121");
    EXPECT_EQ(told(), std::pair(false, false));
}

TEST_F(MannersTest, APromiseSaysWhatGovernsItAndSelectsThatPart) {
    analysis::PromiseState promise;
    promise.figure = "dcr.S";
    emit window.promises().pointed(promise);
    EXPECT_TRUE(window.message().contains("What governs it is being solved.")) << window.message().toStdString();
    settle();
    const auto expected = analysis::pulls(*window.document().design(), *shop, window.answer(), "dcr.S");
    ASSERT_FALSE(expected.empty());
    EXPECT_TRUE(window.message().startsWith(
        "DC resistance, S is " + QString::fromStdString(analysis::sentence(expected, units::Kind::Resistance))))
        << window.message().toStdString();
    EXPECT_EQ(expected.front().lever.winding, "S");
    EXPECT_EQ(window.selection().selected(), document::Selected(document::WindingPart{"S"}));
}

TEST_F(MannersTest, AMaskSaysWhatGovernsItWhereItIsTightest) {
    analysis::PromiseState promise;
    promise.mask = true;
    promise.figure = "response";
    promise.frequency = 20000;
    emit window.promises().pointed(promise);
    settle();
    const auto expected =
        analysis::pulls(*window.document().design(), *shop, window.answer(), analysis::Spot{"response", 20000});
    ASSERT_FALSE(expected.empty());
    EXPECT_TRUE(window.message().contains("20.0 kHz is " +
                                          QString::fromStdString(analysis::sentence(expected, units::Kind::Decibel))))
        << window.message().toStdString();
}

}  // namespace manners_test
