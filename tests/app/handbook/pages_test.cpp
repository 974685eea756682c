// SPDX-License-Identifier: GPL-3.0-or-later
// What the handbook says is there: pages, pictures, traces, verbs, keys, figures, and the check behind each formula.
#include <gtest/gtest.h>

#include <QDir>
#include <QDirIterator>
#include <QMenuBar>
#include <QRegularExpression>
#include <set>

#include "analysis/answer.h"
#include "analysis/figure_names.h"
#include "bench/key_list.h"
#include "commands/run.h"
#include "exchange/design_json.h"
#include "exchange/load_catalog.h"
#include "exchange/read_file.h"
#include "handbook/pages.h"

namespace pages_test {

const QString folder = QStringLiteral(COILWRIGHT_SOURCE_DIR "/resources/handbook");

const std::vector<handbook::Page>& all() {
    static const std::vector<handbook::Page> pages = handbook::pages(folder);
    return pages;
}

QString textOf(const QString& file) {
    for (const handbook::Page& page : all())
        if (page.file == file) return page.text;
    ADD_FAILURE() << "no page " << file.toStdString();
    return {};
}

std::set<QString> captured(const QString& text, const char* pattern) {
    std::set<QString> found;
    for (auto match = QRegularExpression(QLatin1String(pattern)).globalMatch(text); match.hasNext();)
        found.insert(match.next().captured(1));
    return found;
}

/// The page's words without fenced files and formulas.
QString prose(const QString& text) {
    QString words = text;
    return words.remove(QRegularExpression("```.*?```", QRegularExpression::DotMatchesEverythingOption));
}

TEST(HandbookPages, EveryFileIsAPageOfTheIndex) {
    std::set<QString> listed;
    for (const handbook::Page& page : all()) listed.insert(page.file);
    std::set<QString> lying;
    for (const QString& file : QDir(folder).entryList({"*.md"}, QDir::Files)) lying.insert(file);
    EXPECT_EQ(listed, lying);
    EXPECT_EQ(all().front().file, "index.md");
}

TEST(HandbookPages, TheIndexNamesEachPageByItsTitle) {
    for (const handbook::Link& link : handbook::linksOf(all().front().text))
        EXPECT_TRUE(textOf(link.file).startsWith("# " + link.words + '\n')) << link.file.toStdString();
}

TEST(HandbookPages, EveryLinkLeadsToAPage) {
    for (const handbook::Page& page : all()) {
        for (const handbook::Link& link : handbook::linksOf(page.text))
            EXPECT_TRUE(QFileInfo::exists(folder + '/' + link.file)) << page.file.toStdString();
        // Whatever else looks like a link is a picture.
        const auto targets = captured(prose(page.text), R"((?<!!)\[[^\]]+\]\(([^)]+)\))");
        for (const QString& target : targets)
            EXPECT_TRUE(QRegularExpression("^[a-z_-]+\\.md$").match(target).hasMatch()) << target.toStdString();
    }
}

TEST(HandbookPages, EveryPictureIsThereAndShown) {
    std::set<QString> shown;
    for (const handbook::Page& page : all())
        for (const QString& picture : captured(page.text, R"(!\[[^\]]+\]\(pictures/([^)]+)\))")) shown.insert(picture);
    std::set<QString> lying;
    for (const QString& file : QDir(folder + "/pictures").entryList({"*.png"}, QDir::Files)) lying.insert(file);
    EXPECT_EQ(shown, lying);
}

TEST(HandbookPages, EveryTraceIsExplainedUnderItsTitle) {
    const QString text = textOf("plots.md");
    for (const analysis::TraceKind& kind : analysis::traceKinds())
        EXPECT_TRUE(text.contains("\n### " + QString::fromStdString(kind.title) + " (`" +
                                  QString::fromStdString(kind.name) + "`)\n"))
            << kind.name;
    EXPECT_EQ(text.count("\n### "), static_cast<qsizetype>(analysis::traceKinds().size()));
}

TEST(HandbookPages, EveryVerbIsAmongTheCommands) {
    const std::set<QString> told = captured(textOf("commands.md"), R"(\n\| `([a-z]+)` \|)");
    std::set<QString> verbs;
    for (const QString& verb : QString::fromStdString(commands::verbNames()).split(QRegularExpression(", | and ")))
        verbs.insert(verb);
    EXPECT_EQ(told, verbs);
}

TEST(HandbookPages, EveryKeyIsInTheListAsTheWindowTellsIt) {
    QMenuBar bar;
    const bench::Actions actions(bar, nullptr);
    std::set<QString> keys;
    for (const bench::KeyLine& line : bench::keyLines(actions))
        keys.insert("| " + line.where + " | " + line.key + " | " + line.does + " |");
    std::set<QString> told;
    for (const QString& line : textOf("keys.md").split('\n'))
        if (line.startsWith("| ") && !line.startsWith("| where")) told.insert(line);
    EXPECT_EQ(told, keys);
}

TEST(HandbookPages, EveryFigureIsExplained) {
    const catalog::Catalog shop = exchange::loadCatalog({COILWRIGHT_SOURCE_DIR "/resources"});
    std::set<QString> quantities;
    QDirIterator designs(COILWRIGHT_SOURCE_DIR "/demo-projects", {"*.coilwright"}, QDir::Files,
                         QDirIterator::Subdirectories);
    while (designs.hasNext()) {
        const std::string path = designs.next().toStdString();
        const auto opened = exchange::readDesign(exchange::readFile(path), path, shop);
        for (const std::string& name : analysis::figureNames(*opened.design))
            quantities.insert(QString::fromStdString(name.substr(0, name.find('.'))));
    }
    std::set<QString> told;
    for (const QString& line : textOf("figures.md").split('\n'))
        if (line.startsWith("| `"))
            for (const QString& name : captured(line.section('|', 1, 1), "`([A-Za-z0-9_]+)`")) told.insert(name);
    EXPECT_EQ(told, quantities);
}

TEST(HandbookPages, EveryFormulaHasItsSourceItsRangeAndItsCheck) {
    int formulas = 0;
    for (const handbook::Page& page : all()) {
        const QStringList parts = page.text.split("```formula\n");
        for (qsizetype k = 1; k < parts.size(); ++k, ++formulas) {
            const QString about = parts[k].section("\n## ", 0, 0);
            for (const char* word : {"**Source.**", "**Holds.**", "**Check.**"})
                EXPECT_TRUE(about.contains(word))
                    << page.file.toStdString() << ": " << word << " of " << parts[k].section('\n', 0, 0).toStdString();
        }
    }
    EXPECT_GE(formulas, 40);
}

/// "Suite.Case" of every test in the tree.
std::set<QString> tests() {
    std::set<QString> names;
    const QRegularExpression form(R"(TEST(?:_F|_P)?\(\s*(\w+),\s*(\w+)\))");
    QDirIterator files(COILWRIGHT_SOURCE_DIR "/tests", {"*.cpp"}, QDir::Files, QDirIterator::Subdirectories);
    while (files.hasNext()) {
        const QString text = QString::fromStdString(exchange::readFile(files.next().toStdString()));
        for (auto match = form.globalMatch(text); match.hasNext();) {
            const auto one = match.next();
            names.insert(one.captured(1) + '.' + one.captured(2));
        }
    }
    return names;
}

TEST(HandbookPages, EveryCheckThatIsNamedIsATest) {
    const std::set<QString> known = tests();
    int named = 0;
    for (const handbook::Page& page : all()) {
        for (const QString& check : captured(prose(page.text), "`([A-Z][a-z]\\w+\\.\\w+)`")) {
            EXPECT_TRUE(known.contains(check)) << page.file.toStdString() << ": " << check.toStdString();
            ++named;
        }
        for (const QString& file : captured(prose(page.text), "`(tests/[\\w/.]+)`"))
            EXPECT_TRUE(QFileInfo::exists(COILWRIGHT_SOURCE_DIR "/" + file)) << file.toStdString();
    }
    EXPECT_GE(named, 100);
}

TEST(HandbookPages, TheReadmeSaysTheSameOfHowNearItComes) {
    const QString readme = QString::fromStdString(exchange::readFile(COILWRIGHT_SOURCE_DIR "/README.md"));
    int rows = 0;
    for (const QString& line : textOf("accuracy.md").section("These compare", 0, 0).split('\n'))
        if (line.startsWith("| ")) {
            EXPECT_TRUE(readme.contains(line)) << line.toStdString();
            ++rows;
        }
    EXPECT_GE(rows, 15);
    for (const QString& picture : captured(readme, R"(!\[[^\]]+\]\(([^)]+)\))"))
        EXPECT_TRUE(QFileInfo::exists(COILWRIGHT_SOURCE_DIR "/" + picture)) << picture.toStdString();
}

TEST(HandbookPages, AMissingPageIsSaid) {
    try {
        (void)handbook::pages(COILWRIGHT_SOURCE_DIR "/tests");
        ADD_FAILURE() << "nothing wrong";
    } catch (const std::exception& wrong) {
        EXPECT_NE(std::string(wrong.what()).find("tests/index.md"), std::string::npos) << wrong.what();
    }
}

TEST(HandbookLinks, AreReplacedOneByOne) {
    const QString text = "See [one](one.md), ![no](two.png) and [two](two-b.md).";
    EXPECT_EQ(handbook::withoutLinks(text, [](const handbook::Link& link) { return link.words + '|' + link.file; }),
              "See one|one.md, ![no](two.png) and two|two-b.md.");
}

}  // namespace pages_test
