// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/pdf_outline.h"

#include <QRegularExpression>
#include <map>
#include <stdexcept>

namespace papers {

namespace {

/// What an update has to know of a file.
class Written {
public:
    explicit Written(const QByteArray& pdf) : pdf_(pdf) {
        const auto trailer = first(QStringLiteral("trailer\\s*<<(.*)>>\\s*startxref\\s+(\\d+)\\s+%%EOF\\s*$"),
                                   pdf.mid(pdf.lastIndexOf("trailer")));
        table_ = trailer.captured(2).toInt();
        size_ = first(QStringLiteral("/Size\\s+(\\d+)"), trailer.captured(1).toLatin1()).captured(1).toInt();
        info_ = first(QStringLiteral("/Info\\s+(\\d+ \\d+ R)"), trailer.captured(1).toLatin1()).captured(1);
        root_ = reference(trailer.captured(1).toLatin1(), "/Root");
        readOffsets();
        const QByteArray kids =
            first(QStringLiteral("/Kids\\s*\\[([^\\]]*)\\]"), object(reference(object(root_), "/Pages")))
                .captured(1)
                .toLatin1();
        auto each = QRegularExpression(QStringLiteral("(\\d+) 0 R")).globalMatch(QString::fromLatin1(kids));
        while (each.hasNext()) pages_.push_back(each.next().captured(1).toInt());
    }
    [[nodiscard]] int table() const { return table_; }
    [[nodiscard]] int size() const { return size_; }
    [[nodiscard]] int root() const { return root_; }
    [[nodiscard]] const QString& info() const { return info_; }
    [[nodiscard]] int page(int number) const {
        if (number < 1 || number > static_cast<int>(pages_.size()))
            throw std::runtime_error("outline: the PDF has no page " + std::to_string(number));
        return pages_[static_cast<std::size_t>(number) - 1];
    }
    /// The dictionary of an object without its brackets.
    [[nodiscard]] QByteArray object(int number) const {
        const auto at = offsets_.find(number);
        if (at == offsets_.end()) throw std::runtime_error("outline: the PDF lacks object " + std::to_string(number));
        const auto begin = pdf_.indexOf("<<", at->second) + 2;
        return pdf_.mid(begin, pdf_.indexOf("endobj", begin) - begin).trimmed().chopped(2);
    }

private:
    static QRegularExpressionMatch first(const QString& pattern, const QByteArray& text) {
        const QRegularExpression form(pattern, QRegularExpression::DotMatchesEverythingOption);
        auto match = form.match(QString::fromLatin1(text));
        if (!match.hasMatch()) throw std::runtime_error("outline: the PDF has no " + pattern.toStdString());
        return match;
    }
    static int reference(const QByteArray& dictionary, const char* key) {
        return first(QLatin1String(key) + QStringLiteral("\\s+(\\d+) 0 R"), dictionary).captured(1).toInt();
    }
    void readOffsets() {
        const auto lines = pdf_.mid(table_, pdf_.indexOf("trailer", table_) - table_).split('\n');
        for (int k = 0; k < size_ && k + 2 < lines.size(); ++k) offsets_[k] = lines[k + 2].left(10).toInt();
    }

    const QByteArray& pdf_;
    int table_ = 0, size_ = 0, root_ = 0;
    QString info_;
    std::map<int, int> offsets_;
    std::vector<int> pages_;
};

/// Text as UTF-16 in hexadecimal, which needs no escapes.
QByteArray hexText(const QString& text) {
    QByteArray all("FEFF");
    for (const QChar c : text) all += QByteArray::number(c.unicode(), 16).rightJustified(4, '0').toUpper();
    return '<' + all + '>';
}

/// Where an entry stands among the others; -1: nowhere.
struct Kin {
    int parent = -1, before = -1, after = -1, first = -1, last = -1, below = 0;
};

std::vector<Kin> kinOf(const std::vector<OutlineEntry>& entries) {
    std::vector<Kin> all(entries.size());
    std::vector<int> open;  // the last entry of each level
    for (int k = 0; k < static_cast<int>(entries.size()); ++k) {
        auto& kin = all[static_cast<std::size_t>(k)];
        const auto level = static_cast<std::size_t>(entries[static_cast<std::size_t>(k)].level);
        if (level > open.size()) throw std::runtime_error("outline: an entry has no heading above it");
        if (level < open.size()) {
            kin.before = open[level];
            all[static_cast<std::size_t>(open[level])].after = k;
        }
        open.resize(level);
        if (level > 0) {
            kin.parent = open.back();
            auto& parent = all[static_cast<std::size_t>(kin.parent)];
            if (parent.first < 0) parent.first = k;
            parent.last = k;
            ++parent.below;
        }
        open.push_back(k);
    }
    return all;
}

/// The update: objects behind the file, then their table and trailer.
class Update {
public:
    explicit Update(const QByteArray& pdf) : bytes_(pdf) {}
    void add(int number, const QByteArray& dictionary) {
        offsets_[number] = static_cast<int>(bytes_.size());
        bytes_ += QByteArray::number(number) + " 0 obj\n<<\n" + dictionary + "\n>>\nendobj\n";
    }
    QByteArray closed(const Written& before, int size) {
        const auto table = bytes_.size();
        bytes_ += "xref\n";
        for (const auto& [number, offset] : offsets_)
            bytes_ += QByteArray::number(number) + " 1\n" + QByteArray::number(offset).rightJustified(10, '0') +
                      " 00000 n \n";
        bytes_ += "trailer\n<<\n/Size " + QByteArray::number(size) + "\n/Info " + before.info().toLatin1() +
                  "\n/Root " + QByteArray::number(before.root()) + " 0 R\n/Prev " + QByteArray::number(before.table()) +
                  "\n>>\nstartxref\n" + QByteArray::number(table) + "\n%%EOF\n";
        return bytes_;
    }

private:
    QByteArray bytes_;
    std::map<int, int> offsets_;
};

}  // namespace

QByteArray withOutline(const QByteArray& pdf, const std::vector<OutlineEntry>& entries) {
    if (entries.empty()) return pdf;
    const Written before(pdf);
    const auto kin = kinOf(entries);
    const int top = before.size();
    const auto reference = [&](const char* key, int entry) {
        return entry < 0 ? QByteArray() : QByteArray(key) + QByteArray::number(top + 1 + entry) + " 0 R\n";
    };
    Update update(pdf);
    update.add(before.root(), before.object(before.root()) + "\n/Outlines " + QByteArray::number(top) +
                                  " 0 R\n/PageMode /UseOutlines");
    int last = 0, outermost = 0;
    for (std::size_t k = 0; k < kin.size(); ++k)
        if (kin[k].parent < 0) last = static_cast<int>(k), ++outermost;
    update.add(top, "/Type /Outlines\n" + reference("/First ", 0) + reference("/Last ", last) + "/Count " +
                        QByteArray::number(outermost));
    for (std::size_t k = 0; k < kin.size(); ++k) {
        const Kin& own = kin[k];
        QByteArray body = "/Title " + hexText(entries[k].title) + "\n";
        body += own.parent < 0 ? "/Parent " + QByteArray::number(top) + " 0 R\n" : reference("/Parent ", own.parent);
        body += reference("/Prev ", own.before) + reference("/Next ", own.after) + reference("/First ", own.first) +
                reference("/Last ", own.last);
        if (own.below > 0) body += "/Count -" + QByteArray::number(own.below) + "\n";  // shut
        body += "/Dest [" + QByteArray::number(before.page(entries[k].page)) + " 0 R /XYZ null null null]";
        update.add(top + 1 + static_cast<int>(k), body);
    }
    return update.closed(before, top + 1 + static_cast<int>(entries.size()));
}

}  // namespace papers
