// SPDX-License-Identifier: GPL-3.0-or-later
// The window in a second language. English stands in the sources; `languages/de.json` says each sentence in German.
#pragma once

#include <QMutex>
#include <QRegularExpression>
#include <QTranslator>
#include <map>
#include <memory>
#include <string>
#include <vector>

namespace bench {

/// English sentence to its translation. A sentence of core, which knows no window, is a pattern: `{name}` stands for
/// what is filled in, `{words}`, `{words2}`… for what is filled in and itself translated.
using Sentences = std::map<QString, QString>;

/// The program's own translator: a sentence is looked up as it stands, whoever says it; one that core put together
/// (said through `translated`) also by the patterns. What is not in the table stays English. May be asked from any
/// thread.
class Language : public QTranslator {
    Q_OBJECT
public:
    explicit Language(const Sentences& sentences, QObject* parent = nullptr);
    [[nodiscard]] bool isEmpty() const override { return false; }
    [[nodiscard]] QString translate(const char* context, const char* sourceText, const char* disambiguation = nullptr,
                                    int n = -1) const override;

private:
    struct Pattern {
        QRegularExpression english;
        QString own;
        QStringList names;      ///< of the placeholders, in the order of the English
        qsizetype letters = 0;  ///< that stand in it
    };
    [[nodiscard]] static Pattern patternOf(const QString& english, const QString& own);
    [[nodiscard]] QString said(const QString& english) const;
    [[nodiscard]] QString saidByPattern(const QString& english) const;
    [[nodiscard]] QString saidInPieces(const QString& english) const;

    std::map<QString, QString> whole_;
    std::vector<Pattern> patterns_;
    mutable QMutex lock_;
    mutable std::map<QString, QString> found_;  ///< what was put together before
};

/// A sentence of core in the language of the window.
[[nodiscard]] QString translated(const std::string& english);

struct LanguageFile {
    QString name;  ///< of the language, in itself
    Sentences sentences;
};
/// Throws units::BadInput for text that is no table of sentences.
[[nodiscard]] LanguageFile readLanguage(const std::string& text, const std::string& file);

/// Key and name of every language there is beside English, "de" for `languages/de.json` in any of the folders.
[[nodiscard]] std::map<std::string, QString> windowLanguages(const std::vector<std::string>& folders);
/// The table of a language, the last folder's where several have one; null for "en". "" is the desktop's language where
/// there is a table of it, else English. Throws units::BadInput, place `place`, where there is no such table, and for
/// one that is not sound.
[[nodiscard]] std::unique_ptr<Language> windowLanguage(const std::string& key, const std::vector<std::string>& folders,
                                                       const std::string& place);

}  // namespace bench
