// SPDX-License-Identifier: GPL-3.0-or-later
// The winding program in its window, with real events. Pictures are left in the build folder.
#include "winding/winding_window.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QDir>
#include <QScrollBar>
#include <QTemporaryDir>
#include <QTest>

#include "bench/bench_window.h"
#include "commands/places.h"
#include "design/edit.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"
#include "exchange/write_file.h"

namespace winding_window_test {

class WindingWindowTest : public testing::Test {
protected:
    QTemporaryDir folder;
    commands::Places where = commands::places();
    std::shared_ptr<const catalog::Catalog> shop =
        std::make_shared<const catalog::Catalog>(commands::shopCatalog(where));
    std::string path = where.demos + "/microphone-input/microphone-input.coilwright";
    bench::BenchWindow window{
        shop, exchange::readDesign(exchange::readFile(path), path, *shop).design, {}, commands::resourceFolders(where)};
    winding::WindingWindow* program = nullptr;

    void SetUp() override {
        window.show();
        QApplication::setActiveWindow(&window);
        QTest::keyClick(&window, Qt::Key_P, Qt::ControlModifier | Qt::ShiftModifier);
        program = window.findChild<winding::WindingWindow*>();
        ASSERT_NE(program, nullptr);
        QTest::qWait(1);
        ASSERT_NE(program->proof(), nullptr) << program->message().toStdString();
    }
    template <class Widget>
    Widget* named(const QString& name) {
        for (auto* one : program->findChildren<Widget*>())
            if (one->accessibleName() == name) return one;
        return nullptr;
    }
    void picture(const QString& name) {
        const QString to = COILWRIGHT_BUILD_DIR "/pictures";
        ASSERT_TRUE(QDir().mkpath(to));
        ASSERT_TRUE(program->grab().save(to + QLatin1Char('/') + name + QStringLiteral(".png")));
    }
};

TEST_F(WindingWindowTest, ShowsTheDesignsProgramProvenOnEveryWinder) {
    auto* winder = named<QComboBox>("Winder");
    ASSERT_EQ(winder->count(), 3);
    for (int k = 0; k < winder->count(); ++k) {
        winder->setCurrentIndex(k);
        EXPECT_TRUE(program->proof()->faults.empty()) << program->proof()->faults.front();
        EXPECT_EQ(named<QListWidget>("Blocks")->count(), static_cast<int>(program->proof()->lines.size()));
    }
    EXPECT_TRUE(named<QLabel>("Caution")->text().contains("guards")) << "caution on every screen";
    EXPECT_TRUE(named<QLabel>("Time and count")->text().contains("units a day"));
}

TEST_F(WindingWindowTest, KeysStepThroughTheBlocks) {
    auto* blocks = named<QListWidget>("Blocks");
    QTest::keyClick(blocks, Qt::Key_Right);
    EXPECT_EQ(program->transport().progress().event, 1U);
    QTest::keyClick(blocks, Qt::Key_Left);
    EXPECT_EQ(program->transport().progress().event, 0U);
    QTest::keyClick(program, Qt::Key_PageDown);
    EXPECT_EQ(program->transport().progress().step, 1);
    EXPECT_EQ(blocks->currentRow() + 1, program->proof()->run.stepLines[1]);
    named<QSlider>("Block")->setValue(static_cast<int>(program->proof()->run.events.size() * 2 / 3));
    EXPECT_EQ(program->transport().progress().event, program->proof()->run.events.size() * 2 / 3);
    picture("winding_program");
    QTest::keyClick(program, Qt::Key_Home);
    EXPECT_EQ(program->transport().progress().event, 0U);
}

TEST_F(WindingWindowTest, TheListOfBlocksHasTheFocusAndLeavesTheKeysOfSteppingToTheProgram) {
    auto* blocks = named<QListWidget>("Blocks");
    EXPECT_EQ(program->focusWidget(), blocks);
    const QString winder = named<QComboBox>("Winder")->currentText();
    QTest::keyClick(program->focusWidget(), Qt::Key_PageDown);
    EXPECT_EQ(program->transport().progress().step, 1);
    QTest::keyClick(program->focusWidget(), Qt::Key_Home);
    EXPECT_EQ(program->transport().progress().event, 0U);
    EXPECT_EQ(named<QComboBox>("Winder")->currentText(), winder);
    EXPECT_EQ(blocks->textElideMode(), Qt::ElideNone) << "a block is never cut";
    EXPECT_GT(blocks->horizontalScrollBar()->maximum(), 0) << "but scrolled to";
}

TEST_F(WindingWindowTest, PlaysOnByItselfAndHalts) {
    auto* blocks = named<QListWidget>("Blocks");
    QTest::keyClick(blocks, Qt::Key_Space);
    EXPECT_TRUE(program->transport().playing());
    EXPECT_TRUE(QTest::qWaitFor([this] { return program->transport().progress().seconds > 20; }, 5000));
    QTest::keyClick(blocks, Qt::Key_Space);
    EXPECT_FALSE(program->transport().playing());
}

TEST_F(WindingWindowTest, AProgramChangedByHandIsOpenedAndItsDifferenceLeadsToItsBlock) {
    std::string text;
    for (const std::string& line : program->proof()->lines) text += line + '\n';
    // The first stretch of turns loses some.
    const replay::Stretch first = program->proof()->run.stretches.front();
    std::string changed;
    for (std::size_t k = 0; k < program->proof()->lines.size(); ++k) {
        std::string line = program->proof()->lines[k];
        if (static_cast<int>(k) + 1 == first.line) line.replace(line.find(" C"), 3, " C1");
        changed += line + '\n';
    }
    ASSERT_NE(text, changed);
    const QString file = folder.filePath("changed.nc");
    exchange::writeFile(file.toStdString(), changed);
    program->openProgram(file);
    ASSERT_FALSE(program->proof()->faults.empty());
    auto* faults = named<QListWidget>("Proof");
    EXPECT_EQ(faults->count(), static_cast<int>(program->proof()->faults.size()));
    faults->setCurrentRow(0);
    emit faults->itemActivated(faults->item(0));
    EXPECT_EQ(program->transport().progress().step, first.step);
    picture("winding_program_changed");
    program->writeAnew();
    EXPECT_TRUE(program->proof()->faults.empty());
}

TEST_F(WindingWindowTest, ABadProgramGetsItsSentenceAndTheOldOneStays) {
    const QString file = folder.filePath("bad.nc");
    exchange::writeFile(file.toStdString(), "no program\n");
    const auto before = program->proof();
    program->openProgram(file);
    EXPECT_EQ(program->proof(), before);
    EXPECT_TRUE(program->message().contains("bad.nc")) << program->message().toStdString();
}

TEST_F(WindingWindowTest, FollowsTheDesignAndWritesWhatIsShown) {
    window.document().replace(design::changed(*window.document().design(),
                                              [](design::Design& d) {
                                                  for (auto& item : d.coil[0].order)
                                                      if (auto* section = item.section()) {
                                                          section->turns = section->turns.value - 10;
                                                          break;
                                                      }
                                              }),
                              "fewer turns");
    EXPECT_TRUE(program->proof()->faults.empty());
    const QString file = folder.filePath("unit.nc"), table = folder.filePath("unit.csv");
    ASSERT_TRUE(program->writeProgram(file));
    ASSERT_TRUE(program->writeTable(table));
    std::string shown;
    for (const std::string& line : program->proof()->lines) shown += line + '\n';
    EXPECT_EQ(exchange::readFile(file.toStdString()), shown);
    EXPECT_FALSE(exchange::readFile(table.toStdString()).empty());
    EXPECT_FALSE(program->writeProgram(folder.filePath("none/unit.nc")));
}

}  // namespace winding_window_test
