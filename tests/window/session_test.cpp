// SPDX-License-Identifier: GPL-3.0-or-later
// One sitting at the whole window: open a demo, type turns, drag a section in the cut, hold, save, open again.
#include <gtest/gtest.h>

#include <QApplication>
#include <QComboBox>
#include <QLineEdit>
#include <QTemporaryDir>
#include <QTest>

#include "bench/bench_window.h"
#include "cut/cut_view.h"
#include "design/rename.h"
#include "editors/form_pane.h"
#include "exchange/design_json.h"
#include "exchange/load_catalog.h"
#include "exchange/read_file.h"

namespace session_test {

const std::string root = COILWRIGHT_SOURCE_DIR;
const QString microphone = QString::fromStdString(root + "/demo-projects/microphone-input/microphone-input.coilwright");

class Session : public testing::Test {
protected:
    Session() {
        window.resize(1280, 800);
        window.show();
        settle();
    }
    void settle() {
        ASSERT_TRUE(QTest::qWaitFor([this] { return !window.computing(); }, 20000));
    }
    static std::shared_ptr<const catalog::Catalog> shop() {
        return std::make_shared<const catalog::Catalog>(exchange::loadCatalog({root + "/resources"}));
    }
    static design::DesignPtr read(const QString& path, const catalog::Catalog& from) {
        return exchange::readDesign(exchange::readFile(path.toStdString()), path.toStdString(), from).design;
    }
    const design::Design& design() { return *window.document().design(); }
    double figure(const char* name) { return window.answer()->figure(name)->value; }
    void typeInto(const QString& label, const QString& text) {
        auto* forms = window.findChild<editors::FormPane*>();
        for (auto* field : forms->fields()) {
            if (field->part().label != label) continue;
            auto* line = field->findChild<QLineEdit*>();
            line->setFocus();
            line->selectAll();
            QTest::keyClicks(line, text);
            QTest::keyClick(line, Qt::Key_Return);
            return;
        }
        FAIL() << "no field " << label.toStdString();
    }
    void drag(QWidget* view, const QPoint& from, const QPoint& to) {
        QTest::mousePress(view, Qt::LeftButton, {}, from);
        for (const QPoint& at : {from + QPoint(QApplication::startDragDistance() + 2, 0), to}) {
            QMouseEvent event(QEvent::MouseMove, at, view->mapToGlobal(QPointF(at)), Qt::NoButton, Qt::LeftButton, {});
            QApplication::sendEvent(view, &event);
        }
        QTest::mouseRelease(view, Qt::LeftButton, {}, to);
    }
    std::shared_ptr<const catalog::Catalog> shop_ = shop();
    bench::BenchWindow window{shop_, read(microphone, *shop_), {microphone.toStdString()}};
    QTemporaryDir folder;
};

TEST_F(Session, TurnsAreTypedASectionIsDraggedAndTheFileHoldsBoth) {
    const auto start = window.document().design();
    const double leakage = figure("leakage_10kHz.P.S"), ratio = figure("ratio.P.S");
    window.selection().select(design::ItemIndex{0, 0});
    QTest::qWait(1);
    typeInto("turns", "160");
    settle();
    EXPECT_EQ(design().coil[0].order[0].section()->turns.value, 160);
    EXPECT_NE(figure("ratio.P.S"), ratio);

    auto* cut = window.findChild<cut::CutView*>();
    ASSERT_NE(cut, nullptr);
    int secondary = 0;
    while (design().coil[0].order[static_cast<std::size_t>(secondary)].section() == nullptr ||
           design().coil[0].order[static_cast<std::size_t>(secondary)].section()->winding != "S")
        ++secondary;
    const QRectF box = cut->itemRect({0, secondary});
    const QRectF innermost = cut->itemRect({0, 0});
    drag(cut, box.center().toPoint(), {static_cast<int>(innermost.left()) - 1, static_cast<int>(box.center().y())});
    settle();
    ASSERT_NE(design().coil[0].order[0].section(), nullptr);
    EXPECT_EQ(design().coil[0].order[0].section()->winding, "S");
    EXPECT_NE(figure("leakage_10kHz.P.S"), leakage);

    const QString saved = folder.filePath("edited.coilwright");
    ASSERT_TRUE(window.saveTo(saved));
    EXPECT_FALSE(window.document().modified());
    const auto again = read(saved, *shop_);
    EXPECT_EQ(again->coil, design().coil);
    EXPECT_EQ(again->windings, design().windings);

    window.document().undo();
    window.document().undo();
    EXPECT_EQ(*window.document().design(), *start);
    EXPECT_FALSE(window.document().canUndo());
}

TEST_F(Session, ARenamedHookUpStaysTheOneThatIsShown) {
    ASSERT_TRUE(window.openFile(QString::fromStdString(root + "/demo-projects/splitter/splitter.coilwright")));
    window.hookUps().setCurrentIndex(1);
    emit window.hookUps().activated(1);
    window.document().replace(design::renameHookUp(design(), "one output shorted", "shorted"), "name");
    settle();
    EXPECT_EQ(window.hookUps().currentText(), "shorted");
    EXPECT_EQ(window.answer()->hookUp, "shorted");
}

TEST_F(Session, ABadFileLeavesTheOpenDesignAlone) {
    const auto before = window.document().design();
    EXPECT_FALSE(window.openFile(QString::fromStdString(root + "/tests/faults/faults.json")));
    EXPECT_EQ(window.document().design(), before);
    EXPECT_FALSE(window.message().isEmpty());
}

TEST_F(Session, EveryDemoOpensAndFillsAllFourPlots) {
    for (const char* name : {"ribbon-step-up", "direct-box", "line-unit", "splitter"}) {
        ASSERT_TRUE(
            window.openFile(QString::fromStdString(root + "/demo-projects/" + name + "/" + name + ".coilwright")));
        settle();
        ASSERT_NE(window.answer(), nullptr);
        for (const char* trace : {"response", "impedance", "headroom"})
            EXPECT_NE(window.answer()->trace(trace), nullptr) << name;
    }
}

}  // namespace session_test
