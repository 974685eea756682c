// SPDX-License-Identifier: GPL-3.0-or-later
#include "papers/title_block.h"

#include "papers/square_code.h"

namespace papers {

void paintTitleBlock(Paper& paper, const shop::PaperHead& head, int pages) {
    const QRectF all = paper.content();
    const QRectF foot(all.left(), all.bottom() - footHeight, all.width(), footHeight);
    paper.box(foot, 0.35);
    struct Cell {
        const char* head;
        QString words;
        double width;
    };
    const shop::Words& say = head.manner.say();
    const auto qt = [](const std::string& text) { return QString::fromStdString(text); };
    const double rest = foot.width() - 34 - 20 - 25 - 27 - 16 - footHeight;
    const std::vector<Cell> cells{
        {"name", qt(head.title), rest},
        {"part", qt(head.partNumber), 34},
        {"revision", qt(head.revision), 20},
        {"date", qt(head.date), 25},
        {"design", qt(head.digest), 27},
        {"page", qt(say("%1 of %2", {std::to_string(paper.page()), std::to_string(pages)})), 16}};
    double x = foot.left();
    for (const Cell& cell : cells) {
        if (x > foot.left()) paper.line({x, foot.top()}, {x, foot.bottom()});
        paper.text({x + 1.5, foot.top() + 0.8, cell.width - 3, 3.6}, qt(say(cell.head)),
                   {7, false, Paper::muted(), Qt::AlignLeft});
        const QString words = cell.words.isEmpty() ? QStringLiteral("–") : cell.words;
        const QRectF room(x + 1.5, foot.top() + 4.6, cell.width - 3, 7.6);
        if (paper.width(words) <= room.width())
            paper.text(room.adjusted(0, 0.4, 0, -1.4), words);
        else
            paper.paragraph(room, words, {7.5, false, {}, Qt::AlignLeft}, 2);
        x += cell.width;
    }
    paper.line({x, foot.top()}, {x, foot.bottom()});
    paintSquareCode(paper, {x, foot.top(), footHeight, footHeight}, head.code());
}

}  // namespace papers
