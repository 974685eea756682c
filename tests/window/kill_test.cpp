// SPDX-License-Identifier: GPL-3.0-or-later
// A window killed at a random moment of editing: the next one offers the work, and at most the last second of it is
// lost. One moment here; 50 with COILWRIGHT_FULL in the environment (target `full`).
#include <gtest/gtest.h>
#include <signal.h>

#include <QDateTime>
#include <QFileInfo>
#include <QProcess>
#include <QPushButton>
#include <QTemporaryDir>
#include <QTest>
#include <random>

#include "bench/bench_window.h"
#include "commands/places.h"
#include "exchange/design_json.h"
#include "exchange/read_file.h"
#include "exchange/write_file.h"

namespace kill_test {

constexpr qint64 mayBeLost = 1000;  // ms
const std::string demo = COILWRIGHT_SOURCE_DIR "/demo-projects/microphone-input/microphone-input.coilwright";

struct Edit {
    qint64 at = 0;  ///< ms since the epoch
    QString digest;
};

class Killed : public testing::Test {
protected:
    QByteArray before = qgetenv("XDG_STATE_HOME");
    ~Killed() override { qputenv("XDG_STATE_HOME", before); }

    /// Starts a window on `path`, kills it `after` ms of editing; what it had committed until then.
    std::vector<Edit> killAfter(const QString& path, int after, unsigned seed) {
        QProcess window;
        window.setStandardErrorFile(QProcess::nullDevice());
        window.start(QStringLiteral(COILWRIGHT_EDITED_WINDOW), {path, QString::number(seed)});
        EXPECT_TRUE(window.waitForStarted());
        QByteArray said;
        while (!said.contains("ready\n") && window.waitForReadyRead(20000)) said += window.readAll();
        const qint64 from = QDateTime::currentMSecsSinceEpoch();
        while (QDateTime::currentMSecsSinceEpoch() < from + after) {
            window.waitForReadyRead(1);
            said += window.readAll();
        }
        EXPECT_EQ(::kill(static_cast<pid_t>(window.processId()), SIGKILL), 0);
        killedAt = QDateTime::currentMSecsSinceEpoch();
        EXPECT_TRUE(window.waitForFinished());
        said += window.readAll();
        std::vector<Edit> edits;
        for (const QByteArray& line : said.split('\n')) {
            const QList<QByteArray> words = line.split(' ');
            if (words.size() == 2 && words[1].size() == 64)
                edits.push_back({words[0].toLongLong(), QString::fromLatin1(words[1])});
        }
        return edits;
    }
    /// The next window's design after taking the offer, if there is one.
    QString taken(const std::shared_ptr<const catalog::Catalog>& shop) {
        bench::BenchWindow window(shop, exchange::readDesign(exchange::readFile(demo), demo, *shop).design, {});
        window.guardWork();
        window.show();
        if (window.notices().buttons().empty()) return {};
        QTest::mouseClick(window.notices().buttons().front(), Qt::LeftButton);
        EXPECT_TRUE(window.document().modified());
        return QString::fromStdString(exchange::digestOf(*window.document().design(), *shop));
    }
    qint64 killedAt = 0;
};

TEST_F(Killed, LosesNoMoreThanTheLastSecond) {
    const auto shop = std::make_shared<const catalog::Catalog>(commands::shopCatalog(commands::places()));
    const bool full = qEnvironmentVariableIsSet("COILWRIGHT_FULL");
    std::mt19937 dice(7);
    for (unsigned round = 0; round < (full ? 50u : 1u); ++round) {
        const QTemporaryDir folder;
        qputenv("XDG_STATE_HOME", folder.path().toUtf8());
        const QString path = folder.filePath("unit.coilwright");
        const auto start = exchange::readDesign(exchange::readFile(demo), demo, *shop).design;
        exchange::writeFile(path.toStdString(), exchange::writeDesign(*start, *shop));
        const int moment = full ? static_cast<int>(dice() % 3000) : 200;
        const std::vector<Edit> edits = killAfter(path, moment, round);
        const QString inFile = QString::fromStdString(exchange::digestOf(*start, *shop));
        const QString offered = taken(shop), now = offered.isEmpty() ? inFile : offered;
        // The work that is there must be as it was at some moment of the last second.
        std::vector<QString> may{inFile};
        for (const Edit& edit : edits) {
            if (edit.at <= killedAt - mayBeLost) may.clear();
            may.push_back(edit.digest);
        }
        EXPECT_NE(std::find(may.begin(), may.end(), now), may.end())
            << "killed after " << moment << " ms and " << edits.size() << " edits";
        EXPECT_TRUE(QFileInfo::exists(path));
        EXPECT_EQ(QString::fromStdString(exchange::digestOf(
                      *exchange::readDesign(exchange::readFile(path.toStdString()), path.toStdString(), *shop).design,
                      *shop)),
                  inFile)
            << "the file itself was touched";
        RecordProperty("edits_" + std::to_string(round), static_cast<int>(edits.size()));
    }
}

}  // namespace kill_test
