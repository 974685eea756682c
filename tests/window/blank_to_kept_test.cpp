// SPDX-License-Identifier: GPL-3.0-or-later
// A sitting from nothing to a design that keeps every promise, by real events, with a picture after each act. The
// pictures lie in the build folder under "sitting".
#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QApplication>
#include <QDir>
#include <QLineEdit>
#include <QTemporaryDir>
#include <QTest>
#include <algorithm>
#include <cstdlib>

#include "analysis/promise.h"
#include "bench/bench_window.h"
#include "bench/seek_window.h"
#include "bench/start_page.h"
#include "cut/cut_view.h"
#include "design/difference.h"
#include "editors/form_pane.h"
#include "exchange/design_json.h"
#include "exchange/load_catalog.h"
#include "exchange/read_file.h"

namespace blank_to_kept_test {

constexpr int patience = 120000;  // ms
constexpr int mostActs = 60;

/// What a customer's letter says of one kind of unit.
struct Customer {
    const char* kind;   ///< title of the kind on the start page
    const char* level;  ///< operating level, as it is typed
    const char* from;   ///< who asks; invented
    bool always;        ///< in every run of the tests, not only in a full one
};

class Sitting : public testing::TestWithParam<Customer> {
protected:
    void SetUp() override {
        if (!GetParam().always && std::getenv("COILWRIGHT_FULL") == nullptr) GTEST_SKIP() << "in a full run";
        pictures_ = QDir(QStringLiteral(COILWRIGHT_BUILD_DIR "/sitting/") + GetParam().kind);
        pictures_.removeRecursively();
        ASSERT_TRUE(pictures_.mkpath(QStringLiteral(".")));
        window.resize(1280, 800);
        window.show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
        window.showStart();
        settle();
    }
    static std::shared_ptr<const catalog::Catalog> loaded() {
        return std::make_shared<const catalog::Catalog>(exchange::loadCatalog({resources}));
    }
    static design::DesignPtr someDesign(const catalog::Catalog& from) {
        const std::string path = COILWRIGHT_SOURCE_DIR "/demo-projects/line-unit/line-unit.coilwright";
        return exchange::readDesign(exchange::readFile(path), path, from).design;
    }
    void settle() {
        ASSERT_TRUE(QTest::qWaitFor(
            [this] { return !window.drawing() && !window.computing() && window.changes().settled(); }, patience));
        QTest::qWait(50);  // replots are queued
    }
    /// An act of the user's hands is done: all settles, and it is pictured.
    void acted(const char* words, QWidget* shown = nullptr) {
        ++acts_;
        settle();
        const QString file = QStringLiteral("%1 %2.png").arg(acts_, 2, 10, QLatin1Char('0')).arg(words);
        EXPECT_TRUE((shown ? shown : &window)->grab().save(pictures_.filePath(file))) << file.toStdString();
    }
    void press(const char* words, Qt::Key key, Qt::KeyboardModifiers with = {}) {
        QWidget* at = QApplication::focusWidget();
        QTest::keyClick(at ? at : &window, key, with);
        acted(words);
    }
    void type(const char* label, const QString& text) {
        auto* forms = window.findChild<editors::FormPane*>();
        for (auto* field : forms->fields()) {
            if (field->part().label != label) continue;
            auto* line = field->findChild<QLineEdit*>();
            ASSERT_NE(line, nullptr) << label;
            QTest::mouseClick(line, Qt::LeftButton);
            line->selectAll();
            QTest::keyClicks(line, text);
            QTest::keyClick(line, Qt::Key_Return);
            return acted(label);
        }
        FAIL() << "no field " << label;
    }
    static QAbstractButton* button(QWidget& within, const QString& text) {
        for (auto* one : within.findChildren<QAbstractButton*>())
            if (one->text().remove('&') == text && one->isVisible()) return one;
        return nullptr;
    }
    std::vector<std::string> broken() {
        std::vector<std::string> all;
        if (!window.answer()) return {"no answer"};
        for (const auto& state : analysis::promiseStates(*window.document().design(), *window.answer()))
            if (state.standing != analysis::Standing::Kept && state.standing != analysis::Standing::Thin)
                all.push_back(state.text);
        return all;
    }

    static inline const std::string resources = COILWRIGHT_SOURCE_DIR "/resources";
    std::shared_ptr<const catalog::Catalog> shop = loaded();
    bench::BenchWindow window{shop, someDesign(*shop), {}, {resources}};
    QDir pictures_;
    int acts_ = 0;
};

TEST_P(Sitting, EndsWithEveryPromiseKept) {
    const Customer& customer = GetParam();
    press("a new design is asked for", Qt::Key_N, Qt::ControlModifier);
    auto* page = window.findChild<bench::StartPage*>();
    ASSERT_NE(page, nullptr);
    auto* kind = button(*page, customer.kind);
    ASSERT_NE(kind, nullptr);
    QTest::mouseClick(kind, Qt::LeftButton);
    acted("a kind of unit is chosen");
    ASSERT_NE(QString::fromStdString(window.document().design()->brief.use), QString());
    EXPECT_TRUE(window.document().path().isEmpty());

    type("customer", customer.from);
    type("operating level", customer.level);
    press("what is drawn up by closed forms", Qt::Key_N, Qt::ControlModifier | Qt::ShiftModifier);

    press("a search is asked for", Qt::Key_F, Qt::ControlModifier);
    auto* seek = window.findChild<bench::SeekWindow*>();
    ASSERT_NE(seek, nullptr);
    ASSERT_TRUE(QTest::qWaitForWindowActive(seek));
    QTest::mouseClick(button(*seek, "Seek"), Qt::LeftButton);
    acted("it seeks", seek);
    ASSERT_TRUE(QTest::qWaitFor([&] { return !seek->busy(); }, patience));
    acted("candidates", seek);
    ASSERT_FALSE(seek->cards().isEmpty()) << seek->words().toStdString();
    QTest::mouseClick(button(*seek, "Take it up"), Qt::LeftButton);
    acted("the first is taken up");
    seek->close();
    acted("back at the bench");
    EXPECT_EQ(broken(), std::vector<std::string>());

    // Another order is tried in the cut, seen, and taken back.
    const auto kept = window.document().design();
    auto* cut = window.findChild<cut::CutView*>();
    window.selection().select(design::ItemIndex{0, 0});
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    cut->setFocus();
    press("the innermost section goes outward", Qt::Key_Right, Qt::ControlModifier);
    EXPECT_FALSE(window.document().design()->coil == kept->coil);
    press("and back again", Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(window.document().design(), kept) << "not the very design that stood there";
    EXPECT_EQ(broken(), std::vector<std::string>());

    const QTemporaryDir folder;
    ASSERT_TRUE(window.saveTo(folder.filePath("unit.coilwright")));
    acted("saved");
    EXPECT_FALSE(window.document().modified());
    const std::string path = folder.filePath("unit.coilwright").toStdString();
    const auto again = exchange::readDesign(exchange::readFile(path), path, *shop).design;
    EXPECT_EQ(design::differences(*kept, *again), std::vector<std::string>());
    EXPECT_LE(acts_, mostActs);
    RecordProperty("acts", acts_);
}

INSTANTIATE_TEST_SUITE_P(EveryKind, Sitting,
                         testing::Values(Customer{"Microphone input", "-38", "Invented Broadcast House", true},
                                         Customer{"Line input", "4", "Invented Mastering Room", false},
                                         Customer{"Direct box", "-8", "Invented Touring Band", false},
                                         Customer{"Line output", "6", "Invented Console Works", false},
                                         Customer{"Splitter", "-42", "Invented Theatre", false}),
                         [](const auto& one) {
                             std::string name = one.param.kind;
                             std::erase(name, ' ');
                             return name;
                         });

}  // namespace blank_to_kept_test
