// SPDX-License-Identifier: GPL-3.0-or-later
// The table of German sentences: every sentence that the sources hand to the translator has one, and what is filled in
// is filled in there too. What is missing is written to the build folder, ready to be translated.
#include "bench/language.h"

#include <gtest/gtest.h>

#include <QDirIterator>
#include <QFile>
#include <QSet>

#include "exchange/read_file.h"
#include "units/fault.h"

namespace language_test {

const QString root = QStringLiteral(COILWRIGHT_SOURCE_DIR);

bench::LanguageFile german() {
    const std::string file = (root + "/resources/languages/de.json").toStdString();
    return bench::readLanguage(exchange::readFile(file), file);
}

QString sourceOf(const QString& path) {
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << path.toStdString();
    return QString::fromUtf8(file.readAll());
}

/// Literals that stand side by side, as the compiler joins them.
QString joined(const QString& literals) {
    static const QRegularExpression one(QStringLiteral("\"((?:[^\"\\\\]|\\\\.)*)\""));
    QString text;
    auto each = one.globalMatch(literals);
    while (each.hasNext()) text += each.next().captured(1);
    return text.replace("\\n", "\n").replace("\\t", "\t").replace("\\\"", "\"").replace("\\\\", "\\");
}

/// Every sentence that stands in a call of the translator, in order of the files.
QStringList sentencesOfSources() {
    const QString literals = QStringLiteral("((?:\"(?:[^\"\\\\]|\\\\.)*\"\\s*)+)");
    const QRegularExpression call(
        "(?:\\b(?:tr|said|keyWords|translated)\\(|QT_TRANSLATE_NOOP\\(\\s*\"\\w+\",|"
        "translate\\(\\s*\"\\w+\",)\\s*" +
        literals);
    QStringList files, all;
    QDirIterator each(root + "/app", {"*.cpp", "*.h"}, QDir::Files, QDirIterator::Subdirectories);
    while (each.hasNext()) files << each.next();
    files.sort();
    for (const QString& file : files) {
        const QString text = sourceOf(file);
        auto found = call.globalMatch(text);
        while (found.hasNext())
            if (const QString sentence = joined(found.next().captured(1)); !all.contains(sentence)) all << sentence;
    }
    return all;
}

/// What is filled in, sorted.
QStringList placeholders(const QString& sentence) {
    static const QRegularExpression one(QStringLiteral("%(?:[1-9]|n)|\\{[a-z]+[0-9]*\\}"));
    QStringList all;
    auto each = one.globalMatch(sentence);
    while (each.hasNext()) all << each.next().captured();
    all.sort();
    return all;
}

bool isLetterMark(const QString& sentence) {
    static const QRegularExpression mark(QStringLiteral("&[^ &]"));
    return sentence.count(mark) == 1;
}

TEST(LanguageTable, EverySentenceOfTheSourcesIsInGerman) {
    const auto table = german().sentences;
    const QStringList all = sentencesOfSources();
    EXPECT_GT(all.size(), 700);
    QFile missing(QStringLiteral(COILWRIGHT_BUILD_DIR "/missing_de.txt"));
    ASSERT_TRUE(missing.open(QIODevice::WriteOnly));
    for (const QString& sentence : all) {
        if (table.contains(sentence)) continue;
        missing.write((sentence + '\n').toUtf8());
        ADD_FAILURE() << "no German for: " << sentence.toStdString();
    }
}

TEST(LanguageTable, WhatIsFilledInIsFilledInThereToo) {
    for (const auto& [english, own] : german().sentences) {
        EXPECT_FALSE(own.isEmpty()) << english.toStdString();
        EXPECT_EQ(placeholders(english), placeholders(own)) << english.toStdString();
        // Where a word begins or ends with a space it is joined to another; "…" says that a question follows.
        EXPECT_EQ(english.startsWith(' '), own.startsWith(' ')) << english.toStdString();
        EXPECT_EQ(english.endsWith(' '), own.endsWith(' ')) << english.toStdString();
        EXPECT_EQ(english.endsWith(QStringLiteral("…")), own.endsWith(QStringLiteral("…"))) << english.toStdString();
        EXPECT_EQ(isLetterMark(english), isLetterMark(own)) << english.toStdString();
        EXPECT_EQ(english.count('\n'), own.count('\n')) << english.toStdString();
    }
}

TEST(LanguageTable, NoPatternNamesAPlaceholderTwice) {
    for (const auto& [english, own] : german().sentences) {
        const QStringList names = placeholders(english);
        EXPECT_EQ(QSet<QString>(names.begin(), names.end()).size(), names.size()) << english.toStdString();
    }
}

TEST(Language, SentencesOfCoreAreSaidByPatternAndPieceByPiece) {
    const bench::Language spoken({{"kept", "gehalten"},
                                  {"{words} by {x}", "{words} um {x}"},
                                  {"turns of {name}", "Windungen von {name}"},
                                  {"moved by {words}, {words2}", "bewegt von {words2}, {words}"}});
    const auto said = [&](const char* english) { return spoken.translate("core", english); };
    EXPECT_EQ(said("kept"), "gehalten");
    EXPECT_EQ(said("kept by 3 dB"), "gehalten um 3 dB");
    EXPECT_EQ(said("moved by turns of P.a, turns of kept"), "bewegt von Windungen von kept, Windungen von P.a");
    EXPECT_EQ(said("kept; a; turns of S"), "gehalten; a; Windungen von S");
    EXPECT_EQ(said("lost"), "lost");
    // Only core's sentences are patterns, and a name is never translated.
    EXPECT_TRUE(spoken.translate("bench", "turns of P.a").isNull());
    EXPECT_EQ(said("turns of kept"), "Windungen von kept");
}

TEST(Language, AFileThatIsNoTableSaysWhy) {
    const auto why = [](const std::string& text) -> std::string {
        try {
            (void)bench::readLanguage(text, "de.json");
        } catch (const units::BadInput& bad) {
            return bad.what();
        }
        return "";
    };
    EXPECT_EQ(why("[]"), "de.json: found a list; allowed is an object in curly brackets.");
    EXPECT_NE(why("{\"language\": \"Deutsch\"}").find("de.json: /sentences"), std::string::npos);
    EXPECT_NE(why("{\"language\": \"Deutsch\", \"sentences\": {\"a\": 1}}").find("/sentences/a"), std::string::npos);
}

TEST(Language, WhatThereIsIsOfferedAndWhatThereIsNotIsRefused) {
    const std::vector<std::string> folders{(root + "/resources").toStdString()};
    EXPECT_EQ(bench::windowLanguages(folders), (std::map<std::string, QString>{{"de", "Deutsch"}}));
    EXPECT_EQ(bench::windowLanguage("en", folders, "place"), nullptr);
    EXPECT_NE(bench::windowLanguage("de", folders, "place"), nullptr);
    try {
        (void)bench::windowLanguage("fr", folders, "command line: --language");
        FAIL() << "refused nothing";
    } catch (const units::BadInput& bad) {
        EXPECT_EQ(std::string(bad.what()), "command line: --language: found \"fr\"; allowed is en or de.");
    }
}

}  // namespace language_test
