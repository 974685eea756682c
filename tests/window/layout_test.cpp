// SPDX-License-Identifier: GPL-3.0-or-later
// No fixed text is cut off: labels, buttons and boxes have the room that they ask for, at the smallest usual window, in
// a larger font, and with a long name. Pictures of each are left in the build folder.
#include <gtest/gtest.h>

#include <QApplication>
#include <QDir>
#include <QHeaderView>
#include <QTest>

#include "bench/bench_window.h"
#include "bench/theme.h"
#include "commands/places.h"
#include "cut/chip.h"
#include "design/edit.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"
#include "room_for_text.h"

namespace layout_test {

class LayoutTest : public testing::Test {
protected:
    QFont usual = QApplication::font();
    ~LayoutTest() override {
        QApplication::setFont(usual);
        bench::applyLook(bench::Look::Light);
    }

    /// The demo in a window of that size, everything answered and painted.
    void open(const char* demo, const QSize& size) {
        const auto where = commands::places();
        shop = std::make_shared<const catalog::Catalog>(commands::shopCatalog(where));
        for (const std::string& path : commands::demoDesigns(where))
            if (path.find(demo) != std::string::npos)
                design = exchange::readDesign(exchange::readFile(path), path, *shop).design;
        ASSERT_NE(design, nullptr);
        window = std::make_unique<bench::BenchWindow>(shop, design, std::vector<std::string>{});
        window->resize(size);
        window->show();
        settle();
    }
    void settle() {
        ASSERT_TRUE(QTest::qWaitFor([this] { return !window->computing() && window->changes().settled(); }, 20000));
        QTest::qWait(30);  // queued replots
    }
    void picture(const QString& name) {
        const QString folder = COILWRIGHT_BUILD_DIR "/pictures";
        ASSERT_TRUE(QDir().mkpath(folder));
        ASSERT_TRUE(window->grab().save(folder + QLatin1Char('/') + name + QStringLiteral(".png")));
    }
    void expectRoomForEveryText() {
        room_for_text::expectRoomForEveryText(*window, 20);  // chips, head, form
        const auto* more = window->findChild<QWidget*>(QStringLiteral("qt_toolbar_ext_button"));
        EXPECT_TRUE(more == nullptr || !more->isVisible()) << "the head hides an act";
    }
    std::shared_ptr<const catalog::Catalog> shop;
    design::DesignPtr design;
    std::unique_ptr<bench::BenchWindow> window;
};

TEST_F(LayoutTest, TheSmallWindowCutsNoTextOff) {
    open("splitter", {1280, 800});
    expectRoomForEveryText();
    EXPECT_EQ(window->size(), QSize(1280, 800));  // nothing asks for more
    picture("small_light");
}

TEST_F(LayoutTest, ALargerFontCutsNoTextOff) {
    QFont large = usual;
    large.setPointSizeF(1.5 * usual.pointSizeF());
    QApplication::setFont(large);
    open("microphone-input", {1920, 1200});
    expectRoomForEveryText();
    picture("large_font");
}

TEST_F(LayoutTest, ANameOfSixtyLettersLeavesTheHeadWhole) {
    open("direct-box", {1280, 800});
    window->document().replace(
        design::changed(*design, [](design::Design& d) { d.name = std::string(30, 'W') + std::string(30, 'm'); }),
        "name");
    settle();
    expectRoomForEveryText();
    picture("long_name");
}

TEST_F(LayoutTest, TheDarkLookHasTheSameRoom) {
    open("line-unit", {1280, 800});
    window->actions()[bench::Act::LookDark].trigger();
    settle();
    expectRoomForEveryText();
    picture("small_dark");
}

}  // namespace layout_test
