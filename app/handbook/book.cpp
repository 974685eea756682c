// SPDX-License-Identifier: GPL-3.0-or-later
#include "handbook/book.h"

#include <QAbstractTextDocumentLayout>
#include <QTextBlock>
#include <QTextCursor>
#include <QTextDocument>
#include <QTextLayout>
#include <QTextTable>
#include <QUrl>
#include <map>
#include <memory>

#include "handbook/page_look.h"
#include "handbook/pages.h"
#include "papers/pdf.h"
#include "papers/pdf_outline.h"

namespace handbook {

namespace {

constexpr double headHeight = 9, footHeight = 8;  // mm
constexpr double typeSize = 9.5;                  // pt

/// A page of the handbook set on sheets.
struct Chapter {
    QString title;
    std::unique_ptr<QTextDocument> text;
    int first = 1;  ///< sheet, from 1
};

bool isHeading(const QTextBlock& block) {
    return block.isValid() && block.blockFormat().headingLevel() > 0;
}

/// On which sheet a block's line stands, which may be after that of the block's own beginning; `last`: its last line.
int sheetOf(const QTextDocument& text, const QTextBlock& block, bool last = false) {
    const double top = text.documentLayout()->blockBoundingRect(block).top();  // lays it out where that is still to do
    const int lines = block.layout()->lineCount();
    const double line = lines > 0 ? block.layout()->lineAt(last ? lines - 1 : 0).y() : 0;
    return static_cast<int>((top + line) / text.pageSize().height());
}

/// All of it: a layout that goes on from a change may count too few sheets.
void layOutAnew(QTextDocument& text) {
    const QSizeF sheet = text.pageSize();
    text.setPageSize({});
    text.setPageSize(sheet);
    (void)text.pageCount();
}

/// A paragraph stands on one sheet, and with it the headings before it. Tables are left to themselves.
void keepTogether(QTextDocument& text) {
    for (QTextBlock block = text.begin(); block.isValid(); block = block.next()) {
        if (isHeading(block.previous()) || QTextCursor(block).currentTable() != nullptr) continue;
        QTextBlock last = block;
        while (isHeading(last)) last = last.next();
        if (!last.isValid()) continue;
        const bool whole = QTextCursor(last).currentTable() == nullptr;
        if (sheetOf(text, last, whole) == sheetOf(text, block)) continue;
        QTextBlockFormat format = block.blockFormat();
        format.setPageBreakPolicy(QTextFormat::PageBreak_AlwaysBefore);
        QTextCursor(block).setBlockFormat(format);
        layOutAnew(text);
    }
}

class Book {
public:
    Book(const QString& folder, papers::Paper& paper)
        : folder_(folder),
          pages_(pages(folder)),
          paper_(paper),
          column_(paper.content().adjusted(0, headHeight, 0, -footHeight)) {
        for (const Page& page : pages_) firsts_[page.file] = 1;
        // What a link says may move a line, and with it all that follows.
        constexpr int patience = 5;
        for (int round = 0; round < patience && !setAll(); ++round) {
        }
    }

    int paint(int sheets) {
        bool begun = false;
        for (const Chapter& chapter : chapters_) {
            for (int sheet = 0; sheet < chapter.text->pageCount(); ++sheet) {
                if (begun) paper_.newPage();
                begun = true;
                banner(chapter.title, sheets);
                paper_.page(*chapter.text, sheet, column_);
            }
        }
        return paper_.page();
    }

    /// Titles of pages, and within each its headings.
    [[nodiscard]] std::vector<papers::OutlineEntry> outline() const {
        std::vector<papers::OutlineEntry> all;
        for (const Chapter& chapter : chapters_) {
            all.push_back({chapter.title, chapter.first, 0});
            for (QTextBlock block = chapter.text->begin(); block.isValid(); block = block.next())
                if (block.blockFormat().headingLevel() == 2)
                    all.push_back({block.text(), chapter.first + sheetOf(*chapter.text, block), 1});
        }
        return all;
    }

private:
    /// Sets every page; true if each begins where the links say.
    bool setAll() {
        chapters_.clear();
        bool same = true;
        int next = 1;
        for (const Page& page : pages_) {
            chapters_.push_back({page.title, set(page), next});
            same = same && firsts_[page.file] == next;
            firsts_[page.file] = next;
            next += chapters_.back().text->pageCount();
        }
        return same;
    }

    std::unique_ptr<QTextDocument> set(const Page& page) {
        auto text = std::make_unique<QTextDocument>();
        QFont face(QStringLiteral("DejaVu Sans"));
        face.setHintingPreference(QFont::PreferNoHinting);
        face.setPointSizeF(typeSize);
        text->setDefaultFont(face);
        text->setBaseUrl(QUrl::fromLocalFile(folder_ + QLatin1Char('/')));
        text->setDocumentMargin(0);
        text->setMarkdown(withoutLinks(page.text, [this](const Link& link) {
            return link.words + QStringLiteral(" (page ") + QString::number(firsts_[link.file]) + QLatin1Char(')');
        }));
        constexpr double pictures = 0.75;  // of the column's width
        dress(*text, {pictures * column_.width() / units::millimetresPerInch * 96, papers::Paper::muted(),
                      QColor(0xf2, 0xf2, 0xf2)});
        paper_.layOut(*text, column_.size());
        layOutAnew(*text);
        keepTogether(*text);
        return text;
    }

    void banner(const QString& title, int sheets) {
        const QRectF all = paper_.content();
        const QRectF head(all.left(), all.top(), all.width(), 5), foot(all.left(), all.bottom() - 5, all.width(), 5);
        const papers::Type left{8, false, papers::Paper::muted(), Qt::AlignLeft},
            right{8, false, papers::Paper::muted(), Qt::AlignRight};
        paper_.text(head, pages_.front().title, left);
        paper_.text(head, title == pages_.front().title ? QString() : title, right);
        paper_.line(head.bottomLeft(), head.bottomRight(), papers::hairline, papers::Paper::muted());
        paper_.text(foot, QStringLiteral("page %1 of %2").arg(paper_.page()).arg(sheets), right);
    }

    QString folder_;
    std::vector<Page> pages_;
    papers::Paper& paper_;
    QRectF column_;
    std::map<QString, int> firsts_;
    std::vector<Chapter> chapters_;
};

}  // namespace

QByteArray paintedBook(const QString& folder, papers::Format format, const std::string& date) {
    constexpr int guess = 40;
    std::vector<papers::OutlineEntry> outline;
    const QByteArray pdf = papers::paintedPdf({{"Coilwright handbook", date, format, {}},
                                               [&](papers::Paper& paper, int sheets) {
                                                   Book book(folder, paper);
                                                   outline = book.outline();
                                                   return book.paint(sheets);
                                               },
                                               guess});
    return papers::withOutline(pdf, outline);
}

}  // namespace handbook
