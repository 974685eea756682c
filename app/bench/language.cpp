// SPDX-License-Identifier: GPL-3.0-or-later
#include "bench/language.h"

#include <QCoreApplication>
#include <QLocale>
#include <QMutexLocker>
#include <algorithm>
#include <cstring>

#include "exchange/read_file.h"
#include "json/record.h"
#include "json/text.h"
#include "papers/language_files.h"
#include "units/fault.h"

namespace bench {

namespace {

constexpr const char* core = "core";  // the context of what core says
constexpr std::size_t mostFound = 4096;
constexpr const char *languageTables = "languages", *languageEnding = "json";  // where they lie

struct File {
    std::string language;
    std::map<std::string, std::string> sentences;
    json::Value extra = nullptr;
};
template <class Visitor>
void fields(Visitor& visit, File& file) {
    visit.need("language", file.language);
    visit.need("sentences", file.sentences);
}

const QRegularExpression& placeholder() {
    static const QRegularExpression one(QStringLiteral("\\{([a-z]+[0-9]*)\\}"));
    return one;
}

}  // namespace

Language::Language(const Sentences& sentences, QObject* parent) : QTranslator(parent) {
    for (const auto& [english, own] : sentences)
        if (english.contains(placeholder()))
            patterns_.push_back(patternOf(english, own));
        else
            whole_.emplace(english, own);
    // What says more of itself is tried first.
    std::stable_sort(patterns_.begin(), patterns_.end(),
                     [](const auto& a, const auto& b) { return a.letters > b.letters; });
}

Language::Pattern Language::patternOf(const QString& english, const QString& own) {
    Pattern pattern;
    pattern.own = own;
    QString expression;
    qsizetype from = 0;
    auto each = placeholder().globalMatch(english);
    while (each.hasNext()) {
        const auto found = each.next();
        expression +=
            QRegularExpression::escape(english.mid(from, found.capturedStart() - from)) + QStringLiteral("(.+?)");
        pattern.names << found.captured(1);
        pattern.letters -= found.capturedLength();
        from = found.capturedEnd();
    }
    expression += QRegularExpression::escape(english.mid(from));
    pattern.letters += english.size();
    pattern.english = QRegularExpression(QRegularExpression::anchoredPattern(expression),
                                         QRegularExpression::DotMatchesEverythingOption);
    pattern.english.optimize();
    return pattern;
}

QString Language::translate(const char* context, const char* sourceText, const char*, int) const {
    const QString english = QString::fromUtf8(sourceText);
    if (const auto at = whole_.find(english); at != whole_.end()) return at->second;
    if (context == nullptr || std::strcmp(context, core) != 0) return {};
    const QMutexLocker one(&lock_);
    if (const auto at = found_.find(english); at != found_.end()) return at->second;
    if (found_.size() >= mostFound) found_.clear();
    return found_.emplace(english, said(english)).first->second;
}

QString Language::said(const QString& english) const {
    if (const auto at = whole_.find(english); at != whole_.end()) return at->second;
    if (QString own = saidByPattern(english); !own.isEmpty()) return own;
    return saidInPieces(english);
}

QString Language::saidByPattern(const QString& english) const {
    for (const Pattern& pattern : patterns_) {
        const auto found = pattern.english.match(english);
        if (!found.hasMatch()) continue;
        QString own;
        qsizetype from = 0;
        auto each = placeholder().globalMatch(pattern.own);
        while (each.hasNext()) {
            const auto place = each.next();
            const QString name = place.captured(1);
            const QString filled = found.captured(static_cast<int>(pattern.names.indexOf(name)) + 1);
            own += pattern.own.mid(from, place.capturedStart() - from);
            own += name.startsWith(QStringLiteral("words")) ? said(filled) : filled;
            from = place.capturedEnd();
        }
        return own + pattern.own.mid(from);
    }
    return {};
}

/// What core only strings together is said piece by piece.
QString Language::saidInPieces(const QString& english) const {
    for (const QString& between : {QStringLiteral("\n"), QStringLiteral("; "), QStringLiteral(" · ")}) {
        if (!english.contains(between)) continue;
        QStringList own;
        for (const QString& piece : english.split(between)) own << said(piece);
        return own.join(between);
    }
    return english;
}

QString translated(const std::string& english) {
    return english.empty() ? QString() : QCoreApplication::translate(core, english.c_str());
}

LanguageFile readLanguage(const std::string& text, const std::string& file) {
    const json::Value root = json::read(text, file);
    if (!root.is_object()) units::refuse(file, json::foundWords(root), "an object in curly brackets");
    std::vector<units::Fault> faults;
    const File read = json::readRecord<File>(root, file, "", faults);
    if (!faults.empty()) throw units::BadInput(std::move(faults));
    LanguageFile found{QString::fromStdString(read.language), {}};
    for (const auto& [english, own] : read.sentences)
        found.sentences.emplace(QString::fromStdString(english), QString::fromStdString(own));
    return found;
}

std::map<std::string, QString> windowLanguages(const std::vector<std::string>& folders) {
    std::map<std::string, QString> all;
    for (const auto& [key, file] : papers::languageFiles(folders, languageTables, languageEnding))
        all.emplace(key, readLanguage(exchange::readFile(file), file).name);
    return all;
}

std::unique_ptr<Language> windowLanguage(const std::string& key, const std::vector<std::string>& folders,
                                         const std::string& place) {
    const std::string asked = key.empty() ? QLocale::system().name().section('_', 0, 0).toStdString() : key;
    if (asked == "en") return nullptr;
    const auto files = papers::languageFiles(folders, languageTables, languageEnding);
    if (key.empty() && !files.contains(asked)) return nullptr;
    const std::string file = papers::fileOfLanguage(files, asked, place);
    return std::make_unique<Language>(readLanguage(exchange::readFile(file), file).sentences);
}

}  // namespace bench
