// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/document.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QSignalSpy>
#include <QTemporaryDir>

#include "design/edit.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"
#include "exchange/write_file.h"
#include "units/fault.h"

namespace document_test {

const std::string reference = COILWRIGHT_SOURCE_DIR "/tests/references/open_1_shielded_step_up.coilwright";

class DocumentTest : public testing::Test {
protected:
    static design::DesignPtr start() {
        static const catalog::Catalog none;
        return exchange::readDesign(exchange::readFile(reference), reference, none).design;
    }
    static design::DesignPtr withTurns(const design::Design& from, double turns) {
        return design::changed(from, [turns](design::Design& d) { d.coil[0].order[0].section()->turns = turns; });
    }
    static double turns(const design::Design& d) { return d.coil[0].order[0].section()->turns; }

    document::Document document{std::make_shared<const catalog::Catalog>(), start()};
};

TEST_F(DocumentTest, EachReplaceIsOneNamedStepThatUndoAndRedoWalk) {
    const design::DesignPtr first = document.design();
    document.replace(withTurns(*first, 144), "P.a turns");
    document.replace(withTurns(*first, 72), "P.a turns");
    EXPECT_EQ(document.undoText(), "P.a turns");
    EXPECT_FALSE(document.canRedo());
    document.undo();
    EXPECT_EQ(turns(*document.design()), 144);
    document.undo();
    EXPECT_EQ(document.design(), first) << "the very design, not a copy";
    EXPECT_FALSE(document.canUndo());
    EXPECT_FALSE(document.modified());
    document.redo();
    document.redo();
    EXPECT_EQ(turns(*document.design()), 72);
    EXPECT_TRUE(document.modified());
}

TEST_F(DocumentTest, AnEditAfterUndoDropsWhatCouldBeRedone) {
    const design::DesignPtr first = document.design();
    document.replace(withTurns(*first, 144), "more");
    document.undo();
    document.replace(withTurns(*first, 72), "less");
    EXPECT_FALSE(document.canRedo());
    document.undo();
    EXPECT_EQ(document.design(), first);
}

TEST_F(DocumentTest, AnEqualDesignMakesNoStep) {
    QSignalSpy changed(&document, &document::Document::changed);
    document.replace(std::make_shared<design::Design>(*document.design()), "nothing");
    EXPECT_FALSE(document.canUndo());
    EXPECT_EQ(changed.count(), 0);
}

TEST_F(DocumentTest, AFaultyDesignIsRefusedWithItsPlaceAndChangesNothing) {
    const design::DesignPtr first = document.design();
    const auto faulty = design::changed(*first, [](design::Design& d) { d.windings[0].finish = d.windings[0].start; });
    try {
        document.replace(faulty, "finish");
        FAIL() << "a winding connected to itself was taken";
    } catch (const units::BadInput& bad) {
        EXPECT_NE(bad.faults.front().place.find("/windings/0"), std::string::npos) << bad.what();
    }
    EXPECT_THROW(document.preview(faulty), units::BadInput);
    EXPECT_EQ(document.design(), first);
    EXPECT_EQ(document.shown(), first);
    EXPECT_FALSE(document.canUndo());
}

TEST_F(DocumentTest, APreviewShowsWithoutHistory) {
    const design::DesignPtr first = document.design();
    QSignalSpy shown(&document, &document::Document::shownChanged);
    document.preview(withTurns(*first, 144));
    EXPECT_EQ(turns(*document.shown()), 144);
    EXPECT_EQ(document.design(), first);
    EXPECT_FALSE(document.modified());
    document.endPreview();
    EXPECT_EQ(document.shown(), first);
    EXPECT_EQ(shown.count(), 2);
}

TEST_F(DocumentTest, UndoDuringAPreviewDropsThePreviewOnly) {
    const design::DesignPtr first = document.design();
    document.replace(withTurns(*first, 144), "more");
    document.preview(withTurns(*first, 72));
    document.undo();
    EXPECT_EQ(turns(*document.shown()), 144);
    EXPECT_EQ(turns(*document.design()), 144);
}

TEST_F(DocumentTest, ReplaceEndsAPreview) {
    const design::DesignPtr first = document.design();
    document.preview(withTurns(*first, 144));
    document.replace(withTurns(*first, 144), "turns");
    EXPECT_EQ(document.shown(), document.design());
    document.undo();
    EXPECT_EQ(document.shown(), first);
}

TEST_F(DocumentTest, SavingAndOpeningGivesTheSameDesignAndNoModification) {
    const QTemporaryDir folder;
    const QString path = folder.filePath("unit.coilwright");
    document.replace(withTurns(*document.design(), 144), "turns");
    document.save(path);
    EXPECT_FALSE(document.modified());
    EXPECT_EQ(document.path(), path);
    const std::string text = exchange::readFile(path.toStdString());
    const design::DesignPtr again = exchange::readDesign(text, path.toStdString(), *document.shop()).design;
    EXPECT_EQ(turns(*again), 144);
    EXPECT_EQ(exchange::writeDesign(*again, *document.shop()), text);
    document.undo();
    EXPECT_TRUE(document.modified()) << "undone past the saved state";
    document.redo();
    EXPECT_FALSE(document.modified());
}

TEST_F(DocumentTest, AFailedSaveLeavesTheDocumentModifiedAndItsPathAsItWas) {
    document.replace(withTurns(*document.design(), 144), "turns");
    EXPECT_THROW(document.save("/proc/no-such-folder/unit.coilwright"), exchange::WriteFailed);
    EXPECT_TRUE(document.modified());
    EXPECT_EQ(document.path(), "");
    EXPECT_EQ(turns(*document.design()), 144);
}

}  // namespace document_test
