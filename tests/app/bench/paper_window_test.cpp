// SPDX-License-Identifier: GPL-3.0-or-later
// The papers on the bench: every kind is shown as pages, says what it lacks, and is saved as the command line writes
// it. Pictures of the window are left in the build folder, to be looked at.
#include "bench/paper_window.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QTemporaryDir>
#include <QTest>

#include "bench/theme.h"
#include "commands/places.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"

namespace paper_window_test {

const std::string demo = COILWRIGHT_SOURCE_DIR "/demo-projects/microphone-input/microphone-input.coilwright";
const QString prices = QStringLiteral(COILWRIGHT_SOURCE_DIR "/resources/prices/example.csv");

class PaperWindowTest : public testing::Test {
protected:
    commands::Places where = commands::places();
    std::shared_ptr<const catalog::Catalog> shop =
        std::make_shared<const catalog::Catalog>(commands::shopCatalog(where));
    document::Document document{shop, exchange::readDesign(exchange::readFile(demo), demo, *shop).design};
    bench::PaperWindow window{document, commands::resourceFolders(where), [] { return analysis::Question(); }, nullptr};

    void SetUp() override {
        window.show();
        settle();
    }
    void settle() {
        ASSERT_TRUE(QTest::qWaitFor([this] { return !window.busy(); }, 60000));
        QTest::qWait(1);
    }
    void choose(const char* key) {
        const auto& all = papers::paperKinds();
        const auto at =
            std::find_if(all.begin(), all.end(), [&](const auto& kind) { return std::string_view(kind.key) == key; });
        window.kinds().setCurrentIndex(static_cast<int>(at - all.begin()));
        settle();
    }
    static void picture(QWidget& of, const QString& name) {
        const QString folder = COILWRIGHT_BUILD_DIR "/pictures";
        ASSERT_TRUE(QDir().mkpath(folder));
        ASSERT_TRUE(of.grab().save(folder + QLatin1Char('/') + name + QStringLiteral(".png")));
    }
};

TEST_F(PaperWindowTest, ShowsEveryPaperAsPagesThatSayWhatIsOnThem) {
    window.takePrices(prices);
    window.takeBefore(QString::fromStdString(demo));
    for (const auto& kind : papers::paperKinds()) {
        choose(kind.key);
        const auto pages = window.pages();
        ASSERT_FALSE(pages.empty()) << kind.key << ": " << window.message().toStdString();
        for (const QLabel* page : pages) {
            EXPECT_TRUE(page->accessibleName().contains(QString::fromLatin1(kind.title)));
            EXPECT_TRUE(page->accessibleDescription().contains("revision")) << kind.key;
            // A4 is 210 mm x 297 mm (ISO 216).
            EXPECT_NEAR(static_cast<double>(page->pixmap().height()) / page->pixmap().width(), 297.0 / 210, 0.01);
        }
        EXPECT_EQ(window.message().contains("for the customer"), kind.outside) << kind.key;
        picture(window, QStringLiteral("papers-") + QLatin1String(kind.key));
    }
}

TEST_F(PaperWindowTest, SaysWhatAPaperLacks) {
    choose("quotation");
    EXPECT_TRUE(window.pages().empty());
    EXPECT_EQ(window.message(), "Quotation: found no prices; allowed is a price file beside it.");
    choose("change-notice");
    EXPECT_EQ(window.message(), "Change notice: found no earlier revision; allowed is one to compare with.");
    window.takePrices(QStringLiteral("/nowhere.csv"));
    EXPECT_TRUE(window.message().startsWith("/nowhere.csv: ")) << window.message().toStdString();
    const QTemporaryDir folder;
    EXPECT_FALSE(window.save(folder.filePath("x.pdf")));
}

TEST_F(PaperWindowTest, SavesWhatItShows) {
    const QTemporaryDir folder;
    choose("datasheet");
    ASSERT_TRUE(window.save(folder.filePath("metric.pdf")));
    window.formats().setCurrentIndex(1);
    settle();
    window.measures().setCurrentIndex(1);
    settle();
    window.languages().setCurrentIndex(1);
    settle();
    EXPECT_NEAR(
        static_cast<double>(window.pages().front()->pixmap().height()) / window.pages().front()->pixmap().width(),
        11 / 8.5, 0.01);
    EXPECT_TRUE(window.pages().front()->accessibleDescription().contains("Anschlüsse"));
    EXPECT_TRUE(window.pages().front()->accessibleDescription().contains("in · Toleranzen"));
    ASSERT_TRUE(window.save(folder.filePath("inch.pdf")));
    EXPECT_FALSE(window.save(folder.filePath("no/folder/here.pdf")));
    const std::string metric = exchange::readFile(folder.filePath("metric.pdf").toStdString());
    EXPECT_TRUE(metric.starts_with("%PDF-1.6"));
    EXPECT_NE(metric, exchange::readFile(folder.filePath("inch.pdf").toStdString()));
}

TEST_F(PaperWindowTest, FollowsTheDesignThatIsEdited) {
    choose("traveller");
    const QString before = window.pages().front()->accessibleDescription();
    auto next = std::make_shared<design::Design>(*document.design());
    next->partNumber = "NEW-PART-7";
    document.replace(next, "part number");
    settle();
    EXPECT_FALSE(before.contains("NEW-PART-7"));
    EXPECT_TRUE(window.pages().front()->accessibleDescription().contains("NEW-PART-7"));
}

TEST_F(PaperWindowTest, IsWorkedWithTheKeysAlone) {
    EXPECT_TRUE(window.kinds().hasFocus());
    QTest::keyClick(&window.kinds(), Qt::Key_Down);
    EXPECT_EQ(window.kinds().currentIndex(), 1);
    choose("datasheet");
    const int width = window.pages().front()->pixmap().width();
    QTest::keyClick(&window, Qt::Key_Plus);
    EXPECT_GT(window.pages().front()->pixmap().width(), width);
    QTest::keyClick(&window, Qt::Key_Minus);
    EXPECT_EQ(window.pages().front()->pixmap().width(), width);
    for (const QWidget* widget : window.findChildren<QWidget*>())
        if (widget->isVisible() && widget->focusPolicy() != Qt::NoFocus && widget->focusProxy() == nullptr &&
            qobject_cast<const QScrollBar*>(widget) == nullptr) {
            const auto* button = qobject_cast<const QPushButton*>(widget);
            EXPECT_GT(button ? button->text().size() : widget->accessibleName().size(), 1)
                << widget->metaObject()->className();
        }
}

TEST_F(PaperWindowTest, FindsRoomInTheDarkAndInLargeType) {
    choose("datasheet");
    bench::applyLook(bench::Look::Dark);
    QTest::qWait(1);
    picture(window, "papers-dark");
    // The page is paper: white in the dark too.
    EXPECT_EQ(window.pages().front()->pixmap().toImage().pixelColor(3, 3), QColor(Qt::white));
    bench::applyLook(bench::Look::Light);
    QFont large = window.font();
    large.setPointSizeF(2 * large.pointSizeF());
    window.setFont(large);
    QTest::qWait(1);
    picture(window, "papers-large");
    for (const QComboBox* box : window.findChildren<QComboBox*>()) {
        if (box->isVisible()) {
            EXPECT_GE(box->width(), box->minimumSizeHint().width());
        }
    }
}

}  // namespace paper_window_test
