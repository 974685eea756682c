// SPDX-License-Identifier: GPL-3.0-or-later
#include "document/journal.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>

#include "design/edit.h"
#include "document/file_guard.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"
#include "exchange/write_file.h"

namespace journal_test {

const std::string reference = COILWRIGHT_SOURCE_DIR "/tests/references/open_1_shielded_step_up.coilwright";

class JournalTest : public testing::Test {
protected:
    static design::DesignPtr start() {
        static const catalog::Catalog none;
        return exchange::readDesign(exchange::readFile(reference), reference, none).design;
    }
    void setTurns(double turns) {
        document.replace(design::changed(*document.design(),
                                         [turns](design::Design& d) { d.coil[0].order[0].section()->turns = turns; }),
                         "turns");
    }
    [[nodiscard]] QStringList copies() const { return QDir(folder.path()).entryList({"*.json"}, QDir::Files); }

    QTemporaryDir folder;
    document::Document document{std::make_shared<const catalog::Catalog>(), start()};
};

TEST_F(JournalTest, HoldsTheNewestEditAndNothingOnceItIsUndoneOrSaved) {
    document::Journal journal(document, folder.path());
    journal.flush();
    EXPECT_TRUE(copies().isEmpty());
    setTurns(144);
    setTurns(72);
    journal.flush();
    ASSERT_EQ(copies().size(), 1);
    const std::string text = exchange::readFile(journal.file().toStdString());
    EXPECT_NE(text.find("\\\"turns\\\": 72"), std::string::npos);
    document.undo();
    document.undo();
    journal.flush();
    EXPECT_TRUE(copies().isEmpty());
    document.redo();
    journal.flush();
    EXPECT_EQ(copies().size(), 1);
    const QTemporaryDir elsewhere;
    document.save(elsewhere.filePath("unit.coilwright"));
    journal.flush();
    EXPECT_TRUE(copies().isEmpty());
}

TEST_F(JournalTest, WorkOfAWindowThatIsOpenIsNotLeftWork) {
    document::Journal journal(document, folder.path());
    setTurns(144);
    journal.flush();
    EXPECT_TRUE(document::leftWork(folder.path()).empty());
}

TEST_F(JournalTest, WorkThatWasLeftIsReadOnceAndByteForByte) {
    {
        document::Journal journal(document, folder.path());
        journal.setBase("abc");
        setTurns(144);
    }
    const auto left = document::leftWork(folder.path());
    ASSERT_EQ(left.size(), 1u);
    EXPECT_EQ(left[0].text, exchange::writeDesign(*document.design(), *document.shop()));
    EXPECT_EQ(left[0].base, "abc");
    EXPECT_EQ(left[0].path, "");
    EXPECT_LT(std::abs(left[0].at.secsTo(QDateTime::currentDateTimeUtc())), 60);
    EXPECT_TRUE(document::leftWork(folder.path()).empty()) << "offered by two windows at once";
    document::giveUp(left[0]);
    EXPECT_TRUE(copies().isEmpty());
}

TEST_F(JournalTest, ADamagedCopyIsLeftWhereItIs) {
    exchange::writeFile(folder.filePath("x.json").toStdString(), R"({"journal": 1, "path": "a)");
    exchange::writeFile(folder.filePath("y.json").toStdString(), R"({"journal": 9})");
    EXPECT_TRUE(document::leftWork(folder.path()).empty());
    EXPECT_EQ(copies().size(), 2);
}

TEST_F(JournalTest, AFolderThatCannotBeWrittenIsToldOnce) {
    document::Journal journal(document, "/proc/none");
    QSignalSpy failed(&journal, &document::Journal::failed);
    setTurns(144);
    journal.flush();
    setTurns(72);
    journal.flush();
    QTest::qWait(1);
    ASSERT_EQ(failed.count(), 1);
    EXPECT_TRUE(failed[0][0].toString().startsWith("Unsaved work is not being kept safe. The file /proc/none/"))
        << failed[0][0].toString().toStdString();
}

class FileGuardTest : public testing::Test {
protected:
    void put(const char* text) { exchange::writeFile(path.toStdString(), text); }
    QTemporaryDir folder;
    QString path = folder.filePath("unit.coilwright");
    document::FileGuard guard;
};

TEST_F(FileGuardTest, ASecondWindowIsToldWhoHasTheFileAndMayHaveItLater) {
    put("one");
    document::FileGuard second;
    EXPECT_TRUE(guard.hold(path, document::FileGuard::digestOf(path)));
    EXPECT_FALSE(second.hold(path, document::FileGuard::digestOf(path)));
    EXPECT_TRUE(second.holder().contains(QString::number(QCoreApplication::applicationPid())));
    EXPECT_EQ(document::FileGuard::holderOf(path), second.holder());
    guard.hold({}, {});
    EXPECT_TRUE(second.hold(path, document::FileGuard::digestOf(path)));
    EXPECT_TRUE(second.mine());
}

TEST_F(FileGuardTest, TellsAChangeFromOutsideOnceAlsoAfterTheFileWasReplaced) {
    put("one");
    guard.hold(path, document::FileGuard::digestOf(path));
    QSignalSpy told(&guard, &document::FileGuard::changedOutside);
    EXPECT_FALSE(guard.changedNow());
    put("two");
    EXPECT_TRUE(guard.changedNow());
    ASSERT_TRUE(QTest::qWaitFor([&] { return told.count() == 1; }, 3000));
    put("two");
    QTest::qWait(200);
    EXPECT_EQ(told.count(), 1) << "the same change again";
    put("three");
    ASSERT_TRUE(QTest::qWaitFor([&] { return told.count() == 2; }, 3000)) << "blind after a renaming";
}

TEST_F(FileGuardTest, OurOwnSaveIsNoChange) {
    put("one");
    guard.hold(path, document::FileGuard::digestOf(path));
    QSignalSpy told(&guard, &document::FileGuard::changedOutside);
    put("two");
    guard.hold(path, document::FileGuard::digestOf(path));
    QTest::qWait(250);
    EXPECT_EQ(told.count(), 0);
    EXPECT_FALSE(guard.changedNow());
}

}  // namespace journal_test
